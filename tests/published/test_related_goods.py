"""How related goods are, against grades of offices and of practice (the source stands beside each row)."""

from __future__ import annotations

import csv
import random
from pathlib import Path

import pytest

from namescreen.goods import GRADES, Relatedness, relatedness


def _rows(name: str) -> list[dict[str, str]]:
    with (Path(__file__).parent / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


ROWS = _rows("related_goods.csv")
UNSEEN = _rows("related_goods_unseen.csv")
DRAWN = _rows("related_goods_drawn.csv")
BESIDE = _rows("related_goods_complements_kept.csv")
BESIDE_TOO = _rows("related_goods_complements_other.csv")
WORDED = _rows("related_goods_wording.csv")


def _score(row: dict[str, str]) -> float:
    found = relatedness(row["goods_a"], row["goods_b"])
    assert isinstance(found, Relatedness)
    return found.score


def _ranks(values: list[float]) -> list[float]:
    order = sorted(values)
    return [order.index(value) + (order.count(value) - 1) / 2 for value in values]


def _rho(one: list[float], other: list[float]) -> float:
    """Spearman's rank correlation, ties sharing their mean rank."""
    ranks_one, ranks_other = _ranks(one), _ranks(other)
    middle = (len(one) - 1) / 2
    both = sum((a - middle) * (b - middle) for a, b in zip(ranks_one, ranks_other, strict=True))
    spread = [sum((a - middle) ** 2 for a in ranks) for ranks in (ranks_one, ranks_other)]
    return float(both / (spread[0] * spread[1]) ** 0.5)


def test_scores_follow_the_grades() -> None:
    """The weights are fitted on these pairs (rho with each left out: SOURCES.md), so this guards against loss only."""
    assert len(ROWS) >= 60
    assert {row["grade"] for row in ROWS} == set(GRADES)
    assert all(row["source"] for row in ROWS)
    assert _rho([_score(row) for row in ROWS], [float(GRADES.index(row["grade"])) for row in ROWS]) >= 0.78


def test_pairs_kept_for_a_test_are_ranked_too() -> None:
    """Six lots, of 40, 40, 57, 60, 58 and 54, graded before their first run, by common practice, and not fitted: rho
    0.72, 0.74, 0.72, 0.85, 0.65 and 0.82 at the first run, 19 in 20 grades within one. Average and high are hard to
    tell apart."""
    found = [_score(row) for row in UNSEEN]
    grades = [float(GRADES.index(row["grade"])) for row in UNSEEN]
    assert _rho(found, grades) >= 0.75
    assert sum(abs(4 * score - grade) <= 1.5 for score, grade in zip(found, grades, strict=True)) >= 285


def test_pairs_with_goods_drawn_from_records_are_ranked_too() -> None:
    """Lots of 75 and 60, graded before their first run and never fitted: the first goods of half of the first, and all
    of the second, are drawn by chance from lists of real marks. rho 0.50 and 0.61 at the first run: much is not told
    apart, so this guards against loss only."""
    found = [_score(row) for row in DRAWN]
    assert _rho(found, [float(GRADES.index(row["grade"])) for row in DRAWN]) >= 0.58


def test_the_same_goods_in_another_wording_are_told() -> None:
    """Makers' own wording beside that of registers, narrower and broader terms of the trade, and unlike goods that
    share words. Lots of 105, 74 and 36, graded before their first run: with the code before rho 0.70, 0.78 and 0.49,
    and 35 of 59, 21 of 42 and 6 of 20 identical ones found; of the second and third at their first run, after the lots
    before were mended, 0.92 and 0.88, 39 and 17. What is not fresh guards against loss only."""
    found = [_score(row) for row in WORDED]
    grades = [float(GRADES.index(row["grade"])) for row in WORDED]
    assert _rho(found, grades) >= 0.87
    alike = [score for score, grade in zip(found, grades, strict=True) if grade == 4]
    assert sum(score >= 0.9 for score in alike) >= 0.92 * len(alike)


def test_what_belongs_to_goods_is_told_from_what_is_mentioned_beside_them() -> None:
    """Accessories, care, repair and rental of goods, and goods that only name a place, a time or a look; half of the
    trades of our own, graded by common practice, and half of an author's makers, graded by a reader: 187 pairs, never
    fitted. rho of the author's 100 with the code before 0.60, at the first run of this 0.67, after the other half was
    mended 0.73. Of another author's 200, of other trades, 0.41 and 0.35 before and 0.56 and 0.52 at the first run; the
    first half was looked at afterwards."""
    for rows, least in ((BESIDE, 0.62), (BESIDE_TOO, 0.52)):
        found = [_score(row) for row in rows]
        assert _rho(found, [float(GRADES.index(row["grade"])) for row in rows]) >= least


def test_goods_put_together_by_chance_are_seldom_related() -> None:
    """Most goods of a register are unrelated to those of a name, and a lot of graded pairs, which are mostly related,
    does not show whether that is told. Of pairs by chance of these lots 0.06 are related at all; by wider lists of
    goods, which ranked graded pairs as well, several times as many."""
    rng = random.Random(1)
    pairs = [(rng.choice(DRAWN)["goods_a"], rng.choice(DRAWN)["goods_a"]) for _ in range(400)]
    scores = [found.score for pair in pairs if isinstance(found := relatedness(*pair), Relatedness)]
    assert sum(score > 0 for score in scores) <= 0.1 * len(scores)


@pytest.mark.parametrize(
    "row", [row for row in ROWS if "attorney" in row["source"]], ids=lambda row: f"{row['goods_a']}/{row['goods_b']}"
)
def test_what_an_attorney_expects_is_told(row: dict[str, str]) -> None:
    found = relatedness(row["goods_a"], row["goods_b"])
    assert isinstance(found, Relatedness)
    assert found.grade == row["grade"]


ENDS = [row for row in ROWS if row["grade"] in ("none", "identical")]


@pytest.mark.parametrize("row", ENDS, ids=lambda row: f"{row['goods_a']}/{row['goods_b']}")
def test_ends_of_the_scale_are_kept_apart(row: dict[str, str]) -> None:
    """Identical goods are never called unrelated, and unrelated ones never highly related."""
    score = _score(row)
    assert score >= 0.5 if row["grade"] == "identical" else score < 0.65
