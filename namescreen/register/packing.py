"""Lists of strings and of lists, packed into arrays as `index.Index` reads them, and lists read from those."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import chain
from typing import TYPE_CHECKING, TypeVar

import numpy as np

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Arrays = dict[str, NDArray[np.generic]]

Number = TypeVar("Number", bound="np.generic")

__all__ = [
    *("RaggedArray", "boundaries", "distinct", "found_among", "highest", "least_of_most", "pack_inverse", "pack_lists"),
    *("pack_strings", "stretches"),
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


def highest(
    places: NDArray[np.int64], values: NDArray[np.float64]
) -> tuple[NDArray[np.int64], NDArray[np.float64]]:
    """Each of some places once, ascending, with its highest value."""
    once = distinct(places)
    most = np.zeros(len(once))
    np.maximum.at(most, np.searchsorted(once, places), values)
    return once, most


def found_among(
    held: NDArray[np.int64], places: NDArray[np.integer]
) -> tuple[NDArray[np.int64], NDArray[np.bool_]]:
    """Where each of some places stands among those that are `held`, which ascend, and whether it is one of them."""
    if not len(held):
        return np.zeros(len(places), np.int64), np.zeros(len(places), bool)
    at = np.minimum(np.searchsorted(held, places), len(held) - 1)
    return at, held[at] == places


def least_of_most(values: NDArray[np.integer], count: int) -> int:
    """The least whole number that at most `count` of these, none below 0, reach."""
    reached = np.bincount(values)[::-1].cumsum()[::-1]
    return int(np.searchsorted(-reached, -count))


def pack_strings(arrays: Arrays, name: str, strings: list[str], *, lengths: bool = True) -> None:
    """A list of strings as one blob with boundaries, and with the number of characters of each."""
    text = "".join(strings).encode("utf-8", "replace")
    characters = sizes = list(map(len, strings))
    if sum(sizes) < len(text):
        sizes = [len(string.encode("utf-8", "replace")) for string in strings]
    arrays[name] = np.frombuffer(text, np.uint8)
    arrays[f"{name}_start"] = boundaries(np.array(sizes, np.int64))
    if lengths:
        arrays[f"{name}_length"] = np.array(characters, np.int64).clip(0, 65535).astype(np.uint16)


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
