"""How alike two words sound: the closest of their plausible readings.

There is no single correct pronunciation of a mark (TMEP 1207.01(b)(iv)), so every word brings several readings
and the closest pair counts, a less likely reading a little less.
"""

from __future__ import annotations

from functools import lru_cache
from itertools import groupby

from ..names import ways_to_say
from ..pronunciation import pronounce_words, sound_closeness
from .vocabulary import is_known

__all__ = ["FLOOR", "codes_of", "said_in_one", "sound_of_words", "spoken_codes"]

FLOOR = 0.6
"""Raw likeness at or below which two words are not heard as alike at all: the level that 1 in 100 of random
pairs of words from the lexicon reaches (measured)."""

READINGS, OF_KNOWN_WORDS = 3, 2
"""How many readings are compared: of a name or an invented word, which has no settled reading, and of a known word."""


@lru_cache(maxsize=1 << 16)
def codes_of(word: str) -> tuple[str, ...]:
    """The sound codes of the plausible readings of one folded word, most likely first; empty if unreadable."""
    known = is_known(word)
    return spoken_codes(ways_to_say(word, is_known), OF_KNOWN_WORDS if known else READINGS)


def said_in_one(code: str) -> str:
    """`code` with two equal sounds that meet said as one, as English says them where words join (ex seed: exceed)."""
    return "".join([sound for sound, _ in groupby(code)])


def spoken_codes(ways: tuple[tuple[str, ...], ...], limit: int = READINGS) -> tuple[str, ...]:
    """The sound codes of a name or word that may be said in these ways, at most `limit` of them.

    The best reading of each way comes first, then the second readings.
    """
    said = [pronounce_words(way, limit) for way in ways]
    codes: dict[str, None] = {}
    for place in range(limit):
        for readings in said:
            code = readings[place].code if place < len(readings) else ""
            if code:
                codes.setdefault(said_in_one(code))
    return tuple(codes)[:limit]


@lru_cache(maxsize=1 << 16)
def sound_of_words(one: tuple[str, ...], other: tuple[str, ...], least: float) -> float:
    """Raw likeness in sound of two words given by the codes of their readings: in [0, 1], 1 = sound the same.

    A value below `least` may come out as 0.
    """
    best = 0.0
    for mine in one:
        for yours in other:
            best = max(best, sound_closeness(mine, yours, max(best, least)))
    return best
