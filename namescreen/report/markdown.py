"""The report as CommonMark with tables: an adviser reads its first page in five minutes, and finds the
evidence behind.

Everything that a brief, a register or a shop wrote passes through `plain_text.cell`; there is no raw HTML.
"""

from __future__ import annotations

import os
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence

from ..outcome import DISCLAIMER, NotChecked
from ..plain_text import cell, number, plural, shorten, some, table, visible
from ..policy import Finding, Level
from .comparison import LEAST, Changes
from .coverage import unsearched_markets
from .figure import alternative
from .findings import MISSED, findings, holds_a_kept_sign, unread, worst_title, worst_words
from .model import CHECKS, KEPT, NameEntry, Report
from .pages import name_pages
from .questions import general_questions
from .record import costs_worksheet, law_page, next_steps, record, terms, title_of
from .sensitivity import Standing, moves, places, standings, weighed

__all__ = ["to_markdown"]

_MOST_NAMED = 4  # names told in one sentence; more are counted
_MOST_CHANGES = 12  # a name; the rest are counted


def to_markdown(report: Report, *, figure: str = "", changes: Changes | None = None) -> str:
    """The report as Markdown. `figure` is the picture's path from the report, empty when none was written."""
    parts = [
        *_head(report, changes),
        *_glance(report, figure),
        *_general(report),
        *(_since(changes) if changes else ()),
        *name_pages(report),
        *_comparison(report),
        *record(report),
        *costs_worksheet(report),
        *next_steps(report),
        *law_page(report),
        *terms(),
        f"**{DISCLAIMER}**",
    ]
    return "\n\n".join(part.rstrip("\n") for part in parts) + "\n"


def _head(report: Report, changes: Changes | None) -> Iterable[str]:
    yield f"# {cell(title_of(report))}"
    cut = visible(report.product) not in title_of(report)
    facts = [
        *([("Product", report.product)] if cut else []),
        ("Date", f"{report.date}, from {report.date_from}; made with namescreen {report.version}"),
        ("Goods", report.goods),
        ("Nice classes", ", ".join(map(str, report.classes))),
        ("Concept words", ", ".join(report.concepts)),
        ("Markets", ", ".join(report.markets)),
        ("Languages of the buyers", ", ".join(report.languages)),
    ]
    yield "\n".join(f"- {key}: {cell(value) or 'not stated'}" for key, value in facts)
    yield f"**{DISCLAIMER}**"
    yield (
        "It tells what an automatic comparison found in the lists named in the record below, and is no legal advice. "
        "Rights can exist without registration and reach beyond their goods; the law differs by country. This page is "
        "for the maker; what follows is the evidence for the adviser."
    )
    yield "## In short"
    yield "\n".join(f"- {line}" for line in (*_in_short(report), *(_changed(changes) if changes else ())))


def _in_short(report: Report) -> Iterable[str]:
    """What an adviser needs in the first minute."""
    order = standings(report)
    entries = {entry.name: entry for entry in report.names}
    rows = sum(item.rows_read for item in report.lists)
    searched = (
        f"against {plural(rows, 'row')} in {plural(len(report.lists), 'list')}"
        if report.lists
        else "against no list of marks"
    )
    yield f"{plural(len(report.names), 'name')} screened {searched}."
    out = [row.name for row in order if row.knockout]
    yield from _knocked_out([entries[name] for name in out])
    named = [name for name in entries if _names_the_goods(entries[name])]
    if named:
        yield f"{_few(named)} {'names' if len(named) == 1 else 'name'} the goods themselves, which offices refuse."
    kept = [name for name, entry in entries.items() if holds_a_kept_sign(entry)]
    if kept:
        verb = "holds" if len(kept) == 1 else "hold"
        where = _kept_where([entries[name] for name in kept])
        yield f"{_few(kept)} {verb} words that the law keeps for others{where}, or a claim that it forbids."
    told = {*out, *named, *kept}
    serious = [entries[row.name] for row in order if row.group >= Level.SERIOUS and row.name not in told]
    if serious:
        listed = "; ".join(f"{cell(shorten(entry.name, 40))} ({_serious(entry)})" for entry in serious)
        yield f"Serious {'as well' if told else 'findings'}: {listed}."
    looked = [row for row in order if not isinstance(entries[row.name].marks, NotChecked)]
    rest = [row.name for row in looked if row.group < Level.SERIOUS]
    barred = [name for name in rest if _distinctiveness_level(entries[name]) >= Level.LOOK]
    near = [name for name in rest if _mark_level(entries[name]) is Level.LOOK]
    if near:  # beside what a name is, too
        told_of = "; ".join(f"{_few([name])} ({cell(_finding(entries[name], 'marks').evidence)})" for name in near)
        yield f"Look closer at the marks near {told_of}."
    for name in barred:
        found = _finding(entries[name], "distinctiveness")
        yield f"{_few([name])}: no serious mark, but look closer at what the name is: {cell(found.evidence)}."
    unjudged = [name for name in rest if name not in barred and unread(entries[name].distinctiveness)]
    for name in unjudged:
        yield f"{_few([name])}: what it is for the goods could not be judged, so it may be refused for that: ask."
    rest = [name for name in rest if name not in (*barred, *near, *unjudged)]
    if rest and len(order) > 1:
        yield f"Nothing serious was found against {_few(rest, len(rest))}."
    if len(order) > 1:
        yield _first(report, order, entries)
    yield from _skipped(report)
    missing = unsearched_markets(report)
    if missing:
        yield f"No row of the lists is said to be of the trade mark office of {some(missing, 'or')}."


