"""Fit the weights of the blend ranking, and say how well they do on words they were not fitted on.

    python wordlists/build/blend_weights.py --data ../shared/checks/blends.csv

The data are attested blends with their two source words (columns blend, first, second, set): D_Wiki of Deri
and Knight (NAACL 2015) and a part of D_Blind of Gangal and others (EMNLP 2017). They are not shipped; what is
shipped is one weight for each feature of namescreen/generation/blending/features.py. The model is a softmax
over all candidates of a pair, fitted by Newton's method under a Gaussian prior on the weights of the features
taken to one scale. Quality is that of ten-fold cross-validation in which no second word stands on both sides.
"""

from __future__ import annotations

import argparse
import csv
import random
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from sources import write_table

from namescreen.generation.blending.cuts import cuts
from namescreen.generation.blending.features import FEATURES, Similarity, features
from namescreen.generation.blending.source_word import source
from namescreen.tables import table_bytes

FOLDER = Path(__file__).parent.parent
PRIOR = 3.0
FOLDS = 10
TOPS = (1, 5, 10, 20)
Matrix = NDArray[np.float64]


@dataclass
class Pair:
    """The candidates of one pair as rows of features, and which of them is attested (None: not offered)."""

    second: str
    group: str
    rows: Matrix
    attested: int | None


def read(path: Path) -> list[Pair]:
    """Every row of the data as a `Pair`."""
    names = list(FEATURES)
    pairs = []
    with path.open(encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            first, second = source(row["first"]), source(row["second"])
            likeness = {
                (first, second): Similarity(first, second),
                (second, first): Similarity(second, first),
            }
            candidates = cuts(first, second)
            matrix = np.zeros((len(candidates), len(names)))
            attested = None
            for at, cut in enumerate(candidates):
                for name, value in features(cut, likeness[cut.first, cut.second]).items():
                    matrix[at, names.index(name)] = value
                if cut.text == row["blend"].lower():
                    attested = at
            pairs.append(Pair(second.letters, row["set"], matrix, attested))
    return pairs


def fit(pairs: list[Pair], scale: Matrix) -> Matrix:
    """The weights that make the attested blends likeliest, under the prior."""
    pairs = [pair for pair in pairs if pair.attested is not None]
    rows = np.concatenate([pair.rows for pair in pairs]) / scale
    starts = np.cumsum([0] + [len(pair.rows) for pair in pairs])
    attested = np.array([start + (pair.attested or 0) for start, pair in zip(starts, pairs, strict=False)])
    owner = np.repeat(np.arange(len(pairs)), np.diff(starts))
    weights = np.zeros(rows.shape[1])

    def loss(weights: Matrix) -> tuple[float, Matrix]:
        value = rows @ weights
        value -= np.maximum.reduceat(value, starts[:-1])[owner]
        total = np.add.reduceat(np.exp(value), starts[:-1])
        found = np.log(total).sum() - value[attested].sum() + PRIOR / 2 * weights @ weights
        return float(found), np.exp(value) / total[owner]

    before, belief = loss(weights)
    while True:
        weighted = belief[:, None] * rows
        slope = weighted.sum(0) - rows[attested].sum(0) + PRIOR * weights
        mean = np.add.reduceat(weighted, starts[:-1], axis=0)
        bend = rows.T @ weighted - mean.T @ mean + PRIOR * np.eye(len(weights))
        step, length = np.linalg.solve(bend, slope), 1.0
        after, belief = loss(weights - step)
        while after > before and length > 1e-6:
            length /= 2
            after, belief = loss(weights - length * step)
        weights = weights - length * step
        if before - after < 1e-6:
            return weights / scale
        before = after


def ranks(pairs: list[Pair], weights: Matrix) -> list[int | None]:
    """How many candidates stand before the attested blend of each pair."""
    found: list[int | None] = []
    for pair in pairs:
        value = pair.rows @ weights
        found.append(None if pair.attested is None else int((value > value[pair.attested]).sum()))
    return found


def cross_validate(pairs: list[Pair], scale: Matrix) -> str:
    """The share of attested blends among the first 1, 5, 10 and 20, by data set."""
    seconds = sorted({pair.second for pair in pairs})
    random.Random(1).shuffle(seconds)
    fold = {second: number % FOLDS for number, second in enumerate(seconds)}
    hits: dict[str, list[int | None]] = {}
    for number in range(FOLDS):
        weights = fit([pair for pair in pairs if fold[pair.second] != number], scale)
        apart = [pair for pair in pairs if fold[pair.second] == number]
        for pair, rank in zip(apart, ranks(apart, weights), strict=True):
            hits.setdefault(pair.group, []).append(rank)
    return "; ".join(
        f"{group} ({len(found)} rows) "
        + " / ".join(f"{sum(rank is not None and rank < top for rank in found) / len(found):.3f}" for top in TOPS)
        for group, found in sorted(hits.items())
    )


def main() -> None:
    """Fit, cross-validate, and write the table."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--data", type=Path, required=True)
    parser.add_argument("--to", type=Path, default=FOLDER)
    options = parser.parse_args()
    pairs = read(options.data)
    scale = np.concatenate([pair.rows for pair in pairs]).std(0)
    scale[scale == 0] = 1.0
    quality = cross_validate(pairs, scale)
    print(f"attested blend at top {' / '.join(map(str, TOPS))}, cross-validated: {quality}")
    weights = fit(pairs, scale)
    contents = table_bytes(
        "blend_weights", ((name, f"{weight:.4f}") for name, weight in zip(FEATURES, weights, strict=True))
    )
    write_table(
        options.to,
        "blend_weights.tsv",
        contents,
        source="fitted on attested blends: D_Wiki (A. Deri and K. Knight, NAACL 2015) and a part of D_Blind "
        "(V. Gangal and others, EMNLP 2017); attested blend at top 1 / 5 / 10 / 20 in ten-fold "
        f"cross-validation with no second word on both sides: {quality}",
        version="2015; 2017",
        licence="the weights are namescreen's own (MIT)",
        build="python wordlists/build/blend_weights.py --data blends.csv",
    )


if __name__ == "__main__":
    main()
