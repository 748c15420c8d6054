"""Names that tribunals and textbooks have placed on the continuum, and where we place them.

distinctiveness.csv holds facts (mark, goods, category, citation). `basis` says whether a row was collected with its
citation at hand or written from memory, to be checked against the decision. Names are not expected to be right
row by row: the order as a whole is measured.
"""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from namescreen.goods import CATEGORIES, Distinctiveness, distinctiveness

FILE = Path(__file__).parent / "distinctiveness.csv"
ROWS = list(csv.DictReader(FILE.read_text(encoding="utf-8").splitlines()))
INHERENT = ("suggestive", "arbitrary", "fanciful")


@pytest.fixture(scope="module")
def found() -> list[Distinctiveness]:
    results = [distinctiveness(row["mark"], row["goods"]) for row in ROWS]
    return [result for result in results if isinstance(result, Distinctiveness)]


def auc(above: list[float], below: list[float]) -> float:
    wins = sum((a > b) + 0.5 * (a == b) for a in above for b in below)
    return wins / (len(above) * len(below))


def test_enough_rows_of_every_category_each_with_its_source() -> None:
    assert len(ROWS) >= 100
    assert len({(row["mark"], row["goods"]) for row in ROWS}) == len(ROWS)
    assert all(row["citation"] and row["basis"] in ("collected", "from memory") for row in ROWS)
    for category in CATEGORIES:
        assert sum(row["category"] == category for row in ROWS) >= 10


def test_inherently_distinctive_names_score_above_the_others(found: list[Distinctiveness]) -> None:
    """ROC-AUC at least 0.80, where chance is 0.5."""
    assert len(found) == len(ROWS)
    above = [one.score for row, one in zip(ROWS, found, strict=True) if row["category"] in INHERENT]
    below = [one.score for row, one in zip(ROWS, found, strict=True) if row["category"] not in INHERENT]
    assert auc(above, below) >= 0.80


def test_categories_are_told_apart_better_than_by_the_commonest(found: list[Distinctiveness]) -> None:
    """Five-way accuracy at least 0.50; always saying "descriptive" reaches 0.35."""
    right = sum(row["category"] == one.category for row, one in zip(ROWS, found, strict=True))
    commonest = max(sum(row["category"] == category for row in ROWS) for category in CATEGORIES)
    assert right / len(ROWS) >= 0.50 > commonest / len(ROWS)


def test_mean_scores_rise_along_the_continuum(found: list[Distinctiveness]) -> None:
    means = []
    for category in CATEGORIES:
        scores = [one.score for row, one in zip(ROWS, found, strict=True) if row["category"] == category]
        means.append(sum(scores) / len(scores))
    assert means[0] < means[2] < means[3] < means[4]
    assert means[1] < means[2]
