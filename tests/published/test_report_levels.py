"""What the report says of its own line, against decided cases (source of each: the pairs' tribunal and citation)."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from namescreen import compare
from namescreen.goods import relatedness
from namescreen.marks import Mark
from namescreen.policy import Level, level_of
from namescreen.report.findings import MISSED
from namescreen.screening import CloseMark, is_knockout

SHARES = {"one in four": 1 / 4, "one in five": 1 / 5, "one in six": 1 / 6, "one in eight": 1 / 8, "one in ten": 1 / 10}


@pytest.mark.shared
def test_the_share_of_similar_pairs_passed_over_is_as_stated(shared_folder: Path) -> None:
    with (shared_folder / "checks" / "decided_pairs.csv").open(encoding="utf-8", newline="") as file:
        rows = [row for row in csv.DictReader(file) if (row["aspect"], row["label"]) == ("overall", "similar")]
    passed = 0
    for row in rows:
        near = compare(row["mark_a"], row["mark_b"], name_goods=row["goods_a"], mark_goods=row["goods_b"])
        related = relatedness(row["goods_a"], row["goods_b"])
        mark = Mark(row["mark_b"])
        found = CloseMark(mark, near, related, is_knockout(mark, near, related))
        passed += level_of(found.concern) is Level.NOTHING
    assert len(rows) > 50
    assert passed / len(rows) <= SHARES[MISSED] + 0.03
