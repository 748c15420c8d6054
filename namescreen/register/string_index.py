"""Strings by the million: which of them look like a name, found by counting bits before aligning letters.

The likeness is `closeness.appearance.appearance_similarity`, in arrays; the filter is an upper bound on it.
"""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Mapping
from functools import lru_cache
from typing import TYPE_CHECKING

import numpy as np
from rapidfuzz.distance import OSA, Indel
from rapidfuzz.process import cdist

from ..closeness.appearance import (
    DIFFERENT,
    INSIDE,
    INSIDE_ELSEWHERE,
    INSIDE_START,
    ORDER,
    PREFIX_BONUS,
    PREFIX_LETTERS,
    SHAPE_ONLY,
    SHORTEST_INSIDE,
    add_shared_letter,
    confusable_skeleton,
    edits_and_order,
    inside,
)
from ..native.strings import MOST_CHARACTERS, CompiledStrings, Query, compiled_find, compiled_strings
from .signatures import ALIKE, one_signature, popcount

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Arrays = Mapping[str, NDArray[np.generic]]
    Places = NDArray[np.int64]
    Similarities = NDArray[np.float64]

__all__ = ["OrderedTexts", "Strings", "Texts", "first_letters"]

_NO_LEAST = -1e3
_CONSTANTS = {
    "order": ORDER, "bonus": PREFIX_BONUS, "shape_only": SHAPE_ONLY, "inside": INSIDE, "inside_start": INSIDE_START,
    "inside_elsewhere": INSIDE_ELSEWHERE, "nearly": DIFFERENT,
}  # fmt: skip


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
    """Texts in their order."""

    def __init__(self, arrays: Arrays, name: str) -> None:
        super().__init__(arrays, name)
        self._compiled = compiled_find(arrays, name)

    def find(self, text: str) -> int | None:
        """The place of `text`, or None."""
        if self._compiled is not None:
            at = self._compiled(text)
            return at if at >= 0 else None
        at = bisect_left(range(len(self)), text, key=self.text)
        return at if at < len(self) and self.text(at) == text else None


