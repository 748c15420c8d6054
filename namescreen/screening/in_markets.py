"""A mark as the buyers of each market where it holds hear and understand it: what a German ear takes for the name says
nothing of a market where nobody reads German."""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence
from typing import TYPE_CHECKING

from ..goods.verdicts import REFUSED
from ..marks.territory import bites_where, held_in
from ..outcome import NotChecked
from ..policy import PLAINLY_DESCRIPTIVE
from ..territories import languages_of, understood_in
from ..text import parse
from .heard import as_heard
from .results import CloseMark, InMarket
from .translated import known_to_buyers

if TYPE_CHECKING:
    from ..goods import Distinctiveness

__all__ = ["as_heard_where", "freed"]


def as_heard_where(close: CloseMark, name: str, said: str, language: str, markets: Sequence[str]) -> CloseMark:
    """`close` as it is where it asks for most attention, and how it is heard and understood in each market if that
    differs. `said` is what of the `name` it says in `language`; "" where it is no translation."""
    asked = held_in(close.mark, markets) if close.bites else ()
    if not asked:  # in none, or nobody knows in which
        return _heard(close, name, said, language, bites_where(close.mark, markets))
    each = [(market, _heard(close, name, said, language, bites_where(close.mark, (market,)))) for market in asked]
    told = tuple(InMarket(market, one.closeness.sound, one.abroad) for market, one in each)
    _, first = max(each, key=lambda one: (one[1].knockout, one[1].concern))
    alike = len({(one.sound, one.abroad) for one in told}) == 1
    return first if alike else dataclasses.replace(first, by_market=told)


def freed(
    marks: tuple[CloseMark, ...], name: str, found: Distinctiveness | NotChecked
) -> tuple[CloseMark, ...]:
    """Marks near a name, the gravest first, where what they share with it is free to all: in each market where it is
    generic, and, of marks that hold it whole, where it plainly describes the goods."""
    views = () if isinstance(found, NotChecked) else found.markets
    generic = not isinstance(found, NotChecked) and found.category == "generic"
    if generic and all(one.called == "generic" for one in views):
        told = [one.with_namesakes(free=True) for one in marks]
    else:
        refused = [one for one in views if one.called in REFUSED]
        named = tuple(one.market for one in refused if one.called == "generic")
        plainly = tuple(one.market for one in refused if one.called == "generic" or one.score < PLAINLY_DESCRIPTIVE)
        if not plainly:
            return marks
        letters = parse(name).letters
        where = [plainly if letters in parse(one.mark.text).letters else named for one in marks]
        told = [one.with_namesakes(free_in=markets) for one, markets in zip(marks, where, strict=True)]
    return tuple(sorted(told, key=lambda one: (not one.knockout, -one.level)))


def _heard(close: CloseMark, name: str, said: str, language: str, places: Sequence[str]) -> CloseMark:
    """`close` as it is in `places` alone."""
    english = not places or any(understood_in(place, "en") for place in places)
    mark = close.mark
    closeness = as_heard(close.closeness, name, mark.text, languages_of(places, main=True), english=english)
    abroad = bool(language) and not known_to_buyers(said, mark, language, places)
    heard = close
    if closeness is not close.closeness or abroad:
        heard = dataclasses.replace(close, closeness=closeness, abroad=abroad)
    return dataclasses.replace(heard, knockout=True) if heard.conflict.knockout else heard
