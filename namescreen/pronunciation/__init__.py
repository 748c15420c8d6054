"""How a name may sound: readings of words, phones, syllables, and the similarity of two readings in sound.

`alignment_batch` works on many phoneme codes at once and loads numpy, so it is imported by itself.
"""

from __future__ import annotations

from .alignment import align, closest_similarity, sound_similarity
from .language_neutral import language_neutral_reading
from .phonotactics import pronounceability
from .predictability import heard_as_spelled, likely_codes, spelled_as_heard, spellings, words_heard
from .pronouncing import Pronunciation, pronounce, pronounce_many, pronounce_words
from .respelling import say
from .rimes import reading_by_rime
from .syllables import Syllable, alliterates, may_open, rhyme, stress_pattern, syllabify, syllable_count

__all__ = [
    "Pronunciation",
    "Syllable",
    "align",
    "alliterates",
    "closest_similarity",
    "heard_as_spelled",
    "language_neutral_reading",
    "likely_codes",
    "may_open",
    "pronounce",
    "pronounce_many",
    "pronounce_words",
    "pronounceability",
    "reading_by_rime",
    "rhyme",
    "say",
    "sound_similarity",
    "spelled_as_heard",
    "spellings",
    "stress_pattern",
    "syllabify",
    "syllable_count",
    "words_heard",
]
