"""Which markets the searched lists cover, and what was not looked into."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from ..outcome import NotChecked
from ..plain_text import cell
from .model import Report

__all__ = [
    "MarketCover", "holds_in", "market_cover", "never_checked", "not_checked_words", "partly_searched",
    "unsearched_markets",
]  # fmt: skip

# Codes of WIPO standard ST.3: EM the European Union (EUIPO), BX the Benelux office. Member states as of 2026.
_EU = frozenset(
    ("AT", "BE", "BG", "CY", "CZ", "DE", "DK", "EE", "ES", "FI", "FR", "GR", "HR", "HU", "IE", "IT", "LT")
) | {"LU", "LV", "MT", "NL", "PL", "PT", "RO", "SE", "SI", "SK"}
_OWN_OFFICE = {"BE": "BX", "NL": "BX", "LU": "BX"}  # these have no register of their own
_OTHER_CODES = {"UK": "GB", "EU": "EM", "EL": "GR"}


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


def holds_in(territories: Iterable[str], market: str) -> bool:
    """Whether a mark of `territories` (ISO 3166-1 codes, EU for the whole Union) holds in a market."""
    held = set(territories)
    return market in held or (market in _EU and "EU" in held) or (market == "EU" and bool(held & _EU))


def market_cover(report: Report) -> tuple[MarketCover, ...]:
    """What was searched for each market of the brief."""
    codes = {office.upper() for searched in report.lists for office in searched.offices}
    offices = {_OTHER_CODES.get(code, code) for code in codes}
    return tuple(_cover(market, offices) for market in report.markets)


def _cover(market: str, offices: set[str]) -> MarketCover:
    own_code = _OWN_OFFICE.get(market, market)
    own = bool({market, own_code} & offices)
    national = f"the {'Benelux' if own_code == 'BX' else 'national'} register ({own_code})"
    parts = [(national, own)]
    joint = market in _EU and "EM" in offices
    if market in _EU:
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
    """What could not be checked for any of the names, told once."""
    every = [set(entry.not_checked) for entry in report.names]
    first = report.names[0].not_checked if report.names else ()
    return tuple(item for item in first if all(item in one for one in every))


def not_checked_words(item: NotChecked) -> str:
    """A check that was not made, as Markdown: the check, and why."""
    return cell(f"{item.check.replace('_', ' ')}: {item.because}")
