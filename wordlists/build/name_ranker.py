"""Fit the weights of the ranking of names on names of ours that readers rated, and say how well it does on unseen
briefs.

    python wordlists/build/name_ranker.py [--outside judged_names.csv --briefs briefs.json]

The names are those of wordlists/curated/read_names.csv: for 96 briefs of our own (read_briefs.json) the first page,
names drawn from further down, and names that other rankings would put first, each rated from 1 to 7 by two readers
who knew nothing but the brief; and pairs and changed names made for 48, 36 of them the same (read_made.csv). What is
shipped is a weight for each part of namescreen/generation/ranking.py, how each form of name fared, and how each word
fared that was read, beside what the rest foretells. The model is a weighted mean of the parts, fitted by least
squares under a Gaussian prior with no weight below zero, so that each part counts the way its meaning says; words
taken as they are, sayings, pairs, changed names and the rest are fitted apart, as other parts decide of them. Quality
is told where a tenth of the briefs in turn is left out of the fit. Words that have nothing to do with a brief, which
were mixed in so that the readers' scale keeps its end, take no part.

`--outside` are names for other briefs (columns brief, name, source, kind, words, maker, consultant), most of them made
by persons or other programs; they take no part in the fit, and the weights are held against them.
"""

from __future__ import annotations

import argparse
import csv
import json
import re
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from naming_words import CURATED
from numpy.typing import NDArray
from sources import write_table

from namescreen.brief import Brief, Concept
from namescreen.generation.brief_terms import BriefTerms, informativeness
from namescreen.generation.candidate import Proposal, form_of
from namescreen.generation.constructions import CONSTRUCTIONS
from namescreen.generation.constructions.changed import behind, heard, unmixed
from namescreen.generation.constructions.pair import places, seam
from namescreen.generation.ideas import Idea, ideas_of
from namescreen.generation.ranking import PARTS, WHOLE, Judge
from namescreen.generation.vocabulary import word
from namescreen.generation.word_sounds import sounds_of
from namescreen.lexicon import zipf
from namescreen.tables import open_table, table_bytes
from namescreen.text import fold, split_closed_compound

FOLDER, BRIEFS = CURATED.parent, CURATED / "read_briefs.json"
KINDS = {
    "affixed": "affix", "coined": "blend", "compound": "pair", "word pair": "pair", "alliteration": "phrase",
    "echo": "phrase", "adjective + noun": "phrase", "verb + noun": "phrase", "noun of noun": "phrase",
}  # fmt: skip
"""The construction that makes names of a kind, where it has another name; a kind without one keeps its own."""
FAMILY = {"found": "as it is", "figure": "as it is"}
"""Forms of name that share their weights with others; one that is not in `EXPECTED` either is one of the others."""
OTHERS = "others"
EXPECTED = {
    "as it is": {"sense": 0.12, "true": 0.05, "listed": 0.12, "matched": 0.05, "whole": 0.1, "suited": 0.05,
                 "special": 0.06, "delight": 0.12, "pleasing": 0.15},
    "foreign": {"sense": 0.1, "ware": 0.08, "listed": 0.1, "matched": 0.06, "delight": 0.2},
    "saying": {"sense": 0.08, "true": 0.12, "direct": 0.05, "matched": 0.08, "whole": 0.05, "delight": 0.15,
               "pleasing": 0.2},
    "pair": {"plain": 0.12, "charm": 0.12, "join": 0.2, "sense": 0.08, "true": 0.05, "delight": 0.1},
    "pair joined": {"plain": 0.08, "charm": 0.05, "echo": 0.12, "sense": 0.08, "true": 0.05, "delight": 0.2,
                    "many": 0.05, "familiar": 0.08, "pleasant": 0.05, "sayable": 0.05},
    "changed": {"direct": 0.15, "fresh": 0.16, "kept": 0.17, "unmixed": 0.1, "saying": 0.07, "punned": 0.1,
                "pleasant": 0.05},
    "others": {"sense": 0.217, "true": 0.064, "join": 0.101, "fresh": 0.08, "known": 0.03},
}  # fmt: skip
"""The parts that decide of each family, with the weights that are expected before any name is seen: those of words and
sayings are near what the names here say by themselves, the others those of earlier fits on names of several sources."""
SWEEPS = 4
PRIOR = 60.0
"""Strength of the prior, as so many names that agree with it."""
FOOT, SPAN = 0.21, 0.5
"""The weighted mean of the parts for a rating of nothing, and how much it grows to full marks: so that all forms of
name, of which some differ more by their parts than others, have weights that add up to 1, none below zero."""
READ = 0.2
"""From one end of the part "read" to the other, as a share of full marks."""
MOST = 0.95
FAITH = 8
"""So many readings of a word count as much as what the parts foretell of it."""
LEAST_READ = 0.005
UNRELATED, MADE = "random word", "read_made"
"""What is left out; and a file of names of a few forms, among which readers rated them higher than among all forms."""
PAGE, FOLDS = 20, 10
WITHIN = ("found", "saying", "pair", "changed")

