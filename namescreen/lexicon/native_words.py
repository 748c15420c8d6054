"""Whether a word that no table has looks like one of a language, or like a coined name: a native word unknown here is
no invention, and what it says is not known.

A logistic model over its letters (how much likelier in that language than in English), its suffix, and whether it can
be taken apart as a compound or a derivation of known words. Fitted by wordlists/build/native_words.py on rare words of
each language and on coined names; how well it did on words left out is in wordlists/SOURCES.md.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from functools import cache, lru_cache
from typing import NamedTuple

from ..tables import open_table
from .foreign_derivation import SUFFIXES, compound_of, derived
from .foreign_forms import COMPOUNDING
from .frequency import frequency_languages, zipf
from .letter_patterns import bits_less, percentile
from .translation import compound_parts
from .wordnet import lexicon

__all__ = ["MORE_THAN_IN_ENGLISH", "NativeWord", "evidence", "native_word"]

NATIVE = 0.82
"""The chance from which a word is taken to be native to one language: of coined names, 2 in 100 reach it in each."""
IN_USE = 1.0
"""Zipf value from which texts of a language have a word (once in a hundred million words)."""
MORE_THAN_IN_ENGLISH = 0.3
"""How much more frequent it must be there than in English, in Zipf values: else it is a name or a loan."""
KNOWN = 2.5
"""Zipf value of an English word that readers know."""
_ENGLISH_ENDINGS = tuple(
    "ling let kin ster some ish ly ery ful less ness able hood ship ward like".split()
)
"""Living endings of English (H. Marchand, Categories and Types of Present-Day English Word-Formation, 1969)."""
SHORTEST = 5
"""Letters of the shortest word that is judged by its letters: shorter ones look like words of many languages."""
SHORTEST_PART = 4
"""Letters of each part of a compound in a language whose letters are not known here."""


class NativeWord(NamedTuple):
    """An unknown word that looks like one of `language` (BCP 47); `parts` are those it seems to be made of, empty where
    only its letters or texts of the language say so; `chance`, 0 to 1, how likely it is native rather than coined."""

    language: str
    parts: tuple[str, ...] = ()
    chance: float = 1.0

    @property
    def is_sure(self) -> bool:
        """Whether more than its letters say so: parts or a base that are known, or texts of the language."""
        return bool(self.parts) or self.chance == 1.0


def native_word(word: str, languages: Iterable[str]) -> NativeWord | None:
    """The folded `word` as one of the language of `languages` that it looks most like; None if it looks coined. To be
    asked of words that no table has."""
    found = max((_native(word, language) for language in languages), key=lambda one: one.chance, default=None)
    return found if found is not None and found.chance >= NATIVE else None


@lru_cache(maxsize=1 << 13)
def _native(word: str, language: str) -> NativeWord:
    parts = _parts(word, language)
    if language in frequency_languages() and zipf(word, language) >= max(IN_USE, zipf(word) + MORE_THAN_IN_ENGLISH):
        return NativeWord(language, parts)
    if not word.isascii() or not word.isalpha() or len(word) < SHORTEST or _is_english_derivation(word):
        return NativeWord(language, parts, 0.0)
    if f"language: {language}" not in _weights():
        return NativeWord(language, parts, float(bool(parts) and len(parts[0]) >= SHORTEST_PART))
    weights = _weights()
    told = sum(weights[name] * value for name, value in evidence(word, language).items())
    total = weights[f"language: {language}"] + told
    return NativeWord(language, parts, 1 / (1 + math.exp(-total)))


def _is_english_derivation(word: str) -> bool:
    """Whether an English reader sees a word with a living English ending (glowster)."""
    stems = (word.removesuffix(ending) for ending in _ENGLISH_ENDINGS if word.endswith(ending))
    return any(len(stem) > 3 and zipf(stem) >= KNOWN and lexicon().known(stem) for stem in stems)


def evidence(word: str, language: str) -> Mapping[str, float]:
    """What is asked of a folded word, for a language with letter patterns."""
    less = bits_less(word, language)
    suffixes = (one for one in SUFFIXES.get(language, "").split() if word.endswith(one))
    endings = [len(one) for one in suffixes if len(word) - len(one) > 2]
    compound = compound_parts(word, language) if language in COMPOUNDING else []
    return {
        "bits less than in English": less,
        "bits a letter": less / (len(word) + 1),
        "usual letters there": percentile(word, language) / 100,
        "usual letters in English": percentile(word, "en") / 100,
        "suffix of three letters": float(max(endings, default=0) >= 3),
        "suffix of four letters": float(max(endings, default=0) >= 4),
        "length": len(word) / 10,
        "compound": float(bool(compound)),
        "letters of the shortest part": min((len(part) for part, _ in compound), default=0) / 5,
        "derivation": float(bool(derived(word, language))),
    }


def _parts(word: str, language: str) -> tuple[str, ...]:
    """The known parts that a word seems to be made of: those of a compound, or its base."""
    if language in COMPOUNDING and (compound := compound_parts(word, language)):
        return tuple(part for part, _ in compound)
    if base := derived(word, language)[:1]:
        return base[0].parts[:1]
    return tuple(part.written for part in compound_of(word, language))


@cache
def _weights() -> dict[str, float]:
    return {name: float(weight) for name, weight in open_table("native_words.tsv").items()}
