"""Strings by the million, mapped: their texts, where one stands, and which look like a name."""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING

import numpy as np

from ..native import choose
from ..native.strings import compiled_find
from .signatures import one_signature, popcount
from .string_search import for_each_length, string_search, with_length

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Arrays = Mapping[str, NDArray[np.generic]]
    Places = NDArray[np.int64]
    Similarities = NDArray[np.float64]

__all__ = ["OrderedTexts", "Strings", "Texts"]

_PARTS = (
    "start", "length", "signature", "first", "shape_length", "shape_signature", "shape_first", "merging",
)  # fmt: skip


class Texts:
    """Strings over a mapped blob and its boundaries."""

    def __init__(self, arrays: Arrays, name: str) -> None:
        self._blob = memoryview(arrays[name].view(np.uint8))  # type: ignore[arg-type]
        self._start = arrays[f"{name}_start"].view(np.uint32)

    def __len__(self) -> int:
        return len(self._start) - 1

    def text(self, place: int) -> str:
        """One string."""
        return str(self._blob[int(self._start[place]) : int(self._start[place + 1])], "utf-8")

    def texts(self, places: Places) -> list[str]:
        """Some of the strings."""
        blob = self._blob
        ends = self._start[places + 1].tolist()
        return [str(blob[start:end], "utf-8") for start, end in zip(self._start[places].tolist(), ends, strict=True)]


class OrderedTexts(Texts):
    """Texts in the order of their bytes."""

    def __init__(self, arrays: Arrays, name: str) -> None:
        super().__init__(arrays, name)
        self.find: Callable[[str], int | None] = choose(
            lambda library: compiled_find(library, arrays[name].view(np.uint8), self._start), lambda: self._find
        )
        """The place of a text, or None."""

    def _find(self, text: str) -> int | None:
        place = bisect_left(range(len(self)), text, key=self.text)
        return place if place < len(self) and self.text(place) == text else None


class Strings(Texts):
    """Distinct folded strings over mapped arrays, in order of their length, then of their letters."""

    def __init__(self, arrays: Arrays, name: str) -> None:
        super().__init__(arrays, name)
        self._lengths = arrays[f"{name}_length"].view(np.uint16)
        if len(self._lengths) != len(self):
            # One length would silently stand for all in numpy.
            raise ValueError(f"{name}_length holds {len(self._lengths)} lengths of {len(self)} strings")
        self._signature = arrays[f"{name}_signature"].view(np.uint64)
        parts = {"blob": arrays[name], **{part: arrays[f"{name}_{part}"] for part in _PARTS}}
        skeletons = Texts(arrays, f"{name}_shape") if f"{name}_shape" in arrays else None
        search = string_search(parts, self, skeletons)
        self.near, self.above = search.near, search.above
        self.in_order, self.measures = search.in_order, search.measures

    def find(self, text: str) -> int | None:
        """The place of `text`, or None."""
        low, high = with_length(self._lengths, len(text), len(text))
        while low < high:
            middle = int(low + high) // 2
            if self.text(middle) < text:
                low = middle + 1
            else:
                high = middle
        return int(low) if low < len(self) and self.text(int(low)) == text else None

    def sharing(self, text: str, least: float) -> Places:
        """Every place whose string has at least a share of `least` of its letters in common with `text`."""
        # The surplus letters of the longer string are not in common.
        low, high = with_length(
            self._lengths, math.ceil(len(text) * least / (2 - least)), math.floor(len(text) * (2 - least) / least)
        )
        lengths = self._lengths[low:high]
        if not len(lengths):
            return np.zeros(0, np.int64)
        most = ((1 - least) * (np.arange(int(lengths[-1]) + 1) + len(text)) + 1e-9).clip(0, 255).astype(np.uint8)
        lacking = popcount(one_signature(text) ^ self._signature[low:high])
        return np.asarray((lacking <= for_each_length(most, lengths, ordered=True)).nonzero()[0] + low, np.int64)
