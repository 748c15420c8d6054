"""The means of two names, fitted on ratings and decided cases together, and measured on rows held out.

Weights are never negative and are drawn towards 0 (L2). Rows that share a name are held out together. Part of
`closeness_model`.
"""

from __future__ import annotations

import sys
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import compress
from typing import Any

import closeness_evidence as evidence
import numpy as np
from closeness_evidence import Numbers, auc, rating, spearman
from scipy.optimize import minimize

from namescreen.closeness import features, goods_words, name_similarity
from namescreen.closeness.model import Mean
from namescreen.closeness.parts import at_least, of_overall
from namescreen.closeness.telling import ADDED, telling_part

SEED, FOLDS = 20261128, 10
STRENGTH = 0.15
"""Strength of L2: from 0.05 to 0.2 rated overall rises by 0.005, decided pairs fall by 0.003."""
DRAWN = {"1": 0.3, "2": 0.5, "3": 0.5}
"""What a drawn pair, one invented in the style of disputes, and one invented to share a word count beside one that was
decided."""
KINDS = {"rated": "", "drawn": "1", "invented": "2", "word-sharing": "3"}
"""The kinds of rated pairs, and what marks their rows as drawn."""
LABELS = 1.0
"""What the logarithmic loss of decisions counts beside ten times the squared error of ratings. Of the values tried (0.3
to 3, drawn pairs 0.03 to 1) those that serve ratings and decisions together."""


@dataclass(frozen=True)
class Evidence:
    """The parts of rated and of decided pairs, with ratings, labels, and what each row counts."""

    rated: Numbers
    ratings: Numbers
    rated_counts: Numbers
    decided: Numbers
    similar: np.ndarray
    counts: Numbers


def fit_mean(given: Evidence) -> Mean:
    """The mean that is nearest to the ratings and, up to a scale of its own, tells the decided pairs apart."""
    count = given.rated.shape[1]

    def loss(numbers: Numbers) -> tuple[float, Numbers]:
        raw, power = numbers[:count], numbers[count]
        whole = raw.sum()
        weights = raw / whole
        base = np.maximum(given.rated @ weights, 1e-9)
        value = base**power
        error = 20 * given.rated_counts * (value - given.ratings) / given.rated_counts.sum()
        total = float(error @ (value - given.ratings)) / 2 + STRENGTH * float(weights @ weights)
        slopes = np.zeros(len(numbers))
        by_weights = given.rated.T @ (error * power * base ** (power - 1)) + 2 * STRENGTH * weights
        slopes[count] = float(error @ (value * np.log(base)))
        if len(given.similar):
            start, slope = numbers[count + 1 :]
            told = given.decided @ weights
            sign = np.where(given.similar, 1.0, -1.0)
            line = sign * (start + slope * told)
            counts = LABELS * given.counts / float(given.counts.sum())
            total += float(counts @ np.logaddexp(0, -line))
            pull = -counts * sign * np.exp(-np.logaddexp(0, line))
            by_weights += slope * (given.decided.T @ pull)
            slopes[count + 1 :] = pull.sum(), pull @ told
        slopes[:count] = (by_weights - by_weights @ weights) / whole
        return total, slopes

    start = np.r_[np.full(count, 1 / count), 1.0, -1.0, 2.0]
    limits = [(1e-6, 1)] * count + [(0.3, 6), (None, None), (0.05, 30)]
    found = minimize(loss, start, jac=True, bounds=limits, method="L-BFGS-B").x
    return Mean(tuple(found[:count] / found[:count].sum()), float(found[count]))


MEANS = ("appearance", "sound of names", "meaning", "overall")
ASPECT = {"appearance": "appearance", "sound of names": "sound", "meaning": "meaning", "overall": "overall"}


