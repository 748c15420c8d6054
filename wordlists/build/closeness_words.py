"""The measures of two words, weighed on evidence of single words that has nothing to do with trade marks.

How alike written words look to people, medicine names really confused, how alike spoken words sound, words really
misheard. Part of `closeness_model`.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import compress
from pathlib import Path

import closeness_evidence as evidence
import numpy as np
from closeness_evidence import Numbers, Ranking, found_at, pearson
from scipy.optimize import minimize

from namescreen.closeness import letters
from namescreen.closeness import sound as sounds
from namescreen.text import fold

SEED, FOLDS = 20261128, 10
RANKS, AMONG = 0.2, 400
"""What the logarithmic loss of a ranking counts beside the squared error of standardised ratings of words, and the
number of unrelated strings drawn into each ranking while fitting."""
HEARD = 100
"""Words said whose rankings are measured."""
SOUND = (0.75, 0.25)
"""The weights of the two measures of sound. Fitted here they would be 0.97 and 0.03, since the costs of articulation
are fitted on the same words; names, which those have not seen, are told better so (held out: sound of rated pairs 0.847
instead of 0.844, decided pairs elsewhere 0.863 instead of 0.845)."""


@dataclass(frozen=True)
class Words:
    """Measures of pairs of words with their ratings, each set standardised, and of ranked strings."""

    rated: list[tuple[Numbers, Numbers]]
    ranked: list[tuple[Numbers, np.ndarray]]


def word_weights(words: Words) -> tuple[float, ...]:
    """The weights, summing to 1, that follow ratings and rankings best."""
    count = words.rated[0][0].shape[1]

    def loss(given: Numbers) -> tuple[float, Numbers]:
        weights, sharpness, lines = given[:count], given[count], given[count + 1 :].reshape(-1, 2)
        total, slopes = 0.003 * float(weights @ weights), np.zeros(len(given))
        slopes[:count] = 0.006 * weights
        for place, (parts, ratings) in enumerate(words.rated):
            start, slope = lines[place]
            value = parts @ weights
            error = (start + slope * value - ratings) / len(ratings) / len(words.rated)
            total += float(error @ error) * len(ratings) * len(words.rated)
            slopes[:count] += 2 * slope * (error @ parts)
            slopes[count + 1 + 2 * place :][:2] += 2 * error.sum(), 2 * error @ value
        for parts, related in words.ranked:
            value = parts @ weights
            chance = np.exp(sharpness * (value - value.max()))
            chance /= chance.sum()
            total -= RANKS * float(np.log(chance[related]).mean()) / len(words.ranked)
            short = (chance - related / related.sum()) * RANKS / len(words.ranked)
            slopes[:count] += sharpness * (short @ parts)
            slopes[count] += short @ value
        return total, slopes

    start = np.r_[np.full(count, 1 / count), 20.0, np.tile([-2.0, 4.0], len(words.rated))]
    limits = [(0, None)] * count + [(1, 100)] + [(None, None), (0.1, 30)] * len(words.rated)
    found = minimize(loss, start, jac=True, bounds=limits, method="L-BFGS-B").x[:count]
    return tuple(float(one) for one in found / found.sum())


def standardised(values: Sequence[float]) -> Numbers:
    """Values with mean 0 and deviation 1."""
    array = np.asarray(values, np.float64)
    return np.asarray((array - array.mean()) / (array.std() or 1.0))


Measure = Callable[[str, str], Sequence[float]]


def letter_parts(one: str, other: str) -> Sequence[float]:
    """The measures of letters."""
    return letters.letter_measures(one, other)


def sound_parts(one: str, other: str) -> Sequence[float]:
    """The measures of sound; letters stand in for sounds that are not known."""
    return sounds.sound_measures(*(sounds.phoneme_codes_of(word) or (word,) for word in (one, other)))


def ranked_parts(ranking: Ranking, measure: Measure) -> Numbers:
    """The measures of all pairs of a ranking."""
    return np.array([measure(ranking.one, other) for other in ranking.others])


def fewer(parts: Numbers, related: np.ndarray, seed: int) -> tuple[Numbers, np.ndarray]:
    """The related and some of the others."""
    others = np.random.default_rng(seed).permutation(np.flatnonzero(~related))[:AMONG]
    chosen = np.r_[np.flatnonzero(related), others]
    return parts[chosen], related[chosen]


def weigh_words(
    name: str,
    measure: Measure,
    rated: dict[str, list[tuple[str, str, float]]],
    all_ranked: list[Ranking],
    given: tuple[float, ...] = (),
) -> tuple[tuple[float, ...], dict[str, str]]:
    """The weights of a measure of words, those `given` or fitted, and its figures on folds held out: mean correlation
    with the ratings given to one word's similarity to others, and the shares found at 10 and 50."""
    sets = [
        (np.array([measure(a, b) for a, b, _ in one]), standardised([r for *_, r in one])) for one in rated.values()
    ]
    ranked = [(ranked_parts(one, measure), one.related) for one in all_ranked]
    small = [fewer(*one, seed) for seed, one in enumerate(ranked)]
    set_fold = evidence.folds(range(len(sets)), FOLDS, SEED) if len(sets) >= FOLDS else None
    names = [(one.one, *compress(one.others, one.related)) for one in all_ranked]
    rank_fold = evidence.folds(evidence.groups(names), FOLDS, SEED)
    weights = given or word_weights(Words(sets, small))
    correlations: list[float] = []
    found = np.zeros((len(ranked), 2))
    predicted = [np.zeros(len(ratings)) for _, ratings in sets]
    for at_fold in range(FOLDS):
        inside, held = [], []
        for place, (parts, ratings) in enumerate(sets):
            if set_fold is not None:
                out = np.full(len(ratings), set_fold[place] == at_fold)
            else:  # one large set is split by its rows
                out = evidence.folds(range(len(ratings)), FOLDS, SEED) == at_fold
            held.append(out)
            if not out.all():
                inside.append((parts[~out], ratings[~out]))
        within = [one for one, at in zip(small, rank_fold, strict=True) if at != at_fold]
        fitted = np.array(given or word_weights(Words(inside, within)))
        for place, out in enumerate(held):
            predicted[place][out] = sets[place][0][out] @ fitted
        for at in np.flatnonzero(rank_fold == at_fold):
            parts, related = ranked[at]
            found[at] = [found_at(parts @ fitted, related, count) for count in (10, 50)]
    correlations = [pearson(mine, ratings) for mine, (_, ratings) in zip(predicted, sets, strict=True)]
    figures = {f"{name} of words, r with ratings": f"{np.mean(correlations):.3f}"}
    for kind in dict.fromkeys(one.kind for one in all_ranked):
        at_10, at_50 = found[[one.kind == kind for one in all_ranked]].mean(axis=0)
        figures[f"{name} of words, {kind} found at 10 / 50"] = f"{at_10:.3f} / {at_50:.3f}"
    return weights, figures


