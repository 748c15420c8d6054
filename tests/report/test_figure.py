"""The picture: sound XML that says everything twice, by shape and by words."""

from __future__ import annotations

import csv
import io
import re
from dataclasses import replace
from xml.etree import ElementTree

import pytest

from namescreen.outcome import DISCLAIMER
from namescreen.plain_text import visible
from namescreen.policy import Level
from namescreen.report import Report, to_csv, to_svg
from namescreen.report.figure import MOST_ROWS, _shape, description
from namescreen.report.findings import findings, worst_title

SVG = "{http://www.w3.org/2000/svg}"


@pytest.fixture(params=["report", "hostile"])
def either(request: pytest.FixtureRequest) -> Report:
    found: Report = request.getfixturevalue(request.param)
    return found


def words(picture: str) -> list[str]:
    return [element.text or "" for element in ElementTree.fromstring(picture).iter(f"{SVG}text")]


def test_title_and_description_come_first(either: Report) -> None:
    root = ElementTree.fromstring(to_svg(either))
    assert [child.tag for child in root][:2] == [f"{SVG}title", f"{SVG}desc"]
    assert root.attrib["role"] == "img"
    assert root[1].text == description(either)


def test_every_finding_has_its_words(report: Report) -> None:
    told = words(to_svg(report))
    for entry in report.names:
        assert entry.name in told
        assert worst_title(entry) in told
        for one in findings(entry):
            assert one.title in told
    assert "not checked, not looked up" in told  # the legend
    assert "knockout, likely refused, serious" in told  # one shape
    assert "minor, borderline" in told
    for level in list(Level)[1:]:
        in_legend = level not in (Level.SERIOUS, Level.MINOR)
        beside = sum(one.title == level.words for entry in report.names for one in findings(entry))
        of_worst = sum(worst_title(entry) == level.words for entry in report.names)
        assert told.count(level.words) == in_legend + beside + of_worst
    assert any(text.startswith(DISCLAIMER) for text in told)


def test_an_address_that_nobody_was_asked_about_never_reads_as_nothing_found(report: Report) -> None:
    one = replace(report, names=report.names[:1])
    (fit,) = (found for found in findings(one.names[0]) if found.check == "addresses")
    assert (fit.title, fit.level) == ("not looked up", Level.NOTHING)
    assert words(to_svg(one)).count("nothing found") == 2  # the readings, and the legend
    rows = list(csv.DictReader(io.StringIO(to_csv(one), newline="")))
    assert {row["addresses"] for row in rows} == {"not looked up: fit 0.82"}


def test_levels_differ_in_shape_not_only_in_colour() -> None:
    def without_colour(level: Level) -> str:
        return re.sub(r'(fill|stroke)="#\w+"', "", _shape(level, 10, 10))

    assert len({without_colour(level) for level in Level}) == len(Level)


def test_nothing_is_loaded_or_run(either: Report) -> None:
    picture = to_svg(either)
    assert not re.search(r"<(script|image|a|use|foreignObject|animate|set)\b", picture)
    assert not re.search(r"\s(on\w+|href|xlink:href)=", re.sub(r">[^<]*<", "><", picture))


def test_text_keeps_within_its_column(hostile: Report) -> None:
    """Widths by the estimate of the drawing; the browser test measures the real ones."""
    wide = replace(hostile, names=tuple(replace(entry, name="W" * 90) for entry in hostile.names[:1]))
    assert all(len(text) < 40 for text in words(to_svg(wide))[:-1])


def test_long_shortlists_say_what_is_left_out(report: Report) -> None:
    names = tuple(replace(report.names[0], name=f"Name {at}") for at in range(MOST_ROWS + 3))
    picture = to_svg(replace(report, names=names))
    assert sum(text.startswith("Name ") for text in words(picture)) == MOST_ROWS
    assert "3 more names stand in the table" in picture


def test_names_are_shown_as_they_are(report: Report) -> None:
    assert visible("Sprig & Sip") in words(to_svg(report))
