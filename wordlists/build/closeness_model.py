"""Fit the weights of closeness, measure them by nested cross-validation, and calibrate what the numbers mean.

    python wordlists/build/closeness_model.py PATH

PATH is a folder with the evidence of `closeness_evidence`. First the measures of two words are weighed on evidence of
single words that has nothing to do with trade marks: how alike written words look to people, medicine names really
confused, how alike spoken words sound, words really misheard. With these, the means of two names are fitted on
ratings by readers who saw only names and goods and on decided cases together. Weights are never negative and are drawn
towards 0 (L2); how strongly is chosen inside each fold. What is reported is what was predicted of rows held out, rows
that share a name held out together; what is shipped is fitted on all of them.
"""

from __future__ import annotations

import sys
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import compress
from pathlib import Path

import closeness_evidence as evidence
import numpy as np
from closeness_evidence import Numbers, Ranking, auc, found_at, pearson, rating, spearman
from scipy.optimize import minimize
from sources import write_table

from namescreen.closeness import features, goods_words, letters, name_similarity
from namescreen.closeness import sound as sounds
from namescreen.closeness.model import PARTS, Mean, Model
from namescreen.tables import table_bytes, wordlists_folder
from namescreen.text import fold

SEED, FOLDS, REPEATS, INNER = 20261128, 10, 3, 5
STRENGTHS = (0.003, 0.01, 0.03, 0.1)
"""Strengths of L2 to choose from."""
LABELS = 0.3
"""What the logarithmic loss of decisions counts beside ten times the squared error of ratings: about as much in all."""
RANKS, AMONG = 0.2, 400
"""What the logarithmic loss of a ranking counts beside the squared error of standardised ratings of words, and the
number of unrelated strings drawn into each ranking while fitting."""
SAMPLES = 300
"""Samples of the cases, drawn with replacement, for the spread of the calibration."""
HEARD = 100
"""Words said whose rankings are measured."""


# Words


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
    name: str, measure: Measure, rated: dict[str, list[tuple[str, str, float]]], all_ranked: list[Ranking]
) -> tuple[tuple[float, ...], dict[str, str]]:
    """The weights of a measure of words, and its figures on folds held out: mean correlation with the ratings given to
    one word's similarity to others, and the shares found at 10 and 50."""
    sets = [
        (np.array([measure(a, b) for a, b, _ in one]), standardised([r for *_, r in one])) for one in rated.values()
    ]
    ranked = [(ranked_parts(one, measure), one.related) for one in all_ranked]
    small = [fewer(*one, seed) for seed, one in enumerate(ranked)]
    set_fold = evidence.folds(range(len(sets)), FOLDS, SEED) if len(sets) >= FOLDS else None
    rank_fold = evidence.folds(evidence.groups([(one.one,) for one in all_ranked]), FOLDS, SEED)
    weights = word_weights(Words(sets, small))
    correlations: list[float] = []
    found: list[tuple[float, float]] = []
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
        fitted = np.array(
            word_weights(Words(inside, [one for one, at in zip(small, rank_fold, strict=True) if at != at_fold]))
        )
        for place, out in enumerate(held):
            predicted[place][out] = sets[place][0][out] @ fitted
        for (parts, related), at in zip(ranked, rank_fold, strict=True):
            if at == at_fold:
                found.append((found_at(parts @ fitted, related, 10), found_at(parts @ fitted, related, 50)))
    correlations = [pearson(mine, ratings) for mine, (_, ratings) in zip(predicted, sets, strict=True)]
    at_10, at_50 = np.mean(found, axis=0)
    return weights, {
        f"{name} of words, r with ratings": f"{np.mean(correlations):.3f}",
        f"{name} of words, related strings found at 10 / 50": f"{at_10:.3f} / {at_50:.3f}",
    }


# Names


