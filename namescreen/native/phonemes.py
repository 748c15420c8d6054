"""`phoneme_alignment.c` called from Python: the costs of phonemes, and the sound similarity of one pair of words."""

from __future__ import annotations

import ctypes
from collections.abc import Callable, Collection, Mapping
from ctypes import c_double, c_int64, c_void_p
from functools import lru_cache

__all__ = ["LONGEST_QUERY", "Closest", "PhonemeCosts", "compiled_closest", "terminated"]

LONGEST_QUERY = 64
"""Phonemes of the longest code that can be searched for here."""

Closest = Callable[[tuple[str, ...], tuple[str, ...], float], float]


class _Table(ctypes.Structure):
    _fields_ = [
        ("difference", c_void_p), ("weight", c_void_p), ("vowel", c_void_p), ("first", c_int64),
        ("clustered", c_int64), ("rhythm", c_double),
    ]  # fmt: skip


class PhonemeCosts:
    """What an alignment of phoneme codes costs, as `table` for the compiled code.

    `differences` are in hundredths, `weights` in quarters of a full phone. `pronunciation.alignment` says what each
    means.
    """

    def __init__(
        self,
        differences: Mapping[str, Mapping[str, int]],
        weights: Mapping[str, int],
        vowels: Collection[str],
        *,
        first: int,
        clustered: int,
        rhythm: float,
    ) -> None:
        difference, weight, vowel = bytearray(b"d" * 256 * 256), bytearray(256), bytearray(256)
        for letter, others in differences.items():
            at = ord(letter)
            weight[at], vowel[at] = weights[letter], letter in vowels
            for other, percent in others.items():
                difference[256 * at + ord(other)] = percent
        self._held = [(ctypes.c_uint8 * len(one)).from_buffer(one) for one in (difference, weight, vowel)]
        self._table = _Table(*map(ctypes.addressof, self._held), first, clustered, rhythm)
        self.table = ctypes.byref(self._table)


def compiled_closest(library: ctypes.CDLL, costs: PhonemeCosts, otherwise: Closest) -> Closest:
    """As `pronunciation.alignment.closest_similarity`; codes that are too long for it go to `otherwise`."""
    function = library["phonemes_closest"]
    function.restype = c_double
    table = costs.table

    def closest(one: tuple[str, ...], other: tuple[str, ...], least: float) -> float:
        ours, theirs = terminated(one), terminated(other)
        if ours is None or theirs is None:
            return otherwise(one, other, least)
        return float(function(table, *ours, *theirs, c_double(least)))

    return closest


@lru_cache(maxsize=1 << 16)
def terminated(codes: tuple[str, ...]) -> tuple[bytes, c_int64] | None:
    """The codes, each ended by a zero byte, and their number; None if one is too long."""
    if any(len(code) > LONGEST_QUERY for code in codes):
        return None
    return "".join([f"{code}\0" for code in codes]).encode("ascii"), c_int64(len(codes))