@dataclass(frozen=True)
class Pairs:
    """Pairs of names with the parts of their closeness; of identical names every part is 1."""

    rows: list[evidence.Row]
    parts: dict[str, Numbers]
    elements: Numbers
    taken: Numbers
    """The strength of what both share, as `at_least` asks for it."""
    heard: Numbers
    """Their similarity in sound as wholes, 0 where it is not known."""
    meant: np.ndarray
    bare: Pairs | None = None
    """The pairs without the words that name their goods (`closeness.telling`)."""

    def only(self, chosen: np.ndarray) -> Pairs:
        """Some of the pairs."""
        return Pairs(
            list(compress(self.rows, chosen)),
            {name: values[chosen] for name, values in self.parts.items()},
            self.elements[chosen],
            self.taken[chosen],
            self.heard[chosen],
            self.meant[chosen],
            self.bare and self.bare.only(chosen),
        )

    def values(self, means: dict[str, Mean]) -> dict[str, Numbers]:
        """Closeness in every aspect and overall, as `closeness.compare` gives it."""
        found = {ASPECT[name]: means[name](*self.parts[name].T) for name in MEANS[:3]}
        *of_words, coined = self.parts["overall"].T
        whole = np.column_stack(of_overall(tuple(of_words), found["appearance"], found["sound"], coined))
        if "overall" in means:
            found["overall"] = at_least(
                means["overall"](*whole.T), tuple(self.elements.T), self.taken, self.heard
            )
            if self.bare:
                found["overall"] = np.maximum(found["overall"], ADDED * self.bare.values(means)["overall"])
        return found | {"meaning": np.where(self.meant, found["meaning"], 0.0), "whole": whole}


def pairs_of(rows: list[evidence.Row]) -> Pairs:
    """The parts of the closeness of the two marks of every row."""
    goods = [(row.get("goods_a") or row.get("goods") or "", row.get("goods_b") or "") for row in rows]
    names = [(row["mark_a"], row["mark_b"]) for row in rows]
    told = []
    for (one, other), each in zip(names, goods, strict=True):
        named = "; ".join(filter(None, each))
        told.append((telling_part(one, named), telling_part(other, named)))
    return replace(_pairs(rows, names, goods), bare=_pairs(rows, told, goods))


def _pairs(rows: list[evidence.Row], names: list[tuple[str, str]], goods: list[tuple[str, str]]) -> Pairs:
    found = [_facts(*each, *for_goods) for each, for_goods in zip(names, goods, strict=True)]
    tables, *others = zip(*found, strict=True)
    by_mean = {mean: np.array(values) for mean, values in zip(MEANS, zip(*tables, strict=True), strict=True)}
    elements, taken, heard, meant = map(np.array, others)
    return Pairs(rows, by_mean, elements, taken, heard, meant)


@lru_cache(maxsize=1 << 14)
def _facts(name: str, mark: str, name_goods: str, mark_goods: str) -> tuple[Any, ...]:
    """The parts of every mean, then what else `Pairs` holds."""
    goods = goods_words(name_goods, mark_goods)
    one, other = features(name, goods), features(mark, goods)
    parts = name_similarity.parts(one, other)
    values = (
        parts.all_looks,
        parts.all_sounds,
        parts.all_meanings,
        (*parts.of_words, float(parts.one_coined_word)),
    )
    if one.letters == other.letters:
        return tuple((1.0,) * len(value) for value in values), (1.0, 1.0), 1.0, 1.0, True
    taken, heard = 0.0 if parts.breaks_phrase else parts.shared, parts.sound if parts.heard else 0.0
    return values, parts.elements, taken, heard, parts.meant


def evidence_of(mean: str, rated: Pairs, decided: Pairs, means: dict[str, Mean]) -> Evidence:
    """What one mean is fitted on; that of overall closeness on the values of the others."""
    aspect = ASPECT[mean]
    if mean == "overall":
        keep = np.array([evidence.judged_as_a_whole(row) for row in decided.rows])
    else:
        keep = np.array([row["aspect"] == aspect for row in decided.rows])
        if mean == "meaning":
            rated, keep = rated.only(rated.meant), keep & decided.meant
    decided = decided.only(keep)
    tables = [pairs.values(means)["whole"] if mean == "overall" else pairs.parts[mean] for pairs in (rated, decided)]
    return Evidence(
        tables[0],
        np.array([rating(row, aspect) for row in rated.rows]),
        np.array([DRAWN.get(row.get("drawn", ""), 1.0) for row in rated.rows]),
        tables[1],
        np.array([row["label"] == "similar" for row in decided.rows], bool),
        np.array([1.0 if row["strength"] == "clear" else evidence.BORDERLINE for row in decided.rows]),
    )


