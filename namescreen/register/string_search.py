"""The strings of a register that look like a name, found by counting letters before aligning them.

The similarity is `closeness.appearance.appearance_similarity`, in arrays or compiled. The filter is an upper bound.
"""

from __future__ import annotations

from ctypes import CDLL
from functools import lru_cache
from typing import TYPE_CHECKING, Protocol

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
from ..closeness.letters import LETTER_MEASURES, letter_measures
from ..native import choose
from ..native.strings import LONGEST_PATTERN, Query, StringArrays
from .signatures import PROTOTYPES, one_signature, popcount

if TYPE_CHECKING:
    from collections.abc import Mapping

    from numpy.typing import NDArray

    from .string_index import Texts

    Places = NDArray[np.int64]
    Similarities = NDArray[np.float64]

__all__ = ["StringSearch", "first_letters", "for_each_length", "string_search", "with_length"]

_NO_LEAST = -1e3
_CONSTANTS = {
    "order": ORDER, "prefix_bonus": PREFIX_BONUS, "shape_only": SHAPE_ONLY, "inside": INSIDE,
    "inside_start": INSIDE_START, "inside_elsewhere": INSIDE_ELSEWHERE, "different": DIFFERENT,
}  # fmt: skip


class StringSearch(Protocol):
    """One string against all those of a register."""

    def near(self, text: str, least: float) -> tuple[Places, Similarities]:
        """Every place whose string is at least `least` similar to `text`, with its similarity."""

    def above(self, text: str, places: Places, floor: float) -> Similarities:
        """The similarity of `text` to each of these strings; 0 where it cannot be above `floor`."""

    def in_order(self, text: str, places: Places) -> Similarities:
        """The share of letters that each of these strings has in common with `text`, in order: Indel similarity."""

    def measures(self, text: str, places: Places) -> Similarities:
        """A row for each of these strings: the `closeness.letters.letter_measures` of it and `text`, their similarity
        by edits alone, and 1 where both look the same but for shapes easily confused. Noughts for an empty string;
        `text` is not empty."""


def string_search(parts: Mapping[str, NDArray[np.generic]], texts: Texts, skeletons: Texts | None) -> StringSearch:
    """The search of strings whose arrays are these `parts`."""
    in_arrays = ArraySearch(parts, texts, skeletons)

    def compiled(library: CDLL) -> StringSearch:
        return CompiledSearch(library, parts, in_arrays)

    return choose(compiled, lambda: in_arrays)


class CompiledSearch:
    """The search in compiled code, of strings that are not too long for it."""

    def __init__(self, library: CDLL, parts: Mapping[str, NDArray[np.generic]], otherwise: ArraySearch) -> None:
        self._compiled, self._otherwise = StringArrays(library, parts, _CONSTANTS), otherwise

    def near(self, text: str, least: float) -> tuple[Places, Similarities]:
        """As `StringSearch.near`."""
        if not 0 < len(text) <= LONGEST_PATTERN:
            return self._otherwise.near(text, least)
        inside, low, high = self._otherwise.reach(text, least)
        sizes, query = np.arange(len(inside)), _query(text)
        limits = np.array(
            [
                *_limits(len(text), sizes, least),
                *_limits(len(query.skeleton), sizes, least / SHAPE_ONLY),
                (inside >= least - 1e-9).astype(np.uint8),
            ]
        )
        return self._compiled.near(query, least, limits, (low, high))

    def above(self, text: str, places: Places, floor: float) -> Similarities:
        """As `StringSearch.above`."""
        if not 0 < len(text) <= LONGEST_PATTERN:
            return self._otherwise.above(text, places, floor)
        return self._compiled.above(_query(text), places, self._otherwise.inside(text), floor)

    def in_order(self, text: str, places: Places) -> Similarities:
        """As `StringSearch.in_order`."""
        if not 0 < len(text) <= LONGEST_PATTERN:
            return self._otherwise.in_order(text, places)
        return self._compiled.in_order(_query(text), places)

    def measures(self, text: str, places: Places) -> Similarities:
        """As `StringSearch.measures`."""
        if len(text) > LONGEST_PATTERN:
            return self._otherwise.measures(text, places)
        return self._compiled.measures(_query(text), places)


