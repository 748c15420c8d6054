"""An existing mark, as a register or a typed list gives it."""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["Mark"]


@dataclass(frozen=True, slots=True)
class Mark:
    """One existing mark. `text` is its words; every other field may be empty, which means: not stated.

    `status` is "live", "dead" or "" (not stated); `status_as_given` keeps the office's own word or code.
    Dates are ISO 8601 (YYYY-MM-DD). `classes` are Nice classes, 1 to 45, ascending.
    """

    text: str
    number: str = ""
    office: str = ""
    classes: tuple[int, ...] = ()
    goods: str = ""
    status: str = ""
    status_as_given: str = ""
    owner: str = ""
    filed: str = ""
    registered: str = ""
    source: str = ""
    line: int = 0
