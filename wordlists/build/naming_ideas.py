"""Build the tables of ideas for names from the lists in wordlists/curated/, which we wrote ourselves.

python wordlists/build/naming_ideas.py [--to FOLDER]

naming_ideas.tsv       kind and word ("find skep") -> MEANING|STANDING
naming_keys.tsv        "counts" and "places" of the KEYS, of the FACETS and of the words of every idea, one after the
                       other: a word's place is that in naming_vocabulary.tsv
naming_worlds.tsv      number -> WHAT THE WORLD IS ABOUT|WORDS
naming_suits.tsv       number -> WHAT A PRODUCT IS OR DOES|WORD, WORD, ..., the aptest first
naming_senses.tsv      an everyday word -> GUIDE GUIDE ...;COMPANY COMPANY .../... for each of its meanings
naming_stuffs.tsv      a stuff -> the sorts of goods that may be made of it, the likeliest first
naming_picks.tsv       number -> A SUBJECT|WORD RATING, WORD RATING, ..., rated from 1 to 7, the best first
naming_vocabulary.tsv  a word of these -> ROW|POS|ZIPF|CONCRETENESS|FEELING|CHARM|PLACES|SOUNDS|SENSE ABOVE ..., what
                       is known of it; PLACES in a closed pair where it stands well: 1, 2 or 12
familiar_phrases.tsv   a familiar word or saying -> 1 if it stands in naming_phrases.txt
familiar_sounds.tsv    what a part that may give way is found by (its rhyme, its beginning, its consonants) ->
                       SOUNDS SOUNDS ...; = and SOUNDS -> BEFORE~PART~AFTER~STRESS~AT|...

The keys are the words of a meaning that say something. The facets are what a
brief may speak of for which the word is apt, the most telling first; STANDING is 1 for a word that makes a good name by
itself, 0 for one that makes a poor one, empty for the rest, then how it pleased a blind reader from 0 to 1, then 1 if
it is worn, then how it is written if with an apostrophe. The parts of a saying are its
words; of a word, those between bars, or its first and last syllables. Closed compounds of WordNet 3.0 that
are common and read as their two parts are added to the list. SOUNDS is the code of `pronunciation.phones`,
AT the number of sounds of its word before it.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from functools import cache

from naming_familiar import familiar, familiar_phrases, familiar_sounds
from naming_words import CURATED, FOLDER, lines
from proper_nouns import with_capitals
from sources import folder_to_write, write_table

from namescreen.generation.senses import unfit, unfit_in
from namescreen.generation.vocabulary import broader, leading_noun, pos_of
from namescreen.generation.word_sounds import sounds_of
from namescreen.lexicon import concreteness, feeling, kinds, lexicon, zipf
from namescreen.tables import open_table, table_bytes
from namescreen.text import fold

Entries = dict[str, str]

_EMPTY = frozenset(
    "one something used kind made small large long old little piece first last end part thing people two".split()
)
"""Words that stand in many meanings and say little of any (ours)."""


def keys(meaning: str) -> str:
    """The words of a meaning that say something."""
    found = dict.fromkeys(re.findall(r"[a-z]+", fold(meaning)))
    return " ".join(
        word for word in found if len(word) > 1 and word not in _EMPTY and "function word" not in kinds(word)
    )


@cache
def facets() -> dict[str, str]:
    """A word, a figure or an image -> what it is apt for, the most telling first."""
    found: dict[str, dict[str, None]] = {}
    for name in (*sorted(path.name for path in CURATED.glob("naming_facets*.txt")), "naming_images.txt"):
        for line in lines(name):
            word, _, about = line.partition(":")
            found.setdefault(word.strip(), {}).update(dict.fromkeys(re.findall(r"[a-z]+", fold(about))))
    return {word: " ".join(about) for word, about in found.items()}


def _plainly(about: str) -> Iterator[str]:
    """The subjects of a saying, and the plain word of each that is a state (freshness: fresh)."""
    for word in about.split():
        plain = re.sub(r"i(?=ness$)", "y", word).removesuffix("ness")
        if plain != word and zipf(plain) >= zipf(word):
            yield plain
        yield word


@cache
def standing() -> dict[str, str]:
    """A word -> how it stands by itself as a name: 1 well, 0 ill."""
    marks = {"well": "1", "ill": "0"}
    names = sorted(path.name for path in CURATED.glob("naming_standing*.txt"))
    parts = (line.partition(":") for name in names for line in lines(name))
    rows = [(marks[head], words.split()) for head, _, words in parts]
    return {word.replace("-", " "): mark for mark, words in rows for word in words}


@cache
def delight() -> dict[str, str]:
    """A word or set phrase -> how it pleases by itself as a name, 0 to 1: ratings from 1 to 7 as a share."""
    parts = (line.partition(":") for line in lines("naming_delight.txt"))
    rows = [(f"{(float(rating) - 1) / 6:.2f}", words.split(",")) for rating, _, words in parts]
    return {word.strip(): value for value, words in rows for word in words}


@cache
def worn() -> frozenset[str]:
    """Words that firms of every trade carry."""
    return frozenset(word for line in lines("naming_worn.txt") for word in line.split())


@cache
def _worn_sounds() -> frozenset[tuple[str, ...]]:
    return frozenset(sounds_of(word) for word in worn())


def _is_worn(word: str) -> bool:
    """Whether firms of every trade carry a word, or one that sounds the same."""
    return word in worn() or (" " not in word and sounds_of(word) in _worn_sounds())


def _standing(word: str) -> str:
    """How it stands, how it pleases, 1 if it is worn, and how it is written if with an apostrophe: 1/0.75/1/."""
    folded = word.casefold().replace("'", "")
    told = standing().get(folded, ""), delight().get(folded, ""), "1" if _is_worn(folded) else ""
    return "/".join((*told, word if folded != word.casefold() else ""))


def _told(word: str, meaning: str, shown: str) -> str:
    """Meaning, keys, facets and standing of a word; the facets are its own, else those of the image it means."""
    images = (facets().get(image.strip(), "") for image in re.split(r"[;,]| or ", meaning))
    about = facets().get(word) or " ".join(filter(None, images))
    return f"{shown}|{keys(meaning)}|{' '.join(dict.fromkeys(about.split()))}|{_standing(word)}"


@cache
def _ideas() -> Entries:
    """Kind and word -> meaning, keys, facets, standing."""
    found: Entries = {}
    for line in lines("naming_finds.txt"):
        written, _, meaning = (part.strip() for part in line.partition(":"))
        word = written.replace("'", "")
        if unfit_in(word):
            continue
        about, stands = facets().get(word, ""), _standing(written)
        found.setdefault(f"find {word}", f"{meaning}|{keys(meaning)}|{about}|{stands}")
    for line in lines("naming_foreign.txt"):
        word, language, meaning = re.fullmatch(r"(.+?) \((.+?)\): (.+)", line).groups()  # type: ignore[union-attr]
        found.setdefault(f"foreign {word}", _told(word, meaning, f"{language}: {meaning}"))
    for line in lines("naming_sayings.txt"):
        phrase, _, rest = line.partition(":")
        sense, about = (part.strip() for part in rest.split("|"))
        told = f"/{delight().get(phrase, '')}//"
        found.setdefault(f"saying {phrase}", f"{sense}|{keys(sense)}|{' '.join(_plainly(about))}|{told}")
    lore = False
    for line in lines("naming_figures.txt"):
        head, _, rest = (part.strip() for part in line.partition(":"))
        if not rest:
            lore = line == "lore"
        elif lore:
            found.setdefault(f"lore {head}", _told(head, rest, rest))
        else:
            found.update((f"{head} {name}", "|") for name in rest.split())
    return found


def naming_ideas() -> Entries:
    """Kind and word -> meaning and standing."""
    return {key: f"{_shown(value.split('|')[0])}|{value.rpartition('|')[2]}" for key, value in _ideas().items()}


def _shown(meaning: str) -> str:
    """A meaning as it is shown: without what only one subject sees in it, and its proper nouns with capitals."""
    return with_capitals(re.sub(r"\s*\[[^]]*\]", "", meaning).strip())


def naming_keys() -> Entries:
    """The keys, the facets and the words of all ideas as numbers, in the order of the tables."""
    place = {word: number for number, word in enumerate(_words())}
    keyed, fitting, phrased = [], [], []
    for key, value in sorted(_ideas().items()):
        _, told, about, *_ = (*value.split("|"), "", "")
        keyed.append([place[word] for word in told.split() if word in place])
        fitting.append([place[word] for word in about.split() if word in place])
        phrased.append([place[word] for word in _own_words(key) if word in place])
    return {
        "key counts": _row(map(len, keyed)), "key places": _row(one for own in keyed for one in own),
        "facet counts": _row(map(len, fitting)), "facet places": _row(one for own in fitting for one in own),
        "phrase counts": _row(map(len, phrased)), "phrase places": _row(one for own in phrased for one in own),
    }  # fmt: skip


def _own_words(key: str) -> list[str]:
    """The words of a phrase that say something; none of a single word."""
    words = fold(key.partition(" ")[2]).replace("'", "").split()
    return [word for word in words if "function word" not in kinds(word)] if len(words) > 1 else []


def _row(numbers: Iterable[object]) -> str:
    return " ".join(map(str, numbers))


def naming_worlds() -> Entries:
    """Number -> what the world is about, and its words."""
    found: Entries = {}
    for number, line in enumerate(lines("naming_worlds.txt")):
        about, _, words = line.partition(":")
        fit = (word for word in dict.fromkeys(words.split()) if not unfit(word))
        found[f"{number:03}"] = f"{' '.join(about.split())}|{' '.join(fit)}"
    return found


def naming_suits() -> Entries:
    """Number -> what a product is or does, and the words that suit it; raises ValueError for one without a meaning."""
    return _by_subject("naming_suits.txt")


def naming_picks() -> Entries:
    """Number -> a subject, and the words on its short list with their ratings; raises ValueError for a word without a
    meaning or a rating."""
    return _by_subject("naming_picks.txt", rated=True)


def naming_senses() -> Entries:
    """An everyday word -> its meanings: the words that guide to each, and what else a brief of it speaks of."""
    parts = (line.partition(":") for line in lines("naming_senses.txt"))
    return {
        word: "/".join(";".join(" ".join(part.split()) for part in sense.split(";")) for sense in senses.split("/"))
        for word, _, senses in parts
    }


def naming_opposites() -> Entries:
    """A word for a concept -> the words for its opposite."""
    found: dict[str, dict[str, None]] = {}
    for line in lines("naming_opposites.txt"):
        concept, _, contrary = line.partition(":")
        for word in concept.split():
            found.setdefault(word, {}).update(dict.fromkeys(contrary.split()))
    return {word: " ".join(contrary) for word, contrary in found.items()}


def naming_stuffs() -> Entries:
    """A stuff -> the sorts of goods that may be made of it, in the order of the list."""
    found: dict[str, dict[str, None]] = {}
    for line in lines("naming_stuffs.txt"):
        sort, _, words = line.partition(":")
        for word in words.split():
            found.setdefault(word, {})[sort] = None
    return {word: " ".join(sorts) for word, sorts in found.items()}


def _by_subject(name: str, *, rated: bool = False) -> Entries:
    known = {key.partition(" ")[2].casefold() for key in _ideas()}
    found: Entries = {}
    for number, line in enumerate(lines(name)):
        about, _, listed = line.partition(":")
        words: dict[str, str] = {}
        for entry in filter(None, (entry.strip().casefold() for entry in listed.split(","))):
            word, _, rating = entry.rpartition(" ") if rated else (entry, "", "")
            if rated and not ("1" <= rating <= "7"):
                raise ValueError(f"{name}: no rating from 1 to 7 after {entry}")
            if not unfit_in(word):
                words[word] = entry
        unknown = [word for word in words if word not in known]
        if unknown:
            raise ValueError(f"{name}: no meaning in naming_finds.txt for {', '.join(unknown)}")
        found[f"{number:03}"] = f"{' '.join(about.split())}|{', '.join(words.values())}"
    return found


@cache
def charm() -> dict[str, str]:
    """A word with a picture that pleases -> 1; one that weighs a name down -> 0."""
    marks = {"picture": "1", "plain": "0"}
    rows = [
        (marks[head], words.split()) for head, _, words in (line.partition(":") for line in lines("naming_charm.txt"))
    ]
    plain = {word: mark for mark, words in rows for word in words if mark == "0"}
    return plain | {word: mark for mark, words in rows for word in words if mark == "1"}


@cache
def compound_places() -> dict[str, str]:
    """A short word -> where it stands well in a closed pair: 1 in front, 2 behind, 12 either."""
    marks = {"first": "1", "second": "2"}
    found: dict[str, set[str]] = {}
    for head, _, words in (line.partition(":") for line in lines("naming_places.txt")):
        for word in words.split():
            found.setdefault(word, set()).add(marks[head])
    return {word: "".join(sorted(places)) for word, places in found.items()}


def naming_vocabulary() -> Entries:
    """A word of the ideas, their meanings or the worlds -> the facts that ideas are chosen by."""
    return {word: _facts(word) for word in _words()}


@cache
def _words() -> tuple[str, ...]:
    """Every word of the ideas, their meanings and subjects, the worlds and the sayings, in the order of the table."""
    words: dict[str, None] = {}
    for key, value in _ideas().items():
        kind, _, word = key.partition(" ")
        if kind in ("first", "title"):
            words[word.casefold()] = None
        else:
            words.update(dict.fromkeys(re.findall("[a-z]+", f"{word.casefold()} {value.partition('|')[2]}")))
    for value in naming_worlds().values():
        words.update(dict.fromkeys(value.replace("|", " ").split()))
    for value in (*naming_suits().values(), *naming_picks().values()):
        words.update(dict.fromkeys(re.findall("[a-z]+", value.partition("|")[0])))
    for value in (*naming_senses().values(), *naming_opposites().values()):
        words.update(dict.fromkeys(re.findall("[a-z]+", value)))
    words.update(dict.fromkeys((*charm(), *compound_places())))
    for phrase, parts in familiar().items():
        words.update(dict.fromkeys(phrase.casefold().replace("-", " ").split()))
        words.update(dict.fromkeys(part.split("~")[1].casefold() for part in parts))
    return tuple(sorted(word for word in words if word.isascii() and word.isalpha()))


def _facts(word: str) -> str:
    table = open_table("embedding_words.tsv")
    row = next(filter(None, map(table.get, (word, *lexicon().bases(word)))), "")
    known, concrete = feeling(word), concreteness(word)
    sense = leading_noun(word)
    return "|".join((
        row, pos_of(word), f"{zipf(word):.2f}", "" if concrete is None else f"{concrete:.2f}",
        "" if known is None else f"{known:.2f}", charm().get(word, ""), compound_places().get(word, ""),
        " ".join(sounds_of(word)),
        " ".join((sense, *broader(sense))) if sense else "",
    ))  # fmt: skip


def main() -> None:
    """Write the tables, each with the record of its source."""
    folder = folder_to_write(__doc__, FOLDER)
    drawn = {
        naming_ideas: (
            "naming_finds.txt, naming_foreign.txt, naming_figures.txt, naming_sayings.txt, naming_facets*.txt, "
            "naming_images.txt, naming_standing*.txt, naming_worn.txt and the ratings in naming_delight.txt",
            "MIT, as namescreen",
        ),
        naming_keys: ("as naming_ideas.tsv", "MIT, as namescreen"),
        naming_worlds: ("naming_worlds.txt", "MIT, as namescreen"),
        naming_suits: ("naming_suits.txt", "MIT, as namescreen"),
        naming_picks: ("naming_picks.txt, rated by runs of a language model", "MIT, as namescreen"),
        naming_senses: ("naming_senses.txt", "MIT, as namescreen"),
        naming_opposites: ("naming_opposites.txt", "MIT, as namescreen"),
        naming_stuffs: ("naming_stuffs.txt", "MIT, as namescreen"),
        naming_vocabulary: (
            "naming_finds.txt, naming_suits.txt, naming_picks.txt, naming_charm.txt, naming_places.txt, "
            "naming_foreign.txt, naming_figures.txt and "
            "naming_worlds.txt, with facts of the other "
            "tables here (embedding_words, frequency/en, feelings, pronunciations, wordnet-words and -senses)",
            "MIT, as namescreen; of the facts, the licences of their tables",
        ),
        familiar_phrases: (
            "naming_phrases.txt; closed compounds of WordNet 3.0",
            "MIT, as namescreen; WordNet 3.0 licence, licences/wordnet.txt; sounds: licences/cmudict.txt",
        ),
        familiar_sounds: (
            "naming_phrases.txt; closed compounds of WordNet 3.0",
            "MIT, as namescreen; WordNet 3.0 licence, licences/wordnet.txt; sounds: licences/cmudict.txt",
        ),
    }
    for draw, (lists, licence) in drawn.items():
        name = draw.__name__
        contents = table_bytes(name, draw().items())
        write_table(
            folder,
            f"{name}.tsv",
            contents,
            source=f"in {CURATED.parent.name}/{CURATED.name}: {lists}; written for namescreen from memory, no list was "
            "copied",
            version="1",
            licence=licence,
            build="python wordlists/build/naming_ideas.py",
        )


if __name__ == "__main__":
    main()