class ArraySearch:
    """The search in numpy, with the bounds that the compiled code takes too."""

    def __init__(self, parts: Mapping[str, NDArray[np.generic]], texts: Texts, skeletons: Texts | None) -> None:
        self._texts, self._skeletons = texts, skeletons
        self._lengths, self._skeleton_lengths = (parts[part].view(np.uint16) for part in ("length", "shape_length"))
        self._signature, self._skeleton_signature, self._first, self._skeleton_first = (
            parts[part].view(np.uint64) for part in ("signature", "shape_signature", "first", "shape_first")
        )
        self._merging = parts["merging"].astype(np.int64)

    def near(self, text: str, least: float) -> tuple[Places, Similarities]:
        """As `StringSearch.near`."""
        places, _ = self.within(text, least)
        similarity = self.similarity(text, places)
        close = similarity >= least
        return places[close], similarity[close]

    def within(self, text: str, least: float) -> tuple[Places, Similarities]:
        """Every place whose string may be at least `least` similar to `text`, with the upper bound."""
        if not text or not len(self._lengths):
            return np.zeros(0, np.int64), np.zeros(0)
        inside, low, high = self.reach(text, least)
        skeleton = confusable_skeleton(text)
        found = [
            self._most(text, slice(low, high), least, inside),
            self._most(
                skeleton,
                slice(0, len(self._lengths)) if len(skeleton) < len(text) else self._merging,
                least / SHAPE_ONLY,
            ),
        ]
        places, back = np.unique(np.concatenate([one for one, _ in found]), return_inverse=True)
        most = np.zeros(len(places))
        np.maximum.at(most, back, np.concatenate([values for _, values in found]))
        return places, most

    def reach(self, text: str, least: float) -> tuple[Similarities, int, int]:
        """The credit for containment, by the length of a string; and the range of the strings whose lengths allow a
        similarity of at least `least`.

        Where two letters are read as one (rn, m), lengths and counts of letters say less: such strings are compared by
        their skeletons, whatever their lengths.
        """
        size, sizes = len(text), np.arange(int(self._lengths[-1]) + 1)
        longer, both, apart = np.maximum(sizes, size), sizes + size, np.abs(sizes - size)
        inside = _most_inside(size, sizes)
        reach = _with_prefix(1 - (1 - ORDER) * apart / longer - ORDER * apart / both, PREFIX_LETTERS)
        fit = (np.maximum(reach, inside) >= least - 1e-9).nonzero()[0]
        low, high = with_length(self._lengths, int(fit[0]), int(fit[-1])) if len(fit) else (0, 0)
        return inside, low, high

    def inside(self, text: str) -> Similarities:
        """The highest credit for containment, by the length of a string."""
        return _most_inside(len(text), np.arange(int(self._lengths[-1]) + 1 if len(self._lengths) else 0))

    def _most(
        self, text: str, part: Places | slice, least: float, inside: Similarities | None = None
    ) -> tuple[Places, Similarities]:
        """Which strings of a part may be `least` similar to `text` by their signatures, with the upper bounds.

        With x the larger and y the sum of what either lacks, similarity before the shared beginning counts is at most
        1 - (1 - ORDER) x / (longer length) - ORDER y / (both lengths). Without `inside`, for skeletons: the lengths of
        the strings only make the bound weaker.
        """
        size, own = max(1, len(text)), one_signature(text)
        theirs, lengths = self._signature[part], self._lengths[part]
        firsts = self._first[part]
        if inside is None:
            theirs, firsts = self._skeleton_signature[part], self._skeleton_first[part]
        if not len(lengths):
            return np.zeros(0, np.int64), np.zeros(0)
        sizes = np.arange(int(lengths.max()) + 1)
        apart, most_same = _limits(size, sizes, least, inside)
        lacking = popcount(own ^ theirs)
        keep = (lacking <= for_each_length(most_same, lengths, ordered=isinstance(part, slice))).nonzero()[0]
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

    def above(self, text: str, places: Places, floor: float) -> Similarities:
        """As `StringSearch.above`."""
        _, most = self._most(text, places, _NO_LEAST, self.inside(text))
        skeleton = confusable_skeleton(text)
        if len(skeleton) < len(text):
            most = np.maximum(most, SHAPE_ONLY * self._most(skeleton, places, _NO_LEAST)[1])
        else:
            merging = (self._skeleton_lengths.take(places) < self._lengths.take(places)).nonzero()[0]
            most[merging] = np.maximum(most[merging], SHAPE_ONLY * self._most(skeleton, places[merging], _NO_LEAST)[1])
        similarity = np.zeros(len(places))
        may = (most > floor).nonzero()[0]
        similarity[may] = self.similarity(text, places[may])
        return similarity

    def in_order(self, text: str, places: Places) -> Similarities:
        """The share of letters that each of these strings has in common with `text`, in order: Indel similarity."""
        others = self._texts.texts(places)
        return np.asarray(cdist([text], others, scorer=Indel.normalized_similarity, dtype=np.float64)[0], np.float64)

    def measures(self, text: str, places: Places) -> Similarities:
        """As `StringSearch.measures`."""
        values = np.zeros((len(places), len(LETTER_MEASURES) + 2))
        skeleton = confusable_skeleton(text)
        for at, other in enumerate(self._texts.texts(places)):
            if other:
                edits = OSA.normalized_similarity(text, other)
                values[at] = (*letter_measures(text, other), edits, confusable_skeleton(other) == skeleton)
        return values

    def similarity(self, text: str, places: Places) -> Similarities:
        """`closeness.appearance.appearance_similarity` of `text` and each of these strings."""
        if not len(places):
            return np.zeros(0)
        others = self._texts.texts(places)
        raw = _in_order(text, others)
        skeletons = (
            self._skeletons.texts(places) if self._skeletons else [confusable_skeleton(other) for other in others]
        )
        raw = np.maximum(raw, SHAPE_ONLY * _in_order(confusable_skeleton(text), skeletons))
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


