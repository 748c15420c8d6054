"""What a steered session reads besides a terminal: its shortlist file, and lines from a pipe or a file. These are shown
as if they were typed, so that the whole reads as a session at a terminal does, and numbered, so that a line that asks
for nothing known can be found."""

from __future__ import annotations

import io
from collections.abc import Callable
from pathlib import Path
from typing import BinaryIO

from namescreen.marks.problems import ProblemLog
from namescreen.marks.typed_lists import signs_before
from namescreen.plain_text import visible

__all__ = ["PipedLines", "names_in"]

LONGEST = 1_000
"""Bytes of a line; what is longer is no command, and is read past."""


class PipedLines:
    """A reader of lines that takes the place of `input`: it shows each behind its prompt, and ends with `EOFError`.

    A line that is no text raises `UnicodeDecodeError`, as a terminal's does.
    """

    def __init__(self, source: BinaryIO | None, write: Callable[[str], None]) -> None:
        self.source = source or io.BytesIO()
        self.write = write
        self.number = 0

    def __call__(self, prompt: str) -> str:
        """The next line, without its end."""
        raw = self.source.readline(LONGEST)
        if not raw:
            raise EOFError
        self.number += 1
        cut = raw
        while len(cut) == LONGEST and not cut.endswith(b"\n"):
            cut = self.source.readline(LONGEST)
        line = raw.decode("utf-8-sig" if self.number == 1 else "utf-8").rstrip("\r\n")
        self.write(f"{prompt}{visible(line)}".rstrip())
        return line

    @property
    def place(self) -> str:
        """Where the line stands, to begin a remark with."""
        return f"Line {self.number}: "


def names_in(path: Path) -> tuple[str, list[str]]:
    """The text of a shortlist file, and the names in it; nothing if there is none or it is no text."""
    try:
        text = path.read_text("utf-8-sig") if path.is_file() else ""
    except (OSError, UnicodeDecodeError):
        return "", []
    said = [(at, line) for at, line in enumerate(map(str.strip, text.splitlines()), 1) if line and line[0] != "#"]
    before = signs_before(said, ProblemLog())  # as `screen` and `report` read the file
    return text, [before.sub("", line, count=1) for _, line in said]
