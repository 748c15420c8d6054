"""Help on terminals narrower than Click lays it out for."""

from __future__ import annotations

import shutil
import textwrap
from typing import Any

from typer.core import TyperGroup

__all__ = ["Context"]

LEAST = 50
"""The columns that Click's help takes at least."""
FEWEST = 20
"""Columns below which nothing is folded further."""


class _Formatter(TyperGroup.context_class.formatter_class):  # type: ignore[misc,name-defined]
    """Click's help, with examples folded; below 52 columns what options and commands do stands in a wider column."""

    def __init__(self, indent_increment: int = 2, width: int | None = None, max_width: int | None = None) -> None:
        columns = shutil.get_terminal_size().columns
        if width is None and columns < LEAST + 2:
            width = max(columns - 2, FEWEST)
        super().__init__(indent_increment, width, max_width)

    def write_dl(self, rows: Any, col_max: int = 30, col_spacing: int = 2) -> None:
        super().write_dl(rows, col_max if self.width >= LEAST else min(col_max, self.width // 3), col_spacing)

    def write_text(self, text: str) -> None:
        super().write_text(
            "\n\n".join(self._folded(one) if one.startswith("\b") else one for one in text.split("\n\n"))
        )

    def _folded(self, text: str) -> str:
        """A paragraph whose lines Click keeps as they are, each folded with its further lines further in."""
        return "\n".join(
            part
            for line in text.split("\n")
            for part in textwrap.wrap(
                line,
                self.width - self.current_indent,
                subsequent_indent=" " * (len(line) - len(line.lstrip()) + 2),
                break_on_hyphens=False,
            )
            or [line]
        )


class Context(TyperGroup.context_class):  # type: ignore[misc,valid-type]
    """What a command runs in; its help fits narrow terminals too."""

    formatter_class = _Formatter
