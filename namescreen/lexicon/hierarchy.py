"""The hierarchy of senses as numbers: what is narrower than a sense, two steps down, is hundreds of senses, and to read
a row of text for each would cost more than all the rest of a search.

A sense has the number of its row in wordnet-senses.tsv. wordnet-hierarchy.npy, drawn by wordlists/build/wordnet.py,
holds for every row the senses below it, then how many senses are directly above it, then these, each as twice its
number, plus one where it is not an instance of it: so narrower senses sort as the relations of the rows do."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Mapping
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from ..errors import DataError
from ..tables import REMEDY, Table, wordlists_folder

if TYPE_CHECKING:
    from ctypes import CDLL

    from ..native.senses import RelatedWords

__all__ = ["Hierarchy", "related_words"]

Facts = NDArray[np.uint32]

_FILE = "wordnet-hierarchy.npy"


class Hierarchy:
    """The senses of a table by number; raises `DataError` if the file is missing or is that of another table."""

    def __init__(self, senses: Table) -> None:
        rows = len(senses)
        below, counts, above = _facts(rows)
        line_ends = np.flatnonzero(np.frombuffer(senses.lines(), np.uint8) == ord("\n"))
        if len(line_ends) != rows:
            raise _damaged()
        order = _order(above)
        above >>= 1
        self.below = below.data
        """For every sense, how many senses are below it."""
        self._lines = senses.lines()
        self._table = senses
        self._line = _starts(np.diff(line_ends, prepend=-1))
        self._above, self._first_above = above.data, _starts(counts)
        self._narrower = np.repeat(np.arange(rows), counts)[order].data
        self._first_narrower = _starts(np.bincount(above, minlength=rows))

    def number(self, sense_id: str) -> int:
        """The number of a sense; raises KeyError if there is none with this id."""
        at = self._table.offset(sense_id)
        if at is None:
            raise KeyError(sense_id)
        return bisect_right(self._line, at) - 1

    def row(self, number: int) -> str:
        """The value of a sense in the table."""
        line = self._lines[self._line[number] : self._line[number + 1] - 1].tobytes()
        return line.partition(b"\t")[2].decode()

    def narrower(self, number: int) -> list[int]:
        """The senses directly below one."""
        return self._narrower[self._first_narrower[number] : self._first_narrower[number + 1]].tolist()

    def above(self, number: int, most: int) -> dict[int, int]:
        """A sense and those above it, fewer than `most` steps away, with the fewest steps to each."""
        found = {number: 0}
        layer = [number]
        for step in range(1, most):
            first = self._first_above
            layer = [up for one in layer for up in self._above[first[one] : first[one + 1]] if up not in found]
            for one in layer:
                found.setdefault(one, step)
        return found


def related_words(library: CDLL, senses: Table, measures: Mapping[str, float]) -> RelatedWords:
    """What finds the words related to one in compiled code; raises `DataError` as `Hierarchy` does."""
    from ..native.senses import RelatedWords

    try:
        return RelatedWords(library, senses.lines(), _facts(len(senses)), measures)
    except IndexError:
        raise _damaged() from None


def _order(values: Facts) -> NDArray[np.int64]:
    """Where the values stand in order, equal ones as they stood: each with its place in one number, which are sorted in
    a fifth of the time."""
    room = len(values).bit_length()
    both = values.astype(np.int64) << room | np.arange(len(values))
    both.sort()
    return both & (1 << room) - 1


def _starts(sizes: NDArray[np.integer]) -> memoryview:
    """Where each of some stretches starts, one after another; last, the end of all."""
    return np.concatenate([np.zeros(1, np.int64), np.cumsum(sizes, dtype=np.int64)]).data


def _facts(rows: int) -> tuple[Facts, Facts, Facts]:
    """The senses below each sense, the number of those directly above it, and these."""
    path = wordlists_folder() / _FILE
    try:
        facts = np.load(path, allow_pickle=False)
    except (OSError, ValueError) as error:
        raise DataError(path, f"cannot be read ({error})", REMEDY) from error
    if facts.dtype != np.dtype("<u4") or facts.ndim != 1 or len(facts) < 2 * rows:
        raise _damaged()
    below, counts, above = (part.astype(np.uint32) for part in np.split(facts, [rows, 2 * rows]))
    if counts.sum(dtype=np.int64) != len(above) or (above >> 1 >= rows).any():
        raise _damaged()
    return below, counts, above


def _damaged() -> DataError:
    return DataError(wordlists_folder() / _FILE, "does not belong to the senses of wordnet-senses.tsv", REMEDY)
