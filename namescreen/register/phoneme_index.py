"""The phoneme codes of a register: packed when it is prepared, and mapped."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import chain, pairwise
from typing import TYPE_CHECKING

import numpy as np

from ..pronunciation.alignment import phone_weights
from ..pronunciation.articulatory_features import percent_differences
from ..pronunciation.phones import VOWEL_LETTERS
from .packing import RaggedArray, boundaries, pack_inverse
from .phoneme_search import phoneme_search

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Arrays = Mapping[str, NDArray[np.generic]]

__all__ = ["Codes", "code_arrays"]

_PARTS = ("weights", "start", "whole", "syllables", "ids", "ids_start")

_SORTED = 32
"""The letters of a code that one sort compares: a multiple of eight."""


def code_arrays(arrays: dict[str, NDArray[np.generic]], name: str, lists: Sequence[Sequence[str]]) -> None:
    """Pack the codes of a list of words or names: each distinct code once, in order of its whole weight.

    Adds `NAME` (blob), `NAME_weights` (of each of its phonemes), `NAME_start`, `NAME_whole` and `NAME_syllables` for
    the distinct codes, and which word has which code both ways: `NAME_ids` by word, `NAME_owners` by code, each with
    its `_start`.
    """
    # In order of first use: codes that are looked up together lie side by side in memory.
    distinct = list(dict.fromkeys(chain.from_iterable(lists)))
    number = dict(zip(distinct, range(len(distinct)), strict=True))
    order = _in_order(distinct, _summed(distinct)[1])
    place = np.empty(len(distinct), np.uint32)
    place[order] = np.arange(len(distinct), dtype=np.uint32)
    distinct = [distinct[at] for at in order.tolist()]
    weights, whole, syllables = _summed(distinct)
    starts = boundaries(np.fromiter(map(len, distinct), np.int64, len(distinct)))
    arrays[name] = np.frombuffer("".join(distinct).encode("ascii"), np.uint8)
    arrays[f"{name}_weights"] = weights
    arrays[f"{name}_start"] = starts
    arrays[f"{name}_whole"] = np.minimum(whole, 65535).astype(np.uint16)
    arrays[f"{name}_syllables"] = np.minimum(syllables, 255).astype(np.uint8)
    ends = boundaries(np.fromiter(map(len, lists), np.int64, len(lists)))
    ids = place[np.fromiter(map(number.__getitem__, chain.from_iterable(lists)), np.uint32, int(ends[-1]))]
    arrays[f"{name}_ids"], arrays[f"{name}_ids_start"] = ids, ends
    pack_inverse(arrays, f"{name}_owners", ids, ends, len(distinct))


def _in_order(codes: list[str], whole: NDArray[np.int64]) -> NDArray[np.int64]:
    """The places of these codes in order of their whole weight, then of their letters."""
    # Eight letters at a time as one number; the few codes that are longer than all are put in order beforehand.
    columns = np.array(codes, f"S{_SORTED}").view(">u8").reshape(-1, _SORTED // 8).astype(np.uint64)
    beyond = sorted((code, at) for at, code in enumerate(codes) if len(code) >= _SORTED)
    rest = np.zeros(len(codes), np.uint32)
    rest[[at for _, at in beyond]] = np.arange(len(beyond))
    return np.lexsort((rest, *columns.T[::-1], whole))


def _summed(codes: list[str]) -> tuple[NDArray[np.uint8], NDArray[np.int64], NDArray[np.int64]]:
    """For these codes (none empty) the `phone_weights` of every phoneme; and for each code their sum and
    `syllables_in`."""
    if not codes:
        return np.zeros(0, np.uint8), np.zeros(0, np.int64), np.zeros(0, np.int64)
    vowel, weight = np.zeros(256, bool), np.zeros(256, np.int64)
    for letter in percent_differences():
        vowel[ord(letter)] = letter in VOWEL_LETTERS
        weight[ord(letter)] = phone_weights(f"A{letter}A")[1]
    blob = np.frombuffer("".join(codes).encode("ascii"), np.uint8)
    sizes = np.fromiter(map(len, codes), np.int64, len(codes))
    starts = np.cumsum(sizes) - sizes
    weights = weight[blob]
    weights[starts] += phone_weights("A")[0] - phone_weights("AA")[1]
    # A consonant after a consonant, with no vowel after it, weighs less.
    consonant = ~vowel[blob]
    after_one, before_one = np.zeros((2, len(blob)), bool)
    after_one[1:], before_one[:-1] = consonant[:-1], consonant[1:]
    after_one[starts] = False
    before_one[starts + sizes - 1] = True
    weights -= consonant & after_one & before_one
    return (
        weights.astype(np.uint8),
        np.add.reduceat(weights, starts),
        np.add.reduceat(vowel[blob].astype(np.int64), starts),
    )


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

    def texts(self, places: NDArray[np.integer]) -> list[str]:
        """Some of the codes."""
        blob, ends = self._view, self._start[places + 1].tolist()
        return [str(blob[start:end], "ascii") for start, end in zip(self._start[places].tolist(), ends, strict=True)]
