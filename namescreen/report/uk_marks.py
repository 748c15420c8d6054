"""How many UK marks a list holds without naming them: those that came from EU marks registered before 2021."""

from __future__ import annotations

from collections.abc import Sequence

from ..marks.mark import Mark
from ..marks.territory import lives_on_in_uk
from .fingerprints import MOST

__all__ = ["from_eu_marks"]


def from_eu_marks(marks: Sequence[Mark]) -> int:
    """The live marks of a list from which a UK mark of its own came; 0 for a long list."""
    return sum(lives_on_in_uk(mark) and not mark.is_dead for mark in marks) if len(marks) <= MOST else 0
