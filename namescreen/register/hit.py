"""What a search is asked for, and what it returns."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, NamedTuple

from ..marks.columns import Selection
from ..marks.mark import Mark

if TYPE_CHECKING:
    from ..closeness import Closeness, Scores

__all__ = ["Hit", "Wanted"]


class Wanted(NamedTuple):
    """A name to search for: how many of the closest are wanted, none less close than `least` overall; with `goods`,
    every aspect is worked out for these too, and with `spaced`, which is the name as its readers divide it, of that."""

    name: str
    top: int
    least: float = 0.0
    goods: str | None = None
    spaced: str | None = None


@dataclass(frozen=True, slots=True)
class Hit:
    """A name of the register that is close to the `name` searched for, with the marks that carry it.

    `marks` are all that count, in the order of the register: as many as there are, each decoded only when it is asked
    for. `overall` closeness, in [0, 1], 1 = identical, is the same for all of them: their folded words are the same.
    """

    marks: Selection
    overall: float
    name: str
    goods: str | None = None
    scores: Scores | None = field(default=None, repr=False)
    """Every aspect for these goods of the name, where the search worked it out."""
    spaced: Scores | None = field(default=None, repr=False)
    """The same of the name as its readers divide it."""
    letters: str = field(default="", repr=False)
    """The folded words of the marks, run together."""
    as_bare: float = field(default=0.0, repr=False)
    """How close they count where what says nothing of the maker is left out; 0 where they have none of it."""

    @property
    def mark(self) -> Mark:
        """The first of the marks."""
        return self.marks[0]

    @property
    def closeness(self) -> Closeness:
        """Every aspect for the goods of the name; the reasons are worked out when they are asked for."""
        from ..closeness import closeness_from, compare

        if self.scores is None:
            return compare(self.name, self.mark.text, name_goods=self.goods)
        return closeness_from(self.name, self.mark.text, self.scores, name_goods=self.goods)
