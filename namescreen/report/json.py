"""A report as JSON, and back: what other tools read, and what a later run is compared with.

The form is published as a JSON Schema beside this module (`schema()`). `data` holds the report itself;
`drawn` what was worked out from it (findings, order, questions), for other tools, and is not read back.
"""

from __future__ import annotations

import json
import types
import typing
from dataclasses import MISSING, fields, is_dataclass
from functools import cache
from pathlib import Path
from typing import Any

from ..errors import InputError, Problem
from ..outcome import DISCLAIMER, NotChecked
from ..plain_text import unseen_escaped
from .comparison import Changes
from .costs import worksheet
from .findings import findings, mark_level, matters, worst
from .model import Report
from .questions import general_questions, questions
from .sensitivity import moves, places, standings

__all__ = ["FORMAT", "from_json", "schema", "to_json"]

FORMAT = "namescreen-report 1"
"""Name and version of the form. A change that an older reader would misread raises the number."""


def to_json(report: Report, *, changes: Changes | None = None) -> str:
    """The whole report as JSON text, keys in a fixed order, ending in a line break."""
    drawn = _drawn(report) | {"changes": plain(changes)}
    whole = {"format": FORMAT, "notice": DISCLAIMER, "data": plain(report), "drawn": drawn}
    return unseen_escaped(json.dumps(whole, ensure_ascii=False, indent=1)) + "\n"


def from_json(text: str, source: str = "report") -> Report:
    """The report in `text`; raises `InputError` naming `source` and the place of what cannot be read."""
    try:
        whole = json.loads(text)
    except (ValueError, RecursionError) as error:
        if not text.lstrip().startswith("{"):  # where in it the parser stopped tells nobody anything
            raise _wrong(source, "", "is not JSON, the form of a report that can be compared") from None
        raise _wrong(source, "", f"is not JSON ({error})") from None
    if not isinstance(whole, dict) or not str(whole.get("format", "")).startswith("namescreen-report "):
        raise _wrong(source, "", "is not a report of this program")
    if whole["format"] != FORMAT:
        raise InputError(
            Problem(
                f"is of the form {whole['format']!r}, this version reads {FORMAT!r}",
                "Write it again with the version of namescreen in use now",
                source,
            )
        )
    report: Report = _read(Report, whole.get("data"), "data", source)
    return report


def schema() -> dict[str, Any]:
    """The JSON Schema (draft 2020-12) of what `to_json` writes."""
    found: dict[str, Any] = json.loads(Path(__file__).with_name("report.schema.json").read_text("utf-8"))
    return found


def plain(value: object) -> Any:
    """`value` as JSON types: a dataclass as an object, a tuple as a list."""
    if is_dataclass(value) and not isinstance(value, type):
        return {item.name: plain(getattr(value, item.name)) for item in fields(value)}
    if isinstance(value, tuple):
        return [plain(item) for item in value]
    return value


def _drawn(report: Report) -> dict[str, Any]:
    span = places(report)
    sheet = worksheet(report)
    return {
        "names": [
            {
                "name": entry.name,
                "worst": worst(entry).level.words,
                "findings": [
                    {
                        "check": found.check,
                        "level": found.level.words,
                        "label": found.title,
                        "bars": found.bars,
                        "evidence": found.evidence,
                        "value": found.value,
                    }
                    for found in findings(entry)
                ],
                "marks": [
                    {"mark": found.mark.text, "number": found.mark.number, "level": mark_level(found).words}
                    for found in matters(entry)
                ],
                "questions": list(questions(entry, report)),
            }
            for entry in report.names
        ],
        "order": [
            {
                "name": row.name,
                "place": row.place,
                "knockout": row.knockout,
                "group": row.group,
                "low": row.low,
                "high": row.high,
                "best_place": span[row.name][0],
                "worst_place": span[row.name][1],
            }
            for row in standings(report)
        ],
        "moves": [plain(move) for move in moves(report)],
        "questions": list(general_questions(report)),
        "costs": {
            "totals": [{"currency": currency, "amount": str(amount)} for currency, amount in sheet.totals],
            "left": None if sheet.left is None else str(sheet.left),
        },
    }


@cache
def _hints(kind: type) -> dict[str, Any]:
    return typing.get_type_hints(kind)


def _read(kind: Any, value: Any, place: str, source: str) -> Any:
    """`value` as `kind`, which is one of the annotations that the report's records use."""
    origin = typing.get_origin(kind)
    if origin in (typing.Union, types.UnionType):
        options = typing.get_args(kind)
        if value is None and type(None) in options:
            return None
        skipped = isinstance(value, dict) and set(value) == {"check", "because"}
        chosen = [option for option in options if option is not type(None) and (option is NotChecked) == skipped]
        return _read(chosen[0], value, place, source)
    if origin is tuple:
        items = typing.get_args(kind)
        if not isinstance(value, list):
            raise _wrong(source, place, "must be a list")
        if items[-1] is Ellipsis:
            return tuple(_read(items[0], item, f"{place}[{at}]", source) for at, item in enumerate(value))
        if len(items) != len(value):
            raise _wrong(source, place, f"must hold {len(items)} items")
        return tuple(
            _read(one, item, f"{place}[{at}]", source) for at, (one, item) in enumerate(zip(items, value, strict=True))
        )
    if is_dataclass(kind):
        return _read_record(kind, value, place, source)
    if kind is float and isinstance(value, int) and not isinstance(value, bool):
        try:
            return float(value)
        except OverflowError:
            raise _wrong(source, place, f"must be {_WORDS[kind]}") from None
    if not isinstance(value, kind) or (kind is int and isinstance(value, bool)):
        raise _wrong(source, place, f"must be {_WORDS[kind]}")
    return value


_WORDS = {str: "a text", int: "a whole number", float: "a number", bool: "true or false"}


_ONCE_SENTENCES = {"foreign", "languages_searched"}
"""Keys that earlier versions wrote as a sentence, or some: what is read as if it had been left out."""


def _read_record(kind: Any, value: Any, place: str, source: str) -> Any:
    if not isinstance(value, dict):
        raise _wrong(source, place, "must be an object")
    known = {item.name: item for item in fields(kind)}
    value = {name: one for name, one in value.items() if not (name in _ONCE_SENTENCES and _is_told(one))}
    for name in value.keys() - known.keys():
        raise _wrong(source, f"{place}.{name}", "is not a key of a report")
    for name, item in known.items():
        if name not in value and item.default is MISSING and item.default_factory is MISSING:
            raise _wrong(source, f"{place}.{name}", "is missing")
    hints = _hints(kind)
    return kind(**{name: _read(hints[name], value[name], f"{place}.{name}", source) for name in known if name in value})


def _is_told(value: Any) -> bool:
    return isinstance(value, str) or (isinstance(value, list) and any(isinstance(one, str) for one in value))


def _wrong(source: str, place: str, what: str) -> InputError:
    remedy = "Give a file written by `namescreen report --format json`, as it was written"
    return InputError(Problem(what, remedy, source, None, place))
