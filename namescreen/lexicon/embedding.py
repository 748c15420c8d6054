"""Word vectors: the contexts that words occur in, and the thesaurus entries that list them.

Drawn by wordlists/build/embedding.py from GloVe (Pennington, Socher and Manning 2014), the Moby Thesaurus and the words
that WordNet's definitions mention together. A row is a context vector and a thesaurus vector side by side, in 8-bit
integers. The file is mapped; rows are scaled to length one when they are read."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import cache, lru_cache
from typing import TYPE_CHECKING, Any

from ..errors import DataError
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
    "row_of",
    "rows_at",
    "scaled_rows",
    "thesaurus_cosine",
    "vector",
]

CONTEXT = 96
"""The length of the context vector, which comes first in a row; the rest is the thesaurus vector."""
FREQUENT = 30_000
"""Neighbours come from this many of the most frequent words: few people know the others."""
_FILE = "embedding.npy"


@cache
def _rows() -> np.ndarray[Any, np.dtype[np.int8]]:
    """All rows, mapped; raises `DataError` if the file is missing or does not match its word list."""
    import numpy as np

    path = wordlists_folder() / _FILE
    try:
        rows = np.load(path, mmap_mode="r", allow_pickle=False)
    except (OSError, ValueError) as error:
        raise DataError(path, f"cannot be read ({error})", REMEDY) from error
    words = len(open_table("embedding_words.tsv"))
    if rows.dtype != np.int8 or rows.ndim != 2 or rows.shape[0] != words or rows.shape[1] <= CONTEXT:
        raise DataError(path, f"does not hold a row for each of the {words} words of embedding_words.tsv", REMEDY)
    return np.asarray(rows)


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
def vector(text: str, bases: Bases) -> Vector | None:
    """The vector of a word or of its base form, or the sum for several words; None if unknown.

    `bases` gives the base forms of a word (`Lexicon.bases`).
    """
    text = text.lower()
    row = row_of(text, bases)
    if row >= 0:
        return _scaled(_rows()[row])
    parts = [part for word in text.split()[:8] if (part := vector(word, bases)) is not None] if " " in text else []
    return _scaled(sum(parts[1:], parts[0])) if parts else None


def thesaurus_cosine(word_a: str, word_b: str, bases: Bases) -> float | None:
    """The cosine of the thesaurus vectors of two words, in [-1, 1]; None where either has no entry."""
    one, other = vector(word_a, bases), vector(word_b, bases)
    if one is None or other is None:
        return None
    one, other = one[CONTEXT:], other[CONTEXT:]
    lengths = float(one @ one) * float(other @ other)
    return float(one @ other) / lengths**0.5 if lengths else None


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
