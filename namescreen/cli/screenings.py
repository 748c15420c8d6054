"""How screenings are shown: a block a name and a ranking to read, rows for CSV, objects for JSON Lines."""

from __future__ import annotations

import sys
from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING

from namescreen.outcome import NotChecked
from namescreen.report.text import cell, number, visible

from .output import Column, Format, Row, print_disclaimer, say_below, show

if TYPE_CHECKING:
    from namescreen.screening import CloseMark, Screening

__all__ = ["ranked", "show_ranking", "show_screenings"]


def _alarm(row: Row) -> str:
    return "bold red" if row.get("knockout") or row.get("severity") == 3 else ""


MARKS = (
    Column("mark", "mark", style=_alarm),
    Column("overall", "overall", right=True, style=_alarm),
    Column("appearance", "look", right=True),
    Column("sound", "sound", right=True),
    Column("meaning", "meaning", right=True),
    Column("goods", "goods", right=True),
    Column("classes", "class", shrink=False),
    Column("remark", "", style=_alarm),
)
RANKING = (
    Column("name", "name", shrink=False),
    Column("found", "mark of most concern", style=_alarm),
    Column("overall", "overall", right=True),
    Column("goods", "goods", right=True),
    Column("distinctiveness", "distinctive", shrink=False),
    Column("reading", "reads badly"),
)
CSV = tuple(
    Column(key, key)
    for key in (
        "name", "mark", "overall", "appearance", "sound", "meaning", "goods_relatedness", "knockout",
        "number", "office", "classes", "goods", "status", "owner", "source", "line", "reasons",
        "distinctiveness", "distinctiveness_score", "worst_reading", "not_checked",
    )
)  # fmt: skip


def show_screenings(found: Iterable[Screening], form: Format) -> list[Screening]:
    """Write screenings as they come, then, for a reader, all of them ranked; gives them back."""
    done: list[Screening] = []

    def passing() -> Iterator[Screening]:
        for one in found:
            done.append(one)
            yield one

    if form is Format.jsonl:
        show((one.to_json() for one in passing()), (), form)
    elif form is Format.csv:
        show((row for one in passing() for row in _csv_rows(one)), CSV, form)
    else:
        for one in passing():
            _show_one(one, form)
        if len(done) > 1:
            show_ranking(done, form)
    print_disclaimer(form)
    return done


def show_ranking(found: Iterable[Screening], form: Format) -> None:
    """All names in one table, those with least against them first."""
    _head("At a glance, least against it first", form)
    show([_ranking_row(one) for one in ranked(found)], RANKING, form)


def ranked(found: Iterable[Screening]) -> list[Screening]:
    """Names with least against them first: by the mark of most concern, then by the worst reading."""
    return sorted(found, key=lambda one: (one.concern, _severity(one)))


def _show_one(one: Screening, form: Format) -> None:
    _head(one.name, form)
    if isinstance(one.close_marks, NotChecked):
        _say(str(one.close_marks), form)
    elif not one.close_marks:
        _say("no mark in the lists shares anything with it", form)
    else:
        show([_mark_row(mark) for mark in one.close_marks], MARKS, form)
        if form is Format.markdown:
            sys.stdout.write("\n")
        closest = one.close_marks[0]
        for reason in closest.closeness.reasons:
            _say(f"{closest.mark.text}: {reason}", form)
    if not isinstance(one.distinctiveness, NotChecked):
        reasons = "; ".join(one.distinctiveness.reasons)
        _say(f"distinctive: {_distinctive(one)}" + (f"; {reasons}" if reasons else ""), form)
    if not isinstance(one.readings, NotChecked):
        bad = [reading for reading in one.readings if reading.severity > 0]
        for reading in bad[:3]:
            _say(f"reads as {reading}", form)
        if not bad:
            languages = ", ".join(coverage.language for coverage in one.coverage)
            _say(f"no unlucky reading found in {languages}", form)
    if not isinstance(one.addresses, NotChecked):
        for reason in one.addresses.reasons:
            _say(f"addresses: {reason}", form)
    for missing in one.not_checked:
        if missing != one.close_marks:
            _say(str(missing), form)


def _head(text: str, form: Format) -> None:
    sys.stdout.write(f"\n## {cell(text)}\n\n" if form is Format.markdown else f"\n{visible(text)}\n")


def _say(text: str, form: Format) -> None:
    if form is Format.markdown:
        sys.stdout.write(f"- {cell(text)}\n")
    else:
        say_below(text)


def _mark_row(close: CloseMark) -> Row:
    related = close.goods_relatedness
    status = close.mark.status
    return {
        "mark": close.mark.text,
        "overall": close.closeness.overall,
        "appearance": close.closeness.appearance,
        "sound": close.closeness.sound,
        "meaning": _or_unknown(close.meaning),
        "goods": _or_unknown(related if isinstance(related, NotChecked) else related.score),
        "classes": ", ".join(map(str, close.mark.classes)),
        "remark": "knockout" if close.knockout else status if status == "dead" else "",
        "knockout": close.knockout,
    }


def _or_unknown(score: float | NotChecked) -> float | str:
    return "?" if isinstance(score, NotChecked) else score


def _ranking_row(one: Screening) -> Row:
    row: dict[str, object] = {"name": one.name, "distinctiveness": _category(one), "reading": _worst(one)}
    if isinstance(one.close_marks, NotChecked):
        return {**row, "found": "not checked"}
    first = max(one.close_marks, key=lambda mark: mark.concern, default=None)
    if first is None:
        return {**row, "found": "none"}
    about = _mark_row(first)
    return {**about, **row, "found": ", ".join(filter(None, (first.mark.text, str(about["remark"]))))}


def _distinctive(one: Screening) -> str:
    found = one.distinctiveness
    return "not checked" if isinstance(found, NotChecked) else f"{found.category} {number(found.score)}"


def _category(one: Screening) -> str:
    return "not checked" if isinstance(one.distinctiveness, NotChecked) else one.distinctiveness.category


def _severity(one: Screening) -> int:
    return 0 if isinstance(one.readings, NotChecked) else max((r.severity for r in one.readings), default=0)


def _worst(one: Screening) -> str:
    if isinstance(one.readings, NotChecked):
        return "not checked"
    bad = [reading for reading in one.readings if reading.severity > 1]
    return f"{bad[0].language}: {bad[0].word}" if bad else ""


def _csv_rows(one: Screening) -> Iterator[Row]:
    """A row for each close mark; a name without any has one row, so that none is lost."""
    about = {
        "name": one.name,
        "distinctiveness": "" if isinstance(one.distinctiveness, NotChecked) else one.distinctiveness.category,
        "distinctiveness_score": "" if isinstance(one.distinctiveness, NotChecked) else one.distinctiveness.score,
        "worst_reading": _worst(one),
        "not_checked": [str(reason) for reason in one.not_checked],
    }
    rows = [{**mark, **about} for mark in one.to_json()["close_marks"]]
    for row in rows:  # a score that could not be had leaves its cell empty; the reason stands in JSON Lines
        row.update({key: "" for key, value in row.items() if isinstance(value, dict)})
    yield from rows or [about]
