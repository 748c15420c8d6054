"""How well an existing word would do for a term that no list names: a bilinear model of word vectors, fitted on the
readings of the short lists (wordlists/build/naming_matches.py); and how words of its kind fared with readers of whole
briefs (wordlists/build/name_ranker.py).

The model learnt from 2,700 subjects what kind of words pleased for what kind of subject, so it also speaks of goods
that none of them is near to. One matrix takes the vector of a term to one that the words of a name, and those of its
meaning, are held against.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from io import BytesIO
from typing import TYPE_CHECKING

from ..lexicon import lexicon
from ..lexicon.embedding import vector
from ..tables import wordlists_folder
from .vocabulary import places, vectors

if TYPE_CHECKING:
    from .brief_terms import Associations
    from .ties import Lists

__all__ = ["held_against", "matches", "means", "terms_of", "together"]

_BEST = 0.0092
"""What the model expects of the best dozen words of a subject: most are on no list, so it expects little."""


def _matrix() -> Associations:
    """The matrix: a row for each number of a term's vector and one for all terms, a column for each number of a name's
    vector and of its meaning's."""
    return _stored("naming_matches.npy")


@cache
def _stored(table: str) -> Associations:
    import numpy as np

    return np.asarray(np.load(BytesIO((wordlists_folder() / table).read_bytes())), np.float32)


def terms_of(texts: Sequence[str]) -> Associations:
    """The vectors of terms, each with a 1 behind it; zeros for one without a vector, of which nothing is known."""
    import numpy as np

    found = np.zeros((len(texts), vectors()[0].shape[1] + 1), np.float32)
    for row, text in zip(found, texts, strict=True):
        own = vector(text, lexicon().bases)
        if own is not None:
            row[:-1], row[-1] = own, 1.0
    return found


def means(values: Associations, lists: Lists, count: int) -> Associations:
    """The mean of rows of `values` for each list by its weights, zeros for one of `count` that has none."""
    import numpy as np

    found = np.zeros((count, values.shape[1]), np.float32)
    total = np.add.reduceat(lists.weights, lists.starts)
    found[lists.owners] = np.add.reduceat(values[lists.places] * lists.weights[:, None], lists.starts) / total[:, None]
    return found


def matches(
    texts: Sequence[str], weights: Associations, words: Lists, meanings: Lists, count: int
) -> tuple[Associations, Associations, Associations]:
    """How well each of `count` existing words would do for each term, and for all of them together as if they were one
    subject, each counting by its weight, in [0, 1], 1 = as well as the best dozen of a subject: the rating to be
    expected where a word that no reader was asked about counts as 0. Third, how words of its kind fared in whole briefs
    beside what all else foretells, as a share of full marks. `words` are those of each word or phrase, `meanings` those
    of its meaning."""
    import numpy as np

    terms = terms_of(texts)
    wanted = np.vstack([np.vstack([terms, together(terms, weights)]) @ _matrix(), _stored("naming_promise.npy")])
    found = held_against(wanted, words, meanings, count)
    fit = np.asarray((found[:, :-1] / _BEST).clip(0.0, 1.0), np.float32)
    return fit[:, :-1], fit[:, -1], found[:, -1]


def together(terms: Associations, weights: Associations) -> Associations:
    """The vector of what terms say together: their weighted mean, of length one, with a 1 behind it; zeros if nothing
    is known of any."""
    import numpy as np

    mean = weights @ terms[:, :-1]
    length = float(np.linalg.norm(mean))
    return np.append(mean / length, 1.0).astype(np.float32) if length else np.zeros(terms.shape[1], np.float32)


def held_against(wanted: Associations, words: Lists, meanings: Lists, count: int) -> Associations:
    """What the existing words, and their meanings, have of what is wanted, a row for each word."""
    import numpy as np

    known, at = vectors()
    size = known.shape[1]
    found = np.zeros((count, len(wanted)), np.float32)
    for part, lists in ((wanted[:, :size], words), (wanted[:, size:], meanings)):
        values = np.zeros((len(places()), len(wanted)), np.float32)
        values[at] = known @ part.T
        found += means(values, lists, count)
    return found
