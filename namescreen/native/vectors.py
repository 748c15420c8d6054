"""`vectors.c` called from Python: vectors as arrays of numbers of double precision."""

from __future__ import annotations

import ctypes
from array import array
from collections.abc import Callable
from ctypes import c_char_p, c_double, c_int64, c_void_p

__all__ = ["compiled_product", "compiled_scaled"]


def compiled_scaled(library: ctypes.CDLL) -> Callable[[bytes], array[float]]:
    """As `lexicon.embedding.scaled`."""
    function = library.vectors_scaled
    function.argtypes, function.restype = (c_char_p, c_int64, c_void_p), None

    def scaled(row: bytes) -> array[float]:
        found = array("d", bytes(8 * len(row)))
        function(row, len(row), found.buffer_info()[0])
        return found

    return scaled


def compiled_product(library: ctypes.CDLL) -> Callable[[array[float], array[float]], float]:
    """As `lexicon.embedding.product`, of vectors of equal size."""
    function = library.vectors_product
    function.argtypes, function.restype = (c_void_p, c_void_p, c_int64), c_double

    def product(one: array[float], other: array[float]) -> float:
        mine, size = one.buffer_info()
        found: float = function(mine, other.buffer_info()[0], size)
        return found

    return product
