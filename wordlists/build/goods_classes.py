"""Fit the model of goods/class_model.py: goods term -> Nice class. Writes wordlists/class_weights.tsv.

python wordlists/build/goods_classes.py --terms goods_terms.csv --more foreign_goods.csv --nice nice_classes.json
                                        [--to FOLDER]

The terms are facts drawn from goods lists of real EU trade marks (EUIPO open data), from the headings, pointers and
alphabetical list of the Nice Classification (wordlists/curated/nice_terms.txt), and wordlists/curated/class_terms.txt.
Only features that several terms share are kept. A multinomial logistic regression with a ridge penalty is fitted, its
weights are rounded to one character each, and those near 0 are left out. How sure it may be is fitted on terms of which
no fit saw one with the same words; how often those are right is printed.
"""

from __future__ import annotations

import argparse
import csv
import json
import re
import zlib
from collections import Counter, defaultdict
from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise
from pathlib import Path
from typing import NamedTuple

import numpy as np
import scipy.sparse as sparse
from numpy.typing import NDArray
from scipy import special
from scipy.optimize import minimize
from sources import write_table

from namescreen.goods.class_features import features, listed_as
from namescreen.goods.class_model import DENSE, FIRST_CLASS, STEP, VECTOR_STEP, VECTORS, ZERO, evidence
from namescreen.goods.nice import CLASSES
from namescreen.lexicon import lexicon
from namescreen.lexicon.embedding import vector
from namescreen.tables import table_bytes

HERE = Path(__file__).resolve().parent.parent
LEAST = 3
"""A feature that fewer terms share is left out unless a term of our own has it: the table is half the size, and the
quality the same."""
RIDGE = 0.05
STEPS = 80
LEAST_WEIGHT = 0.25
"""Weights nearer to 0 are left out."""
LESS = 0.3
"""How much a trade's name in several words counts: the head of pepper jack says little of other jacks."""
STRANGE = "zorvex"
"""Stands for a word that nobody knows, in terms by which it is fitted how sure the model may be of a term with one."""
FOLDS = 5
SIZE = 144
"""The length of the vector of a word."""

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


def read_alphabetical() -> list[Term]:
    """The terms of wordlists/curated/nice_terms.txt."""
    lines = (HERE / "curated" / "nice_terms.txt").read_text(encoding="utf-8").splitlines()
    parts = [line.split(":", 1) for line in lines if line and not line.startswith("#")]
    return [(term.strip(), int(number)) for number, terms in parts for term in terms.split(";")]


class Sample(NamedTuple):
    """Terms as the fit sees them: features and vectors of each, its class, from 0, and how much it counts."""

    rows: list[dict[str, float]]
    vectors: Floats
    wanted: NDArray[np.int64]
    counts: Floats


def sample(terms: Sequence[Term], less: frozenset[str] = frozenset()) -> Sample:
    """The features of terms, and beside them the vectors of their words: that of the head, then the mean of the rest.
    Some terms count for `LESS`."""
    rows, vectors = [], []
    for term, _ in terms:
        row = features(term)
        both = {kind: np.zeros(SIZE, np.float32) for kind in VECTORS}
        for feature in [one for one in row if one[0] in VECTORS]:
            found = vector(feature[2:], lexicon().bases)
            both[feature[0]] += row.pop(feature) * (0.0 if found is None else np.array(found, np.float32))
        rows.append(row)
        vectors.append(np.concatenate([both[kind] for kind in VECTORS]))
    counts = np.array([LESS if term in less else 1.0 for term, _ in terms], np.float32)
    return Sample(rows, np.array(vectors), np.array([number - 1 for _, number in terms]), counts)


class Fitted(NamedTuple):
    """Which row of the weights is that of a feature, the weights of features and of vectors."""

    place: dict[str, int]
    weights: Floats
    of_vectors: Floats

    def sums(self, taken: Sample) -> Floats:
        """What speaks for each class, a row a term."""
        return np.asarray(_matrix(taken.rows, self.place) @ self.weights + DENSE * taken.vectors @ self.of_vectors)


def _matrix(rows: Sequence[dict[str, float]], place: Mapping[str, int]) -> sparse.csr_matrix:
    """The known features of terms, a row a term, each of length 1."""
    values: list[float] = []
    columns: list[int] = []
    ends = [0]
    for row in rows:
        known = [(place[feature], value) for feature, value in row.items() if feature in place]
        length = sum(value * value for _, value in known) ** 0.5
        columns += [at for at, _ in known]
        values += [value / length for _, value in known]
        ends.append(len(columns))
    return sparse.csr_matrix((np.array(values, np.float32), columns, ends), shape=(len(rows), len(place)))


