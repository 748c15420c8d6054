"""Quantities in names: a number and a unit in which goods of the kind are sold or rated (250 ml, 60 watt).

The quantity of goods is a feature that anyone may state (EUTMR Article 7(1)(c) names it; TMEP 1209.01(b)). A unit in
which they are not measured says nothing of them: shoes are sold by no mile."""

from __future__ import annotations

from functools import lru_cache

from ..expressions import expression
from .broader import ancestors, leading_senses, names_of
from .classification import likely_classes
from .description import DESCRIBES, Evidence, of_kind

__all__ = ["measure", "quantity"]

_WEIGHED = (1, 2, 3, 4, 5, 22, 23, 29, 30, 31, 32, 33, 34)
_ELECTRIC = (7, 8, 9, 11, 12)
_LONG = (6, 16, 17, 19, 22, 23, 24, 26, 27)
_MEASURED_IN = {
    "weight unit": _WEIGHED, "mass unit": _WEIGHED, "volume unit": _WEIGHED, "electromagnetic unit": _ELECTRIC,
    "power unit": _ELECTRIC, "linear unit": _LONG, "area unit": _LONG,
}  # fmt: skip
"""WordNet's kinds of units, and the Nice classes whose goods are sold or rated in them; from memory of shops."""
_FLUID = (1, 2, 3, 4, 5, 11, 18, 20, 21, 29, 30, 31, 32, 33)
_ANY = tuple(range(1, 35))
_ABBREVIATED = {
    _ANY: "mm cm dm m km in inch ft yd g kg gr grm oz lb lbs st pc pcs pack packs er piece pieces pce set stk stuck "
          "tlg teilig fach x szt pz uds parts part days day hours hour hrs hr h min years year months",
    _FLUID: "l ml cl dl ltr litre liter gal pt qt cc ccm floz cup cups",
    _ELECTRIC: "v w kw mw a ma mah ah wh kwh hz khz mhz ghz va ohm k lm lx cd db nm rpm hp ps bar psi ghz fps kv",
    (9, 28): "gb tb mb kb mp dpi bit px p k ch key keys hz fps x",
    (2, 6, 7, 8, 9, 16): "dpi ppi gsm grit tpi lb lpi mic micron",
    (14,): "k kt ct carat karat",
    (22, 23, 24, 25, 26, 27, 20): "ply den dtex tex gsm gg tc tog d nm wpi",
    (16,): "gsm lb pages sheets page sheet blatt feuilles",
    (29, 30, 32, 33, 5): "abv vol proof kcal cal mg mcg ug iu ie percent",
    (3, 5): "percent mg mcg iu spf",
}  # fmt: skip
"""Units as they are written after a number, by the Nice classes whose goods are sold, rated or counted in them; from
memory of shops."""
_MEASURE = expression(r"(\d+)([a-z]+)")
WEIGHT = of_kind("quality").weight
_TOLD = Evidence(WEIGHT, "a number and its unit: a quantity or measure, which any seller may state", section=DESCRIBES)


@lru_cache(maxsize=1 << 12)
def quantity(number: str, unit: str, goods: str) -> Evidence | None:
    """What `unit` after `number` says about the goods: how much of them there is; None if they are not so measured."""
    if not number.isdecimal():
        return None
    if unit in _units_for(goods):
        return _TOLD
    senses = {up for sense, _ in leading_senses(unit, 1) for up in ancestors(sense)}
    above = names_of(senses)
    sold_so = {each for kind, held in _MEASURED_IN.items() if kind in above for each in held}
    if not sold_so & set(likely_classes(goods)[:1]):
        return None
    return _TOLD


def measure(word: str, goods: str) -> Evidence | None:
    """The same of a number and its unit in one word (60w, of light bulbs); None if it is no such word."""
    parts = _MEASURE.fullmatch(word)
    return _TOLD if parts and parts[2] in _units_for(goods) else None


@lru_cache(maxsize=256)
def _units_for(goods: str) -> frozenset[str]:
    """The units, as they are written, of goods of these kinds."""
    classes = set(likely_classes(goods)[:1])
    return frozenset(unit for held, units in _ABBREVIATED.items() if classes & {*held} for unit in units.split())
