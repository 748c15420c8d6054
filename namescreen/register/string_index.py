"""Strings by the million, mapped: their texts, where one stands, and how alike they and a name look."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Callable, Mapping, Sequence
from typing import TYPE_CHECKING

import numpy as np

from ..closeness.appearance import SHAPE_ONLY, confusable_skeleton
from ..closeness.letters import LETTER_MEASURES, letter_measures
from ..native import choose
from ..native.strings import LONGEST_PATTERN, compiled_find, compiled_measures

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Arrays = Mapping[str, NDArray[np.generic]]
    Places = NDArray[np.int64]

__all__ = ["OrderedTexts", "Strings", "Texts"]


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

    def with_part(self, part: str, among: Places) -> Places:
        """Those of the strings `among` these, ascending, that are `part`, or begin or end with it."""
        wanted, blob = np.frombuffer(part.encode(), np.uint8), np.asarray(self._blob)
        start, end = (each[among].astype(np.int64) for each in (self._start[:-1], self._start[1:]))
        long = end - start >= len(wanted)
        places, letters = among[long], np.arange(len(wanted))
        first, last = start[long], end[long] - len(wanted)
        begins, ends = ((blob[at[:, None] + letters] == wanted).all(axis=1) for at in (first, last))
        return np.asarray(places[begins | ends], np.int64)


class OrderedTexts(Texts):
    """Texts in the order of their bytes."""

    def __init__(self, arrays: Arrays, name: str) -> None:
        super().__init__(arrays, name)
        self.find: Callable[[Sequence[str]], list[int | None]] = choose(
            lambda library: compiled_find(library, arrays[name].view(np.uint8), self._start), lambda: self._find
        )
        """The place of each of some texts without zero bytes, or None."""

    def _find(self, texts: Sequence[str]) -> list[int | None]:
        places = [bisect_left(range(len(self)), text, key=self.text) for text in texts]
        return [
            place if place < len(self) and self.text(place) == text else None
            for text, place in zip(texts, places, strict=True)
        ]


class Strings(Texts):
    """Distinct folded strings over mapped arrays, in order of their length, then of their letters."""

    def __init__(self, arrays: Arrays, name: str) -> None:
        super().__init__(arrays, name)
        self._lengths = arrays[f"{name}_length"].view(np.uint16)
        if len(self._lengths) != len(self):
            # One length would silently stand for all in numpy.
            raise ValueError(f"{name}_length holds {len(self._lengths)} lengths of {len(self)} strings")
        self._measures = choose(
            lambda library: compiled_measures(library, arrays[name].view(np.uint8), self._start, SHAPE_ONLY),
            lambda: self._measures_of,
        )

    def find(self, text: str) -> int | None:
        """The place of `text`, or None."""
        # Limits of the array's own type: others would have all of it copied.
        size = min(len(text), 65534)
        low, high = np.searchsorted(self._lengths, np.array([size, size + 1], np.uint16)).tolist()
        place = bisect_left(range(low, high), text, key=self.text) + low
        return place if place < high and self.text(place) == text else None

    def measures(self, text: str, places: Places) -> NDArray[np.float64]:
        """A row for each of these strings: the `closeness.letters.letter_measures` of it and `text`, and 1 where both
        look the same but for shapes easily confused. Noughts for an empty string; `text` is not empty,
        and what is said of the same string does not matter."""
        measures = self._measures if len(text) <= LONGEST_PATTERN else self._measures_of
        return measures(text, confusable_skeleton(text), places)

    def _measures_of(self, text: str, skeleton: str, places: Places) -> NDArray[np.float64]:
        values = np.zeros((len(places), len(LETTER_MEASURES) + 1))
        for at, other in enumerate(self.texts(places)):
            if other:
                values[at] = (*letter_measures(text, other), confusable_skeleton(other) == skeleton)
        return values
