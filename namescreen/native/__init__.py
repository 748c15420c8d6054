"""The compiled kernel: the innermost loops in C, where the package was built with a compiler.

Whoever calls it has a path of numpy and Python beside it that gives the same results, later; `kernel()` is None where
that path is to be taken. Setting NAMESCREEN_NATIVE to "off" takes it in any case.
"""

from __future__ import annotations

import ctypes
import os
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

__all__ = ["address", "kernel"]

VERSION = 8
"""Raised with every change of the functions' arguments: a library left from another version is not used."""

FUNCTIONS = (
    "g2p_open", "g2p_readings", "letters_above", "letters_in_order", "letters_near",
    "sounds_alike", "sounds_near", "sounds_of", "texts_find",
)  # fmt: skip


@cache
def kernel() -> ctypes.CDLL | None:
    """The compiled library, or None without it."""
    if os.environ.get("NAMESCREEN_NATIVE") == "off":
        return None
    try:
        library = ctypes.CDLL(str(Path(__file__).parent / "native.so"))
        if library.kernel_version() != VERSION or not all(hasattr(library, name) for name in FUNCTIONS):
            return None
    except (OSError, AttributeError):
        return None
    return library


def address(array: NDArray[np.generic]) -> ctypes.c_void_p:
    """Where an array's numbers stand; they must be contiguous, and the array must outlive the call."""
    return ctypes.c_void_p(array.__array_interface__["data"][0])
