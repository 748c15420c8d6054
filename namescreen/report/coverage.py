"""Which markets the searched lists cover, and what was not searched."""

from __future__ import annotations

from dataclasses import dataclass

from ..marks.territory import EU_MEMBERS, office_code
from ..outcome import NotChecked
from ..plain_text import cell
from .model import Report

__all__ = [
    "MarketCover", "market_cover", "never_checked", "not_checked_words", "partly_searched",
    "unsearched_markets",
]  # fmt: skip

# Codes of WIPO standard ST.3: EM the European Union (EUIPO), BX the Benelux office.
_OWN_OFFICE = {"BE": "BX", "NL": "BX", "LU": "BX"}  # these have no register of their own


@dataclass(frozen=True, slots=True)
class MarketCover:
    """What was searched for one market: the registers whose marks hold there, and those that no list comes from.

    `own` says whether the market's own register was searched, `joint` whether EU marks were that hold there.
    """

    market: str
    own: bool
    joint: bool
    searched: tuple[str, ...]
    missing: tuple[str, ...]


def market_cover(report: Report) -> tuple[MarketCover, ...]:
    """What was searched for each market of the brief."""
    offices = {office_code(office) for searched in report.lists for office in searched.offices}
    return tuple(_cover(market, offices) for market in report.markets)


def _cover(market: str, offices: set[str]) -> MarketCover:
    own_code = _OWN_OFFICE.get(market, market)
    own = bool({market, own_code} & offices)
    national = f"the {'Benelux' if own_code == 'BX' else 'national'} register ({own_code})"
    parts = [(national, own)]
    joint = market in EU_MEMBERS and "EM" in offices
    if market in EU_MEMBERS:
        parts.append(("EU marks (EM)", joint))
    parts.append(("international registrations (WO)", "WO" in offices))
    searched = tuple(name for name, found in parts if found)
    return MarketCover(market, own, joint, searched, tuple(name for name, found in parts if not found))


def unsearched_markets(report: Report) -> tuple[str, ...]:
    """Markets of the brief whose own office no list names.

    The marks of a joint office do not stand for a country's own register, except where it has no other.
    """
    return tuple(one.market for one in market_cover(report) if not one.own)


def partly_searched(report: Report) -> tuple[str, ...]:
    """Unsearched markets in which marks of a joint office that was searched have effect."""
    return tuple(one.market for one in market_cover(report) if not one.own and one.joint)


def never_checked(report: Report) -> tuple[NotChecked, ...]:
    """The checks that were made for none of the names, each once."""
    every = [set(entry.not_checked) for entry in report.names]
    first = report.names[0].not_checked if report.names else ()
    return tuple(item for item in first if all(item in one for one in every))


def not_checked_words(item: NotChecked) -> str:
    """A check that was not made, as Markdown: the check, and why."""
    return cell(f"{item.check.replace('_', ' ')}: {item.because}")
