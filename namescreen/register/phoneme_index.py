"""Sound codes by the million: packed, filtered by a bound that is read from tables, aligned only where it matters.

The bound is the one of `pronunciation.sound_similarity_bounds`, weakened so that it can be read eight sounds at a
time: every sound that one reading has and the other lacks must be set against something else, which costs at
least its weight times its difference from the nearest sound there. Both readings' shares add up, because a cost is
always the sum of both sounds' weights times one difference.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from functools import cache, lru_cache
from itertools import chain, pairwise
from typing import TYPE_CHECKING

import numpy as np

from ..native.phoneme_codes import CompiledCodes, compiled_codes
from ..native.phonemes import joined
from ..pronunciation.alignment import RHYTHM, phone_weights, syllables_in
from ..pronunciation.alignment_batch import SoundCodes, prepare_codes, sound_similarities
from ..pronunciation.articulatory_features import percent_differences
from ..pronunciation.phones import VOWEL_LETTERS
from .packing import RaggedArray, boundaries, pack_inverse

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Arrays = Mapping[str, NDArray[np.generic]]
    Places = NDArray[np.int64]
    Similarities = NDArray[np.float64]

__all__ = ["Codes", "code_arrays"]

_LETTERS = tuple(percent_differences())
_BIT = {letter: at for at, letter in enumerate(_LETTERS, start=1)}
_COLUMNS = (len(_LETTERS) + 1 + 15) // 16
_BITS = ((np.arange(256)[:, None] >> np.arange(8)) & 1).astype(np.int16)
_DEAREST = 16_000
"""Costs of the sounds of one code that others lack are counted up to this: with those of the sounds that they have
beyond it, all stays in sixteen bits."""

_SORTED = 32
"""Letters by which codes are put in order at once: a multiple of eight."""


@cache
def _translations() -> tuple[bytes, bytes]:
    """For each byte of a code, its sound's number, and is it a vowel: to translate bytes at once."""
    number, vowel = np.zeros(256, np.uint8), np.zeros(256, bool)
    for letter in _LETTERS:
        number[ord(letter)] = prepare_codes([letter]).sounds[0, 0]
        vowel[ord(letter)] = letter in VOWEL_LETTERS
    return number.tobytes(), vowel.tobytes()


def code_arrays(arrays: dict[str, NDArray[np.generic]], name: str, lists: Sequence[Sequence[str]]) -> None:
    """Pack the codes of a list of words or names: each distinct code once, in order of its whole weight.

    Adds `NAME` (blob), `NAME_weights` (of each of its sounds), `NAME_start`, `NAME_first` (its first sound),
    `NAME_whole`, `NAME_present` (a bit for each sound, sixteen to a column, one column after another) and
    `NAME_syllables` for the distinct codes, and which word has which code both ways: `NAME_ids` by word, `NAME_owners`
    by code, each with its `_start`.
    """
    # As they are met: looked up in that order, they lie side by side in memory.
    distinct = list(dict.fromkeys(chain.from_iterable(lists)))
    number = dict(zip(distinct, range(len(distinct)), strict=True))
    order = _in_order(distinct, _summed(distinct)[1])
    place = np.empty(len(distinct), np.uint32)
    place[order] = np.arange(len(distinct), dtype=np.uint32)
    distinct = [distinct[at] for at in order.tolist()]
    weights, whole, syllables, present = _summed(distinct)
    starts = boundaries(np.fromiter(map(len, distinct), np.int64, len(distinct)))
    arrays[name] = np.frombuffer("".join(distinct).encode("ascii"), np.uint8)
    arrays[f"{name}_weights"] = weights
    arrays[f"{name}_start"] = starts
    arrays[f"{name}_first"] = arrays[name][starts[:-1]]
    arrays[f"{name}_whole"] = np.minimum(whole, 65535).astype(np.uint16)
    arrays[f"{name}_syllables"] = np.minimum(syllables, 255).astype(np.uint8)
    columns = [(present >> np.uint64(16 * column)).astype(np.uint16) for column in range(_COLUMNS)]
    arrays[f"{name}_present"] = np.concatenate(columns)
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


