"""No result hangs on how a sentence is worded: with every reason worded otherwise, levels, order, marks and questions
stay as they are."""

from __future__ import annotations

import re
from dataclasses import replace

from namescreen.outcome import NotChecked
from namescreen.report import Report
from namescreen.report.findings import findings, matters
from namescreen.report.mark_choice import marks_shown
from namescreen.report.mark_tables import mark_cells
from namescreen.report.model import NameEntry
from namescreen.report.questions import asked_about, questions
from namescreen.report.sensitivity import standings

OTHERWISE = "Otherwise worded"


def reworded(entry: NameEntry) -> NameEntry:
    marks = entry.marks
    if not isinstance(marks, NotChecked):
        marks = tuple(replace(one, reasons=tuple(OTHERWISE for _ in one.reasons)) for one in marks)
    own = entry.distinctiveness
    if not isinstance(own, NotChecked):
        own = replace(own, reasons=tuple(OTHERWISE for _ in own.reasons))
    else:
        own = replace(own, because=OTHERWISE)
    addresses = entry.addresses
    if not isinstance(addresses, NotChecked):
        addresses = replace(addresses, reasons=tuple(OTHERWISE for _ in addresses.reasons))
    return replace(entry, marks=marks, distinctiveness=own, addresses=addresses)


def without_quotes(text: str) -> str:
    """A question without what it quotes of the reasons."""
    return re.sub(r" \([^()]*(?:\([^()]*\)[^()]*)*\)", "", text)


def test_results_do_not_hang_on_wording(report: Report) -> None:
    other = replace(report, names=tuple(map(reworded, report.names)))
    assert standings(other) == standings(report)
    for entry, again in zip(report.names, other.names, strict=True):
        assert [(one.level, one.label, one.bars) for one in findings(again)] == [
            (one.level, one.label, one.bars) for one in findings(entry)
        ]
        texts = [[found.mark.text for found in matters(one)] for one in (entry, again)]
        assert texts[0] == texts[1]
        shown = [[found.mark.text for found in marks_shown(one, asked_about(one, report))] for one in (entry, again)]
        assert shown[0] == shown[1]
        asked = [[without_quotes(one) for one in questions(each, report)] for each in (entry, again)]
        assert asked[0] == asked[1]
        told = [[mark_cells(found)[1].count(";") for found in matters(one)] for one in (entry, again)]
        assert told[0] == told[1]
