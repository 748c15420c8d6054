"""Which offices refuse a name over earlier marks, and which leave it to their owners: Trade Marks Act 1996 (IE),
sections 10 and 42, as read; the others from memory and from public accounts of their law."""

from __future__ import annotations

from dataclasses import replace

import pytest

from namescreen.goods.grounds import law_on
from namescreen.marks import Mark
from namescreen.report import Report
from namescreen.report.coverage import market_cover
from namescreen.report.law import objection, practices
from namescreen.report.questions import questions
from namescreen.report.uk_marks import from_eu_marks
from tests.report.test_worksheets import close, entry


@pytest.mark.parametrize(
    ("markets", "asked"),
    [
        (["IE"], "would an examiner refuse Brindle because of it"),
        (["FI"], "would an examiner refuse Brindle because of it"),
        (["CY"], "would an examiner refuse Brindle because of it"),
        (["MT"], "would its owner have good grounds to oppose Brindle"),
        (["EE"], "would its owner have good grounds to oppose Brindle"),
        (["IE", "EU", "DE"], "would an examiner refuse Brindle because of it (IE), or its owner have good grounds to "
         "oppose it (EU and DE)"),
    ],
)  # fmt: skip
def test_the_question_asks_who_would_object(markets: list[str], asked: str) -> None:
    assert objection("Brindle", markets) == asked


def test_a_state_that_refuses_has_a_row_beside_the_unions() -> None:
    rows = {one.office: one.earlier_marks for one in practices(["IE"])}
    assert "refuses a national mark" in rows["Ireland"]
    assert "an EU mark is not refused" in rows["European Union (EU marks)"]


@pytest.mark.parametrize(
    ("kind", "law"),
    [("descriptive", "TMA 1996 s. 8(1)(c) and 8(1)(b)"), ("vulgar", "TMA 1996 s. 8(3)(a)")],
)
def test_irelands_own_act_is_named(kind: str, law: str) -> None:
    assert law_on(kind, "IE") == law


def test_uk_marks_that_came_from_eu_marks_are_counted(report: Report) -> None:
    """Withdrawal agreement, article 54(1)(a): they stand in no list of EU marks by themselves."""
    marks = [
        Mark("A", territories=("EU",), registered="2019-05-01", status="live"),
        Mark("B", territories=("EU",), registered="2021-05-01", status="live"),
        Mark("C", territories=("EU",), registered="2019-05-01", status="dead"),
        Mark("D", territories=("DE",), registered="2019-05-01", status="live"),
    ]
    assert from_eu_marks(marks) == 1
    held = replace(report, markets=("GB", "DE"), lists=(replace(report.lists[0], uk_from_eu=1),))
    british, german = market_cover(held)
    assert any("came from EU marks registered before 2021, told with those: 1" in told for told in british.searched)
    assert not any("came from EU marks" in told for told in german.searched)


@pytest.mark.parametrize(("places", "cites"), [(("IE",), True), (("EU",), True), (("DE",), False)])
def test_of_a_knockout_it_is_told_where_the_office_itself_cites_it(
    report: Report, places: tuple[str, ...], cites: bool
) -> None:
    found = close("DUSKFAL", 0.96, knockout=True)
    found = replace(found, mark=replace(found.mark, territories=places), held=("IE",))
    (asked,) = questions(entry(found, name="Duskfall"), replace(report, markets=("IE", "DE")))
    assert ("In IE the office itself may cite it." in asked) is cites
