"""The short lists of subjects: which words were chosen for what the terms of a brief name, and how they pleased a blind
reader there (wordlists/curated/naming_picks.txt)."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from functools import cache, lru_cache
from typing import TYPE_CHECKING, Any, NamedTuple

from ..lexicon import lexicon
from ..tables import open_table
from .brief_terms import BriefTerms
from .purpose import MODIFIES
from .vocabulary import places

if TYPE_CHECKING:
    import numpy as np

    from .brief_terms import Associations, Places

__all__ = [
    "NAMED_AS", "Met", "OnLists", "ShortLists", "english_lists", "lists_held", "met_by_lists", "on_short_lists",
    "pleased", "unlisted",
]  # fmt: skip

NAMED_AS = 0.9
"""A tie from which a term names the subject of a list, as itself or a synonym does."""
_CONFIRMED, _HALF_SURE = 0.25, 0.5
"""What the rest of a brief has to do with a subject that a term only touches, so that it counts in full; the share of
that from which it counts at all."""
_DULL, _BEST = 2, 7  # ratings of a word for a subject at which it counts nothing, and in full, as chosen for it
_MIDDLING = 0.4  # the share from which a word is liked: a rating of 4
_LISTED = 0.75  # how strongly a word is associated with what it stands on a short list for; the rest is its rating's
_CHOSEN = 0.5  # how strongly a term must bring a subject to mind for the words chosen for it to count
_BESIDE = 0.6  # how strongly a term must bring another part of a subject to mind
_ABOUT_THE_GOODS = 0.75  # what the terms that name all parts of a subject weigh together if the goods are of that kind
_DOUBT, _FEW, _MANY, _SUPPORTED = 0.6, 2, 10, 0.1
"""What a word of the goods with many senses loses where nothing else in the brief has to do with a subject that it
names (gather, of a hoof pick), the senses up to which it loses nothing and from which all, and what the rest of the
brief must have to do with the subject to support it. Of 271 names read that words of the goods brought unsupported,
those by words of up to two senses were rated 0.1 above what their lists let expect, by words of ten and more 1.0 below;
of concepts, which a maker chose, it makes no difference."""
_LIVING = frozenset(("noun.animal", "noun.plant"))
_CHANCE, _UNSURE = 0.2, 0.15
"""Of how much a subject has to do with the rest of a brief: what is chance, and what leaves it open which is meant."""


ShortLists = tuple[tuple[tuple[str, ...], Iterable[tuple[str, float]]], ...]
"""Subjects, each with the words of its short list, and how each pleased for it, as a share."""


class _Words(Iterable[tuple[str, float]]):
    """The words of one list of the table, read when they are asked for: a brief meets few of thousands."""

    def __init__(self, told: str) -> None:
        self._told = told

    @property
    def alone(self) -> list[str]:
        """The words without their ratings."""
        return [entry.rpartition(" ")[0] for entry in self._told.split(", ")]

    def __iter__(self) -> Iterator[tuple[str, float]]:
        return map(_rated, self._told.split(", "))


@cache
def english_lists() -> tuple[tuple[tuple[str, ...], _Words], ...]:
    """The short lists of English words."""
    rows = (value.split("|") for _, value in open_table("naming_picks.tsv").items())
    return tuple([(tuple(about.split()), _Words(words)) for about, words in rows])


def _rated(entry: str) -> tuple[str, float]:
    word, _, rating = entry.rpartition(" ")
    return word, pleased(rating)


@cache
def lists_held() -> Mapping[str, int]:
    """How many short lists of English words each word stands on."""
    return Counter([word for _, words in english_lists() for word in words.alone])


@cache
def pleased(rating: str) -> float:
    """A rating as a share: 0 = dull, 1 = the best."""
    return (float(rating) - _DULL) / (_BEST - _DULL)



class Met(NamedTuple):
    """How strongly each term of a brief is associated with each name of the subjects of lists, one list after the
    other (a row for each term), where the names of each list start, and which names of several words are met whole."""

    strengths: Associations
    starts: Places
    whole: frozenset[int]


class OnLists(NamedTuple):
    """A word of short lists: its association with each term, that times how it pleased, and times how far it pleased
    more than middlingly (a rating of 4)."""

    ties: Associations
    chosen: Associations
    liked: Associations


class _Names(NamedTuple):
    """The names of the subjects of lists: of those of one word, where they stand and the place of the word; of the
    others, where each stands, whether each word names the subject, and the places of the words of each part."""

    starts: Places
    plain: Places
    places: Places
    parts: tuple[tuple[int, bool, tuple[tuple[int, ...], ...]], ...]
    total: int


def met_by_lists(brief_terms: BriefTerms, lists: ShortLists) -> Met:
    """How strongly each term is associated with each name of the subject of each short list.

    Of "bird+feeder", feeder names it, and only where another term of the brief is about birds; of "~dry+boot/glove"
    each of its words does, and what the goods of a brief have all parts of is about them as a whole, so that the term
    that names them does too. A concept of several words (boot drying) has parts as the goods do.
    """
    import numpy as np

    names = _names(tuple(about for about, _ in lists))
    found = np.zeros((len(brief_terms.terms), names.total), np.float32)
    found[:, names.plain] = brief_terms.associations[:, names.places]
    present = brief_terms.present
    head, met_whole = _head(brief_terms), set()
    for at, each, parts in names.parts:
        if not all(any(present[place] >= _BESIDE for place in part) for part in parts):
            continue
        ties = np.array([brief_terms.associations[:, list(part)].max(axis=1) for part in parts])
        if not each:
            found[:, at] = ties[-1]
            continue
        said = ties >= NAMED_AS
        without_concepts = (said & ~brief_terms.concepts).any(axis=1).all()  # nor one beside a chance word of theirs
        by_goods = bool(without_concepts) and _each_by_its_own(said)
        if by_goods or any(_each_by_its_own(said[:, list(phrase)]) for phrase in brief_terms.phrases):
            found[:, at] = ties.max(axis=0)
            met_whole.add(at)
            weight = (said * brief_terms.weights).max(axis=1).sum()
            if by_goods and head >= 0 and weight >= _ABOUT_THE_GOODS:
                found[head, at] = found[:, at].max()
    return Met(found, names.starts, frozenset(met_whole))


def _each_by_its_own(said: np.ndarray[Any, np.dtype[np.bool_]]) -> bool:
    """Whether every part of a subject (a row) is said, and as many terms (columns) say some as there are parts."""
    return bool(said.any(axis=1).all() and said.any(axis=0).sum() >= len(said))


def unlisted(met: Met) -> list[int]:
    """The places of the terms that no short list is for."""
    best = met.strengths.max(axis=1, initial=0.0)
    return [int(place) for place in (best < _CHOSEN).nonzero()[0]]


def on_short_lists(
    brief_terms: BriefTerms, met: Met, lists: ShortLists, meaning: Callable[[str], str] = lambda word: ""
) -> dict[str, OnLists]:
    """The words of short lists for what the terms name.

    Of several lists that one term names, those count in full whose subjects the rest of the brief is about (butter and
    cream, or skin and cream), and those whose subjects of several words it has all of. How a word pleased counts once
    for each list, for the weightiest term that names it, so that puddle and rain do not make two of one idea. Of a list
    for several creatures (otter and hedgehog) a word whose `meaning` names another one than the brief does is left out.
    """
    import numpy as np

    rows, doubts = [], np.array([_DOUBT * _in_doubt(term.word) * (not term.is_concept) for term in brief_terms.terms])
    ends = np.append(met.starts[1:], met.strengths.shape[1])
    best_of = np.maximum.reduceat(met.strengths, met.starts, axis=1)
    for place in (best_of.max(axis=0, initial=0.0) >= _CHOSEN).nonzero()[0].tolist():
        here, words = met.strengths[:, met.starts[place] : ends[place]], lists[place][1]
        with_each = np.sort(here, axis=1)
        met_here, second = with_each[:, -1], with_each[:, -min(2, with_each.shape[1])]
        named = np.where(met_here >= _CHOSEN, met_here, np.float32(0))
        loose = (met_here - _CHANCE).clip(0) * brief_terms.weights
        others = loose.sum() - loose
        sure = np.where(met_here >= NAMED_AS, 1.0, np.minimum(1.0, others / _CONFIRMED))
        if not any("+" in name for name in lists[place][0]):
            named = named * (1 - doubts * (1 - np.minimum(1.0, others / _SUPPORTED)))
        # in its chosen sense a term is near its synonyms
        named, others = named * np.where(sure >= _HALF_SURE, sure, 0.0), others + second
        whole = not met.whole.isdisjoint(range(met.starts[place], ends[place]))
        other_things = _other_things(lists[place][0], here.max(axis=0))
        if other_things:
            words = tuple((one, share) for one, share in words if not other_things & {*meaning(one).split(), one})
        rows.append((named, np.full_like(others, np.inf) if whole else others, words))
    best = np.max([others * (named > 0) for named, others, _ in rows if np.isfinite(others).all()], axis=0, initial=0.0)
    found: dict[str, OnLists] = {}
    for named, others, words in rows:
        agreed = np.asarray(named * np.minimum(1.0, (others + _UNSURE) / (best + _UNSURE)), np.float32)
        once = np.zeros_like(agreed)
        best_term = int((agreed * brief_terms.weights).argmax())
        once[best_term] = agreed[best_term]
        for one, share in words:
            well = max(0.0, (share - _MIDDLING) / (1 - _MIDDLING))
            told = OnLists(
                agreed * np.float32(_LISTED + (1 - _LISTED) * share), once * np.float32(share), once * np.float32(well)
            )
            other = found.get(one)
            found[one] = told if other is None else OnLists(*map(np.maximum, told, other))
    return found


@lru_cache(maxsize=1 << 12)
def _in_doubt(word: str) -> float:
    """How open it is by itself what a word means, in [0, 1], by how many senses it has (WordNet)."""
    return float(min(1.0, max(0.0, (len(lexicon().senses(word)) - _FEW) / (_MANY - _FEW))))


def _other_things(about: Sequence[str], strengths: Associations) -> set[str]:
    """Of the names of a subject those of other creatures or plants than the brief means."""
    meant = [name for name, strength in zip(about, strengths, strict=True) if strength >= NAMED_AS and "+" not in name]
    others = [name for name, strength in zip(about, strengths, strict=True) if strength < _CHOSEN and "+" not in name]
    kinds = {kind for name in meant for kind in _living(name)}
    own = {sense for name in meant for sense in _living(name).values()}
    return {one for one in others if kinds & {*_living(one)} and not own & {*_living(one).values()}}


@lru_cache(maxsize=1 << 12)
def _living(word: str) -> dict[str, str]:
    """The kinds of living thing that a word means, each with the commonest such sense of it."""
    senses = [sense.id for sense in lexicon().senses(word)]
    return {kind: sense for sense in reversed(senses) if (kind := lexicon().domain(sense)) in _LIVING}


@lru_cache(maxsize=4)
def _names(subjects: tuple[tuple[str, ...], ...]) -> _Names:
    """The names of subjects; one of which a part is not known is never met."""
    import numpy as np

    starts, plain, at, parts, count, known = [], [], [], [], 0, places()
    for about in subjects:
        starts.append(count)
        for name in about:
            groups = [
                tuple([known[word] for word in part.split("/") if word in known])
                for part in name.removeprefix("~").split("+")
            ]
            if len(groups) > 1:
                parts.append((count, name.startswith("~"), tuple(groups)))
            elif groups[0]:
                plain.append(count)
                at.append(groups[0][0])
            count += 1
    return _Names(np.array(starts), np.array(plain), np.array(at), tuple(one for one in parts if all(one[2])), count)


def _head(brief_terms: BriefTerms) -> int:
    """The place of the term that names the goods; -1 if none does."""
    weights = [0.0 if term.is_concept else term.weight for term in brief_terms.terms]
    return max(range(len(weights)), key=weights.__getitem__) if max(weights, default=0.0) >= MODIFIES else -1
