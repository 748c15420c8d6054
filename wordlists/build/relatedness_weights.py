"""Fit the weights of goods/relatedness.py to graded pairs of goods. Writes wordlists/relatedness_weights.tsv.

python wordlists/build/relatedness_weights.py [--pairs tests/published/related_goods*.csv ...] [--to FOLDER]

A ridge regression of the grade (none 0, low 1, average 2, high 3, identical 4) on the evidence, apart for goods that
the lists of groups tie and for others. The pairs are mostly of related goods, while two goods of a register seldom are:
for goods that no list ties, where the evidence alone must tell, some such pairs drawn at random among the goods of the
table are added as unrelated. Prints Spearman's rho in nested cross-validation and
with every pair left out.
"""

from __future__ import annotations

import argparse
import csv
import random
from collections.abc import Sequence
from functools import cache
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from sources import write_table

from namescreen.goods.groups import ties
from namescreen.goods.phrases import items
from namescreen.goods.relatedness import FROM_ELSEWHERE, GRADES, UNTIED, all_evidence, score_of, untied
from namescreen.tables import table_bytes

HERE = Path(__file__).resolve().parent.parent
PUBLISHED = HERE.parent / "tests" / "published"
PAIRS = tuple(
    PUBLISHED / f"{name}.csv" for name in ("related_goods", "related_goods_makers", "related_goods_complements")
)
DRAWN, SEED = 1500, 7
"""The more are drawn, the fewer goods put together by chance are found related; graded pairs rank alike."""
IN_COMMON = ("covers", "words", "said alike", "serves", "serve one thing", "one field", "class", "claimed together")
"""Evidence of which more never makes goods less related."""
RIDGES = (0.5, 1.0, 2.0, 4.0)
FOLDS = 10
TIED = frozenset(
    ("one group", "of one kind", "one range", "one market", "used together", "side by side", FROM_ELSEWHERE)
)

Floats = NDArray[np.float64]


def fit(evidence: Floats, grades: Floats, ridge: float) -> Floats:
    """The weights, the constant last and not held back."""
    whole = np.c_[evidence, np.ones(len(evidence))]
    held = ridge * np.eye(whole.shape[1])
    held[-1, -1] = 0
    found: Floats = np.linalg.solve(whole.T @ whole + held, whole.T @ grades)
    return found


def ranks(values: Floats) -> Floats:
    """Ranks, ties sharing their mean."""
    order = np.sort(values)
    return (np.searchsorted(order, values, "left") + np.searchsorted(order, values, "right") - 1) / 2


def rho(one: Floats, other: Floats) -> float:
    """Spearman's rank correlation."""
    return float(np.corrcoef(ranks(one), ranks(other))[0, 1])


Weights = dict[str, float]
Evidence = Sequence[dict[str, float]]


def fitted(found: Evidence, grades: Floats, ridge: float) -> Weights:
    """The weights for tied goods, fitted on the pairs that are, and for others, fitted on all as if none were."""
    tied = [at for at, one in enumerate(found) if UNTIED not in one]
    weights = _block([found[at] for at in tied], grades[tied], ridge, "always") if tied else {"always": 0.0}
    drawn = _unrelated()
    plain = [
        {name: value for name, value in _as_untied(one).items() if name != UNTIED} for one in (*found, *drawn)
    ]
    others = _block(plain, np.r_[grades, np.zeros(len(drawn))], ridge, UNTIED)
    others[UNTIED] -= weights["always"]  # beside the constant of all
    return weights | others


@cache
def _unrelated() -> Evidence:
    """Pairs of goods drawn at random that no list ties."""
    rows = _pairs(PAIRS[0])
    ones, others = ([items(row[side])[0] for row in rows] for side in ("goods_a", "goods_b"))
    drawing = random.Random(SEED)
    found: list[dict[str, float]] = []
    while len(found) < DRAWN:
        one, other = drawing.choice(ones), drawing.choice(others)
        if ties(one, other) is None:
            found.append(all_evidence(one, other))
    return found


