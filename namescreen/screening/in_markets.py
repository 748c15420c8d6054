"""A mark as the buyers of each market where it holds hear and understand it: what a German ear takes for the name says
nothing of a market where nobody reads German."""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from ..goods.verdicts import REFUSED
from ..marks.territory import bites_where, held_in
from ..outcome import NotChecked
from ..policy import PLAINLY_DESCRIPTIVE
from ..territories import languages_of, understood_in
from .heard import as_heard
from .owners import gravest_first
from .results import CloseMark, InMarket
from .taken_over import holds_whole
from .translated import known_to_buyers

if TYPE_CHECKING:
    from ..goods import Distinctiveness

__all__ = ["as_heard_where", "freed"]


def as_heard_where(
    close: CloseMark,
    name: str,
    said: str,
    language: str,
    markets: Sequence[str],
    as_seen: Callable[[InMarket], InMarket] = lambda one: one,
) -> CloseMark:
    """`close` as it is heard and understood in each market where it holds, and as it is where it asks for most
    attention. `said` is what of the `name` it says in `language`; "" where it is no translation. `as_seen` adds how
    weak what both share is there."""
    asked = held_in(close.mark, markets) if close.bites else ()
    if not asked:  # in none, or nobody knows in which
        return close.there(as_seen(_heard(close, name, said, language, "", bites_where(close.mark, markets))))
    each = [
        as_seen(_heard(close, name, said, language, market, bites_where(close.mark, (market,)))) for market in asked
    ]
    return dataclasses.replace(close, by_market=tuple(each)).where_gravest()


def freed(
    marks: tuple[CloseMark, ...], name: str, found: Distinctiveness | NotChecked, today: str = ""
) -> tuple[CloseMark, ...]:
    """Marks near a name, the gravest first, where what they share with it is free to all: in each market where it is
    generic, and, of marks that hold it whole, where it plainly describes the goods. Each is as it is where it asks for
    most attention then, and of one owner's the gravest stands first, as on the day `today`."""
    if isinstance(found, NotChecked):
        return marks
    refused = [one for one in found.markets if one.called in REFUSED]
    named = {one.market for one in refused if one.called == "generic"}
    plainly = named | {one.market for one in refused if one.score < PLAINLY_DESCRIPTIVE}
    everywhere = found.category == "generic" and all(one.called == "generic" for one in found.markets)
    if not (everywhere or plainly):
        return marks

    def free(close: CloseMark) -> CloseMark:
        markets = plainly if holds_whole(close.mark.text, name) else named
        each = tuple(dataclasses.replace(one, free=everywhere or one.market in markets) for one in close.by_market)
        told = dataclasses.replace(close, by_market=each)
        alone = InMarket(
            "", close.closeness, close.abroad, everywhere, close.descriptive, close.credited, close.beside
        )
        return told.where_gravest() if each else told.there(alone)

    def with_others(close: CloseMark) -> CloseMark:
        each = (dataclasses.replace(close, others=(), marks=1), *close.others)
        first, *others = sorted(map(free, each), key=lambda one: gravest_first(one, today))
        return dataclasses.replace(first, others=tuple(others), marks=close.marks)

    return tuple(sorted(map(with_others, marks), key=lambda one: (not one.knockout, -one.level)))


def _heard(
    close: CloseMark, name: str, said: str, language: str, market: str, places: Sequence[str]
) -> InMarket:
    """How `close` is heard and understood in a market, that is in `places` alone."""
    english = not places or any(understood_in(place, "en") for place in places)
    mark = close.mark
    names = close.closeness.compared or (name, mark.text)
    closeness = as_heard(close.closeness, *names, languages_of(places, main=True), english=english)
    return InMarket(market, closeness, bool(language) and not known_to_buyers(said, mark, language, places))
