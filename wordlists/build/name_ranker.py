"""Fit the weights of the ranking of names on names of ours that readers rated, and say how well it does on unseen
briefs.

    python wordlists/build/name_ranker.py [--outside judged_names.csv --briefs briefs.json]

The names are those of wordlists/curated/read_names.csv and read_more.csv: for 352 briefs of our own (read_briefs.json)
the first page, names drawn from further down, and names that other rankings would put first, each rated from 1 to 7 by
two readers who knew nothing but the brief; and pairs and changed names made for 48 (read_made.csv). What is shipped is
a weight for each part of namescreen/generation/ranking.py, how each form of name fared, how words of a kind fared by
their vectors (naming_promise.npy), and how each word fared that was read, beside what the rest foretells. The model is
a weighted mean of the parts, fitted by least squares under a Gaussian prior with no weight below zero, so that each
part counts the way its meaning says; words taken as they are, sayings, pairs, changed names and the rest are fitted
apart, as other parts decide of them. Quality is told where a fifth of the briefs in turn is left out of the fit. Words
that have nothing to do with a brief, which were mixed in so that the readers' scale keeps its end, take no part.

`--outside` are names for other briefs (columns brief, name, source, kind, words, maker, consultant), most of them made
by persons or other programs; they take no part in the fit, and the weights are held against them.
"""

from __future__ import annotations

import argparse
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from io import BytesIO
from pathlib import Path

import numpy as np
from naming_readings import FREE, Rated, read
from naming_words import CURATED
from numpy.typing import NDArray
from sources import write_table

from namescreen.generation.appraisal import GIVEN
from namescreen.generation.constructions import CONSTRUCTIONS
from namescreen.generation.ranking import PROMISED, WHOLE
from namescreen.tables import table_bytes

FOLDER, BRIEFS = CURATED.parent, CURATED / "read_briefs.json"
FAMILY = {"found": "as it is", "figure": "as it is"}
"""Forms of name that share their weights with others; one that is not in `EXPECTED` either is one of the others."""
OTHERS = "others"
EXPECTED = {
    "as it is": {"sense": 0.12, "true": 0.05, "listed": 0.12, "matched": 0.05, "whole": 0.1, "suited": 0.05,
                 "special": 0.06, "delight": 0.12, "pleasing": 0.15, "foremost": 0.03, "telling": 0.05, "apt": 0.05,
                 "many": 0.05, "aside": 0.03, "fresh": 0.03, "familiar": 0.03},
    "foreign": {"sense": 0.1, "ware": 0.08, "listed": 0.1, "matched": 0.06, "delight": 0.2, "appeal": 0.05},
    "saying": {"sense": 0.08, "true": 0.12, "direct": 0.05, "matched": 0.08, "whole": 0.05, "delight": 0.15,
               "pleasing": 0.2, "foremost": 0.03, "telling": 0.05, "apt": 0.03, "many": 0.05, "aside": 0.03},
    "pair": {"plain": 0.05, "charm": 0.1, "join": 0.12, "sense": 0.05, "single": 0.03, "many": 0.1, "whole": 0.05,
             "delight": 0.1, "appeal": 0.05, "ending": 0.03, "length": 0.1, "rhythm": 0.05, "closed": 0.06},
    "pair joined": {"plain": 0.08, "charm": 0.05, "echo": 0.12, "sense": 0.08, "true": 0.05, "delight": 0.2,
                    "many": 0.05, "familiar": 0.08, "pleasant": 0.05, "sayable": 0.05},
    "changed": {"direct": 0.15, "fresh": 0.16, "kept": 0.17, "unmixed": 0.1, "saying": 0.07, "punned": 0.1,
                "pleasant": 0.05, "heard": 0.05, "behind": 0.03, "dear": 0.08, "appeal": 0.05, "open": 0.03},
    "changed closed": {"heard": 0.08, "even": 0.08, "spared": 0.1, "remains": 0.05, "brisk": 0.12, "length": 0.1,
                       "rhythm": 0.08, "picture": 0.05, "dear": 0.05},
    "others": {"sense": 0.217, "true": 0.064, "join": 0.101, "fresh": 0.08, "known": 0.03, "appeal": 0.05},
}  # fmt: skip
"""The parts that decide of each family, with the weights that are expected before any name is seen: those of words and
sayings are near what the names here say by themselves, the others those of earlier fits on names of several sources."""
ASKED_OF_GIVEN = {"as it is": {"appeal": 0.05, "many": 0.05}}
"""The same for parts that tell nothing of our own names beside the others, as these are chosen by them."""
SWEEPS = 4
PRIOR = 60.0
"""Strength of the prior, as so many names that agree with it."""
FOOT, SPAN = 0.27, 0.45
"""The weighted mean of the parts for a rating of nothing, and how much it grows to full marks: so that all forms of
name, of which some differ more by their parts than others, have weights that add up to 1, none below zero."""
READ = 0.2
"""From one end of the part "read" to the other, as a share of full marks."""
MOST, MOST_GIVEN = 0.9, 1.2
"""The most that the parts may weigh together, as a share of the score, and in shares of full marks those of names made
elsewhere: what is left is for the part "kind", which must be able to tell how forms differ."""
FAITH = 8
"""So many readings of a word count as much as what the parts foretell of it."""
LEAST_READ = 0.005
TOGETHER = "read_names"
"""The file of names by which the forms are held against each other."""
RIDGE, PASSES = 40.0, 2
"""How strongly what the vectors add is drawn to nothing; so often parts and vectors are fitted in turn."""
PAGE, FOLDS, TRIES = 20, 5, 5
STRENGTHS = (20.0, 60.0, 200.0)
"""How many names the weights of ours may count as where those of names made elsewhere are fitted."""
LEAST_EXPECTED = 0.005  # of a part that our own names found to tell nothing
WITHIN = ("found", "saying", "pair", "changed")