def _pairs(path: Path) -> list[dict[str, str]]:
    with path.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def _as_untied(one: dict[str, float]) -> dict[str, float]:
    return one if UNTIED in one else untied({name: value for name, value in one.items() if name not in TIED})


def _block(found: Evidence, grades: Floats, ridge: float, constant: str) -> Weights:
    names = list(found[0])
    while True:
        evidence = np.array([[one[name] for name in names] for one in found])
        weights = dict(zip([*names, constant], map(float, fit(evidence, grades, ridge)), strict=True))
        wrong = [name for name in names if name.removeprefix(UNTIED) in IN_COMMON and weights[name] < 0]
        if not wrong:
            return dict.fromkeys(found[0], 0.0) | weights
        names.remove(min(wrong, key=weights.__getitem__))


def left_out(found: Evidence, grades: Floats, ridge: float) -> Floats:
    """The score of each pair by weights fitted without it."""
    rest = [[other for other in range(len(found)) if other != at] for at in range(len(found))]
    weights = (fitted([found[other] for other in kept], grades[kept], ridge) for kept in rest)
    return np.array([score_of(one, by) for one, by in zip(found, weights, strict=True)])


def chosen_ridge(found: Evidence, grades: Floats) -> float:
    """The penalty under which pairs left out, tenth by tenth, are ranked best."""

    def reached(ridge: float) -> float:
        told = np.zeros(len(found))
        for part in range(FOLDS):
            kept = [at for at in range(len(found)) if at % FOLDS != part]
            by = fitted([found[at] for at in kept], grades[kept], ridge)
            for at in range(part, len(found), FOLDS):
                told[at] = score_of(found[at], by)
        return rho(told, grades)

    return max(RIDGES, key=reached)


def nested(found: Evidence, grades: Floats) -> Floats:
    """The score of each pair by weights and a penalty that were chosen without its tenth of the pairs."""
    told = np.zeros(len(found))
    for part in range(FOLDS):
        kept = [at for at in range(len(found)) if at % FOLDS != part]
        rest, of_rest = [found[at] for at in kept], grades[kept]
        by = fitted(rest, of_rest, chosen_ridge(rest, of_rest))
        for at in range(part, len(found), FOLDS):
            told[at] = score_of(found[at], by)
    return told


def main() -> None:
    """Fit, measure, write."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--pairs", type=Path, nargs="+", default=PAIRS)
    parser.add_argument("--to", type=Path, default=HERE)
    given = parser.parse_args()
    rows = [row for file in given.pairs for row in _pairs(file)]
    found = [all_evidence(items(row["goods_a"])[0], items(row["goods_b"])[0]) for row in rows]
    grades = np.array([float(GRADES.index(row["grade"])) for row in rows])
    ridge = chosen_ridge(found, grades)
    weights = fitted(found, grades, ridge)
    within = rho(np.array([score_of(one, weights) for one in found]), grades)
    plain = [_as_untied(one) for one in found]
    reached = (
        f"Spearman's rho {rho(nested(found, grades), grades):.3f} in ten-fold nested cross-validation, "
        f"{rho(left_out(found, grades, ridge), grades):.3f} with each pair left out in turn, {within:.3f} fitted; "
        f"{rho(nested(plain, grades), grades):.3f} nested for goods as if no list tied them"
    )
    print(f"{len(rows)} pairs: {reached}")
    contents = table_bytes("relatedness_weights", ((name, f"{weight:.3f}") for name, weight in weights.items()))
    write_table(
        given.to, "relatedness_weights.tsv", contents,
        source="fitted on the graded pairs of tests/published/related_goods.csv, related_goods_makers.csv and "
        "related_goods_complements.csv (sources there: decisions, guidelines "
        f"and practice, most from memory; the lists of groups were written with the pairs known), and for goods "
        f"that no list ties on {DRAWN} pairs drawn at random as unrelated; {reached}",
        version=f"{len(rows)} pairs, ridge penalty {ridge:g}", licence="the project's own (MIT)",
        build="python wordlists/build/relatedness_weights.py",
    )  # fmt: skip


if __name__ == "__main__":
    main()
