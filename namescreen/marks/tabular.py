"""Marks from plain text, CSV, TSV and JSON Lines: one bad row never costs a good one."""

from __future__ import annotations

import csv
import json
import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import chain, islice

from ..errors import InputError, Problem
from .fields import columns_of
from .problems import ProblemLog

__all__ = ["Row", "read_lines", "shape_of"]

Row = tuple[int, Mapping[str, str]]
"""A line number, and the text of each field found there."""

_DELIMITERS = (",", "\t", ";", "|")
EXAMPLE = 'JSON Lines has one object a line, as in {"mark": "HERBARIA", "classes": [21]}'
LONGEST_RECORD = 2000
"""Lines; a CSV record with more is taken for a quotation mark that was never closed."""


def shape_of(first_lines: Sequence[str], suffix: str, column: str | None) -> tuple[str, str]:
    """What kind of text this is, ("text" | "table" | "json", delimiter), from its first lines and its ending.

    A `.csv` or `.tsv` ending means a table. Without it, a table needs a first line in which a delimiter sets
    apart at least two columns, one of them of marks: a plain list may hold commas.
    """
    head = next((line for line in first_lines if line.strip()), "")
    if suffix in (".jsonl", ".ndjson", ".json") or re.match(r'\s*\{\s*"', head):
        return "json", ""
    best = ("", 0, 0)
    for delimiter in _DELIMITERS:
        names = _cells(head, delimiter)
        fields = columns_of(names, column)
        score = (delimiter, (len(fields) if "text" in fields else 0), len(names))
        if score[1:] > best[1:]:
            best = score
    delimiter, known, columns = best
    if suffix in (".csv", ".tsv", ".tab"):
        preset = "\t" if suffix != ".csv" else ","
        return "table", delimiter if columns > 1 and delimiter else preset
    if columns > 1 and (known >= 1 if delimiter == "\t" or column else known >= 2):
        return "table", delimiter
    return "text", ""


def _cells(line: str, delimiter: str) -> list[str]:
    try:
        return [cell.strip() for cell in next(csv.reader([line], delimiter=delimiter), [])]
    except csv.Error:
        return []


def read_lines(
    numbered: Iterator[tuple[int, str]], suffix: str, log: ProblemLog, column: str | None = None
) -> Iterator[Row]:
    """The rows of a text in whatever of the three shapes it has.

    Raises `InputError` if a table has no column of marks; says which columns it has and what to do.
    """
    first = list(islice(numbered, 20))
    shape, delimiter = shape_of([line for _, line in first], suffix, column)
    rest = chain(first, numbered)
    if shape == "json":
        yield from _json_rows(rest, log, column)
    elif shape == "table":
        yield from _table_rows(rest, delimiter, log, column)
    else:
        for number, line in rest:
            if line.strip() and not line.startswith("# "):  # a remark, as lists typed by hand hold them
                yield number, {"text": line}


def _table_rows(
    numbered: Iterator[tuple[int, str]], delimiter: str, log: ProblemLog, column: str | None
) -> Iterator[Row]:
    header: list[str] = []
    for _, line in numbered:
        if line.strip():
            header = _cells(line, delimiter)
            break
    if not header:
        return
    fields = columns_of(header, column)
    if "text" not in fields:
        named = f"a column {column!r}" if column else "a column of marks"
        raise InputError(
            Problem(
                f"has no {named[2:]}; its columns are {', '.join(header)[:300]}",
                "Call one of them mark, or say which it is with --column; a plain list of one mark a line "
                "should end in .txt",
                log.source,
            )
        )
    # A column name that stands twice: the first counts.
    places = [(field, header.index(name)) for field, name in fields.items()]
    for number, row in _records(numbered, delimiter, log):
        if not any(map(str.strip, row)):
            continue
        if len(header) == 1:  # with one column, a delimiter can only be part of the mark: HERB, LTD
            row = [delimiter.join(row)]
        if len(row) > len(header) and any(cell.strip() for cell in row[len(header) :]):
            log.leave_out(
                f"has {len(row)} columns where the first line has {len(header)}",
                "put the text that holds the delimiter in quotation marks",
                number,
                "columns too many",
            )
            continue
        width = len(row)
        yield number, {field: row[at] for field, at in places if at < width}


def _records(numbered: Iterator[tuple[int, str]], delimiter: str, log: ProblemLog) -> Iterator[tuple[int, list[str]]]:
    """CSV records with the line each begins on; after a broken one, reading goes on at its second line."""
    waiting: list[tuple[int, str]] = []
    source = numbered
    while True:
        taken: list[tuple[int, str]] = []

        def feed(taken: list[tuple[int, str]] = taken, source: Iterator[tuple[int, str]] = source) -> Iterator[str]:
            for pair in source:
                taken.append(pair)
                if len(taken) > LONGEST_RECORD:
                    raise csv.Error("the record does not end")
                yield pair[1] + "\n"

        reader = csv.reader(feed(), delimiter=delimiter, strict=True)
        try:
            for row in reader:
                yield taken[0][0], row
                taken.clear()
            return
        except csv.Error:
            number, line = taken[0]
            waiting = taken[1:]
            # Quotation marks that are part of the text, as in a TSV without quoting: take the line as it
            # stands.
            row = [cell.strip().strip('"') for cell in line.split(delimiter)]
            if line.count('"') % 2 or len(waiting) > 0:
                log.note(
                    "a quotation mark opens and does not close",
                    "The line was read as it stands: close it, or double it inside quoted text",
                    line=number,
                )
            yield number, row
            source = chain(waiting, source)


def _json_rows(numbered: Iterable[tuple[int, str]], log: ProblemLog, column: str | None) -> Iterator[Row]:
    names: dict[str, dict[str, str]] = {}
    for number, line in numbered:
        if not line.strip():
            continue
        try:
            value = json.loads(line)
        except (ValueError, RecursionError):
            log.leave_out("is not a JSON value", EXAMPLE, number)
            continue
        if isinstance(value, str):
            yield number, {"text": value}
            continue
        if not isinstance(value, dict):
            log.leave_out("is not a JSON object", EXAMPLE, number)
            continue
        key = "\0".join(value)
        fields = names.get(key)
        if fields is None:
            fields = names.setdefault(key, columns_of(list(value), column))
            if len(names) > 1000:
                names.clear()
        if "text" not in fields:
            log.leave_out("the object has no mark", "give it a field mark", number)
            continue
        yield number, {field: _plain(value[name]) for field, name in fields.items()}


def _plain(value: object) -> str:
    if isinstance(value, list):
        return ", ".join(_plain(part) for part in value)
    if isinstance(value, dict):
        return ", ".join(_plain(part) for part in value.values())
    return "" if value is None else str(value)
