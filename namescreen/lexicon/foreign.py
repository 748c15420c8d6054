"""What a buyer who knows both languages reads in a foreign word: its sure translations, if it is no English word."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from .frequency import zipf
from .translation import Translation, listed_translations, translations
from .wordnet import lexicon

__all__ = ["Equivalent", "equivalents", "possible_meanings"]

PLAIN_ENGLISH = 3.8
"""Zipf value in English from which a word is read as English and not translated (pain, chat, son); the doctrine of
foreign equivalents asks whether the ordinary buyer would stop and translate (TMEP 1207.01(b)(vi)(A))."""
KNOWN_ENGLISH = 2.8
"""The same for a word of the English lexicon."""
COMMON_KNOWLEDGE = ("own list", "goods lists")
"""Sources of everyday words, which are read in a name or brand that is in use in English as well."""
SURE = 0.65
"""Score from which a translation counts as what the word means."""
SHORTEST_PART = 4
"""Shorter parts of compounds are seen everywhere."""
SHORTEST = 3
"""Shorter words are left out: too many of them mean something in some language."""


@dataclass(frozen=True, slots=True)
class Equivalent:
    """What a word means in one language (BCP 47 code), as an English word or a few."""

    language: str
    english: str


def _read_as_english(word: str) -> bool:
    common = zipf(word)
    return common >= PLAIN_ENGLISH or (common >= KNOWN_ENGLISH and lexicon().known(word))


def _is_sure(one: Translation) -> bool:
    """Whether a buyer would see it: invented words fall into short parts, and look like some word, by chance."""
    if one.language == "la":  # nobody's market: only the words that many know from names
        return one.source == "own list"
    return one.score >= SURE and all(len(part) >= SHORTEST_PART for part in one.parts)


@lru_cache(maxsize=1 << 16)
def equivalents(word: str) -> tuple[Equivalent, ...]:
    """The English equivalents of the folded `word` in all languages with a table; empty if it is read as English.

    A word that is missing is not known here, which is not the same as meaningless.
    """
    if len(word) < SHORTEST or _read_as_english(word):
        return ()
    in_use = zipf(word) >= KNOWN_ENGLISH  # a name or brand met in English: only what everyone knows is read in it
    # A word of the English lexicon, however rare, is not read as a compound of another language.
    listed = listed_translations(word, compounds=not lexicon().known(word))
    sure = (one for one in listed if _is_sure(one) and one.english != word)
    found = ((one.language, one.english) for one in sure if not in_use or one.source in COMMON_KNOWLEDGE)
    return tuple(Equivalent(language, english) for language, english in dict.fromkeys(found))


@lru_cache(maxsize=1 << 14)
def possible_meanings(word: str) -> tuple[str, ...]:
    """Every English sense the folded `word` may have in some language, likeliest first, sure or not; empty if it is
    read as English. Enough to find what a word has in common with another, too little to say what it means."""
    if len(word) < SHORTEST or _read_as_english(word):
        return ()
    return tuple(dict.fromkeys(one.english for one in translations(word) if one.english != word))
