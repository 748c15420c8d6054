"""A closed name as the words that readers see in it (thicketlamp: thicket lamp), and two names that are closer so."""

from __future__ import annotations

from functools import lru_cache
from itertools import product
from typing import TYPE_CHECKING, NamedTuple

from ..lexicon import kinds, lexicon, zipf
from ..text import parse, split_closed_compound
from ..text.segmentation import RECOGNISED

if TYPE_CHECKING:
    from . import Closeness, Scores

__all__ = ["Divided", "as_readers_divide", "divided", "forms"]

LONG = 5
"""Letters from which a rare dictionary word is seen inside a name."""
SEEN_INSIDE = 2.0
"""Zipf value from which readers see a long dictionary word inside a closed name (thicket in thicketlamp): once in ten
million words. Ours, not fitted."""


@lru_cache(maxsize=1 << 14)
def divided(name: str) -> tuple[str, ...]:
    """The words of a name, closed compounds of known words divided."""
    return tuple(part for word in parse(name).words for part in split_closed_compound(word, _familiarity))


@lru_cache(maxsize=1 << 14)
def _familiarity(word: str) -> float:
    """The Zipf value of a word; of a long one that dictionaries have, at least that from which it is recognised, and 0
    of a short one that they lack: such letters are seen in texts as names and abbreviations."""
    found, known = zipf(word), lexicon().known(word)
    if len(word) < LONG:
        return found if known or kinds(word) else 0.0
    return max(found, RECOGNISED) if known and found >= SEEN_INSIDE else found


class Divided(NamedTuple):
    """Two names as they are compared, and how close they are so."""

    name: str
    mark: str
    closeness: Closeness


@lru_cache(maxsize=1 << 14)
def as_readers_divide(
    name: str, mark: str, closeness: Closeness, *, name_goods: str | None, spaced: Scores | None = None
) -> Divided:
    """Two names as they stand with `closeness`, or with spaces where readers see words in one that the other has too,
    and so they are closer. `spaced` are the scores of the divided name and the mark, where they are known."""
    from . import closeness_from, compare

    best = Divided(name, mark, closeness)
    letters = parse(mark).letters
    words = {word for word in divided(name) if word in letters}  # asked first: to divide each mark costs more
    if closeness.appearance >= 1 or not words or words.isdisjoint(divided(mark)):
        return best
    for one, other in list(product(forms(name), forms(mark)))[1:]:
        if spaced is not None and one != name and other == mark:
            found = closeness_from(one, mark, spaced, name_goods=name_goods)
        else:
            found = compare(one, other, name_goods=name_goods)
        if round(found.overall, 9) > round(best.closeness.overall, 9):
            best = Divided(one, other, found)
    return best


def forms(name: str) -> tuple[str, ...]:
    """A name as it stands and, where readers see words in it, with spaces between them."""
    words = divided(name)
    return (name,) if words == parse(name).words else (name, " ".join(words))
