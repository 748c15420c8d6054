"""Closeness against decided cases beside plain scorers, and its cost, in one run.

    python tests/bench/bench_closeness.py [decided_pairs.csv]

Prints ROC-AUC (the chance that a pair found similar scores above a pair held apart; 0.5 is chance) by group of
decisions, and comparisons a second beside Jaro-Winkler's. Without a file the part kept in tests/published is used.
"""

from __future__ import annotations

import csv
import sys
import time
from collections.abc import Callable, Sequence
from itertools import product
from pathlib import Path

import jellyfish
from rapidfuzz import distance, fuzz

from namescreen import compare
from namescreen.closeness import features, score
from namescreen.text import parse

HERE = Path(__file__).parent
Row = dict[str, str]
Scorer = Callable[[str, str], float]


def plain(text: str) -> str:
    return " ".join(parse(text).words)


PLAIN: dict[str, Scorer] = {
    "Jaro-Winkler": lambda a, b: float(distance.JaroWinkler.normalized_similarity(plain(a), plain(b))),
    "OSA": lambda a, b: float(distance.OSA.normalized_similarity(plain(a), plain(b))),
    "token set": lambda a, b: float(fuzz.token_set_ratio(plain(a), plain(b)) / 100),
    "metaphone JW": lambda a, b: float(
        distance.JaroWinkler.normalized_similarity(jellyfish.metaphone(plain(a)), jellyfish.metaphone(plain(b)))
    ),
}
ASPECTS = ("overall", "appearance", "sound", "meaning")


def auc(similar: Sequence[float], dissimilar: Sequence[float]) -> float:
    wins = sum((a > b) + 0.5 * (a == b) for a, b in product(similar, dissimilar))
    return wins / (len(similar) * len(dissimilar)) if similar and dissimilar else float("nan")


def split(rows: Sequence[Row], value: Callable[[Row], float]) -> float:
    groups = [[value(row) for row in rows if row["label"] == label] for label in ("similar", "dissimilar")]
    return auc(*groups)


def ours(aspect: str) -> Callable[[Row], float]:
    return lambda row: float(
        getattr(compare(row["mark_a"], row["mark_b"], name_goods=row["goods_a"], mark_goods=row["goods_b"]), aspect)
    )


def by_letters(scorer: Scorer) -> Callable[[Row], float]:
    return lambda row: scorer(row["mark_a"], row["mark_b"])


def main() -> None:
    path = Path(sys.argv[1]) if len(sys.argv) > 1 else HERE.parent / "published/decided_pairs.csv"
    with path.open(encoding="utf-8", newline="") as file:
        rows = [row for row in csv.DictReader(file) if row.get("strength", "clear") == "clear"]
    print(f"{path.name}: {len(rows)} clear decisions")
    print(f"{'aspect':12}{'pairs':>6}{'ours':>8}" + "".join(f"{name:>15}" for name in PLAIN))
    for aspect in ASPECTS:
        chosen = [row for row in rows if row["aspect"] == aspect]
        figures = [split(chosen, by_letters(scorer)) for scorer in PLAIN.values()]
        print(f"{aspect:12}{len(chosen):6}{split(chosen, ours(aspect)):8.3f}" + "".join(f"{f:15.3f}" for f in figures))
    names = sorted({row[side] for row in rows for side in ("mark_a", "mark_b")})
    prepared = [features(name) for name in names]
    pairs = list(product(range(0, len(names), 3), range(1, len(names), 3)))
    begun = time.process_time()
    for one, other in pairs:
        score(prepared[one], prepared[other])
    new = len(pairs) / (time.process_time() - begun)
    begun = time.process_time()
    for one, other in pairs:
        PLAIN["Jaro-Winkler"](names[one], names[other])
    baseline = len(pairs) / (time.process_time() - begun)
    print(f"full comparisons a second on one core: {new:.0f} ({new / baseline:.3f} of Jaro-Winkler's {baseline:.0f})")


if __name__ == "__main__":
    main()
