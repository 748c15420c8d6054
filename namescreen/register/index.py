"""The search index over mapped arrays: words, names, rows, and who has which.

A *name* is a distinct mark, by its folded words; a *row* one way to divide a name into words (the written one, and
where a closed compound may be divided, that too); `build.build` makes the arrays.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

import numpy as np

from .packing import RaggedArray
from .phoneme_index import Codes
from .string_index import OrderedTexts, Strings

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Arrays = Mapping[str, NDArray[np.generic]]
    Places = NDArray[np.int64]

__all__ = ["Index"]


class Index:
    """What a search needs of a register."""

    def __init__(self, arrays: Arrays) -> None:
        self.arrays = arrays
        self.words = Strings(arrays, "word")
        self.word_codes = Codes(arrays, "word_code")
        self.weight = arrays["word_weight"].view(np.float64)
        self.known = arrays["word_known"].view(np.uint8)
        self.names = Strings(arrays, "name")
        self.name_codes = Codes(arrays, "name_code")
        self.row_words = RaggedArray(arrays, "row_words")
        self.row_name = arrays["row_name"].view(np.uint32)
        self.name_rows = arrays["name_rows"].view(np.uint32)
        self.postings = RaggedArray(arrays, "postings")
        self.name_marks = RaggedArray(arrays, "name_marks")
        self._lemmas = OrderedTexts(arrays, "lemma")
        self._lemma_words = RaggedArray(arrays, "lemma_words")

    def words_of_lemma(self, lemma: str) -> NDArray[np.uint32]:
        """The words with this key (`closeness.vocabulary.meaning_keys`), or that are it."""
        at = self._lemmas.find(lemma)
        return self._lemma_words.one(at) if at is not None else np.zeros(0, np.uint32)

    def bases(self) -> dict[int, list[str]]:
        """The lemmas that each word is a form of, itself included."""
        found: dict[int, list[str]] = {}
        for at in range(len(self._lemmas)):
            lemma = self._lemmas.text(at)
            for word in self._lemma_words.one(at).tolist():
                found.setdefault(word, []).append(lemma)
        return found

    def rows_of_names(self, names: Places) -> Places:
        """Every row of some names, ascending where the names are."""
        starts = self.name_rows[names].astype(np.int64)
        sizes = self.name_rows[names + 1].astype(np.int64) - starts
        ends = np.cumsum(sizes)
        rows: Places = np.arange(int(ends[-1]) if len(ends) else 0) + np.repeat(starts - ends + sizes, sizes)
        return rows
