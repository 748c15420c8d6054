"""Fit the weights of goods/continuum.py. Writes wordlists/distinctiveness_weights.tsv.

python wordlists/build/distinctiveness_weights.py --data distinctiveness.csv [--to FOLDER] [--misses]

Names with their goods and category: those collected from decisions and textbooks (--data; mark, goods, category), those
of tests/published/distinctiveness.csv, and names of our own in wordlists/curated/graded_names.csv. A multinomial
logistic regression with a ridge penalty, chosen by cross-validation inside each training part; prints ROC-AUC
(registrable against not) and five-way accuracy on the names left out, for each file.
"""

from __future__ import annotations

import argparse
import csv
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from sources import write_table

from namescreen.goods.composition import composition
from namescreen.goods.continuum import CATEGORIES, PLACES
from namescreen.goods.evidence import NAME, WORD, read, values
from namescreen.goods.foreign import COMMON, reading_in
from namescreen.goods.judged import Judged
from namescreen.lexicon import languages
from namescreen.tables import table_bytes

HERE = Path(__file__).resolve().parent.parent
PENALTIES = (20.0, 40.0, 80.0)
STEPS, RATE = 300, 0.05
FOLDS = 10
LEAST_SPREAD = 0.05
NAMES = [*(f"least: {one}" for one in WORD), *(f"mean: {one}" for one in WORD), *NAME]

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]


def fit(asked: Floats, places: Ints, penalty: float) -> Floats:
    """Weights by name asked and category, the constant last; the penalty is on values scaled to one spread."""
    middle = asked.mean(0)
    spread = np.maximum(asked.std(0), LEAST_SPREAD)
    scaled = np.c_[(asked - middle) / spread, np.ones(len(asked))]
    wanted = np.eye(len(CATEGORIES))[places]
    weights = np.zeros((scaled.shape[1], len(CATEGORIES)))
    held = np.full((scaled.shape[1], 1), penalty)
    held[-1] = 0
    first, second = np.zeros_like(weights), np.zeros_like(weights)
    for step in range(1, STEPS + 1):  # Adam (Kingma and Ba 2015)
        slope = scaled.T @ (softmax(scaled @ weights) - wanted) + held * weights
        first = 0.9 * first + 0.1 * slope
        second = 0.99 * second + 0.01 * slope * slope
        weights -= RATE * (first / (1 - 0.9**step)) / (np.sqrt(second / (1 - 0.99**step)) + 1e-8)
    plain = weights[:-1] / spread[:, None]
    whole: Floats = np.r_[plain, weights[-1:] - middle @ plain]
    return whole


def softmax(sums: Floats) -> Floats:
    """Chances that add up to 1 in each row."""
    odds = np.exp(sums - sums.max(1, keepdims=True))
    found: Floats = odds / odds.sum(1, keepdims=True)
    return found


def chances(weights: Floats, asked: Floats) -> Floats:
    """The chance of each category for each row."""
    return softmax(np.c_[asked, np.ones(len(asked))] @ weights)


def chosen_penalty(asked: Floats, places: Ints, seed: int) -> float:
    """The penalty under which names left out are likeliest, by five-fold cross-validation."""
    fold = np.random.default_rng(seed).integers(0, 5, len(places))

    def likelihood(penalty: float) -> float:
        told = 0.0
        for left in range(5):
            held = fold == left
            found = chances(fit(asked[~held], places[~held], penalty), asked[held])
            told += float(np.log(found[np.arange(held.sum()), places[held]] + 1e-9).sum())
        return told

    return max(PENALTIES, key=likelihood)


def held_out(asked: Floats, places: Ints, seed: int) -> Floats:
    """Chances for every name from a model that did not see it, its penalty chosen without it as well."""
    fold = np.random.default_rng(seed).integers(0, FOLDS, len(places))
    found = np.zeros((len(places), len(CATEGORIES)))
    for left in range(FOLDS):
        held = fold == left
        penalty = chosen_penalty(asked[~held], places[~held], seed)
        found[held] = chances(fit(asked[~held], places[~held], penalty), asked[held])
    return found


def auc(scores: Floats, positive: NDArray[np.bool_]) -> float:
    """The chance that a registrable name scores above another."""
    above, below = scores[positive], scores[~positive]
    return float(((above[:, None] > below).sum() + 0.5 * (above[:, None] == below).sum()) / (len(above) * len(below)))


def in_every_language(name: str, goods: str) -> tuple[Judged, ...]:
    """The reading that describes most plainly, in English and the common languages."""
    english = read(name, goods, {})
    others = [found for one in COMMON if one in languages() and (found := reading_in(name, goods, one, asked=False))]
    return max((english, *others), key=lambda judged: min((one.evidence.weight for one in judged), default=0.0))


def _values(name: str, goods: str) -> dict[str, float]:
    """What is asked of the words that carry a name; of all of them where none does."""
    judged = in_every_language(name, goods)
    parts = composition(judged)
    return values(parts.carrying, " ".join(one.word for one in parts.carrying) if parts.shared else name)


def main() -> None:
    """Read, fit, measure, write."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--data", type=Path, required=True)
    parser.add_argument("--to", type=Path, default=HERE)
    parser.add_argument("--misses", action="store_true", help="list the names that were placed wrongly")
    given = parser.parse_args()
    files = (given.data, HERE.parent / "tests/published/distinctiveness.csv", HERE / "curated/graded_names.csv")
    rows: dict[tuple[str, str], tuple[int, int]] = {}
    for number, path in enumerate(files):
        with path.open(encoding="utf-8", newline="") as file:
            for row in csv.DictReader(file):
                rows.setdefault((row["mark"], row["goods"]), (CATEGORIES.index(row["category"]), number))
    places = np.array([place for place, _ in rows.values()])
    source = np.array([number for _, number in rows.values()])
    found = [_values(name, goods) for name, goods in rows]
    asked = np.array([[one[name] for name in NAMES] for one in found])
    told = []
    for number, what in enumerate(("collected", "published here", "own")):
        reached = []
        for seed in (0, 1):
            left_out = held_out(asked, places, seed)
            part = source == number
            right = left_out[part].argmax(1) == places[part]
            reached.append((auc(left_out[part] @ np.array(PLACES), places[part] >= 2), right.mean()))
            if given.misses and seed == 0:
                for (name, goods), chance, place, at in zip(rows, left_out, places, source, strict=True):
                    if at == number and chance.argmax() != place:
                        print(f"{name} | {goods}: {CATEGORIES[place]}, placed {CATEGORIES[chance.argmax()]}")
        area, share = np.mean(reached, axis=0)
        told.append(f"{what} {part.sum()}: {area:.3f} / {share:.3f}")
    print("; ".join(told))
    penalty = chosen_penalty(asked, places, 0)
    weights = fit(asked, places, penalty)
    table = dict(zip([*NAMES, "always"], (" ".join(f"{one:.3f}" for one in row) for row in weights), strict=True))
    contents = table_bytes("distinctiveness_weights", table.items())
    write_table(
        given.to, "distinctiveness_weights.tsv", contents,
        source="fitted on names placed by tribunals and textbooks (tests/published/distinctiveness.csv and more "
        "collected with citations), and names of our own (wordlists/curated/graded_names.csv); ROC-AUC / five-way "
        f"accuracy on names left out of ten-fold nested cross-validation, for each file: {'; '.join(told)}",
        version=f"{len(rows)} names, ridge penalty {penalty:g}", licence="facts; the weights are our own (MIT)",
        build="python wordlists/build/distinctiveness_weights.py --data distinctiveness.csv",
    )  # fmt: skip


if __name__ == "__main__":
    main()