def _kept_where(entries: Sequence[NameEntry]) -> str:
    """In which markets the law keeps the words of some names, as an aside; "" where it does in all."""
    found = {
        entry.name: entry.distinctiveness.barred_in
        for entry in entries
        if not isinstance(entry.distinctiveness, NotChecked) and entry.distinctiveness.barred_in
    }
    told = some(f"{cell(shorten(name, 40))} in {some(where)}" for name, where in found.items())
    return f" ({told if len(entries) > 1 else told.partition(' in ')[2]})" if found else ""


def _knocked_out(entries: Sequence[NameEntry]) -> Iterable[str]:
    """The names that a knockout meets, those apart whose goods could not be compared."""
    for compared, goods in (
        (True, "for the same or closely related goods"),
        (False, "whose goods could not be compared"),
    ):
        names = [entry.name for entry in entries if _goods_compared(entry) is compared]
        if names:
            verb = "meets" if len(names) == 1 else "meet"
            yield f"{_few(names)} {verb} an identical or nearly identical mark {goods}."


def _finding(entry: NameEntry, check: str) -> Finding:
    """What one of the checks found of a name."""
    return next(found for found in findings(entry) if found.check == check)


def _serious(entry: NameEntry) -> str:
    """The serious findings of a name in a few words."""
    grave = [found for found in findings(entry) if found.level is Level.SERIOUS]
    return cell(some(f"{CHECKS[found.check].lower()}: {found.evidence}" for found in grave))


def _first(report: Report, order: Sequence[Standing], entries: Mapping[str, NameEntry]) -> str:
    """Which name stands first, or that none does: a serious finding is never passed over."""
    first = order[0]
    if first.group >= Level.SERIOUS:
        return "No name can be put first: something serious stands against each."
    if first.flaw:
        return "No name can be put first: each may be refused for what it is, or something serious stands against it."
    rest = [row for row in order if row.group == first.group and not row.flaw]
    entry = entries[first.name]
    told = f"{_few([first.name])} stands first. Its worst finding: {worst_words(entry)}.{_but(entry)}"
    if len(rest) > 1 and places(report)[first.name] != (1, 1):
        told += f" {_few([row.name for row in rest[1:]])} came as far; other weights would put another of them first."
    return told


def _but(entry: NameEntry) -> str:
    """What keeps a name that stands first from being told as clean, as a further sentence; "" where nothing does."""
    found = entry.distinctiveness
    if isinstance(found, NotChecked):
        return " But what it is for the goods was not checked."
    where = [word for word in entry.words if any(one.startswith(f'"{word}": geographic') for one in found.reasons)]
    told = some(f'"{cell(word)}"' for word in where)
    return f" But {told} names a place: others from there may use it, and it may mislead." if where else ""


def _distinctiveness_level(entry: NameEntry) -> Level:
    return _finding(entry, "distinctiveness").level


def _mark_level(entry: NameEntry) -> Level:
    return _finding(entry, "marks").level


def _names_the_goods(entry: NameEntry) -> bool:
    found = entry.distinctiveness
    return not isinstance(found, NotChecked) and found.category == "generic"


def _goods_compared(entry: NameEntry) -> bool:
    """Whether the goods of a knockout were compared; where they were not, they count as the same."""
    marks = () if isinstance(entry.marks, NotChecked) else entry.marks
    return any(found.knockout and not isinstance(found.goods, NotChecked) for found in marks)


def _changed(changes: Changes) -> Iterable[str]:
    """How much has changed, by kind."""
    kinds = Counter(change.kind for change in changes.found)
    told = some(f"{kind} ({count})" for kind, count in kinds.items())
    yield f"Since the report of {cell(changes.since)}: {told or 'no change'}."


def _few(names: Sequence[str], most: int = _MOST_NAMED) -> str:
    """Some names in words; many are counted."""
    if len(names) > most:
        return plural(len(names), "name")
    return some(cell(shorten(name, 40)) for name in names)


