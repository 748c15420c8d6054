from __future__ import annotations

import pytest

from namescreen.errors import InputError
from namescreen.marks.fields import FIELD_NAMES, chosen_columns, class_flags, columns_of, field_of, nice_classes


@pytest.mark.parametrize(
    ("column", "field"),
    [
        ("Mark", "text"),
        ("TRADE MARK", "text"),
        ("Trade_Mark_Text", None),
        ("markVerbalElementText", "text"),
        ("tmk:MarkVerbalElementText", "text"),
        ("Reg. No.", "registration_number"),
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
    assert columns_of(header) == {"text": "Mark", "registration_number": "Registration number"}
    assert columns_of(header, {"text": "id"})["text"] == "ID"
    assert "text" not in columns_of(header, {"text": "nothing"})
    assert columns_of(["Trade Mark", "Mark Text"]) == {"text": "Mark Text"}


def test_the_user_names_columns_by_field_or_the_mark_s_alone() -> None:
    assert chosen_columns(None) == {}
    assert chosen_columns("Mark Text") == {"text": "Mark Text"}
    assert chosen_columns(["mark=Mark Text", "number = App. no"]) == {"text": "Mark Text", "number": "App. no"}
    with pytest.raises(InputError, match="not a field of a mark"):
        chosen_columns(["colour=Farbe"])
    with pytest.raises(InputError, match="two columns"):
        chosen_columns(["mark=A", "B"])


def test_a_column_for_each_class() -> None:
    header = ["mark", *(f"Class{number}" for number in range(1, 46))]
    assert class_flags(header) == {number: number for number in range(1, 46)}
    assert class_flags(["mark", "Class 1", "class"]) == {}
    assert class_flags(["Kl01", "Kl02", "x"], {"classes": "Kl01..Kl45"}) == {0: 1, 1: 2}


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
        ("NCL(11) 30", (30,), ()),
        ("NCL(11-2020) 30, 5", (5, 30), ()),
        ("IC 009. US 021 023 026. G & S: pots", (9,), ()),
    ],
)
def test_nice_classes(text: str, classes: tuple[int, ...], strange: tuple[str, ...]) -> None:
    assert nice_classes(text) == (classes, strange)
