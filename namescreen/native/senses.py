"""`senses.c` called from Python: the words related to a word, from the lines of the senses table and the hierarchy."""

from __future__ import annotations

import ctypes
from collections.abc import Iterable, Mapping, Sequence
from ctypes import byref, c_char_p, c_int64, c_void_p
from typing import TYPE_CHECKING

import numpy as np

from .library import address, check

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Facts = NDArray[np.uint32]

__all__ = ["RelatedWords"]

_SLOTS = 1 << 19  # senses.c asserts both
_WORD = 24  # bytes of a `struct word`
_NUMBERS = ("below", "above", "line", "first_above", "narrower", "first_narrower", "touched", "slot")


class _Senses(ctypes.Structure):
    _fields_ = [
        *(("text", c_void_p), ("size", c_int64), ("rows", c_int64)),
        *((name, c_void_p) for name in (*_NUMBERS, "best", "word")),
    ]


_POWERS = tuple(f"step{power}" for power in range(6))
_MEASURES = (*_POWERS, "floor", "hierarchy", "one_step", "too_wide", "strongest", "nouns", "verbs")


class _Asked(ctypes.Structure):
    _fields_ = [
        *((name, c_char_p) for name in ("ids", "wanted")),
        *((name, c_void_p) for name in ("weights", "strengths", "measures")),
        *((name, c_int64) for name in ("count", "own", "ids_size", "wanted_size")),
    ]


class RelatedWords:
    """Finds the words related to a word. Raises IndexError if the hierarchy does not belong to the table."""

    def __init__(
        self, library: ctypes.CDLL, lines: memoryview, facts: tuple[Facts, Facts, Facts], measures: Mapping[str, float]
    ) -> None:
        below, counts, above = map(np.ascontiguousarray, facts)
        self._neighbours = library.senses_neighbours
        self._neighbours.restype = library.senses_order.restype = c_int64
        self._measures = np.array([measures[name] for name in _MEASURES])
        rows, text = len(below), np.frombuffer(lines, np.uint8)
        room = {name: np.empty(rows + 1, np.uint32) for name in ("line", "first_above", "first_narrower", "touched")}
        room |= {"below": below, "above": above, "narrower": np.empty(len(above), np.uint32)}
        room["slot"] = np.zeros(_SLOTS, np.uint32)
        best, words = np.zeros(rows), np.empty(_SLOTS // 2 * _WORD, np.uint8)
        self._kept = text, room, best, words
        numbers = [address(room[name]) for name in _NUMBERS]
        self._senses = _Senses(address(text), len(text), rows, *numbers, address(best), address(words))
        check(library.senses_order(byref(self._senses), address(counts), c_int64(len(above))))
        self._written, self._scores = np.empty(len(text), np.uint8), np.empty(_SLOTS // 2)

    def neighbours(
        self, own: Sequence[tuple[str, int]], reached: Sequence[tuple[str, float, int]], wanted: Iterable[str]
    ) -> list[tuple[str, float]]:
        """The words of senses that are `reached`, each by the weight of a relation from a sense of some strength, and
        of the cousins of the word's `own` senses, with their closeness; those that are close enough, and `wanted` ones.
        Raises IndexError for a sense that there is not."""
        ids = "".join(f"{one[0]}\n" for one in (*own, *reached)).encode()
        words = "".join(f"{word}\n" for word in wanted).encode()
        weights = np.array([0.0] * len(own) + [weight for _, weight, _ in reached])
        strengths = np.array([float(one[-1]) for one in (*own, *reached)])
        asked = _Asked(
            ids, words, address(weights), address(strengths), address(self._measures), len(strengths), len(own),
            len(ids), len(words),
        )  # fmt: skip
        count = c_int64()
        size = check(
            self._neighbours(
                byref(self._senses), byref(asked), address(self._written), address(self._scores), byref(count)
            )
        )
        found = self._written[:size].tobytes().decode().split("\n")
        return list(zip(found, self._scores[: count.value].tolist(), strict=False))
