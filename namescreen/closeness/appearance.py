"""The similarity of two words in appearance: letters, their order, and their places. Everything here works on folded
words (see `text.fold`). All values are in [0, 1], 1 = look the same.
"""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, TypeVar

from rapidfuzz.distance import OSA, Indel

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

__all__ = [
    "DIFFERENT",
    "FLOOR",
    "INSIDE",
    "INSIDE_ELSEWHERE",
    "INSIDE_START",
    "ORDER",
    "PREFIX_BONUS",
    "PREFIX_LETTERS",
    "SHAPE_ONLY",
    "SHORTEST_INSIDE",
    "Numbers",
    "above_floor",
    "add_shared_letter",
    "appearance_similarity",
    "confusable_skeleton",
    "edits_and_order",
    "inside",
    "positive_part",
]

Numbers = TypeVar("Numbers", float, "NDArray[np.float64]")
"""One number or an array of them: the arithmetic of a pair of words is also that of a whole register."""

FLOOR = 0.5
"""Raw similarity at or below which two words count as not similar at all. Unrelated words of equal length have half of
their letters in place by chance in 1 of 50 random pairs from the lexicon (measured). The floor also makes the search of
a register exact, because most words then score 0 by definition."""

PREFIX_LETTERS, PREFIX_BONUS = 4, 0.08
"""Each of the first letters shared closes this share of the remaining gap: the beginning of a mark weighs most
(TMEP 1207.01(b); EUIPO Guidelines, part C, section 2, chapter 4). Size: common practice, no source; the form is
Winkler's (1990), with a slightly smaller step than his 0.1 because order is already measured."""

ORDER = 0.5
"""Share of raw similarity that comes from letters in a common order, the rest from edits; ours."""

INSIDE, INSIDE_START, INSIDE_ELSEWHERE, SHORTEST_INSIDE = 0.45, 0.55, 0.5, 3
"""Raw similarity of a word of at least three letters that is contained in another; what its share of the length adds if
it begins the other word, and if it stands elsewhere (one mark incorporated in the other: TMEP 1207.01(b)(iii))."""

DIFFERENT = 0.99
"""The highest similarity of two words whose letters differ in any way."""

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


@lru_cache(maxsize=1 << 16)
def appearance_similarity(one: str, other: str) -> float:
    """Raw similarity of two folded words by letters: 1 = the same; symmetric. See `above_floor`."""
    if one == other:
        return 1.0
    if not one or not other:
        return 0.0
    raw = max(_in_order(one, other), SHAPE_ONLY * _in_order(confusable_skeleton(one), confusable_skeleton(other)))
    short, long = sorted((one, other), key=len)
    if len(short) >= SHORTEST_INSIDE and short in long:
        share = INSIDE_START if long.startswith(short) else INSIDE_ELSEWHERE
        raw = max(raw, inside(len(short), len(long), share))
    return min(raw, DIFFERENT)


def inside(shorter: Numbers, longer: Numbers, share: float) -> Numbers:
    """Raw similarity of a word and a longer one that contains it, by their numbers of letters and the weight of the
    share."""
    return INSIDE + share * shorter / longer


def edits_and_order(edits: Numbers, order: Numbers) -> Numbers:
    """Raw similarity from the similarity by edits (OSA) and by letters in a common order (Indel), each in [0, 1]."""
    return (1 - ORDER) * edits + ORDER * order


def add_shared_letter(raw: Numbers) -> Numbers:
    """`raw` raised for one more first letter that two words share."""
    return raw + PREFIX_BONUS * (1 - raw)


def _in_order(one: str, other: str) -> float:
    """Restricted Damerau-Levenshtein similarity (adjacent letters swapped count once), prefix weighed more."""
    raw = edits_and_order(OSA.normalized_similarity(one, other), Indel.normalized_similarity(one, other))
    for mine, yours in zip(one[:PREFIX_LETTERS], other[:PREFIX_LETTERS], strict=False):
        if mine != yours:
            break
        raw = add_shared_letter(raw)
    return raw


def above_floor(raw: Numbers, floor: float = FLOOR) -> Numbers:
    """`raw` rescaled so that `floor` and below is 0 and 1 stays 1."""
    return positive_part((raw - floor) / (1.0 - floor))


def positive_part(value: Numbers) -> Numbers:
    """`value` where it is above 0, else 0; exact."""
    return (value + abs(value)) / 2
