"""The JSON form: valid by its published schema, and the same report when read back."""

from __future__ import annotations

import dataclasses
import json
import re
from typing import Any

import pytest

from namescreen.errors import InputError
from namescreen.outcome import NotChecked
from namescreen.report import Report, from_json, schema, to_json

jsonschema = pytest.importorskip("jsonschema")


@pytest.fixture(params=["report", "hostile"])
def either(request: pytest.FixtureRequest) -> Report:
    found: Report = request.getfixturevalue(request.param)
    return found


def test_the_schema_is_a_schema() -> None:
    jsonschema.Draft202012Validator.check_schema(schema())


def test_every_report_is_valid(either: Report) -> None:
    jsonschema.validate(json.loads(to_json(either)), schema())


def test_reading_back_gives_the_same_report(either: Report) -> None:
    assert from_json(to_json(either)) == either


def test_a_report_that_told_languages_as_sentences_is_read(report: Report) -> None:
    whole = json.loads(to_json(report))
    whole["data"]["languages_searched"] = ["de: 30,000 words, read aloud by its spelling rules"]
    assert from_json(json.dumps(whole)) == dataclasses.replace(report, languages_searched=())


def test_a_report_from_before_marks_were_put_together_is_read(report: Report) -> None:
    whole = json.loads(to_json(report))
    for entry in whole["data"]["names"]:
        for mark in entry["marks"] if isinstance(entry["marks"], list) else ():
            del mark["others"], mark["marks"]
    first = from_json(json.dumps(whole)).names[0].marks
    assert not isinstance(first, NotChecked)
    assert [(one.others, one.marks) for one in first] == [((), 1), ((), 1)]


BAD = [
    ("data.product", 3, "data.product"),
    ("data.classes", "21", "data.classes"),
    ("data.classes.0", True, "data.classes[0]"),
    ("data.names.0.marks.0.overall", "high", "data.names[0].marks[0].overall"),
    ("data.names.0.marks.0.mark", 1, "data.names[0].marks[0].mark"),
    ("data.names.0.name", ..., "data.names[0].name"),
    ("data.surprise", 1, "data.surprise"),
    ("data.settings.0", ["a"], "data.settings[0]"),
    ("data", None, "data"),
    ("data", [], "data"),
]


@pytest.mark.parametrize(("change", "value", "place"), BAD)
def test_what_cannot_be_read_is_refused_by_place(report: Report, change: str, value: Any, place: str) -> None:
    whole = json.loads(to_json(report))
    at = whole
    *path, last = [int(part) if part.isdecimal() else part for part in change.split(".")]
    for part in path:
        at = at[part]
    if value is ...:
        del at[last]
    else:
        at[last] = value
    with pytest.raises(InputError) as caught:
        from_json(json.dumps(whole), "old.json")
    assert str(caught.value).startswith(f"old.json, {place}: ")
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(whole, schema())


@pytest.mark.parametrize("text", ["", "{", "[]", "null", "{}", '{"format": 1}', "[" * 100_000, '{"format": "x"}'])
def test_what_is_no_report_is_refused(text: str) -> None:
    with pytest.raises(InputError, match=r"old\.json: is not"):
        from_json(text, "old.json")


def test_another_version_is_refused_with_the_remedy() -> None:
    with pytest.raises(InputError, match=r"this version reads 'namescreen-report 1'\. Write it again"):
        from_json('{"format": "namescreen-report 2"}', "old.json")


def test_what_is_not_seen_is_escaped(report: Report) -> None:
    hidden = "\u202e\x9b\u200b\ufeff"
    text = to_json(dataclasses.replace(report, product=hidden))
    assert not set(hidden) & set(text)
    assert from_json(text).product == hidden


def test_a_number_beyond_all_measure_is_refused(report: Report) -> None:
    text = re.sub(r'"appearance": [0-9.]+', '"appearance": 1' + "0" * 400, to_json(report), count=1)
    with pytest.raises(InputError, match="must be a number"):
        from_json(text)
