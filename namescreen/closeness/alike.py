"""How alike two words are: in look, in sound, in meaning, and taken together."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from .appearance import above_floor, letters_closeness
from .parameters import Parameters, shipped_parameters
from .prepare import Word
from .sound import FLOOR as SOUND_FLOOR
from .sound import sound_of_words
from .vocabulary import meaning_of_words

__all__ = ["ASPECT_FLOOR", "ASPECT_SOUND_FLOOR", "SAME_MEANING", "Alike", "alike", "together", "word_closeness"]

ASPECT_FLOOR, ASPECT_SOUND_FLOOR = 0.3, 0.45
"""As the floors of look and sound, for the aspect taken alone: lower, so that a partial likeness shows."""

SAME_MEANING = 0.5
"""Closeness in meaning from which two words say something alike; below it they say different things."""


class Alike(NamedTuple):
    """Raw likeness of two words, each in [0, 1]; a sound below `ASPECT_SOUND_FLOOR` and a meaning below
    `SAME_MEANING` may show as 0.

    `meaning` is None where the lexicon does not know both words.
    """

    look: float
    sound: float
    meaning: float | None


_SAME = Alike(1.0, 1.0, 1.0)


def alike(one: Word, other: Word) -> Alike:
    """The likeness of two words; the same letters are alike in everything."""
    if one.letters == other.letters:
        return _SAME
    return _alike(one.letters, one.codes, other.letters, other.codes)


@lru_cache(maxsize=1 << 17)
def _alike(letters: str, codes: tuple[str, ...], other_letters: str, other_codes: tuple[str, ...]) -> Alike:
    return Alike(
        letters_closeness(letters, other_letters),
        sound_of_words(codes, other_codes, ASPECT_SOUND_FLOOR),
        meaning_of_words(letters, other_letters, SAME_MEANING),
    )


def together(pair: Alike, parameters: Parameters) -> float:
    """Overall closeness of two words so alike, in [0, 1]: look and sound, raised or lowered by what they mean."""
    if pair is _SAME:
        return 1.0
    look, sound = above_floor(pair.look), above_floor(pair.sound, SOUND_FLOOR)
    share = parameters.stronger_aspect
    seen_or_heard = share * max(look, sound) + (1 - share) * (look + sound) / 2
    if pair.meaning is None:
        return seen_or_heard
    if pair.meaning < SAME_MEANING:
        return seen_or_heard * parameters.different_meaning
    return max(seen_or_heard, pair.meaning * parameters.meaning_share)


def word_closeness(one: Word, other: Word, parameters: Parameters | None = None) -> float:
    """Overall closeness of two words, in [0, 1], 1 = the same letters; symmetric."""
    return together(alike(one, other), parameters or shipped_parameters())
