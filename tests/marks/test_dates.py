from __future__ import annotations

import pytest

from namescreen.marks.dates import order_of, plain_date


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
