"""Initials and abbreviations of trades with what they stand for: LED on lamps, EVA on mats (TMEP 1209.03(h)).

Written from memory and incomplete (wordlists/curated/initials.txt); others may still be a term."""

from __future__ import annotations

from functools import lru_cache

from ..lexicon import lexicon
from ..tables import open_table
from .description import NOTHING, Evidence, EvidenceKind
from .fields import fields_of
from .phrases import items
from .trade_table import Area, area_of
from .trade_words import is_of_trade, is_told_of

__all__ = ["are_initials", "stands_for"]

NAMED, OF_THE_TRADE, ANYWHERE = 0.9, 0.75, 0.7
"""How plainly initials describe goods that are called so, others of the trade, and any goods. Ours, as the weights in
`description`."""
_ANY = "*"
SECTION = "1209.03(h)"


def are_initials(word: str) -> bool:
    """Whether the folded `word` is listed as initials of some trade."""
    return f"^{word}" in open_table("trade_words.tsv")


@lru_cache(maxsize=1 << 13)
def stands_for(word: str, goods: str) -> Evidence:
    """What listed initials say of the goods; nothing where these are of another trade, or where an everyday word is
    written so and the goods are not called as the trade does."""
    row = open_table("trade_words.tsv").get(f"^{word}")
    best = NOTHING
    for number, _, meant in (entry.partition("=") for entry in row.split(";")) if row else ():
        area = area_of(number)
        if _ANY in area.names:
            weight = ANYWHERE
        elif is_told_of(area, goods):
            weight = NAMED
        else:
            strange = not lexicon().known(word)
            weight = OF_THE_TRADE if strange and (is_of_trade(area, goods) or _of_field(area, goods)) else 0.0
        if weight > best.weight:
            why = f'stands for "{meant}" (from memory)'
            best = Evidence(weight, why, kind=EvidenceKind.TERM, section=SECTION)
    return best


def _of_field(area: Area, goods: str) -> bool:
    """Whether goods are for the use of which those of an area are: gloves for mountain biking, of bicycle parts."""
    theirs = frozenset[str]().union(*(fields_of(item) for name in area.names for item in items(name)))
    return any(fields_of(item) & theirs for item in items(goods))
