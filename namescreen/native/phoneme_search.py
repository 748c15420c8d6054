"""`phoneme_search.c` called from Python: the readings of one name against the phoneme codes of a register."""

from __future__ import annotations

import ctypes
from collections.abc import Mapping, Sequence
from ctypes import c_int64, c_void_p
from typing import TYPE_CHECKING

import numpy as np

from .library import address, check
from .phonemes import PhonemeCosts, terminated

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Places = NDArray[np.int64]
    Similarities = NDArray[np.float64]

__all__ = ["CodeArrays"]

_PARTS = {
    "blob": np.uint8, "weights": np.uint8, "start": np.uint32, "whole": np.uint16, "syllables": np.uint8,
}  # fmt: skip
"""The parts of the arrays, in the order of the C structure."""


class _Arrays(ctypes.Structure):
    _fields_ = [*((name, c_void_p) for name in _PARTS), ("count", c_int64), ("size", c_int64)]


class CodeArrays:
    """The codes of `register.phoneme_index.Codes`: their parts, and the codes of each word (`ids`, `ids_start`)."""

    def __init__(self, library: ctypes.CDLL, arrays: Mapping[str, NDArray[np.generic]], costs: PhonemeCosts) -> None:
        self._sound_measures = library.phonemes_sound_measures
        self._sound_measures.restype = c_int64
        self._costs = costs
        self._held = [np.ascontiguousarray(arrays[part].view(kind)) for part, kind in _PARTS.items()]
        blob, weights, start, whole, syllables = map(len, self._held)
        if not (weights == blob and start == whole + 1 and syllables == whole):
            raise IndexError("the parts of the phoneme codes differ in length")
        self._arrays = _Arrays(*map(address, self._held), whole, blob)
        self._ids, self._ids_start = (
            np.ascontiguousarray(arrays[part].view(np.uint32)) for part in ("ids", "ids_start")
        )

    def sound_measures(self, codes: Sequence[str], words: Places) -> Similarities:
        """For each word `closeness.sound.sound_measures` of `codes` and its own, in two rows; NaN where it has none."""
        values, words = np.full((2, len(words)), np.nan), np.ascontiguousarray(words, np.int64)
        check(self._sound_measures(*self._query(codes, words), *map(address, values)))
        return values

    def _query(self, codes: Sequence[str], words: Places) -> tuple[object, ...]:
        """What is asked; the words must outlive the call."""
        readings = terminated(tuple(codes))
        assert readings is not None, "too long for the compiled code"
        return (
            self._costs.table, ctypes.byref(self._arrays), *readings, address(self._ids),
            c_int64(len(self._ids)), address(self._ids_start), c_int64(len(self._ids_start) - 1), address(words),
            c_int64(len(words)),
        )  # fmt: skip
