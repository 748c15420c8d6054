"""Quantities in names: a number and a unit in which goods of the kind are sold or rated (250 ml, 60 watt).

The quantity of goods is a feature that anyone may state (EUTMR Article 7(1)(c) names it; TMEP 1209.01(b)). A unit in
which they are not measured says nothing of them: shoes are sold by no mile."""

from __future__ import annotations

from functools import lru_cache

from .broader import ancestors, leading_senses, names_of
from .classification import likely_classes
from .description import DESCRIBES, Evidence, of_kind

__all__ = ["quantity"]

_WEIGHED = (1, 2, 3, 4, 5, 22, 23, 29, 30, 31, 32, 33, 34)
_ELECTRIC = (7, 8, 9, 11, 12)
_LONG = (6, 16, 17, 19, 22, 23, 24, 26, 27)
_MEASURED_IN = {
    "weight unit": _WEIGHED, "mass unit": _WEIGHED, "volume unit": _WEIGHED, "electromagnetic unit": _ELECTRIC,
    "power unit": _ELECTRIC, "linear unit": _LONG, "area unit": _LONG,
}  # fmt: skip
"""WordNet's kinds of units, and the Nice classes whose goods are sold or rated in them; from memory of shops."""
WEIGHT = of_kind("quality").weight


@lru_cache(maxsize=1 << 12)
def quantity(number: str, unit: str, goods: str) -> Evidence | None:
    """What `unit` after `number` says about the goods: how much of them there is; None if they are not so measured."""
    if not number.isdecimal():
        return None
    senses = {up for sense, _ in leading_senses(unit, 1) for up in ancestors(sense)}
    above = names_of(senses)
    sold_so = {each for kind, held in _MEASURED_IN.items() if kind in above for each in held}
    if not sold_so & set(likely_classes(goods)[:1]):
        return None
    return Evidence(WEIGHT, "with the number before it a quantity, which any seller may state", section=DESCRIBES)
