"""A bounded list of what was wrong with an input, so that a million bad rows cost no more than twenty."""

from __future__ import annotations

from collections import Counter

from ..errors import Problem

__all__ = ["ProblemLog"]

SHOWN_EACH = 20
"""Problems kept one by one for each file and kind; the rest are counted."""


class ProblemLog:
    """Collects problems; keeps the first few of each kind in each file and counts the others."""

    def __init__(self, source: str = "") -> None:
        self.source = source
        self._kept: list[Problem] = []
        self._counts: Counter[tuple[str, str]] = Counter()
        self.left_out = 0

    def __bool__(self) -> bool:
        return bool(self._kept)

    def note(self, what: str, remedy: str = "", *, line: int | None = None, field: str = "", kind: str = "") -> None:
        """Note one problem of the current source; problems of equal `kind` are counted together."""
        key = (self.source, kind or remedy or what)
        self._counts[key] += 1
        if self._counts[key] <= SHOWN_EACH:
            self._kept.append(Problem(what, remedy, self.source, line, field))

    def leave_out(self, what: str, remedy: str, line: int, kind: str = "") -> None:
        """Note a row that gives no mark at all."""
        self.left_out += 1
        self.note(what, f"It was left out: {remedy}", line=line, kind=kind)

    def problems(self) -> tuple[Problem, ...]:
        """Everything noted, in order, with one line for each kind that had too many to list."""
        more = tuple(
            Problem(f"{count - SHOWN_EACH:,} more rows like these ({kind.rstrip('.')})", "", source)
            for (source, kind), count in self._counts.items()
            if count > SHOWN_EACH
        )
        return (*self._kept, *more)
