"""`table.c` called from Python: binary search in a mapped table."""

from __future__ import annotations

import ctypes
import mmap
from array import array
from collections.abc import Callable, Sequence
from ctypes import c_char_p, c_int64, c_void_p
from typing import Any

__all__ = ["compiled_among", "compiled_find", "compiled_seek"]


def compiled_seek(library: ctypes.CDLL, table: mmap.mmap, start: int) -> Callable[[bytes], int]:
    """Gives the offset of the first line from `start` on whose key is not below the one asked for."""
    return _search(library["table_seek"], table, start)


def compiled_find(library: ctypes.CDLL, table: mmap.mmap, start: int) -> Callable[[bytes], int]:
    """Gives the offset of the line with the key asked for, -1 where there is none."""
    return _search(library["table_find"], table, start)


def _search(search: Any, table: mmap.mmap, start: int) -> Callable[[bytes], int]:
    search.restype = c_int64
    held = ctypes.c_char.from_buffer(table)
    # Made once, and no types declared: to convert each argument at every call takes a third of it.
    address, begin, size = c_void_p(ctypes.addressof(held)), c_int64(start), c_int64(len(table))

    def offset(wanted: bytes, held: object = held) -> int:
        found: int = search(address, begin, size, wanted, c_int64(len(wanted)))
        return found

    return offset


def compiled_among(library: ctypes.CDLL, table: mmap.mmap, start: int) -> Callable[[Sequence[str]], bytes]:
    """Gives for each of some keys without line breaks 1 if the table holds it, else 0."""
    among = library.table_among
    among.argtypes, among.restype = (c_void_p, c_int64, c_int64, c_char_p, c_int64, c_void_p, c_int64), None
    size = len(table)
    held = ctypes.c_char.from_buffer(table)
    address = ctypes.addressof(held)

    def which(keys: Sequence[str], held: object = held) -> bytes:
        found = array("b", bytes(len(keys)))  # a buffer of ctypes would have a type of its own for each length
        wanted = "\n".join([*keys, ""]).encode(errors="surrogatepass")
        among(address, start, size, wanted, len(wanted), found.buffer_info()[0], len(keys))
        return found.tobytes()

    return which