def read_words(
    folder: Path,
) -> tuple[
    dict[str, list[tuple[str, str, float]]], list[Ranking], dict[str, list[tuple[str, str, float]]], list[Ranking]
]:
    """Ratings and rankings of letters, and of sounds."""
    looked = [
        (fold(row["one"]), fold(row["other"]), float(row["rating"]))
        for row in evidence.rows(folder / "look_ratings.csv")
    ]
    heard: dict[str, list[tuple[str, str, float]]] = {}
    for row in evidence.rows(folder / "sound_ratings.csv"):
        heard.setdefault(row["other"], []).append((row["one"], row["other"], float(row["rating"])))
    misheard = [(row["said"], row["heard"]) for row in evidence.rows(folder / "heard_words.csv")]
    return (
        {"look": looked},
        confused_rankings(folder),
        heard,
        evidence.sample(evidence.rankings("misheard words", misheard, both_ways=False), HEARD),
    )


def confused_rankings(folder: Path) -> list[Ranking]:
    """Names of medicines that were really confused, ranked among all of them."""
    confused = [(row["one"], row["other"]) for row in evidence.rows(folder / "confused_medicines.csv")]
    register = (folder / "medicine_names.txt").read_text(encoding="utf-8").split()
    names = sorted({*register, *(name for pair in confused for name in pair)})
    return [
        *evidence.rankings("confused names (FDA)", confused, names),
        *evidence.rankings("confused names (ISMP)", evidence.confused_names(), names),
    ]
