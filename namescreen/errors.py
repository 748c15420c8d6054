"""Errors, in words that the user can act on.

One base class, so that a caller can catch everything this package raises on purpose:

    NamescreenError
    ├── InputError     the user's input cannot be used (file, line, field and remedy are named)
    ├── DataError      a table shipped with the package, or a prepared file, is damaged or of another version
    └── Interrupted    the user stopped the work; what was finished is kept

Messages are plain text: styling belongs to the shell.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

__all__ = ["DataError", "InputError", "Interrupted", "NamescreenError", "Problem"]


class NamescreenError(Exception):
    """Base of every error raised on purpose; its text says what is wrong and what to do next."""

    __module__ = "namescreen"


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing wrong with an input: where it stands, what it is, and the remedy."""

    what: str
    remedy: str = ""
    source: str = ""
    line: int | None = None
    field: str = ""

    def __str__(self) -> str:
        place = ", ".join(
            part
            for part in (
                self.source,
                f"line {self.line}" if self.line is not None else "",
                self.field,
            )
            if part
        )
        text = f"{place}: {self.what}" if place else self.what
        return f"{text}. {self.remedy}" if self.remedy else text


class InputError(NamescreenError):
    """The input cannot be used; `problems` lists everything found wrong with it, not just the first."""

    __module__ = "namescreen"

    def __init__(self, problems: Problem | str | Iterable[Problem]) -> None:
        if isinstance(problems, str):
            problems = Problem(problems)
        self.problems: tuple[Problem, ...] = (problems,) if isinstance(problems, Problem) else tuple(problems)
        super().__init__("\n".join(str(problem) for problem in self.problems))

    def __reduce__(self) -> tuple[type[InputError], tuple[object, ...]]:  # as it comes from a worker process
        return InputError, (self.problems,)


class DataError(NamescreenError):
    """A table or prepared file is damaged, missing, or of a version this program does not read."""

    __module__ = "namescreen"

    def __init__(self, path: Path | str, what: str, remedy: str) -> None:
        self.path, self._what, self._remedy = Path(path), what, remedy
        super().__init__(f"{path}: {what}. {remedy}")

    def __reduce__(self) -> tuple[type[DataError], tuple[object, ...]]:  # as it comes from a worker process
        return DataError, (self.path, self._what, self._remedy)


class Interrupted(NamescreenError):
    """The user stopped the work; the text says what was kept."""

    __module__ = "namescreen"
