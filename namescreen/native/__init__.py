"""The innermost loops in C, and the one choice between them and Python.

A leaf: it imports nothing else of namescreen. Every such loop also exists in Python or numpy, with bitwise equal
results, and its module calls `choose` for one of the two. The compiled path is taken if the package was built with a C
compiler and the library is undamaged; NAMESCREEN_NATIVE=off selects the other. Some loops keep room between calls, and
compiled code lets other threads run: use it from several processes, not from several threads at once.
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
