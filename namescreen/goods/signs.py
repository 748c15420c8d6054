"""A sign in a name that not everyone may register, or that would mislead, as it is told; and what the kinds have in
common."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache, lru_cache
from typing import Any, NamedTuple

from ..tables import open_table
from .grounds import Ground
from .phrases import goods_words
from .trade_words import covered_names

__all__ = ["EVOKING", "MISLEADING", "ORIGIN", "Listed", "ProtectedSign", "listed", "sorts_of", "with_law"]

SIGNS = "protected_signs.tsv"

ORIGIN = frozenset(("origin", "craft"))
"""Names of origin: of food, drink and other products of the land, and of crafts and industry. Of other goods they are
asked about as well, as their reputation is protected."""
MISLEADING = frozenset(("material", "misleading"))
"""Kinds of sign that say of the goods what is not so."""
EVOKING = frozenset(("EU", "GB", "CH"))
"""Laws under which a name may not evoke a protected name of origin of such goods; from memory."""


@dataclass(frozen=True, slots=True)
class ProtectedSign:
    """A sign found in a name. `serious` if it is likely to stand in the way for these goods, else worth a question.
    `reason` says what it is, from memory; `ask` whom to ask; `grounds` the law by market; `bars` the markets whose law
    keeps it, or () where all of them do that know it. `told` is the reason without the law."""

    sign: str
    kind: str
    territory: str
    serious: bool
    reason: str
    ask: str
    grounds: tuple[Ground, ...] = ()
    bars: tuple[str, ...] = ()
    told: str = ""

    @property
    def misleads(self) -> bool:
        """Whether it says of the goods what is not so, or may not be."""
        return self.kind in MISLEADING

    def to_json(self) -> dict[str, Any]:
        """A plain dictionary, the same for the same input."""
        return {
            "sign": self.sign,
            "kind": self.kind,
            "territory": self.territory,
            "serious": self.serious,
            "reason": self.reason,
            "ask": self.ask,
            "bars": list(self.bars),
            "grounds": [ground.to_json() for ground in self.grounds],
            "source": "from memory",
        }


class Listed(NamedTuple):
    """A line of the list of signs: the Nice classes and the sort of the goods that a sign is known for ("*" among the
    classes: any goods); `little_known` if its fame is small, or its words are everyday ones."""

    kind: str
    territory: str
    classes: frozenset[str]
    sort: str
    little_known: bool

    def known_for(self, classes: Iterable[int], sorts: frozenset[str]) -> bool:
        """Whether the sign is known for goods of these classes, unless they are of other sorts."""
        met = "*" in self.classes or not self.classes.isdisjoint(map(str, classes))
        return met and (not self.sort or not sorts or self.sort in sorts)


@lru_cache(maxsize=1 << 12)
def listed(row: str) -> tuple[Listed, ...]:
    """The lines of one sign, as its row of the table holds them."""
    return tuple(map(_listed, row.split()))


@cache
def all_signs() -> tuple[tuple[str, Listed], ...]:
    """Every sign that is a word or several, with each line of it, in the order of the table."""
    rows = ((sign, row) for sign, row in open_table(SIGNS).items() if sign[0].isalpha())
    return tuple([(sign, one) for sign, row in rows for one in listed(row)])


@cache
def names_of_origin() -> tuple[tuple[str, Listed], ...]:
    """Those that are names of origin."""
    return tuple([(sign, one) for sign, one in all_signs() if one.kind in ORIGIN])


@lru_cache(maxsize=1 << 10)
def _listed(number: str) -> Listed:
    kind, territory, known_for = str(open_table(SIGNS).get(f"={number}")).split("|")
    told = known_for.split()
    classes = frozenset(one for one in told if not one.isalpha() and one != "0")
    return Listed(kind, territory, classes, next(filter(str.isalpha, told), ""), "0" in told)


@lru_cache(maxsize=256)
def sorts_of(goods: str) -> frozenset[str]:
    """The sorts of goods, of those by which signs of one class are told apart, that are stated or are in the goods."""
    said = {*covered_names(goods), *(one.word for one in goods_words(goods))}
    rows = (row.partition("=") for row in str(open_table(SIGNS).get("@")).split(";"))
    return frozenset(sort for sort, _, names in rows if not said.isdisjoint(names.split(",")))


def with_law(what: str, grounds: Iterable[Ground]) -> str:
    """What a sign is, with the law of each market."""
    return "; ".join((what, *(f"{one.market}: {one.law}" for one in grounds), "from memory"))
