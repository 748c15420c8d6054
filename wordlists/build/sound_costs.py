"""Fit what differences between phones cost, and what each class of phones weighs, in an alignment of two readings.

    python wordlists/build/sound_costs.py PATH

PATH is a folder with words really misheard and ratings of spoken words (`closeness_evidence`). The costs are those with
which the word heard comes first among other words, and with which similarity follows the ratings: the loss goes down
the slope of the cheapest alignments. The difference of two phones is that of their features, and of every two a factor
for what listeners confuse more or less often than features tell. Costs are drawn towards a guess, factors towards 1.
What is reported is what was found of words held out.
"""

from __future__ import annotations

import sys
from dataclasses import dataclass
from functools import reduce
from pathlib import Path

import closeness_evidence as evidence
import numpy as np
from closeness_evidence import Numbers, Ranking, found_at
from scipy.optimize import minimize
from sources import write_table

from namescreen.pronunciation import pronounce
from namescreen.pronunciation.alignment import CLASSES, RHYTHM, base_weights, phone_weights
from namescreen.pronunciation.articulatory_features import (
    CONSONANT_FEATURES,
    GLIDES,
    VOWEL_FEATURES,
    feature_differences,
)
from namescreen.pronunciation.phones import LETTER_OF, VOWEL_LETTERS
from namescreen.tables import table_bytes, wordlists_folder

SEED, FOLDS = 20261128, 5
AMONG, RATED, STEPS = 100, 0.15, 60
"""The words drawn into each ranking while fitting; what 1 - r with the ratings counts beside the logarithmic loss of
the rankings; and the steps of the search."""
STRENGTH, OF_PAIRS = 0.02, 0.003
"""The strength of L2, and that for the factors of pairs of phones: of 0.001 to 0.05 the one with the least loss held
out."""
QUARTERS = 4.0
"""The weight of a plosive: weights are whole quarters."""
GUESS = {
    "consonants": (0.5, 1.5, 0.6, 0.3, 0.3, 0.3, 0.3), "vowels": (0.3, 0.6, 0.4, 0.1, 0.1, 0.1, 0.2),
    "weight": (1.0, 0.6, 1.0, 1.0, 1.0, 1.0, 1.0, 0.8, 0.6),
}  # fmt: skip
"""The costs that a fit without evidence would give."""
NAMES = [
    *(f"consonants: {name}" for name in CONSONANT_FEATURES),
    *(f"vowels: {name}" for name in VOWEL_FEATURES),
    *(f"weight: {name}" for name in CLASSES),
]
PHONES = [phone for phone in LETTER_OF if phone == "AH0" or not phone[-1].isdigit()]
LETTERS = [LETTER_OF[phone] for phone in PHONES]
LONGEST = 14
PADDING = len(LETTERS)
CHUNK = 8192


def _facts() -> tuple[Numbers, Numbers]:
    """The feature differences of every two phones, each kind in its columns, and the costs of those that have none."""
    features = np.zeros((PADDING + 1, PADDING + 1, len(NAMES) - len(CLASSES)))
    fixed = np.ones(features.shape[:2])
    for at, one in enumerate(PHONES):
        for there, other in enumerate(PHONES):
            found = feature_differences(one, other)
            if at == there:
                fixed[at, there] = 0.0
            elif found is None:
                fixed[at, there] = GLIDES.get(frozenset((one, other)), 1.0)
            else:
                start = 0 if found[0] == "consonants" else len(CONSONANT_FEATURES)
                features[at, there, start : start + len(found[1])] = found[1]
    return features, fixed


FEATURES, FIXED = _facts()
COMPARABLE = FEATURES.any(axis=2)
PAIRS = np.argwhere(np.tril(COMPARABLE))
"""Every two phones that have a factor, by their numbers."""
CLASS_OF = np.array([next(at for at, letters in enumerate(CLASSES.values()) if one in letters) for one in LETTERS])


@dataclass(frozen=True)
class Costs:
    """Costs of phones by their numbers: of replacing one by another, and the weight of each; none for padding. `apart`
    is the sum of feature differences of every two, times their factor."""

    replacing: Numbers
    weight: Numbers
    apart: Numbers

    @classmethod
    def of(cls, numbers: Numbers) -> Costs:
        """The costs that the logarithms of all that is fitted stand for."""
        features, weights, factors = np.split(np.exp(numbers), (FEATURES.shape[2], len(NAMES)))
        apart = FEATURES @ features
        apart[*PAIRS.T] *= factors
        apart[*PAIRS.T[::-1]] *= factors
        return cls(np.where(COMPARABLE, 1 - np.exp(-apart), FIXED), np.r_[weights[CLASS_OF] * QUARTERS, 0.0], apart)


