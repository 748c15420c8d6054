"""Shows rows as a table within the terminal's width, as CSV, JSON Lines or Markdown.

Data goes to stdout. Whatever a mark or a name holds is shown as text: control characters and direction
overrides are written out, never passed on to the terminal.
"""

from __future__ import annotations

import json
import os
import re
import shutil
import sys
from collections.abc import Callable, Iterable, Mapping, Sequence
from enum import StrEnum
from itertools import zip_longest
from typing import Any, NamedTuple

from namescreen.outcome import DISCLAIMER
from namescreen.plain_text import cell, csv_line, number, table, unseen_escaped, visible, wrapped
from namescreen.plain_text import width as text_width

from .talk import say

__all__ = ["PARTS_SHOWN",
    *("BELOW", "Column", "Format", "definitions", "folded", "json_line", "on_screen", "print_disclaimer"),
    *("say_below", "say_point", "show", "show_table", "width"),
]

PARTS_SHOWN = {"sense": "evokes", "sayable": "says", "indirect": "indirect"}
"""The parts of a score that a reader is shown, and what they are called; the help of `brainstorm` explains them."""

NARROW = 80
"""Columns used where the output is not a terminal."""


class Format(StrEnum):
    """How rows are written."""

    table = "table"
    csv = "csv"
    jsonl = "jsonl"
    markdown = "markdown"


Row = Mapping[str, object]
"""One row: what JSON Lines writes as it is, and columns pick from."""

BELOW = "below"
"""Where a row keeps a remark that a table says below it."""


def _plain(value: object) -> str:
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else ""
    if isinstance(value, float):
        return number(value)
    if isinstance(value, list | tuple):
        return "; ".join(_plain(item) for item in value)
    return str(value)


class Column(NamedTuple):
    """A column: the row's `key`, its `title`, and how its value reads (numbers with two places unless told).

    `right` sets it flush right; `style` names a colour for a row's cell, used only on a terminal; a column
    that does not `shrink` is never folded.
    """

    key: str
    title: str
    text: Callable[[Row], str] | None = None
    right: bool = False
    shrink: bool = True
    style: Callable[[Row], str] | None = None

    def cell(self, row: Row) -> str:
        """What stands in this column of `row`, for a reader."""
        return self.text(row) if self.text else _plain(row.get(self.key))

    def value(self, row: Row) -> str:
        """What stands in this column of `row`, for a program: numbers with the places they have."""
        value = row.get(self.key)
        return str(value) if isinstance(value, float) and self.text is None else self.cell(row)


def width() -> int:
    """The terminal's width; 80 columns where there is none. COLUMNS overrides both."""
    if sys.stdout.isatty() or os.environ.get("COLUMNS", "").isdecimal():
        return max(20, shutil.get_terminal_size((NARROW, 24)).columns)
    return NARROW


def json_line(row: object) -> str:
    """`row` as one line of JSON: other scripts stay readable, unseen characters are escaped."""
    return unseen_escaped(json.dumps(row, ensure_ascii=False, allow_nan=False))


def show(rows: Iterable[Row], columns: Sequence[Column], form: Format) -> None:
    """Write `rows` to stdout as `form`; CSV and JSON Lines row by row, as they come.

    What a row holds under `BELOW` is said below it in a table, and left out elsewhere.
    """
    if form is Format.jsonl:
        for row in rows:
            _line(json_line(row))
    elif form is Format.csv:
        _write(csv_line(column.key for column in columns))
        for row in rows:
            _write(csv_line(column.value(row) for column in columns))
    elif form is Format.markdown:
        heads = [column.title for column in columns]
        numeric = [place for place, column in enumerate(columns) if column.right]
        _line(table(heads, [[column.cell(row) for column in columns] for row in rows], numeric).rstrip("\n"))
    else:
        show_table(list(rows), columns)


def show_table(rows: Sequence[Row], columns: Sequence[Column], *, indent: int = 0) -> None:
    """Write `rows` as an aligned table no wider than the terminal; long cells are folded, and remarks `BELOW` a row
    take the whole width. Where the terminal is too narrow for every column and every word, rows are stacked."""
    widths = _widths(rows, columns, width() - indent)
    if widths is None:
        _show_stacked(rows, columns, indent)
        return
    coloured = _is_coloured()
    titles = [_cell_lines(column.title, column, wide) for column, wide in zip(columns, widths, strict=True)]
    tallest = max(map(len, titles), default=0)  # titles stand on what is below them
    titles = [[""] * (tallest - len(lines)) + lines for lines in titles]
    _show_row(titles, columns, widths, indent, ["bold"] * len(columns) if coloured else [])
    for row in rows:
        texts = [
            _cell_lines(visible(column.cell(row)), column, wide) for column, wide in zip(columns, widths, strict=True)
        ]
        styles = [column.style(row) if column.style else "" for column in columns] if coloured else []
        _show_row(texts, columns, widths, indent, styles)
        if row.get(BELOW):
            say_below(str(row[BELOW]), " " * (indent + 2))


def _is_coloured() -> bool:
    """Whether stdout is a terminal with colours that the user wants (https://no-color.org)."""
    return sys.stdout.isatty() and not os.environ.get("NO_COLOR") and os.environ.get("TERM") not in ("dumb", "unknown")