def _summed(codes: list[str]) -> tuple[NDArray[np.uint8], NDArray[np.int64], NDArray[np.int64], NDArray[np.uint64]]:
    """Of the codes (none empty): `phone_weights` of all their sounds, and of each code the sum of those, `syllables_in`
    and a bit for each sound it has."""
    if not codes:
        return np.zeros(0, np.uint8), np.zeros(0, np.int64), np.zeros(0, np.int64), np.zeros(0, np.uint64)
    bits, vowel, weight = np.zeros(256, np.uint64), np.zeros(256, bool), np.zeros(256, np.int64)
    for letter, bit in _BIT.items():
        bits[ord(letter)], vowel[ord(letter)] = 1 << bit, letter in VOWEL_LETTERS
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
        np.bitwise_or.reduceat(bits[blob], starts),
    )


class Codes:
    """Distinct sound codes over mapped arrays (see `code_arrays`)."""

    def __init__(self, arrays: Arrays, name: str) -> None:
        self._blob = arrays[name].view(np.uint8)
        self._weights = arrays[f"{name}_weights"].view(np.uint8)
        self._start = arrays[f"{name}_start"].view(np.uint32)
        self._whole = arrays[f"{name}_whole"].view(np.uint16)
        self._syllables = arrays[f"{name}_syllables"].view(np.uint8)
        self._present = arrays[f"{name}_present"].view(np.uint16).reshape(_COLUMNS, -1)
        self.ids, self.owners = RaggedArray(arrays, f"{name}_ids"), RaggedArray(arrays, f"{name}_owners")
        self._compiled = compiled_codes(arrays, name)

    def _kernel(self, codes: Sequence[str]) -> CompiledCodes | None:
        """The kernel, where there is one and it takes these codes."""
        return self._compiled if joined(tuple(codes)) is not None else None

    def __len__(self) -> int:
        return len(self._whole)

    def lists(self) -> list[tuple[str, ...]]:
        """The codes of every word or name, in order."""
        texts = [self.text(at) for at in range(len(self))]
        codes = [texts[at] for at in self.ids.values.tolist()]
        starts = self.ids.start.tolist()
        return [tuple(codes[start:end]) for start, end in pairwise(starts)]

    def text(self, at: int) -> str:
        """One code."""
        return self._blob[int(self._start[at]) : int(self._start[at + 1])].tobytes().decode("ascii")

    def within(self, codes: Sequence[str], least: float) -> tuple[Places, Similarities]:
        """Every code that may be at least `least` alike to one of `codes` (none empty), with the most it can be.

        The readings in `codes` are taken together: what is cheapest for any of them counts.
        """
        return self._bounded(codes, self._reach(codes, least), least) if codes else (np.zeros(0, np.int64), np.zeros(0))

    def _reach(self, codes: Sequence[str], least: float) -> slice:
        """Where the codes stand that are not too light or too heavy to be at least `least` alike."""
        weights = [sum(phone_weights(code)) for code in codes]
        # What one reading weighs more than the other is set against nothing.
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
        """The most that these codes can sound alike to one code."""
        syllables, theirs = syllables_in(code), self._syllables[places].astype(np.int32)
        bound = 1 - self._spent((code,), places) / (100.0 * (self._whole[places] + float(sum(phone_weights(code)))))
        bound *= 1 - RHYTHM * np.abs(theirs - syllables) / np.maximum(np.maximum(theirs, syllables), 1)
        return np.asarray(bound, np.float64)

    def _spent(self, codes: tuple[str, ...], part: Places | slice) -> NDArray[np.int16]:
        """What aligning these codes with the cheapest of `codes` costs at least."""
        first, *others = _least_costs(codes)
        # `take` is twice as fast as indexing.
        spent = first.take(self._column(0, part))
        for column, table in enumerate(others, 1):
            spent += table.take(self._column(column, part))
        return spent

    def _column(self, column: int, part: Places | slice) -> NDArray[np.uint16]:
        present = self._present[column]
        return np.asarray(present[part] if isinstance(part, slice) else present.take(part), np.uint16)

    def near(self, codes: Sequence[str], least: float, among: Places | None = None) -> tuple[Places, Similarities]:
        """Every code, or every one `among` some, at least `least` (above 0) alike to one of `codes`, with how alike."""
        if not codes or not len(self):
            return np.zeros(0, np.int64), np.zeros(0)
        part = self._reach(codes, least) if among is None else among
        compiled = self._kernel(codes)
        if compiled is not None:
            return compiled.near(codes, least, part)
        places, _ = self._bounded(codes, part, least)
        similarity = self.alike(codes, places)
        close = similarity >= least
        return places[close], similarity[close]

    def of(self, codes: Sequence[str], words: Places, least: float) -> Similarities:
        """How alike the closest of `codes` sounds to the closest of each word's (or name's); less than `least` may come
        out as 0."""
        values = np.zeros(len(words))
        if not codes or not len(words):
            return values
        compiled = self._kernel(codes)
        if compiled is not None:
            return compiled.of(codes, words, least)
        theirs, ends = self.ids.gather(words)
        if len(theirs):
            distinct, back = np.unique(theirs.astype(np.int64), return_inverse=True)
            heard, similarity = self.near(codes, least, distinct)
            best = np.zeros(len(distinct))
            best[np.searchsorted(distinct, heard)] = similarity
            has = ends[1:] > ends[:-1]
            values[has] = np.maximum.reduceat(best[back], ends[:-1][has])
        return values

    def alike(self, codes: Sequence[str], places: Places) -> Similarities:
        """How alike the closest of `codes` sounds to each of these codes: `pronunciation.sound_similarity`."""
        best = np.zeros(len(places))
        if len(places):
            prepared = self._prepared(places)
            for code in codes:
                np.maximum(best, sound_similarities(code, prepared), out=best)
        return best

    def _prepared(self, places: Places) -> SoundCodes:
        """Some of the codes as `pronunciation.prepare_codes` gives them, without a step for each."""
        starts = self._start[places].astype(np.int64)
        sizes = self._start[places + 1].astype(np.int64) - starts
        order = np.argsort(sizes.clip(0, 65535).astype(np.uint16), kind="stable")
        starts, sizes = starts[order], sizes[order]
        longest = int(sizes[-1])
        at = starts + np.arange(longest)[:, None]
        # What lies past a code's end belongs to the next one, and is put out.
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


