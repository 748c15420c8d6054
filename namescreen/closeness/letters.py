"""The similarity of two strings in appearance: a few measures of letters and their weighted mean. All work on folded
strings (see `text.fold`), a word or an unspaced name, and are in [0, 1], 1 = the same.
"""

from __future__ import annotations

from functools import lru_cache

from rapidfuzz.distance import OSA, Indel, LCSseq, Postfix, Prefix

from .appearance import SHAPE_ONLY, confusable_skeleton
from .model import PARTS, shipped_model

__all__ = ["LETTER_MEASURES", "letter_measures", "look"]

LETTER_MEASURES = PARTS["look"]
"""What `letter_measures` gives, in this order.

edits: 1 - restricted Damerau-Levenshtein distance over the longer length, shapes easily confused counting almost as the
same. common letters: the longest common subsequence over the mean length. common bigrams in order: the same of pairs of
letters over the longer length, the first letter doubled, so that it counts more (as BI-SIM, Kondrak 2005, without its
half matches). common bigrams: Dice's coefficient over the sets of the pairs, wherever they stand. beginning and ending:
the letters shared there over the longer length. first letter: whether it is the same."""


def letter_measures(one: str, other: str) -> tuple[float, ...]:
    """The measures of two strings that are not empty, in the order of `LETTER_MEASURES`; symmetric."""
    longer = max(len(one), len(other))
    ours, theirs = _bigrams(one), _bigrams(other)
    shapes = OSA.normalized_similarity(confusable_skeleton(one), confusable_skeleton(other))
    return (
        max(OSA.normalized_similarity(one, other), SHAPE_ONLY * shapes),
        Indel.normalized_similarity(one, other),
        LCSseq.similarity(ours, theirs) / longer,
        2 * len(_set(one) & _set(other)) / (len(_set(one)) + len(_set(other))),
        Prefix.similarity(one, other) / longer,
        Postfix.similarity(one, other) / longer,
        float(one[0] == other[0]),
    )


@lru_cache(maxsize=1 << 17)
def look(one: str, other: str) -> float:
    """The similarity of two strings in appearance, in [0, 1]; 1 only for the same letters; 0 if either is empty;
    symmetric."""
    if one == other:
        return 1.0
    if not one or not other:
        return 0.0
    if confusable_skeleton(one) == confusable_skeleton(other):
        return SHAPE_ONLY
    return min(1.0, shipped_model().look(*letter_measures(one, other)))


@lru_cache(maxsize=1 << 16)
def _bigrams(text: str) -> tuple[str, ...]:
    return tuple([first + second for first, second in zip(text[0] + text, text, strict=False)])


@lru_cache(maxsize=1 << 16)
def _set(text: str) -> frozenset[str]:
    return frozenset(_bigrams(text)[1:] or text)
