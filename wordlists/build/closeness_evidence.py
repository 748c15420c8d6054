"""What closeness is fitted on and measured against: published decisions, ratings, and names really confused.

The files are facts gathered from published sources (see SOURCES.md, closeness_model.tsv); they are not part of the
project. Every set is read here, grouped so that no case stands on both sides of a split, and measured here. The pairs
of tests/published/decided_pairs.csv are left out of every set, so that the tests of them are tests of unseen cases.
"""

from __future__ import annotations

import csv
import random
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from namescreen.tables import wordlists_folder

Numbers = NDArray[np.float64]
Row = dict[str, str]

GRADES = ("dissimilar", "low", "below_average", "average", "above_average", "high", "identical")
ASPECTS = {"appearance": "visual", "sound": "phonetic", "meaning": "conceptual"}
"""Each aspect, and the column of the grades for it."""
BORDERLINE = 0.4
"""What a borderline decision counts beside a clear one."""
PUBLISHED = Path(__file__).parents[2] / "tests" / "published" / "decided_pairs.csv"
"""The pairs that tests are made with."""


def rows(path: Path) -> list[Row]:
    """The rows of a CSV file; of pairs, those that share no name with a published pair."""
    published = {name for row in _read(PUBLISHED) for name in _names(row)}
    return [row for row in _read(path) if published.isdisjoint(_names(row))]


def _read(path: Path) -> list[Row]:
    with path.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(line for line in file if not line.startswith("#")))


def _names(row: Row) -> set[str]:
    return {row[key].casefold() for key in ("mark_a", "mark_b") if key in row}


def drawn_pairs() -> list[Row]:
    """Further pairs, drawn by rule (`closeness_pairs`) or invented in the style of disputes, the last of which share a
    word, rated for the project by two readers (runs of a language model) from names and goods alone."""
    folder = wordlists_folder() / "curated"
    files = ("rated_pairs", "invented_pairs", "word_sharing_pairs")
    return [row for name in files for row in rows(folder / f"{name}.csv")]


def real_pairs() -> list[Row]:
    """Pairs of names of real shops and brands, drawn by rule and rated as the drawn ones: in no part of the fit."""
    return rows(wordlists_folder() / "curated" / "real_pairs.csv")


def confused_names() -> list[tuple[str, str]]:
    """Names of medicines, most of them brands, that were really confused: from the ISMP's published list of confused
    drug names, from memory, so about one in ten may be wrong. None is on the FDA's list, which holds generic names."""
    return [(row["one"], row["other"]) for row in _read(wordlists_folder() / "curated" / "confused_names.csv")]


def rating(row: Row, aspect: str) -> float:
    """The mean rating of two readers, in [0, 1]; what neither could rate is 0."""
    return sum(float(row[key]) if row[key] not in ("", "NA") else 0.0 for key in (f"{aspect}_1", f"{aspect}_2")) / 200


def judged_as_a_whole(row: Row) -> bool:
    """A decision on the whole impression; not those of Japan, where marks are judged as read in Japanese."""
    return (row["jurisdiction"] == "US" or row["aspect"] == "overall") and not row["tribunal"].startswith("JPO")


def groups(names: Sequence[Iterable[str]]) -> list[int]:
    """A number for each row so that rows which share a name, directly or through others, have the same."""
    leader: dict[str, str] = {}

    def find(name: str) -> str:
        while leader.setdefault(name, name) != name:
            name = leader[name]
        return name

    for each in names:
        first, *others = (name.casefold() for name in each)
        for other in others:
            leader[find(other)] = find(first)
    numbers: dict[str, int] = {}
    return [numbers.setdefault(find(next(iter(each)).casefold()), len(numbers)) for each in names]


def folds(group: Sequence[int], count: int, seed: int) -> NDArray[np.int64]:
    """The fold of each row, those of one group together."""
    order = sorted(set(group))
    random.Random(seed).shuffle(order)
    fold_of = {one: place % count for place, one in enumerate(order)}
    return np.array([fold_of[one] for one in group])


def ranks(values: Sequence[float] | Numbers) -> Numbers:
    """Ranks from 0, equal values sharing the mean of theirs."""
    array = np.asarray(values, np.float64)
    _, back, counts = np.unique(array, return_inverse=True, return_counts=True)
    ends = np.cumsum(counts)
    return np.asarray((ends - (counts + 1) / 2)[back])


def spearman(one: Sequence[float] | Numbers, other: Sequence[float] | Numbers) -> float:
    """Rank correlation."""
    return pearson(ranks(one), ranks(other))


def pearson(one: Sequence[float] | Numbers, other: Sequence[float] | Numbers) -> float:
    """Correlation."""
    return float(np.corrcoef(one, other)[0, 1])


def auc(values: Numbers, positive: NDArray[np.bool_]) -> float:
    """The chance that a positive scores above a negative, ties counting half."""
    above, below = values[positive], values[~positive]
    return float(((above[:, None] > below) + 0.5 * (above[:, None] == below)).mean())


def found_at(values: Numbers, related: NDArray[np.bool_], places: int) -> float:
    """The share of the related among the first places, equal values sharing the last of them."""
    last = np.partition(values, -places)[-places]
    above, at = values > last, values == last
    inside = related[above].sum() + related[at].sum() * (places - above.sum()) / at.sum()
    return float(inside / related.sum())


@dataclass(frozen=True)
class Ranking:
    """One string, the others it is ranked among, and which of them are related to it."""

    kind: str
    one: str
    others: tuple[str, ...]
    related: NDArray[np.bool_]


def rankings(
    kind: str, pairs: Iterable[tuple[str, str]], more: Iterable[str] = (), both_ways: bool = True
) -> list[Ranking]:
    """The rankings of every first (and second) of the pairs among all strings there are."""
    related: dict[str, set[str]] = {}
    for one, other in pairs:
        related.setdefault(one, set()).add(other)
        if both_ways:
            related.setdefault(other, set()).add(one)
    everything = sorted({*related, *(other for others in related.values() for other in others), *more})
    return [
        Ranking(
            kind,
            one,
            others := tuple(other for other in everything if other != one),
            np.array([other in related[one] for other in others]),
        )
        for one in sorted(related)
    ]


def sample(all_of: list[Ranking], count: int, seed: int = 1) -> list[Ranking]:
    """Some of the rankings."""
    return random.Random(seed).sample(all_of, min(count, len(all_of)))


def measured(kinds: dict[str, Callable[[], float]]) -> dict[str, str]:
    """Figures as text."""
    return {name: f"{work():.3f}" for name, work in kinds.items()}