def fit(taken: Sample, kept: frozenset[str]) -> Fitted:
    """A logistic regression with a ridge penalty on the features that LEAST terms share, or that are to be kept."""
    counted = Counter(feature for row in taken.rows for feature in row)
    some = sorted(feature for feature, count in counted.items() if count >= LEAST or feature in kept)
    place = {feature: at for at, feature in enumerate(some)}
    seen = sparse.hstack([_matrix(taken.rows, place), sparse.csr_matrix(DENSE * taken.vectors)]).tocsr()
    turned = seen.T.tocsr()
    each, shape = np.arange(len(taken.rows)), (seen.shape[1], len(CLASSES))

    def loss(flat: NDArray[np.float64]) -> tuple[float, NDArray[np.float64]]:
        weights = flat.reshape(shape).astype(np.float32)
        logs = special.log_softmax(seen @ weights, axis=1)
        slope = np.exp(logs)
        slope[each, taken.wanted] -= 1
        slope *= taken.counts[:, None]
        ridge = RIDGE / 2 * float((weights * weights).sum())
        return ridge - float(taken.counts @ logs[each, taken.wanted]), (
            turned @ slope + RIDGE * weights
        ).ravel().astype(float)

    start = np.zeros(shape[0] * shape[1])
    found = minimize(loss, start, jac=True, method="L-BFGS-B", options={"maxiter": STEPS, "maxcor": 5}).x.reshape(shape)
    weights = np.rint(found[: len(place)] / STEP) * STEP
    return Fitted(place, np.where(np.abs(weights) < LEAST_WEIGHT, 0, weights).astype(np.float32), found[len(place) :])


def how_sure(sums: Floats, wanted: NDArray[np.int64], seen: NDArray[np.float64]) -> NDArray[np.float64]:
    """The weights of the evidence by which sums are scaled so that chances say what share is right; see
    `class_model.evidence`."""

    def loss(weights: NDArray[np.float64]) -> float:
        logs = special.log_softmax(sums * np.exp(seen @ weights)[:, None], axis=1)
        return -float(logs[np.arange(len(wanted)), wanted].mean())

    return np.asarray(minimize(loss, np.zeros(seen.shape[1]), method="Nelder-Mead", options={"maxiter": 400}).x)


def evidence_of(taken: Sample, fitted: Fitted) -> NDArray[np.float64]:
    """What makes the model sure of each term."""
    known = ({one: value for one, value in row.items() if one in fitted.place} for row in taken.rows)
    return np.array([evidence(some, row) for some, row in zip(known, taken.rows, strict=True)])


def model_of(fitted: Fitted, sure: NDArray[np.float64], terms: Sequence[Term]) -> dict[str, str]:
    """The table of a fit, with the whole terms that are listed."""
    table = {feature: written(fitted.weights[at]) for feature, at in fitted.place.items()}
    for number, columns in enumerate(fitted.of_vectors.T, start=1):
        steps = np.clip(np.rint(columns / VECTOR_STEP), 33 - ZERO, 126 - ZERO).astype(int) + ZERO
        for at, kind in enumerate(VECTORS):
            table[f"{kind}:{number:02}"] = "".join(map(chr, steps[at * SIZE : (at + 1) * SIZE]))
    table["sure"] = " ".join(f"{one:.3f}" for one in sure)
    listed: defaultdict[str, set[int]] = defaultdict(set)
    for term, number in terms:
        listed[f"t:{listed_as(term)}"].add(number)
    return table | {
        key: "".join(chr(FIRST_CLASS + one - 1) for one in sorted(classes)) for key, classes in listed.items()
    }


def written(weights: Floats) -> str:
    """A row of the table: a character for the class and one for its weight, where it has one."""
    steps = np.clip(np.rint(weights / STEP), 33 - ZERO, 126 - ZERO).astype(int)
    return "".join(chr(FIRST_CLASS + at) + chr(ZERO + steps[at]) for at in np.flatnonzero(steps))


class Told(NamedTuple):
    """Terms, the sums of fits that saw no term of the same words, and what makes the model sure of each."""

    terms: list[Term]
    sums: Floats
    seen: NDArray[np.float64]


def folds(terms: Sequence[Term], kept: frozenset[str], less: frozenset[str]) -> tuple[Told, Told]:
    """What fits tell of terms not seen, as they are and with a word in the place of one that nobody knows."""
    of_fold = [zlib.crc32(" ".join(sorted(set(key(term)))).encode()) % FOLDS for term, _ in terms]
    parts: tuple[list[Told], list[Told]] = ([], [])
    for left_out in range(FOLDS):
        held = [one for one, at in zip(terms, of_fold, strict=True) if at == left_out]
        fitted = fit(sample([one for one, at in zip(terms, of_fold, strict=True) if at != left_out], less), kept)
        for part, some in zip(parts, (held, [*masked(held)]), strict=True):
            taken = sample(some)
            part.append(Told(some, fitted.sums(taken), evidence_of(taken, fitted)))
    whole, strange = (
        Told(
            [term for one in part for term in one.terms],
            *(np.concatenate(rows) for rows in zip(*(one[1:] for one in part), strict=True)),
        )
        for part in parts
    )
    return whole, strange