Numbers = NDArray[np.float64]


def family(form: str) -> str:
    """The family of a form of name."""
    bare = form.removeprefix(GIVEN)
    known = FAMILY.get(bare, bare)
    return (GIVEN if form != bare else "") + (known if known in EXPECTED else OTHERS)


def _about_means(values: Numbers, side: Sequence[str]) -> Numbers:
    """Values, less the mean of those of the same side."""
    if not len(values):
        return values
    _, at, counts = np.unique(np.array(side), return_inverse=True, return_counts=True)
    sums = np.zeros((len(counts), *values.shape[1:]))
    np.add.at(sums, at, values)
    return np.asarray(values - (sums.T / counts).T[at])


def fit(
    names: Sequence[Rated], group: str, expected: Numbers, prior: float = PRIOR, told: Mapping[int, float] | None = None
) -> Numbers:
    """The weights of a family for a rating as a share, none below zero, by coordinate descent on the squared error
    under a prior around `expected`, as strong as so many names, with a free level for each form and each brief. `told`
    is what is known of the rating of a name by its place otherwise."""
    places = [place for place, one in enumerate(names) if family(one.form) == group]
    names = [names[place] for place in places]
    rows = np.array([one.row for one in names]).reshape(len(names), len(FREE))
    wanted = np.array([one.rating for one in names]) - np.array([(told or {}).get(place, 0.0) for place in places])
    sides = [[f"{one.among} {one.form}" for one in names], [one.among + one.brief for one in names]]
    for side in sides * SWEEPS:
        rows, wanted = _about_means(rows, side), _about_means(wanted, side)
    weights = expected.copy()
    scale, strength = (rows**2).sum(0), prior * np.maximum(rows.var(0) if names else np.zeros(len(FREE)), 5e-3)
    products, wishes = rows.T @ rows, rows.T @ wanted
    for _ in range(300):
        for place in np.flatnonzero(expected):
            pull = wishes[place] - products[place] @ weights + scale[place] * weights[place]
            pull += strength[place] * expected[place]
            weights[place] = max(0.0, float(pull) / (scale[place] + strength[place]))
    most = MOST_GIVEN if group.startswith(GIVEN) else MOST / SPAN - READ - PROMISED
    return np.asarray(weights / max(1.0, weights.sum() / most))


