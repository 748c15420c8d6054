"""The phoneme tables that the compiled code reads, and the sound similarity of one pair of words."""

from __future__ import annotations

import ctypes
from collections.abc import Callable
from ctypes import c_char_p, c_double, c_int64, c_void_p
from functools import cache, lru_cache
from typing import cast

from ..pronunciation.alignment import BASE, CLUSTERED, FIRST, RHYTHM
from ..pronunciation.articulatory_features import percent_differences
from ..pronunciation.phones import VOWEL_LETTERS
from . import kernel

__all__ = ["MOST_SOUNDS", "alphabet", "joined", "similarity_of_codes"]

MOST_SOUNDS = 64
"""Longer readings are compared without the kernel."""


class _Sounds(ctypes.Structure):
    _fields_ = [
        ("difference", c_void_p), ("weight", c_void_p), ("vowel", c_void_p), ("letter", c_void_p), ("first", c_int64),
        ("clustered", c_int64), ("rhythm", c_double),
    ]  # fmt: skip


@cache
def alphabet() -> object:
    """The costs of all sounds, as an argument for the kernel."""
    difference, weight, vowel, letters = bytearray(b"d" * 256 * 256), bytearray(256), bytearray(256), bytearray(48)
    for place, (letter, others) in enumerate(percent_differences().items(), start=1):
        letters[place] = at = ord(letter)
        weight[at], vowel[at] = BASE[letter], letter in VOWEL_LETTERS
        for other, percent in others.items():
            difference[256 * at + ord(other)] = percent
    held = [(ctypes.c_uint8 * len(one)).from_buffer(one) for one in (difference, weight, vowel, letters)]
    sounds = _Sounds(*map(ctypes.addressof, held), FIRST, CLUSTERED, RHYTHM)
    sounds.held = held  # must live as long
    return ctypes.byref(sounds)


def similarity_of_codes(one: tuple[str, ...], other: tuple[str, ...], least: float) -> float | None:
    """How alike the closest of some codes and of some others sound; what is below `least` may be 0.

    None without the kernel, or where a code is too long for it.
    """
    alike = _alike()
    ours, theirs = joined(one), joined(other)
    if alike is None or ours is None or theirs is None:
        return None
    return float(alike(alphabet(), *ours, *theirs, least))


@cache
def _alike() -> Callable[..., float] | None:
    library = kernel()
    if library is None:
        return None
    library.sounds_alike.argtypes = (c_void_p, c_char_p, c_int64, c_char_p, c_int64, c_double)
    library.sounds_alike.restype = c_double
    return cast("Callable[..., float]", library.sounds_alike)


@lru_cache(maxsize=1 << 16)
def joined(codes: tuple[str, ...]) -> tuple[bytes, int] | None:
    """The codes, each ended by a zero byte, and their number; None if one is too long."""
    if any(len(code) > MOST_SOUNDS for code in codes):
        return None
    return "".join([f"{code}\0" for code in codes]).encode("ascii"), len(codes)
