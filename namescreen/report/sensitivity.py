"""The names side by side under the brief's weights, and how firm their order is when the weights move.

A name's total is the weighted mean of its checks' values (see `findings`), 1 = nothing speaks against it. A
check that was not made for a name could have come out anywhere, so the total is then a span, and the name
stands by the lower end. A check that was made for no name drops out. A knockout is not outweighed: such
names stand last.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from .findings import findings, matters
from .model import CHECKS, NameEntry, Report, Weights

__all__ = ["Move", "Standing", "moves", "places", "standings", "weighed"]

MOVED = 2.0
"""Each weight in turn is halved and doubled: a plain, wide share (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class Standing:
    """A name's place: `values` by check (None when not checked), and the span of its total in [0, 1]."""

    name: str
    place: int
    knockout: bool
    values: tuple[float | None, ...]
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class Move:
    """What happens when one weight moves: the first three names, and how many pairs of names change order."""

    change: str
    first: tuple[str, ...]
    pairs_changed: int


def weighed(report: Report) -> tuple[str, ...]:
    """The checks that enter the comparison: weight above zero, and made for at least one name."""
    made = [[finding.value is not None for finding in findings(entry)] for entry in report.names]
    return tuple(
        check for at, check in enumerate(CHECKS) if getattr(report.weights, check) > 0 and any(row[at] for row in made)
    )


def standings(report: Report, weights: Weights | None = None) -> tuple[Standing, ...]:
    """Every name in order, best first, under `weights` (the report's own if not given).

    Equal totals, seen to six decimals, share a place and stand in the order of the brief.
    """
    weights = weights or report.weights
    checks = weighed(report)
    rows = sorted(
        (_standing(entry, checks, weights) for entry in report.names),
        key=lambda row: (row.knockout, -round(row.low, 6), -round(row.high, 6)),
    )
    placed: list[Standing] = []
    for at, row in enumerate(rows):
        before = placed[-1] if placed else None
        same = before is not None and _rank(before) == _rank(row)
        placed.append(replace(row, place=before.place if before is not None and same else at + 1))
    return tuple(placed)


def _rank(row: Standing) -> tuple[bool, float, float]:
    return row.knockout, round(row.low, 6), round(row.high, 6)


def _standing(entry: NameEntry, checks: tuple[str, ...], weights: Weights) -> Standing:
    values = tuple(finding.value for finding in findings(entry))
    by_check = dict(zip(CHECKS, values, strict=True))
    total = sum(getattr(weights, check) for check in checks)

    def mean(unknown: float) -> float:
        if not total:
            return 0.0
        parts = ((getattr(weights, check), by_check[check]) for check in checks)
        return float(sum(weight * (unknown if value is None else value) for weight, value in parts) / total)

    knockout = any(found.knockout and found.mark.status != "dead" for found in matters(entry))
    return Standing(entry.name, 0, knockout, values, mean(0.0), mean(1.0))


def moves(report: Report) -> tuple[Move, ...]:
    """The order when each weight in turn is halved and doubled, the brief's own weights first."""
    own = standings(report)
    order = {row.name: row.place for row in own}
    told = [Move("weights as they stand", tuple(row.name for row in own[:3]), 0)]
    for check in weighed(report):
        for share, word in ((1 / MOVED, "halved"), (MOVED, "doubled")):
            rows = standings(report, _moved(report.weights, check, share))
            changed = sum(
                order[one.name] > order[two.name]
                for at, one in enumerate(rows)
                for two in rows[at + 1 :]
                if one.place < two.place
            )
            told.append(Move(f"{CHECKS[check]} {word}", tuple(row.name for row in rows[:3]), changed))
    return tuple(told)


def places(report: Report) -> dict[str, tuple[int, int]]:
    """For each name, the best and the worst place it takes over all the moves."""
    found: dict[str, list[int]] = {row.name: [row.place] for row in standings(report)}
    for check in weighed(report):
        for share in (1 / MOVED, MOVED):
            for row in standings(report, _moved(report.weights, check, share)):
                found[row.name].append(row.place)
    return {name: (min(taken), max(taken)) for name, taken in found.items()}


def _moved(weights: Weights, check: str, share: float) -> Weights:
    return replace(weights, **{check: getattr(weights, check) * share})
