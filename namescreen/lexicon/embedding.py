"""Word vectors: the contexts that words occur in, and the thesaurus entries that list them.

Drawn by wordlists/build/embedding.py from GloVe (Pennington, Socher and Manning 2014), the Moby Thesaurus and the words
that WordNet's definitions mention together. A row is a context vector and a thesaurus vector side by side, in 8-bit
integers. The file is mapped; rows are scaled to length one when they are read. Single vectors are read without numpy,
whose import would take a third of a comparison of two names."""

from __future__ import annotations

import mmap
import re
from array import array
from collections.abc import Callable, Sequence
from functools import cache, lru_cache, reduce
from math import sqrt
from operator import add, mul
from typing import TYPE_CHECKING, Any, NamedTuple

from ..errors import DataError
from ..native import choose
from ..native.vectors import compiled_product, compiled_scaled
from ..tables import REMEDY, open_table, wordlists_folder

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Vector = np.ndarray[Any, np.dtype[np.float32]]
    Bases = Callable[[str], tuple[str, ...]]

__all__ = [
    "CONTEXT",
    "FREQUENT",
    "embedded_words",
    "frequent_rank",
    "frequent_vectors",
    "product",
    "row_of",
    "rows_at",
    "scaled_row",
    "scaled_rows",
    "thesaurus_cosine",
    "vector",
]

CONTEXT = 96
"""The length of the context vector, which comes first in a row; the rest is the thesaurus vector."""
FREQUENT = 30_000
"""Neighbours come from this many of the most frequent words: few people know the others."""
_FILE = "embedding.npy"


_HEADER = re.compile(
    rb"(?s)\x93NUMPY\x01\x00..\{'descr': '\|i1', 'fortran_order': False, 'shape': \((\d{1,9}), (\d{1,9})\), \} *\n"
)
"""How a file of numpy begins that holds a table of 8-bit integers."""


class _Mapped(NamedTuple):
    """The mapped file: where its first row begins, how many there are, and their size."""

    data: mmap.mmap
    start: int
    words: int
    size: int

    def row(self, place: int) -> bytes:
        begin = self.start + place * self.size
        return self.data[begin : begin + self.size]


@cache
def _mapped() -> _Mapped:
    """All rows; raises `DataError` if the file is missing or does not match its word list."""
    path = wordlists_folder() / _FILE
    try:
        with path.open("rb") as file:
            data = mmap.mmap(file.fileno(), 0, access=mmap.ACCESS_READ)
    except (OSError, ValueError) as error:
        raise DataError(path, f"cannot be read ({error})", REMEDY) from error
    head, words = _HEADER.match(data), len(open_table("embedding_words.tsv"))
    count, size = map(int, head.groups()) if head else (0, 0)
    if not head or count != words or size <= CONTEXT or len(data) != head.end() + count * size:
        raise DataError(path, f"does not hold a row for each of the {words} words of embedding_words.tsv", REMEDY)
    return _Mapped(data, head.end(), count, size)


def _rows() -> np.ndarray[Any, np.dtype[np.int8]]:
    import numpy as np

    rows = _mapped()
    return np.frombuffer(rows.data, np.int8, offset=rows.start).reshape(rows.words, rows.size)


def scaled_row(place: int) -> array[float]:
    """The row at a place, of length one, with the numbers that `rows_at` gives."""
    return _scaled_bytes(_mapped().row(place))


def _scaled_in_python(row: bytes) -> array[float]:
    numbers = memoryview(row).cast("b").tolist()
    length = array("f", [sqrt(sum(map(mul, numbers, numbers)))])[0] or 1.0
    return array("d", array("f", [number / length for number in numbers]))


def _product_in_python(one: array[float], other: array[float]) -> float:
    return reduce(add, map(mul, one, other), 0.0)  # `sum` may add otherwise than C does


_scaled_bytes = choose(compiled_scaled, lambda: _scaled_in_python)
product = choose(compiled_product, lambda: _product_in_python)
"""The sum of the products of two vectors, in their order, so that it is the same on every machine."""


def scaled_rows(count: int | None = None) -> Vector:
    """The rows of the first `count` words, or of all, of length one each; not mapped."""
    return _scaled(_rows()[:count])


def rows_at(places: Sequence[int] | NDArray[np.integer]) -> Vector:
    """The rows at these places, of length one each; not mapped."""
    import numpy as np

    return _scaled(_rows()[np.asarray(places, np.int64)])


def _scaled(rows: Any) -> Vector:
    """Rows as numbers of length one each."""
    import numpy as np

    numbers = rows.astype(np.float32)
    length = np.sqrt(np.einsum("...i,...i->...", numbers, numbers))[..., None]
    return np.asarray(numbers / np.maximum(length, 1e-6), dtype=np.float32)


def row_of(word: str, bases: Bases) -> int:
    """Which row is that of a word in lower case or of its base form; -1 if there is none. See `vector`."""
    found = map(open_table("embedding_words.tsv").get, (word, *bases(word)))
    return int(next((row for row in found if row is not None), -1))


@lru_cache(maxsize=1 << 14)
def vector(text: str, bases: Bases) -> array[float] | None:
    """The vector of a word or of its base form, or the sum for several words, of length one and in numbers of single
    precision; None if unknown.

    `bases` gives the base forms of a word (`Lexicon.bases`).
    """
    text = text.lower()
    row = row_of(text, bases)
    if row >= 0:
        return scaled_row(row)
    parts = [part for word in text.split()[:8] if (part := vector(word, bases)) is not None] if " " in text else []
    return _sum(parts) if parts else None


def _sum(parts: list[array[float]]) -> array[float]:
    found = parts[0]
    for part in parts[1:]:
        found = array("d", array("f", map(add, found, part)))
    length = max(sqrt(product(found, found)), 1e-6)
    return array("d", array("f", [number / length for number in found]))


def thesaurus_cosine(word_a: str, word_b: str, bases: Bases) -> float | None:
    """The cosine of the thesaurus vectors of two words, in [-1, 1]; None where either has no entry."""
    one, other = vector(word_a, bases), vector(word_b, bases)
    if one is None or other is None:
        return None
    one, other = one[CONTEXT:], other[CONTEXT:]
    lengths = product(one, one) * product(other, other)
    return product(one, other) / lengths**0.5 if lengths else None


@cache
def embedded_words() -> tuple[str, ...]:
    """Every word with a row, the most frequent first."""
    return tuple(sorted(placed := dict(open_table("embedding_words.tsv").items()), key=lambda word: int(placed[word])))


@cache
def frequent_vectors() -> Vector:
    """The vectors of the frequent words, a column each; about 17 MB of memory after the first search."""
    import numpy as np

    return np.ascontiguousarray(scaled_rows(FREQUENT).T)


@cache
def frequent_rank() -> dict[str, int]:
    """The row of each frequent word in `frequent_vectors`."""
    return {word: place for place, word in enumerate(embedded_words()[:FREQUENT])}
