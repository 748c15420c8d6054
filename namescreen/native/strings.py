"""`string_search.c` called from Python: one string against the strings of a register."""

from __future__ import annotations

import ctypes
from collections.abc import Callable, Mapping
from ctypes import c_double, c_int64, c_uint64, c_void_p
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import numpy as np

from .library import address, check

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Places = NDArray[np.int64]
    Similarities = NDArray[np.float64]

__all__ = ["LONGEST_PATTERN", "Query", "StringArrays", "compiled_find"]

LONGEST_PATTERN = 64
"""Longer strings do not fit the bits of one number, and cannot be searched for here."""

MEASURES = 9
"""Numbers that `StringArrays.measures` gives for each string."""

_PARTS = {
    "blob": np.uint8, "start": np.uint32, "length": np.uint16, "shape_length": np.uint16, "signature": np.uint64,
    "shape_signature": np.uint64, "first": np.uint64, "shape_first": np.uint64, "merging": np.uint32,
}  # fmt: skip
"""The parts of the arrays, in the order of the C structure."""

_CONSTANTS = ("order", "prefix_bonus", "shape_only", "inside", "inside_start", "inside_elsewhere", "different")


class _Arrays(ctypes.Structure):
    _fields_ = [*((name, c_void_p) for name in _PARTS), *((n, c_int64) for n in ("count", "merging_count", "size"))]


class _Query(ctypes.Structure):
    _fields_ = [
        ("text", c_void_p), ("skeleton", c_void_p), ("size", c_int64), ("skeleton_size", c_int64),
        *((name, c_uint64) for name in ("signature", "skeleton_signature", "first", "skeleton_first")),
        *((name, c_double) for name in _CONSTANTS), ("gap", c_void_p),
    ]  # fmt: skip


@dataclass(frozen=True, slots=True)
class Query:
    """A string and its confusable skeleton, with the signature and the first letters of both."""

    text: str
    skeleton: str
    signatures: tuple[np.uint64, np.uint64]
    firsts: tuple[np.uint64, np.uint64]


class StringArrays:
    """The strings of `register.string_index.Strings`; `constants` are those of closeness in appearance, by name."""

    def __init__(
        self, library: ctypes.CDLL, arrays: Mapping[str, NDArray[np.generic]], constants: Mapping[str, float]
    ) -> None:
        self._library = library
        for name in ("near", "above", "in_order", "measures"):
            getattr(library, f"strings_{name}").restype = c_int64
        self._held = [np.ascontiguousarray(arrays[part].view(kind)) for part, kind in _PARTS.items()]
        blob, start, *sizes, merging = map(len, self._held)
        if any(size != start - 1 for size in sizes):
            raise IndexError("the parts of the strings differ in length")
        self._count = start - 1
        self._arrays = _Arrays(*map(address, self._held), self._count, merging, blob)
        self._constants = [constants[name] for name in _CONSTANTS]
        self._gap = (1 - constants["prefix_bonus"]) ** np.arange(5.0)

    def above(self, query: Query, places: Places, inside: Similarities, floor: float) -> Similarities:
        """The similarity in appearance of each of these strings; 0 where it cannot be above `floor`. `inside` is the
        credit for containment, by the length of the string."""
        values = np.empty(len(places))
        places = np.ascontiguousarray(places, np.int64)
        held = self._query(query)
        check(
            self._library.strings_above(
                ctypes.byref(held[0]), ctypes.byref(self._arrays), address(inside), c_int64(len(inside)),
                c_double(floor), address(places), c_int64(len(places)), address(values),
            )
        )  # fmt: skip
        return values

    def in_order(self, query: Query, places: Places) -> Similarities:
        """The share of letters that each has in common with the query, in order."""
        return self._of_places(self._library.strings_in_order, query, places, np.empty(len(places)))

    def measures(self, query: Query, places: Places) -> Similarities:
        """A row for each of these strings: how alike it and the query look by each of `closeness.letters`' measures, by
        edits alone, and 1 where both have one skeleton. Noughts for an empty string; the query is not empty."""
        return self._of_places(self._library.strings_measures, query, places, np.zeros((len(places), MEASURES)))

    def _of_places(self, function: Any, query: Query, places: Places, values: Similarities) -> Similarities:
        """What a function of the library writes into `values` for each of these strings."""
        places = np.ascontiguousarray(places, np.int64)
        held = self._query(query)
        check(
            function(
                ctypes.byref(held[0]), ctypes.byref(self._arrays), address(places), c_int64(len(places)),
                address(values),
            )
        )  # fmt: skip
        return values

    def near(
        self, query: Query, least: float, limits: NDArray[np.uint8], part: tuple[int, int]
    ) -> tuple[Places, Similarities]:
        """Every string at least `least` similar, with its similarity: those of `part` by their letters, those of all
        lengths where letters merge by their skeletons. `limits` has the rows of `Limits` in string_search.c."""
        places, values = np.empty(self._count, np.int64), np.empty(self._count)
        held = self._query(query)
        found = check(
            self._library.strings_near(
                ctypes.byref(held[0]), ctypes.byref(self._arrays), address(limits), c_int64(limits.shape[1]),
                c_int64(part[0]), c_int64(part[1]), c_double(least), address(places), address(values),
            )
        )  # fmt: skip
        return places[:found].copy(), values[:found].copy()

    def _query(self, query: Query) -> tuple[_Query, object]:
        """The query as the compiled code takes it, and the objects that must outlive its use."""
        text, skeleton = (
            np.frombuffer(one.encode("utf-32-le", "surrogatepass"), np.uint32) for one in (query.text, query.skeleton)
        )
        return _Query(
            address(text), address(skeleton), len(text), len(skeleton), *map(int, (*query.signatures, *query.firsts)),
            *self._constants, address(self._gap),
        ), (text, skeleton)  # fmt: skip


def compiled_find(
    library: ctypes.CDLL, blob: NDArray[np.uint8], start: NDArray[np.uint32]
) -> Callable[[str], int | None]:
    """A function that finds the place of a text among others, which are sorted by their bytes."""
    blob, start = np.ascontiguousarray(blob), np.ascontiguousarray(start)
    find = library.strings_find
    find.restype = c_int64
    count = max(len(start) - 1, 0)  # damaged boundaries may be empty: no texts
    arguments = address(blob), c_int64(len(blob)), address(start), c_int64(count)

    def found(text: str, held: object = (blob, start)) -> int | None:
        sought = text.encode("utf-8", "replace")
        place = check(find(*arguments, sought, c_int64(len(sought))))
        return place if place < count else None

    return found
