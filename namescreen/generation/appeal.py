"""How words of its kind pleased as names: a linear model on the vector of a word, its frequency and its size, fitted on
how readers rated the words of the short lists for all that they suit (wordlists/build/naming_appeal.py).

It speaks of words that nobody was asked about, so names made by others can be held against ours.
"""

from __future__ import annotations

from functools import cache, lru_cache
from io import BytesIO
from typing import TYPE_CHECKING

from ..expressions import expression
from ..lexicon import kinds, lexicon, zipf
from ..lexicon.embedding import vector
from ..tables import wordlists_folder
from ..text import fold
from .vocabulary import places, vectors

if TYPE_CHECKING:
    from .brief_terms import Associations

__all__ = ["appeal", "facts"]

_LOW, _HIGH = 0.4, 0.7  # what the model expects of the dullest words and of the most delightful
_OF_PHRASES = 2.0  # the Zipf frequency that a phrase of several words is taken to have
_WORDS = expression("[a-z]+")


@cache
def _weights() -> Associations:
    """The weight of each of `facts`, and what is added to all."""
    import numpy as np

    stored = np.load(BytesIO((wordlists_folder() / "naming_appeal.npy").read_bytes()))
    return np.asarray(stored, np.float32)


def facts(text: str) -> Associations | None:
    """What the model knows of a word or phrase: the mean vector of its words that say something, its Zipf frequency,
    its letters and its spaces; None where no word has a vector."""
    import numpy as np

    folded = fold(text)
    known = [own for one in _telling(folded) if (own := vector(one, lexicon().bases)) is not None]
    if not known:
        return None
    spaces = folded.count(" ")
    return np.append(np.mean(known, axis=0), (_OF_PHRASES if spaces else zipf(folded), len(folded), spaces))


@lru_cache(maxsize=1 << 15)
def appeal(text: str) -> float:
    """How words like this one pleased, in [0, 1], 1 = as the most delightful; 0.5 where nothing is known of it."""
    folded = fold(text)
    told = [value for one in _telling(folded) if (value := _by_vector(one)) is not None]
    if not told:
        return 0.5
    of_frequency, of_letters, of_spaces, to_all = _weights()[-4:].tolist()
    spaces = folded.count(" ")
    expected = sum(told) / len(told) + to_all + of_letters * len(folded) + of_spaces * spaces
    expected += of_frequency * (_OF_PHRASES if spaces else zipf(folded))
    return float(max(0.0, min(1.0, (expected - _LOW) / (_HIGH - _LOW))))


def _telling(folded: str) -> list[str]:
    return [one for one in _WORDS.findall(folded) if "function word" not in kinds(one)]


@lru_cache(maxsize=1 << 14)
def _by_vector(text: str) -> float | None:
    """What the vector of a word says; None if it has none."""
    place = places().get(text)
    if place is not None and (value := _of_ideas()[place]) is not None:
        return value
    own = vector(text, lexicon().bases)
    return None if own is None else float(_weights()[:-4] @ own)


@cache
def _of_ideas() -> list[float | None]:
    """What the vector of each word of our ideas says, by `vocabulary.places`: at once, as a page asks for many."""
    known, at = vectors()
    found: list[float | None] = [None] * len(places())
    for place, value in zip(at, (known @ _weights()[:-4]).tolist(), strict=True):
        found[place] = value
    return found
