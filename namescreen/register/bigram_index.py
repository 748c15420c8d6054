"""Which strings of a register share most of their bigrams with a text: counted from lists of the strings that hold each
bigram, so that hundreds of thousands of strings cost a millisecond or two. A bigram is two bytes of a string that stand
side by side; a space stands before and after each string."""

from __future__ import annotations

from collections.abc import Mapping
from ctypes import CDLL
from typing import TYPE_CHECKING, Protocol

import numpy as np

from ..native import choose
from ..native.bigrams import BigramArrays
from .packing import distinct, least_of_most

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Arrays = Mapping[str, NDArray[np.generic]]
    Places = NDArray[np.int64]
    Keys = NDArray[np.uint16]

__all__ = ["BIGRAMS", "Bigrams", "bigrams", "bigrams_of", "pack_bigrams"]

BIGRAMS = 1 << 16
_SPACE = 32
LEVELS = 1000
"""Dice's coefficient is counted in steps of a thousandth."""
LEAST_SHARED = 8
"""A string is compared if it holds at least an eighth of the bigrams of the text."""
MOST_COUNTED = 255


class Bigrams(Protocol):
    """The strings of a register by their bigrams."""

    def sharing_most(self, keys: Keys, count: int, left_out: NDArray[np.bool_] | None = None) -> Places:
        """At most `count` strings that share most of these bigrams (by Dice's coefficient), ascending, none of them
        `left_out`. Equally alike ones at the end are all given or all left. None where there are no bigrams."""

    def rarer_half(self, keys: Keys) -> Keys:
        """The half of these bigrams that fewest strings hold: most of the time goes into the others, which tell
        least."""

    def with_rarest(self, part: str) -> Places:
        """The strings, ascending, that hold the bigram of a text that fewest hold, the spaces around it left out; of a
        single byte all that are not empty."""


def bigrams(arrays: Arrays, name: str) -> Bigrams:
    """Over arrays that `pack_bigrams` has made."""
    postings, start, text_start = (
        arrays[part].view(np.uint32) for part in (f"{name}_bigrams", f"{name}_bigrams_start", f"{name}_start")
    )

    def compiled(library: CDLL) -> Bigrams:
        held = BigramArrays(library, postings, start, text_start, LEVELS, LEAST_SHARED)
        return CompiledBigrams(held, postings, start)

    return choose(compiled, lambda: ArrayBigrams(postings, start, text_start))


def pack_bigrams(arrays: dict[str, NDArray[np.generic]], name: str) -> None:
    """Add the lists of strings that hold each bigram, `NAME_bigrams`: a string stands there as often as it has it."""
    blob, start = arrays[name].view(np.uint8), arrays[f"{name}_start"].astype(np.int64)
    count, sizes = len(start) - 1, np.diff(start)
    text = np.full(len(blob) + count + 1, _SPACE, np.uint8)
    text[np.arange(len(blob)) + np.repeat(np.arange(1, count + 1), sizes)] = blob
    keys = text[:-1] * np.uint16(256) + text[1:]
    order = np.argsort(keys, kind="stable")
    arrays[f"{name}_bigrams"] = np.repeat(np.arange(count, dtype=np.uint32), sizes + 1)[order]
    arrays[f"{name}_bigrams_start"] = np.searchsorted(keys[order], np.arange(BIGRAMS + 1)).astype(np.uint32)


def bigrams_of(*texts: str) -> Keys:
    """The distinct bigrams of some texts, as numbers, ascending."""
    letters = (np.frombuffer(f" {text} ".encode("utf-8", "replace"), np.uint8) for text in texts)
    keys = (one[:-1] * np.uint16(256) + one[1:] for one in letters)
    return distinct(np.concatenate([np.zeros(0, np.uint16), *keys]))


class _Held:
    """Which strings hold each bigram."""

    def __init__(self, postings: NDArray[np.uint32], start: NDArray[np.uint32]) -> None:
        self._postings, self._start = postings, start

    def rarer_half(self, keys: Keys) -> Keys:
        """As `Bigrams.rarer_half`."""
        sizes = self._start[keys.astype(np.int64) + 1].astype(np.int64) - self._start[keys]
        return np.sort(keys[np.argsort(sizes, kind="stable")[: (len(keys) + 1) // 2]])

    def with_rarest(self, part: str) -> Places:
        """As `Bigrams.with_rarest`."""
        letters = np.frombuffer(part.encode(), np.uint8).astype(np.int64)
        keys = letters[:-1] * 256 + letters[1:]
        if not len(keys):
            return distinct(self._postings.astype(np.int64))
        starts, ends = (self._start[at].astype(np.int64) for at in (keys, keys + 1))
        rarest = (ends - starts).argmin()
        return distinct(self._postings[starts[rarest] : ends[rarest]].astype(np.int64))


class CompiledBigrams(_Held):
    """Counted in compiled code."""

    def __init__(self, arrays: BigramArrays, postings: NDArray[np.uint32], start: NDArray[np.uint32]) -> None:
        super().__init__(postings, start)
        self._compiled = arrays

    def sharing_most(self, keys: Keys, count: int, left_out: NDArray[np.bool_] | None = None) -> Places:
        """As `Bigrams.sharing_most`."""
        return self._compiled.most_alike(keys, count, left_out) if len(keys) else np.zeros(0, np.int64)


class ArrayBigrams(_Held):
    """Counted in numpy."""

    def __init__(self, postings: NDArray[np.uint32], start: NDArray[np.uint32], text_start: NDArray[np.uint32]) -> None:
        super().__init__(postings, start)
        self._text_start = text_start

    def sharing_most(self, keys: Keys, count: int, left_out: NDArray[np.bool_] | None = None) -> Places:
        """As `Bigrams.sharing_most`."""
        if not len(keys):
            return np.zeros(0, np.int64)
        lists = [self._postings[self._start[key] : self._start[key + 1]] for key in keys.astype(np.int64)]
        shared = np.bincount(np.concatenate(lists), minlength=len(self._text_start) - 1).clip(max=MOST_COUNTED)
        enough = LEAST_SHARED * shared >= min(len(keys), LEAST_SHARED * MOST_COUNTED)
        if left_out is not None:
            enough &= ~left_out
        places = enough.nonzero()[0]
        sizes = self._text_start[places + 1].astype(np.int64) - self._text_start[places] + 1
        level = np.minimum(2 * LEVELS * shared[places] // (sizes + len(keys)), LEVELS)
        return np.asarray(places[level >= least_of_most(level, count)], np.int64)
