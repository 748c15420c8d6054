"""Fit the model of goods/classification.py: goods term -> Nice class. Writes wordlists/class_weights.tsv.

python wordlists/build/goods_classes.py --terms goods_terms.csv --more foreign_goods.csv --nice nice_classes.json
                                        [--to FOLDER] [--measure]

The terms are facts drawn from goods lists of real EU trade marks (EUIPO open data), the headings and pointers of the
Nice Classification, and wordlists/curated/class_terms.txt. Only words, pairs and beginnings that several terms share
are kept. A multinomial logistic regression is fitted by AdaGrad and its weights are rounded to one character each.
--measure prints how often the right class is first and among three in five-fold cross-validation: no two terms of the
same words stand on both sides, nor, in the second figure, two terms with one head noun.
"""

from __future__ import annotations

import argparse
import csv
import json
import re
import zlib
from collections import Counter
from collections.abc import Hashable, Sequence
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from sources import write_table

from namescreen.goods.classification import STEP, ZERO, features, guesses
from namescreen.goods.nice import CLASSES
from namescreen.tables import table_bytes

HERE = Path(__file__).resolve().parent.parent
LEAST_TERMS = 3
"""A feature that fewer terms share is left out unless a term of our own has it: the table is half the size, and the
quality the same."""
EPOCHS = 12
RATE = 0.5
BATCH = 32
SHRINK = 1e-6

MOVED = re.compile(r"\b(?:spectacles?|sunglass(?:es)?|eyeglass(?:es)?|contact lens(?:es)?|reading glasses)\b")
"""Spectacles, contact lenses and sunglasses are in class 10 since 2026 (note to class 9, 13th edition)."""

Term = tuple[str, int]
Floats = NDArray[np.float32]


def read_terms(path: Path, column: str) -> list[Term]:
    """The English terms of a CSV file with their classes, each once; what has moved since stands in its new class."""
    with path.open(encoding="utf-8", newline="") as file:
        found = {(row[column], int(row["class"])) for row in csv.DictReader(file)}
    return sorted((term, 10 if number == 9 and MOVED.search(term.lower()) else number) for term, number in found)


def read_nice(path: Path) -> list[Term]:
    """What the headings name, and what the notes send to which class."""
    found: list[Term] = []
    for entry in json.loads(path.read_text(encoding="utf-8")):
        number = int(entry["number"])
        found += [(part.strip(" ."), number) for part in entry["heading"].split(";")]
        found += [(line.strip(" ;."), number) for line in entry["includes"]]
        for line in entry["excludes"]:
            found += [(m[1].strip(" ,;"), int(m[2])) for m in re.finditer(r"([^;]*?)\(Cl\. ?(\d+)\)", line)]
    return [(term, number) for term, number in found if term]


def read_curated() -> list[Term]:
    """The terms of wordlists/curated/class_terms.txt."""
    lines = (HERE / "curated" / "class_terms.txt").read_text(encoding="utf-8").splitlines()
    parts = [line.split(":") for line in lines if line and not line.startswith("#")]
    return [(term.strip(), int(number)) for number, terms in parts for term in terms.split(",")]


def read_trade() -> list[Term]:
    """The terms of wordlists/curated/trade_words.txt, in the class of the thing itself."""
    lines = (HERE / "curated" / "trade_words.txt").read_text(encoding="utf-8").splitlines()
    rows = [line.split("|") for line in lines if line and not line.startswith("#")]
    return [(term.strip(), int(classes.split()[0])) for classes, _, _, terms in rows for term in terms.split(",")]


