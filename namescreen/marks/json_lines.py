"""Marks from JSON Lines, and from a JSON file that is one value: objects with a field of the mark, or WIPO ST.96 as
JSON."""

from __future__ import annotations

import json
from collections.abc import Iterator
from itertools import chain

from .fields import Columns, columns_of
from .problems import ProblemLog
from .st96 import is_st96, marks_in_json
from .xml_records import Values

__all__ = ["json_rows"]

EXAMPLE = 'JSON Lines has one object a line, as in {"mark": "HERBARIA", "classes": [21]}'
LARGEST = 1 << 26
"""Characters of a JSON file that is one value over many lines; as JSON Lines it may be of any size."""
DEEPEST = 20
"""Lists and objects inside one another in one field."""
_TOO_DEEP = "holds lists or objects too deep inside one another"

Row = tuple[int, Values]


def json_rows(numbered: Iterator[tuple[int, str]], log: ProblemLog, columns: Columns) -> Iterator[Row]:
    """The rows of a JSON file; what is no object with a mark is left out, and noted."""
    names: dict[str, dict[str, str]] = {}
    first = next((pair for pair in numbered if pair[1].strip()), None)
    if first is None:
        return
    if first[1].strip() in ("[", "{", "[{"):
        whole, lines = _over_lines(first, numbered)
        if whole is not None:
            lines = []
            yield from _marks(whole, first[0], log, columns, names)
        numbered = chain(lines, numbered)
    else:
        numbered = chain([first], numbered)
    for number, line in numbered:
        if not line.strip():
            continue
        try:
            value = json.loads(line)
        except RecursionError:
            log.leave_out(_TOO_DEEP, EXAMPLE, number)
        except ValueError:
            log.leave_out("is not a JSON value", EXAMPLE, number)
        else:
            yield from _marks(value, number, log, columns, names)


def _over_lines(
    first: tuple[int, str], numbered: Iterator[tuple[int, str]]
) -> tuple[list[object] | dict[str, object] | None, list[tuple[int, str]]]:
    """The one value that a file holds over many lines, or None; and the lines that were looked at."""
    lines, size = [first], 0
    for pair in numbered:
        lines.append(pair)
        size += len(pair[1])
        if size > LARGEST:
            return None, lines
    try:
        value = json.loads("\n".join(line for _, line in lines))
    except (ValueError, RecursionError):
        return None, lines
    return value if isinstance(value, list) or value else None, lines


def _marks(
    value: object, number: int, log: ProblemLog, columns: Columns, names: dict[str, dict[str, str]]
) -> Iterator[Row]:
    if isinstance(value, list):
        for one in value:
            if isinstance(one, list):
                log.leave_out("is not a JSON object", EXAMPLE, number)
            else:
                yield from _marks(one, number, log, columns, names)
        return
    if isinstance(value, str):
        yield number, {"text": value}
        return
    if not isinstance(value, dict):
        log.leave_out("is not a JSON object", EXAMPLE, number)
        return
    key = "\0".join(value)
    fields = names.get(key)
    if fields is None:
        fields = names.setdefault(key, columns_of(list(value), columns))
        if len(names) > 1000:
            names.clear()
    if "text" not in fields:
        if is_st96(value):
            yield from ((number, mark) for mark in marks_in_json(value))
        else:
            log.leave_out("the object has no mark", "give it a field mark", number)
        return
    try:
        yield number, {field: _plain(value[name], 0) for field, name in fields.items()}
    except RecursionError:
        log.leave_out(_TOO_DEEP, EXAMPLE, number)


def _plain(value: object, depth: int) -> str:
    if depth > DEEPEST:
        raise RecursionError
    if isinstance(value, list):
        return ", ".join(_plain(part, depth + 1) for part in value)
    if isinstance(value, dict):
        return ", ".join(_plain(part, depth + 1) for part in value.values())
    return "" if value is None else str(value)