@dataclass(frozen=True)
class Readings:
    """Readings of words, a row each, padded: the numbers of their phones, what position adds to the weight of each, how
    long each is, and its syllables."""

    phones: np.ndarray
    extra: Numbers
    lengths: np.ndarray
    syllables: Numbers

    @classmethod
    def of(cls, codes: list[str]) -> Readings:
        """The readings with these codes."""
        phones = np.full((len(codes), LONGEST), PADDING)
        extra = np.zeros(phones.shape)
        for row, code in enumerate(codes):
            phones[row, : len(code)] = [LETTERS.index(letter) for letter in code]
            extra[row, : len(code)] = np.subtract(phone_weights(code), [base_weights()[letter] for letter in code])
        syllables = [sum(letter in VOWEL_LETTERS for letter in code) for code in codes]
        return cls(phones, extra, np.array([len(code) for code in codes]), np.array(syllables, float))


@dataclass(frozen=True)
class Alignments:
    """The cheapest alignments of pairs of readings: their similarity, and how it changes with every cost."""

    similarity: Numbers
    by_replacing: Numbers
    by_weight: Numbers


def align(readings: Readings, one: np.ndarray, other: np.ndarray, costs: Costs, pull: Numbers | None) -> Alignments:
    """The alignments of pairs of readings, by their rows; slopes of the sum of `pull` times similarity, if given."""
    order = np.argsort(np.maximum(readings.lengths[one], readings.lengths[other]), kind="stable")
    chunks = [order[at : at + CHUNK] for at in range(0, len(one), CHUNK)]
    found = [_align(readings, one[at], other[at], costs, None if pull is None else pull[at]) for at in chunks]
    similarity = np.empty(len(one))
    similarity[order] = np.concatenate([each.similarity for each in found])
    return Alignments(
        similarity,
        reduce(np.add, [each.by_replacing for each in found]),
        reduce(np.add, [each.by_weight for each in found]),
    )


def _align(readings: Readings, one: np.ndarray, other: np.ndarray, costs: Costs, pull: Numbers | None) -> Alignments:
    longest = int(max(readings.lengths[one].max(), readings.lengths[other].max()))
    first, second = readings.phones[one, :longest], readings.phones[other, :longest]
    ours = np.where(first < PADDING, costs.weight[first] + readings.extra[one, :longest], 0.0).T
    theirs = np.where(second < PADDING, costs.weight[second] + readings.extra[other, :longest], 0.0).T
    replacing = costs.replacing[first.T[:, None], second.T[None]]
    both = replacing * (ours[:, None] + theirs[None])
    table = np.zeros((longest + 1, longest + 1, len(one)))
    np.cumsum(theirs, axis=0, out=table[0, 1:])
    np.cumsum(ours, axis=0, out=table[1:, 0])
    for mine in range(longest):
        for yours in range(longest):
            best = np.minimum(table[mine, yours + 1] + ours[mine], table[mine + 1, yours] + theirs[yours])
            np.minimum(best, table[mine, yours] + both[mine, yours], out=table[mine + 1, yours + 1])
    whole, spent = ours.sum(axis=0) + theirs.sum(axis=0), table[-1, -1]
    syllables = readings.syllables[one], readings.syllables[other]
    rhythm = 1 - RHYTHM * abs(syllables[0] - syllables[1]) / np.maximum(1, np.maximum(*syllables))
    by_replacing, by_weight = np.zeros((PADDING + 1, PADDING + 1)), np.zeros(PADDING + 1)
    if pull is not None:
        of_cost, of_whole = -pull * rhythm / whole, pull * rhythm * spent / whole**2
        for phones in (first, second):
            np.add.at(by_weight, phones, of_whole[:, None])
        at = np.arange(len(one))
        i, j = np.full(len(one), longest), np.full(len(one), longest)
        while np.any(i + j):
            here, up, left = table[i, j, at], np.maximum(i - 1, 0), np.maximum(j - 1, 0)
            straight = (i > 0) & (j > 0) & (here == table[up, left, at] + both[up, left, at])
            down = ~straight & (i > 0) & (here == table[up, j, at] + ours[up, at])
            across = ~straight & ~down & (j > 0)
            a, b = first[at, up], second[at, left]
            cost = replacing[up, left, at]
            np.add.at(
                by_replacing, (a[straight], b[straight]), (of_cost * (ours[up, at] + theirs[left, at]))[straight]
            )
            np.add.at(by_weight, a, of_cost * np.where(straight, cost, down))
            np.add.at(by_weight, b, of_cost * np.where(straight, cost, across))
            i, j = i - (straight | down), j - (straight | across)
    return Alignments((1 - spent / whole) * rhythm, by_replacing, by_weight)