Numbers = NDArray[np.float64]


@dataclass(frozen=True)
class Rated:
    """A name with the parts that the ranking sees, its mean rating as a share of 7, its word if it is taken as it is,
    and the file of the names that it was read among."""

    brief: str
    form: str
    parts: dict[str, float]
    rating: float
    word: str
    among: str = ""

    @property
    def family(self) -> str:
        """The family whose weights it shares."""
        return family(self.form)


def read(data: Path, briefs: Path) -> list[Rated]:
    """Every rated name."""
    judges = {name: _judge(brief) for name, brief in json.loads(briefs.read_text("utf-8")).items()}
    found = []
    with data.open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(line for line in file if not line.startswith("#")))
    for row in rows:
        if row.get("drawn") == UNRELATED or row["kind"] == "open pair":  # no construction leaves pairs open
            continue
        judge, brief_terms, ideas_known = judges[row["brief"]]
        kind, words = KINDS.get(row["kind"], row["kind"]), row["words"]
        if not kind or not words:
            kind, words = _inferred(row["name"])
        known = {idea.word.casefold(): idea for idea in ideas_known if (idea.kind == "foreign") == (kind == "foreign")}
        proposal, ideas = _proposal(row["name"], kind, words, brief_terms, known)
        rating = (float(row["maker"]) + float(row["consultant"])) / 14
        parts = judge.knowing(ideas).parts(proposal)
        word = proposal.sources[0].casefold() if proposal.construction in WHOLE else ""
        found.append(Rated(row["brief"], form_of(proposal), parts, rating, word, data.stem))
    return found


def _inferred(name: str) -> tuple[str, str]:
    """The kind and the words of a name of which only its text is known: a word of our lists as it is, two words or a
    closed compound a pair, any other word coined."""
    words = fold(name).replace("&", "and").replace("-", " ").split()
    whole = " ".join(words)
    for kind, construction in (("find", "found"), ("foreign", "foreign"), ("lore", "figure")):
        if open_table("naming_ideas.tsv").get(f"{kind} {whole}"):
            return construction, whole
    parts = [word for word in words if word != "and"] if len(words) > 1 else split_closed_compound(whole, zipf)
    return ("pair", ";".join(parts)) if parts else ("blend", whole)


def _judge(brief: dict[str, object]) -> tuple[Judge, BriefTerms, list[Idea]]:
    goods, concepts = str(brief["goods"]), brief["concepts"]
    assert isinstance(concepts, list)
    whole = Brief(goods=goods, concepts=tuple(map(Concept, concepts)))
    brief_terms = BriefTerms.of(whole)
    return Judge({}, brief_terms, (), goods), brief_terms, list(reversed(ideas_of(whole, brief_terms)))


def _proposal(
    name: str, kind: str, words: str, brief_terms: BriefTerms, known: dict[str, Idea]
) -> tuple[Proposal, list[Idea]]:
    """The proposal that a construction would have made, and the ideas it was made of."""
    pieces = [_piece(piece) for piece in words.split(";")]
    original = pieces.pop(0)[0] if kind == "changed" and len(pieces) > 1 else words if kind == "saying" else ""
    affix = next((form for form, _ in pieces if form.startswith("-") or form.endswith("-")), "")
    pieces = [(form, meaning) for form, meaning in pieces if form != affix] or pieces
    if kind == "figure" and len(pieces) > 1:
        pieces = pieces[1:]
    ideas = [
        known[fold(form)] if fold(form) in known else _idea(form, meaning, brief_terms)
        for form, meaning in pieces
    ]
    sources = tuple(idea.word for idea in ideas)
    spelled = tuple(word for word in fold(name).replace("&", "and").replace("-", " ").split() if word.isalpha())
    sounds = tuple(sound for word in spelled for sound in sounds_of(word))
    join = 1.0
    if len(spelled) == 1 and kind == "pair" and len(sources) == 2:
        join = seam(*sources) * places(*map(word, sources))
    elif affix:
        join = seam(affix.strip("-"), sources[0]) if affix.endswith("-") else seam(sources[0], affix.strip("-"))
    clear = _seen(spelled, sources) if kind in ("blend", "clipping", "combining forms") else 1.0
    return Proposal(
        name,
        spelled,
        kind,
        "",
        sources,
        "",
        sounds,
        join,
        clear,
        original,
        1.0 if kind == "saying" else heard(sounds, original) if original else 0.0,
        behind(brief_terms, original) if original else 0.0,
        unmixed(brief_terms, _left_of(original, spelled)) if kind == "changed" and len(spelled) > 1 else 1.0,
    ), ideas