@dataclass(frozen=True)
class Evidence:
    """The parts of rated and of decided pairs, with ratings, labels and groups of rows that share a name."""

    rated: Numbers
    ratings: Numbers
    decided: Numbers
    similar: np.ndarray
    counts: Numbers
    rated_group: list[int]
    decided_group: list[int]

    def only(self, rated: np.ndarray, decided: np.ndarray) -> Evidence:
        """Some of the rows."""
        return Evidence(
            self.rated[rated],
            self.ratings[rated],
            self.decided[decided],
            self.similar[decided],
            self.counts[decided],
            list(compress(self.rated_group, rated)),
            list(compress(self.decided_group, decided)),
        )


def fit_mean(given: Evidence, strength: float) -> Mean:
    """The mean that is nearest to the ratings and, up to a scale of its own, tells the decided pairs apart."""
    count = given.rated.shape[1]

    def mean(numbers: Numbers) -> Mean:
        return Mean(tuple(numbers[:count] / numbers[:count].sum()), float(numbers[count]))

    def loss(numbers: Numbers) -> float:
        found = mean(numbers)
        weights = np.array(found.weights)
        error = found(*given.rated.T) - given.ratings
        total = 10 * float(error @ error) / len(error) + strength * float(weights @ weights)
        if len(given.similar):
            start, slope = numbers[count + 1 :]
            value = start + slope * (given.decided @ weights)
            value = np.where(given.similar, value, -value)
            total += LABELS * float(given.counts @ np.logaddexp(0, -value)) / float(given.counts.sum())
        return total

    start = np.r_[np.full(count, 1 / count), 1.0, -1.0, 2.0]
    limits = [(1e-6, 1)] * count + [(0.3, 6), (None, None), (0.05, 30)]
    return mean(minimize(loss, start, bounds=limits, method="L-BFGS-B").x)


def folds_of(given: Evidence, count: int, seed: int) -> tuple[np.ndarray, np.ndarray]:
    """The fold of every rated and of every decided row."""
    at = evidence.folds([*given.rated_group, *given.decided_group], count, seed)
    return at[: len(given.rated_group)], at[len(given.rated_group) :]


def quality(given: Evidence, rated: Numbers, decided: Numbers) -> float:
    """Rank correlation with the ratings, and with the labels the same kind of number (2 AUC - 1)."""
    value = spearman(rated, given.ratings)
    return value + (2 * auc(decided, given.similar) - 1 if 0 < given.similar.sum() < len(given.similar) else 0.0)


def predict(given: Evidence, count: int, seed: int, fit: Callable[[Evidence], Mean]) -> tuple[Numbers, Numbers]:
    """What is predicted of every row by a mean fitted without its fold."""
    rated_fold, decided_fold = folds_of(given, count, seed)
    rated, decided = np.zeros(len(given.ratings)), np.zeros(len(given.similar))
    for out in range(count):
        mean = fit(given.only(rated_fold != out, decided_fold != out))
        rated[rated_fold == out] = mean(*given.rated[rated_fold == out].T)
        decided[decided_fold == out] = mean(*given.decided[decided_fold == out].T)
    return rated, decided


def chosen_fit(given: Evidence) -> Mean:
    """The mean with the strength of L2 that does best in folds of these rows alone."""
    best = max(
        STRENGTHS,
        key=lambda strength: quality(given, *predict(given, INNER, SEED + 1, lambda g: fit_mean(g, strength))),
    )
    return fit_mean(given, best)


MEANS = ("appearance", "sound of names", "meaning", "overall")
ASPECT = {"appearance": "appearance", "sound of names": "sound", "meaning": "meaning", "overall": "overall"}


@dataclass(frozen=True)
class Pairs:
    """Pairs of names with the parts of their closeness; of identical names every part is 1."""

    rows: list[evidence.Row]
    parts: dict[str, Numbers]
    meant: np.ndarray

    def only(self, chosen: np.ndarray) -> Pairs:
        """Some of the pairs."""
        return Pairs(
            list(compress(self.rows, chosen)),
            {name: values[chosen] for name, values in self.parts.items()},
            self.meant[chosen],
        )

    def values(self, means: dict[str, Mean]) -> dict[str, Numbers]:
        """Closeness in every aspect and overall, as `name_similarity.score_of_parts` gives it."""
        found = {ASPECT[name]: means[name](*self.parts[name].T) for name in MEANS[:3]}
        whole = np.c_[self.parts["overall"], found["appearance"], found["sound"]]
        if "overall" in means:
            found["overall"] = name_similarity.at_least_covered(means["overall"](*whole.T), whole[:, 0])
        return found | {"meaning": np.where(self.meant, found["meaning"], 0.0), "whole": whole}


