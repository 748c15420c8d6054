from __future__ import annotations

import pytest

from namescreen.marks.fields import FIELD_NAMES, columns_of, field_of, nice_classes, plain_date, standing


@pytest.mark.parametrize(
    ("column", "field"),
    [
        ("Mark", "text"),
        ("TRADE MARK", "text"),
        ("Trade_Mark_Text", None),
        ("markVerbalElementText", "text"),
        ("tmk:MarkVerbalElementText", "text"),
        ("Reg. No.", "number"),
        ("ApplicationNumber", "number"),
        ("Nice class(es)", None),
        ("Nice Classes", "classes"),
        ("Goods & services", "goods"),
        ("goods and services", "goods"),
        ("Status", "status"),
        ("Proprietor", "owner"),
        ("Filing date", "filed"),
        ("RegistrationDate", "registered"),
        ("colour", None),
    ],
)
def test_columns_are_known_by_plain_and_trade_names(column: str, field: str | None) -> None:
    found = field_of(column)
    assert (found[0] if found else None) == field


def test_no_column_name_means_two_fields() -> None:
    names = [name for names in FIELD_NAMES.values() for name in names]
    assert len(names) == len(set(names))


def test_the_more_telling_column_wins_and_a_named_one_always() -> None:
    header = ["Name", "Mark", "Registration number", "ID"]
    assert columns_of(header) == {"text": "Mark", "number": "Registration number"}
    assert columns_of(header, "id")["text"] == "ID"
    assert "text" not in columns_of(header, "nothing")


@pytest.mark.parametrize(
    ("text", "classes", "strange"),
    [
        ("21", (21,), ()),
        ("IC 009; 25,35", (9, 25, 35), ()),
        ("Class 45 and class 1", (1, 45), ()),
        ("021035", (21, 35), ()),
        ("0, 46, 21", (21,), ("0", "46")),
        ("A", (), ()),
        ("21 21", (21,), ()),
    ],
)
def test_nice_classes(text: str, classes: tuple[int, ...], strange: tuple[str, ...]) -> None:
    assert nice_classes(text) == (classes, strange)


# The codes are values of MarkCurrentStatusCode in WIPO ST.66, from memory; the others are words of our own
# choice.
@pytest.mark.parametrize(
    ("status", "result"),
    [
        ("Application filed", "live"),
        ("Application published", "live"),
        ("Application under examination", "live"),
        ("Application opposed", "live"),
        ("Application refused", "dead"),
        ("Application withdrawn", "dead"),
        ("Registered", "live"),
        ("Registration cancelled", "dead"),
        ("Registration surrendered", "dead"),
        ("Registration cancellation pending", "live"),
        ("RegistrationExpired", "dead"),
        ("Expired", "dead"),
        ("LIVE", "live"),
        ("DEAD", "dead"),
        ("lapsed", "dead"),
        ("Removed - not renewed", "dead"),
        ("Revocation requested", "live"),
        ("700", ""),
        ("", ""),
    ],
)
def test_standing(status: str, result: str) -> None:
    assert standing(status) == result


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
