"""`respelling.c` called from Python: words written otherwise, one change at a time."""

from __future__ import annotations

import ctypes
from array import array
from collections.abc import Callable, Collection, Sequence
from ctypes import c_char_p, c_int64, c_void_p

from .library import check

__all__ = ["Layers", "compiled_layer"]

Layers = Callable[[Sequence[str], Collection[str], int], list[str]]


def compiled_layer(library: ctypes.CDLL, ways: Sequence[tuple[str, tuple[str, ...]]]) -> Layers:
    """As `goods.respelt.further_forms`, by these ways, of words of ASCII letters."""
    function = library.respelling_layer
    function.argtypes = (*(c_char_p, c_int64) * 3, c_int64, c_void_p, c_int64)
    function.restype = c_int64
    lines = "".join([f"{written}\t{''.join([f'{one} ' for one in full])}\n" for written, full in ways]).encode("ascii")
    growth = max(len(one) - len(written) for written, full in ways for one in full)

    def further(layer: Sequence[str], seen: Collection[str], most: int) -> list[str]:
        room = (most + 1) * (max(map(len, layer), default=0) + growth + 1)
        texts = ("".join([f"{one}\n" for one in words]).encode("ascii") for words in (layer, seen))
        found = array("b", bytes(room))
        sizes = [part for text in texts for part in (text, len(text))]
        size = check(function(lines, len(lines), *sizes, most, found.buffer_info()[0], room))
        return found.tobytes()[:size].decode("ascii").split("\n")[:-1]

    return further