@dataclass(frozen=True)
class Fitted:
    """The weights of every family, what must be added for each form so that its scores are about the ratings on
    average, and what the rating of each word that was read is beside what the rest foretells. `among` is what must be
    added for a form among the names of a file: some hold only names that are good for their form, others weak ones.
    `promise` is what the vectors of a word and of its meaning add."""

    weights: dict[str, Numbers]
    levels: dict[str, float]
    words: dict[str, float]
    among: Mapping[tuple[str, str], float] = field(default_factory=dict)
    promise: Numbers | None = None

    def promised(self, one: Rated) -> float:
        """What the kind of its word adds to the rating of a name."""
        value = 0.0 if self.promise is None or one.vector is None else float(one.vector @ self.promise)
        return max(-PROMISED / 2, min(PROMISED / 2, value))


def fit_ours(names: Sequence[Rated]) -> Fitted:
    """The model of our own names."""
    expected = {group: np.array([parts.get(part, 0.0) for part in FREE]) for group, parts in EXPECTED.items()}
    told: dict[int, float] = {}
    for _ in range(PASSES):
        weights = {group: fit(names, group, expected[group], told=told) for group in EXPECTED}
        promise = _promise(names, weights)
        kinds = Fitted({}, {}, {}, promise=promise)
        told = {place: kinds.promised(one) for place, one in enumerate(names) if one.vector is not None}
    missing = [one.rating - _told(one, weights) - kinds.promised(one) for one in names]
    levels = _levels(names, missing)
    plain = Fitted(weights, levels, {}, promise=promise)
    missed: dict[str, list[float]] = {}
    for brief in {one.brief for one in names}:
        here = [one for one in names if one.brief == brief and one.word]
        rest = [one.rating - score(one, plain) for one in here]
        for one, value in zip(here, rest, strict=True):
            missed.setdefault(one.word, []).append(value - float(np.mean(rest)))
    words = {word: sum(values) / (len(values) + FAITH) for word, values in missed.items()}
    words = {word: max(-READ / 2, min(READ / 2, value)) for word, value in words.items()}
    return Fitted(weights, levels, words, promise=promise)


def _levels(names: Sequence[Rated], missing: Sequence[float]) -> dict[str, float]:
    """What must be added for each form so that its scores are about the ratings, by the lots in most of which a
    consultant's names stood among ours: without such, readers are kinder to puns and pairs."""
    found: dict[str, list[float]] = {form: [] for form in CONSTRUCTIONS}
    for one, value in zip(names, missing, strict=True):
        if one.among == TOGETHER:
            found.setdefault(one.form, []).append(value)
    return {form: float(np.mean(values or [0.0])) for form, values in found.items()}


def _promise(names: Sequence[Rated], weights: Mapping[str, Numbers]) -> Numbers:
    """What the vectors of a word and of its meaning add to what its parts foretell, by ridge regression, with a free
    level for each form and each brief."""
    names = [one for one in names if one.vector is not None]
    vectors = np.array([one.vector for one in names])
    missing = np.array([one.rating - _told(one, weights) for one in names])
    for side in [[one.form for one in names], [one.among + one.brief for one in names]] * SWEEPS:
        vectors, missing = _about_means(vectors, side), _about_means(missing, side)
    return np.asarray(np.linalg.solve(vectors.T @ vectors + RIDGE * np.eye(vectors.shape[1]), vectors.T @ missing))


def fit_given(given: Sequence[Rated], ours: Mapping[str, Numbers], prior: float) -> Fitted:
    """The model of names made elsewhere: the weights of ours are what is expected of theirs."""
    expected = {}
    for group, parts in EXPECTED.items():
        least = {**dict.fromkeys(parts, LEAST_EXPECTED), **ASKED_OF_GIVEN.get(group, {})}
        expected[group] = np.maximum(ours[group], [least.get(part, 0.0) for part in FREE])
    weights = {GIVEN + group: fit(given, GIVEN + group, expected[group], prior) for group in EXPECTED}
    told = [one.rating - _told(one, weights) for one in given]
    all_forms = float(np.mean(told))
    forms = sorted({one.form for one in given} | {GIVEN + form for form in CONSTRUCTIONS})
    levels = {form: _shrunk([value for one, value in zip(given, told, strict=True) if one.form == form], all_forms)
              for form in forms}  # fmt: skip
    missing: dict[tuple[str, str], list[float]] = {}
    for one, value in zip(given, told, strict=True):
        missing.setdefault((one.among, one.form), []).append(value)
    among = {key: _shrunk(values, levels[key[1]]) for key, values in missing.items()}
    return Fitted(weights, levels, {}, among)


