"""`strings.c` called from Python: one name against the strings of a register."""

from __future__ import annotations

import ctypes
from collections.abc import Callable, Mapping
from ctypes import c_double, c_int64, c_uint64, c_void_p
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from . import address, kernel

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Places = NDArray[np.int64]
    Similarities = NDArray[np.float64]

__all__ = ["CompiledStrings", "Query", "compiled_find", "compiled_strings"]

MOST_CHARACTERS = 64
"""Longer names do not fit the bits of one word, and are compared without the kernel."""


_KINDS = {
    "start": np.uint32, "length": np.uint16, "shape_length": np.uint16, "signature": np.uint64,
    "shape_signature": np.uint64, "first": np.uint64, "shape_first": np.uint64, "merging": np.uint32,
}  # fmt: skip
"""The parts of the arrays, in the order of the kernel's structure."""


class _Strings(ctypes.Structure):
    _fields_ = [(name, c_void_p) for name in ("blob", *_KINDS)] + [("count", c_int64), ("merging_count", c_int64)]


class _Query(ctypes.Structure):
    _fields_ = [
        ("text", c_void_p), ("shape", c_void_p), ("size", c_int64), ("shape_size", c_int64),
        *((name, c_uint64) for name in ("signature", "shape_signature", "first", "shape_first")),
        *((name, c_double) for name in (
            "order", "bonus", "shape_only", "inside", "inside_start", "inside_elsewhere", "nearly",
        )), ("gain", c_void_p),
    ]  # fmt: skip


@dataclass(frozen=True, slots=True)
class Query:
    """A string and its shape, with the signature and first letters of both."""

    text: str
    shape: str
    signatures: tuple[np.uint64, np.uint64]
    firsts: tuple[np.uint64, np.uint64]


class CompiledStrings:
    """The strings of `register.letters.Strings`, and `constants` of its likeness by their names in the kernel."""

    def __init__(
        self, library: ctypes.CDLL, arrays: Mapping[str, NDArray[np.generic]], name: str, constants: Mapping[str, float]
    ) -> None:
        self._library = library
        self._held = [np.ascontiguousarray(arrays[name].view(np.uint8))]
        self._held += [np.ascontiguousarray(arrays[f"{name}_{part}"].view(kind)) for part, kind in _KINDS.items()]
        counts = len(arrays[f"{name}_start"]) - 1, len(arrays[f"{name}_merging"])
        self._strings = _Strings(*(address(array) for array in self._held), *counts)
        self._constants = dict(constants)
        self._gain = (1 - constants["bonus"]) ** np.arange(5.0)
        library.letters_near.restype = c_int64
        self.count = counts[0]

    def above(self, query: Query, places: Places, inside: Similarities, floor: float) -> Similarities:
        """How alike each of these strings looks; 0 where it cannot be above `floor`. `inside` says what standing inside
        counts, by the length of the string."""
        values = np.empty(len(places))
        places = np.ascontiguousarray(places, np.int64)
        held = self._query(query)
        self._library.letters_above(
            ctypes.byref(held[0]), ctypes.byref(self._strings), address(inside), c_double(floor), address(places),
            c_int64(len(places)), address(values),
        )  # fmt: skip
        return values

    def in_order(self, query: Query, places: Places) -> Similarities:
        """The share of letters that each has in common with the query, in order."""
        values = np.empty(len(places))
        places = np.ascontiguousarray(places, np.int64)
        held = self._query(query)
        self._library.letters_in_order(
            ctypes.byref(held[0]), ctypes.byref(self._strings), address(places), c_int64(len(places)), address(values)
        )
        return values

    def near(
        self, query: Query, least: float, apart: NDArray[np.uint8], part: tuple[int, int]
    ) -> tuple[Places, Similarities]:
        """Every place whose string is at least `least` alike, with how alike: those of `part` by their letters, all
        where letters merge by their shapes. `apart` has the rows of `Limits` in strings.c."""
        places, values = np.empty(self.count, np.int64), np.empty(self.count)
        held = self._query(query)
        found = self._library.letters_near(
            ctypes.byref(held[0]), ctypes.byref(self._strings), address(apart), c_int64(apart.shape[1]),
            c_int64(part[0]), c_int64(part[1]), c_double(least), address(places),
            address(values),
        )  # fmt: skip
        return places[:found].copy(), values[:found].copy()

    def _query(self, query: Query) -> tuple[_Query, object]:
        """The query as the kernel takes it, and what must stay while it is used."""
        text, shape = (np.frombuffer(one.encode("utf-32-le"), np.uint32) for one in (query.text, query.shape))
        constants = self._constants
        return _Query(
            address(text), address(shape), len(text), len(shape), *map(int, (*query.signatures, *query.firsts)),
            constants["order"], constants["bonus"], constants["shape_only"], constants["inside"],
            constants["inside_start"], constants["inside_elsewhere"], constants["nearly"], address(self._gain),
        ), (text, shape)  # fmt: skip


def compiled_strings(
    arrays: Mapping[str, NDArray[np.generic]], name: str, constants: Mapping[str, float]
) -> CompiledStrings | None:
    """The strings of that name among the arrays of a register for the kernel; None without one."""
    library = kernel()
    return CompiledStrings(library, arrays, name, constants) if library is not None else None


def compiled_find(arrays: Mapping[str, NDArray[np.generic]], name: str) -> Callable[[str], int] | None:
    """Finds a text among those of that name, which stand in their order, or gives -1; None without a kernel."""
    library = kernel()
    if library is None:
        return None
    blob, start = np.ascontiguousarray(arrays[name]), np.ascontiguousarray(arrays[f"{name}_start"].view(np.uint32))
    find = library.texts_find
    find.restype = c_int64
    at, of, count = address(blob), address(start), c_int64(len(start) - 1)

    def found(text: str, held: object = (blob, start)) -> int:
        sought = text.encode("utf-8", "replace")
        return int(find(at, of, count, sought, c_int64(len(sought))))

    return found
