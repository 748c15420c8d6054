"""How far the words of one name cover those of many, and are covered by them: what `name_similarity` works out for two
segmentations, for many at once.

Sums run from the first word to the last, so that the compiled code and the arrays here give the same to the last bit.
"""

from __future__ import annotations

from collections.abc import Sequence
from ctypes import CDLL
from typing import TYPE_CHECKING, Protocol

import numpy as np

from ..native import choose
from ..native.rows import CompiledRows

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Values = NDArray[np.float64]
    Places = NDArray[np.int64]

__all__ = ["Covering", "covering"]


class Covering(Protocol):
    """Ways to divide many names into words: the rows."""

    def covered(self, table: Values, shares: Sequence[float], others: Values) -> Values:
        """`name_similarity._covered` of every name, the most of its rows: less covered, and better covered. `table`
        has how alike each word of the one name is to every word, `shares` what these words count, `others` what each
        word of the rows does."""

    def elements(
        self, table: Values, shares: Sequence[float], others: Values, weights: Sequence[float], other_weights: Values
    ) -> Values:
        """As `covered`, and `shared` and `kept` of `parts.Parts`, by the weights of the words of the one name and of
        the rows."""


def covering(words: Places, start: Places, first: Places) -> Covering:
    """Over rows: their words, one after another, as columns of a table; where each begins, and the first row of each
    name. Every row has a word, every name a row."""

    def compiled(library: CDLL) -> Covering:
        return CompiledRows(library, words, start, first)

    return choose(compiled, lambda: ArrayRows(words, start, first))


class ArrayRows:
    """In numpy."""

    def __init__(self, words: Places, start: Places, first: Places) -> None:
        self._words, self._start, self._first = words, start, first
        self._row = np.repeat(np.arange(len(start)), np.diff(start, append=len(words)))

    def covered(self, table: Values, shares: Sequence[float], others: Values) -> Values:
        """As `Covering.covered`."""
        return self._best(self._covered(table[:, self._words], shares, others))

    def elements(
        self, table: Values, shares: Sequence[float], others: Values, weights: Sequence[float], other_weights: Values
    ) -> Values:
        """As `Covering.elements`."""
        here = table[:, self._words]
        less, better = self._covered(here, shares, others)
        kept = better * (1 - self._left_over(here, weights, other_weights))
        return self._best(np.array([less, better, self._shared(here, weights, other_weights), kept]))

    def _best(self, values: Values) -> Values:
        """The greatest of each name's rows."""
        return np.asarray(np.maximum.reduceat(values, self._first, axis=-1), np.float64)

    def _covered(self, table: Values, shares: Sequence[float], others: Values) -> Values:
        best = np.maximum.reduceat(table, self._start, axis=1)
        ours = sum(share * each for share, each in zip(shares, best, strict=True))
        theirs = np.bincount(self._row, table.max(axis=0) * others, len(self._start))
        return np.array([np.minimum(ours, theirs), np.maximum(ours, theirs)])

    def _shared(self, table: Values, weights: Sequence[float], others: Values) -> Values:
        """`name_similarity._shared` of every row."""
        strengths = table * np.minimum(np.array(weights)[:, None], others)
        ours = np.prod(1 - np.maximum.reduceat(strengths, self._start, axis=1), axis=0)
        theirs = np.multiply.reduceat(1 - strengths.max(axis=0), self._start)
        return np.asarray(1 - np.maximum(ours, theirs), np.float64)

    def _left_over(self, table: Values, weights: Sequence[float], others: Values) -> Values:
        """The lesser of the weights of the strongest words without a counterpart in the other name, of every row."""
        ours = (np.array(weights)[:, None] * (1 - np.maximum.reduceat(table, self._start, axis=1))).max(axis=0)
        theirs = np.maximum.reduceat(others * (1 - table.max(axis=0)), self._start)
        return np.asarray(np.minimum(ours, theirs), np.float64)
