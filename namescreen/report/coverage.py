"""Which markets the searched lists cover, and what was not searched."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from ..marks.territory import INTERNATIONAL, office_code
from ..outcome import NotChecked
from ..plain_text import cell, plural
from ..territories import EU_MEMBERS, territory
from .model import Report

__all__ = [
    "MarketCover", "market_cover", "never_checked", "not_checked_words", "partly_searched",
    "unsearched_markets",
]  # fmt: skip

_OWN_OFFICE = {"BE": "BX", "NL": "BX", "LU": "BX"}  # these have no register of their own
_EUROPEAN, _INTERNATIONAL = ("EU marks (EM)", ("EM", "EU")), ("international registrations (WO)", INTERNATIONAL)


@dataclass(frozen=True, slots=True)
class MarketCover:
    """What the lists hold for one market: of which registers they have rows, by what they say, and of which none.

    `own` says whether there are rows of the market's own office, `joint` whether there are EU marks that hold there.
    """

    market: str
    own: bool
    joint: bool
    searched: tuple[str, ...]
    missing: tuple[str, ...]


@dataclass(slots=True)
class _Rows:
    """The rows of one office: how many, whether that is known, and how many stand in files of the office's own form."""

    count: int = 0
    counted: bool = True
    own_form: int = 0


def market_cover(report: Report) -> tuple[MarketCover, ...]:
    """What the lists hold for each market of the brief."""
    held: dict[str, _Rows] = {}
    for searched in report.lists:
        counts = {item.office: item.rows for item in searched.rows_of}
        for office in searched.offices:
            rows = held.setdefault(office_code(office), _Rows())
            rows.count += counts.get(office, 0)
            rows.counted &= office in counts
            rows.own_form += counts.get(office, 0) if searched.layout else 0
    came = sum(searched.uk_from_eu for searched in report.lists)
    return tuple(_cover(territory(market), held, came) for market in report.markets)


def _cover(market: str, held: Mapping[str, _Rows], came: int) -> MarketCover:
    registers = list(_registers(market))
    searched = [told for name, codes in registers if (told := _told(name, codes, held))]
    if market == "GB" and came:
        searched.append(f"UK marks that came from EU marks registered before 2021, told with those: {came:,}")
    missing = [told for name, codes in registers if (told := _lacking(name, codes, held))]
    own = _any(registers[0][1], held)
    return MarketCover(market, own, market in EU_MEMBERS and _any(_EUROPEAN[1], held), tuple(searched), tuple(missing))


def _any(codes: Iterable[str], held: Mapping[str, _Rows]) -> bool:
    return any(code in held for code in codes)


def _registers(market: str) -> Iterable[tuple[str, tuple[str, ...]]]:
    """The registers whose marks hold in a market, its own first, and the offices that keep them."""
    if market == "EU":
        yield _EUROPEAN
        states = sorted((EU_MEMBERS - _OWN_OFFICE.keys()) | {"BX"})
        yield "national marks of member states", tuple(states)
    else:
        own = _OWN_OFFICE.get(market, market)
        yield f"{'Benelux' if own == 'BX' else 'national'} marks ({own})", (own, market) if own != market else (own,)
        if market in EU_MEMBERS or market == "BX":
            yield _EUROPEAN
    yield _INTERNATIONAL


def _told(name: str, codes: tuple[str, ...], held: Mapping[str, _Rows]) -> str:
    """How many rows the lists have of a register; empty for none."""
    there = {code: held[code] for code in codes if code in held}
    if not there:
        return ""
    if len(codes) > 2:
        name += f" ({', '.join(there)})"
    if not all(rows.counted for rows in there.values()):
        return name
    count, own = sum(rows.count for rows in there.values()), sum(rows.own_form for rows in there.values())
    form = "" if not own else ", in the office's own form" if own == count else f", {own:,} in the office's own form"
    anywhere = ", wherever they hold" if name == _INTERNATIONAL[0] else ""  # the offices are counted, not designations
    return f"{name}: {plural(count, 'row')}{form}{anywhere}"


def _lacking(name: str, codes: tuple[str, ...], held: Mapping[str, _Rows]) -> str:
    """What the lists lack of a register; empty where they have rows of each of its offices."""
    absent = [code for code in codes if code not in held]
    if len(codes) <= 2:
        return name if len(absent) == len(codes) else ""
    return f"{name} ({', '.join(absent)})" if absent else ""


def unsearched_markets(report: Report) -> tuple[str, ...]:
    """Markets of the brief of whose own office the lists have no row.

    The marks of a joint office do not stand for a country's own register, except where it has no other.
    """
    return tuple(one.market for one in market_cover(report) if not one.own)


def partly_searched(report: Report) -> tuple[str, ...]:
    """Such markets in which the lists' marks of a joint office have effect."""
    return tuple(one.market for one in market_cover(report) if not one.own and one.joint)


def never_checked(report: Report) -> tuple[NotChecked, ...]:
    """The checks that were made for none of the names, each once."""
    every = [set(entry.not_checked) for entry in report.names]
    first = report.names[0].not_checked if report.names else ()
    return tuple(item for item in first if all(item in one for one in every))


def not_checked_words(item: NotChecked) -> str:
    """A check that was not made, as Markdown: the check, and why."""
    return cell(f"{item.check.replace('_', ' ')}: {item.because}")
