"""From the terms of a brief to ideas: words with a meaning that names may be made of, each with why it is here.

The knowledge is ours (wordlists/curated/): existing words that a product may be named after, words of other languages
and figures of lore, each with its meaning in a few words, and short vivid words by world. An idea is as good as it
touches the terms of the brief, by itself or by its meaning.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from functools import cache
from typing import TYPE_CHECKING, NamedTuple

from ..brief import Brief
from ..tables import open_table
from ..text import fold
from .evocation import Evocation
from .senses import unfit
from .vocabulary import Word, pictures, places
from .vocabulary import word as word_facts

if TYPE_CHECKING:
    from .evocation import Places, Touches

__all__ = ["Idea", "first_names", "ideas_of"]

_OWN = 0.85  # what a word's own company counts beside its meaning, which is surer
_MEANT = 0.8  # what its meaning counts beside what it is known to be apt for
_FACET_SHARPER = 1.5  # what a word is apt for is told in plain words, so a loose tie to one says little
_WORLD = 0.55  # what standing in a world of the brief counts by itself; the rest is the word's own company
_FIRM = 0.45  # how strongly a term must bring the subject of a world to mind for its words to count
_SURE = 0.6  # as much for a word of the goods, which may only say what they are made of
_NAMED = 0.9  # a tie from which a term names the subject of a world, as itself or a synonym does
_ALONE, _ALONE_LOOSE = 0.55, 0.3  # what is left of a world of which one term alone speaks, or only loosely
_LATER = 0.012  # what each place in a list of apt words costs
_PICTURE = 0.012  # how relevant a word whose picture pleases must be to stand in a name
_LEAST = 0.06  # less relevant ideas are left out
_GOODS = 0.25  # words of the goods describe: they may serve, but weigh little


@dataclass(frozen=True, slots=True)
class Idea:
    """A word to make names of.

    `kind` says where it comes from: "concept" and "goods" (the brief), "world" (a short vivid word), "find" (an
    existing word with its `meaning`), "foreign", "lore". `touches` say how strongly it touches each term of the
    brief, `term` is the one it touches most, and `weight` in [0, 1] how relevant it is to the brief as a whole.
    `standing` is 1 for a word that makes a good name by itself, 0 for a poor one (by our own judgement), else 0.5.
    """

    word: str
    kind: str
    meaning: str
    touches: Touches = field(compare=False, repr=False)
    term: str
    weight: float
    standing: float = 0.5

    @property
    def facts(self) -> Word:
        """What is known of the word itself."""
        return word_facts(self.word)

    @property
    def pos(self) -> str:
        """Its part of speech: of a word of the language, its leading one."""
        return self.facts.pos if self.kind not in ("foreign", "lore") else "n"

    @property
    def why(self) -> str:
        """What it is, and which term of the brief it is here for."""
        if self.kind == "concept":
            return "a concept"
        return f"{self.meaning} (for {self.term})" if self.meaning else f"for {self.term}"

    @property
    def named(self) -> str:
        """The word with the term it is here for: kelp (for sea)."""
        return self.word if self.word == self.term else f"{self.word} (for {self.term})"

    @property
    def reason(self) -> str:
        """Why it is here, in words: skep: beehive woven of straw (for bee)."""
        return f"{self.word}: {self.why}"


class _Known(NamedTuple):
    kind: str
    word: str
    meaning: str
    keys: tuple[tuple[str, float], ...]
    facets: tuple[str, ...]
    standing: float


@cache
def _known() -> tuple[_Known, ...]:
    found = []
    for key, value in open_table("naming_ideas.tsv").items():
        kind, _, word = key.partition(" ")
        meaning, keys, facets, standing = (*value.split("|"), "", "")[:4]
        pairs = (entry.rpartition(":") for entry in keys.split())
        found.append(
            _Known(
                kind, word, meaning, tuple((other, int(w) / 100) for other, _, w in pairs), tuple(facets.split()),
                float(standing or 0.5),
            )
        )
    return tuple(found)


class _Lists(NamedTuple):
    """Lists of words one after the other: the owner of each list, its words' places and weights, where it starts."""

    owners: Places
    places: Places
    weights: Touches
    starts: Places


def _lists(rows: Iterable[tuple[int, list[tuple[str, float]]]]) -> _Lists:
    import numpy as np

    owners: list[int] = []
    at: list[int] = []
    weights: list[float] = []
    starts: list[int] = []
    known = places()
    for owner, words in rows:
        found = [(known[word], weight) for word, weight in words if word in known]
        if found:
            owners.append(owner)
            starts.append(len(at))
            at += [place for place, _ in found]
            weights += [weight for _, weight in found]
    return _Lists(np.array(owners), np.array(at), np.array(weights, np.float32), np.array(starts))


@cache
def _keys() -> _Lists:
    """The words of each meaning."""
    return _lists((place, list(one.keys)) for place, one in enumerate(_known()))


@cache
def _facets() -> _Lists:
    """What each word is apt for, the first a little surer than the last."""
    return _lists(
        (place, [(facet, 1 - _LATER * at) for at, facet in enumerate(one.facets)]) for place, one in enumerate(_known())
    )


