"""`word_search.c` called from Python: how alike words of a register are to one, by a rough measure, and the
rows that hold most of some words."""

from __future__ import annotations

import ctypes
from collections.abc import Mapping, Sequence
from ctypes import c_int64, c_void_p
from typing import TYPE_CHECKING

import numpy as np

from .library import address, check

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Arrays = Mapping[str, NDArray[np.generic]]
    Places = NDArray[np.int64]
    Steps = NDArray[np.uint16]

__all__ = ["MOST_LETTERS", "MOST_PHONEMES", "MOST_READINGS", "WordArrays"]

MOST_READINGS, MOST_PHONEMES, MOST_LETTERS = 4, 15, 64
"""The readings of a word that are compared, and how much of a reading and of a word."""


class _Array(ctypes.Structure):
    _fields_ = [("values", c_void_p), ("start", c_void_p), ("count", c_int64), ("size", c_int64)]


class _Query(ctypes.Structure):
    _fields_ = [
        *((name, c_void_p) for name in ("letters", "phonemes", "sizes")),
        *((name, c_int64) for name in ("size", "readings", "letter_share", "sound_share")),
    ]


class WordArrays:
    """The arrays of an index that `register.word_search` goes through."""

    def __init__(self, library: ctypes.CDLL, arrays: Arrays) -> None:
        self._estimates, self._held_by = library.words_estimates, library.words_held
        self._estimates.restype = self._held_by.restype = c_int64
        self._kept: list[NDArray[np.generic]] = []
        self._words, self._codes, self._codes_of_word, self._rows_of_word = (
            self._array(arrays, name)
            for name in ("word", "word_code", "word_code_ids", "postings")
        )
        self._row_name = np.ascontiguousarray(arrays["row_name"].view(np.uint32))
        self._names = len(arrays["name_rows"].view(np.uint32)) - 1
        self._sums = np.zeros(len(self._row_name), np.uint16)
        if not self._words.count == self._codes_of_word.count <= self._rows_of_word.count:
            raise IndexError("the parts of the words differ in length")

    def estimates(self, letters: bytes, readings: Sequence[bytes], shares: tuple[int, int], words: Places) -> Steps:
        """How alike each of some words is, in thousandths."""
        phonemes, sizes = b"".join(readings), np.array(list(map(len, readings)), np.int64)
        texts = [np.frombuffer(text + bytes(1), np.uint8) for text in (letters, phonemes)]
        query = _Query(*map(address, texts), address(sizes), len(letters), len(readings), *shares)
        words, values = np.ascontiguousarray(words, np.int64), np.empty(len(words), np.uint16)
        arrays = map(ctypes.byref, (self._words, self._codes, self._codes_of_word, query))
        check(self._estimates(*arrays, address(words), c_int64(len(words)), address(values)))
        return values

    def holding(self, words: Places, adds: Steps, left_out: NDArray[np.bool_] | None, most: int) -> Places:
        """At most `most` rows, in no order."""
        words, adds = np.ascontiguousarray(words, np.int64), np.ascontiguousarray(adds, np.uint16)
        skipped = None if left_out is None else np.ascontiguousarray(left_out)
        rows = np.empty(min(most, len(self._row_name)), np.int64)
        found = check(
            self._held_by(
                ctypes.byref(self._rows_of_word), address(words), address(adds), c_int64(len(words)),
                address(self._row_name), c_int64(len(self._row_name)), None if skipped is None else address(skipped),
                c_int64(self._names), c_int64(len(rows)), address(self._sums), address(rows),
            )
        )  # fmt: skip
        return rows[:found].copy()

    def _array(self, arrays: Arrays, name: str) -> _Array:
        kind = np.uint8 if name in ("word", "word_code") else np.uint32
        views = arrays[name].view(kind), arrays[f"{name}_start"].view(np.uint32)
        numbers, starts = map(np.ascontiguousarray, views)
        self._kept += [numbers, starts]
        return _Array(address(numbers), address(starts), len(starts) - 1, len(numbers))
