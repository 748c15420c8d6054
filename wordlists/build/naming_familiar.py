"""The familiar words and sayings of which a part may give way to another, and what each part is found by."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

from naming_words import lines

from namescreen.generation.blending.source_word import source
from namescreen.generation.constructions.changed import sound_keys
from namescreen.generation.senses import unfit
from namescreen.generation.word_sounds import is_vowel, syllable_starts
from namescreen.lexicon import concreteness, feeling, kinds, lexicon, zipf
from namescreen.pronunciation.phones import code_of
from namescreen.tables import open_table

Entries = dict[str, str]

_HOMELY = frozenset(f"noun.{name}" for name in ("animal", "plant", "food", "object", "phenomenon", "time"))
"""Domains whose compounds are pleasant to hear behind a name."""
_PICTURED = _HOMELY | frozenset(("noun.artifact", "noun.shape", "noun.event"))
"""Domains whose words are pleasant to hear behind a name if they are common and pictured at once."""
_SEEN, _CONCRETE = 3.1, 0.6
"""Zipf frequency and concreteness from which anybody knows and pictures a word (set by reading what they let in)."""
_KNOWN, _PLAIN = 2.7, 3.5
"""Zipf frequency from which a compound of WordNet is familiar enough to be heard behind another, and from which its
parts are plain words (set by reading what they let in)."""


@cache
def familiar() -> dict[str, tuple[str, ...]]:
    """Familiar word or saying -> its parts that may give way; those of our list first."""
    texts = (*lines("naming_phrases.txt"), *_compounds(), *_pictured())
    found: dict[str, tuple[str, ...]] = {}
    for text in texts:
        parts = tuple(_parts(text))
        if parts:
            found.setdefault(text.replace("|", ""), parts)
    return found


def familiar_phrases() -> Entries:
    """Familiar word or saying -> 1 if it stands in our list."""
    listed = {text.replace("|", "") for text in lines("naming_phrases.txt")}
    return {original: "1" if original in listed else "" for original in familiar()}


def familiar_sounds() -> Entries:
    """What a part is found by -> the codes of such parts; = and a code -> the parts that sound so, with what stands
    around them."""
    by_key: dict[str, dict[str, None]] = {}
    by_code: dict[str, list[str]] = {}
    for parts in familiar().values():
        for part in parts:
            before, letters, after, code, stress, at = part.split("~")
            by_code.setdefault(code, []).append("~".join((before, letters, after, stress, at)))
            for key in sound_keys(code):
                by_key.setdefault(key, {})[code] = None
    return {key: " ".join(codes) for key, codes in by_key.items()} | {
        f"={code}": "|".join(parts) for code, parts in by_code.items()
    }


def _compounds() -> Iterator[str]:
    """Common closed compounds of WordNet that are said as their parts are, with a bar between them."""
    seen = set()
    for word, _ in open_table("wordnet-words.tsv").items():
        if word in seen or not (7 <= len(word) <= 13 and word.isascii() and word.isalpha() and zipf(word) >= _KNOWN):
            continue
        seen.add(word)
        if (
            unfit(word)
            or not _common_noun(word)
            or _domain(word) not in _HOMELY
            or word.endswith(("ing", "age", "ship", "ton", "log"))
        ):
            continue
        for at in range(3, len(word) - 3):
            first, second = word[:at], word[at:]
            if _plain(first) and _plain(second) and _said_as(word, first, second):
                yield f"{first}|{second}"
                break


def _pictured() -> Iterator[str]:
    """Common words for things one sees and likes to see, long enough for a part to give way."""
    for word, _ in open_table("wordnet-words.tsv").items():
        if not (5 <= len(word) <= 11 and word.isascii() and word.isalpha() and zipf(word) >= _SEEN):
            continue
        if unfit(word) or not _common_noun(word) or _domain(word) not in _PICTURED or word.endswith(("ing", "er", "s")):
            continue
        concrete, felt = concreteness(word), feeling(word)
        if (concrete or 0) >= _CONCRETE and (felt or 0) >= 0 and 2 <= len(syllable_starts(source(word).bare)) <= 4:
            yield word


def _domain(word: str) -> str:
    """The WordNet domain of the leading sense of a word."""
    return lexicon().domain(lexicon().sense_strengths(word)[0][0])


def _plain(word: str) -> bool:
    return zipf(word) >= _PLAIN and not unfit(word) and _common_noun(word)


def _common_noun(word: str) -> bool:
    """Whether a word as it stands is first of all a noun, and no name."""
    book = lexicon()
    strengths = book.sense_strengths(word)
    return bool(strengths) and strengths[0][0][0] == "n" and word in book.entry(strengths[0][0]).words


def _said_as(word: str, first: str, second: str) -> bool:
    return source(word).bare == (*source(first).bare, *source(second).bare)


def _parts(text: str) -> Iterator[str]:
    words = text.split(" ")
    for place, word in enumerate(words):
        before = "".join(f"{other.replace('|', '')} " for other in words[:place])
        after = "".join(f" {other.replace('|', '')}" for other in words[place + 1 :])
        whole = word.replace("|", "")
        read = source(whole)
        if len(read.letters) != len(whole):  # hyphens and apostrophes are part of a saying's other words only
            continue
        if len(words) > 1:
            spans = [(0, len(whole))] if "function word" not in kinds(whole.casefold()) else []
        elif "|" in word:
            spans, at = [], 0
            for part in word.split("|"):
                spans.append((at, at + len(part)))
                at += len(part)
        else:
            spans = _ends(whole)
        for begin, end in spans:
            sounds = read.sounds[read.before[begin] : read.before[end]]
            if any(map(is_vowel, sounds)) and len(sounds) >= (2 if len(words) > 1 else 3):
                stress = max((sound[-1] for sound in sounds if is_vowel(sound)), key="021".index)
                fields = (before + whole[:begin], whole[begin:end], whole[end:] + after, code_of(sounds), stress)
                yield "~".join((*fields, str(read.before[begin])))


def _ends(word: str) -> list[tuple[int, int]]:
    """The letters of the first one or two syllables of a word, and of the last one or two."""
    read = source(word)
    starts = [*syllable_starts(read.bare), len(read.sounds)]

    def letter(sound: int) -> int:
        if sound == len(read.sounds):
            return len(word)
        return next(place for place in range(len(word) + 1) if read.before[place + 1] > sound)

    cuts = [letter(start) for start in starts]
    spans = {(0, cuts[1]), (cuts[-2], len(word))}
    if len(cuts) > 3:
        spans |= {(0, cuts[2]), (cuts[-3], len(word))}
    return sorted(spans)
