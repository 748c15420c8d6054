"""The pronunciation of a word, as generation needs it."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

from ..pronunciation import pronounce, syllabify
from ..pronunciation.phones import is_vowel
from ..pronunciation.syllables import may_open

__all__ = ["is_onset", "is_vowel", "sounds_of", "syllable_starts"]


@lru_cache(maxsize=1 << 15)
def sounds_of(word: str) -> tuple[str, ...]:
    """The likeliest pronunciation of a folded word, ARPAbet with stress; empty without a letter a to z."""
    readings = pronounce(word, limit=1)
    return readings[0].phones if readings else ()


def is_onset(sounds: Sequence[str]) -> bool:
    """Whether what stands before the first vowel (nothing, or consonants) may begin an English syllable."""
    first = next((place for place, sound in enumerate(sounds) if is_vowel(sound)), len(sounds))
    return may_open(sounds[:first])


def syllable_starts(sounds: Sequence[str]) -> tuple[int, ...]:
    """Where each syllable starts among the sounds."""
    starts, at = [], 0
    for syllable in syllabify(sounds):
        starts.append(at)
        at += len(syllable.onset) + 1 + len(syllable.coda)
    return tuple(starts)
