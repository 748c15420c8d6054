"""What changed since an earlier report, change by change."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from namescreen.marks.mark import Mark
from namescreen.outcome import NotChecked
from namescreen.report import Report, changes
from namescreen.report.fingerprints import MOST, fingerprints
from namescreen.report.model import Address, CloseMark, NameEntry, Reading

Edit = Callable[[NameEntry], NameEntry]


def told(old: Report, new: Report) -> list[tuple[str, str, str]]:
    return [(one.about, one.kind, one.words) for one in changes(old, new).found]


def with_entry(report: Report, name: str, edit: Edit) -> Report:
    return replace(report, names=tuple(edit(one) if one.name == name else one for one in report.names))


def marks_of(entry: NameEntry) -> tuple[CloseMark, ...]:
    assert not isinstance(entry.marks, NotChecked)
    return entry.marks


def test_equal_reports_have_no_changes(report: Report, hostile: Report) -> None:
    assert told(report, report) == []
    assert told(hostile, hostile) == []


def test_names_added_and_gone(report: Report) -> None:
    fewer = replace(report, names=report.names[1:])
    assert told(fewer, report) == [("Herbwell", "name added", "was not in the earlier report")]
    assert told(report, fewer) == [("Herbwell", "name gone", "was in the earlier report")]


def test_what_came_into_a_list_and_what_went(report: Report) -> None:
    def held(*texts: str, rows: int = 0) -> Report:
        marks = fingerprints([Mark(text, owner="A") for text in texts])
        listed = replace(report.lists[0], rows_read=rows or len(texts), sha256="".join(texts), marks=marks)
        return replace(report, lists=(listed,))

    start = held("Alpha", "Beta", "Gamma")
    assert told(start, held("Alpha", "Beta", "Gamma", "Delta")) == [
        ("marks.csv", "list grew", "1 mark came; 3 rows before, 4 now")
    ]
    assert told(start, held("Alpha")) == [("marks.csv", "list shrank", "2 marks went; 3 rows before, 1 now")]
    # Two came and one went: the rows grew, but it is not true that the list only grew.
    assert told(start, held("Alpha", "Beta", "Delta", "Epsilon")) == [
        ("marks.csv", "list changed", "2 marks came and 1 mark went; 3 rows before, 4 now")
    ]
    assert told(start, held("gamma", "ALPHA", "beta"))[0][2] == "the same marks, told otherwise; 3 rows before, 3 now"
    assert fingerprints([Mark("a")] * (MOST + 1)) == ""


def test_a_mark_that_left_the_list_is_not_called_crowded_out(report: Report) -> None:
    fewer = with_entry(report, "Thymekeeper", lambda entry: replace(entry, marks=marks_of(entry)[:1]))
    tyme = marks_of(next(one for one in report.names if one.name == "Thymekeeper"))[1].mark

    def listing(one: Report, *marks: Mark) -> Report:
        return replace(one, lists=(replace(one.lists[0], marks=fingerprints([Mark("Other", owner="O"), *marks])),))

    def words(old: Report, new: Report) -> str:
        return next(text for _, kind, text in told(old, new) if kind in ("mark gone", "new close mark"))

    assert words(listing(report, tyme), listing(fewer)).endswith("is no longer in the list")
    assert words(listing(report, tyme), listing(fewer, tyme)).endswith(
        "still in the list, but no longer among the closest"
    )
    assert words(listing(fewer), listing(report, tyme)).endswith("minor, new in the list")
    assert words(listing(fewer, tyme), listing(report, tyme)).endswith("minor, in the list before too")


def test_names_that_changed_most_come_first_and_small_things_are_left_out(report: Report) -> None:
    def minor(entry: NameEntry) -> NameEntry:
        if entry.name != "Rootlark" or isinstance(entry.marks, NotChecked):
            return entry
        return replace(entry, marks=tuple(replace(mark, concern=0.4, knockout=False) for mark in entry.marks))

    def edited(entry: NameEntry) -> NameEntry:
        if isinstance(entry.marks, NotChecked) or not entry.marks:
            return entry
        first, *rest = entry.marks
        if entry.name == "Rootlark":
            first = replace(first, concern=1.0, knockout=True)
        elif entry.name == "Thymekeeper":
            first = replace(first, sound=first.sound - 0.1)
        far = replace(first, mark=Mark("Quite Other"), concern=0.2)  # new, and below minor
        return replace(entry, marks=(first, *rest, far))

    report = replace(report, names=tuple(minor(one) for one in report.names))
    found = changes(report, replace(report, names=tuple(edited(one) for one in report.names))).found
    assert found[0].about == "Rootlark"
    assert found[0].kind == "level changed"
    sizes = [
        max(one.size for one in found if one.about == about) for about in dict.fromkeys(one.about for one in found)
    ]
    assert sizes == sorted(sizes, reverse=True)
    assert not [one for one in found if "Quite Other" in one.words]


def test_lists_without_their_marks_came_and_went(report: Report) -> None:
    one = report.lists[0]
    grown = replace(report, lists=(replace(one, rows_read=320, sha256="cd" * 32, dated="2026-12-01"),))
    words = "312 rows before, 320 now; dated 2026-11-01 before, 2026-12-01 now"
    assert told(report, grown) == [("marks.csv", "list changed", words)]
    assert told(report, replace(report, lists=(replace(one, sha256="ef" * 32),)))[0][1] == "list changed"
    assert told(replace(report, lists=()), report)[0][1] == "list added"
    assert told(report, replace(report, lists=()))[0][1] == "list not searched"
    moved = replace(report, lists=(replace(one, name="elsewhere/marks.csv"),))
    assert told(report, moved) == []


def test_new_and_gone_marks(report: Report) -> None:
    fewer = with_entry(report, "Thymekeeper", lambda entry: replace(entry, marks=marks_of(entry)[:1]))
    assert told(fewer, report) == [("Thymekeeper", "new close mark", "Tyme (no. 1120099): closeness 0.52, minor")]
    assert told(report, fewer) == [("Thymekeeper", "mark gone", "Tyme (no. 1120099) is no longer among the closest")]


@pytest.mark.parametrize(("by", "counts"), [(0.019, False), (0.02, True), (-0.02, True), (-0.019, False)])
def test_scores_count_from_two_hundredths(report: Report, by: float, counts: bool) -> None:
    def edit(entry: NameEntry) -> NameEntry:
        first, *rest = marks_of(entry)
        return replace(entry, marks=(replace(first, sound=first.sound + by), *rest))

    found = told(report, with_entry(report, "Thymekeeper", edit))
    assert [kind for _, kind, _ in found] == (["changed mark"] if counts else [])


def test_what_changed_about_a_mark(report: Report) -> None:
    def edit(entry: NameEntry) -> NameEntry:
        one = marks_of(entry)[0]
        mark = replace(one.mark, status="live", owner="New Owner Ltd")
        return replace(entry, marks=(replace(one, mark=mark, concern=0.81, goods=NotChecked("goods", "x")),))

    found = told(report, with_entry(report, "Mistel", edit))
    assert (
        "Mistel",
        "changed mark",
        "MISTLE (no. 0440021): goods no longer compared, status dead to live and owner now New Owner Ltd",
    ) in found
    assert ("Mistel", "level changed", "Existing marks: minor before, serious now (MISTLE (0.90))") in found


def test_a_mark_without_a_number_is_known_by_words_and_owner(report: Report) -> None:
    def edit(entry: NameEntry) -> NameEntry:
        one = marks_of(entry)[0]
        return replace(entry, marks=(replace(one, mark=replace(one.mark, text="ROOTMARK", line=99)),))

    assert told(report, with_entry(report, "Rootlark", edit)) == []


TYME = Mark("TYME", number="77", office="NL", classes=(35,), status="live", owner="Tyme Shops")


def with_more(report: Report, *others: Mark, marks: int = 0, first: Mark | None = None) -> Report:
    """Tyme, the second close mark of Thymekeeper, with further marks of its words."""

    def edit(entry: NameEntry) -> NameEntry:
        one, two = marks_of(entry)
        count = marks or len(others) + 1
        return replace(entry, marks=(one, replace(two, mark=first or two.mark, others=others, marks=count)))

    return with_entry(report, "Thymekeeper", edit)


def test_marks_of_the_same_words_come_change_and_go(report: Report) -> None:
    more = with_more(report, TYME)
    assert told(report, more) == [
        ("Thymekeeper", "changed mark", "Tyme (no. 1120099): marks of these words 1 to 2"),
        ("Thymekeeper", "new mark of the same words", "TYME (no. 77), live, owner Tyme Shops"),
    ]
    assert told(more, report) == [
        ("Thymekeeper", "changed mark", "Tyme (no. 1120099): marks of these words 2 to 1"),
        ("Thymekeeper", "mark of the same words gone", "TYME (no. 77)"),
    ]
    ended = with_more(report, replace(TYME, status="dead"))
    assert told(more, ended) == [("Thymekeeper", "changed mark", "TYME (no. 77): status live to dead")]


def test_another_mark_of_the_same_words_may_be_the_one_shown(report: Report) -> None:
    before = with_more(report, TYME)
    shown = marks_of(next(one for one in report.names if one.name == "Thymekeeper"))[1].mark
    assert told(before, with_more(report, shown, first=TYME)) == []


def test_a_mark_that_may_have_been_there_unlisted_is_not_called_new(report: Report) -> None:
    assert told(with_more(report, marks=60), with_more(report, TYME, marks=60)) == []
    assert told(with_more(report, TYME, marks=60), with_more(report, marks=60)) == []


def test_a_report_of_single_marks_is_compared_with_one_that_puts_them_together(report: Report) -> None:
    def single(entry: NameEntry) -> NameEntry:
        one, two = marks_of(entry)
        return replace(entry, marks=(one, two, replace(two, mark=TYME, concern=two.concern / 2)))

    assert told(with_entry(report, "Thymekeeper", single), with_more(report, TYME)) == []


def test_readings_and_addresses(report: Report) -> None:
    reading = Reading("fr", "verd", "", "clumsy", 1, "inside")
    found = told(report, with_entry(report, "Verdanza", lambda one: replace(one, readings=(reading,))))
    assert ("Verdanza", "new reading", "fr: verd, clumsy") in found
    plain = replace(reading, severity=0)
    assert told(report, with_entry(report, "Verdanza", lambda one: replace(one, readings=(plain,)))) == []

    def taken(entry: NameEntry) -> NameEntry:
        assert not isinstance(entry.addresses, NotChecked)
        items = (Address("domain", "verdanza.example", "joined", "registered since 2026", True),)
        return replace(entry, addresses=replace(entry.addresses, items=items))

    found = told(report, with_entry(report, "Verdanza", taken))
    assert found == [
        (
            "Verdanza",
            "level changed",
            "Domain and handle: not looked up before, look closer now (fit 0.70; 1 of 1 taken)",
        )
    ]


def test_other_grounds_are_told_first(report: Report) -> None:
    new = replace(report, version="0.2.0", settings=(("marks", "live"),), classes=(21, 31))
    assert told(report, new) == [
        ("the report", "basis changed", "program version: 0.1.0 before, 0.2.0 now"),
        ("the report", "basis changed", "classes: 21 before, 21 and 31 now"),
        ("the report", "basis changed", "setting closest marks kept: 50 before, none now"),
        ("the report", "basis changed", "setting marks: live and dead before, live now"),
    ]
