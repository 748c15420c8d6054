"""A bounded list of problems with an input: a million bad rows take no more memory than twenty."""

from __future__ import annotations

from collections import Counter

from ..errors import Problem

__all__ = ["ProblemLog"]

SHOWN_EACH = 20
"""The most problems kept for each file and kind; the rest are only counted."""
SHOWN_EACH_OF_A_SET = 3
"""The same for files that are read as one set, such as a folder with one mark a file."""


class ProblemLog:
    """Collects problems; keeps the first few of each kind in each file, or set of files, and counts the others."""

    def __init__(self, source: str = "") -> None:
        self.source = source
        self.set = ""
        self._kept: list[Problem] = []
        self._counts: Counter[tuple[str, str]] = Counter()
        self._sets: set[str] = set()
        self.left_out = 0
        self.count = 0

    def __bool__(self) -> bool:
        return bool(self._kept)

    def reading(self, source: str, of_set: str = "") -> None:
        """Assign the following problems to `source`, counted with those of the other files of its set, if any."""
        self.source, self.set = source, of_set
        if of_set:
            self._sets.add(of_set)

    def note(self, what: str, remedy: str = "", *, line: int | None = None, field: str = "", kind: str = "") -> None:
        """Note one problem of the current source; problems of equal `kind` are counted together."""
        self.count += 1
        key = (self.set or self.source, kind or remedy or what)
        self._counts[key] += 1
        if self._counts[key] <= self._shown(key[0]):
            self._kept.append(Problem(what, remedy, self.source, line, field))

    def leave_out(self, what: str, remedy: str, line: int | None, kind: str = "") -> None:
        """Note a row without a usable mark."""
        self.left_out += 1
        self.note(what, f"It was left out: {remedy}", line=line, kind=kind)

    def problems(self) -> tuple[Problem, ...]:
        """Everything noted, in order, with one line for each kind that had too many to list."""
        more = tuple(
            Problem(f"{count - self._shown(source):,} more rows like these ({kind.rstrip('.')})", "", source)
            for (source, kind), count in self._counts.items()
            if count > self._shown(source)
        )
        return (*self._kept, *more)

    def _shown(self, source: str) -> int:
        return SHOWN_EACH_OF_A_SET if source in self._sets else SHOWN_EACH