def pairs_of(rows: list[evidence.Row]) -> Pairs:
    """The parts of the closeness of the two marks of every row."""
    found, meant = [], []
    for row in rows:
        goods = goods_words(row.get("goods_a") or row.get("goods"), row.get("goods_b"))
        one, other = features(row["mark_a"], goods), features(row["mark_b"], goods)
        parts = name_similarity.parts(one, other)
        values = [
            (parts.look, *parts.looks), (parts.sound, *parts.sounds), parts.meanings, (*parts.elements, parts.strongest)
        ]  # fmt: skip
        same = one.letters == other.letters
        found.append([[1.0] * len(value) if same else value for value in values])
        meant.append(parts.meant or same)
    tables = [np.array(values) for values in zip(*found, strict=True)]
    return Pairs(rows, dict(zip(MEANS, tables, strict=True)), np.array(meant))


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
    names = [(row["mark_a"], row["mark_b"]) for pairs in (rated, decided) for row in pairs.rows]
    group = evidence.groups(names)
    return Evidence(
        tables[0],
        np.array([rating(row, aspect) for row in rated.rows]),
        tables[1],
        np.array([row["label"] == "similar" for row in decided.rows], bool),
        np.array([1.0 if row["strength"] == "clear" else evidence.BORDERLINE for row in decided.rows]),
        group[: len(rated.rows)],
        group[len(rated.rows) :],
    )


def fit_names(rated: Pairs, decided: Pairs) -> dict[str, Mean]:
    """All means, one after another."""
    means: dict[str, Mean] = {}
    for mean in MEANS[:3]:
        means[mean] = chosen_fit(evidence_of(mean, rated, decided, means))
    return means | {"overall": chosen_fit(evidence_of("overall", rated, decided, means))}


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


