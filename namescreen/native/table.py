"""`table.c` called from Python: binary search in a mapped table."""

from __future__ import annotations

import ctypes
import mmap
from array import array
from collections.abc import Callable, Sequence
from ctypes import c_char_p, c_int64, c_void_p
from typing import Any

__all__ = ["compiled_among", "compiled_find", "compiled_seek", "compiled_value"]


class _Table(ctypes.Structure):
    _fields_ = [("data", c_void_p), ("start", c_int64), ("size", c_int64)]


def compiled_seek(library: ctypes.CDLL, table: mmap.mmap, start: int) -> Callable[[bytes], int]:
    """Gives the offset of the first line from `start` on whose key is not below the one asked for."""
    search = library["table_seek"]
    search.restype = c_int64
    held = ctypes.c_char.from_buffer(table)
    address, begin, size = c_void_p(ctypes.addressof(held)), c_int64(start), c_int64(len(table))

    def offset(wanted: bytes, held: object = held) -> int:
        found: int = search(address, begin, size, wanted, c_int64(len(wanted)))
        return found

    return offset


def compiled_find(library: ctypes.CDLL, table: mmap.mmap, start: int) -> Callable[[bytes], int]:
    """Gives the offset of the line with the key asked for, -1 where there is none."""
    find, opened = _opened(library["table_at"], table, start)

    def offset(wanted: bytes) -> int:
        found: int = find(opened, wanted, len(wanted))
        return found

    return offset


def compiled_value(
    library: ctypes.CDLL, table: mmap.mmap, start: int, otherwise: Callable[[bytes], bytes | None]
) -> Callable[[bytes], bytes | None]:
    """Gives the value of the key asked for, None where there is none; what is too long for it, as `otherwise` does."""
    find, opened = _opened(library["table_value"], table, start)

    def value(wanted: bytes) -> bytes | None:
        found = find(opened, wanted, len(wanted))
        if found < 0:
            return None if found == -1 else otherwise(wanted)
        at = found >> 24
        return table[at : at + (found & 0xFFFFFF)]

    return value


def _opened(find: Any, table: mmap.mmap, start: int) -> tuple[Any, Any]:
    """A search that is asked with a table, a key and its length, and that table. No types of arguments are declared: to
    convert each at every call takes a third of it."""
    find.restype = c_int64
    held = ctypes.c_char.from_buffer(table)
    opened = _Table(ctypes.addressof(held), start, len(table))
    opened.held = held
    return find, ctypes.byref(opened)  # which holds what it is of


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
