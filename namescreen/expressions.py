"""Regular expressions that are compiled when they are first used: a command defines hundreds and uses few."""

from __future__ import annotations

import re
from typing import cast

__all__ = ["expression"]


class _Expression:
    """What a compiled expression is, from the first use of each of its methods."""

    def __init__(self, pattern: str, flags: int) -> None:
        self._pattern, self._flags = pattern, flags

    def __getattr__(self, name: str) -> object:
        found = getattr(re.compile(self._pattern, self._flags), name)
        setattr(self, name, found)
        return found


def expression(pattern: str, flags: int = 0) -> re.Pattern[str]:
    """As `re.compile`, to be called through its methods (`expression(...).sub`); a pattern that is none raises
    `re.error` when it is first used."""
    return cast("re.Pattern[str]", _Expression(pattern, flags))
