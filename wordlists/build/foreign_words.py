"""Build the tables of words of other languages and what they mean in English.

    NLTK_DATA=FOLDER python wordlists/build/foreign_words.py --omw FOLDER --goods foreign_goods.csv [--to FOLDER]

foreign_words.tsv   stem -> LANGUAGE|WORD|ENGLISH:SCORE SOURCE|...;... (WORD is left empty where it is the stem); and
                    *languages -> the languages
foreign_of.tsv      English -> LANGUAGE:WORD:WORD,...
international_words.tsv   what an English noun keeps in other spellings -> the nouns
foreign_parts.tsv   the stem of a word that may stand in a compound -> its languages
foreign_places.tsv  the name of a place -> the languages that call it so

Sources: the wordnets of the Open Multilingual Wordnet (under FOLDER/wns and in NLTK's omw-2.0) and its Wiktionary
extension (FOLDER/wikt), joined with WordNet 3.0 by synset; terms of one word in the goods lists of European trade
marks, which give every term in all languages; and our own lists in curated/. A wordnet's reading of a word counts
by how leading the sense is for the English word (cntlist of WordNet 3.0). Parts of compounds that no list has are
learned from the goods lists: if gummi is rubber and gummistempel a rubber stamp, stempel is a stamp. Run after
wordnet.py and frequencies.py."""

from __future__ import annotations

import argparse
import csv
import os
from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator
from functools import cache, lru_cache
from pathlib import Path

from sources import by_language, write_table
from word_kinds import place_senses

from namescreen.lexicon import frequency_languages, kinds, lexicon, zipf
from namescreen.lexicon.foreign_filter import SHORTEST_COGNATE
from namescreen.lexicon.foreign_forms import COMPOUNDING, base_stem, possible_stems, skeleton
from namescreen.tables import open_table, table_bytes
from namescreen.text import tokenize

LISTS = Path(__file__).parents[1]
CODES = {
    "de": "deu", "fr": "fra", "es": "spa", "it": "ita", "nl": "nld", "pt": "por", "sv": "swe", "da": "dan",
    "nb": "nob", "fi": "fin", "pl": "pol", "cs": "ces", "hu": "hun", "ro": "ron", "el": "ell", "tr": "tur",
    "bg": "bul", "et": "est", "hr": "hrv", "lt": "lit", "lv": "lav", "sk": "slk", "sl": "slv", "ru": "rus",
    "uk": "ukr", "la": "lat",
}  # fmt: skip
"""BCP 47 codes of the languages with a table, and what the wordnets call them."""
RELIABLE = {"o": 1.0, "g": 1.0, "w": 0.85, "k": 0.85}
MOST_SENSES = 6
LEAST_SHARE = 0.2
"""A sense with less than this share of the leading one is left out."""
FREQUENT_PART = 2.0
"""Zipf in its own language from which a word of the wordnets is looked for inside compounds."""
LIKELY = {"n": 1.0, "a": 0.7, "v": 0.5, "r": 0.3}
"""How likely a word on goods is meant as a noun, adjective, verb or adverb where it may be several."""
BEST_KNOWN = 3
"""So many of a sense's English words are kept, those best known."""
WORDY = 0.25
"""What a phrase counts beside a word of the same sense: a week is seldom called a calendar week. Not where the word may
be of another part of speech: nobody reads herbal as herb tea."""
COGNATE_ZIPF = 1.5
"""Zipf from which an English noun is looked for in other spellings."""
UNSURE, STEP = 45, 5
"""Scores below this many hundredths are too low to be gone by and only put senses in order: they are kept in steps,
which compress well."""
BACK = 0.5
"""Score from which a reading counts on the way back, from English."""

Readings = dict[str, dict[str, tuple[float, str]]]
"""Word -> English -> score and the letter of the source."""


