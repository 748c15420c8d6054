"""Marks that nobody would ask about by their level alone: the nearest one for goods like ours in each market, and what
an EU filing would meet in states that are no markets."""

from __future__ import annotations

from collections.abc import Iterable

from ..outcome import NotChecked
from ..plain_text import number, shorten, some
from ..policy import Level, level_of
from ..territories import EU_MEMBERS, territory
from .findings import is_of_other_goods, is_over, mark_level, matters
from .model import CloseMark, NameEntry, Report
from .register_facts import held_in

__all__ = ["met_in_the_union", "nearest_unasked"]

NEAR = 0.5
"""Overall closeness from which the nearest mark for like goods in a market is asked about, though it is minor: about
where marks for the same goods were held too alike as often as not (`policy.EVEN`). Ours, not fitted."""
_MOST = 3  # marks that an EU filing would meet that are named


def nearest_unasked(
    entry: NameEntry, report: Report, asked: Iterable[CloseMark]
) -> tuple[tuple[CloseMark, tuple[str, ...]], ...]:
    """The nearest live mark for goods like ours in each market where none that is `asked` about is for such goods, with
    these markets: an identical sign for quite other goods must not be all that is asked there."""
    left = dict.fromkeys(report.markets or ("",))
    for found in asked:
        if _is_like_ours(found):
            for market in held_in(found.mark, report) or ("",):
                left.pop(market, None)
    told: list[tuple[CloseMark, tuple[str, ...]]] = []
    for found in matters(entry):
        near = found.overall >= NEAR and mark_level(found) is Level.MINOR and _is_like_ours(found)
        near = near and not found.descriptive
        live = found.bites is not False and not found.mark.is_dead and not found.lapsed
        markets = [one for one in held_in(found.mark, report) or ("",) if one in left] if near and live else []
        if markets:
            told.append((found, tuple(filter(None, markets))))
            left = {market: None for market in left if market not in markets}
    return tuple(told)


def _is_like_ours(found: CloseMark) -> bool:
    return not isinstance(found.goods, NotChecked) and not is_of_other_goods(found)


def met_in_the_union(entry: NameEntry, report: Report) -> str:
    """Which live marks of states that are no markets an EU filing would meet, as a sentence; "" where no market is a
    state of the Union, or none would ask for a closer look there."""
    states = {territory(market) for market in report.markets} & EU_MEMBERS
    if not states:
        return ""
    met = [found for found in matters(entry) if _is_of_another_state(found) and _level_there(found) >= Level.LOOK]
    if not met:
        return ""
    more = [f"{len(met) - _MOST} more"] if len(met) > _MOST else []
    return (
        "Filed as an EU mark, the name would meet marks of every member state (EU Regulation 2017/1001, article "
        f"8(2)(a)), so also {some([*map(_briefly, met[:_MOST]), *more])}; national marks in {some(sorted(states))} "
        "would not."
    )


def _is_of_another_state(found: CloseMark) -> bool:
    states = {territory(place) for place in found.mark.territories} & EU_MEMBERS
    return found.bites is False and bool(states) and not is_over(found) and not found.lapsed


def _level_there(found: CloseMark) -> Level:
    """The level that a mark would have if its state were a market: outside of them it counts half."""
    return level_of(min(1.0, 2 * found.concern))


def _briefly(found: CloseMark) -> str:
    where = some(sorted({territory(place) for place in found.mark.territories} & EU_MEMBERS))
    return (
        f"{shorten(found.mark.text, 40)} (no. {shorten(found.mark.number, 24)}, {where}, closeness "
        f"{number(found.overall)}, {_level_there(found).words} if it held in a market)"
    )
