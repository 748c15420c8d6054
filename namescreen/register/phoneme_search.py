"""The phoneme codes of a register that sound like a name: a bound that is read from tables, then alignments.

The bound is that of `alignment_batch.sound_similarity_bounds`, weakened so that sixteen phonemes are read at a time.
Every phoneme that one reading has and the other lacks must be set against something else. That costs at least its
weight times its difference from the nearest phoneme there. The costs of both readings add up, because every cost is the
sum of both weights times one difference.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from ctypes import CDLL
from functools import cache, lru_cache
from typing import TYPE_CHECKING, Protocol

import numpy as np

from ..native import choose
from ..native.phoneme_search import CodeArrays
from ..native.phonemes import terminated
from ..pronunciation.alignment import RHYTHM, phone_weights, phoneme_costs, syllables_in
from ..pronunciation.alignment_batch import SoundCodes, prepare_codes, sound_similarities
from ..pronunciation.articulatory_features import percent_differences
from ..pronunciation.phones import VOWEL_LETTERS
from .packing import RaggedArray

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Parts = Mapping[str, NDArray[np.generic]]
    Places = NDArray[np.int64]
    Similarities = NDArray[np.float64]

__all__ = ["PHONEME_BITS", "SET_COLUMNS", "PhonemeSearch", "phoneme_search"]

PHONEME_BITS = {letter: bit for bit, letter in enumerate(percent_differences(), start=1)}
"""The bit of each phoneme in a phoneme set."""
SET_COLUMNS = (len(PHONEME_BITS) + 1 + 15) // 16
"""Numbers of sixteen bits that a phoneme set takes."""
_BITS = ((np.arange(256)[:, None] >> np.arange(8)) & 1).astype(np.int16)
_DEAREST = 16_000
"""The cap on the cost of the phonemes that another code lacks: its sum with the cost of that code's extra phonemes fits
sixteen bits."""


class PhonemeSearch(Protocol):
    """The readings of one name against the codes of a register."""

    def near(self, codes: Sequence[str], least: float, among: Places | None = None) -> tuple[Places, Similarities]:
        """Every code, or every one `among` some, at least `least` (above 0) similar to one of `codes`, with its
        similarity."""

    def similarity_of(self, codes: Sequence[str], words: Places, least: float) -> Similarities:
        """The similarity of the closest of `codes` and the closest of each word's (or name's); below `least` it may be
        0."""


def phoneme_search(parts: Parts, ids: RaggedArray) -> PhonemeSearch:
    """The search of codes whose arrays are these `parts`; `ids` lists the codes of each word."""
    in_arrays = ArraySearch(parts, ids)

    def compiled(library: CDLL) -> PhonemeSearch:
        return CompiledSearch(library, parts, in_arrays)

    return choose(compiled, lambda: in_arrays)


class CompiledSearch:
    """The search in compiled code, of codes that are not too long for it."""

    def __init__(self, library: CDLL, parts: Parts, otherwise: ArraySearch) -> None:
        self._compiled, self._otherwise = CodeArrays(library, parts, phoneme_costs()), otherwise

    def near(self, codes: Sequence[str], least: float, among: Places | None = None) -> tuple[Places, Similarities]:
        """As `PhonemeSearch.near`."""
        if not codes or terminated(tuple(codes)) is None:
            return self._otherwise.near(codes, least, among)
        return self._compiled.near(codes, least, self._otherwise.reach(codes, least) if among is None else among)

    def similarity_of(self, codes: Sequence[str], words: Places, least: float) -> Similarities:
        """As `PhonemeSearch.similarity_of`."""
        if not codes or terminated(tuple(codes)) is None:
            return self._otherwise.similarity_of(codes, words, least)
        return self._compiled.similarity_of(codes, words, least)


class ArraySearch:
    """The search in numpy, with the bounds that the compiled code takes too."""

    def __init__(self, parts: Parts, ids: RaggedArray) -> None:
        self._blob, self._weights, self._syllables = (
            parts[part].view(np.uint8) for part in ("blob", "weights", "syllables")
        )
        self._start, self._whole = parts["start"].view(np.uint32), parts["whole"].view(np.uint16)
        self._present = parts["present"].view(np.uint16).reshape(SET_COLUMNS, -1)
        self._ids = ids

    def near(self, codes: Sequence[str], least: float, among: Places | None = None) -> tuple[Places, Similarities]:
        """As `PhonemeSearch.near`."""
        if not codes or not len(self._whole):
            return np.zeros(0, np.int64), np.zeros(0)
        places, _ = self._bounded(codes, self.reach(codes, least) if among is None else among, least)
        similarity = self.similarity(codes, places)
        close = similarity >= least
        return places[close], similarity[close]

    def similarity_of(self, codes: Sequence[str], words: Places, least: float) -> Similarities:
        """As `PhonemeSearch.similarity_of`."""
        values = np.zeros(len(words))
        if not codes or not len(words):
            return values
        theirs, ends = self._ids.gather(words)
        if len(theirs):
            distinct, back = np.unique(theirs.astype(np.int64), return_inverse=True)
            near, similarity = self.near(codes, least, distinct)
            best = np.zeros(len(distinct))
            best[np.searchsorted(distinct, near)] = similarity
            has = ends[1:] > ends[:-1]
            values[has] = np.maximum.reduceat(best[back], ends[:-1][has])
        return values

    def within(self, codes: Sequence[str], least: float) -> tuple[Places, Similarities]:
        """Every code that may be at least `least` similar to one of `codes` (none empty), with the upper bound.

        The bound holds for all readings in `codes` together: the cheapest counts.
        """
        return self._bounded(codes, self.reach(codes, least), least) if codes else (np.zeros(0, np.int64), np.zeros(0))

    def reach(self, codes: Sequence[str], least: float) -> slice:
        """The range of the codes whose weights allow a similarity of at least `least`."""
        weights = [sum(phone_weights(code)) for code in codes]
        # The surplus weight of one reading stays unaligned.
        reach = least / (2 - least)
        # Limits of the array's own type: others would have all of it copied.
        limits = [math.ceil(min(weights) * reach - 1e-6), math.floor(max(weights) / reach + 1e-6) + 1]
        low, high = np.searchsorted(self._whole, np.array(limits).clip(0, 65535).astype(np.uint16))
        return slice(int(low), int(high))

    def _bounded(self, codes: Sequence[str], part: Places | slice, least: float) -> tuple[Places, Similarities]:
        whole = self._whole[part]
        if not len(whole):
            return np.zeros(0, np.int64), np.zeros(0)
        heaviest = max(sum(phone_weights(code)) for code in codes)
        spent = self._spent(tuple(codes), part)
        spare = 100 * (1 - least) * (np.arange(int(whole.max()) + 1) + heaviest) + 1e-6
        fit = (spent <= spare.clip(0, 2 * _DEAREST).astype(np.int16).take(whole)).nonzero()[0]
        places = fit + part.start if isinstance(part, slice) else part[fit]
        bound = np.zeros(len(places))
        for code in codes:
            np.maximum(bound, self._most(code, places), out=bound)
        keep = bound >= least - 1e-6
        return places[keep], bound[keep]

    def _most(self, code: str, places: Places) -> Similarities:
        """An upper bound on the similarity of these codes to one code."""
        syllables, theirs = syllables_in(code), self._syllables[places].astype(np.int32)
        bound = 1 - self._spent((code,), places) / (100.0 * (self._whole[places] + float(sum(phone_weights(code)))))
        bound *= 1 - RHYTHM * np.abs(theirs - syllables) / np.maximum(np.maximum(theirs, syllables), 1)
        return np.asarray(bound, np.float64)

    def _spent(self, codes: tuple[str, ...], part: Places | slice) -> NDArray[np.int16]:
        """A lower bound on the cost of aligning these codes with the cheapest of `codes`."""
        first, *others = _least_costs(codes)
        # `take` is twice as fast as indexing.
        spent = first.take(self._column(0, part))
        for column, table in enumerate(others, 1):
            spent += table.take(self._column(column, part))
        return spent

    def _column(self, column: int, part: Places | slice) -> NDArray[np.uint16]:
        present = self._present[column]
        return np.asarray(present[part] if isinstance(part, slice) else present.take(part), np.uint16)

    def similarity(self, codes: Sequence[str], places: Places) -> Similarities:
        """`pronunciation.sound_similarity` of the closest of `codes` and each of these codes."""
        best = np.zeros(len(places))
        if len(places):
            prepared = self._prepared(places)
            for code in codes:
                np.maximum(best, sound_similarities(code, prepared), out=best)
        return best

    def _prepared(self, places: Places) -> SoundCodes:
        """Some of the codes as `alignment_batch.prepare_codes` gives them, without a step for each."""
        starts = self._start[places].astype(np.int64)
        sizes = self._start[places + 1].astype(np.int64) - starts
        order = np.argsort(sizes.clip(0, 65535).astype(np.uint16), kind="stable")
        starts, sizes = starts[order], sizes[order]
        longest = int(sizes[-1])
        at = starts + np.arange(longest)[:, None]
        # What lies past a code's end belongs to the next one, and is masked.
        inside = np.arange(longest)[:, None] < sizes
        letters, weights = (blob.take(at, mode="clip") * inside for blob in (self._blob, self._weights))
        raw = letters.tobytes()
        sounds, vowels = (
            np.frombuffer(raw.translate(table), np.uint8).reshape(letters.shape) for table in _translations()
        )
        return SoundCodes(
            order,
            sizes.astype(np.int32),
            sounds,
            weights,
            weights.sum(axis=0, dtype=np.int32),
            vowels.sum(axis=0, dtype=np.int32),
            np.zeros(len(places), np.uint64),
        )


@cache
def _translations() -> tuple[bytes, bytes]:
    """Tables that translate the bytes of codes: to the number of the phoneme, and to whether it is a vowel."""
    number, vowel = np.zeros(256, np.uint8), np.zeros(256, bool)
    for letter in PHONEME_BITS:
        number[ord(letter)] = prepare_codes([letter]).sounds[0, 0]
        vowel[ord(letter)] = letter in VOWEL_LETTERS
    return number.tobytes(), vowel.tobytes()


@lru_cache(maxsize=64)
def _least_costs(codes: tuple[str, ...]) -> list[NDArray[np.int16]]:
    """Lower-bound costs for every value of each column of a phoneme set, against the cheapest of `codes`.

    A phoneme that only the other code has is aligned with the nearest of ours. One that only ours has is aligned with
    the nearest in the column; the phonemes of the other columns are assumed to be there.
    """
    tables = [np.full(1 << 16, 2**15 - 1, np.int16) for _ in range(SET_COLUMNS)]
    for code in codes:
        mine: dict[str, int] = {}
        for letter, weight in zip(code, phone_weights(code), strict=True):
            mine[letter] = mine.get(letter, 0) + weight
        share = -(-100 * sum(mine.values()) // _DEAREST)
        for column, table in enumerate(tables):
            costs = np.zeros(1 << 16, np.int16)
            extra = np.zeros(16, np.int16)
            for letter, bit in PHONEME_BITS.items():
                if bit // 16 == column:
                    if letter in mine:
                        costs += _nearest(letter) * np.int16(mine[letter] // share)
                    else:
                        nearest = min(percent_differences()[letter][other] for other in mine)
                        extra[bit % 16] = _lightest(letter) * nearest
            low, high = _BITS @ extra[:8], _BITS @ extra[8:]
            costs += (high[:, None] + low).ravel()
            np.minimum(table, costs, out=table)
    return tables


@cache
def _nearest(letter: str) -> NDArray[np.int16]:
    """The difference of a phoneme from the nearest one present, for every value of its column."""
    differences = percent_differences()[letter]
    column = PHONEME_BITS[letter] // 16
    here = np.full(16, 100, np.int16)
    for other, bit in PHONEME_BITS.items():
        if bit // 16 == column:
            here[bit % 16] = differences[other]
    elsewhere = min((differences[other] for other, bit in PHONEME_BITS.items() if bit // 16 != column), default=100)
    low, high = (np.where(_BITS, half, 100).min(axis=1) for half in (here[:8], here[8:]))
    return np.asarray(np.minimum(np.minimum(high[:, None], low), elsewhere).ravel(), np.int16)


@cache
def _lightest(letter: str) -> int:
    """The least weight that a phoneme can have: not at the beginning, and between consonants if it is one."""
    return min(phone_weights(f"k{letter}{after}")[1] for after in ("", "k", "A"))