def _left_of(original: str, words: Sequence[str]) -> str:
    """The words of an original that a name still has."""
    return " ".join(word for word in fold(original).replace("-", " ").split() if word.replace("'", "") in words)


def _piece(text: str) -> tuple[str, str]:
    """A word and its meaning, from "haar (cold mist)" or "Italian un uovo (one egg)"."""
    form, _, meaning = text.strip().partition("(")
    form = form.strip()
    if meaning and re.match(r"(Old |Middle )?[A-Z][a-z]+ ", form) and form.split()[-1].islower():
        form = form.split()[-1]
    return form, meaning.rstrip(") ")


def _idea(form: str, meaning: str, brief_terms: BriefTerms) -> Idea:
    keys = [(word, informativeness(word) ** 0.5) for word in re.findall("[a-z]+", fold(meaning))]
    associations = brief_terms.of_word(fold(form))
    if keys:
        associations = np.maximum(brief_terms.of_meaning(keys), associations)
    return Idea(fold(form), "world", meaning, associations, "", brief_terms.relevance(associations))


def _seen(words: Sequence[str], sources: Sequence[str]) -> float:
    """The share of the letters of the sources that the name keeps at its beginning and end."""
    letters = "".join(words)
    kept = 0
    for source in sources:
        kept += max(
            (n for n in range(1, len(source) + 1) if source[:n] in letters or source[-n:] in letters), default=0
        )
    return min(1.0, kept / max(1, sum(map(len, sources))))


def family(form: str) -> str:
    """The family of a form of name."""
    known = FAMILY.get(form, form)
    return known if known in EXPECTED else OTHERS


FREE = [part for part in PARTS if part not in ("kind", "read")]


def fit(names: Sequence[Rated], group: str) -> Numbers:
    """The weights of a family for a rating as a share, none below zero, by coordinate descent on the squared error
    under the prior, with a free level for each form and each brief."""
    names = [one for one in names if one.family == group]
    rows = np.array([[one.parts[part] for part in FREE] for one in names]).reshape(len(names), len(FREE))
    wanted = np.array([one.rating for one in names])
    sides = [[one.form for one in names], [one.among + one.brief for one in names]]
    for side in sides * SWEEPS:
        for value in set(side):
            here = np.array([one == value for one in side])
            rows[here] -= rows[here].mean(0)
            wanted[here] -= wanted[here].mean()
    expected = np.array([EXPECTED[group].get(part, 0.0) for part in FREE])
    weights = expected.copy()
    scale, prior = (rows**2).sum(0), PRIOR * np.maximum(rows.var(0), 5e-3)
    for _ in range(300):
        for place in np.flatnonzero(expected):
            rest = wanted - rows @ weights + rows[:, place] * weights[place]
            pull = float(rows[:, place] @ rest) + prior[place] * expected[place]
            weights[place] = max(0.0, pull / (scale[place] + prior[place]))
    most = MOST / SPAN - READ
    return np.asarray(weights / max(1.0, weights.sum() / most))


@dataclass(frozen=True)
class Fitted:
    """The weights of every family, what must be added for each form so that its scores are about the ratings on
    average, and what the rating of each word that was read is beside what the rest foretells."""

    weights: dict[str, Numbers]
    levels: dict[str, float]
    words: dict[str, float]


def fit_all(names: Sequence[Rated]) -> Fitted:
    """The model fitted on rated names."""
    weights = {group: fit(names, group) for group in EXPECTED}
    levels = {}
    for form in sorted({one.form for one in names} | set(CONSTRUCTIONS)):
        here = [one for one in names if one.form == form and one.among != MADE]
        missing = [one.rating - _told(one, weights) for one in here]
        levels[form] = float(np.mean(missing or [0.0]))
    plain = Fitted(weights, levels, {})
    missed: dict[str, list[float]] = {}
    for brief in {one.brief for one in names}:
        here = [one for one in names if one.brief == brief and one.word]
        rest = [one.rating - score(one, plain) for one in here]
        for one, value in zip(here, rest, strict=True):
            missed.setdefault(one.word, []).append(value - float(np.mean(rest)))
    words = {word: sum(values) / (len(values) + FAITH) for word, values in missed.items()}
    return Fitted(weights, levels, {word: max(-READ / 2, min(READ / 2, value)) for word, value in words.items()})


