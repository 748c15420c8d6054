"""The close marks of a report as CSV: one row a name and mark, for a spreadsheet; marks of the same words are counted
in the row of the one of most concern.

A name without close marks has one row, so that no name is lost.
"""

from __future__ import annotations

from ..outcome import NotChecked
from ..plain_text import csv_line, in_one_sentence
from ..policy import Level
from .findings import findings, mark_level, matters, worst_title
from .model import CHECKS, CloseMark, NameEntry, Report
from .sensitivity import standings

__all__ = ["COLUMNS", "to_csv"]

COLUMNS = (
    "name",
    "place",
    "worst_finding",
    *CHECKS,
    "mark",
    "mark_level",
    "knockout",
    "overall",
    "appearance",
    "sound",
    "meaning",
    "goods_relatedness",
    "number",
    "office",
    "owner",
    "classes",
    "status",
    "filed",
    "registered",
    "priority",
    "expires",
    "territories",
    "in_markets",
    "source",
    "line",
    "marks_of_these_words",
    "reasons",
)


def to_csv(report: Report) -> str:
    """The report's names, their findings and their close marks as CSV, names in the order of places."""
    lines = [csv_line(COLUMNS)]
    entries = {entry.name: entry for entry in report.names}
    for standing in standings(report):
        entry = entries[standing.name]
        head = [
            standing.name,
            str(standing.place),
            worst_title(entry),
            *(found.words for found in findings(entry)),
        ]
        for found in matters(entry) or (None,):
            lines.append(csv_line(head + _mark(found, entry)))
    return "".join(lines)


def _mark(found: CloseMark | None, entry: NameEntry) -> list[str]:
    if found is None:
        shown = Level.NOT_CHECKED if isinstance(entry.marks, NotChecked) else Level.NOTHING
        return ["", shown.words, *([""] * (len(COLUMNS) - COLUMNS.index("knockout")))]
    mark = found.mark
    goods = "not checked" if isinstance(found.goods, NotChecked) else f"{found.goods.score:.4f}"
    scores = [
        "not checked" if isinstance(value, NotChecked) else f"{value:.4f}"
        for value in (found.overall, found.appearance, found.sound, found.meaning)
    ]
    return [
        mark.text,
        mark_level(found).words,
        "yes" if found.knockout else "no",
        *scores,
        goods,
        mark.number,
        mark.office,
        mark.owner,
        " ".join(map(str, mark.classes)),
        mark.stated_status or "not stated",
        mark.filed,
        mark.registered,
        mark.priority,
        mark.expires,
        " ".join(mark.territories),
        {True: "yes", False: "no", None: "not known"}[found.bites],
        mark.source,
        str(mark.line or ""),
        str(found.marks),
        in_one_sentence(found.reasons),
    ]
