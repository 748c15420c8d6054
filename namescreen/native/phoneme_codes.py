"""`phoneme_codes.c` called from Python: the readings of one name against the sound codes of a register."""

from __future__ import annotations

import ctypes
from collections.abc import Mapping, Sequence
from ctypes import c_double, c_int64, c_void_p
from typing import TYPE_CHECKING

import numpy as np

from . import address, kernel
from .phonemes import alphabet, joined

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Places = NDArray[np.int64]
    Similarities = NDArray[np.float64]

__all__ = ["CompiledCodes", "compiled_codes"]

_KINDS = {
    "weights": np.uint8, "start": np.uint32, "whole": np.uint16, "present": np.uint16, "syllables": np.uint8,
    "first": np.uint8,
}  # fmt: skip
"""The parts of the arrays, in the order of the kernel's structure."""


class _Packed(ctypes.Structure):
    _fields_ = [(name, c_void_p) for name in ("blob", *_KINDS)] + [("count", c_int64)]


class CompiledCodes:
    """The codes of `register.sounds.Codes`."""

    def __init__(self, library: ctypes.CDLL, arrays: Mapping[str, NDArray[np.generic]], name: str) -> None:
        self._library = library
        self._held = [np.ascontiguousarray(arrays[name].view(np.uint8))]
        self._held += [np.ascontiguousarray(arrays[f"{name}_{part}"].view(kind)) for part, kind in _KINDS.items()]
        self._lists = [np.ascontiguousarray(arrays[f"{name}_{part}"].view(np.uint32)) for part in ("ids", "ids_start")]
        self._packed = _Packed(*map(address, self._held), len(arrays[f"{name}_whole"]))
        library.sounds_near.restype = c_int64

    def of(self, codes: Sequence[str], words: Places, least: float) -> Similarities:
        """How alike the closest of `codes` sounds to the closest of each word's; less than `least` may be 0."""
        values = np.empty(len(words))
        words = np.ascontiguousarray(words, np.int64)
        self._library.sounds_of(
            *self._start(codes), *map(address, self._lists), address(words), c_int64(len(words)), c_double(least),
            address(values),
        )  # fmt: skip
        return values

    def near(self, codes: Sequence[str], least: float, part: Places | slice) -> tuple[Places, Similarities]:
        """Every code of a part that sounds at least `least` alike to one of `codes`, with how alike."""
        given: c_void_p | None = None
        if isinstance(part, slice):
            low, count = part.start, part.stop - part.start
        else:
            part = np.ascontiguousarray(part, np.int64)
            given, low, count = address(part), 0, len(part)
        places, values = np.empty(count, np.int64), np.empty(count)
        found = self._library.sounds_near(
            *self._start(codes), given, c_int64(low), c_int64(count), c_double(least), address(places),
            address(values),
        )  # fmt: skip
        return places[:found].copy(), values[:found].copy()

    def _start(self, codes: Sequence[str]) -> tuple[object, ...]:
        readings = joined(tuple(codes))
        assert readings is not None, "too long for the kernel"
        return alphabet(), ctypes.byref(self._packed), readings[0], c_int64(readings[1])


def compiled_codes(arrays: Mapping[str, NDArray[np.generic]], name: str) -> CompiledCodes | None:
    """The codes of that name among the arrays of a register for the kernel; None without one."""
    library = kernel()
    return CompiledCodes(library, arrays, name) if library is not None else None
