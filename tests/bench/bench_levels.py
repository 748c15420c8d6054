"""How the levels of a report's marks stand to decided cases: what share of pairs reaches each level.

    python tests/bench/bench_levels.py

Needs the published data beside the checkout (../shared/checks/decided_pairs.csv): pairs of marks that tribunals and
offices held similar or dissimilar overall, with their goods. Litigated pairs lie near the line, so neither share can
be near 1 or 0; what matters is how many similar pairs a reader would pass over as "nothing found".
"""

from __future__ import annotations

import csv
from pathlib import Path

from namescreen import compare
from namescreen.goods import relatedness
from namescreen.marks import Mark
from namescreen.policy import Level, level_of
from namescreen.screening import CloseMark, is_knockout

PAIRS = Path(__file__).parents[3] / "shared" / "checks" / "decided_pairs.csv"


def level(row: dict[str, str]) -> Level:
    goods_a, goods_b = row["goods_a"], row["goods_b"]
    near = compare(row["mark_a"], row["mark_b"], name_goods=goods_a or None, mark_goods=goods_b or None)
    related = relatedness(goods_a, goods_b)
    mark = Mark(row["mark_b"])
    return level_of(CloseMark(mark, near, related, is_knockout(mark, near, related)).concern)


def main() -> None:
    with PAIRS.open(encoding="utf-8", newline="") as file:
        rows = [row for row in csv.DictReader(file) if row["aspect"] == "overall"]
    for label in ("similar", "dissimilar"):
        found = [level(row) for row in rows if row["label"] == label]
        shares = (f"{one.words} {sum(each is one for each in found) / len(found):.2f}" for one in list(Level)[1:])
        print(f"{len(found)} pairs held {label}: {', '.join(shares)}")


if __name__ == "__main__":
    main()