def _shrunk(values: Sequence[float], expected: float) -> float:
    """The mean of some values, drawn to what is expected."""
    return (sum(values) + FAITH * expected) / (len(values) + FAITH)


def strength(given: Sequence[Rated], ours: Mapping[str, Numbers]) -> float:
    """How strongly what is fitted on our own names should hold for names made elsewhere: what foretells these best,
    where a fifth of their briefs in turn is left out."""
    briefs = sorted({one.brief for one in given})

    def error(prior: float) -> float:
        missed = []
        for turn in range(TRIES):
            out = set(briefs[turn::TRIES])
            fitted = fit_given([one for one in given if one.brief not in out], ours, prior)
            missed += [(one.rating - score(one, fitted)) ** 2 for one in given if one.brief in out]
        return float(np.mean(missed))

    return min(STRENGTHS, key=error)


def read_weight(form: str) -> float:
    """The weight of the part "read" of a form, and half of it, what it adds to a word that was not read."""
    return SPAN * READ if form in WHOLE else 0.0


def promise_weight(form: str) -> float:
    """The same of the part "promise"."""
    return SPAN * PROMISED if form in WHOLE else 0.0


def kind(form: str, fitted: Fitted) -> tuple[float, float]:
    """The weight of the part "kind", and the part."""
    by_word = read_weight(form) + promise_weight(form)
    weight = float(1 - SPAN * fitted.weights[family(form)].sum() - by_word)
    part = (FOOT + SPAN * fitted.levels[form] - by_word / 2) / weight
    return weight, max(0.0, min(1.0, part))


def _told(one: Rated, weights: Mapping[str, Numbers]) -> float:
    """The score of a name but for the part "kind"."""
    return float(weights[family(one.form)] @ one.row)


def score(one: Rated, fitted: Fitted) -> float:
    """The score of a name."""
    level = fitted.among.get((one.among, one.form), fitted.levels.get(one.form, 0.0))
    return _told(one, fitted.weights) + level + fitted.words.get(one.word, 0.0) + fitted.promised(one)


def rank_correlation(one: Numbers, other: Numbers) -> float:
    """Spearman's rho, ties sharing their rank."""

    def ranks(values: Numbers) -> Numbers:
        order = np.unique(values, return_inverse=True, return_counts=True)
        ends = np.cumsum(order[2])
        return np.asarray((ends - (order[2] - 1) / 2)[order[1]], dtype=float)

    return float(np.corrcoef(ranks(one), ranks(other))[0, 1])


def cross_validate(names: list[Rated]) -> str:
    """Rank correlations over all names and within forms, and how the best page of those read was rated, each brief
    predicted by a fit without it and others."""
    predicted = np.zeros(len(names))
    pages = []
    briefs = sorted({one.brief for one in names})
    for turn in range(FOLDS):
        left_out = briefs[turn::FOLDS]
        fitted = fit_ours([one for one in names if one.brief not in left_out])
        for brief in left_out:
            here = [place for place, one in enumerate(names) if one.brief == brief]
            predicted[here] = [score(names[place], fitted) for place in here]
            pages += sorted(here, key=lambda place: -predicted[place])[:PAGE]
    page = np.array([7 * names[place].rating for place in pages])
    return (
        f"{_correlations(names, predicted)}; the best {PAGE} of each brief's {len(names) // (len(pages) // PAGE)}: "
        f"mean {page.mean():.2f}, {(page >= 5).mean():.2f} rated 5 or more, {(page <= 2).mean():.2f} rated 2 or less"
    )


def cross_validate_given(names: Sequence[Rated], given: list[Rated]) -> str:
    """Rank correlations of names made elsewhere, file by file, each brief foretold by a fit without it and others; how
    strongly our own names count is fitted within each."""
    predicted = np.zeros(len(given))
    briefs = sorted({one.brief for one in given})
    for turn in range(FOLDS):
        left_out = set(briefs[turn::FOLDS])
        ours = fit_ours([one for one in names if one.brief not in left_out]).weights
        rest = [one for one in given if one.brief not in left_out]
        fitted = fit_given(rest, ours, strength(rest, ours))
        here = [place for place, one in enumerate(given) if one.brief in left_out]
        predicted[here] = [score(given[place], fitted) for place in here]
    found = []
    for among in dict.fromkeys(one.among for one in given):
        here = [place for place, one in enumerate(given) if one.among == among]
        found.append(f"{among}: {_correlations([given[place] for place in here], predicted[here])}")
    return "; ".join(found)


