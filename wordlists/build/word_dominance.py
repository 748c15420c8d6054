"""Fit the dominance of words in names (closeness/weights.py). Writes wordlists/word_dominance.tsv.

    python wordlists/build/word_dominance.py [--to FOLDER]

wordlists/curated/dominant_words.csv has the shares of what tells the maker that a blind reader gave to the words of
invented names. Dominance is a logistic function of what is known of a word. The share of a word is its part of the
dominance of all, where each further word counts a little less. The weights are those under which the shares are
likeliest (ridge penalty). Prints, of names held out in five folds, the correlation of shares, less an even division,
and how often the strongest word is the right one; and the same of an even division and of strength alone.
"""

from __future__ import annotations

import csv
from pathlib import Path
from typing import Any, NamedTuple

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import minimize
from sources import folder_to_write, write_table

from namescreen.closeness import goods_words
from namescreen.closeness.name_similarity import LATER_IN_SENSE
from namescreen.closeness.weights import DOMINANCE, LEAST, OWN, evidence_of_dominance, strength
from namescreen.tables import table_bytes
from namescreen.text import parse

HERE = Path(__file__).resolve().parent.parent
PENALTY = 0.0003
FOLDS, SEED = 5, 1

Numbers = NDArray[np.float64]


class Words(NamedTuple):
    """The words of many names, one after another: the evidence, the share that the reader gave, the place in the name,
    the number of the name, and the strength."""

    evidence: Numbers
    share: Numbers
    place: NDArray[Any]
    name: NDArray[Any]
    strength: Numbers

    def only(self, chosen: NDArray[np.bool_]) -> Words:
        """Some of the words."""
        return Words(*(values[chosen] for values in self))


def read(path: Path) -> Words:
    """The words that were judged; a part of several words has its share divided evenly."""
    found = []
    with path.open(encoding="utf-8", newline="") as file:
        for number, row in enumerate(csv.DictReader(line for line in file if not line.startswith("#"))):
            goods = goods_words(row["goods"])
            parts = [parse(part).words for part in row["words"].split(" | ")]
            shares = [float(share) / 100 for share in row["shares"].split()]
            words = [(word, share / len(part)) for part, share in zip(parts, shares, strict=True) for word in part]
            for place, (word, share) in enumerate(words):
                evidence = evidence_of_dominance(word, goods)
                alone = strength(evidence[0], evidence[len(OWN)])  # frequency and weakness
                found.append((evidence, share, place, number, alone))
    columns: list[NDArray[Any]] = [np.array(values) for values in zip(*found, strict=True)]
    return Words(*columns)


def dominance(weights: Numbers, evidence: Numbers) -> Numbers:
    """As `closeness.weights.word_weight`; the constant is last."""
    found: Numbers = LEAST + (1 - LEAST) / (1 + np.exp(-(evidence @ weights[:-1] + weights[-1])))
    return found


def shares(counts: Numbers, words: Words) -> Numbers:
    """The share of every word in its name."""
    counts = counts * LATER_IN_SENSE**words.place
    found: Numbers = counts / np.bincount(words.name, counts)[words.name]
    return found


def fit(words: Words) -> Numbers:
    """The weights of `DOMINANCE`, the constant last."""
    names = len(np.unique(words.name))

    def loss(weights: Numbers) -> tuple[float, Numbers]:
        value = dominance(weights, words.evidence)
        told = shares(value, words)
        slope = (told - words.share) / names * (value - LEAST) * (1 - value) / (1 - LEAST) / value
        by_weights = np.r_[words.evidence.T @ slope + 2 * PENALTY * weights[:-1], slope.sum()]
        return float(-(words.share @ np.log(told)) / names + PENALTY * weights[:-1] @ weights[:-1]), by_weights

    found: Numbers = minimize(loss, np.zeros(len(DOMINANCE) + 1), jac=True, method="L-BFGS-B").x
    return found


def figures(told: Numbers, words: Words) -> str:
    """How well shares agree with the reader's."""
    even = 1 / np.bincount(words.name)[words.name]
    together = np.corrcoef(told - even, words.share - even)[0, 1] if np.ptp(told - even) else 0.0
    right = [
        np.argmax(told[words.name == name]) == np.argmax(words.share[words.name == name])
        for name in np.unique(words.name)
    ]
    return f"correlation {together:.3f}, strongest word right {np.mean(right):.3f}"


def main() -> None:
    """Read, fit, measure, write."""
    to = folder_to_write(str(__doc__), HERE)
    words = read(HERE / "curated" / "dominant_words.csv")
    fold = np.random.default_rng(SEED).integers(0, FOLDS, int(words.name.max()) + 1)[words.name]
    held = np.zeros(len(words.share))
    for left in range(FOLDS):
        chosen = fold == left
        held[chosen] = dominance(fit(words.only(~chosen)), words.evidence[chosen])
    reached = figures(shares(held, words), words)
    print(f"held out: {reached}\neven: {figures(shares(np.ones(len(held)), words), words)}")
    print(f"by strength alone: {figures(shares(words.strength, words), words)}")
    *weights, constant = fit(words)
    entries = dict(zip(DOMINANCE, weights, strict=True)) | {"always": constant}
    contents = table_bytes("word_dominance", sorted((name, f"{value:.4f}") for name, value in entries.items()))
    write_table(
        to,
        "word_dominance.tsv",
        contents,
        source="fitted on the shares that a blind reader (a run of a language model) gave to the words of invented "
        "names, by how much of what tells the maker rests on each (curated/dominant_words.csv)",
        version=f"{int(words.name.max()) + 1} names; on names held out: {reached}",
        licence="the project's own",
        build="python wordlists/build/word_dominance.py",
    )


if __name__ == "__main__":
    main()
