"""Fit the weights of the ranking of names on names of ours that readers rated, and say how well it does on unseen
briefs.

    python wordlists/build/name_ranker.py [--outside judged_names.csv --briefs briefs.json]

The names are those of wordlists/curated/read_names.csv: for 44 briefs of our own (read_briefs.json) the first page, and
names drawn from further down, each rated from 1 to 7 by two readers who knew nothing but the brief; and pairs and
changed names made for 48 more briefs (read_made.csv). What is shipped is
a weight for each part of namescreen/generation/ranking.py and how each form of name fared. The model is a weighted mean
of the parts, fitted by least squares under a Gaussian prior with no weight below zero, so that each part counts the way
its meaning says; words taken as they are, sayings, pairs, changed names and the rest are fitted apart, as other parts
decide of them. Quality is told where each brief in turn is left out of the fit.

`--outside` are names for other briefs (columns brief, name, source, kind, words, maker, consultant), most of them made
by persons or other programs; they take no part in the fit, and the weights are held against them.
"""

from __future__ import annotations

import argparse
import csv
import json
import re
from collections.abc import Mapping, Sequence
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
from namescreen.generation.ranking import PARTS, Judge
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
    "as it is": {"sense": 0.14, "true": 0.1, "ware": 0.03, "listed": 0.18, "matched": 0.15, "delight": 0.25},
    "foreign": {"sense": 0.1, "ware": 0.08, "listed": 0.1, "matched": 0.06, "delight": 0.2},
    "saying": {"sense": 0.14, "true": 0.09, "ware": 0.05, "direct": 0.09, "matched": 0.06, "delight": 0.26},
    "pair": {"plain": 0.12, "charm": 0.12, "join": 0.2, "sense": 0.08, "true": 0.05, "delight": 0.1},
    "pair joined": {"plain": 0.08, "charm": 0.05, "echo": 0.12, "sense": 0.08, "true": 0.05, "delight": 0.2},
    "changed": {"direct": 0.15, "fresh": 0.16, "kept": 0.17, "unmixed": 0.1, "saying": 0.07},
    "others": {"sense": 0.217, "true": 0.064, "join": 0.101, "fresh": 0.08, "known": 0.03},
}  # fmt: skip
"""The parts that decide of each family, with the weights that are expected before any name is seen: those of words and
sayings are near what the names here say by themselves, the others those of earlier fits on names of several sources."""
PRIOR = 60.0
"""Strength of the prior, as so many names that agree with it."""
MOST = {"as it is": 0.88, "pair": 0.8, "pair joined": 0.8, "changed": 0.8}
"""Of all parts but the kind together, where they would promise more than such names kept, or leave too little for it;
0.95 for the others."""
PAGE = 20
WITHIN = ("found", "saying", "pair", "changed")

Numbers = NDArray[np.float64]


@dataclass(frozen=True)
class Rated:
    """A name with the parts that the ranking sees and its mean rating as a share of 7."""

    brief: str
    form: str
    parts: dict[str, float]
    rating: float

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
    for row in (row for row in rows if row["kind"] != "open pair"):  # no construction leaves pairs open
        judge, brief_terms, known = judges[row["brief"]]
        kind, words = KINDS.get(row["kind"], row["kind"]), row["words"]
        if not kind or not words:
            kind, words = _inferred(row["name"])
        proposal, ideas = _proposal(row["name"], kind, words, brief_terms, known)
        rating = (float(row["maker"]) + float(row["consultant"])) / 14
        found.append(Rated(row["brief"], form_of(proposal), judge.knowing(ideas).parts(proposal), rating))
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


def _judge(brief: dict[str, object]) -> tuple[Judge, BriefTerms, dict[str, Idea]]:
    goods, concepts = str(brief["goods"]), brief["concepts"]
    assert isinstance(concepts, list)
    whole = Brief(goods=goods, concepts=tuple(map(Concept, concepts)))
    brief_terms = BriefTerms.of(whole)
    known = {idea.word: idea for idea in reversed(ideas_of(whole, brief_terms))}
    return Judge({}, brief_terms, (), goods), brief_terms, known


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


