"""`bigrams.c` called from Python: the strings that share most of their bigrams with one."""

from __future__ import annotations

import ctypes
from ctypes import c_int64
from typing import TYPE_CHECKING

import numpy as np

from .library import address, check

if TYPE_CHECKING:
    from numpy.typing import NDArray

__all__ = ["BigramArrays"]


class BigramArrays:
    """The arrays of `register.bigram_index`."""

    def __init__(
        self,
        library: ctypes.CDLL,
        postings: NDArray[np.uint32],
        start: NDArray[np.uint32],
        text_start: NDArray[np.uint32],
        levels: int,
        least_shared: int,
    ) -> None:
        self._function = library.bigrams_most_alike
        self._function.restype = c_int64
        self._held = tuple(map(np.ascontiguousarray, (postings, start, text_start)))
        self._count = len(text_start) - 1
        self._constants = c_int64(levels), c_int64(least_shared)

    def most_alike(self, keys: NDArray[np.uint16], count: int, left_out: NDArray[np.bool_] | None) -> NDArray[np.int64]:
        """The places of at most `count` strings, ascending."""
        postings, start, text_start = self._held
        places = np.empty(min(count, self._count), np.int64)
        skipped = None if left_out is None else np.ascontiguousarray(left_out)
        found = check(
            self._function(
                address(postings), c_int64(len(postings)), address(start), c_int64(len(start)), address(text_start),
                c_int64(self._count), address(keys), c_int64(len(keys)), None if skipped is None else address(skipped),
                *self._constants, c_int64(len(places)), address(places),
            )
        )  # fmt: skip
        return places[:found].copy()