@dataclass(frozen=True)
class Evidence:
    """Rankings of words by their places among the readings, and ratings of pairs, a set for each word compared."""

    readings: Readings
    rankings: list[tuple[int, np.ndarray, np.ndarray]]
    """The word said, the others, and which of them were heard."""
    rated: list[tuple[np.ndarray, np.ndarray, Numbers]]

    def loss(self, numbers: Numbers, chosen: list[tuple[int, np.ndarray, np.ndarray]]) -> tuple[float, Numbers]:
        """What is minimised, and its slopes: the last number is the logarithm of how sharp a ranking is."""
        costs, sharpness = Costs.of(numbers[:-1]), float(np.exp(numbers[-1]))
        sizes = [len(others) for _, others, _ in chosen]
        one = np.concatenate([*(np.full(len(others), said) for said, others, _ in chosen), *(s[0] for s in self.rated)])
        other = np.concatenate([*(others for _, others, _ in chosen), *(s[1] for s in self.rated)])
        value = align(self.readings, one, other, costs, None).similarity
        pull, total, sharper = np.zeros(len(value)), 0.0, 0.0
        ends = np.cumsum([*sizes, *(len(s[2]) for s in self.rated)])
        for place, end in enumerate(ends):
            part = slice(end - (sizes[place] if place < len(sizes) else len(self.rated[place - len(sizes)][2])), end)
            mine = value[part]
            if place < len(sizes):
                heard = chosen[place][2]
                chance = np.exp(sharpness * (mine - mine.max()))
                chance /= chance.sum()
                total -= float(np.log(chance[heard]).mean()) / len(sizes)
                short = (chance - heard / heard.sum()) / len(sizes)
                pull[part] = sharpness * short
                sharper += sharpness * float(short @ mine)
            else:
                ratings = self.rated[place - len(sizes)][2]
                spread, apart = mine - mine.mean(), ratings - ratings.mean()
                size, wide = np.sqrt(spread @ spread) + 1e-9, np.sqrt(apart @ apart)
                r = float(spread @ apart / size / wide)
                total += RATED * (1 - r)
                pull[part] = -RATED * (apart / size / wide - r * spread / size**2)
        found = align(self.readings, one, other, costs, pull)
        # How the loss changes with the logarithm of what two phones are apart, and so of each cost.
        apart = found.by_replacing * np.where(COMPARABLE, (1 - costs.replacing) * costs.apart, 0.0)
        shares = FEATURES * np.exp(numbers[: FEATURES.shape[2]])
        shares /= np.maximum(shares.sum(axis=2, keepdims=True), 1e-12)
        by_features = np.einsum("ij,ijk->k", apart, shares)
        by_classes = np.bincount(CLASS_OF, found.by_weight[:PADDING] * costs.weight[:PADDING], len(CLASSES))
        by_pairs = apart[*PAIRS.T] + apart[*PAIRS.T[::-1]]
        away = numbers[:-1] - start()[:-1]
        strength = np.where(np.arange(len(away)) < len(NAMES), STRENGTH, OF_PAIRS)
        slopes = np.r_[by_features, by_classes, by_pairs] + 2 * strength * away
        return total + float(strength @ away**2), np.r_[slopes, sharper]


def start() -> Numbers:
    """Where a search begins: the guess, factors of 1, and a sharpness."""
    guess = np.r_[GUESS["consonants"], GUESS["vowels"], GUESS["weight"]]
    return np.asarray(np.log(np.r_[guess, np.ones(len(PAIRS)), 15.0]))