def _show_row(
    texts: Sequence[Sequence[str]], columns: Sequence[Column], widths: Sequence[int], indent: int, styles: Sequence[str]
) -> None:
    """Write the lines of a row, given those of its cells, in these styles if any."""
    for parts in zip_longest(*texts, fillvalue=""):
        line = " " * indent
        for at, (text, column, wide) in enumerate(zip(parts, columns, widths, strict=True)):
            gap = " " * (wide - text_width(text))
            codes = ";".join(_CODES[name] for name in styles[at].split()) if styles else ""
            shown = f"\x1b[{codes}m{text}\x1b[0m" if codes and text else text
            line += ("  " if at else "") + (gap + shown if column.right else shown + gap)
        _line(line.rstrip())


_CODES = {"bold": "1", "red": "31", "yellow": "33"}
"""What sets a style in a terminal (ECMA-48, select graphic rendition)."""
_WORD = r"\s*\S+\s*"


def _cell_lines(text: str, column: Column, wide: int) -> list[str]:
    """The lines of a cell: its text folded between words, where the column may be."""
    if column.right or not column.shrink:
        return [text.rstrip()]
    lines = [""]
    for word in re.findall(_WORD, text):
        if lines[-1] and text_width(lines[-1] + word.rstrip()) > wide:
            lines.append("")
        lines[-1] += word
    return [line.rstrip() for line in lines]


def _widths(rows: Sequence[Row], columns: Sequence[Column], room: int) -> list[int] | None:
    """The width of each column, so that no word is broken; None if not even that fits into `room`.

    Spare room goes first to the columns that need least: a long text is folded anyway.
    """
    least, whole = [], []
    for column in columns:
        texts = [column.title, *(visible(column.cell(row)) for row in rows)]
        whole.append(max(map(text_width, texts)))
        words = [word for text in texts for word in text.split()] or [""]
        least.append(max(map(text_width, words)) if column.shrink and not column.right else whole[-1])
    left = room - sum(least) - 2 * (len(columns) - 1)
    if left < 0:
        return None
    while left and least != whole:
        lacking = (at for at in range(len(columns)) if least[at] < whole[at])
        least[min(lacking, key=lambda at: whole[at] - least[at])] += 1
        left -= 1
    return least


def _show_stacked(rows: Sequence[Row], columns: Sequence[Column], indent: int) -> None:
    """Rows one below the other, each value beside its column's title: for a terminal too narrow for the table."""
    first, *others = columns
    for row in rows:
        say_below(first.cell(row), " " * indent)
        told = [_titled(column, column.cell(row)) for column in others]
        _say_packed([text for text in told if text], " " * (indent + 2))
        if row.get(BELOW):
            say_below(str(row[BELOW]), " " * (indent + 2))


def _titled(column: Column, text: str) -> str:
    if not text or not column.title:
        return text
    return f"{column.title} {text}" if column.right else f"{column.title}: {text}"


def _say_packed(parts: Sequence[str], indent: str) -> None:
    """Short texts, as many on a line as fit; none is broken over two lines that fits on one."""
    line = ""
    for part in parts:
        longer = f"{line}; {part}" if line else part
        if line and text_width(visible(longer)) > width() - 2 - len(indent):
            say_below(line, indent)
            line = part
        else:
            line = longer
    if line:
        say_below(line, indent)


def say_below(text: str, indent: str = "  ") -> None:
    """Write a sentence below a table, within the terminal's width; what is folded stands further in."""
    indents = {"initial_indent": indent, "subsequent_indent": indent + "  "}
    for line in wrapped(visible(text), width() - 2, break_on_hyphens=False, **indents):
        _line(line)


def folded(text: str, indent: str = "", further: str = "  ", **options: Any) -> str:
    """`text` folded between words to the terminal's width; the lines after the first stand further in. `options` are
    those of `textwrap.wrap`."""
    return "\n".join(wrapped(text, width() - 1, initial_indent=indent, subsequent_indent=indent + further, **options))


def say_point(text: str, form: Format, *, apart: bool = False) -> None:
    """Write a remark: a point of a list in Markdown, `apart` from what is before it, else below what it is about."""
    if form is Format.markdown:
        _line(("\n" if apart else "") + f"- {cell(text)}")
    else:
        say_below(text)


def definitions(terms: Iterable[tuple[str, str]]) -> str:
    """Terms and what they mean, in two columns; where the terminal is narrow the meaning follows its term."""
    terms = tuple(terms)
    first = max(len(term) for term, _ in terms) + 1
    further = " " * (first + 1 if width() > 3 * first else 2)
    return "\n".join(folded(f"{term:{first - 1}}  {meaning}", "  ", further) for term, meaning in terms)


def on_screen(text: str) -> str:
    """`text` folded between words where stdout is a terminal too narrow for it, or where fewer than the usual columns
    are asked for; elsewhere as it is."""
    return "\n".join(wrapped(text, width())) if sys.stdout.isatty() or width() < NARROW else text


def print_disclaimer(form: Format) -> None:
    """Print the disclaimer: below a table or Markdown on stdout, on stderr beside data for programs."""
    if form is Format.table:
        _line(f"\n{on_screen(DISCLAIMER)}")
    elif form is Format.markdown:
        _line(f"\n*{DISCLAIMER}*")
    else:
        say(DISCLAIMER)


def _line(text: str) -> None:
    _write(text + "\n")


def _write(text: str) -> None:
    sys.stdout.write(text)
    sys.stdout.flush()
