"""Choose the few numbers of overall closeness by cross-validation over decided cases.

    python wordlists/build/closeness_parameters.py PATH/decided_pairs.csv

Every setting of a fixed sample of a coarse grid scores every pair once. Then, many times over, the pairs are
split into five parts (all rows of one pair of marks together); on four parts the setting with the best mean
ROC-AUC is chosen, on the fifth it is measured. What is reported is that held-out figure; what is shipped is the
setting that is best on all pairs together, and nothing finer than the grid is ever looked for.
"""

from __future__ import annotations

import csv
import random
import sys
from collections.abc import Iterable, Sequence
from dataclasses import asdict, replace
from itertools import product
from pathlib import Path

from sources import record_source

from namescreen.closeness import Parameters, features, goods_words, score
from namescreen.tables import table_bytes, wordlists_folder, write_whole

GRID = {
    "stronger_aspect": (0.5, 0.8),
    "meaning_share": (0.7, 0.85),
    "different_meaning": (0.6, 0.8),
    "fuller_side": (0.3, 0.45),
    "first_word": (0.1, 0.25),
    "weak_element": (0.5, 1.0),
    "enough_strength": (0.35, 0.5),
}
SETTINGS, FOLDS, REPEATS, SEED = 128, 5, 40, 20261125


def auc(similar: Sequence[float], dissimilar: Sequence[float]) -> float:
    """The chance that a similar pair scores above a dissimilar one, ties counting half."""
    wins = sum((a > b) + 0.5 * (a == b) for a in similar for b in dissimilar)
    return wins / (len(similar) * len(dissimilar))


def quality(rows: Sequence[dict[str, str]], scores: Sequence[float], chosen: Iterable[int]) -> float:
    """Mean ROC-AUC of the American and the other decisions among the `chosen` rows."""
    values = []
    picked = list(chosen)
    for american in (True, False):
        side = [i for i in picked if (rows[i]["jurisdiction"] == "US") == american]
        groups = [[scores[i] for i in side if rows[i]["label"] == label] for label in ("similar", "dissimilar")]
        if all(groups):
            values.append(auc(*groups))
    return sum(values) / len(values)


def _usable(row: dict[str, str]) -> bool:
    """Clear decisions on the whole impression; not those of Japan, where marks are judged as read in Japanese."""
    whole = row["jurisdiction"] == "US" or row["aspect"] == "overall"
    return whole and row["strength"] == "clear" and not row["tribunal"].startswith("JPO")


def main() -> None:
    """Read the decided pairs, choose, measure, and write wordlists/closeness_parameters.tsv."""
    data = Path(sys.argv[1])
    with data.open(encoding="utf-8", newline="") as file:
        rows = [row for row in csv.DictReader(file) if _usable(row)]
    rng = random.Random(SEED)
    points = [dict(zip(GRID, values, strict=True)) for values in product(*GRID.values())]
    settings = [replace(Parameters(), **point) for point in rng.sample(points, SETTINGS)]
    names = []
    for row in rows:
        goods = goods_words(row["goods_a"], row["goods_b"])
        names.append((features(row["mark_a"], goods), features(row["mark_b"], goods)))
    table = []
    for number, setting in enumerate(settings, 1):
        table.append([score(one, other, setting).overall for one, other in names])
        print(f"{number} of {SETTINGS} settings scored", file=sys.stderr)
    pairs = sorted({(row["mark_a"], row["mark_b"]) for row in rows})
    held_out = []
    for _ in range(REPEATS):
        rng.shuffle(pairs)
        fold_of = {pair: place % FOLDS for place, pair in enumerate(pairs)}
        for fold in range(FOLDS):
            inside = [i for i, row in enumerate(rows) if fold_of[row["mark_a"], row["mark_b"]] != fold]
            outside = [i for i, row in enumerate(rows) if fold_of[row["mark_a"], row["mark_b"]] == fold]
            best = max(range(SETTINGS), key=lambda s: (quality(rows, table[s], inside), -s))
            held_out.append(quality(rows, table[best], outside))
    every = range(len(rows))
    best = max(range(SETTINGS), key=lambda s: (quality(rows, table[s], every), -s))
    spread = sorted(quality(rows, scores, every) for scores in table)
    figures = {
        "measured pairs": str(len(rows)),
        "measured held-out mean ROC-AUC": f"{sum(held_out) / len(held_out):.3f}",
        "measured fitted mean ROC-AUC": f"{quality(rows, table[best], every):.3f}",
        "measured worst setting of the grid": f"{spread[0]:.3f}",
    }
    for key, value in figures.items():
        print(f"{key}: {value}")
    shipped = {name: f"{value:g}" for name, value in asdict(settings[best]).items()}
    print(shipped)
    contents = table_bytes("closeness_parameters", {**shipped, **figures}.items())
    write_whole(wordlists_folder() / "closeness_parameters.tsv", contents)
    record_source(
        wordlists_folder(),
        "closeness_parameters.tsv",
        contents,
        source="chosen by cross-validation over word mark decisions of the TTAB, the Federal Circuit and other US "
        "courts (some through TMEP 1207.01(b)), the UK IPO, the EU General Court, and Danish, Norwegian, Singapore, "
        "Japanese and Australian offices and courts",
        version="; ".join(f"{key} {value}" for key, value in figures.items()),
        licence="the project's own (facts only)",
        build="python wordlists/build/closeness_parameters.py PATH/decided_pairs.csv",
    )


if __name__ == "__main__":
    main()