def fit(terms: Sequence[Term]) -> dict[str, str]:
    """Feature -> a row of 45 characters, each the rounded weight of one class."""
    rows = [features(term) for term, _ in terms]
    counted = Counter(feature for row in rows for feature in row)
    own = (*read_curated(), *read_trade())
    counted.update(feature for term, _ in own for feature in features(term) for _ in range(LEAST_TERMS))
    place = {feature: at for at, feature in enumerate(sorted(f for f, n in counted.items() if n >= LEAST_TERMS))}
    seen = [np.array([place[f] for f in row if f in place]) for row in rows]
    values = [np.array([v for f, v in row.items() if f in place], np.float32) for row in rows]
    values = [value / np.sqrt((value * value).sum()) for value in values]
    wanted = np.array([number - 1 for _, number in terms])
    weights: Floats = np.zeros((len(place), len(CLASSES)), np.float32)
    squares: Floats = np.full_like(weights, 1e-3)
    order = np.arange(len(terms))
    chance = np.random.default_rng(0)
    for _ in range(EPOCHS):
        chance.shuffle(order)
        for start in range(0, len(order), BATCH):
            batch = order[start : start + BATCH]
            at = np.concatenate([seen[one] for one in batch])
            by = np.concatenate([values[one] for one in batch])[:, None]
            of = np.repeat(np.arange(len(batch)), [len(seen[one]) for one in batch])
            sums: Floats = np.zeros((len(batch), len(CLASSES)), np.float32)
            np.add.at(sums, of, weights[at] * by)
            chances = np.exp(sums - sums.max(1, keepdims=True))
            chances /= chances.sum(1, keepdims=True)
            chances[np.arange(len(batch)), wanted[batch]] -= 1
            touched, back = np.unique(at, return_inverse=True)
            slope: Floats = np.zeros((len(touched), len(CLASSES)), np.float32)
            np.add.at(slope, back, chances[of] * by)
            slope += SHRINK * weights[touched]
            squares[touched] += slope * slope
            weights[touched] -= RATE * slope / np.sqrt(squares[touched])
    symbols = np.clip(np.rint(weights / STEP), 33 - ZERO, 126 - ZERO).astype(int) + ZERO
    return {feature: "".join(map(chr, symbols[at])) for feature, at in place.items()}


def measure(terms: Sequence[Term], more: Sequence[Term], sides: Sequence[Hashable]) -> str:
    """Right class first and among three for the terms of at most six words, five-fold, and how sure it was.

    `sides` gives for each term what may not stand on both sides.
    """
    fold = [zlib.crc32(str(side).encode()) % 5 for side in sides]
    first = three = count = 0
    sure: Counter[int] = Counter()
    right: Counter[int] = Counter()
    for left_out in range(5):
        held = [term for term, at in zip(terms, fold, strict=True) if at == left_out]
        words = {frozenset(key(term)) for term, _ in held}
        kept = [term for term, at in zip(terms, fold, strict=True) if at != left_out]
        table = fit([*kept, *(term for term in more if frozenset(key(term[0])) not in words)])
        for term, number in held:
            if len(term.split()) > 6:
                continue
            found = guesses(term, table.get)
            count += 1
            numbers = [one.number for one in found]
            first += numbers[:1] == [number]
            three += number in numbers[:3]
            if found:
                sure[int(found[0].score * 10)] += 1
                right[int(found[0].score * 10)] += numbers[0] == number
    spread = ", ".join(f"{at / 10}: {right[at] / sure[at]:.2f} of {sure[at]}" for at in sorted(sure))
    return f"{count} terms: first {first / count:.3f}, among three {three / count:.3f}; right by score from {spread}"


def key(term: str) -> list[str]:
    """The words of a term by which two are the same."""
    return [feature for feature in features(term) if feature.startswith("w:")]


def main() -> None:
    """Fit, write the table and its source record, and print the figures if they are asked for."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--terms", type=Path, required=True)
    parser.add_argument("--more", type=Path, required=True)
    parser.add_argument("--nice", type=Path, required=True)
    parser.add_argument("--to", type=Path, default=HERE)
    parser.add_argument("--measure", action="store_true")
    given = parser.parse_args()
    terms = read_terms(given.terms, "term")
    more = [*read_terms(given.more, "english"), *read_nice(given.nice), *read_curated(), *read_trade()]
    if given.measure:
        print("no two of the same words apart:", measure(terms, more, [tuple(sorted(set(key(t)))) for t, _ in terms]))
        heads = [next((f for f in features(t) if f.startswith("h:")), t) for t, _ in terms]
        print("no two of one head noun apart:", measure(terms, [], heads))
    contents = table_bytes("class_weights", fit([*terms, *more]).items())
    write_table(
        given.to,
        "class_weights.tsv",
        contents,
        source="fitted on 12,160 goods terms of EU trade marks with their classes and 2,067 more from the aligned "
        "lists (EUIPO open data, public record), on terms that headings and pointers of the Nice Classification name, "
        "and on wordlists/curated/class_terms.txt and trade_words.txt; only words, word pairs and WordNet senses that "
        "three terms share, or one of our own has. Right class first / among three in five-fold cross-validation on "
        "10,829 terms of at most six words: 0.846 / 0.944 with no two terms of the same words on both sides, 0.762 / "
        "0.898 with no two of one head",
        version="EUIPO records of 2020; Nice Classification, 13th edition (2026)",
        licence="facts of public records; the weights are the project's own (MIT)",
        build="python wordlists/build/goods_classes.py --terms goods_terms.csv --more foreign_goods.csv "
        "--nice nice_classes.json",
    )


if __name__ == "__main__":
    main()
