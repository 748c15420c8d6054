"""Shapes of letters that are taken for one another, and the arithmetic that numbers and arrays of them share."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, TypeVar

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

__all__ = ["SHAPE_ONLY", "Numbers", "above_floor", "confusable_skeleton", "greater", "positive_part"]

Numbers = TypeVar("Numbers", float, "NDArray[np.float64]")
"""One number or an array of them: the arithmetic of a pair of words is also that of a whole register."""

SHAPE_ONLY = 0.97
"""Similarity of words that differ only by shapes easily taken for one another (modern, modem)."""

# Shapes taken for one another at a glance: common practice, no source; the digit pairs are also in Unicode's
# confusables data (UTS #39).
_SHAPES = (("rn", "m"), ("vv", "w"), ("cl", "d"), ("0", "o"), ("1", "l"), ("i", "l"), ("5", "s"), ("8", "b"))


@lru_cache(maxsize=1 << 16)
def confusable_skeleton(word: str) -> str:
    """`word` with each easily confused shape replaced by one stand-in."""
    for seen, stands_for in _SHAPES:
        word = word.replace(seen, stands_for)
    return word


def above_floor(raw: Numbers, floor: float) -> Numbers:
    """`raw` rescaled so that `floor` and below is 0 and 1 stays 1."""
    return positive_part((raw - floor) / (1.0 - floor))


def greater(one: Numbers, other: Numbers) -> Numbers:
    """The greater of two."""
    return one + positive_part(other - one)


def positive_part(value: Numbers) -> Numbers:
    """`value` where it is above 0, else 0; exact."""
    return (value + abs(value)) / 2
