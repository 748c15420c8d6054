"""The markets in which something serious stands against a name, and those that are left for it."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from ..outcome import NotChecked
from ..policy import EVERYWHERE, OWN_CHECK, Level
from .findings import finding_of, grades, mark_level, matters
from .model import CloseMark, NameEntry, Report
from .own_findings import serious_in

__all__ = ["also_closed", "held_where", "lost", "open_markets"]


def held_where(found: CloseMark) -> Sequence[str]:
    """In which markets a mark holds; () if in all of them, or if that is not known."""
    return found.held or [one.market for one in found.levels]


def open_markets(entry: NameEntry, report: Report) -> tuple[str, ...]:
    """The markets in which nothing serious stands against a name: no mark, and no ground of its own."""
    closed = _closed_by_marks(entry, report.markets) | serious_in(entry, report.markets)
    return tuple(one for one in report.markets if one not in closed)


def also_closed(entry: NameEntry, report: Report) -> dict[str, list[str]]:
    """The marks that are serious, each with the markets where none is a knockout and no office is likely to refuse the
    name, and where it is the gravest: what else stands against a name that falls elsewhere."""
    bars = finding_of(entry, OWN_CHECK).bars
    fallen = serious_in(entry, report.markets) if bars else set()
    told: dict[str, list[str]] = {}
    graded = [
        (found.mark.text, grades(found, held_where(found) or report.markets))
        for found in matters(entry)
        if found.bites is not False
    ]
    for market in report.markets:
        here = [(grade[market], text) for text, grade in graded if market in grade]
        knocked = market in fallen or any(knockout for (knockout, _), _ in here)
        mark = next((text for (_, level), text in here if level >= Level.SERIOUS), "")
        if mark and not knocked:
            told.setdefault(mark, []).append(market)
    return told


def lost(entry: NameEntry) -> int:
    """In how many markets something serious stands against a name; `EVERYWHERE` where that is not told by market."""
    grave = [found for found in matters(entry) if found.bites is not False and mark_level(found) >= Level.SERIOUS]
    if any(not held_where(found) for found in grave):
        return EVERYWHERE
    views = () if isinstance(entry.distinctiveness, NotChecked) else entry.distinctiveness.markets
    own = serious_in(entry, [one.market for one in views if one.market != "EU"])
    if not own and finding_of(entry, OWN_CHECK).level >= Level.SERIOUS:
        return EVERYWHERE
    return len(_closed_by_marks(entry, ()) | own)


def _closed_by_marks(entry: NameEntry, markets: Iterable[str]) -> set[str]:
    asked = tuple(markets)
    return {
        market
        for found in matters(entry)
        if found.bites is not False
        for market, (_, level) in grades(found, held_where(found) or asked).items()
        if level >= Level.SERIOUS
    }