def masked(terms: Sequence[Term]) -> Iterator[Term]:
    """Every third term, with its head or another word put out of sight."""
    for term, number in terms:
        chance = zlib.crc32(term.encode())
        words = re.findall(r"[a-z]{3,}", re.split(r"[,(\[]", term.lower())[0])
        if chance % 3 == 0 and len(words) > 1:
            word = words[-1] if chance % 2 else words[chance % (len(words) - 1)]
            yield re.sub(rf"\b{word}\b", STRANGE, term.lower()), number


def figures(told: Told, sure: NDArray[np.float64], some: set[Term]) -> str:
    """Right first and among three, and the share right by score, of some of the terms."""
    at = np.array([place for place, term in enumerate(told.terms) if term in some])
    chances = special.softmax(told.sums[at] * np.exp(told.seen[at] @ sure)[:, None], axis=1)
    wanted = np.array([told.terms[place][1] - 1 for place in at])
    order = np.argsort(-chances, axis=1)[:, :3]
    right, best = order[:, 0] == wanted, chances.max(axis=1)
    edges = (*np.arange(0.1, 0.91, 0.1), 0.95, 0.99, 1.01)
    spread = (
        f"{low:.2f}: {right[within].mean():.2f} of {within.sum()}"
        for low, high in pairwise(edges)
        if (within := (best >= low) & (best < high)).any()
    )
    three = (order == wanted[:, None]).any(axis=1)
    return f"{len(at)} terms: first {right.mean():.3f}, among three {three.mean():.3f}; right by score: " + ", ".join(
        spread
    )


def key(term: str) -> list[str]:
    """The words of a term by which two are the same."""
    return [feature for feature in features(term) if feature.startswith("w:")]


def main() -> None:
    """Fit, write the table and its source record, and print how often terms not seen are right."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--terms", type=Path, required=True)
    parser.add_argument("--more", type=Path, required=True)
    parser.add_argument("--nice", type=Path, required=True)
    parser.add_argument("--to", type=Path, default=HERE)
    given = parser.parse_args()
    listed, records = read_alphabetical(), read_terms(given.terms, "term")
    own = [*read_curated(), *read_trade()]
    terms = sorted({*records, *read_terms(given.more, "english"), *read_nice(given.nice), *own, *listed})
    kept = frozenset(feature for term, _ in own for feature in features(term) if feature[0] not in VECTORS)
    less = frozenset(term for term, _ in read_trade() if " " in term)
    told, strange = folds(terms, kept, less)
    both = [*told.terms, *strange.terms]
    sure = how_sure(
        np.concatenate([told.sums, strange.sums]),
        np.array([number - 1 for _, number in both]),
        np.concatenate([told.seen, strange.seen]),
    )
    for name, some in (("alphabetical list", listed), ("records", records)):
        print(f"{name}, no term of the same words seen:", figures(told, sure, set(some)))
    print("a word put out of sight:", figures(strange, sure, set(strange.terms)))
    contents = table_bytes("class_weights", model_of(fit(sample(terms, less), kept), sure, listed).items())
    write_table(
        given.to,
        "class_weights.tsv",
        contents,
        source="fitted on 12,160 goods terms of EU trade marks with their classes and 2,067 more from the aligned "
        "lists (EUIPO open data, public record), on terms that headings and pointers of the Nice Classification name, "
        "on 5,677 terms of its alphabetical list (WIPO; wordlists/curated/nice_terms.txt), and on "
        "wordlists/curated/class_terms.txt and trade_words.txt; only features that three terms share, or one of our "
        "own has. Right class first / among three in five-fold cross-validation, with no two terms of the same words "
        "on both sides: 0.767 / 0.925 of the terms of the list, 0.887 / 0.970 of those of records; of those told at "
        "0.95 to 0.99, 0.94 and 0.97 are right",
        version="EUIPO records of 2020; Nice Classification, 13th edition (2026); alphabetical list of the 12th "
        "edition with what has moved since as far as known",
        licence="facts of public records and of the Nice Classification; the weights are the project's own (MIT)",
        build="python wordlists/build/goods_classes.py --terms goods_terms.csv --more foreign_goods.csv "
        "--nice nice_classes.json",
    )


if __name__ == "__main__":
    main()