def shown_score(score: float) -> int:
    """A score in hundredths, as the table keeps it."""
    hundredths = round(100 * score)
    return hundredths if hundredths >= UNSURE else max(STEP, hundredths // STEP * STEP)


def add(readings: Readings, word: str, english: str, score: float, source: str) -> None:
    """Note a reading unless a better one of the same words is there."""
    found = readings.setdefault(word, {})
    if english and english != "-" and score > found.get(english, (0.0, ""))[0]:
        found[english] = (score, source)


def plain(text: str) -> str:
    """An English term in the singular: folded, its last word brought to its base form if it is not a word itself."""
    *others, last = tokenize(text) or ("",)
    bases = lexicon().bases_by_pos(last).get("n", ())
    return " ".join((*others, last if last in bases or not bases else bases[0]))


def one_word(text: str) -> str | None:
    """The folded word, None for several."""
    words = tokenize(text)
    return words[0] if len(words) == 1 and len(words[0]) > 1 else None


def wordnet_files(omw: Path, language: str) -> Iterator[tuple[Path, str]]:
    """The files of a language, each with the letter of its kind."""
    code = CODES[language]
    nltk_data = Path(os.environ["NLTK_DATA"]) / "corpora" / "omw-2.0"
    for folder in (omw / "wns", nltk_data):
        for path in sorted(folder.glob(f"*/wn-data-{code}.tab")):
            yield path, "w"
    for path in (omw / "wikt").glob(f"wn-wikt-{code}.tab"):
        yield path, "k"


@cache
def is_one_kind(word: str) -> bool:
    """Whether all senses of an English word are of one part of speech."""
    return len({sense.pos for sense in lexicon().senses(word)}) == 1


def from_wordnets(omw: Path, language: str) -> Readings:
    """The readings that the wordnets of a language give; not to be changed."""
    senses: dict[str, Counter[tuple[str, str]]] = defaultdict(Counter)
    for path, letter in wordnet_files(omw, language):
        for line in path.read_text(encoding="utf-8").splitlines():
            cells = line.split("\t")
            if len(cells) > 2 and cells[1].endswith("lemma") and (word := one_word(cells[2])):
                offset, _, pos = cells[0].partition("-")
                senses[word][pos.replace("s", "a") + str(int(offset)), letter] += 1
    readings: Readings = {}
    for word, found in senses.items():
        weights: dict[str, float] = defaultdict(float)
        letters: dict[str, str] = {}
        for (sense_id, letter), times in sorted(found.items()):
            try:
                entry = lexicon().entry(sense_id)
            except KeyError:
                continue
            known = [(" ".join(tokenize(english)), s) for english, s in zip(entry.words, entry.strengths, strict=True)]
            one_word_says_it = any(" " not in key and is_one_kind(key) for key, _ in known)
            weighed = [
                (
                    LIKELY[sense_id[0]] * times * strength / 9 * familiar(key)
                    * (WORDY if one_word_says_it and " " in key else 1.0),
                    key,
                )
                for key, strength in known
                if key
            ]  # fmt: skip
            for weight, key in sorted(weighed, reverse=True)[:BEST_KNOWN]:
                weights[key] += weight
                letters.setdefault(key, letter)
        most = max(weights.values(), default=0.0)
        for key in sorted(weights, key=lambda key: (-weights[key], key))[:MOST_SENSES]:
            if weights[key] >= LEAST_SHARE * most:
                add(readings, word, key, RELIABLE[letters[key]] * weights[key] / most, letters[key])
    return readings


def familiar(english: str) -> float:
    """How well an English word or phrase is known, in (0, 1]: of all senses the one with a common word is likeliest."""
    return min(max(min(zipf(word) for word in english.split()), 1.0) / 4, 1.0)


Row = dict[str, str]
"""A row of the goods lists: language, word, english, class, records."""
Terms = dict[str, list[tuple[str, str, int]]]
"""Word, English and number of records of one-word terms, by language."""


def goods_rows(path: Path) -> list[Row]:
    """The rows of the file of goods terms."""
    with path.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def foreign_places(omw: Path) -> dict[str, str]:
    """The names, of one word, that the wordnets give the places of WordNet in each language."""
    senses = place_senses()
    found: dict[str, set[str]] = defaultdict(set)
    for language in CODES:
        for path, _ in wordnet_files(omw, language):
            for line in path.read_text(encoding="utf-8").splitlines():
                cells = line.split("\t")
                if len(cells) > 2 and cells[1].endswith("lemma") and cells[2][:1].isupper():
                    offset, _, pos = cells[0].partition("-")
                    if pos + offset.lstrip("0") in senses and (word := one_word(cells[2])):
                        found[word].add(language)
    return {word: " ".join(sorted(languages)) for word, languages in found.items()}


def from_goods(rows: Iterable[Row]) -> Terms:
    """The one-word terms of the goods lists."""
    terms: Terms = defaultdict(list)
    for row in rows:
        if row["language"] in CODES and (word := one_word(row["word"])):
            terms[row["language"]].append((word, plain(row["english"]), int(row["records"])))
    return terms


def curated(path: Path) -> Iterator[tuple[str, str, str]]:
    """Language, word and English of one of our own lists; - says that a language has no single word for it."""
    for english, cells in by_language(path):
        for language, forms in cells:
            for word in filter(None, map(one_word, forms.split())):
                yield language, word, english


def learn_parts(language: str, readings: Readings, terms: Iterable[tuple[str, str, int]]) -> Readings:
    """Parts of compounds whose meaning the goods lists show, where the other part is known."""
    seen: dict[str, Counter[str]] = defaultdict(Counter)
    by_stem: dict[str, set[str]] = defaultdict(set)
    for word, found in readings.items():
        for key in keys(word, found, language):
            by_stem[key].update(found)

    def means(part: str, english: str) -> bool:
        keys = possible_stems(part, language)
        return any(alike(one, english) for key in keys for one in by_stem.get(key, ()))

    for term, english, _ in terms:
        words = english.split()
        if len(words) != 2:
            continue
        for cut in range(3, len(term) - 2):
            left, right = term[:cut], term[cut:]
            if len(right) > 3 and means(left, words[0]):
                seen[right][words[1]] += 1
            if len(left) > 3 and means(right, words[1]):
                seen[left][words[0]] += 1
    learned: Readings = {}
    for part, meanings in seen.items():
        english, times = min(meanings.items(), key=lambda pair: (-pair[1], pair[0]))
        linked = part[0] in "sne" and part[1:] in seen  # the linking element of what stands before
        if not linked and (times > 1 or len(part) > 4):
            add(learned, part, english, 0.8 if times > 1 else 0.6, "g")
    return learned


def keys(word: str, found: dict[str, tuple[float, str]], language: str) -> Iterable[str]:
    """The stems under which a word is found: dictionaries list base forms, goods lists mostly plurals."""
    if any(source == "g" for _, source in found.values()):
        return possible_stems(word, language)
    return (base_stem(word, language),)


@lru_cache(maxsize=1 << 18)
def alike(one: str, other: str) -> bool:
    """Whether two English words say much the same."""
    return one == other or (lexicon().closeness(one, other) or 0.0) >= 0.65


def own_words() -> Iterator[tuple[str, str, str]]:
    """Language, word and English of all our own lists."""
    folder = LISTS / "curated"
    for path in (*sorted(folder.glob("foreign_*.txt")), *sorted(folder.glob("goods_words*.txt"))):
        yield from curated(path)


def draw(omw: Path, terms: Terms) -> dict[str, bytes]:
    """The five tables."""
    own = list(own_words())
    rows: dict[str, list[str]] = defaultdict(list)
    back: dict[str, dict[str, list[tuple[float, str]]]] = defaultdict(lambda: defaultdict(list))
    parts: dict[str, set[str]] = defaultdict(set)
    for language in CODES:
        readings = {word: dict(found) for word, found in from_wordnets(omw, language).items()}
        frequent = {word for word in readings if zipf(word, language) >= FREQUENT_PART} if counted(language) else set()
        for word, english, _records in sorted(terms.get(language, ()), key=lambda term: (-term[2], term[0], term[1])):
            add(readings, word, english, RELIABLE["g"], "g")
        for code, word, english in own:
            if code == language:
                add(readings, word, english, RELIABLE["o"], "o")
        sure = {word for word, found in readings.items() if any(source in "go" for _, source in found.values())}
        if language in COMPOUNDING:
            for word, found in learn_parts(language, readings, terms.get(language, ())).items():
                sure.add(word)
                for english, (score, source) in found.items():
                    add(readings, word, english, score, source)
            for word in frequent | sure:
                if len(word) > 2 and any(useful(english) for english in readings[word]):
                    for key in keys(word, readings[word], language):
                        parts[key].add(language)
        for word, found in readings.items():
            senses = sorted(found.items(), key=lambda pair: (-pair[1][0], pair[0]))
            shown = "|".join(f"{english}:{shown_score(score)}{source}" for english, (score, source) in senses)
            for key in keys(word, found, language) if shown else ():
                rows[key].append(f"{language}|{'' if word == key else word}|{shown}")
            for english, (score, _) in senses:
                if score >= BACK:
                    back[english][language].append((-score, word))
    return {
        "foreign_words": table_bytes(
            "foreign_words",
            [*((key, ";".join(sorted(entries))) for key, entries in rows.items()), ("*languages", " ".join(CODES))],
        ),
        "foreign_of": table_bytes(
            "foreign_of",
            (
                (
                    english,
                    ",".join(":".join([code, *(w for _, w in sorted(words)[:3])]) for code, words in found.items()),
                )
                for english, found in back.items()
            ),
        ),
        "international_words": table_bytes("international_words", international().items()),
        "foreign_parts": table_bytes("foreign_parts", ((part, " ".join(sorted(of))) for part, of in parts.items())),
        "foreign_places": table_bytes("foreign_places", foreign_places(omw).items()),
    }


def international() -> dict[str, str]:
    """English nouns by what they keep in other spellings, at most three, the most frequent first."""
    found: dict[str, list[tuple[float, str]]] = defaultdict(list)
    for word, _ in open_table("wordnet-words.tsv").items():
        plain = word.isascii() and word.isalpha() and len(skeleton(word)) >= SHORTEST_COGNATE
        if plain and zipf(word) >= COGNATE_ZIPF and word in lexicon().bases_by_pos(word).get("n", ()):
            found[skeleton(word)].append((-zipf(word), word))
    return {key: ",".join(word for _, word in sorted(words)[:3]) for key, words in found.items()}


def counted(language: str) -> bool:
    """Whether there is a frequency list."""
    return language in frequency_languages()


def useful(english: str) -> bool:
    """Whether an English word can say something inside a compound: no particle or function word."""
    return "function word" not in kinds(english) and len(english) > 1


def main() -> None:
    """Write the tables and the records of their sources."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--omw", type=Path, required=True)
    parser.add_argument("--goods", type=Path, required=True)
    parser.add_argument("--to", type=Path, default=LISTS)
    given = parser.parse_args()
    for name, contents in draw(given.omw, from_goods(goods_rows(given.goods))).items():
        write_table(
            given.to,
            f"{name}.tsv",
            contents,
            source="Open Multilingual Wordnet (wordnets and Wiktionary extension, see below); goods lists of EU trade "
            "marks (EUIPO open data); curated/foreign_*.txt and goods_words*.txt, written by us from memory",
            version="OMW 1.2 and 2.0; Wiktionary extension 2013; goods terms 2026-11",
            licence="of each wordnet as below; Wiktionary CC BY-SA 3.0; goods terms are facts of a public record; MIT",
            build="NLTK_DATA=FOLDER python wordlists/build/foreign_words.py --omw FOLDER --goods foreign_goods.csv",
            drawn="2026-11-29",
        )


if __name__ == "__main__":
    main()