class Strings(Texts):
    """Distinct folded strings over mapped arrays, in order of their length, then of their letters."""

    def __init__(self, arrays: Arrays, name: str) -> None:
        super().__init__(arrays, name)
        self._lengths = arrays[f"{name}_length"].view(np.uint16)
        self._signature = arrays[f"{name}_signature"].view(np.uint64)
        self._shape_signature = arrays[f"{name}_shape_signature"].view(np.uint64)
        self._first = arrays[f"{name}_first"].view(np.uint64)
        self._shape_first = arrays[f"{name}_shape_first"].view(np.uint64)
        self._shape_lengths = arrays[f"{name}_shape_length"].view(np.uint16)
        self._merging = arrays[f"{name}_merging"].astype(np.int64)
        self._shapes = Texts(arrays, f"{name}_shape") if f"{name}_shape" in arrays else None
        self._compiled = compiled_strings(arrays, name, _CONSTANTS)

    def _kernel(self, text: str) -> CompiledStrings | None:
        """The kernel, where there is one and it takes this text."""
        return self._compiled if 0 < len(text) <= MOST_CHARACTERS else None

    def find(self, text: str) -> int | None:
        """The place of `text`, or None."""
        low, high = self._with_length(len(text), len(text))
        while low < high:
            middle = int(low + high) // 2
            if self.text(middle) < text:
                low = middle + 1
            else:
                high = middle
        return int(low) if low < len(self) and self.text(int(low)) == text else None

    def _with_length(self, shortest: int, longest: int) -> tuple[int, int]:
        """Where strings of these lengths begin and end."""
        # Limits of the array's own type: others would have all of it copied.
        limits = np.array([max(0, min(shortest, 65535)), min(longest + 1, 65535)], np.uint16)
        low, high = np.searchsorted(self._lengths, limits)
        return int(low), int(high)

    def within(self, text: str, least: float) -> tuple[Places, Similarities]:
        """Every place whose string may be at least `least` alike to `text`, with the most it can be."""
        if not text or not len(self):
            return np.zeros(0, np.int64), np.zeros(0)
        inside, low, high = self._reach(text, least)
        shape = confusable_skeleton(text)
        found = [
            self._most(text, slice(low, high), least, inside),
            self._most(shape, slice(0, len(self)) if len(shape) < len(text) else self._merging, least / SHAPE_ONLY),
        ]
        places, back = np.unique(np.concatenate([one for one, _ in found]), return_inverse=True)
        most = np.zeros(len(places))
        np.maximum.at(most, back, np.concatenate([values for _, values in found]))
        return places, most

    def _reach(self, text: str, least: float) -> tuple[Similarities, int, int]:
        """What standing inside counts, by the length of a string; and where the strings begin and end whose lengths do
        not rule out that they are at least `least` alike.

        Where two letters are read as one (rn, m), lengths and counts of letters say less: such strings are compared
        by their shapes, whatever their lengths.
        """
        size, sizes = len(text), np.arange(int(self._lengths[-1]) + 1)
        longer, both, apart = np.maximum(sizes, size), sizes + size, np.abs(sizes - size)
        inside = _most_inside(size, sizes)
        reach = _with_prefix(1 - (1 - ORDER) * apart / longer - ORDER * apart / both, PREFIX_LETTERS)
        fit = (np.maximum(reach, inside) >= least - 1e-9).nonzero()[0]
        low, high = self._with_length(int(fit[0]), int(fit[-1])) if len(fit) else (0, 0)
        return inside, low, high

    def _most(
        self, text: str, part: Places | slice, least: float, inside: Similarities | None = None
    ) -> tuple[Places, Similarities]:
        """Which strings of a part may be `least` alike to `text`, by their signatures, with the most they can be.

        With x the larger and y the sum of what either lacks, likeness before the shared beginning counts is at most
        1 - (1 - ORDER) x / (longer length) - ORDER y / (both lengths). Without `inside`, for shapes: the lengths
        of the strings only make the bound weaker.
        """
        size, own = max(1, len(text)), one_signature(text)
        theirs, lengths = self._signature[part], self._lengths[part]
        firsts = self._first[part]
        if inside is None:
            theirs, firsts = self._shape_signature[part], self._shape_first[part]
        if not len(lengths):
            return np.zeros(0, np.int64), np.zeros(0)
        sizes = np.arange(int(lengths.max()) + 1)
        apart, apart_same = _apart(size, sizes, least, inside)
        lacking = popcount(own ^ theirs)
        keep = (lacking <= _for_each(apart_same, lengths, ordered=isinstance(part, slice))).nonzero()[0]
        differs = firsts.take(keep) ^ first_letters(text)
        likely = ((differs & np.uint64(0xFFFF)) == 0) | (lacking.take(keep) <= apart.take(lengths.take(keep)))
        keep, differs = keep[likely], differs[likely]
        theirs, lengths = theirs.take(keep), lengths.take(keep)
        places = keep + (part.start or 0) if isinstance(part, slice) else part[keep]
        missing, extra = popcount(own & ~theirs), popcount(theirs & ~own)
        raw = 1 - (1 - ORDER) * np.maximum(missing, extra) / np.maximum(sizes, size)[lengths]
        raw -= ORDER * (missing.astype(np.int64) + extra) / (sizes + size)[lengths]
        shared = np.zeros(len(places), np.int8)
        for letters in range(1, PREFIX_LETTERS + 1):
            shared[(differs & np.uint64((1 << 16 * letters) - 1)) == 0] = letters
        raw = _with_prefix(raw, shared)
        if inside is not None:
            within = (missing == 0) | (extra == 0)
            raw[within] = np.maximum(raw[within], inside[lengths[within]])
        likely = raw >= least - 1e-6
        return places[likely], raw[likely]

    def near(self, text: str, least: float) -> tuple[Places, Similarities]:
        """Every place whose string is at least `least` alike to `text`, with how alike."""
        compiled = self._kernel(text)
        if compiled is not None and len(self):
            inside, low, high = self._reach(text, least)
            sizes, query = np.arange(len(inside)), _query(text)
            apart = np.array(
                [
                    *_apart(len(text), sizes, least),
                    *_apart(len(query.shape), sizes, least / SHAPE_ONLY),
                    (inside >= least - 1e-9).astype(np.uint8),
                ]
            )
            return compiled.near(query, least, apart, (low, high))
        places, _ = self.within(text, least)
        similarity = self.alike(text, places)
        close = similarity >= least
        return places[close], similarity[close]

    def above(self, text: str, places: Places, floor: float) -> Similarities:
        """How alike `text` looks to each of these strings, as `alike`; 0 where it cannot be above `floor`."""
        inside = _most_inside(len(text), np.arange(int(self._lengths[-1]) + 1 if len(self) else 0))
        compiled = self._kernel(text)
        if compiled is not None:
            return compiled.above(_query(text), places, inside, floor)
        _, most = self._most(text, places, _NO_LEAST, inside)
        shape = confusable_skeleton(text)
        if len(shape) < len(text):
            most = np.maximum(most, SHAPE_ONLY * self._most(shape, places, _NO_LEAST)[1])
        else:
            merging = (self._shape_lengths.take(places) < self._lengths.take(places)).nonzero()[0]
            most[merging] = np.maximum(most[merging], SHAPE_ONLY * self._most(shape, places[merging], _NO_LEAST)[1])
        similarity = np.zeros(len(places))
        may = (most > floor).nonzero()[0]
        similarity[may] = self.alike(text, places[may])
        return similarity

    def in_order(self, text: str, places: Places) -> Similarities:
        """The share of letters that each of these strings has in common with `text`, in order: Indel similarity."""
        compiled = self._kernel(text)
        if compiled is not None:
            return compiled.in_order(_query(text), places)
        scores: Similarities = cdist([text], self.texts(places), scorer=Indel.normalized_similarity, dtype=np.float64)[
            0
        ]
        return scores

    def sharing(self, text: str, least: float) -> Places:
        """Every place whose string has at least a share of `least` of its letters in common with `text`."""
        # What one has more letters than the other is not in common.
        low, high = self._with_length(
            math.ceil(len(text) * least / (2 - least)), math.floor(len(text) * (2 - least) / least)
        )
        lengths = self._lengths[low:high]
        if not len(lengths):
            return np.zeros(0, np.int64)
        most = ((1 - least) * (np.arange(int(lengths[-1]) + 1) + len(text)) + 1e-9).clip(0, 255).astype(np.uint8)
        lacking = popcount(one_signature(text) ^ self._signature[low:high])
        return np.asarray((lacking <= _for_each(most, lengths, ordered=True)).nonzero()[0] + low, np.int64)

    def alike(self, text: str, places: Places) -> Similarities:
        """How alike `text` looks to each of these strings: `closeness.appearance.appearance_similarity`."""
        if not len(places):
            return np.zeros(0)
        others = self.texts(places)
        raw = _in_order(text, others)
        shapes = self._shapes.texts(places) if self._shapes else [confusable_skeleton(other) for other in others]
        raw = np.maximum(raw, SHAPE_ONLY * _in_order(confusable_skeleton(text), shapes))
        sizes = self._lengths[places].astype(np.int64)
        shorter, longer = np.minimum(sizes, len(text)), np.maximum(sizes, len(text))
        could = (shorter >= SHORTEST_INSIDE) & (inside(shorter, longer, INSIDE_START) > raw)
        for at in could.nonzero()[0].tolist():
            short, long = (text, others[at]) if len(text) < len(others[at]) else (others[at], text)
            if short in long:
                share = INSIDE_START if long.startswith(short) else INSIDE_ELSEWHERE
                raw[at] = max(raw[at], inside(len(short), len(long), share))
        return np.where([other == text for other in others], 1.0, np.minimum(raw, DIFFERENT))


