"""The similarity of two strings in appearance: a few measures of letters and their weighted mean. All work on folded
strings (see `text.fold`), a word or an unspaced name, and are in [0, 1], 1 = the same.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from itertools import pairwise

from rapidfuzz import fuzz
from rapidfuzz.distance import OSA, Indel, Postfix, Prefix

from ..native import choose
from ..native.spelling import compiled_spelled_alike
from .appearance import SHAPE_ONLY, confusable_skeleton
from .model import PARTS, shipped_model

__all__ = ["LETTER_MEASURES", "in_any_order", "letter_measures", "look", "spelled_alike"]

LETTER_MEASURES = PARTS["look"]
"""What `letter_measures` gives, in this order.

edits: 1 - restricted Damerau-Levenshtein distance over the longer length, shapes easily confused counting almost as the
same. common letters: the longest common subsequence over the mean length. common bigrams: Dice's coefficient over
the sets of the pairs of letters, wherever they stand. beginning and ending: the letters shared there over the longer
length. first letter: whether it is the same. consonants: edits of what is left without the vowels, as words are told
apart by consonants more than by vowels (M. Nespor, M. Peña and J. Mehler, "On the different roles of vowels and
consonants in speech processing and language acquisition", 2003). length: the shorter length over the longer. spelling:
`spelled_alike`."""

_VOWELS = str.maketrans("", "", "aeiouy")
_HEARD_ALIKE = ("aeiouy", "bp", "ckq", "dt", "lr", "mn", "gj", "fpv", "sxz", "csz")
"""The groups of letters of EDITEX (J. Zobel and P. Dart, "Phonetic string matching: lessons from information
retrieval", 1996; from memory)."""
_GROUPS = {letter: {at for at, group in enumerate(_HEARD_ALIKE) if letter in group} for letter in "".join(_HEARD_ALIKE)}


def letter_measures(one: str, other: str) -> tuple[float, ...]:
    """The measures of two strings that are not empty, in the order of `LETTER_MEASURES`; symmetric."""
    longer = max(len(one), len(other))
    ours, theirs = _bigrams(one), _bigrams(other)
    shapes = OSA.normalized_similarity(confusable_skeleton(one), confusable_skeleton(other))
    return (
        max(OSA.normalized_similarity(one, other), SHAPE_ONLY * shapes),
        Indel.normalized_similarity(one, other),
        2 * len(ours & theirs) / (len(ours) + len(theirs)),
        Prefix.similarity(one, other) / longer,
        Postfix.similarity(one, other) / longer,
        float(one[0] == other[0]),
        OSA.normalized_similarity(_consonants(one), _consonants(other)),
        min(len(one), len(other)) / longer,
        spelled_alike(one, other),
    )


def _spelled_alike(one: str, other: str) -> float:
    leave, others = _leaving_out(one), _leaving_out(other)
    row = [sum(others[:at]) for at in range(len(other) + 1)]
    for letter, alone in zip(one, leave, strict=True):
        above, row = row, [row[0] + alone]
        for at, (match, other_alone) in enumerate(zip(other, others, strict=True)):
            row.append(min(above[at + 1] + alone, row[at] + other_alone, above[at] + _replacing(letter, match)))
    return 1.0 - row[-1] / (2.0 * max(len(one), len(other)))


def _replacing(one: str, other: str) -> int:
    """What it costs to replace a letter, in halves."""
    if one == other:
        return 0
    return 2 if _GROUPS.get(one, set()).isdisjoint(_GROUPS.get(other, ())) else 1


def _leaving_out(text: str) -> list[int]:
    """What it costs to leave out each letter, in halves."""
    costs = [_replacing(before, letter) for before, letter in pairwise(text)]
    return [2, *(min(cost, 1) if before in "hw" else cost for before, cost in zip(text, costs, strict=False))]


_alike = choose(lambda library: compiled_spelled_alike(library, _spelled_alike), lambda: _spelled_alike)


@lru_cache(maxsize=1 << 17)
def spelled_alike(one: str, other: str) -> float:
    """How alike two strings that are not empty are spelled, going by the sounds that letters have in most languages, in
    [0, 1]: EDITEX over the longer length. A letter is half replaced by one of its group, and half left out after one
    of its group; h and w are half left out, and a doubled letter counts once. Symmetric."""
    return _alike(one, other)


def in_any_order(one: Sequence[str], other: Sequence[str]) -> float:
    """How alike the letters of two names are, given by their words, whatever the order of the words, in [0, 1]: the
    mean of two ratios of common letters, of all words sorted, and of the words, sorted, that both have against those
    that one has besides (`fuzz.token_sort_ratio`, `fuzz.token_set_ratio` of RapidFuzz). The second is 1 where one name
    has every word of the other. Symmetric."""
    mine, yours = " ".join(one), " ".join(other)
    return float(fuzz.token_sort_ratio(mine, yours) + fuzz.token_set_ratio(mine, yours)) / 200


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
def _consonants(text: str) -> str:
    return text.translate(_VOWELS) or text


@lru_cache(maxsize=1 << 16)
def _bigrams(text: str) -> frozenset[str]:
    return frozenset(map("".join, pairwise(text))) or frozenset(text)
