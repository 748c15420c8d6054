"""Names from a file: one a line, or a table with a `name` column."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

from .errors import InputError, Problem
from .names import MAX_LENGTH, parse

__all__ = ["NameList", "decode", "name_list", "read_names"]

MOST_BYTES = 64 * 2**20
"""Larger files are no list of candidates: about two million names."""

_COLUMN = "name"


@dataclass(frozen=True, slots=True)
class NameList:
    """Names in their order, each once, and a remark for every entry left out or changed."""

    names: tuple[str, ...]
    remarks: tuple[str, ...] = ()


def read_names(path: Path | str) -> NameList:
    """The names in the file at `path`: one a line, or CSV or TSV with a `name` column.

    Lines that start with # are remarks. Raises `InputError` if the file cannot be read or holds no name.
    """
    path = Path(path)
    try:
        size = path.stat().st_size
        raw = path.read_bytes() if size <= MOST_BYTES else b""
    except FileNotFoundError:
        raise InputError(
            Problem("no such file", "Give a file of names, - for standard input, or --name", str(path))
        ) from None
    except IsADirectoryError:
        raise InputError(Problem("is a folder", "Name a file of names in it", str(path))) from None
    except OSError as error:
        raise InputError(Problem(f"cannot be read ({error.strerror})", "", str(path))) from None
    if size > MOST_BYTES:
        raise InputError(
            Problem(
                f"holds {size:,} bytes, which is no list of candidates",
                "A list of existing marks goes to --register",
                str(path),
            )
        )
    return name_list(decode(raw, str(path)), str(path))


def decode(raw: bytes, source: str) -> str:
    """`raw` as text: UTF-8, or UTF-16 where a byte order mark says so; else `InputError`."""
    encoding = "utf-16" if raw[:2] in (b"\xff\xfe", b"\xfe\xff") else "utf-8-sig"
    try:
        text = raw.decode(encoding)
    except UnicodeDecodeError as error:
        line = raw.count(b"\n", 0, error.start) + 1
        raise InputError(
            Problem("is not UTF-8 text", "Save it as UTF-8 in a text editor or spreadsheet", source, line)
        ) from None
    if "\0" in text:
        raise InputError(Problem("is not text but a binary file", "Give a text or CSV file", source))
    return text


def name_list(text: str, source: str = "standard input") -> NameList:
    """The names in `text`, as `read_names` reads a file."""
    lines = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    first = next((line for line in lines if line.strip()), "")
    separator = next((mark for mark in "\t;," if mark in first), None)
    header = [cell.strip().strip('"').casefold() for cell in first.split(separator)]
    if _COLUMN in header:
        entries, remarks = _from_table("\n".join(lines), separator or ",", header.index(_COLUMN), source)
    elif separator and source.casefold().endswith((".csv", ".tsv")):
        raise InputError(
            Problem("has no `name` column", "Call the column with the candidates `name`", source, 1)
        )
    else:
        entries = [
            (number, line) for number, line in enumerate(lines, 1) if not line.lstrip().startswith("#")
        ]
        remarks = []
    found = _usable(entries, source, remarks)
    if not found.names:
        raise InputError([Problem("holds no name", "Write one name a line", source), *_as_problems(found)])
    return found


def given_names(names: Iterable[str]) -> NameList:
    """Names given one by one, as `read_names` would take them from a file."""
    found = _usable(enumerate(names, 1), "--name", [])
    if not found.names:
        raise InputError([Problem("no usable name was given", "Give --name a name"), *_as_problems(found)])
    return found


def _from_table(
    text: str, separator: str, column: int, source: str
) -> tuple[list[tuple[int, str]], list[str]]:
    """The `column` of a table; a row that does not reach it is remarked on."""
    csv.field_size_limit(MOST_BYTES)
    reader = csv.reader(io.StringIO(text), delimiter=separator, strict=False)
    entries, remarks, started = [], [], False
    for row in reader:
        if not any(cell.strip() for cell in row):
            continue
        if not started:
            started = True
        elif len(row) <= column:
            remarks.append(f"{source}, line {reader.line_num}: left out, the row has no `name` cell")
        else:
            entries.append((reader.line_num, row[column]))
    return entries, remarks


def _usable(entries: Iterable[tuple[int, str]], source: str, remarks: list[str]) -> NameList:
    names: dict[str, int] = {}
    kind = "name" if source == "--name" else "line"
    for number, entry in entries:
        place = f"{source}, {kind} {number}"
        if not entry.strip():
            continue
        name = parse(entry)
        if len(entry.strip()) > MAX_LENGTH:
            remarks.append(
                f"{place}: left out, {len(entry.strip()):,} characters are no name (at most {MAX_LENGTH})"
            )
        elif not name.words:
            remarks.append(f"{place}: left out, {_short(entry)} has no letters or digits")
        elif name.text in names:
            remarks.append(
                f"{place}: left out, {_short(name.text)} is already there, {kind} {names[name.text]}"
            )
        else:
            if name.text != " ".join(entry.split()):
                remarks.append(f"{place}: read as {_short(name.text)}, without its invisible characters")
            names[name.text] = number
    return NameList(tuple(names), tuple(remarks))


def _short(text: str) -> str:
    text = " ".join(text.split())
    return repr(text if len(text) <= 40 else text[:37] + "...")


def _as_problems(found: NameList) -> list[Problem]:
    return [Problem(remark) for remark in found.remarks]
