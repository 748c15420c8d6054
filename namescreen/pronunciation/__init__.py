"""How a name may sound: readings of words, phones, syllables, and how alike two readings sound."""

from __future__ import annotations

from .reading import Pronunciation, pronounce, pronounce_many, pronounce_words
from .syllables import Syllable, alliterates, rhyme, stress_pattern, syllabify, syllable_count

__all__ = [
    "Pronunciation",
    "Syllable",
    "alliterates",
    "pronounce",
    "pronounce_many",
    "pronounce_words",
    "rhyme",
    "stress_pattern",
    "syllabify",
    "syllable_count",
]
