"""Fit the weights of goods/relatedness.py to graded pairs of goods. Writes wordlists/relatedness_weights.tsv.

python wordlists/build/relatedness_weights.py [--pairs tests/published/related_goods.csv] [--to FOLDER]

A ridge regression of the grade (none 0, low 1, average 2, high 3, identical 4) on the evidence; prints Spearman's rho
with every pair left out in turn.
"""

from __future__ import annotations

import argparse
import csv
from collections.abc import Iterable
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from sources import write_table

from namescreen.goods.phrases import items
from namescreen.goods.relatedness import GRADES, all_evidence, score_of
from namescreen.tables import table_bytes

HERE = Path(__file__).resolve().parent.parent
RIDGE = 1.0

Floats = NDArray[np.float64]


def fit(evidence: Floats, grades: Floats) -> Floats:
    """The weights, the constant last and not held back."""
    whole = np.c_[evidence, np.ones(len(evidence))]
    held = RIDGE * np.eye(whole.shape[1])
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


def named(names: list[str], weights: Floats) -> dict[str, float]:
    """The weights by their names; the last is the constant."""
    return dict(zip([*names, "always"], map(float, weights), strict=True))


def main() -> None:
    """Fit, measure, write."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--pairs", type=Path, default=HERE.parent / "tests" / "published" / "related_goods.csv")
    parser.add_argument("--to", type=Path, default=HERE)
    given = parser.parse_args()
    with given.pairs.open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    found = [all_evidence(items(row["goods_a"])[0], items(row["goods_b"])[0]) for row in rows]
    names = list(found[0])
    evidence = np.array([[one[name] for name in names] for one in found])
    grades = np.array([float(GRADES.index(row["grade"])) for row in rows])
    without = [fit(np.delete(evidence, at, 0), np.delete(grades, at)) for at in range(len(rows))]
    weights = fit(evidence, grades)

    def told(each: Iterable[Floats]) -> float:
        return rho(np.array([score_of(one, named(names, by)) for one, by in zip(found, each, strict=True)]), grades)

    held, fitted = told(without), told([weights] * len(rows))
    print(f"{len(rows)} pairs: rho {held:.3f} with each left out, {fitted:.3f} fitted")
    table = {name: f"{weight:.3f}" for name, weight in named(names, weights).items()}
    contents = table_bytes("relatedness_weights", table.items())
    write_table(
        given.to, "relatedness_weights.tsv", contents,
        source="fitted on the graded pairs of tests/published/related_goods.csv (sources there: decisions, guidelines "
        f"and practice, most from memory); Spearman's rho {held:.3f} with each pair left out in turn, "
        f"{fitted:.3f} fitted",
        version=f"{len(rows)} pairs", licence="the project's own (MIT)",
        build="python wordlists/build/relatedness_weights.py",
    )  # fmt: skip


if __name__ == "__main__":
    main()