def _limits(
    size: int, sizes: Places, least: float, inside: Similarities | None = None
) -> tuple[NDArray[np.uint8], NDArray[np.uint8]]:
    """The most characters that may be lacking in all, by the length of a string: if its first letter differs, and if it
    is the same."""
    for_each = (1 - ORDER) / 2 / np.maximum(sizes, size) + ORDER / (sizes + size)
    apart = np.clip((1 - least) / for_each + 1e-6, 0, 255).astype(np.uint8)
    gain = (1 - PREFIX_BONUS) ** PREFIX_LETTERS
    most_same = np.clip((1 - least) / gain / for_each + 1e-6, 0, 255).astype(np.uint8)
    if inside is None:
        return apart, most_same
    # Where one string may contain the other, they may differ by their whole difference in length.
    may = inside[: len(sizes)] >= least - 1e-9
    lacking = np.abs(sizes - size).clip(0, 255).astype(np.uint8)
    return np.where(may, np.maximum(apart, lacking), apart), np.where(may, np.maximum(most_same, lacking), most_same)


def for_each_length(values: NDArray[np.uint8], lengths: NDArray[np.uint16], *, ordered: bool) -> NDArray[np.uint8]:
    """The value of each length; lengths in order need no look-up each."""
    if not ordered:
        return values.take(lengths)
    first, last = int(lengths[0]), int(lengths[-1])
    ends = np.searchsorted(lengths, np.arange(first, last + 1).astype(np.uint16), side="right")
    return np.repeat(values[first : last + 1], np.diff(ends, prepend=0))


def with_length(lengths: NDArray[np.uint16], shortest: int, longest: int) -> tuple[int, int]:
    """Where strings of these lengths begin and end among `lengths`, which ascend."""
    # Limits of the array's own type: others would have all of it copied.
    limits = np.array([max(0, min(shortest, 65535)), min(longest + 1, 65535)], np.uint16)
    low, high = np.searchsorted(lengths, limits)
    return int(low), int(high)


def first_letters(text: str) -> np.uint64:
    """The first four characters of a string, sixteen bits each, as one number; confusable characters count as equal."""
    first = text[:PREFIX_LETTERS].translate(PROTOTYPES)
    return np.uint64(sum((ord(letter) & 0xFFFF) << 16 * at for at, letter in enumerate(first)))


def _most_inside(size: int, sizes: Places) -> Similarities:
    """The highest similarity of strings of these lengths to one of `size` letters through containment."""
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
