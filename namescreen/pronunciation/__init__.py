"""How a name may sound: readings of words, phones, syllables, and how alike two readings sound.

The doors that work on many codes at once load numpy, when they are first used.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from .alignment import align, sound_closeness
from .as_written import as_written
from .phonotactics import pronounceability
from .predictability import heard_as_spelled, spelled_as_heard, spellings
from .reading import Pronunciation, pronounce, pronounce_many, pronounce_words
from .respelling import say
from .syllables import Syllable, alliterates, may_open, rhyme, stress_pattern, syllabify, syllable_count

if TYPE_CHECKING:
    from .batch import SoundCodes, closeness_bound_many, prepare_codes, sound_closeness_many

__all__ = [
    "Pronunciation",
    "SoundCodes",
    "Syllable",
    "align",
    "alliterates",
    "as_written",
    "closeness_bound_many",
    "heard_as_spelled",
    "may_open",
    "prepare_codes",
    "pronounce",
    "pronounce_many",
    "pronounce_words",
    "pronounceability",
    "rhyme",
    "say",
    "sound_closeness",
    "sound_closeness_many",
    "spelled_as_heard",
    "spellings",
    "stress_pattern",
    "syllabify",
    "syllable_count",
]

_BATCH = ("SoundCodes", "closeness_bound_many", "prepare_codes", "sound_closeness_many")


def __getattr__(name: str) -> Any:
    if name in _BATCH:
        from . import batch

        return getattr(batch, name)
    raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
