"""How little a word identifies a maker: the closeness of two marks rests on their strong words."""

from __future__ import annotations

from functools import lru_cache

from ..lexicon import kinds, zipf
from .places import is_settled_place

__all__ = ["weakness", "weakness_for_goods"]

# TMEP 1207.01(b)(viii): descriptive, generic or disclaimed matter counts for less. Ordered, not fitted.
_BY_KIND = {"function word": 1.0, "company form": 1.0, "domain ending": 1.0, "laudatory": 0.8,
            "generic head": 0.7, "people": 0.6,
            "quality": 0.6, "number": 0.4, "colour": 0.4}  # fmt: skip
PLACE = 0.5
"""That of a word that is mostly a place where people live and trade."""
COMMON = 0.3
"""The highest weakness for being a common word alone."""


@lru_cache(maxsize=1 << 17)
def weakness(word: str, goods_words: tuple[str, ...] | str = ()) -> float:
    """How little `word` (folded) says about who makes these goods, in [0, 1]: 1 = nothing, 0 = rare or
    invented.

    `goods_words` are the goods in words; with none, only the kind of word and how common it is count.
    """
    goods = goods_words if isinstance(goods_words, str) else " ".join(goods_words)
    base = max((_BY_KIND[kind] for kind in kinds(word) if kind in _BY_KIND), default=0.0)
    if base < PLACE and is_settled_place(word):
        base = PLACE
    common = COMMON * min(max((zipf(word) - 3) / 3, 0.0), 1.0)
    own = round(max(base, common), 4)
    if not goods:
        return own
    from .description import describe_in_conflict

    return weakness_for_goods(own, describe_in_conflict(word, goods).weight)


def weakness_for_goods(own: float, described: float) -> float:
    """The weakness for some goods of a word that has `own` for none, and describes them so plainly."""
    return max(own, round(described, 4))
