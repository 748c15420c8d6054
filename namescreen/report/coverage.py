"""What was not looked into: markets that no searched list covers, and checks that no name could have."""

from __future__ import annotations

from ..outcome import NotChecked
from ..plain_text import cell
from .model import Report

__all__ = ["never_checked", "not_checked_words", "partly_searched", "unsearched_markets"]

# Codes of WIPO standard ST.3: EM the European Union (EUIPO), BX the Benelux office. Member states as of 2026.
_EU = frozenset(
    ("AT", "BE", "BG", "CY", "CZ", "DE", "DK", "EE", "ES", "FI", "FR", "GR", "HR", "HU", "IE", "IT", "LT")
) | {"LU", "LV", "MT", "NL", "PL", "PT", "RO", "SE", "SI", "SK"}
_JOINT = {"EM": _EU}
_OWN_OFFICE = {"BE": "BX", "NL": "BX", "LU": "BX"}  # these have no register of their own
_OTHER_CODES = {"UK": "GB", "EU": "EM", "EL": "GR"}


def _offices(report: Report) -> set[str]:
    codes = {office.upper() for searched in report.lists for office in searched.offices}
    return {_OTHER_CODES.get(code, code) for code in codes}


def unsearched_markets(report: Report) -> tuple[str, ...]:
    """Markets of the brief whose own office no list names.

    The marks of a joint office do not stand for a country's own register, except where it has no other.
    """
    offices = _offices(report)
    return tuple(market for market in report.markets if not {market, _OWN_OFFICE.get(market, market)} & offices)


def partly_searched(report: Report) -> tuple[str, ...]:
    """Unsearched markets in which marks of a joint office that was searched have effect."""
    offices = _offices(report)
    return tuple(
        market
        for market in unsearched_markets(report)
        if any(market in countries for office, countries in _JOINT.items() if office in offices)
    )


def never_checked(report: Report) -> tuple[NotChecked, ...]:
    """What could not be checked for any of the names, told once."""
    every = [set(entry.not_checked) for entry in report.names]
    first = report.names[0].not_checked if report.names else ()
    return tuple(item for item in first if all(item in one for one in every))


def not_checked_words(item: NotChecked) -> str:
    """A check that was not made, as Markdown: the check, and why."""
    return cell(f"{item.check.replace('_', ' ')}: {item.because}")