@lru_cache(maxsize=256)
def _query(text: str) -> Query:
    both = text, confusable_skeleton(text)
    one, other = (one_signature(each) for each in both)
    first, other_first = (first_letters(each) for each in both)
    return Query(*both, (one, other), (first, other_first))


def _apart(
    size: int, sizes: Places, least: float, inside: Similarities | None = None
) -> tuple[NDArray[np.uint8], NDArray[np.uint8]]:
    """The most characters that may be lacking in all, by the length of a string: where it begins with another letter,
    and with the same one."""
    for_each = (1 - ORDER) / 2 / np.maximum(sizes, size) + ORDER / (sizes + size)
    apart = np.clip((1 - least) / for_each + 1e-6, 0, 255).astype(np.uint8)
    gain = (1 - PREFIX_BONUS) ** PREFIX_LETTERS
    apart_same = np.clip((1 - least) / gain / for_each + 1e-6, 0, 255).astype(np.uint8)
    if inside is None:
        return apart, apart_same
    # Where one may stand wholly inside the other, they may differ by all that is longer.
    may = inside[: len(sizes)] >= least - 1e-9
    lacking = np.abs(sizes - size).clip(0, 255).astype(np.uint8)
    return np.where(may, np.maximum(apart, lacking), apart), np.where(may, np.maximum(apart_same, lacking), apart_same)


def _for_each(values: NDArray[np.uint8], lengths: NDArray[np.uint16], *, ordered: bool) -> NDArray[np.uint8]:
    """The value of each length; lengths in order need no look-up each."""
    if not ordered:
        return values.take(lengths)
    first, last = int(lengths[0]), int(lengths[-1])
    ends = np.searchsorted(lengths, np.arange(first, last + 1).astype(np.uint16), side="right")
    return np.repeat(values[first : last + 1], np.diff(ends, prepend=0))


def first_letters(text: str) -> np.uint64:
    """The first four characters of a string, sixteen bits each, as one number; those of alike shape are the same."""
    first = text[:PREFIX_LETTERS].translate(ALIKE)
    return np.uint64(sum((ord(letter) & 0xFFFF) << 16 * at for at, letter in enumerate(first)))


def _most_inside(size: int, sizes: Places) -> Similarities:
    """How alike strings of these lengths are at most to one of `size` letters because one stands inside the other."""
    shorter, longer = np.minimum(sizes, size), np.maximum(np.maximum(sizes, size), 1)
    return np.where(shorter < SHORTEST_INSIDE, 0.0, inside(shorter, longer, INSIDE_START))


def _with_prefix(raw: Similarities, letters: int | NDArray[np.int8]) -> Similarities:
    return np.asarray(1 - (1 - raw) * (1 - PREFIX_BONUS) ** letters, np.float64)


def _in_order(text: str, others: list[str]) -> Similarities:
    osa = cdist([text], others, scorer=OSA.normalized_similarity, dtype=np.float64)[0]
    indel = cdist([text], others, scorer=Indel.normalized_similarity, dtype=np.float64)[0]
    raw: Similarities = edits_and_order(osa, indel)
    alive = np.ones(len(others), bool)
    first = np.array([other[:PREFIX_LETTERS] for other in others], f"U{PREFIX_LETTERS}")
    letters = first.view("U1").reshape(-1, PREFIX_LETTERS)
    for at, letter in enumerate(text[:PREFIX_LETTERS]):
        alive &= letters[:, at] == letter
        raw[alive] = add_shared_letter(raw[alive])
    return raw
