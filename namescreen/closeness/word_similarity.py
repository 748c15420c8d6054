"""How alike two words are: in look, in sound, in meaning, and taken together."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from .appearance import Numbers, above_floor, appearance_similarity
from .features import Word
from .parameters import Parameters, shipped_parameters
from .sound import FLOOR as SOUND_FLOOR
from .sound import sound_similarity_of_words
from .vocabulary import meaning_similarity_of_words

__all__ = [
    "ASPECT_FLOOR",
    "ASPECT_SOUND_FLOOR",
    "SAME_MEANING",
    "AspectSimilarity",
    "aspect_similarity",
    "combine_aspects",
    "combine_look_and_sound",
    "similarity_of_words",
]

ASPECT_FLOOR, ASPECT_SOUND_FLOOR = 0.3, 0.45
"""As the floors of look and sound, for the aspect taken alone: lower, so that a partial likeness shows."""

SAME_MEANING = 0.5
"""Closeness in meaning from which two words say something alike; below it they say different things."""


class AspectSimilarity(NamedTuple):
    """Raw likeness of two words, each in [0, 1]; a sound below `ASPECT_SOUND_FLOOR` and a meaning below
    `SAME_MEANING` may show as 0.

    `meaning` is None where the lexicon does not know both words.
    """

    look: float
    sound: float
    meaning: float | None


_SAME = AspectSimilarity(1.0, 1.0, 1.0)


def aspect_similarity(one: Word, other: Word) -> AspectSimilarity:
    """The likeness of two words; the same letters are alike in everything."""
    if one.letters == other.letters:
        return _SAME
    return _cached_aspect_similarity(one.letters, one.phoneme_codes, other.letters, other.phoneme_codes)


@lru_cache(maxsize=1 << 17)
def _cached_aspect_similarity(
    letters: str, phoneme_codes: tuple[str, ...], other_letters: str, other_codes: tuple[str, ...]
) -> AspectSimilarity:
    return AspectSimilarity(
        appearance_similarity(letters, other_letters),
        sound_similarity_of_words(phoneme_codes, other_codes, ASPECT_SOUND_FLOOR),
        meaning_similarity_of_words(letters, other_letters, SAME_MEANING),
    )


def combine_aspects(pair: AspectSimilarity, parameters: Parameters) -> float:
    """Overall closeness of two words so alike, in [0, 1]: look and sound, raised or lowered by what they mean."""
    if pair is _SAME:
        return 1.0
    seen_or_heard = combine_look_and_sound(above_floor(pair.look), above_floor(pair.sound, SOUND_FLOOR), parameters)
    if pair.meaning is None:
        return seen_or_heard
    if pair.meaning < SAME_MEANING:
        return seen_or_heard * parameters.different_meaning
    return max(seen_or_heard, pair.meaning * parameters.meaning_share)


def combine_look_and_sound(look: Numbers, sound: Numbers, parameters: Parameters) -> Numbers:
    """Closeness of words so alike in look and sound, meaning apart: `stronger_aspect` times the stronger of the two
    and the rest times their mean."""
    return (look + sound + parameters.stronger_aspect * abs(look - sound)) / 2


def similarity_of_words(one: Word, other: Word, parameters: Parameters | None = None) -> float:
    """Overall closeness of two words, in [0, 1], 1 = the same letters; symmetric."""
    return combine_aspects(aspect_similarity(one, other), parameters or shipped_parameters())
