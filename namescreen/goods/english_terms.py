"""How likely English words are a term for goods, and go with each other: what a translation of goods is chosen by."""

from __future__ import annotations

from functools import lru_cache

from ..lexicon import association, lexicon, zipf
from ..tables import open_table
from .broader import leading_senses, names_above
from .trade_table import is_term
from .words import base_form, is_noun

__all__ = ["OF_GOODS", "fit", "is_goods_term", "is_stuff", "worth"]

COMMON, OF_GOODS, WORDY = 0.06, 0.25, 0.15
"""What a step of the Zipf scale, being a word for goods, and each further word add to a sense, or cost it."""
TERM, TOGETHER = 0.7, 0.5
"""What words add that are a term of the trade together, and such as belong together."""
_STUFFS = frozenset(("fabric", "paper", "leather", "animal skin", "metallic element", "alloy", "wood", "stone"))
"""What WordNet calls what things are made of."""


@lru_cache(maxsize=1 << 14)
def worth(english: str) -> float:
    """How likely goods are called so, whatever a language says of it."""
    *before, last = english.split()
    head = base_form(last)
    of_goods = is_goods_term(english) if before else f"h:{head}" in open_table("class_weights.tsv") and is_noun(last)
    return COMMON * min(map(zipf, english.split())) + (OF_GOODS if of_goods else -WORDY * len(before))


@lru_cache(maxsize=1 << 14)
def is_goods_term(english: str) -> bool:
    """Whether words are the name of some goods together."""
    *before, last = english.split()
    said = " ".join((*before, base_form(last)))
    groups, broader = open_table("goods_groups.tsv"), open_table("broader_goods.tsv")
    listed = said in groups or said in broader or said.replace(" ", "") in broader
    return listed or is_term(said) or lexicon().known(said)


@lru_cache(maxsize=1 << 12)
def is_stuff(english: str) -> bool:
    """Whether a leading sense is what things are made of: fabric rather than stuff."""
    named = (names_above(sense) for sense, _ in leading_senses(base_form(english), 1))
    return any(not names.isdisjoint(_STUFFS) for names in named)


@lru_cache(maxsize=1 << 15)
def fit(before: str, head: str) -> float:
    """How well a head goes with what stands before it in English."""
    if is_goods_term(f"{before} {head}"):
        return TERM
    return TOGETHER * (association(before.split()[-1], head.split()[-1]) or 0.0)
