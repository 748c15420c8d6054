"""What the text of a report is put together from: paragraphs as they stand, and tables, which a page shows as such and
plain Markdown only where they fit on a line.

A row that is wider than a screen cannot be read in Markdown as it stands: there each row is a point of a list, headed
by its first cell, with the other cells under their headings.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from ..plain_text import cell, table, width

__all__ = ["Either", "Part", "Table", "laid_out"]

WIDEST = 100
"""Columns of a table that stands as one in Markdown (common practice, no source)."""


class Table(NamedTuple):
    """A table of raw texts under `heads`; `numeric` columns are set to the right."""

    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    numeric: tuple[int, ...] = ()

    def as_table(self) -> str:
        """The table in Markdown, whatever its width."""
        return table(self.heads, self.rows, self.numeric)

    def as_text(self) -> str:
        """The table in Markdown where none of its lines is wider than `WIDEST`, else its rows as a list."""
        drawn = self.as_table()
        if max(map(width, drawn.splitlines())) <= WIDEST:
            return drawn
        return "\n".join(line for row in self.rows for line in self._point(row))

    def _point(self, row: Sequence[str]) -> Iterable[str]:
        """A row as a point of a list; its empty cells are left out, and short ones share a line."""
        first, *others = row
        line = f"- **{_ended(cell(first))}**"
        for head, text in zip(self.heads[1:], others, strict=True):
            if not text:
                continue
            told = f"*{cell(head)}:* {_ended(cell(text))}"
            if width(line) + 1 + width(told) <= WIDEST:
                line += f" {told}"
            else:
                yield line
                line = f"  {told}"
        yield line


class Either(NamedTuple):
    """What a page shows as one table, and plain Markdown in another way."""

    on_a_page: Table
    as_text: tuple[str | Table, ...]


Part = str | Table | Either
"""A piece of a report: a paragraph, a list or a heading in Markdown, or a table."""


def _ended(text: str) -> str:
    """`text` with a full stop, unless it ends a sentence by itself."""
    return text if text.endswith((".", "!", "?", "…")) else f"{text}."


def laid_out(parts: Iterable[Part], *, as_tables: bool) -> str:
    """The parts one after another as Markdown; tables as such whatever their width, or else as they are best read."""
    return "\n\n".join(text.rstrip("\n") for part in parts for text in _texts(part, as_tables)) + "\n"


def _texts(part: Part, as_tables: bool) -> Iterable[str]:
    if isinstance(part, str):
        yield part
    elif isinstance(part, Table):
        yield part.as_table() if as_tables else part.as_text()
    else:
        for one in (part.on_a_page,) if as_tables else part.as_text:
            yield from _texts(one, as_tables)
