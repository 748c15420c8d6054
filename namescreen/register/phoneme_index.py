"""The phoneme codes of a register: packed when it is prepared, and mapped."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import chain, pairwise
from typing import TYPE_CHECKING

import numpy as np

from ..pronunciation.alignment import phone_weights
from ..pronunciation.articulatory_features import percent_differences
from ..pronunciation.phones import VOWEL_LETTERS
from .packing import RaggedArray, boundaries, pack_inverse, stretches
from .phoneme_search import phoneme_search

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Arrays = Mapping[str, NDArray[np.generic]]

__all__ = ["Codes", "code_arrays"]

_PARTS = ("weights", "start", "whole", "syllables", "ids", "ids_start")

_SORTED = 32
"""The letters of a code that one sort compares: a multiple of eight."""
_AT_A_TIME = 1 << 17
"""Codes whose letters are put in order at once: the places of all would fill a gigabyte."""


def code_arrays(arrays: dict[str, NDArray[np.generic]], name: str, lists: Sequence[Sequence[str]]) -> None:
    """Pack the codes of a list of words or names: each distinct code once, in order of its whole weight.

    Adds `NAME` (blob), `NAME_weights` (of each of its phonemes), `NAME_start`, `NAME_whole` and `NAME_syllables` for
    the distinct codes, and which word has which code both ways: `NAME_ids` by word, `NAME_owners` by code, each with
    its `_start`.
    """
    codes = list(chain.from_iterable(lists))
    sizes = np.fromiter(map(len, codes), np.int64, len(codes))
    blob = np.frombuffer("".join(codes).encode("ascii"), np.uint8)
    weights, whole, syllables = _summed(blob, sizes)
    order, ids = _in_order(codes, whole)
    starts, sizes = (np.cumsum(sizes) - sizes)[order], sizes[order]
    parts = [slice(at, at + _AT_A_TIME) for at in range(0, len(order), _AT_A_TIME)] or [slice(0)]
    for key, each in ((name, blob), (f"{name}_weights", weights)):
        arrays[key] = np.concatenate([each[stretches(starts[part], sizes[part])[0]] for part in parts])
    arrays[f"{name}_start"] = boundaries(sizes)
    arrays[f"{name}_whole"] = np.minimum(whole[order], 65535).astype(np.uint16)
    arrays[f"{name}_syllables"] = np.minimum(syllables[order], 255).astype(np.uint8)
    ends = boundaries(np.fromiter(map(len, lists), np.int64, len(lists)))
    arrays[f"{name}_ids"], arrays[f"{name}_ids_start"] = ids, ends
    pack_inverse(arrays, f"{name}_owners", ids, ends, len(order))


def _in_order(codes: list[str], whole: NDArray[np.int64]) -> tuple[NDArray[np.int64], NDArray[np.uint32]]:
    """Where each distinct one of these codes stands, in order of their whole weight, then of their letters; and which
    of the distinct ones each of the codes is."""
    if not codes:
        return np.zeros(0, np.int64), np.zeros(0, np.uint32)
    # Eight letters at a time as one number; the few codes that are longer than all are put in order beforehand.
    columns = [*np.array(codes, f"S{_SORTED}").view(">u8").reshape(-1, _SORTED // 8).astype(np.uint64).T[::-1], whole]
    long = {at: code for at, code in enumerate(codes) if len(code) >= _SORTED}
    rank = {code: number for number, code in enumerate(sorted(set(long.values())))}
    rest = np.zeros(len(codes), np.uint32)
    rest[list(long)] = [rank[code] for code in long.values()]
    order = np.lexsort((rest, *columns))
    first = np.ones(len(codes), bool)
    first[1:] = np.logical_or.reduce([one[order[1:]] != one[order[:-1]] for one in (rest, *columns)])
    number = np.empty(len(codes), np.uint32)
    number[order] = np.cumsum(first) - 1
    return order[first], number


def _summed(
    blob: NDArray[np.uint8], sizes: NDArray[np.int64]
) -> tuple[NDArray[np.uint8], NDArray[np.int64], NDArray[np.int64]]:
    """For codes of these sizes (none empty), one after another, the `phone_weights` of every phoneme; and for each code
    their sum and `syllables_in`."""
    if not len(sizes):
        return np.zeros(0, np.uint8), np.zeros(0, np.int64), np.zeros(0, np.int64)
    vowel, weight = np.zeros(256, bool), np.zeros(256, np.uint8)
    for letter in percent_differences():
        vowel[ord(letter)] = letter in VOWEL_LETTERS
        weight[ord(letter)] = phone_weights(f"A{letter}A")[1]
    starts = np.cumsum(sizes) - sizes
    weights = weight[blob]
    weights[starts] += np.uint8(phone_weights("A")[0] - phone_weights("AA")[1])
    # A consonant after a consonant, with no vowel after it, weighs less.
    said = vowel[blob]
    consonant = ~said
    after_one, before_one = np.zeros((2, len(blob)), bool)
    after_one[1:], before_one[:-1] = consonant[:-1], consonant[1:]
    after_one[starts] = False
    before_one[starts + sizes - 1] = True
    weights -= consonant & after_one & before_one
    return weights, np.add.reduceat(weights, starts, dtype=np.int64), np.add.reduceat(said, starts, dtype=np.int64)


class Codes:
    """Distinct phoneme codes over mapped arrays (see `code_arrays`)."""

    def __init__(self, arrays: Arrays, name: str) -> None:
        self._blob, self._start = arrays[name].view(np.uint8), arrays[f"{name}_start"].view(np.uint32)
        self._view = memoryview(self._blob)  # type: ignore[arg-type]
        self.ids, self.owners = RaggedArray(arrays, f"{name}_ids"), RaggedArray(arrays, f"{name}_owners")
        parts = {"blob": arrays[name], **{part: arrays[f"{name}_{part}"] for part in _PARTS}}
        search = phoneme_search(parts, self.ids)
        self.sound_measures = search.sound_measures

    def __len__(self) -> int:
        return len(self._start) - 1

    def lists(self) -> list[tuple[str, ...]]:
        """The codes of every word or name, in order."""
        texts = self.texts(np.arange(len(self)))
        codes = [texts[at] for at in self.ids.values.tolist()]
        starts = self.ids.start.tolist()
        return [tuple(codes[start:end]) for start, end in pairwise(starts)]

    def of(self, places: NDArray[np.integer]) -> list[tuple[str, ...]]:
        """The codes of some words or names."""
        ids, ends = self.ids.gather(places)
        codes = self.texts(ids)
        return [tuple(codes[start:end]) for start, end in pairwise(ends.tolist())]

    def texts(self, places: NDArray[np.integer]) -> list[str]:
        """Some of the codes."""
        blob, ends = self._view, self._start[places + 1].tolist()
        return [str(blob[start:end], "ascii") for start, end in zip(self._start[places].tolist(), ends, strict=True)]
