"""The report as CommonMark with tables: an adviser reads its first page in five minutes, and finds the
evidence behind.

Everything that a brief, a register or a shop wrote passes through `plain_text.cell`; there is no raw HTML.
"""

from __future__ import annotations

import os
from collections.abc import Iterable

from ..outcome import DISCLAIMER
from ..plain_text import cell, number, plural, shorten, some
from ..policy import OWN_CHECK
from .comparison import LEAST, Changes
from .figure import alternative
from .findings import finding_of
from .first_page import first_page
from .layout import Part, Table, laid_out
from .model import CHECKS, NameEntry, Report
from .pages import name_pages
from .record import costs_worksheet, law_page, record, terms
from .sensitivity import Standing, moves, standings, weighed

__all__ = ["to_markdown"]

_MOST_CHANGES = 12  # a name; the rest are counted


def to_markdown(
    report: Report, *, figure: str = "", changes: Changes | None = None, full: bool = False, as_tables: bool = False
) -> str:
    """The report as Markdown. `figure` is the picture's path from the report, empty when none was written; `full` asks
    for the pages of names that fall too; `as_tables` keeps tables that are too wide to be read as they stand."""
    parts: list[Part] = [
        *first_page(report, changes),
        *(_since(changes) if changes else ()),
        *name_pages(report, full=full),
        *_comparison(report, figure),
        *record(report),
        *costs_worksheet(report),
        *law_page(report),
        *terms(),
        f"**{DISCLAIMER}**",
    ]
    return laid_out(parts, as_tables=as_tables)


def _picture(report: Report, figure: str) -> str:
    """The picture of the names against the checks, or that there is none."""
    if not figure:
        return "The picture of the names against the checks is left out, as the report was not written to a file."
    return f"![{cell(alternative(report))}; the table at a glance says the same in words]({_destination(figure)})"


def _destination(path: str) -> str:
    """A relative path as a link's destination: percent signs for what would end it (RFC 3986)."""
    return "".join(c if c.isalnum() or c in "-._~/" else "".join(f"%{b:02X}" for b in os.fsencode(c)) for c in path)


def _since(changes: Changes) -> Iterable[Part]:
    yield f"## Changes since {cell(changes.since)}"
    if not changes.found:
        yield f"None. The earlier report was made with namescreen {cell(changes.version)}."
        return
    yield (
        f"Against the report of {cell(changes.since)}, made with namescreen {cell(changes.version)}. A "
        f"score is told as changed from a difference of {LEAST}, a mark if it is at least *minor* before or now. What "
        "changed about the lists and the program comes first, then the names, those that changed most first."
    )
    by_about: dict[str, list[tuple[str, str, str]]] = {}
    for change in changes.found:
        by_about.setdefault(change.about, []).append((change.about, change.kind, change.words))
    rows = []
    for about, told in by_about.items():
        rows += told[:_MOST_CHANGES]
        if len(told) > _MOST_CHANGES:
            rows.append((about, "more", f"{plural(len(told) - _MOST_CHANGES, 'further change')} not shown here"))
    yield Table(("About", "Kind", "Change"), tuple((shorten(a, 60), kind, words) for a, kind, words in rows))


def _comparison(report: Report, figure: str) -> Iterable[Part]:
    yield "## Side by side, for the decision"
    yield _picture(report, figure)
    if len(report.names) < 2:
        return
    checks = weighed(report)
    weights = some(f"{CHECKS[check].lower()} {getattr(report.weights, check):g}" for check in checks)
    how = "all checks weighing the same" if _equal(report) else f"by the maker's weights: {weights}"
    dropped = [CHECKS[check].lower() for check in CHECKS if check not in checks]
    without = f" {some(dropped).capitalize()} {'does' if len(dropped) == 1 else 'do'} not enter." if dropped else ""
    yield (
        "Each value runs from 0 to 1, 1 = nothing found against the name. The total is their mean, "
        f"{how}.{without} Names are grouped by their worst finding, and no total lifts a name out of its group. "
        "Inside a group names that could not be judged for the goods stand last; then the number of markets where the "
        "worst finding stands decides, then the next worst findings; of names alike in these, one that may be refused "
        "for what it is stands behind; then the total. Where a check was not made the total is a span, "
        "and its lower end counts."
    )
    if not checks:
        return
    entries = {entry.name: entry for entry in report.names}
    rows = []
    at = [list(CHECKS).index(check) for check in checks]
    for row in standings(report):
        low, high = number(row.low), number(row.high)
        rows.append(
            (
                shorten(row.name, 60),
                f"{row.place}",
                _barred(row, entries[row.name]) or (low if low == high else f"{low} to {high}"),
                *("not checked" if row.values[i] is None else number(row.values[i] or 0.0) for i in at),
            )
        )
    yield Table(("Name", "Place", "Total", *(CHECKS[check] for check in checks)), tuple(rows))
    told = [f"{move.change} {plural(move.pairs_changed, 'pair')}" for move in moves(report) if move.pairs_changed]
    if told:
        yield f"Pairs of names that change order when one weight is halved or doubled: {some(told)}."
    else:
        yield "No weight changes the order when it is halved or doubled."


def _barred(row: Standing, entry: NameEntry) -> str:
    """What stands in place of a name's total, where it would say too much; empty for other names."""
    own = finding_of(entry, OWN_CHECK)
    return "knockout" if row.knockout else own.title if own.bars else ""


def _equal(report: Report) -> bool:
    """Whether every check that is weighed weighs the same."""
    return len({getattr(report.weights, check) for check in weighed(report)}) <= 1
