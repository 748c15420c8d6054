"""Fit how far two words say the same (`closeness.word_meaning.say_the_same`) on pairs of single words that were rated.

    python wordlists/build/closeness_word_likeness.py

Prints the three weights, which stand in closeness/word_meaning.py, and the correlation with the mean of two readers
(wordlists/curated/rated_words.csv): of what was predicted of pairs of which a word was held out, in ten folds, and of
how far words share an idea (`combine_meaning`).
"""

from __future__ import annotations

import random

import closeness_evidence as evidence
import numpy as np
from closeness_evidence import Numbers, pearson, spearman
from scipy.optimize import minimize

from namescreen.closeness import word_meaning
from namescreen.closeness.appearance import positive_part
from namescreen.closeness.vocabulary import base_forms, meaning_similarity_of_words
from namescreen.closeness.word_meaning import OPPOSITE, RELATED, are_opposite, combine_meaning, say_the_same
from namescreen.lexicon import association, thesaurus_similarity
from namescreen.tables import wordlists_folder

DRAWN = 0.1
"""What a drawn pair counts beside one of words that meet in two names: related words that are drawn are often meant in
rare senses, which names seldom mean."""
FOLDS = 10


def grounds(one: str, other: str) -> tuple[float, float, float, float]:
    """What `say_the_same` is told of two words."""
    related = meaning_similarity_of_words(one, other, RELATED) or 0.0
    return (
        related if related >= RELATED else 0.0,
        association(one, other) or 0.0,
        positive_part(thesaurus_similarity(one, other) or 0.0),
        float(bool(base_forms(one) and base_forms(other))),
    )


def likeness(weights: Numbers, facts: Numbers, opposite: np.ndarray) -> Numbers:
    """How far words say the same by these weights."""
    word_meaning.SAID_ASSOCIATED, word_meaning.SAID_LISTED, word_meaning.UNSUPPORTED = weights
    found = np.asarray(say_the_same(*facts.T))
    return np.where(opposite, np.minimum(found, OPPOSITE), found)


def fit(facts: Numbers, opposite: np.ndarray, ratings: Numbers, counts: Numbers) -> Numbers:
    """The weights with the least squared error."""

    def loss(weights: Numbers) -> float:
        return float(counts @ (likeness(weights, facts, opposite) - ratings) ** 2 / counts.sum())

    start = np.full(3, 0.4)
    return np.asarray(minimize(loss, start, bounds=[(0, 1)] * 3, method="L-BFGS-B").x)


def main() -> None:
    """Read, fit, measure, print."""
    rows = evidence.rows(wordlists_folder() / "curated" / "rated_words.csv")
    pairs = [(row["one"], row["other"]) for row in rows]
    facts = np.array([grounds(*pair) for pair in pairs])
    opposite = np.array([are_opposite(*pair) for pair in pairs])
    ratings = np.array([evidence.rating(row, "meaning") for row in rows])
    met = np.array([row["kind"] == "met" for row in rows])
    counts = np.where(met, 1.0, DRAWN)
    print("weights:", fit(facts, opposite, ratings, counts).round(2))
    fold = np.array([[random.Random(word).randrange(FOLDS) for word in pair] for pair in pairs])
    told, times = np.zeros(len(rows)), np.zeros(len(rows))
    for out in range(FOLDS):
        held = (fold == out).any(axis=1)
        weights = fit(facts[~held], opposite[~held], ratings[~held], counts[~held])
        told[held] += likeness(weights, facts[held], opposite[held])
        times += held
    idea = combine_meaning(*facts.T[:3])
    judged = {"the same, held out": told / times, "an idea": np.where(opposite, np.minimum(idea, OPPOSITE), idea)}
    for name, chosen in (("met in names", met), ("drawn", ~met)):
        for kind, values in judged.items():
            pair = values[chosen], ratings[chosen]
            print(f"{name}, {kind}: r {pearson(*pair):.3f}, rank correlation {spearman(*pair):.3f}")


if __name__ == "__main__":
    main()
