"""Goods as they are made and sold: groups of goods for one purpose, markets of one trade or department, and groups that
are used together (wordlists/goods_groups.tsv, written from memory).

Offices ask of goods whether they share purpose, makers, shops and buyers, or are complementary (Canon, C-39/97)."""

from __future__ import annotations

from functools import lru_cache

from ..lexicon import lexicon
from ..tables import open_table
from .context import leading_senses
from .phrases import Item
from .trade_words import goods_of

__all__ = ["groups_of", "is_listed", "ties"]

OF_MANY_KINDS = frozenset(
    "machine case light stand holder cover tool game set service bottle shop course class".split()
)
"""Words whose goods belong to the market of the word before them: an espresso machine, a guitar stand."""
STEPS = 2
"""How many steps up WordNet's broader terms are looked for in the list."""


@lru_cache(maxsize=1 << 13)
def groups_of(item: Item) -> frozenset[str]:
    """The groups ("market|group") of what an item names: of its longest name that is listed; empty if none is."""
    words = (*item.modifiers, item.head)
    table = open_table("goods_groups.tsv")
    names = [" ".join(words[at:]) for at in range(len(words))]
    if item.modifiers and item.head in OF_MANY_KINDS:
        names.pop()
    names += [" ".join(item.modifiers)] if item.modifiers else []
    names += [area for name in names for area in goods_of(name)[:1]]
    found = next((frozenset(row.split(";")) for name in names if (row := table.get(name))), None)
    return _by_broader_term(item.head) if found is None else found


def is_listed(item: Item) -> bool:
    """Whether a list of groups holds the very name of an item."""
    return " ".join((*item.modifiers, item.head)) in open_table("goods_groups.tsv")


def _by_broader_term(word: str) -> frozenset[str]:
    """The groups of the nearest broader term that is listed: a poncho is a garment."""
    layer = [sense_id for sense_id, _ in leading_senses(word, 1)]
    for _ in range(STEPS):
        layer = [up for sense_id in layer for up in lexicon().related_ids(sense_id, "@", "@i")]
        for name in (name.lower() for up in layer for name in lexicon().entry(up).words):
            if row := open_table("goods_groups.tsv").get(name):
                return frozenset(row.split(";"))
    return frozenset()


def ties(one: Item, other: Item) -> dict[str, float] | None:
    """What the groups of two items say, each 0 or 1: of one group, of one market, of groups used together, or
    nothing of these; None where one of them is not listed."""
    mine, theirs = groups_of(one), groups_of(other)
    if not mine or not theirs:
        return None
    group = bool(mine & theirs)
    market = bool({name.partition("|")[0] for name in mine} & {name.partition("|")[0] for name in theirs})
    table = open_table("goods_groups.tsv")
    linked = any(theirs & set((table.get(f"*{name}") or "").split(";")) for name in mine)
    return {
        "one group": float(group),
        "one market": float(market and not group),
        "used together": float(linked and not market),
        "apart": float(not (group or market or linked)),
    }
