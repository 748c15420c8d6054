"""Classes that offices search together, against classes that real applicants claim together.

The table is drawn from the USPTO's coordinated classes and from memory; the records (150 EU trade marks, EUIPO open
data) were counted for this test only."""

from __future__ import annotations

import re
from collections import Counter
from itertools import combinations
from pathlib import Path

import pytest

from namescreen.tables import open_table

pytestmark = pytest.mark.shared
_CLASS = re.compile(r"<(?:\w+:)?ClassNumber>\s*(\d+)")


def test_the_table_tells_which_classes_are_claimed_together(shared_folder: Path) -> None:
    """Pairs claimed together at least twice and half as often again as by chance, against pairs that never are though
    chance would have it: AUC 0.86 (29 and 123 pairs; 0.78 for the list from memory alone)."""
    folder = shared_folder / "registers" / "euipo"
    if not folder.exists():
        pytest.skip("needs the offices' records in ../shared/registers beside the checkout")
    texts = (path.read_text(encoding="utf-8") for path in sorted(folder.glob("*.xml")))
    claimed = [sorted(set(map(int, _CLASS.findall(text)))) for text in texts]
    several = [one for one in claimed if len(one) > 1]
    single = Counter(number for one in several for number in one)
    together = Counter(pair for one in several for pair in combinations(one, 2))
    expected = {pair: single[pair[0]] * single[pair[1]] / len(several) for pair in combinations(range(1, 46), 2)}
    often = [_value(pair) for pair, n in together.items() if n >= 2 and n > 1.5 * expected[pair]]
    never = [_value(pair) for pair, n in expected.items() if not together[pair] and n >= 0.3]
    higher = sum((one > other) + 0.5 * (one == other) for one in often for other in never)
    assert higher / (len(often) * len(never)) >= 0.8


def _value(pair: tuple[int, int]) -> float:
    return float(open_table("class_pairs.tsv").get(f"{pair[0]} {pair[1]}") or 0.0)
