"""`spelling.h` called from Python: how alike two strings are spelled."""

from __future__ import annotations

import ctypes
from collections.abc import Callable
from ctypes import c_double, c_int64

__all__ = ["compiled_spelled_alike"]

LONGEST = 64
"""The longest that one of the two may be."""

Alike = Callable[[str, str], float]


def compiled_spelled_alike(library: ctypes.CDLL, otherwise: Alike) -> Alike:
    """As `closeness.letters.spelled_alike`; two long strings go to `otherwise`."""
    function = library["strings_spelled_alike"]
    function.restype = c_double

    def alike(one: str, other: str) -> float:
        if len(one) > len(other):
            one, other = other, one
        if len(one) > LONGEST:
            return otherwise(one, other)
        mine, yours = one.encode("utf-32-le", "surrogatepass"), other.encode("utf-32-le", "surrogatepass")
        return float(function(mine, c_int64(len(one)), yours, c_int64(len(other))))

    return alike