def name_figures(sets: Sequence[Pairs], found: Sequence[dict[str, Numbers]]) -> dict[str, float]:
    """The figures of values that were predicted of rows held out."""
    (rated, decided, graded), (of_rated, of_decided, of_graded) = sets, found
    figures = {
        f"rated pairs, {aspect}, rank correlation": spearman(of_rated[aspect], [rating(r, aspect) for r in rated.rows])
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


def calibrated(decided: Pairs, values: Numbers) -> dict[str, str]:
    """For closeness in steps, the share of decided pairs held similar by a logistic curve, with where nine of ten
    samples of the cases put it."""
    whole = np.array([evidence.judged_as_a_whole(row) for row in decided.rows])
    rows = list(compress(decided.rows, whole))
    similar = np.array([row["label"] == "similar" for row in rows])
    group = np.array(evidence.groups([(row["mark_a"], row["mark_b"]) for row in rows]))
    steps = np.linspace(0, 1, 21)

    def curve(chosen: np.ndarray) -> Numbers:
        value, label = values[whole][chosen], similar[chosen]

        def loss(line: Numbers) -> float:
            told = line[0] + line[1] * value
            return float(np.logaddexp(0, np.where(label, -told, told)).mean()) + 1e-4 * float(line @ line)

        line = minimize(loss, np.array([-1.0, 3.0]), bounds=[(None, None), (0, None)], method="L-BFGS-B").x
        return np.asarray(1 / (1 + np.exp(-(line[0] + line[1] * steps))))

    for step in np.arange(0, 1, 0.1):  # the reliability diagram of the contributors' guide
        there = (values[whole] >= step) & (values[whole] < step + 0.1)
        if there.any():
            print(f"reliability: {step:.1f} {there.sum()} pairs, {similar[there].mean():.2f} held similar")
    rng = np.random.default_rng(SEED)
    members = [np.flatnonzero(group == one) for one in range(group.max() + 1)]
    samples = [
        curve(np.concatenate([members[one] for one in rng.integers(0, len(members), len(members))]))
        for _ in range(SAMPLES)
    ]
    low, high = np.percentile(samples, (5, 95), axis=0)
    best = curve(np.arange(len(rows)))
    return {
        f"calibration: {step:.2f}": f"{middle:.3f} {below:.3f} {above:.3f}"
        for step, middle, below, above in zip(steps, best, low, high, strict=True)
    }


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
    confused = [(row["one"], row["other"]) for row in evidence.rows(folder / "confused_medicines.csv")]
    register = (folder / "medicine_names.txt").read_text(encoding="utf-8").split()
    misheard = [(row["said"], row["heard"]) for row in evidence.rows(folder / "heard_words.csv")]
    return (
        {"look": looked},
        evidence.rankings(confused, register),
        heard,
        evidence.sample(evidence.rankings(misheard, both_ways=False), HEARD),
    )


def main() -> None:
    """Read the evidence, fit, measure, and write wordlists/closeness_model.tsv."""
    folder = Path(sys.argv[1])
    looked, confused, heard, misheard = read_words(folder)
    look, look_figures = weigh_words("look", letter_parts, looked, confused)
    sound, sound_figures = weigh_words("sound", sound_parts, heard, misheard)
    print(look, look_figures, sound, sound_figures, file=sys.stderr)
    words = Model(Mean(look), Mean(sound), *(Mean(()) for _ in MEANS))
    letters.shipped_model = sounds.shipped_model = lambda: words  # type: ignore
    rated, decided, graded = (
        pairs_of(evidence.rows(folder / f"{name}_pairs.csv")) for name in ("rated", "decided", "graded")
    )
    sets = rated, decided, graded
    repeats = [held_out(sets, SEED + repeat) for repeat in range(REPEATS)]
    every = [name_figures(sets, found) for found in repeats]
    figures = look_figures | sound_figures
    figures |= {name: f"{np.mean([one[name] for one in every]):.3f}" for name in every[0]}
    means = fit_names(rated, decided)
    fitted = name_figures(sets, [pairs.values(means) for pairs in sets])
    for name, value in figures.items():
        print(f"{name}: {value}", f"(fitted {fitted[name]:.3f})" if name in fitted else "")
    values = {}
    for part, mean in {"look": words.look, "sound": words.sound, **means}.items():
        values[f"{part}: power"] = mean.power
        values |= {f"{part}: {name}": one for name, one in zip(PARTS[part], mean.weights, strict=True)}
    entries = {name: f"{value:.4f}" for name, value in values.items()}
    entries |= {f"held out: {name}": value for name, value in figures.items()}
    entries |= calibrated(decided, np.mean([found[1]["overall"] for found in repeats], axis=0))
    contents = table_bytes("closeness_model", sorted(entries.items()))
    write_table(
        wordlists_folder(),
        "closeness_model.tsv",
        contents,
        source="fitted on word mark decisions of the TTAB, the Federal Circuit and other US courts (some through TMEP "
        "1207.01(b)), the UK IPO, the EU General Court, and Danish, Norwegian, Singapore, Japanese and Australian "
        "offices and courts; on ratings of 271 of these pairs by two readers (runs of a language model) who saw only "
        "names and goods; on the FDA Name Differentiation list (2026) among the names of Drugs@FDA (2022), public "
        "domain; on ratings of written words (Hout and others 2023, CC BY) and of spoken ones (Vitz and Winkler 1973), "
        "and on the English Consistent Confusion Corpus 1.2 (Marxer and others 2016, CC BY 4.0)",
        version=f"{len(rated.rows)} rated, {len(decided.rows)} decided and {len(graded.rows)} graded pairs; figures on "
        'rows held out stand in the table under "held out"',
        licence="the project's own (facts only)",
        build="python wordlists/build/closeness_model.py PATH",
    )


if __name__ == "__main__":
    main()