def _skipped(report: Report) -> Iterable[str]:
    """Which checks were not made, and for which names, told together where the names are the same."""
    lacking: dict[tuple[str, ...], list[str]] = {}
    for at, check in enumerate(CHECKS):
        names = tuple(entry.name for entry in report.names if findings(entry)[at].level is Level.NOT_CHECKED)
        if names:
            lacking.setdefault(names, []).append(CHECKS[check].lower())
    for names, checks in lacking.items():
        whom = "every name" if len(names) == len(report.names) else _few(names)
        yield f"Not checked for {whom}: {some(checks)}."


def _glance(report: Report, figure: str) -> Iterable[str]:
    yield "## Shortlist at a glance"
    yield (
        "Least against it first. *Nothing found*: the check was made, and nothing reached the line from which it is "
        f"worth a look; of pairs of marks that tribunals held too alike about {MISSED} stays below it. *Not checked*: "
        "it was not made. Numbers from 0 to 1: closeness to the mark (1 = identical), distinctiveness, and fit as an "
        "address by length and spelling (1 = best)."
    )
    entries = {entry.name: entry for entry in report.names}
    rows = []
    for row in standings(report):
        entry = entries[row.name]
        told = [found.words for found in findings(entry)]
        unjudged = isinstance(entry.distinctiveness, NotChecked) and unread(entry.distinctiveness)
        rows.append((shorten(entry.name, 60), worst_title(entry) + ("; not all checked" if unjudged else ""), *told))
    yield table(("Name", "Worst finding", *CHECKS.values()), rows)
    if figure:
        yield (f"![{cell(alternative(report))}; the table says the same in words]({_destination(figure)})")
    else:
        yield "The picture of this table is left out, because the report was not written to a file."


def _destination(path: str) -> str:
    """A relative path as a link's destination: percent signs for what would end it (RFC 3986)."""
    return "".join(c if c.isalnum() or c in "-._~/" else "".join(f"%{b:02X}" for b in os.fsencode(c)) for c in path)


def _since(changes: Changes) -> Iterable[str]:
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
    yield table(("About", "Kind", "Change"), [(shorten(a, 60), kind, words) for a, kind, words in rows])


def _comparison(report: Report) -> Iterable[str]:
    if len(report.names) < 2:
        return
    checks = weighed(report)
    yield "## Side by side, for the decision"
    weights = some(f"{CHECKS[check].lower()} {getattr(report.weights, check):g}" for check in checks)
    how = "all checks weighing the same" if _equal(report) else f"by the maker's weights: {weights}"
    dropped = [CHECKS[check].lower() for check in CHECKS if check not in checks]
    without = f" {some(dropped).capitalize()} {'does' if len(dropped) == 1 else 'do'} not enter." if dropped else ""
    yield (
        "Each value runs from 0 to 1, 1 = nothing found against the name. The total is their mean, "
        f"{how}.{without} Names are grouped by their worst finding, and no total lifts a name out of its group; inside "
        "a group those that may be refused for what they are stand last, then the total decides. Where a check was not "
        "made the total is a span, and the name stands by its lower end. *Places* are the best and worst that a name "
        "takes when one weight at a time is halved or doubled."
    )
    if not checks:
        return
    span, entries = places(report), {entry.name: entry for entry in report.names}
    rows = []
    at = [list(CHECKS).index(check) for check in checks]
    for row in standings(report):
        low, high = number(row.low), number(row.high)
        taken = span[row.name]
        rows.append(
            (
                shorten(row.name, 60),
                f"{row.place}",
                _barred(row, entries[row.name]) or (low if low == high else f"{low} to {high}"),
                *("not checked" if row.values[i] is None else number(row.values[i] or 0.0) for i in at),
                f"{taken[0]}" if taken[0] == taken[1] else f"{taken[0]} to {taken[1]}",
            )
        )
    yield table(("Name", "Place", "Total", *(CHECKS[check] for check in checks), "Places"), rows)
    told = [move for move in moves(report) if move.pairs_changed]
    if told:
        yield "What changes when one weight is halved or doubled; weights that change nothing are left out:"
        yield table(
            ("Weight", "First", "Second", "Third", "Pairs that change order"),
            [(move.change, *_three(move.first), f"{move.pairs_changed}") for move in told],
        )
    else:
        yield "No weight changes the order when it is halved or doubled."


def _barred(row: Standing, entry: NameEntry) -> str:
    """What stands in place of a name's total, where it would say too much; empty for other names."""
    return "knockout" if row.knockout else KEPT if holds_a_kept_sign(entry) else ""


def _equal(report: Report) -> bool:
    """Whether every check that is weighed weighs the same."""
    return len({getattr(report.weights, check) for check in weighed(report)}) <= 1


def _three(names: Sequence[str]) -> tuple[str, ...]:
    shown = [shorten(name, 40) for name in names[:3]]
    return (*shown, *[""] * (3 - len(shown)))


def _general(report: Report) -> Iterable[str]:
    yield "## Questions on the whole list"
    yield "\n".join(f"{at}. {cell(question)}" for at, question in enumerate(general_questions(report), 1))
