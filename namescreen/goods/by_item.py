"""For which of several goods a name is barred: a refusal covers these alone, and the rest may be filed."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from ..outcome import NotChecked
from .continuum import CATEGORIES
from .distinctiveness import distinctiveness
from .findings import Distinctiveness, ItemFinding
from .phrases import items

__all__ = ["distinctiveness_by_item"]

BARRING = CATEGORIES[:2]
MOST = 12
"""Items of a list of goods that are judged one by one; of a longer list only the whole is judged."""


def distinctiveness_by_item(
    name: str,
    goods: str,
    *,
    languages: Iterable[str] | None = None,
    markets: Iterable[str] | None = None,
    classes: Iterable[int] = (),
    product: str = "",
) -> Distinctiveness | NotChecked:
    """As `distinctiveness`; of a name that is generic or descriptive also what it is for each item of the goods, where
    that is not the same for all (`Distinctiveness.by_item`). What it is for none of them it is not for all together:
    it stands as for the item where it is weakest."""
    stated, codes = (None if languages is None else tuple(languages)), tuple(markets or ())
    numbers = tuple(classes)

    def judged(what: str) -> Distinctiveness | NotChecked:
        return distinctiveness(name, what, languages=stated, markets=codes, classes=numbers, product=product)

    found = judged(goods)
    if isinstance(found, NotChecked) or found.called not in BARRING or any(one.serious for one in found.protected):
        return found
    each = [one.text for one in items(goods)]
    if not 1 < len(each) <= MOST:
        return found
    alone = [judged(text) for text in each]
    free = [one for one in alone if not isinstance(one, NotChecked) and one.called not in BARRING]
    if len(free) == len(each):
        return min(free, key=lambda one: (CATEGORIES.index(one.category), one.score))
    told = tuple(ItemFinding(text, _called(one)) for text, one in zip(each, alone, strict=True))
    return replace(found, by_item=told) if len({one.called for one in told}) > 1 else found


def _called(found: Distinctiveness | NotChecked) -> str:
    return "not checked" if isinstance(found, NotChecked) else found.called
