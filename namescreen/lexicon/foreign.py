"""The English equivalents of a foreign word for a buyer who knows both languages; none for an English word."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from .frequency import zipf
from .translation import Translation, english_senses, listed_translations
from .wordnet import lexicon

__all__ = ["Equivalent", "equivalents", "possible_meanings", "read_as_english"]

PLAIN_ENGLISH = 3.8
"""Zipf value in English from which a word is read as English and not translated (pain, chat, son): the doctrine of
foreign equivalents depends on whether the ordinary buyer would stop and translate (TMEP 1207.01(b)(vi)(A))."""
KNOWN_ENGLISH = 2.8
"""The same for a word of the English lexicon."""
COMMON_KNOWLEDGE = ("own list", "goods lists")
"""Sources of everyday words. Buyers read these even in a name or brand that English uses too."""
SURE = 0.65
"""Score from which a translation counts as what the word means."""
SHORTEST_PART = 4
"""The shortest part of a compound that counts: shorter ones occur in words by chance."""
SHORTEST = 3
"""The shortest word that is translated: too many shorter ones mean something in some language."""


class Equivalent(NamedTuple):
    """What a word means in one language (BCP 47 code), as an English word or a few."""

    language: str
    english: str


def read_as_english(word: str) -> bool:
    """Whether buyers take the folded `word` as English, whatever it means elsewhere."""
    common = zipf(word)
    return common >= PLAIN_ENGLISH or (common >= KNOWN_ENGLISH and lexicon().known(word))


def _is_sure(one: Translation) -> bool:
    """Whether a buyer would notice it. Invented words contain short parts, and resemble some word, by chance."""
    if one.language == "la":  # no market speaks it: only words that are widely known from names count
        return one.source == "own list"
    return one.score >= SURE and all(len(part) >= SHORTEST_PART for part in one.parts)


@lru_cache(maxsize=1 << 16)
def equivalents(word: str) -> tuple[Equivalent, ...]:
    """The English equivalents of the folded `word` in all languages with a table; empty if it is read as English.

    A missing word is unknown here; it may still have a meaning.
    """
    if len(word) < SHORTEST or read_as_english(word):
        return ()
    in_use = zipf(word) >= KNOWN_ENGLISH  # English uses it as a name or brand: only everyday words count
    # A word of the English lexicon, however rare, is not read as a compound of another language.
    listed = listed_translations(word, compounds=not lexicon().known(word))
    sure = (one for one in listed if _is_sure(one) and one.english != word)
    found = ((one.language, one.english) for one in sure if not in_use or one.source in COMMON_KNOWLEDGE)
    return tuple(Equivalent(language, english) for language, english in dict.fromkeys(found))


@lru_cache(maxsize=1 << 14)
def possible_meanings(word: str) -> tuple[str, ...]:
    """Every English sense the folded `word` may have in some language, likeliest first, uncertain ones included; empty
    if it is read as English. Use them to compare words, not to state a meaning."""
    if len(word) < SHORTEST or read_as_english(word):
        return ()
    return tuple([english for english in english_senses(word) if english != word])
