"""Which words of a register are likeliest to be like one word, by a rough measure, and which ways to divide names
hold most of the words that are.

The measure is a weighted mean of the letters that two words have in common in their order, over their mean length, and
of the share of equal phonemes of the two readings that are most alike.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from ctypes import CDLL
from typing import TYPE_CHECKING, Protocol

import numpy as np
from rapidfuzz.distance import LCSseq, Levenshtein
from rapidfuzz.process import cdist

from ..native import choose
from ..native.word_search import MOST_LETTERS, MOST_PHONEMES, MOST_READINGS, WordArrays
from .packing import RaggedArray, least_of_most

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from ..closeness import Word

    Arrays = Mapping[str, NDArray[np.generic]]
    Places = NDArray[np.int64]
    Steps = NDArray[np.uint16]

__all__ = ["WHOLE", "WordSearch", "word_search"]

WHOLE = 1000
"""An estimate of 1."""
SHARES = (442, 558)
"""What letters and sounds count, in thousandths: a least squares fit to the mean of look and sound of the tenth of some
20,000 words that is closest to each of 40."""


class WordSearch(Protocol):
    """The words of an index and the names that hold them."""

    def estimates(self, word: Word, words: Places) -> Steps:
        """How alike some words of the index are to `word`, in thousandths."""

    def holding(self, words: Places, adds: Steps, left_out: NDArray[np.bool_] | None, most: int) -> Places:
        """The ways to divide names (rows of the index) that hold most of some words, ascending, at most `most`, none of
        a name that is `left_out`; `adds` says what each word adds. Equal ones at the end are all taken or all left."""


def word_search(arrays: Arrays) -> WordSearch:
    """Over the arrays of an index."""

    def compiled(library: CDLL) -> WordSearch:
        return CompiledWordSearch(library, arrays)

    return choose(compiled, lambda: ArrayWordSearch(arrays))


def _compared(word: Word) -> tuple[bytes, list[bytes]]:
    """The letters and the readings of a word, as far as they are compared."""
    readings = [code.encode("ascii")[:MOST_PHONEMES] for code in word.phoneme_codes[:MOST_READINGS]]
    return word.letters.encode("utf-8", "replace")[:MOST_LETTERS], readings


class CompiledWordSearch:
    """In compiled code."""

    def __init__(self, library: CDLL, arrays: Arrays) -> None:
        self._arrays = WordArrays(library, arrays)

    def estimates(self, word: Word, words: Places) -> Steps:
        """As `WordSearch.estimates`."""
        return self._arrays.estimates(*_compared(word), SHARES, words)

    def holding(self, words: Places, adds: Steps, left_out: NDArray[np.bool_] | None, most: int) -> Places:
        """As `WordSearch.holding`."""
        return np.sort(self._arrays.holding(words, adds, left_out, most))


class ArrayWordSearch:
    """In numpy."""

    def __init__(self, arrays: Arrays) -> None:
        self._words, self._codes = (
            (arrays[name].view(np.uint8), arrays[f"{name}_start"].view(np.uint32)) for name in ("word", "word_code")
        )
        self._codes_of_word, self._rows_of_word = RaggedArray(arrays, "word_code_ids"), RaggedArray(arrays, "postings")
        self._row_name = arrays["row_name"].view(np.uint32)

    def estimates(self, word: Word, words: Places) -> Steps:
        """As `WordSearch.estimates`."""
        letters, readings = _compared(word)
        of_letters, of_sounds = SHARES
        shared, sizes = _measured([letters], self._words, words, LCSseq.similarity, MOST_LETTERS)
        look = 2 * WHOLE * shared[0] // np.maximum(sizes + len(letters), 1)
        codes, ends = self._codes_of_word.gather(words)
        sound, has = look.copy(), ends[1:] > ends[:-1]
        if readings and len(codes):
            apart, sizes = _measured(readings, self._codes, codes, Levenshtein.distance, MOST_PHONEMES)
            longer = np.maximum(sizes, np.array([list(map(len, readings))]).T)
            alike = (WHOLE - WHOLE * apart // np.maximum(longer, 1)).max(axis=0)
            sound[has] = np.maximum.reduceat(alike, ends[:-1][has])
        return np.asarray((of_letters * look + of_sounds * sound) // WHOLE, np.uint16)

    def holding(self, words: Places, adds: Steps, left_out: NDArray[np.bool_] | None, most: int) -> Places:
        """As `WordSearch.holding`."""
        rows, ends = self._rows_of_word.gather(words)
        counted = np.bincount(rows, np.repeat(adds, np.diff(ends)).astype(np.float64), len(self._row_name))
        sums = counted.clip(max=65535).astype(np.int64)
        if left_out is not None:
            sums[left_out[self._row_name]] = 0
        least = max(least_of_most(sums, most), 1)
        return (sums >= least).nonzero()[0]


def _measured(
    texts: Sequence[bytes], strings: tuple[NDArray[np.uint8], NDArray[np.uint32]], places: NDArray[np.integer],
    scorer: Callable[..., int], most: int,
) -> tuple[Places, Places]:  # fmt: skip
    """What a scorer makes of some texts, a row each, and some of the strings, which are cut to `most` bytes; and the
    lengths of these."""
    blob, start = strings
    bounds = zip(start[places].tolist(), start[places + 1].tolist(), strict=True)
    others = [bytes(blob[begin : min(end, begin + most)]) for begin, end in bounds]
    found = cdist(texts, others, scorer=scorer, dtype=np.int64)
    return found, np.fromiter(map(len, others), np.int64, len(others))
