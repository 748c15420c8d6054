"""Segmentation: the known words inside a closed compound."""

from __future__ import annotations

from collections.abc import Callable

__all__ = ["split_closed_compound"]


def split_closed_compound(word: str, zipf: Callable[[str], float], least: int = 3) -> tuple[str, ...]:
    """`word` as two known words (herbwell -> herb well) where that reads better than one, else as it is.

    `zipf` gives a word's frequency on the Zipf scale (log10 of occurrences per thousand million words; 0 for
    unknown). A word that is itself known stays whole. Parts have at least `least` letters, and both must be
    common enough (Zipf 3, about once in a million words) for a reader to see them without help.
    """
    if len(word) < 2 * least or not word.isascii() or zipf(word) >= 2.0:
        return (word,)
    best: tuple[float, tuple[str, ...]] = (0.0, (word,))
    for cut in range(least, len(word) - least + 1):
        left, right = word[:cut], word[cut:]
        common = min(zipf(left), zipf(right))
        if common >= 3.0 and common + min(len(left), len(right)) / 4 > best[0]:
            best = (common + min(len(left), len(right)) / 4, (left, right))
    return best[1]
