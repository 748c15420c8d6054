"""`rows.c` called from Python: how far the words of one name cover many others."""

from __future__ import annotations

import ctypes
from collections.abc import Sequence
from ctypes import c_int64, c_void_p
from typing import TYPE_CHECKING

import numpy as np

from .library import address, check

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Values = NDArray[np.float64]
    Places = NDArray[np.int64]

__all__ = ["CompiledRows"]


class _Rows(ctypes.Structure):
    _fields_ = [
        *((name, c_void_p) for name in ("words", "start", "first")),
        *((name, c_int64) for name in ("word_count", "row_count", "name_count")),
    ]


class CompiledRows:
    """Ways to divide names into words: see `closeness.covering`."""

    def __init__(self, library: ctypes.CDLL, words: Places, start: Places, first: Places) -> None:
        self._covered, self._elements = library.rows_covered, library.rows_elements
        self._covered.restype = self._elements.restype = c_int64
        self._held = [np.ascontiguousarray(each, np.int64) for each in (words, start, first)]
        self._rows = _Rows(*map(address, self._held), *map(len, self._held))

    def covered(self, table: Values, shares: Sequence[float], others: Values) -> Values:
        """As `closeness.covering.Covering.covered`."""
        return self._called(self._covered, 2, table, shares, (others,))

    def elements(
        self, table: Values, shares: Sequence[float], others: Values, weights: Sequence[float], other_weights: Values
    ) -> Values:
        """As `closeness.covering.Covering.elements`."""
        return self._called(self._elements, 4, table, shares, (others, np.array(weights), other_weights))

    def _called(
        self, function: ctypes._NamedFuncPointer, results: int, table: Values, shares: Sequence[float],
        given: tuple[Values, ...],
    ) -> Values:  # fmt: skip
        table = np.ascontiguousarray(table, np.float64)
        count, width = table.shape
        arrays = [np.ascontiguousarray(each, np.float64) for each in (np.array(shares), *given)]
        sizes = count, len(self._held[0])
        if any(len(each) != sizes[at % 2] for at, each in enumerate(arrays)):
            raise IndexError("the words and their shares differ in number")
        found = np.empty((results, len(self._held[2])))
        sized = c_int64(count), c_int64(width)
        check(function(ctypes.byref(self._rows), address(table), *sized, *map(address, arrays), *map(address, found)))
        return found