@cache
def first_names() -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Plain first names, and what may stand before one."""
    names = tuple(entry.word for entry in _known() if entry.kind == "first")
    return names, tuple(entry.word for entry in _known() if entry.kind == "title")


@cache
def _worlds() -> tuple[tuple[tuple[str, ...], tuple[str, ...]], ...]:
    rows = (value.split("|") for _, value in open_table("naming_worlds.tsv").items())
    return tuple((tuple(about.split()), tuple(words.split())) for about, words in rows)


@cache
def _suits() -> tuple[tuple[tuple[str, ...], tuple[str, ...]], ...]:
    rows = (value.split("|") for _, value in open_table("naming_suits.tsv").items())
    return tuple((tuple(about.split()), tuple(words.split(", "))) for about, words in rows)


def ideas_of(brief: Brief, evocation: Evocation, *, without: Iterable[str] = ()) -> tuple[Idea, ...]:
    """Every idea of a brief, the most relevant first; none that holds a dropped word or one to avoid."""
    avoided = {fold(word) for word in (*brief.avoid, *without)}
    found: dict[tuple[str, str], Idea] = {}
    for idea in (*_own(evocation), *_meant(evocation), *_vivid(evocation)):
        key = ("foreign" if idea.kind == "foreign" else "", idea.word.casefold())
        if idea.word.casefold() not in avoided and (key not in found or found[key].weight < idea.weight):
            found[key] = idea
    return tuple(sorted(found.values(), key=lambda idea: (-idea.weight, idea.kind, idea.word)))


def _own(evocation: Evocation) -> Iterator[Idea]:
    import numpy as np

    for place, term in enumerate(evocation.terms):
        touches = np.zeros(len(evocation.terms), np.float32)
        touches[place] = 1.0
        weight = 0.5 if term.is_concept else _GOODS * term.weight
        yield Idea(term.word, "concept" if term.is_concept else "goods", "", touches, term.word, weight)


def _meant(evocation: Evocation) -> Iterator[Idea]:
    """Words with a meaning that touches the brief, or that are known to suit what it speaks of."""
    touches = _touches(evocation)
    weights = evocation.relevances(touches)
    terms = {term.word for term in evocation.terms}
    for place in (weights >= _LEAST).nonzero()[0].tolist():
        known = _known()[place]
        if known.kind not in ("first", "title") and known.word.casefold() not in terms:
            term = evocation.terms[evocation.best(touches[place])].word
            yield Idea(
                known.word, known.kind, known.meaning, touches[place], term, float(weights[place]), known.standing
            )


def _touches(evocation: Evocation) -> Touches:
    """How strongly each word with a meaning touches each term: by its meaning, by itself, by what it is apt for."""
    import numpy as np

    found = np.zeros((len(_known()), len(evocation.terms)), np.float32)
    keys, facets = _keys(), _facets()
    found[keys.owners] = _MEANT * evocation.meanings(keys.places, keys.weights, keys.starts)
    if len(facets.owners):
        for place, term in enumerate(evocation.terms):
            apt = np.maximum.reduceat(term.reach[facets.places] ** _FACET_SHARPER * facets.weights, facets.starts)
            found[facets.owners, place] = np.maximum(found[facets.owners, place], apt)
    known, at = _single_finds()
    np.maximum.at(found, known, _OWN * evocation.reach[:, at].T)
    suited = _apt(evocation)
    for place, one in enumerate(_known()):
        if one.kind in ("find", "lore") and (touches := suited.get(one.word.casefold())) is not None:
            found[place] = np.maximum(found[place], touches)
    return found


@cache
def _single_finds() -> tuple[list[int], list[int]]:
    """The existing words that are one word, among all that is known, and their places."""
    rows = [
        (at, places()[one.word]) for at, one in enumerate(_known()) if one.kind == "find" and one.word in places()
    ]
    return [at for at, _ in rows], [place for _, place in rows]


def _apt(evocation: Evocation) -> dict[str, Touches]:
    """The words that suit what the brief speaks of, each with how surely it touches each term."""
    import numpy as np

    found: dict[str, Touches] = {}
    for about, words in _suits():
        standing = _standings(evocation, about)
        if standing.any():
            for place, one in enumerate(words):
                touches = standing * np.float32(max(0.3, 1 - _LATER * place))
                found[one] = np.maximum(touches, found[one]) if one in found else touches
    return found


def _vivid(evocation: Evocation) -> Iterator[Idea]:
    """Short vivid words of the worlds that the brief speaks of."""
    import numpy as np

    best: dict[str, Touches] = {}
    for about, words in _worlds():
        standing = _standings(evocation, about)
        if not standing.any():
            continue
        for word in words:
            own = evocation.word(word)
            touches = np.where(standing > 0, standing * (_WORLD + (1 - _WORLD) * own), 0.7 * own)
            best[word] = np.maximum(touches, best[word]) if word in best else touches
    for word in pictures():
        if word not in best:
            best[word] = evocation.word(word)
    terms = {term.word for term in evocation.terms}
    for word, touches in best.items():
        weight = evocation.relevance(touches)
        if weight >= (_PICTURE if word_facts(word).charm == 1 else _LEAST) and word not in terms and not unfit(word):
            yield Idea(word, "world", "", touches, evocation.terms[evocation.best(touches)].word, weight)


def _standings(evocation: Evocation, about: tuple[str, ...]) -> Touches:
    """How surely each term speaks of a world: less where no other term has to do with it, as a word alone may mean
    something else there (salt of the bath, salt of the table)."""
    import numpy as np

    met = evocation.reach[:, [places()[word] for word in about if word in places()]]
    if not met.shape[1]:
        return np.zeros(len(evocation.terms), np.float32)
    top = met.max(axis=1)
    first = (met * (1 - _LATER * np.arange(met.shape[1]))).max(axis=1)
    order = np.argsort(-top)
    others = np.full(len(top), top[order[0]])
    others[order[0]] = top[order[1]] if len(top) > 1 else 1.0
    agreed = np.minimum(1.0, others / _NAMED)
    named = first * (_ALONE + (1 - _ALONE) * agreed)
    loose = np.where(top >= np.where(evocation.concepts, _FIRM, _SURE), first, 0.0) * (_ALONE_LOOSE + agreed**2 / 2)
    return np.asarray(np.where(top >= _NAMED, named, loose), np.float32)
