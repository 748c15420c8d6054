"""A closed name as the words that readers see in it (thicketlamp: thicket lamp), and whether it is closer to a mark
so."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING

from ..text import parse, split_closed_compound
from ..text.segmentation import RECOGNISED

if TYPE_CHECKING:
    from . import Closeness

__all__ = ["as_readers_divide", "divided"]

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
    from ..lexicon import kinds, lexicon, zipf

    found, known = zipf(word), lexicon().known(word)
    if len(word) < LONG:
        return found if known or kinds(word) else 0.0
    return max(found, RECOGNISED) if known and found >= SEEN_INSIDE else found


@lru_cache(maxsize=1 << 14)
def as_readers_divide(name: str, mark: str, closeness: Closeness, *, name_goods: str | None) -> tuple[str, Closeness]:
    """The form of `name` that is compared with `mark`, and how close that is: as it stands with `closeness`, or with
    spaces where readers see words in it, one of them is in the mark, and so it is closer."""
    from . import compare

    words, written = divided(name), parse(name).words
    if words == written or set(words).isdisjoint(divided(mark)) or closeness.appearance >= 1:
        return name, closeness
    spaced = " ".join(words)
    found = compare(spaced, mark, name_goods=name_goods)
    return (spaced, found) if found.overall > closeness.overall else (name, closeness)
