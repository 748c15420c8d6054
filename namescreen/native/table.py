"""`table.c` called from Python: binary search in a mapped table."""

from __future__ import annotations

import ctypes
import mmap
from collections.abc import Callable
from ctypes import c_char_p, c_int64, c_void_p

__all__ = ["compiled_seek"]


def compiled_seek(library: ctypes.CDLL, table: mmap.mmap, start: int) -> Callable[[bytes], int]:
    """Gives the offset of the first line from `start` on whose key is not below the one asked for."""
    seek = library.table_seek
    seek.argtypes, seek.restype = (c_void_p, c_int64, c_int64, c_char_p, c_int64), c_int64
    size = len(table)
    held = (ctypes.c_char * size).from_buffer(table)
    address = ctypes.addressof(held)

    def offset(wanted: bytes, held: object = held) -> int:
        return int(seek(address, start, size, wanted, len(wanted)))

    return offset
