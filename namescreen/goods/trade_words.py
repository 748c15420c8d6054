"""Terms of art of many trades (wordlists/trade_words.tsv): varieties, styles, materials, techniques, dishes, breeds.

Written from memory and incomplete: a word that is not listed may still be a term of the trade."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from ..lexicon import lexicon
from ..tables import open_table
from .context import context

__all__ = ["LONGEST_TERM", "TradeTerm", "goods_of", "is_term", "meaning_of", "term_for"]

LONGEST_TERM = 4
"""Words in the longest terms that are looked for."""
NAMED, NEAR = 0.95, 0.85
"""How plainly a term describes the goods it is told of, named as such or by a near word; as in `context`, ours."""
ORDINARY = 0.8
"""What is left of it for a word that has an everyday meaning too (galaxy, a hop): buyers may think of that first."""
SAME_CLASS = 0.55
"""The same for other goods of the class; an everyday word says nothing of them."""


@dataclass(frozen=True, slots=True)
class TradeTerm:
    """A term of a trade as told of goods: `weight`, 0 to 1, how plainly it describes them (0: nothing ties it to them),
    `what` it is (a chilli pepper), and whether it is a very name of such goods."""

    weight: float
    what: str
    names_goods: bool = False


def is_term(words: str) -> bool:
    """Whether folded words, parted by spaces, are a term of some trade."""
    return not words.startswith("*") and words in open_table("trade_words.tsv")


def meaning_of(words: str) -> str:
    """What a term is, in the first area that has it; "" if it is none."""
    first = (open_table("trade_words.tsv").get(words) or "").split()[:1]
    return _area(first[0])[2] if first else ""


def goods_of(words: str) -> tuple[str, ...]:
    """The goods that a term is told of, in the first area that has it; empty if it is none."""
    first = (open_table("trade_words.tsv").get(words) or "").split()[:1]
    return _area(first[0])[1] if first else ()


def _area(number: str) -> tuple[list[int], tuple[str, ...], str]:
    """The classes, the goods and what the terms are, of one area."""
    classes, named, what = (open_table("trade_words.tsv").get(f"*{number}") or "||").split("|")
    return [int(one) for one in classes.split()], tuple(named.split(",")), what


@lru_cache(maxsize=1 << 14)
def term_for(words: str, goods: str) -> TradeTerm | None:
    """What the term says of `goods`, in the area where it says most; None if it is no term of any trade."""
    if not is_term(words):
        return None
    ordinary = lexicon().known(words)
    told = []
    for number in (open_table("trade_words.tsv").get(words) or "").split():
        classes, named, what = _area(number)
        first = classes[0]
        weight = _weight(named, set(classes), goods)
        if ordinary:
            weight = 0.0 if weight <= SAME_CLASS else weight * ORDINARY
        kind = weight == NAMED and not ordinary and first in context(goods).classes[:1]
        told.append(TradeTerm(weight, what, kind))
    return max(told, key=lambda one: one.weight)


def _weight(named: tuple[str, ...], classes: set[int], goods: str) -> float:
    around = context(goods)
    if {one.word for one in around.words} & set(named):
        return NAMED
    near = (around.near[one] for one in named if one in around.near)
    if any(one.names_goods and one.weight >= NEAR for one in near):
        return NEAR
    return SAME_CLASS if classes & set(around.classes[:1]) else 0.0
