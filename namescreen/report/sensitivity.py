"""The names side by side under the brief's weights, and how firm their order is when the weights move.

A name's total is the weighted mean of its checks' values (see `findings`), 1 = nothing speaks against it. A
check that was not made for a name could have come out anywhere, so the total is then a span, and the name
stands by the lower end. A check that was made for no name drops out. A knockout is not outweighed: such
names stand last.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from .findings import findings, matters
from .model import CHECKS, Report, Weights

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


_Row = tuple[str, bool, tuple[float | None, ...]]
"""A name, whether a knockout stands against it, and its values in the order of `CHECKS`."""


def _rows(report: Report) -> list[_Row]:
    return [
        (
            entry.name,
            any(found.knockout and found.mark.status != "dead" for found in matters(entry)),
            tuple(finding.value for finding in findings(entry)),
        )
        for entry in report.names
    ]


def _weighed(rows: Iterable[_Row], weights: Weights) -> tuple[str, ...]:
    made = {at for _, _, values in rows for at, value in enumerate(values) if value is not None}
    return tuple(check for at, check in enumerate(CHECKS) if getattr(weights, check) > 0 and at in made)


def weighed(report: Report) -> tuple[str, ...]:
    """The checks that enter the comparison: weight above zero, and made for at least one name."""
    return _weighed(_rows(report), report.weights)


def standings(report: Report) -> tuple[Standing, ...]:
    """Every name in order, best first, under the report's weights.

    Equal totals, seen to six decimals, share a place and stand in the order of the brief.
    """
    return _placed(_rows(report), report.weights)


def _placed(found: Sequence[_Row], weights: Weights) -> tuple[Standing, ...]:
    checks = _weighed(found, weights)
    placed: list[Standing] = []
    for at, row in enumerate(sorted((_standing(one, checks, weights) for one in found), key=_rank)):
        before = placed[-1] if placed else None
        same = before is not None and _rank(before) == _rank(row)
        placed.append(replace(row, place=before.place if before is not None and same else at + 1))
    return tuple(placed)


def _rank(row: Standing) -> tuple[bool, float, float]:
    return row.knockout, -round(row.low, 6), -round(row.high, 6)


def _standing(found: _Row, checks: tuple[str, ...], weights: Weights) -> Standing:
    name, knockout, values = found
    by_check = dict(zip(CHECKS, values, strict=True))
    total = sum(getattr(weights, check) for check in checks)

    def mean(unknown: float) -> float:
        if not total:
            return 0.0
        parts = ((getattr(weights, check), by_check[check]) for check in checks)
        return float(sum(weight * (unknown if value is None else value) for weight, value in parts) / total)

    return Standing(name, 0, knockout, values, mean(0.0), mean(1.0))


def _moved(report: Report) -> Iterator[tuple[str, tuple[Standing, ...]]]:
    """The order by the report's own weights, then with each weight in turn halved and doubled."""
    found = _rows(report)
    yield "weights as they stand", _placed(found, report.weights)
    for check in _weighed(found, report.weights):
        for share, word in ((1 / MOVED, "halved"), (MOVED, "doubled")):
            weights = replace(report.weights, **{check: getattr(report.weights, check) * share})
            yield f"{CHECKS[check]} {word}", _placed(found, weights)


def moves(report: Report) -> tuple[Move, ...]:
    """The order when each weight in turn is halved and doubled, the report's own weights first."""
    order: dict[str, int] = {}
    told = []
    for change, rows in _moved(report):
        order = order or {row.name: row.place for row in rows}
        changed = sum(
            order[one.name] > order[two.name] and one.place < two.place
            for at, one in enumerate(rows)
            for two in rows[at + 1 :]
        )
        told.append(Move(change, tuple(row.name for row in rows[:3]), changed))
    return tuple(told)


def places(report: Report) -> dict[str, tuple[int, int]]:
    """For each name, the best and the worst place it takes over all the moves."""
    taken: dict[str, list[int]] = {}
    for _, rows in _moved(report):
        for row in rows:
            taken.setdefault(row.name, []).append(row.place)
    return {name: (min(found), max(found)) for name, found in taken.items()}