def read_weight(form: str) -> float:
    """The weight of the part "read" of a form, and half of it, what it adds to a word that was not read."""
    return SPAN * READ if form in WHOLE else 0.0


def kind(form: str, fitted: Fitted) -> tuple[float, float]:
    """The weight of the part "kind", and the part."""
    weight = float(1 - SPAN * fitted.weights[family(form)].sum() - read_weight(form))
    part = (FOOT + SPAN * fitted.levels[form] - read_weight(form) / 2) / weight
    return weight, max(0.0, min(1.0, part))


def _told(one: Rated, weights: dict[str, Numbers]) -> float:
    """The score of a name but for the part "kind"."""
    return float(weights[one.family] @ [one.parts[part] for part in FREE])


def score(one: Rated, fitted: Fitted) -> float:
    """The score of a name."""
    return _told(one, fitted.weights) + fitted.levels.get(one.form, 0.0) + fitted.words.get(one.word, 0.0)


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
        fitted = fit_all([one for one in names if one.brief not in left_out])
        for brief in left_out:
            here = [place for place, one in enumerate(names) if one.brief == brief]
            predicted[here] = [score(names[place], fitted) for place in here]
            pages += sorted(here, key=lambda place: -predicted[place])[:PAGE]
    page = np.array([7 * names[place].rating for place in pages])
    return (
        f"{_correlations(names, predicted)}; the best {PAGE} of each brief's {len(names) // (len(pages) // PAGE)}: "
        f"mean {page.mean():.2f}, {(page >= 5).mean():.2f} rated 5 or more, {(page <= 2).mean():.2f} rated 2 or less"
    )


def _outside(names: list[Rated], weights: dict[str, Numbers]) -> str:
    """Rank correlations of names of other sources; what each form adds is that of the other briefs there, as persons
    make other forms well than programs do."""
    predicted = []
    for one in names:
        rest = [x.rating - _told(x, weights) for x in names if x.form == one.form and x.brief != one.brief]
        predicted.append(_told(one, weights) + float(np.mean(rest or [0.3])))
    return _correlations(names, np.array(predicted))


def _correlations(names: Sequence[Rated], predicted: Numbers) -> str:
    ratings = np.array([one.rating for one in names])
    groups = {"all": np.ones(len(names), bool)}
    groups |= {form: np.array([one.form.split()[0] == form for one in names]) for form in WITHIN}
    return "; ".join(
        f"{group} ({inside.sum()} names) {rank_correlation(predicted[inside], ratings[inside]):.2f}"
        for group, inside in groups.items()
        if inside.any()
    )


def main() -> None:
    """Fit, cross-validate, and write the table."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--outside", type=Path)
    parser.add_argument("--briefs", type=Path)
    parser.add_argument("--to", type=Path, default=FOLDER)
    options = parser.parse_args()
    names = [one for file in ("read_names.csv", "read_made.csv") for one in read(CURATED / file, BRIEFS)]
    quality = cross_validate(names)
    print(f"rank correlation with the mean rating, a tenth of the briefs left out in turn: {quality}")
    fitted = fit_all(names)
    weights, levels = fitted.weights, fitted.levels
    if options.outside:
        print("outside:", _outside(read(options.outside, options.briefs), weights))
    entries = [("all foot", str(FOOT)), ("all span", str(SPAN))]
    for form in levels:
        mine = dict(zip(FREE, SPAN * weights[family(form)], strict=True))
        weight, level = kind(form, fitted)
        entries.append((f"{form} level", f"{level:.4f}"))
        entries += [(f"{form} {part}", f"{value:.4f}") for part, value in mine.items() if value >= 0.00005]
        entries.append((f"{form} kind", f"{weight:.4f}"))
        if read_weight(form):
            entries.append((f"{form} read", f"{read_weight(form):.4f}"))
        print(form, " ".join(f"{part} {value:.2f}" for part, value in mine.items() if value > 0.005), weight, level)
    entries += [
        (f"word {word}", f"{0.5 + value / READ:.3f}")
        for word, value in sorted(fitted.words.items()) if abs(value) >= LEAST_READ
    ]  # fmt: skip
    write_table(
        options.to, "name_ranker.tsv", table_bytes("name_ranker", entries),
        source=f"fitted on {len(names)} names of ours for {len({one.brief for one in names})} briefs in "
        "curated/read_names.csv and curated/read_made.csv, read by two runs of a language model who knew nothing but "
        f"the briefs; rank correlation with the mean rating where a tenth of the briefs in turn is left out: {quality}",
        version="3", licence="MIT, as namescreen", build="python wordlists/build/name_ranker.py",
    )  # fmt: skip


if __name__ == "__main__":
    main()