def _correlations(names: Sequence[Rated], predicted: Numbers) -> str:
    ratings = np.array([one.rating for one in names])
    groups = {"all": np.ones(len(names), bool)}
    bare = [one.form.removeprefix(GIVEN).split()[0] for one in names]
    groups |= {form: np.array([one == form for one in bare]) for form in WITHIN}
    return "; ".join(
        f"{group} ({inside.sum()} names) {rank_correlation(predicted[inside], ratings[inside]):.2f}"
        for group, inside in groups.items()
        if inside.any()
    )


def main() -> None:
    """Fit, cross-validate, and write the table."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--given", type=Path)
    parser.add_argument("--briefs", type=Path)
    parser.add_argument("--to", type=Path, default=FOLDER)
    options = parser.parse_args()
    files = ("read_names.csv", "read_made.csv", "read_more.csv")
    names = [one for file in files for one in read(CURATED / file, BRIEFS)]
    given = read(CURATED / "read_given.csv", BRIEFS, given=True)
    if options.given:
        given += read(options.given, options.briefs, given=True)
    quality = cross_validate(names)
    print(f"rank correlation with the mean rating, a fifth of the briefs left out in turn: {quality}")
    elsewhere = cross_validate_given(names, given)
    print(f"names made elsewhere: {elsewhere}")
    ours = fit_ours(names)
    prior = strength(given, ours.weights)
    theirs = fit_given(given, ours.weights, prior)
    fitted = Fitted(ours.weights | theirs.weights, ours.levels | theirs.levels, ours.words)
    entries = [("all foot", str(FOOT)), ("all span", str(SPAN))]
    for form in fitted.levels:
        mine = dict(zip(FREE, SPAN * fitted.weights[family(form)], strict=True))
        weight, level = kind(form, fitted)
        entries.append((f"{form} level", f"{level:.4f}"))
        entries += [(f"{form} {part}", f"{value:.4f}") for part, value in mine.items() if value >= 0.00005]
        entries.append((f"{form} kind", f"{weight:.4f}"))
        by_word = {"read": read_weight(form), "promise": promise_weight(form)}
        entries += [(f"{form} {part}", f"{value:.4f}") for part, value in by_word.items() if value]
        print(form, " ".join(f"{part} {value:.2f}" for part, value in mine.items() if value > 0.005), weight, level)
    entries += [
        (f"word {word}", f"{0.5 + value / READ:.3f}")
        for word, value in sorted(fitted.words.items()) if abs(value) >= LEAST_READ
    ]  # fmt: skip
    source = (
        f"fitted on {len(names)} names of ours for {len({one.brief for one in names})} briefs in "
        "curated/read_names.csv, read_made.csv and read_more.csv, read by two runs of a language model who knew but "
        f"the briefs; rank correlation with the mean rating, a fifth of the briefs left out in turn: {quality}"
    )
    build = "python wordlists/build/name_ranker.py --given judged_names.csv --briefs briefs.json"
    file = BytesIO()
    np.save(file, np.asarray(ours.promise, np.float32))
    write_table(
        options.to, "naming_promise.npy", file.getvalue(), source=f"with name_ranker.tsv, {source}", version="1",
        licence="MIT, as namescreen; of the vectors, that of embedding.npy", build=build,
    )  # fmt: skip
    write_table(
        options.to, "name_ranker.tsv", table_bytes("name_ranker", entries),
        source=f"{source}. The weights of names made elsewhere: on {len(given)} for "
        f"{len({one.brief for one in given})} briefs, among them "
        "curated/read_given.csv, with the weights of ours as a prior as strong as "
        f"{prior:.0f} names; each brief left out: {elsewhere}",
        version="5", licence="MIT, as namescreen", build=build,
    )  # fmt: skip


if __name__ == "__main__":
    main()