@lru_cache(maxsize=64)
def _least_costs(codes: tuple[str, ...]) -> list[NDArray[np.int16]]:
    """For each column of a signature of sounds, what its bits cost at least against the cheapest of `codes`.

    A sound that is there and not in ours is set against the nearest of ours; one of ours that is not there against
    the nearest that is, as far as the column tells: the sounds of the other columns may all be there.
    """
    tables = [np.full(1 << 16, 2**15 - 1, np.int16) for _ in range(_COLUMNS)]
    for code in codes:
        mine: dict[str, int] = {}
        for letter, weight in zip(code, phone_weights(code), strict=True):
            mine[letter] = mine.get(letter, 0) + weight
        share = -(-100 * sum(mine.values()) // _DEAREST)
        for column, table in enumerate(tables):
            costs = np.zeros(1 << 16, np.int16)
            extra = np.zeros(16, np.int16)
            for letter, bit in _BIT.items():
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
    """How little a sound differs from the nearest of those there, for every content of its column."""
    differences = percent_differences()[letter]
    column = _BIT[letter] // 16
    here = np.full(16, 100, np.int16)
    for other, bit in _BIT.items():
        if bit // 16 == column:
            here[bit % 16] = differences[other]
    elsewhere = min((differences[other] for other, bit in _BIT.items() if bit // 16 != column), default=100)
    low, high = (np.where(_BITS, half, 100).min(axis=1) for half in (here[:8], here[8:]))
    return np.asarray(np.minimum(np.minimum(high[:, None], low), elsewhere).ravel(), np.int16)


@cache
def _lightest(letter: str) -> int:
    """The least weight a sound can have: in the middle, and between consonants if it is one."""
    return min(phone_weights(f"k{letter}{after}")[1] for after in ("", "k", "A"))
