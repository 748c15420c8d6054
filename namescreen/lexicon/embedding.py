"""Word vectors: how alike the company is that words keep, and the thesaurus entries they stand in.

Drawn by wordlists/build/embedding.py from GloVe (Pennington, Socher and Manning 2014), the Moby Thesaurus and the words
that WordNet's definitions mention together. A row is a context vector and a thesaurus vector side by side, in 8-bit
integers; it is mapped, and what is asked for is scaled to length one."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache, lru_cache
from typing import TYPE_CHECKING, Any

from ..errors import DataError
from ..tables import REMEDY, open_table, wordlists_folder
from .wordnet import lexicon

if TYPE_CHECKING:
    import numpy as np

    Vector = np.ndarray[Any, np.dtype[np.float32]]

__all__ = [
    "CONTEXT",
    "FREQUENT",
    "embedded_words",
    "frequent_rank",
    "frequent_vectors",
    "scaled_rows",
    "thesaurus_cosine",
    "vector",
]

CONTEXT = 96
"""So many numbers of a row are the context vector, the rest the thesaurus vector."""
FREQUENT = 30_000
"""Neighbours are looked for among so many of the most frequent words: the rest, hardly met by anyone, help no one."""
_FILE = "embedding.npy"


@cache
def _rows() -> np.ndarray[Any, np.dtype[np.int8]]:
    """All rows, mapped; raises `DataError` where the file is missing or is not what its word list says."""
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


def rows_at(places: Sequence[int]) -> Vector:
    """The rows at these places, of length one each; not mapped."""
    return _scaled(_rows()[list(places)])


def _scaled(rows: Any) -> Vector:
    """Rows as numbers of length one each."""
    import numpy as np

    numbers = rows.astype(np.float32)
    length = np.sqrt(np.einsum("...i,...i->...", numbers, numbers))[..., None]
    return np.asarray(numbers / np.maximum(length, 1e-6), dtype=np.float32)


@lru_cache(maxsize=1 << 14)
def vector(text: str) -> Vector | None:
    """The vector of a word, of the word it is a form of, or the sum of those of several words; None if unknown."""
    text = text.lower()
    table = open_table("embedding_words.tsv")
    for form in (text, *lexicon().bases(text)):
        row = table.get(form)
        if row is not None:
            return _scaled(_rows()[int(row)])
    parts = [part for word in text.split()[:8] if (part := vector(word)) is not None] if " " in text else []
    return _scaled(sum(parts[1:], parts[0])) if parts else None


def thesaurus_cosine(word_a: str, word_b: str) -> float | None:
    """The cosine of the thesaurus vectors of two words, in [-1, 1]; None where either stands in no entry."""
    one, other = vector(word_a), vector(word_b)
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
    """The vectors of the frequent words, a column each: held in memory, some 17 MB, from the first search on."""
    import numpy as np

    return np.ascontiguousarray(scaled_rows(FREQUENT).T)


@cache
def frequent_rank() -> dict[str, int]:
    """The row of each frequent word in `frequent_vectors`."""
    return {word: place for place, word in enumerate(embedded_words()[:FREQUENT])}
