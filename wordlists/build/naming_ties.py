"""Fit how sure each source of a tie between an existing word and a term of a brief is.

    python wordlists/build/naming_ties.py [--to FOLDER]

naming_ties.tsv  meaning, itself, apt, suited -> STRENGTH:WEIGHT ...

The evidence are the short lists (naming_picks.tsv): briefs of four subjects each are drawn at random, and of every word
that stands on any short list it is known whether the list of a subject holds it with a rating of 4 or more. A logistic
model tells that from the strength of the four sources, each piecewise linear and never falling, so the sources add up.
Words whose facets were drawn from the short lists are left out.
The weights are log-odds beside those of a word without any tie, as a share of the surest ties' (the 95th hundredth of
those of listed words).
"""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Sequence
from itertools import pairwise

import numpy as np
from naming_words import FOLDER, lines
from numpy.typing import NDArray
from sources import folder_to_write, write_table

from namescreen.brief import Brief, Concept
from namescreen.generation.brief_terms import BriefTerms
from namescreen.generation.ties import known_words, sources_of
from namescreen.generation.vocabulary import places
from namescreen.tables import open_table, table_bytes

KNOTS = {"meaning": (0.25, 0.5, 0.75, 1.0), "itself": (0.15, 0.35, 0.6), "apt": (0.2, 0.5, 0.84, 0.96, 1.0),
         "suited": (0.1, 0.3, 0.54, 0.95)}  # fmt: skip
"""The strengths of each source between which its worth is a straight line; none below the first."""
GOOD = (4 - 2) / (7 - 2)
SUBJECTS, FOLDS = 4, 5
SUREST = 0.95
RIDGE = 1.0
FROM_LISTS = "naming_facets_e.txt"
"""What words are apt for by the short lists themselves: they tell nothing here."""
SHARE = 0.02
"""The share of the words without any tie that are looked at; each stands for many."""

Numbers = NDArray[np.float64]


def basis(strength: Numbers, knots: Sequence[float]) -> Numbers:
    """How far a strength has come on each stretch between knots, the first stretch of no width."""
    columns = [(strength > knots[0]).astype(float)]
    columns += [np.clip((strength - low) / (high - low), 0, 1) for low, high in pairwise(knots)]
    return np.stack(columns, axis=1)


def drawn() -> list[tuple[tuple[str, ...], list[dict[str, float]]]]:
    """Briefs of four subjects, each with its short list: word -> rating as a share."""
    rows = [value.split("|") for _, value in open_table("naming_picks.tsv").items()]
    subjects: dict[str, dict[str, float]] = {}
    for about, words in rows:
        name = about.split()[0]
        if "+" not in name and name in places():
            rated = (entry.rpartition(" ") for entry in words.split(", "))
            subjects.setdefault(name, {}).update({word: (float(rating) - 2) / 5 for word, _, rating in rated})
    order = sorted(subjects)
    random.Random("four subjects").shuffle(order)
    groups = [tuple(order[at : at + SUBJECTS]) for at in range(0, len(order) - SUBJECTS + 1, SUBJECTS)]
    return [(group, [subjects[name] for name in group]) for group in groups]


def read() -> tuple[Numbers, Numbers, Numbers, NDArray[np.int64]]:
    """A row for each word and subject: what each source tells, whether it is listed, for how many it stands, and its
    brief."""
    place: dict[str, int] = {}
    for at, one in enumerate(known_words()):
        place.setdefault(one.word.casefold(), at)
    briefs = drawn()
    listed = Counter(word for _, lists in briefs for words in lists for word in words)
    drawn_from_lists = {line.partition(":")[0] for line in lines(FROM_LISTS)}
    active = np.array(sorted(place[word] for word in listed if word in place and word not in drawn_from_lists))
    rng = np.random.default_rng(16)
    rows, labels, weights, which = [], [], [], []
    for number, (names, lists) in enumerate(briefs):
        sources = sources_of(BriefTerms.of(Brief(concepts=tuple(map(Concept, names)))))
        for column, words in enumerate(lists):
            held = np.zeros(len(known_words()))
            held[[place[word] for word, pleased in words.items() if pleased >= GOOD and word in place]] = 1
            strengths = {name: getattr(sources, name)[active, column].astype(float) for name in KNOTS}
            told = np.concatenate([basis(strengths[name], knots) for name, knots in KNOTS.items()], axis=1)
            tied = told.any(axis=1)
            keep = tied | (held[active] > 0) | (rng.random(len(active)) < SHARE)
            rows.append(told[keep])
            labels.append(held[active][keep])
            weights.append(np.where(tied | (held[active] > 0), 1.0, 1 / SHARE)[keep])
            which.append(np.full(keep.sum(), number))
    return np.concatenate(rows), np.concatenate(labels), np.concatenate(weights), np.concatenate(which)


