"""The innermost loops in C, and the one choice between them and Python.

A leaf: it imports nothing else of namescreen. Whoever has such a loop writes it in Python or numpy as well, which gives
the same results to the last bit, and asks `choose` for one of the two. The compiled path is taken where the package was
built with a C compiler and the library is whole; NAMESCREEN_NATIVE=off takes the other one.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, TypeVar

from .library import library

if TYPE_CHECKING:
    import ctypes

__all__ = ["choose", "is_compiled"]

Path = TypeVar("Path")


def choose(compiled: Callable[[ctypes.CDLL], Path], otherwise: Callable[[], Path]) -> Path:
    """The compiled path, made from the loaded library, or the one in Python where there is none."""
    loaded = library()
    return otherwise() if loaded is None else compiled(loaded)


def is_compiled() -> bool:
    """Whether `choose` takes the compiled path."""
    return library() is not None
