"""Lists of strings and of lists, packed into arrays as `index.Index` reads them, and lists read from those."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import chain
from typing import TYPE_CHECKING, TypeVar

import numpy as np

from .signatures import PROTOTYPES, lengths, signatures

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Arrays = dict[str, NDArray[np.generic]]

Number = TypeVar("Number", bound="np.generic")

__all__ = [
    *("RaggedArray", "boundaries", "distinct", "pack_inverse", "pack_lists", "pack_skeletons", "pack_strings"),
    "stretches",
]


def boundaries(sizes: NDArray[np.integer]) -> NDArray[np.uint32]:
    """The boundaries of concatenated lists: where each begins, and where the last ends."""
    return np.concatenate(([0], np.cumsum(sizes))).astype(np.uint32)


def distinct(values: NDArray[Number]) -> NDArray[Number]:
    """The distinct values of an array, ascending. `np.unique` is not used for it, as it loads numpy's masked arrays: 50
    ms at every start."""
    ordered = np.sort(values)
    keep = np.ones(len(ordered), bool)
    np.not_equal(ordered[1:], ordered[:-1], out=keep[1:])
    return ordered[keep]


def pack_strings(arrays: Arrays, name: str, strings: list[str], *, signed: bool = True, kept: bool = True) -> None:
    """A list of strings as one blob with boundaries, and with what the letter filter needs of each."""
    text = "".join(strings).encode("utf-8", "replace")
    sizes = list(map(len, strings))
    if sum(sizes) < len(text):
        sizes = [len(string.encode("utf-8", "replace")) for string in strings]
    starts = np.zeros(len(sizes) + 1, np.int64)
    np.cumsum(sizes, out=starts[1:])
    blob = np.frombuffer(text, np.uint8)
    if kept:
        arrays[name] = blob
        arrays[f"{name}_start"] = starts.astype(np.uint32)
    if signed:
        arrays[f"{name}_signature"] = signatures(blob, starts)
        arrays[f"{name}_length"] = lengths(blob, starts).astype(np.uint16)
        arrays[f"{name}_first"] = _first_letters(strings)


def pack_skeletons(arrays: Arrays, name: str, strings: list[str], *, kept: bool = True) -> None:
    """The confusable skeletons of these strings, and the strings with two letters that are easily read as one."""
    from ..closeness.appearance import confusable_skeleton

    # All at once, one a line: no skeleton holds a line break.
    pack_strings(
        arrays, f"{name}_shape", confusable_skeleton("\n".join(strings)).split("\n") if strings else [], kept=kept
    )
    merging = np.not_equal(arrays[f"{name}_shape_length"], arrays[f"{name}_length"])
    arrays[f"{name}_merging"] = merging.nonzero()[0].astype(np.uint32)


def _first_letters(strings: list[str]) -> NDArray[np.uint64]:
    """`string_search.first_letters` of every string."""
    from ..closeness.appearance import PREFIX_LETTERS

    alike = np.array([ord(chr(at).translate(PROTOTYPES)) for at in range(128)], np.uint32)
    cut = np.array([string[:PREFIX_LETTERS] for string in strings], f"U{PREFIX_LETTERS}")
    first = cut.view(np.uint32).reshape(-1, PREFIX_LETTERS)
    first = (np.where(first < 128, alike[np.minimum(first, 127)], first) & 0xFFFF).astype(np.uint64)
    return np.asarray(sum(first[:, at] << np.uint64(16 * at) for at in range(PREFIX_LETTERS)), np.uint64)


def pack_lists(arrays: Arrays, name: str, lists: Sequence[Sequence[int]]) -> None:
    """Lists of numbers, concatenated, with their boundaries."""
    sizes = np.fromiter(map(len, lists), np.int64, len(lists))
    arrays[name] = np.fromiter(chain.from_iterable(lists), np.uint32, int(sizes.sum()))
    arrays[f"{name}_start"] = boundaries(sizes)


def pack_inverse(
    arrays: Arrays, name: str, values: NDArray[np.generic], starts: NDArray[np.generic], size: int
) -> None:
    """For each value, in which of the lists it stands, ascending."""
    lists = np.repeat(np.arange(len(starts) - 1, dtype=np.uint32), np.diff(starts.astype(np.int64)).astype(np.int64))
    order = np.argsort(values, kind="stable")
    arrays[name] = lists[order]
    arrays[f"{name}_start"] = np.searchsorted(values[order], np.arange(size + 1)).astype(np.uint32)


def stretches(starts: NDArray[np.int64], sizes: NDArray[np.int64]) -> tuple[NDArray[np.int64], NDArray[np.int64]]:
    """The places in stretches of these sizes, one stretch after another, and where each begins and the last ends."""
    ends = np.zeros(len(starts) + 1, np.int64)
    np.cumsum(sizes, out=ends[1:])
    return np.arange(int(ends[-1])) + np.repeat(starts - ends[:-1], sizes), ends


class RaggedArray:
    """Lists of numbers, one after another, with their boundaries."""

    def __init__(self, arrays: Mapping[str, NDArray[np.generic]], name: str) -> None:
        self.values = arrays[name].view(np.uint32)
        self.start = arrays[f"{name}_start"].view(np.uint32)

    def gather(self, places: NDArray[np.integer]) -> tuple[NDArray[np.uint32], NDArray[np.int64]]:
        """The concatenated lists of some places, and their boundaries (one more than places)."""
        starts = self.start[places].astype(np.int64)
        at, ends = stretches(starts, self.start[places + 1] - starts)
        return self.values[at], ends

    def one(self, place: int) -> NDArray[np.uint32]:
        """The list of one place."""
        return self.values[int(self.start[place]) : int(self.start[place + 1])]
