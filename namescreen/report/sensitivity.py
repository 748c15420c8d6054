"""The names side by side under the brief's weights, and how stable their order is when the weights change.

Names are grouped by their worst finding (see `policy.gate`), and no weight moves a name to another group. Inside a
group names of which it is not known what they are for the goods stand last; then the number of markets in which the
worst finding stands decides (`policy.reach_of`), then the next worst findings (`policy.grave_findings`), of names alike
in these those that may be refused for what they are stand last (`policy.flaw_of_its_own`); then the total: the weighted
mean of the checks' values (see `findings`), 1 = nothing speaks against the name.
A check that was not made for a name could have come out anywhere, so the total is then a span, and the name stands by
the lower end. A check that was made for no name drops out.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from ..policy import OWN_CHECK, Finding, Level, flaw_of_its_own, gate, grave_findings, reach_of
from .findings import findings
from .model import CHECKS, NameEntry, Report, Weights
from .open_markets import lost

__all__ = ["Move", "Standing", "moves", "places", "standings", "standings_of", "weighed"]

MOVED = 2.0
"""Each weight in turn is halved and doubled: a plain, wide share (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class Standing:
    """A name's place: `values` by check (None when not checked), and the span of its total in [0, 1].

    `group` is that of the worst finding, from 0 (nothing found) to 4 (barred); a lower group stands first. `grave` are
    all findings from "look closer" on as such numbers, the gravest first. `flaw` is how likely the name is refused for
    what it is, from 0 to 4, `reach` in how many markets the worst finding stands, and `closed` in how many anything
    serious does; `unjudged` says that it is not known
    what the name is for the goods, though it is of others, and `knockout` that a mark bars the name.
    """

    name: str
    place: int
    group: int
    grave: tuple[int, ...]
    flaw: int
    reach: int
    closed: int
    unjudged: bool
    knockout: bool
    values: tuple[float | None, ...]
    low: float
    high: float

    @property
    def found(self) -> tuple[int, bool, int, int, tuple[int, ...], int]:
        """What stands before the total in the order of names, the less the better."""
        return self.group, self.unjudged, self.reach, self.closed, self.grave, self.flaw


@dataclass(frozen=True, slots=True)
class Move:
    """What happens when one weight moves: the first three names, and how many pairs of names change order."""

    change: str
    first: tuple[str, ...]
    pairs_changed: int


_Row = tuple[str, int, tuple[int, ...], int, int, int, bool, bool, tuple[float | None, ...]]
"""A name, its group, its grave findings, its own flaw, the reach of its worst finding, in how many markets something
serious stands, whether it is not judged what it is, whether a mark bars it, and its values, as `CHECKS` stand."""


def _rows(entries: Iterable[NameEntry]) -> list[_Row]:
    found = [(entry, findings(entry)) for entry in entries]
    made = {one.check for _, each in found for one in each if one.level is not Level.NOT_CHECKED}
    return [
        (
            entry.name,
            gate(each, made),
            grave_findings(each, made),
            max(flaw_of_its_own(each), Level.LOOK if _is_unjudged(each, made) else 0),
            reach_of(each),
            lost(entry),
            _is_unjudged(each, made),
            any(one.bars and one.check == "marks" for one in each),
            tuple(one.value for one in each),
        )
        for entry, each in found
    ]


def _is_unjudged(found: Sequence[Finding], made: Collection[str]) -> bool:
    """Whether it is not known what a name is for the goods, though it is of other names: it stands behind those of its
    group that were judged."""
    own = next(one for one in found if one.check == OWN_CHECK)
    return own.value is None and own.check in made


def _weighed(rows: Iterable[_Row], weights: Weights) -> tuple[str, ...]:
    made = {at for *_, values in rows for at, value in enumerate(values) if value is not None}
    return tuple(check for at, check in enumerate(CHECKS) if getattr(weights, check) > 0 and at in made)


def weighed(report: Report) -> tuple[str, ...]:
    """The checks that enter the comparison: weight above zero, and made for at least one name."""
    return _weighed(_rows(report.names), report.weights)


def standings(report: Report) -> tuple[Standing, ...]:
    """Every name of a report in order: see `standings_of`."""
    return standings_of(report.names, report.weights)


def standings_of(entries: Iterable[NameEntry], weights: Weights) -> tuple[Standing, ...]:
    """Every name in order, least against it first.

    Names of one group with equal totals, seen to six decimals, share a place and stand in the order given.
    """
    return _placed(_rows(entries), weights)


def _placed(found: Sequence[_Row], weights: Weights) -> tuple[Standing, ...]:
    checks = _weighed(found, weights)
    placed: list[Standing] = []
    for at, row in enumerate(sorted((_standing(one, checks, weights) for one in found), key=_rank)):
        before = placed[-1] if placed else None
        same = before is not None and _rank(before) == _rank(row)
        placed.append(replace(row, place=before.place if before is not None and same else at + 1))
    return tuple(placed)


def _rank(row: Standing) -> tuple[tuple[int, bool, int, int, tuple[int, ...], int], float, float]:
    return row.found, -round(row.low, 6), -round(row.high, 6)


def _standing(found: _Row, checks: tuple[str, ...], weights: Weights) -> Standing:
    name, group, grave, flaw, reach, closed, unjudged, knockout, values = found
    by_check = dict(zip(CHECKS, values, strict=True))
    total = sum(getattr(weights, check) for check in checks)

    def mean(unknown: float) -> float:
        if not total:
            return 0.0
        parts = ((getattr(weights, check), by_check[check]) for check in checks)
        return float(sum(weight * (unknown if value is None else value) for weight, value in parts) / total)

    return Standing(name, 0, group, grave, flaw, reach, closed, unjudged, knockout, values, mean(0.0), mean(1.0))


def _moved(report: Report) -> Iterator[tuple[str, tuple[Standing, ...]]]:
    """The order by the report's own weights, then with each weight in turn halved and doubled."""
    found = _rows(report.names)
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
