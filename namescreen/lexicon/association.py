"""Association: which words bring each other to mind, similar or not (denim and jeans, clay and kiln, sting and pain).

One measure combines two kinds of evidence: word vectors (contexts in running text and thesaurus entries, see
`embedding`), and words that WordNet's definitions mention together (associations.tsv, from
wordlists/build/associations.py). Association is symmetric. It does not say how two words are related; opposites are
associated too. On WordSim-353 (Finkelstein and others 2002), which had no part in drawing the tables,
Spearman's rho with people's judgement is 0.75."""

from __future__ import annotations

from array import array
from collections.abc import Callable, Sequence
from functools import lru_cache
from typing import TYPE_CHECKING, NamedTuple

from ..tables import open_table
from .embedding import (
    CONTEXT,
    embedded_words,
    frequent_rank,
    frequent_vectors,
    product,
    rows_at,
    vector,
)
from .wordnet import lexicon

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    from .embedding import Vector

__all__ = [
    "Among", "Vectors", "associated", "association", "form_defined", "neighbours", "thesaurus_similarity",
]  # fmt: skip

UNRELATED, NEAREST = 0.20, 0.70
"""Cosines that count as 0 and 1. 19 of 20 random pairs of frequent words stay below the first; the second is the median
cosine of a frequent word and its nearest neighbour (measured over the table)."""
_SPREAD = NEAREST - UNRELATED
FULL = 50.0
"""A strength in associations.tsv at which two words count as fully associated: the strongest partner of a common
noun has between 40 and 60 (measured over the table: the 90th hundredth of the strongest partners is 53)."""
DEFINED = 0.7
"""The association of two words with the strongest evidence from definitions and none from vectors."""


class _Known(NamedTuple):
    """The data on one word: its vector, and the form that definitions use, by which the words that they mention with it
    are looked up when wanted."""

    vector: array[float] | None
    form: str


@lru_cache(maxsize=1 << 14)
def _known(word: str) -> _Known:
    return _Known(vector(word, lexicon().bases), form_defined(word))


@lru_cache(maxsize=1 << 13)
def _listed(word: str) -> array[float] | None:
    """The thesaurus vector of a word, of length one."""
    found = _known(word).vector
    listed = found[CONTEXT:] if found is not None else array("d")
    length = product(listed, listed) ** 0.5
    return array("d", [number / length for number in listed]) if length else None


def form_defined(word: str) -> str:
    """The form of `word` that the definitions use: it, or a base form of it."""
    forms = (word.lower(), *lexicon().bases(word))
    return next((form for form in forms if form in open_table("associations.tsv")), forms[0])


@lru_cache(maxsize=1 << 17)
def association(a: str, b: str) -> float | None:
    """How strongly two words bring each other to mind, in [0, 1]; None where a word is unknown; symmetric.

    0: no more than two random words; about 0.2 a loose link, 0.5 a close one (sting, pain); 1: as much as a word and
    its nearest neighbour. The two kinds of evidence combine as independent probabilities (noisy or). An inflected
    form without a vector counts as its base form; several words count as the sum of their vectors.
    """
    one, other = _known(a), _known(b)
    if one.vector is None or other.vector is None:
        return None
    value = (product(one.vector, other.vector) - UNRELATED) / _SPREAD
    value = 0.0 if value <= 0.0 else 1.0 if value >= 1.0 else value
    return 1 - (1 - value) * (1 - DEFINED * mentioned(one.form).get(other.form, 0.0))


def thesaurus_similarity(a: str, b: str) -> float | None:
    """How much the thesaurus entries that list two words have in common: a cosine, in [-1, 1]; None where either has
    none; symmetric."""
    one, other = _listed(a), _listed(b)
    return None if one is None or other is None else product(one, other)


