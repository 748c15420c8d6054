"""Similarity in sound for many codes at once.

The arithmetic is that of `alignment.sound_similarity`, in whole numbers, over arrays: every code is padded with
sounds of no weight, which change no alignment. One step of the dynamic programme serves all codes.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from .alignment import RHYTHM, phone_weights, syllables_in
from .articulatory_features import percent_differences

__all__ = ["SoundCodes", "prepare_codes", "sound_similarities"]

Whole = NDArray[np.int32]
_LETTERS = "".join(percent_differences())
_SIZE = len(_LETTERS) + 1  # index 0 is padding
_INDEX = {letter: at for at, letter in enumerate(_LETTERS, start=1)}
_DIFFERENCE: Whole = np.full((_SIZE, _SIZE), 100, dtype=np.int32)
for _one, _row in percent_differences().items():
    for _other, _cost in _row.items():
        _DIFFERENCE[_INDEX[_one], _INDEX[_other]] = _cost
_WEIGHTS = 8
"""More than the weight of any sound (`alignment.phone_weights`)."""
_CHUNK = 4096
"""Codes aligned in one batch: their working rows fit the processor's cache."""


@dataclass(frozen=True)
class SoundCodes:
    """Codes prepared for comparison and sorted by length; `order` gives the place of each in the input.

    `sounds` and `weights` hold one row a position, one column a code; `whole` is each code's total weight.
    """

    order: NDArray[np.intp]
    lengths: Whole
    sounds: NDArray[np.uint8]
    weights: NDArray[np.uint8]
    whole: Whole
    syllables: Whole

    def __len__(self) -> int:
        return len(self.order)


def prepare_codes(codes: Sequence[str]) -> SoundCodes:
    """`codes` as arrays, for repeated comparison."""
    lengths = np.fromiter((len(code) for code in codes), dtype=np.int32, count=len(codes))
    order = np.argsort(lengths, kind="stable")
    longest = int(lengths.max(initial=0))
    sounds = np.zeros((len(codes), longest), dtype=np.uint8)
    weights = np.zeros((len(codes), longest), dtype=np.uint8)
    syllables = np.zeros(len(codes), dtype=np.int32)
    for row, at in enumerate(order):
        code = codes[at]
        sounds[row, : len(code)] = [_INDEX[letter] for letter in code]
        weights[row, : len(code)] = phone_weights(code)
        syllables[row] = syllables_in(code)
    return SoundCodes(
        order,
        lengths[order],
        np.ascontiguousarray(sounds.T),
        np.ascontiguousarray(weights.T),
        weights.sum(axis=1, dtype=np.int32),
        syllables,
    )


def sound_similarities(code: str, codes: Sequence[str] | SoundCodes) -> NDArray[np.float64]:
    """`sound_similarity(code, other)` for every other code, in their order."""
    prepared = codes if isinstance(codes, SoundCodes) else prepare_codes(codes)
    own = np.array([_INDEX[letter] for letter in code], dtype=np.intp)
    own_weights = phone_weights(code)
    spent = np.empty(len(prepared), dtype=np.int32)
    for start in range(0, len(prepared), _CHUNK):
        part = slice(start, min(start + _CHUNK, len(prepared)))
        longest = int(prepared.lengths[part.stop - 1])
        spent[part] = _spent(own, own_weights, prepared.sounds[:longest, part], prepared.weights[:longest, part])
    return _in_order(_share(spent, code, prepared), prepared)


def _spent(
    own: NDArray[np.intp], own_weights: Sequence[int], sounds: NDArray[np.uint8], weights: NDArray[np.uint8]
) -> Whole:
    """The cost of the cheapest alignment of every code with the given one.

    The search maximizes the saving instead: aligning two sounds costs less than leaving out both, by their weights
    times their similarity. A gap then adds nothing, and a step is three sums and maxima.
    """
    longest, count = sounds.shape
    whole = weights.sum(axis=0, dtype=np.int32) + sum(own_weights)
    small = np.int16 if 100 * int(whole.max(initial=0)) < 2**15 else np.int32
    both = sounds * np.intp(_WEIGHTS) + weights
    similarity = (100 - _DIFFERENCE)[:, :, None]
    there = np.arange(_WEIGHTS)
    saved = np.zeros((longest + 1, count), dtype=small)
    more = np.empty((longest, count), dtype=small)
    for sound, weight in zip(own, own_weights, strict=True):
        # Padding has no weight and is aligned with nothing.
        table = (similarity[sound] * (there + weight) * (there > 0)).astype(small)
        np.take(table.ravel(), both, out=more, mode="clip")
        more += saved[:-1]
        np.maximum(saved[1:], more, out=saved[1:])
        for at in range(1, longest):
            np.maximum(saved[at], saved[at + 1], out=saved[at + 1])
    return np.asarray(100 * whole - saved[longest], np.int32)


def _share(spent: Whole, code: str, prepared: SoundCodes) -> NDArray[np.float64]:
    whole = 100 * (prepared.whole + sum(phone_weights(code)))
    syllables = syllables_in(code)
    most = np.maximum(prepared.syllables, syllables)
    rhythm = 1.0 - RHYTHM * np.abs(prepared.syllables - syllables) / np.maximum(most, 1)
    share: NDArray[np.float64] = np.where(whole > 0, 1.0 - spent / np.maximum(whole, 1), 1.0) * rhythm
    return share


def _in_order(values: NDArray[np.float64], prepared: SoundCodes) -> NDArray[np.float64]:
    result = np.empty_like(values)
    result[prepared.order] = values
    return result
