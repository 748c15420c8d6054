"""How much of what labels and shops say of goods they say of other goods too: materials, uses, what is sold with them.

Goods of which the same is said share makers, shops or buyers (Canon, C-39/97), which no list of groups may tell."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Mapping
from functools import lru_cache

from ..text.inflection import other_number
from .phrases import Item
from .trade_table import Area, alike, areas_of

__all__ = ["said_alike"]

MANY = 30
"""What labels of more wares say places goods nowhere."""


def said_alike(one: Item, other: Item) -> float:
    """How much alike labels speak of two items, in [0, 1]: the root of the mean likeness of the wares that they are, or
    are said of (a honey dipper, of honey); 0 where labels know one of them not."""
    near, theirs = _near(one), _wares(other)
    if not near or not theirs:
        return 0.0
    return math.sqrt(min(1.0, sum(near.get(ware.number, 0.0) for ware in theirs) / len(theirs)))


@lru_cache(maxsize=1 << 13)
def _near(item: Item) -> Mapping[str, float]:
    """The wares near an item, by number, each with its mean likeness to those that the item is or is said of."""
    found: Counter[str] = Counter()
    for ware in _wares(item):
        found.update(alike(ware))
    return {number: share / len(_wares(item)) for number, share in found.items()}


@lru_cache(maxsize=1 << 13)
def _wares(item: Item) -> tuple[Area, ...]:
    """The wares that labels call by the name of an item, its longest one that labels have, or those they say it of."""
    words = (*item.modifiers, item.head)
    told = [_told_of(" ".join(words[at:])) for at in range(len(words))]
    named = next((named for named, _ in told if named), None)
    return named or next((said for _, said in told if 0 < len(said) <= MANY), ())


def _told_of(name: str) -> tuple[tuple[Area, ...], tuple[Area, ...]]:
    """The wares that a name is one of, and all that labels say it of."""
    known = next(filter(None, map(areas_of, (name, *sorted(other_number(name))))), ())
    wares = tuple(area for area in known if area.is_ware)
    return tuple(ware for ware in wares if name in ware.names), wares