FREE = [part for part in PARTS if part != "kind"]


def fit(names: Sequence[Rated], group: str) -> Numbers:
    """The weights of a family, none below zero and at most `MOST` together, by coordinate descent on the squared error
    under the prior, with a free level for each form."""
    names = [one for one in names if one.family == group]
    rows = np.array([[one.parts[part] for part in FREE] for one in names]).reshape(len(names), len(FREE))
    wanted = np.array([one.rating for one in names])
    for form in {one.form for one in names}:
        here = np.array([one.form == form for one in names])
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
    return np.asarray(weights / max(1.0, weights.sum() / MOST.get(group, 0.95)))


def fit_all(names: Sequence[Rated]) -> tuple[dict[str, Numbers], dict[str, float]]:
    """The weights of every family, and what the part "kind" must be for each form so that its scores are about the
    ratings on average."""
    weights = {group: fit(names, group) for group in EXPECTED}
    levels = {}
    for form in sorted({one.form for one in names} | set(CONSTRUCTIONS)):
        missing = [one.rating - _told(one, weights) for one in names if one.form == form]
        levels[form] = max(0.0, min(1.0, float(np.mean(missing or [0.0]) / (1 - weights[family(form)].sum()))))
    return weights, levels


def _told(one: Rated, weights: dict[str, Numbers]) -> float:
    """The score of a name but for the part "kind"."""
    return float(weights[one.family] @ [one.parts[part] for part in FREE])


def score(one: Rated, weights: dict[str, Numbers], levels: Mapping[str, float]) -> float:
    """The score of a name."""
    return _told(one, weights) + float(1 - weights[one.family].sum()) * levels.get(one.form, 0.0)


def rank_correlation(one: Numbers, other: Numbers) -> float:
    """Spearman's rho, ties sharing their rank."""

    def ranks(values: Numbers) -> Numbers:
        order = np.unique(values, return_inverse=True, return_counts=True)
        ends = np.cumsum(order[2])
        return np.asarray((ends - (order[2] - 1) / 2)[order[1]], dtype=float)

    return float(np.corrcoef(ranks(one), ranks(other))[0, 1])


def cross_validate(names: list[Rated]) -> str:
    """Rank correlations over all names and within forms, and how the best page of those read was rated, each brief
    predicted by a fit without it."""
    predicted = np.zeros(len(names))
    pages = []
    for brief in sorted({one.brief for one in names}):
        fitted = fit_all([one for one in names if one.brief != brief])
        here = [place for place, one in enumerate(names) if one.brief == brief]
        predicted[here] = [score(names[place], *fitted) for place in here]
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
    print(f"rank correlation with the mean rating, each brief left out in turn: {quality}")
    weights, levels = fit_all(names)
    if options.outside:
        print("outside:", _outside(read(options.outside, options.briefs), weights))
    entries = [(f"{form} level", f"{level:.4f}") for form, level in levels.items()]
    for form, level in levels.items():
        mine = dict(zip(FREE, weights[family(form)], strict=True))
        entries += [(f"{form} {part}", f"{weight:.4f}") for part, weight in mine.items() if weight >= 0.00005]
        entries.append((f"{form} kind", f"{1 - sum(mine.values()):.4f}"))
        print(form, " ".join(f"{part} {weight:.2f}" for part, weight in mine.items() if weight > 0.005), level)
    write_table(
        options.to, "name_ranker.tsv", table_bytes("name_ranker", entries),
        source=f"fitted on {len(names)} names of ours for {len({one.brief for one in names})} briefs in "
        "curated/read_names.csv and curated/read_made.csv, read by two runs of a language model who knew nothing but "
        f"the briefs; rank correlation with the mean rating where each brief in turn is left out: {quality}",
        version="2", licence="MIT, as namescreen", build="python wordlists/build/name_ranker.py",
    )  # fmt: skip


if __name__ == "__main__":
    main()
