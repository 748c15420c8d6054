"""What a search returns."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from ..marks.columns import Selection
from ..marks.mark import Mark

if TYPE_CHECKING:
    from ..closeness import Closeness

__all__ = ["Hit"]


@dataclass(frozen=True, slots=True)
class Hit:
    """A name of the register that is close to the `name` searched for, with the marks that carry it.

    `marks` are all that count, in the order of the register: as many as there are, each decoded only when it is asked
    for. `overall` closeness, in [0, 1], 1 = identical, is the same for all of them: their folded words are the same.
    """

    marks: Selection
    overall: float
    name: str

    @property
    def mark(self) -> Mark:
        """The first of the marks."""
        return self.marks[0]

    @property
    def closeness(self) -> Closeness:
        """Every aspect, with reasons; computed when it is asked for."""
        from ..closeness import compare

        return compare(self.name, self.mark.text)