class Vectors:
    """The vectors of many words, by their rows in the embedding (below 0: none), read once to be compared with one word
    after another."""

    def __init__(self, rows: NDArray[np.int32]) -> None:
        import numpy as np

        self._size = len(rows)
        self._has = np.flatnonzero(rows >= 0)
        self._exact = rows_at(rows[self._has]).astype(np.float64)
        self._listed = self._exact[:, CONTEXT:]
        self._lengths = np.sqrt(np.einsum("ij,ij->i", self._listed, self._listed))

    def associations(
        self, word: str, forms: NDArray[np.uint32], numbers: Callable[[Sequence[str]], list[int | None]]
    ) -> NDArray[np.float64]:
        """`association` of `word` with each; NaN for None.

        `forms` are their forms (`form_defined`) by number, and `numbers` gives the numbers of some forms, None for one
        that has none.
        """
        import numpy as np

        values = np.full(self._size, np.nan)
        one = _known(word)
        if one.vector is None:
            return values
        values[self._has] = np.clip((self._exact @ np.array(one.vector) - UNRELATED) / _SPREAD, 0.0, 1.0)
        strengths = mentioned(one.form)
        places = zip(numbers(list(strengths)), strengths.values(), strict=True)
        met = dict(sorted((at, strength) for at, strength in places if at is not None))
        if met:
            known = np.array(list(met), np.uint32)
            at = np.minimum(np.searchsorted(known, forms), len(known) - 1)
            strength = np.where(known[at] == forms, np.array(list(met.values()))[at], 0.0)
            values = 1 - (1 - values) * (1 - DEFINED * strength)
        return values

    def thesaurus_similarities(self, word: str) -> NDArray[np.float64]:
        """`thesaurus_similarity` of `word` with each; NaN for None."""
        import numpy as np

        values = np.full(self._size, np.nan)
        own = _listed(word)
        if own is not None:
            some = self._lengths > 0
            cosines = self._listed @ np.array(own) / np.where(some, self._lengths, 1.0)
            values[self._has] = np.where(some, cosines, np.nan)
        return values


def neighbours(words: str | Sequence[str], limit: int = 100) -> list[tuple[str, float]]:
    """The words most associated with `words` on average, best first, at most `limit`, none of them given.

    The value is the mean `association`, in [0, 1]; words with 0 are left out. Unknown words in `words` are ignored; the
    list is empty if none is known. Rare words are not offered.
    """
    given = (words.lower(),) if isinstance(words, str) else tuple(dict.fromkeys(word.lower() for word in words))
    return list(_nearest(given, limit))


@lru_cache(maxsize=1 << 8)
def _nearest(given: tuple[str, ...], limit: int) -> tuple[tuple[str, float], ...]:
    import numpy as np

    known = [one for one in map(_known, given) if one.vector is not None]
    if not known or limit <= 0:
        return ()
    values = np.array([one.vector for one in known], np.float32) @ frequent_vectors()
    values = np.clip((values - UNRELATED) / _SPREAD, 0.0, 1.0)
    rank = frequent_rank()
    for row, one in zip(values, known, strict=True):
        for other, strength in associated(one.form).items():
            if (place := rank.get(other)) is not None:
                row[place] = 1 - (1 - row[place]) * (1 - DEFINED * strength)
    mean = values.mean(axis=0)
    passed = {one.form for one in known} | set(given)
    most = min(limit + len(passed), len(mean))
    chosen = np.argpartition(-mean, most - 1)[:most]
    chosen = chosen[np.lexsort((chosen, -mean[chosen]))]
    names = embedded_words()
    found = ((names[place], round(float(mean[place]), 4)) for place in chosen)
    return tuple((word, value) for word, value in found if value > 0.0 and word not in passed)[:limit]


class Among:
    """A set of words to compare others with: the words and their vectors as rows."""

    def __init__(self, names: Sequence[str], places: Sequence[int]) -> None:
        self._names = tuple(names)
        self._at = {name: at for at, name in enumerate(self._names)}
        self.vectors = rows_at(places)

    def associations(self, words: Sequence[str]) -> Vector:
        """The `association` of each word with each of these: a row for each word, zeros if it is unknown."""
        import numpy as np

        found = np.zeros((len(words), len(self._names)), np.float32)
        known = [(row, one) for row, one in enumerate(map(_known, words)) if one.vector is not None]
        if not known:
            return found
        values = np.array([one.vector for _, one in known], np.float32) @ self.vectors.T
        values -= UNRELATED
        values /= _SPREAD
        found[[row for row, _ in known]] = values.clip(0.0, 1.0, out=values)
        for row, one in known:
            for other, strength in associated(one.form).items():
                if (place := self._at.get(other)) is not None:
                    found[row, place] = 1 - (1 - found[row, place]) * (1 - DEFINED * strength)
        return found


@lru_cache(maxsize=1 << 14)
def associated(word: str) -> dict[str, float]:
    """The words that WordNet's definitions mention together with `word` or its base form, in [0, 1], 1 = as strongly as
    any; the strongest first.

    Empty for a word that no definition mentions. Do not change the result.
    """
    word = word.lower()
    for form in (word, *lexicon().bases(word)):
        value = open_table("associations.tsv").get(form)
        if value:
            return _strengths(value.partition("|")[0])
    return {}


@lru_cache(maxsize=1 << 14)
def mentioned(form: str) -> dict[str, float]:
    """As `associated`, with the words that have the `form` among their own: symmetric. Do not change the result."""
    return _strengths((open_table("associations.tsv").get(form) or "").replace("|", ""))


def _strengths(listed: str) -> dict[str, float]:
    pairs = (entry.rpartition(":") for entry in listed.split())
    return {other: min(int(strength) / FULL, 1.0) for other, _, strength in pairs}