def fit(rows: Numbers, labels: Numbers, weights: Numbers) -> tuple[float, Numbers]:
    """The level and the log-odds of each stretch, none below zero: Newton's method with short steps; a stretch that
    falls is left out."""
    free = np.ones(rows.shape[1], bool)
    design = np.concatenate([np.ones((len(rows), 1)), rows], axis=1)
    while True:
        used = np.flatnonzero(np.concatenate([[True], free]))
        part, found = design[:, used], np.zeros(len(used))
        found[0] = -5.0
        for _ in range(60):
            chance = 1 / (1 + np.exp(-(part @ found)))
            slope = part.T @ (weights * (labels - chance)) - RIDGE * np.concatenate([[0.0], found[1:]])
            curve = (part * (weights * chance * (1 - chance))[:, None]).T @ part + RIDGE * np.eye(len(used))
            step = np.linalg.solve(curve, slope).clip(-1, 1)
            found += step
            if np.abs(step).max() < 1e-6:
                break
        if (found[1:] >= 0).all():
            break
        free[used[1:][found[1:].argmin()] - 1] = False
    whole = np.zeros(rows.shape[1])
    whole[used[1:] - 1] = found[1:]
    return float(found[0]), whole


def area(score: Numbers, labels: Numbers, weights: Numbers) -> float:
    """ROC-AUC: how often a listed word has the higher score."""
    order = np.argsort(score, kind="stable")
    good, bad = (labels * weights)[order], ((1 - labels) * weights)[order]
    levels, at = np.unique(score[order], return_inverse=True)
    goods, bads = np.bincount(at, good, len(levels)), np.bincount(at, bad, len(levels))
    below = np.cumsum(bads) - bads
    return float((goods * (below + bads / 2)).sum() / (goods.sum() * bads.sum()))


def main() -> None:
    """Fit and write the table."""
    folder = folder_to_write(__doc__, FOLDER)
    rows, labels, weights, which = read()
    predicted = np.zeros(len(rows))
    for fold in range(FOLDS):
        inside = which % FOLDS == fold
        level, worth = fit(rows[~inside], labels[~inside], weights[~inside])
        predicted[inside] = level + rows[inside] @ worth
    tied = rows.any(axis=1)
    among = area(predicted[tied], labels[tied], weights[tied])
    quality = (
        f"of {int(labels.sum())} words listed for {len(set(which)) * SUBJECTS} subjects and all others: ROC-AUC "
        f"{area(predicted, labels, weights):.2f}; among words with any tie {among:.2f}"
    )
    _, worth = fit(rows, labels, weights)
    worth /= np.quantile((rows @ worth)[labels > 0], SUREST)
    entries, start = [], 0
    for name, knots in KNOTS.items():
        steps = worth[start : start + len(knots)].cumsum()
        start += len(knots)
        entries.append((name, " ".join(f"{at:g}:{value:.3f}" for at, value in zip(knots, steps, strict=True))))
    print(quality, entries)
    write_table(
        folder, "naming_ties.tsv", table_bytes("naming_ties", entries),
        source=f"fitted on the short lists in naming_picks.tsv, a fifth of the briefs in turn left out: {quality}",
        version="1", licence="MIT, as namescreen", build="python wordlists/build/naming_ties.py",
    )  # fmt: skip


if __name__ == "__main__":
    main()
