"""Checks that the arrays of a prepared register are consistent: no index or boundary points outside. Checksums show
that a file is unchanged; this check shows that its contents are a register. It takes some 0.2 s for a million marks,
once for each file.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

import numpy as np

from ..marks.columns import ROWS_A_BLOCK
from ..marks.status import STATUSES
from ..pronunciation.articulatory_features import percent_differences
from ..tables import open_table
from .bigram_index import BIGRAMS

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Arrays = Mapping[str, NDArray[Any]]

__all__ = ["check_arrays"]

_COLUMNS: dict[str, type[np.generic]] = {
    "status": np.uint8,
    "date": np.uint32,
    "office": np.uint16,
    "source": np.uint32,
}


def check_arrays(arrays: Arrays, sources: int, offices: int) -> None:
    """Raises ValueError or KeyError, naming the part, if the arrays of a register do not fit together.

    `sources` and `offices` are the numbers of those that its marks name.
    """
    checked = _Checked(arrays)
    marks = len(checked.array("classes", np.uint64))
    for name, kind in _COLUMNS.items():
        checked.array(name, kind, marks)
    checked.below("status", len(STATUSES))
    checked.below("source", sources)
    checked.below("office", offices)
    checked.boundaries("row_blocks", np.uint64, len(checked.array("rows", np.uint8)), -(-marks // ROWS_A_BLOCK))
    words, names = checked.strings("word"), checked.strings("name")
    every = words + checked.texts("said")
    checked.array("said_length", np.uint16, every - words)
    checked.array("word_known", np.uint8, every)
    checked.array("word_flags", np.uint8, every)
    checked.array("word_vector_row", np.int32, every)
    checked.between("word_vector_row", -1, len(open_table("embedding_words.tsv")))
    for weight in ("word_strength", "word_dominance"):
        weights = checked.array(weight, np.float64, every)
        checked.that(bool(np.all((weights > 0) & (weights <= 1))), weight)
    checked.lists("word_code_bigrams", BIGRAMS, checked.codes("word_code", words))
    checked.codes("name_code", names)
    lemmas = checked.texts("lemma")
    checked.lists("lemma_words", lemmas, every)
    checked.array("word_form", np.uint32, every)
    checked.below("word_form", lemmas)
    choices = len(checked.array("choice_words_start", np.uint32)) - 1
    checked.lists("word_choices", every, choices)
    checked.lists("choice_words", choices, every, least=1)
    rows = len(checked.array("row_name", np.uint32))
    checked.ascend("row_name", names)
    checked.boundaries("name_rows", np.uint32, rows, names)
    ends = arrays["name_rows"].astype(np.int64)
    owners = np.repeat(np.arange(names), ends[1:] - ends[:-1])
    checked.that(np.array_equal(owners, arrays["row_name"]), "row_name")
    checked.lists("row_words", rows, words, least=1)
    checked.lists("postings", words, rows)
    checked.lists("name_marks", names, marks)
    checked.array("name_bare", np.uint32, names)
    checked.below("name_bare", names)
    checked.lists("fuller", names, names)


class _Checked:
    """The arrays, each checked before it is used."""

    def __init__(self, arrays: Arrays) -> None:
        self._arrays = arrays

    @staticmethod
    def that(holds: bool, name: str) -> None:
        if not holds:
            raise ValueError(f"its part {name!r} does not fit the others")

    def array(self, name: str, kind: type[np.generic], size: int | None = None) -> NDArray[Any]:
        array = self._arrays[name]
        self.that(array.dtype == kind and size in (None, len(array)), name)
        return array

    def below(self, name: str, limit: int) -> None:
        array = self._arrays[name]
        self.that(not len(array) or int(array.max()) < limit, name)

    def between(self, name: str, least: int, limit: int) -> None:
        array = self._arrays[name]
        self.that(not len(array) or least <= int(array.min()), name)
        self.below(name, limit)

    def ascend(self, name: str, limit: int) -> None:
        array = self._arrays[name]
        self.that(bool(np.all(array[1:] >= array[:-1])), name)
        self.below(name, limit)

    def boundaries(self, name: str, kind: type[np.generic], end: int, lists: int, least: int = 0) -> None:
        """The boundaries of so many lists, each of at least `least` items, that fill a part up to its `end`."""
        starts = self.array(name, kind, lists + 1).astype(np.int64)
        self.that(starts[0] == 0 and starts[-1] == end and bool(np.all(np.diff(starts) >= least)), name)

    def lists(self, name: str, lists: int, limit: int, least: int = 0) -> None:
        self.boundaries(f"{name}_start", np.uint32, len(self.array(name, np.uint32)), lists, least)
        self.below(name, limit)

    def texts(self, name: str, count: int | None = None) -> int:
        blob, lists = self.array(name, np.uint8), len(self._arrays[f"{name}_start"]) - 1
        self.that(count in (None, lists), name)
        self.boundaries(f"{name}_start", np.uint32, len(blob), lists)
        blob.tobytes().decode()
        inside = (blob & 0xC0) == 0x80  # further bytes of a character
        starts = self._arrays[f"{name}_start"][:-1]
        self.that(not inside[starts[starts < len(blob)]].any(), f"{name}_start")
        return lists

    def strings(self, name: str) -> int:
        count = self.texts(name)
        self.array(f"{name}_length", np.uint16, count)
        self.ascend(f"{name}_length", 1 << 16)
        self.lists(f"{name}_bigrams", BIGRAMS, count)
        return count

    def codes(self, name: str, words: int) -> int:
        count = len(self.array(f"{name}_whole", np.uint16))
        blob = self.array(name, np.uint8)
        letters = np.zeros(256, bool)
        letters[[ord(letter) for letter in percent_differences()]] = True
        self.that(bool(letters[blob].all()), name)
        self.array(f"{name}_weights", np.uint8, len(blob))
        self.boundaries(f"{name}_start", np.uint32, len(blob), count, least=1)
        self.array(f"{name}_syllables", np.uint8, count)
        self.ascend(f"{name}_whole", 1 << 16)
        self.lists(f"{name}_ids", words, count)
        self.lists(f"{name}_owners", count, words)
        return count
