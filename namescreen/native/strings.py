"""`string_measures.c` called from Python: one string against the strings of a register."""

from __future__ import annotations

import ctypes
from collections.abc import Callable, Sequence
from ctypes import c_double, c_int64
from typing import TYPE_CHECKING

import numpy as np

from .library import address, check

if TYPE_CHECKING:
    from numpy.typing import NDArray

__all__ = ["LONGEST_PATTERN", "MEASURES", "compiled_find", "compiled_measures"]

LONGEST_PATTERN = 64
"""Longer strings do not fit the bits of one number, and cannot be measured here."""
MEASURES = 10
"""Numbers that `compiled_measures` gives for each string."""


def compiled_measures(
    library: ctypes.CDLL, blob: NDArray[np.uint8], start: NDArray[np.uint32], shape_only: float
) -> Callable[[str, str, NDArray[np.int64]], NDArray[np.float64]]:
    """A function of a text that is not empty, its confusable skeleton and the places of other strings.

    It gives a row for each of these: how alike both look by each measure of `closeness.letters`, and 1 where both
    have one skeleton; noughts for an empty string."""
    blob, start = np.ascontiguousarray(blob), np.ascontiguousarray(start)
    function = library.strings_measures
    function.restype = c_int64
    arguments = address(blob), c_int64(len(blob)), address(start), c_int64(max(len(start) - 1, 0))

    def measures(
        text: str, skeleton: str, places: NDArray[np.int64], held: object = (blob, start)
    ) -> NDArray[np.float64]:
        both = [np.frombuffer(one.encode("utf-32-le", "surrogatepass"), np.uint32) for one in (text, skeleton)]
        places, values = np.ascontiguousarray(places, np.int64), np.zeros((len(places), MEASURES))
        sizes = [part for one in both for part in (address(one), c_int64(len(one)))]
        check(
            function(
                *arguments, *sizes, c_double(shape_only), address(places), c_int64(len(places)), address(values)
            )
        )  # fmt: skip
        return values

    return measures


def compiled_find(
    library: ctypes.CDLL, blob: NDArray[np.uint8], start: NDArray[np.uint32]
) -> Callable[[Sequence[str]], list[int | None]]:
    """A function that finds the places of texts among others, which are sorted by their bytes; None for one that is not
    among them."""
    blob, start = np.ascontiguousarray(blob), np.ascontiguousarray(start)
    find = library.strings_find
    find.restype = c_int64
    count = max(len(start) - 1, 0)  # damaged boundaries may be empty: no texts
    arguments = address(blob), c_int64(len(blob)), address(start), c_int64(count)

    def found(texts: Sequence[str], held: object = (blob, start)) -> list[int | None]:
        sought = "".join([f"{text}\0" for text in texts]).encode("utf-8", "replace")
        places = np.empty(len(texts), np.int64)
        check(find(*arguments, sought, c_int64(len(sought)), c_int64(len(texts)), address(places)))
        return [place if place < count else None for place in places.tolist()]

    return found
