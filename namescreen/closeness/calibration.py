"""The meaning of a closeness: of decided pairs that were so close, how many were held too similar.

Drawn by wordlists/build/closeness_model.py: a logistic curve through the closeness of decided pairs, each worked out
with its case held out, and the spread of that curve over samples of the cases. It speaks of published decisions, most
of which are near the line; it is no probability that an office or a court would refuse a name.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from ..tables import open_table

__all__ = ["Calibration", "calibration"]

PREFIX = "calibration: "


@dataclass(frozen=True, slots=True)
class Calibration:
    """The share of decided pairs of such a closeness, for the same or close goods, that were held too similar, and the
    range of nine in ten samples of the cases; all in [0, 1]."""

    similar: float
    low: float
    high: float

    @property
    def statement(self) -> str:
        """In words."""
        return self._of("this close")

    def statement_for(self, mark: str) -> str:
        """In words, where several marks are told of."""
        return self._of(f"as close as {mark}")

    def _of(self, close: str) -> str:
        similar, low, high = (round(100 * value) for value in (self.similar, self.low, self.high))
        return (
            f"Of decided pairs {close}, for the same or close goods, about {similar} in 100 were held too alike "
            f"({low} to {high}). That is about past cases, not about yours."
        )


@cache
def _curve() -> tuple[tuple[float, tuple[float, ...]], ...]:
    rows = open_table("closeness_model.tsv").starting(PREFIX)
    return tuple((float(key[len(PREFIX) :]), tuple(map(float, value.split()))) for key, value in rows)


def calibration(overall: float) -> Calibration:
    """The calibration of an overall closeness in [0, 1], to two decimals, as it is shown, so that no number has two
    statements; never falls as closeness rises."""
    curve, overall = _curve(), round(overall, 2)
    at = max(place for place, (start, _) in enumerate(curve[:-1]) if start <= max(overall, curve[0][0]))
    (start, ours), (end, theirs) = curve[at], curve[at + 1]
    share = min(1.0, max(0.0, (overall - start) / (end - start)))
    similar, low, high = (mine + share * (yours - mine) for mine, yours in zip(ours, theirs, strict=True))
    return Calibration(similar, low, high)
