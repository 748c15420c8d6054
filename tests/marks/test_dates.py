from __future__ import annotations

import json
from pathlib import Path

import pytest

from namescreen.marks import read_marks
from namescreen.marks.dates import order_of, plain_date
from namescreen.marks.fields import DATES


@pytest.mark.parametrize(
    ("given", "date"),
    [
        ("2020-01-31", "2020-01-31"),
        ("20200131", "2020-01-31"),
        ("2020-01-31T10:00:00+01:00", "2020-01-31"),
        ("2020/01/31", "2020-01-31"),
        ("31.01.2020", "2020-01-31"),
        ("03.04.2020", "2020-04-03"),
        ("31/01/2020", "2020-01-31"),
        ("01/31/2020", "2020-01-31"),
        ("03/04/2020", ""),
        ("04/04/2020", "2020-04-04"),
        ("31 Jan 2020", "2020-01-31"),
        ("Jan 31, 2020", "2020-01-31"),
        ("31-January-2020", "2020-01-31"),
        ("2020-13-01", ""),
        ("soon", ""),
    ],
)
def test_dates_are_read_and_never_guessed(given: str, date: str) -> None:
    assert plain_date(given) == date


def test_the_order_of_a_column_settles_its_dates() -> None:
    assert order_of(["03/04/2020", "13/04/2020"]) == "day"
    assert order_of(["03/04/2020", "04/13/2020"]) == "month"
    assert order_of(["03/04/2020"]) == ""
    assert order_of(["13/04/2020", "04/13/2020"]) == ""
    assert plain_date("03/04/2020", "day") == "2020-04-03"
    assert plain_date("03/04/2020", "month") == "2020-03-04"
    assert plain_date("31/04/2020", "day") == ""


@pytest.mark.parametrize("given", ["9999-12-31", "0001-01-01", "31.02.2024", "1066-10-14"])
def test_no_day_that_cannot_be_is_a_date_of_a_mark(given: str) -> None:
    assert plain_date(given) == ""


@pytest.mark.parametrize(
    ("given", "kept", "told"),
    [
        ({"filed": "2020-01-01", "registered": "2020-06-01", "expires": "2030-01-01"}, "all", ""),
        ({"filed": "2020-01-01", "registered": "2020-01-01"}, "all", ""),
        ({"filed": "2024-05-01", "registered": "2020-01-01", "expires": "2034-05-01"}, "expires",
         "2020-01-01 is before filed, 2024-05-01"),
        ({"filed": "2024-05-01", "registered": "2020-01-01", "office": "WO"}, "all", ""),
        ({"filed": "2024-05-01", "expires": "2023-05-01"}, "", "2023-05-01 is before filed, 2024-05-01"),
        ({"filed": "2024-05-01", "priority": "2024-06-01"}, "", "2024-05-01 is before priority, 2024-06-01"),
        ({"filed": "2077-05-01", "expires": "2087-05-01"}, "expires", "2077-05-01 is yet to come"),
        ({"registered": "2077-05-01"}, "", "2077-05-01 is yet to come"),
    ],
)  # fmt: skip
def test_dates_that_cannot_be_are_told_and_not_kept(
    tmp_path: Path, given: dict[str, str], kept: str, told: str
) -> None:
    path = tmp_path / "marks.jsonl"
    path.write_text(json.dumps({"mark": "FERNSILL", **given}))
    (mark,), _, problems = read_marks([path])
    left = {key: value for key, value in given.items() if key != "office" and kept in ("all", key)}
    assert {field: day for field in DATES if (day := getattr(mark, field))} == left
    assert [problem.what for problem in problems] == [told] * bool(told)
