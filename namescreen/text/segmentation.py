"""Segmentation: the parts that a reader sees in a closed word.

`best_split` searches for the parts; the caller scores them.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeVar

__all__ = ["LONGEST", "best_split", "cuts", "split_closed_compound"]

Score = TypeVar("Score", float, tuple[int, float])

LONGEST = 32
"""Letters of the longest word that can be known (tests/lexicon/test_words.py)."""
KNOWN, RECOGNISED = 2.0, 3.0
"""Zipf values from which a word is known, and from which readers recognise it inside another (about once in a million
words)."""


def cuts(word: str, shortest_first: int, shortest_last: int) -> range:
    """Where a compound may be divided into two parts of at least so many letters, none longer than `LONGEST`: what is
    longer than two words is left whole, as to look at every place of it would take time by the square of its length."""
    return range(max(shortest_first, len(word) - LONGEST), min(len(word) - shortest_last, LONGEST) + 1)


def best_split(word: str, score: Callable[[str, str], Score | None], shortest: int = 2) -> tuple[str, str] | None:
    """The two parts of `word`, each of at least `shortest` letters, with the highest `score`; None if there are none.

    `score` is None for parts that nobody recognises, as for two longer than `LONGEST`. Of equal scores the longest
    first part counts.
    """
    best: tuple[Score, tuple[str, str]] | None = None
    for cut in range(shortest, len(word) - shortest + 1):
        if cut > LONGEST and len(word) - cut > LONGEST:
            continue
        parts = word[:cut], word[cut:]
        value = score(*parts)
        if value is not None and (best is None or value >= best[0]):
            best = value, parts
    return None if best is None else best[1]


def split_closed_compound(word: str, zipf: Callable[[str], float], shortest: int = 3) -> tuple[str, ...]:
    """`word` as two known words (herbwell -> herb well) where that reads better than one, else as it is.

    `zipf` gives a word's frequency on the Zipf scale (log10 of occurrences per thousand million words; 0 for
    unknown). A word that is itself known stays whole; both parts must be common enough to be recognised.
    """
    if not 2 * shortest <= len(word) <= 2 * LONGEST or not word.isascii() or zipf(word) >= KNOWN:
        return (word,)

    def score(first: str, second: str) -> float | None:
        common = zipf(first)
        if common >= RECOGNISED:
            common = min(common, zipf(second))
        return common + min(len(first), len(second)) / 4 if common >= RECOGNISED else None

    return best_split(word, score, shortest) or (word,)
