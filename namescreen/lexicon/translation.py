"""Translation of words between other languages and English; all translation goes through this module.

Sources, each with its reliability in the score: goods lists of European trade marks in all their languages, our own
lists, wordnets, and the Wiktionary extension of the Open Multilingual Wordnet; see wordlists/SOURCES.md. Words are
looked up folded. A form that is not in the table is matched to words with the same stem. Failing that, a word may be
an international word in another spelling (Kronometer), or a compound, written as one word, of known parts
(Kräutertee: herbs, tea)."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache, lru_cache, reduce
from itertools import pairwise, product
from operator import or_
from typing import NamedTuple

from ..errors import DataError
from ..tables import open_table
from ..text import fold
from .association import association
from .foreign_filter import (
    LONGEST_COMPOUND,
    SHORTEST_COGNATE,
    SHORTEST_COMPOUND,
    SHORTEST_PART,
    compound_in,
    guessed_in,
    listed_in,
)
from .foreign_forms import (
    BITS,
    COMPOUNDING,
    WITH_DIMINUTIVES,
    bits_of,
    is_feminine_of,
    is_genitive_of,
    languages_by_stem,
    made_small,
    possible_stems,
    shared_with,
    skeleton,
)  # fmt: skip
from .frequency import frequency_languages, zipf

__all__ = [
    "Translation", "compound_parts", "english_senses", "equivalents_in", "is_in_use", "languages",
    "listed_translations", "translations",
]  # fmt: skip

INFLECTED = 0.95
"""The factor on the score of a translation found by the stem."""
SHORT_INFLECTED, LONG_ENOUGH = 0.6, 4
"""The same if fewer letters are shared: many words look like a form of a short word by chance."""
GENITIVE = 0.85
"""A further factor on a genitive that is a word itself: Dachs is a badger, and of a Dach, a roof."""
UNSEEN = 0.7
"""A further factor if the form is not in the language's list of frequencies and its base form is no everyday word: so
found by its stem, an invented word is mostly no form of it."""
EVERYDAY_SOURCES = "go"
COMPOUND = 0.85
"""The factor on the scores of the parts of a compound."""
COGNATE = 0.6
"""The score of an English word in another spelling: a guess, because there are false friends."""
DIMINUTIVE, SHORTEST_MADE_SMALL = 0.6, 4
"""The score of a diminutive of an everyday word, little and what the word means: a guess too, because invented names
have such endings; and the fewest letters of the word."""
MOST_PARTS = 3
SMALL_PART = 0.85
"""The score of a diminutive at the end of a compound: beside another known part it is hardly met by chance."""
RELIABILITY, FURTHER_PART = 20, 4
"""What a fully reliable split is worth, and a third part costs, in letters of the shortest part."""
SENSES_OF_A_PART = 5
UNLIKELY = 0.85
"""The factor on the score of a compound whose parts, so translated, have nothing to do with each other."""
MOST = 24
_COMPOUNDING, _WITH_DIMINUTIVES = bits_of(COMPOUNDING), bits_of(WITH_DIMINUTIVES)
_SOURCES = {
    "g": "goods lists", "o": "own list", "w": "wordnet", "k": "Wiktionary", "i": "spelling",
    "d": "diminutive",
}  # fmt: skip
_GUESSED = frozenset(("compound", "spelling"))


class Translation(NamedTuple):
    """One English sense of a word of another language.

    `language` is a BCP 47 code; `english` a word or a few, folded; `score`, in [0, 1], how reliable the reading
    is: 1 for a term found so in goods lists, less for a minor sense, an inflected form or a compound; `source`
    where it comes from. `parts` are the parts of a compound, in its own language, where the reading rests on them.
    """

    language: str
    english: str
    score: float
    source: str
    parts: tuple[str, ...] = ()

    @property
    def guessed(self) -> bool:
        """Whether no list has the word, and its parts or another spelling say what it means."""
        return self.source in _GUESSED


@cache
def languages() -> tuple[str, ...]:
    """The BCP 47 codes of the languages with a table. A word of any other language is not checked."""
    listed = open_table("foreign_words.tsv").get("*languages")
    if not listed:
        table = open_table("foreign_words.tsv")
        raise DataError(table.path, "does not say its languages", "Install namescreen again")
    return tuple(listed.split())


@lru_cache(maxsize=1 << 15)
def translations(word: str, language: str | None = None) -> tuple[Translation, ...]:
    """The English senses of `word`, best first; of one language, or of all in `languages()` for None.

    Empty if nothing is known, or if the language has no table: `languages()` tells the two apart.
    """
    folded = fold(word)
    listed = listed_translations(folded, language)
    return _best([*listed, *(Translation(*one) for one in _guessed(folded, language, listed))])


def english_senses(word: str) -> tuple[str, ...]:
    """The English of the `translations` of a word, each once, the best first."""
    folded = fold(word)
    listed = listed_translations(folded)
    rows = [(-score, code, english) for code, english, score, _ in _guessed(folded, None, listed)]
    rows += [(-one.score, one.language, one.english) for one in listed]
    rows.sort()
    return tuple(dict.fromkeys([english for _, _, english in rows[:MOST]]))


def _guessed(folded: str, language: str | None, listed: Iterable[Translation]) -> list[tuple[str, str, float, str]]:
    """What a word may be in languages in which it is not listed, as the first fields of `Translation`s."""
    if not guessed_in(folded):
        return []
    known = {one.language for one in listed}
    guessable = reduce(or_, _respelled(folded).values(), _WITH_DIMINUTIVES)
    return [
        (code, english, score, _SOURCES[source])
        for code in _asked(language)
        if BITS[code] & guessable and code not in known
        for english, score, source in _diminutive(folded, code) or _international(folded, code)
    ]


def listed_translations(folded: str, language: str | None = None, compounds: bool = True) -> tuple[Translation, ...]:
    """As `translations`, for a folded word, without guessing an English word in another spelling; without `compounds`
    it is not read as a compound either."""
    compounds = compounds and SHORTEST_COMPOUND <= len(folded) <= LONGEST_COMPOUND
    return _with_compounds(folded, language) if compounds else _without_compounds(folded, language)


@lru_cache(maxsize=1 << 15)
def _without_compounds(folded: str, language: str | None) -> tuple[Translation, ...]:
    return _best(list(_of_entries(folded, language)))


@lru_cache(maxsize=1 << 14)
def _with_compounds(folded: str, language: str | None) -> tuple[Translation, ...]:
    found = list(_of_entries(folded, language))
    may = compound_in(folded)
    if may:
        beginnings = (folded[:cut] for cut in range(SHORTEST_PART, len(folded) - SHORTEST_PART + 1))
        may &= reduce(or_, map(_possible_in, beginnings), 0)
    for one in found:
        may &= ~BITS[one.language]
    for code in _asked(language):
        if BITS[code] & may:
            found += _compound(folded, code)
    return _best(found)


@lru_cache(maxsize=1 << 12)
def _of_entries(folded: str, language: str | None) -> tuple[Translation, ...]:
    if not listed_in(folded):
        return ()
    found = ((code, sense) for code, read in _entries(folded, _asked(language)).items() for sense in read)
    return tuple([Translation(code, english, score, _SOURCES[source]) for code, (english, score, source) in found])


_bits_of = lru_cache(maxsize=64)(bits_of)


@lru_cache(maxsize=64)
def _asked(language: str | None) -> tuple[str, ...]:
    return languages() if language is None else tuple(code for code in languages() if code == language)


def _best(found: list[Translation]) -> tuple[Translation, ...]:
    if len(found) < 2:
        return tuple(found)
    return tuple(sorted(found, key=lambda one: (-one.score, one.language, one.english))[:MOST])


@lru_cache(maxsize=1 << 13)
def equivalents_in(english: str, language: str) -> tuple[str, ...]:
    """The words of `language` that mean the `english` word or phrase, folded, the most reliable first."""
    listed = open_table("foreign_of.tsv").get(fold(english)) or ""
    pairs = (entry.split(":") for entry in listed.split(","))
    return tuple(word for code, *words in pairs if code == language for word in words)


Senses = list[tuple[str, float, str]]
"""English, score and the letter of the source."""


@lru_cache(maxsize=1 << 14)
def _row(key: str) -> tuple[tuple[str, str, str], ...]:
    """The entry of a stem: language, word, senses as they are written. Most words with the stem turn out to be others,
    so their senses are not read."""
    value = open_table("foreign_words.tsv").get(key)
    parts = (entry.split("|", 2) for entry in value.split(";")) if value else ()
    return tuple([(code, word or key, senses) for code, word, senses in parts])


def _read(senses: str) -> Senses:
    found = (sense.rpartition(":") for sense in senses.split("|"))
    return [(english, int(score[:-1]) / 100, score[-1]) for english, _, score in found]


def _entries(word: str, asked: tuple[str, ...], linked: bool = False) -> dict[str, Senses]:
    """The senses of `word` by language: its own, and with a lower score those of words with the same stem; `linked`, as
    it stands before another part of a compound."""
    found: dict[str, dict[str, tuple[str, float, str]]] = {}
    own = {code for code, listed, _ in _row(word) if listed == word}
    of_masculine: dict[str, Senses] = {}
    for key, codes in _listed_stems(word, asked):
        for code, listed, senses in _row(key):
            if not BITS[code] & codes:
                continue
            if is_feminine_of(word, listed, code):
                of_masculine[code] = [(english, score * INFLECTED, source) for english, score, source in _read(senses)]
            same = len(word) if listed == word else shared_with(word, listed, code, linked)
            if same:
                kept = 1.0 if listed == word else INFLECTED if same >= LONG_ENOUGH else SHORT_INFLECTED
                kept *= GENITIVE if code in own and is_genitive_of(word, listed, code) else 1.0
                rarer = kept if listed == word or is_in_use(word, code) else kept * UNSEEN
                best = found.setdefault(code, {})
                for english, listed_score, source in _read(senses):
                    score = listed_score * (kept if source in EVERYDAY_SOURCES else rarer)
                    if english not in best or best[english][1] < score:
                        best[english] = (english, score, source)
    return of_masculine | {code: list(best.values()) for code, best in found.items()}


def _listed_stems(word: str, asked: tuple[str, ...]) -> list[tuple[str, int]]:
    """The stems of `word` that are in the table, each with the languages among those `asked` in which it is one. Those
    of the first language come first, the longest ending first: of equally good senses the first counts."""
    wanted = _bits_of(asked)
    found = [(stem, both) for stem, those in languages_by_stem(word).items() if (both := those & wanted) and _row(stem)]

    def place(one: tuple[str, int]) -> tuple[int, int]:
        first = next(at for at, code in enumerate(asked) if one[1] & BITS[code])
        return first, possible_stems(word, asked[first]).index(one[0])

    return sorted(found, key=place) if len(found) > 1 else found


def is_in_use(word: str, language: str) -> bool:
    """Whether the folded `word`, in whatever form, is in the list of frequencies of a language; not so without one."""
    return language in frequency_languages() and zipf(word, language) > 0


@lru_cache(maxsize=1 << 16)
def _languages_of_part(part: str) -> int:
    """The languages (`BITS`) in whose compounds `part` may stand."""
    found = 0
    for stem, languages in languages_by_stem(part).items():
        found |= languages & _languages_of_stem(stem)
    return found


@lru_cache(maxsize=1 << 15)
def _languages_of_stem(stem: str) -> int:
    """The languages in which a word with this stem may stand in a compound."""
    return bits_of((open_table("foreign_parts.tsv").get(stem) or "").split())


@lru_cache(maxsize=1 << 16)
def _possible_in(part: str) -> int:
    """The languages in which `part` may be a part of a compound, an international word in another spelling included."""
    if part[0] == part[1]:  # honungs-sked, not honung-ssked
        return 0
    respelled = _respelled(part).values() if len(part) > SHORTEST_COGNATE else ()
    return _languages_of_part(part) | (_COMPOUNDING & reduce(or_, respelled, 0))


def _compound(word: str, language: str) -> list[Translation]:
    parts = compound_parts(word, language)
    if not parts:
        return []
    choices = [
        sorted(senses, key=lambda one: (-one[1], -familiarity(one[0]), one[0]))[:SENSES_OF_A_PART]
        for _, senses in parts
    ]
    found: dict[str, float] = {}
    for chosen in product(*choices):
        words = [sense for sense, _, _ in chosen]
        likely = UNLIKELY + (1 - UNLIKELY) * _goes_together(words)
        score = COMPOUND * min(score for _, score, _ in chosen) * likely
        english = " ".join(words)
        found[english] = max(score, found.get(english, 0.0))
    names = tuple(part for part, _ in parts)
    best = sorted(found.items(), key=lambda pair: (-pair[1], pair[0]))[:MOST]
    return [Translation(language, english, round(score, 4), "compound", names) for english, score in best]


def familiarity(english: str) -> float:
    """How well an English word or phrase is known: the Zipf value of its rarest word."""
    return min(map(zipf, english.split()), default=0.0)


def _goes_together(words: list[str]) -> float:
    """How likely the senses of the parts are meant together, in [0, 1]: what they have to do with each other."""
    linked = [association(one, other) or 0.0 for one, other in pairwise(words)]
    return sum(linked) / len(linked)


Part = tuple[str, Senses]


def compound_parts(word: str, language: str) -> list[Part]:
    """The known parts of a folded compound of `language`, each as it is written with its senses (English, score, letter
    of the source); empty if it is none."""
    return _split(word, language, MOST_PARTS) if SHORTEST_COMPOUND <= len(word) <= LONGEST_COMPOUND else []


def _split(word: str, language: str, most: int) -> list[Part]:
    """The best split of `word` into known parts: few, long and reliable ones; empty if there is none."""
    best: tuple[float, list[Part]] = (0.0, [])
    bit = BITS[language]
    for cut in range(SHORTEST_PART, len(word) - SHORTEST_PART + 1):
        first, rest = word[:cut], word[cut:]
        # What is remembered is asked first: beginnings are those of other words, and every cut of a rest has its end.
        if most > 2 and not (bit & _possible_in(first) and _part(first, language, True)):
            continue
        last = _part(rest, language, False) if bit & _possible_in(rest) else []
        last = last or [(english, SMALL_PART, source) for english, _, source in _diminutive(rest, language)]
        left = _part(first, language, True) if last or most > 2 else []
        if not left:
            continue
        tail = [(rest, last)] if last else _split(rest, language, most - 1) if most > 2 and cut > SHORTEST_PART else []
        if tail:
            parts = [(first, left), *tail]
            lengths = [len(part) for part, _ in parts]
            reliable = [max(score for _, score, _ in senses) for _, senses in parts]
            value = min(lengths) + RELIABILITY * min(reliable) - FURTHER_PART * (len(parts) - 2)
            if value > best[0]:
                best = (value, parts)
    return best[1]


def _diminutive(word: str, language: str) -> Senses:
    """What `word` means as a diminutive of an everyday word of the language."""
    if language not in WITH_DIMINUTIVES:
        return []
    bases = (base for base in made_small(word, language) if len(base) >= SHORTEST_MADE_SMALL)
    for senses in (_entries(base, (language,)).get(language, []) for base in bases if is_in_use(base, language)):
        everyday = [english for english, score, source in senses if score >= 1 and source in EVERYDAY_SOURCES]
        if everyday:
            return [(f"little {english}", DIMINUTIVE, "d") for english in everyday]
    return []


def _international(word: str, language: str) -> Senses:
    """The English words of which a word of a language is another spelling: kronometer, chronometer."""
    stems = [stem for stem, languages in _respelled(word).items() if BITS[language] & languages]
    if len(stems) > 1:
        stems.sort(key=possible_stems(word, language).index)
    return [(english, COGNATE, "i") for english in _spelt_otherwise(stems[0])] if stems else []


@lru_cache(maxsize=1 << 14)
def _respelled(word: str) -> dict[str, int]:
    """The stems of `word` that may be another spelling of an English word, each with its languages."""
    return {stem: languages for stem, languages in languages_by_stem(word).items() if _spelt_otherwise(stem)}


@lru_cache(maxsize=1 << 15)
def _spelt_otherwise(stem: str) -> tuple[str, ...]:
    """The English words that a stem may be another spelling of; most languages have the same stems of a word."""
    key = skeleton(stem)
    listed = open_table("international_words.tsv").get(key) if len(key) >= SHORTEST_COGNATE else None
    return tuple(listed.split(",")) if listed else ()


@lru_cache(maxsize=1 << 14)
def _part(part: str, language: str, linked: bool) -> Senses:
    """The senses of a part of a compound, which carries a linking element where another follows, or is inflected."""
    if not BITS[language] & _possible_in(part):
        return []
    if not BITS[language] & _languages_of_part(part):
        return _international(part, language)
    senses = _entries(part, (language,), linked).get(language, [])
    return senses if len(part) > SHORTEST_PART or any(source in "go" for _, _, source in senses) else []