def fit(evidence_of: Evidence, chosen: list[tuple[int, np.ndarray, np.ndarray]]) -> Numbers:
    """The logarithms of the costs fitted on some of the rankings, and on the ratings."""
    rng = np.random.default_rng(SEED)
    fewer = []
    for said, others, heard in chosen:
        kept = np.r_[np.flatnonzero(heard), rng.permutation(np.flatnonzero(~heard))[:AMONG]]
        fewer.append((said, others[kept], heard[kept]))
    found = minimize(
        lambda numbers: evidence_of.loss(numbers, fewer), start(), jac=True, method="L-BFGS-B",
        options={"maxiter": STEPS},
    )  # fmt: skip
    print(f"loss {found.fun:.3f} after {found.nit} steps", file=sys.stderr)
    return np.asarray(found.x[:-1])


def whole(numbers: Numbers) -> Numbers:
    """Costs as they are shipped: weights in whole quarters of a plosive's, the others in hundredths or thousandths."""
    features, weights, factors = np.split(np.exp(numbers), (FEATURES.shape[2], len(NAMES)))
    weights = np.maximum(2, np.round(QUARTERS * weights / weights[list(CLASSES).index("plosive")]))
    return np.asarray(np.r_[np.round(features, 3), weights, np.round(factors, 2)])


def found_by(evidence_of: Evidence, numbers: Numbers, ranking: tuple[int, np.ndarray, np.ndarray]) -> list[float]:
    """The share of the words heard among the first 10 and 50, by costs as they are shipped."""
    said, others, heard = ranking
    shipped = whole(numbers)
    shipped[FEATURES.shape[2] : len(NAMES)] /= QUARTERS
    value = align(evidence_of.readings, np.full(len(others), said), others, Costs.of(np.log(shipped)), None).similarity
    return [found_at(value, heard, places) for places in (10, 50)]


def read(folder: Path) -> tuple[Evidence, list[Ranking]]:
    """The evidence, and the rankings it holds."""
    misheard = [(row["said"], row["heard"]) for row in evidence.rows(folder / "heard_words.csv")]
    rated: dict[str, list[tuple[str, float]]] = {}
    for row in evidence.rows(folder / "sound_ratings.csv"):
        rated.setdefault(row["other"], []).append((row["one"], float(row["rating"])))
    rankings = evidence.rankings("misheard words", misheard, both_ways=False)
    words = sorted(
        {*rankings[0].others, rankings[0].one, *rated, *(one for pairs in rated.values() for one, _ in pairs)}
    )
    place = {word: at for at, word in enumerate(words)}
    readings = Readings.of([pronounce(word, 1)[0].code[:LONGEST] for word in words])
    ranked = [(place[one.one], np.array([place[other] for other in one.others]), one.related) for one in rankings]
    sets = [
        (
            np.array([place[one] for one, _ in pairs]),
            np.full(len(pairs), place[word]),
            np.array([rating for _, rating in pairs]),
        )
        for word, pairs in rated.items()
    ]
    return Evidence(readings, ranked, sets), rankings


def main() -> None:
    """Fit, measure, and write wordlists/sound_costs.tsv."""
    all_of, rankings = read(Path(sys.argv[1]))
    names = [(one.one, *np.array(one.others)[one.related]) for one in rankings]
    at_fold = evidence.folds(evidence.groups(names), FOLDS, SEED)
    found = []
    for out in range(FOLDS):
        costs = fit(all_of, [one for one, at in zip(all_of.rankings, at_fold, strict=True) if at != out])
        found += [found_by(all_of, costs, one) for one, at in zip(all_of.rankings, at_fold, strict=True) if at == out]
    at_10, at_50 = np.mean(found, axis=0)
    costs = fit(all_of, all_of.rankings)
    pairs = [f"pair: {' '.join(sorted((PHONES[one], PHONES[other])))}" for one, other in PAIRS]
    entries = {name: f"{value:g}" for name, value in zip((*NAMES, *pairs), whole(costs), strict=True)}
    entries["held out: misheard words found at 10 / 50"] = f"{at_10:.3f} / {at_50:.3f}"
    print(*(f"{name}: {value}" for name, value in entries.items()), sep="\n")
    contents = table_bytes("sound_costs", sorted(entries.items()))
    write_table(
        wordlists_folder(),
        "sound_costs.tsv",
        contents,
        source="fitted on words misheard in noise (English Consistent Confusion Corpus 1.2, Marxer and others 2016, "
        "CC BY 4.0) and on ratings of spoken words (Vitz and Winkler 1973)",
        version=f"{len(rankings)} words misheard; the figure on words held out stands in the table",
        licence="the project's own (facts only)",
        build="python wordlists/build/sound_costs.py PATH",
    )


if __name__ == "__main__":
    main()