def fit_names(rated: Pairs, decided: Pairs) -> dict[str, Mean]:
    """All means, one after another."""
    means: dict[str, Mean] = {}
    for mean in MEANS[:3]:
        means[mean] = fit_mean(evidence_of(mean, rated, decided, means))
    return means | {"overall": fit_mean(evidence_of("overall", rated, decided, means))}


def held_out(sets: Sequence[Pairs], seed: int) -> list[dict[str, Numbers]]:
    """The values of every pair of rated, decided and graded ones by means fitted on the other groups."""
    names = [(row["mark_a"], row["mark_b"]) for pairs in sets for row in pairs.rows]
    at_fold = evidence.folds(evidence.groups(names), FOLDS, seed)
    of_set = np.split(at_fold, np.cumsum([len(pairs.rows) for pairs in sets])[:-1])
    found = [{name: np.zeros(len(pairs.rows)) for name in ASPECT.values()} for pairs in sets]
    for out in range(FOLDS):
        means = fit_names(*(pairs.only(at != out) for pairs, at in zip(sets[:2], of_set[:2], strict=True)))
        for pairs, at, values in zip(sets, of_set, found, strict=True):
            predicted = pairs.only(at == out).values(means)
            for aspect in ASPECT.values():
                values[aspect][at == out] = predicted[aspect]
        print(f"fold {out + 1} of {FOLDS}", file=sys.stderr)
    return found


def real_figures(real: Pairs, found: dict[str, Numbers]) -> dict[str, float]:
    """The figures of pairs that took no part in the fit."""
    return {
        f"real pairs, {aspect}, rank correlation": spearman(found[aspect], [rating(row, aspect) for row in real.rows])
        for aspect in ASPECT.values()
    }


def name_figures(sets: Sequence[Pairs], found: Sequence[dict[str, Numbers]]) -> dict[str, float]:
    """The figures of values that were predicted of rows held out."""
    (rated, decided, graded), (of_rated, of_decided, of_graded) = sets, found
    drawn = np.array([row.get("drawn", "") for row in rated.rows])
    figures = {
        f"{kind} pairs, {aspect}, rank correlation": spearman(
            of_rated[aspect][drawn == mark], np.array([rating(row, aspect) for row in rated.rows])[drawn == mark]
        )
        for kind, mark in KINDS.items()
        for aspect in ASPECT.values()
    }
    for aspect, column in evidence.ASPECTS.items():
        known = np.array([row[column] in evidence.GRADES for row in graded.rows])
        grades = [evidence.GRADES.index(row[column]) for row in graded.rows if row[column] in evidence.GRADES]
        figures[f"graded pairs, {aspect}, rank correlation"] = spearman(of_graded[aspect][known], grades)
    told = np.array([row["overall"] in ("likely", "unlikely") for row in graded.rows])
    likely = np.array([row["overall"] == "likely" for row in graded.rows])
    figures["graded pairs, confusion likely, AUC"] = auc(of_graded["overall"][told], likely[told])
    american = np.array([row["jurisdiction"] == "US" for row in decided.rows])
    clear = np.array([row["strength"] == "clear" for row in decided.rows])
    whole = np.array([evidence.judged_as_a_whole(row) for row in decided.rows])
    similar = np.array([row["label"] == "similar" for row in decided.rows])
    for name, chosen in (
        ("US, clear", american & clear), ("US, all", american), ("elsewhere, overall", whole & ~american)
    ):  # fmt: skip
        figures[f"decided pairs, {name}, AUC"] = auc(of_decided["overall"][chosen], similar[chosen])
    for aspect in evidence.ASPECTS:
        chosen = np.array([row["aspect"] == aspect and not row["tribunal"].startswith("JPO") for row in decided.rows])
        chosen &= ~american
        figures[f"decided pairs, elsewhere, {aspect}, AUC"] = auc(of_decided[aspect][chosen], similar[chosen])
    return figures
