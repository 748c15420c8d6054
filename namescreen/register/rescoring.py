"""The names that a search brings, scored in full and put in order.

`nearest` goes by a score that can be bounded; what it brings, more than is wanted, is scored here as `closeness.score`
scores any two names, from what the register keeps of its names.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from ..closeness import Features, Word, score
from ..text import Name
from .nearest import nearest

if TYPE_CHECKING:
    from collections.abc import Iterable

    from numpy.typing import NDArray

    from .index import Index
    from .nearest import Places

__all__ = ["FETCHED", "LEAST_FETCHED", "best_of", "fetched", "kept_features"]

FETCHED, LEAST_FETCHED = 6, 300
"""How many times as many names as are wanted are scored in full, and at least how many: a register that has no more is
scored as a whole. How many of the 50 closest that misses is measured in tests/bench/bench_register.py."""
PLACES = 9
"""Decimal places of closeness that are told: a sum made in another order differs in its last digits."""


def fetched(index: Index, name: Features, top: int, left_out: NDArray[np.bool_] | None = None) -> Places:
    """The names of the index to be scored in full where the `top` closest are wanted, none of them `left_out`."""
    count = max(LEAST_FETCHED, FETCHED * top)
    if len(index.names) > count:
        return nearest(index, name, count, left_out)[0]
    return np.arange(len(index.names)) if left_out is None else (~left_out).nonzero()[0]


def best_of(index: Index, name: Features, places: Iterable[int], top: int) -> list[tuple[int, float]]:
    """The `top` closest of some names of the index, with how close they are, closest first, equally close ones in the
    order of their first marks. Names with nothing in common (closeness 0) are left out."""
    words: dict[int, Word] = {}
    scored = [(place, round(score(name, kept_features(index, place, words)).overall, PLACES)) for place in places]
    marks = index.name_marks
    scored = [one for one in scored if one[1] > 0]
    return sorted(scored, key=lambda one: (-one[1], marks.values[marks.start[one[0]]]))[:top]


def kept_features(index: Index, place: int, words: dict[int, Word]) -> Features:
    """What `closeness.features` would say of a name of the index, without goods; `words` are those met before."""

    def word(at: int) -> Word:
        if at not in words:
            words[at] = Word(index.words.text(at), index.word_codes.of_one(at), float(index.weight[at]))
        return words[at]

    rows = range(int(index.name_rows[place]), int(index.name_rows[place + 1]))
    divided = tuple(tuple(word(at) for at in index.row_words.one(row).tolist()) for row in rows)
    written = tuple(one.letters for one in divided[0]) if divided else ()
    name = Name(" ".join(written), written, ())
    return Features(name, divided, name.letters, index.name_codes.of_one(place))
