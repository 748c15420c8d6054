"""The readings of a name against the phoneme codes of a register: `pronunciation.sound_similarity` of many words, and
all that is compared of how they sound."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from ctypes import CDLL
from functools import cache
from typing import TYPE_CHECKING, Protocol

import numpy as np
from rapidfuzz.distance import Levenshtein
from rapidfuzz.process import cdist

from ..native import choose
from ..native.phoneme_search import CodeArrays
from ..native.phonemes import terminated
from ..pronunciation.alignment import phoneme_costs
from ..pronunciation.articulatory_features import percent_differences
from ..pronunciation.phones import VOWEL_LETTERS
from .packing import RaggedArray

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from ..pronunciation.alignment_batch import SoundCodes

    Parts = Mapping[str, NDArray[np.generic]]
    Places = NDArray[np.int64]
    Similarities = NDArray[np.float64]

__all__ = ["PhonemeSearch", "phoneme_search"]


class PhonemeSearch(Protocol):
    """The readings of one name against the codes of a register."""

    def sound_measures(self, codes: Sequence[str], words: Places) -> Similarities:
        """For each word `closeness.sound.sound_measures` of `codes` and its own, in two rows; NaN where it
        has none."""


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

    def sound_measures(self, codes: Sequence[str], words: Places) -> Similarities:
        """As `PhonemeSearch.sound_measures`."""
        if terminated(tuple(codes)) is None:
            return self._otherwise.sound_measures(codes, words)
        return self._compiled.sound_measures(codes, words)


class ArraySearch:
    """The search in numpy."""

    def __init__(self, parts: Parts, ids: RaggedArray) -> None:
        self._blob, self._weights = (parts[part].view(np.uint8) for part in ("blob", "weights"))
        self._start, self._ids = parts["start"].view(np.uint32), ids

    def sound_measures(self, codes: Sequence[str], words: Places) -> Similarities:
        """As `PhonemeSearch.sound_measures`."""

        def measured(places: Places) -> Similarities:
            texts = [str(self._blob[self._start[at] : self._start[at + 1]].data, "ascii") for at in places.tolist()]
            same = cdist(codes, texts, scorer=Levenshtein.normalized_similarity, dtype=np.float64).max(axis=0)
            return np.array([self._similarity(codes, places), same])

        return self._closest(words, measured, rows=2)

    def _closest(self, words: Places, measured: Callable[[Places], Similarities], rows: int = 1) -> Similarities:
        """The greatest values of the codes of each word, NaN where it has none; `measured` gives rows of them for some
        codes."""
        values = np.full((rows, len(words)), np.nan)
        theirs, ends = self._ids.gather(words)
        if len(theirs):
            codes, back = np.unique(theirs.astype(np.int64), return_inverse=True)
            has = ends[1:] > ends[:-1]
            values[:, has] = np.maximum.reduceat(measured(codes)[:, back], ends[:-1][has], axis=1)
        return values

    def _similarity(self, codes: Sequence[str], places: Places) -> Similarities:
        """`pronunciation.sound_similarity` of the closest of `codes` and each of these codes."""
        from ..pronunciation.alignment_batch import sound_similarities

        best, prepared = np.zeros(len(places)), self._prepared(places)
        for code in codes:
            np.maximum(best, sound_similarities(code, prepared), out=best)
        return best

    def _prepared(self, places: Places) -> SoundCodes:
        """Some of the codes as `alignment_batch.prepare_codes` gives them, without a step for each."""
        from ..pronunciation.alignment_batch import SoundCodes

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
        )


@cache
def _translations() -> tuple[bytes, bytes]:
    """Tables that translate the bytes of codes: to the number of the phoneme, and to whether it is a vowel."""
    from ..pronunciation.alignment_batch import prepare_codes

    number, vowel = np.zeros(256, np.uint8), np.zeros(256, bool)
    for letter in percent_differences():
        number[ord(letter)] = prepare_codes([letter]).sounds[0, 0]
        vowel[ord(letter)] = letter in VOWEL_LETTERS
    return number.tobytes(), vowel.tobytes()
