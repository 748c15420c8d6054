"""Loading the compiled library, after a check that it is undamaged."""

from __future__ import annotations

import ctypes
import hashlib
import os
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

__all__ = ["address", "check", "library"]

VERSION = 27
"""Raised with every change to a function's arguments, so that a library of another version is not used."""
NO_MEMORY = -1
"""The result for lack of memory; any other negative result means that an array points outside itself (kernel.h)."""


@cache
def library() -> ctypes.CDLL | None:
    """The compiled library, or None where there is none, it is damaged or it is switched off."""
    if os.environ.get("NAMESCREEN_NATIVE") == "off":
        return None
    return load(Path(__file__).with_name("native.so"))


def load(path: Path) -> ctypes.CDLL | None:
    """The library at `path`, or None if it cannot be used; a remark says why, unless the file does not exist.

    Its sha256, written beside it at build time, is compared first: loading a truncated library can end the process.
    """
    try:
        contents, recorded = path.read_bytes(), path.with_suffix(".sha256").read_text("ascii").split()
        if [hashlib.sha256(contents).hexdigest()] != recorded:
            raise OSError("it does not match its checksum")
        loaded = ctypes.CDLL(str(path))
        if loaded.kernel_version() != VERSION:
            raise OSError(f"it is version {loaded.kernel_version()}, not {VERSION}")
    except FileNotFoundError:
        return None
    except (OSError, ValueError, AttributeError) as error:
        import logging

        logging.getLogger(__name__).warning(
            "The compiled part of namescreen is not used: %s (%s). Results are the same, but slower. "
            "Install namescreen again.", error, path,
        )  # fmt: skip
        return None
    return loaded


def check(result: int) -> int:
    """A result that is no error. Raises MemoryError, or IndexError where an array points outside itself."""
    if result >= 0:
        return result
    if result == NO_MEMORY:
        raise MemoryError
    raise IndexError("an array points outside itself")


def address(array: NDArray[np.generic]) -> ctypes.c_void_p:
    """The address of an array's numbers, which must be contiguous; the array must outlive the call."""
    return ctypes.c_void_p(array.__array_interface__["data"][0])
