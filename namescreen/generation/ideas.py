"""From the terms of a brief to ideas: words that names may be made of, with their meanings and the reason for each.

The knowledge is ours (wordlists/curated/): existing words that a product may be named after, words of other languages
and figures of lore, each with its meaning in a few words, and short vivid words by world. An idea is as good as its
association with the terms of the brief, by the word itself or by its meaning.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field, replace
from functools import cache
from typing import TYPE_CHECKING, NamedTuple

from ..brief import Brief
from ..tables import open_table
from ..text import fold
from .brief_terms import NAMED, BriefTerms
from .short_lists import NAMED_AS, on_short_lists
from .vocabulary import Word, pictures, places
from .vocabulary import word as word_facts

if TYPE_CHECKING:
    from .brief_terms import Associations, Places

__all__ = ["Idea", "first_names", "ideas_of", "meaning_of"]

_OWN = 0.85  # what a word's own company counts beside its meaning, which is surer
_MEANT = 0.8  # what its meaning counts beside what it is known to be apt for
_EVIDENT = 0.6  # what counts in the reason that is shown: that the word or its meaning says it, or a short list does
_FACET_SHARPER = 1.5  # what a word is apt for is told in plain words, so a loose tie to one says little
_WORLD = 0.55  # what standing in a world of the brief counts by itself; the rest is the word's own company
_FIRM = 0.45  # how strongly a term must bring the subject of a world to mind for its words to count
_SURE = 0.6  # as much for a word of the goods, which may only say what they are made of
_ALONE_VIVID = 0.75  # of a world of short words, which is less special
_ALONE, _ALONE_LOOSE = 0.55, 0.3  # what is left of a world of which one term alone speaks, or only loosely
_LATER = 0.012  # what each place in a list of apt words costs
_MOSTLY = 0.5  # the share of the words of a meaning that the brief says itself, from which it describes
_PICTURE = 0.012  # how relevant a word whose picture pleases must be to stand in a name
_LEAST = 0.1  # less relevant ideas are left out
_GOODS = 0.25  # words of the goods describe: they may serve, but weigh little


@dataclass(frozen=True, slots=True)
class Idea:
    """A word to make names of.

    `kind` says where it comes from: "concept" and "goods" (the brief), "world" (a short vivid word), "find" (an
    existing word with its `meaning`), "foreign", "lore". `associations` are those with each term of the brief,
    `term` the one with the strongest, and `weight` in [0, 1] the relevance to the whole brief.
    `standing` is 1 for a word that makes a good name by itself, 0 for a poor one (by our own judgement), else 0.5;
    `delight` how it pleased a blind reader for what it suits, from 0 to 1, 0.5 if not rated;
    `worn` if firms of every trade carry it; `defined` if its meaning says mostly what the brief itself says;
    `written` is the word with its apostrophe, "" if it has none;
    `chosen` in [0, 1] how it pleased that reader for what the brief speaks of, by our short lists; 0 if on none.
    """

    word: str
    kind: str
    meaning: str
    associations: Associations = field(compare=False, repr=False)
    term: str
    weight: float
    standing: float = 0.5
    chosen: float = 0.0
    delight: float = 0.5
    worn: bool = False
    defined: bool = False
    written: str = ""

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
    standing: float
    delight: float
    worn: bool
    written: str


@cache
def _known() -> tuple[_Known, ...]:
    found = []
    for key, value in open_table("naming_ideas.tsv").items():
        kind, _, word = key.partition(" ")
        meaning, _, worth = value.partition("|")
        standing, delight, worn, written = worth.split("/") if worth else ("", "", "", "")
        facts = float(standing or 0.5), float(delight or 0.5), worn == "1", written or word
        found.append(_Known(kind, word, meaning, *facts))
    return tuple(found)


@cache
def _meanings() -> dict[str, str]:
    return {one.word.casefold(): one.meaning for one in reversed(_known())}


def meaning_of(word: str) -> str:
    """The meaning of one of our existing words, in a few words; "" for others."""
    return _meanings().get(word, "")


class _Lists(NamedTuple):
    """Lists of words one after the other: the owner of each list, its words' places and weights, where it starts."""

    owners: Places
    places: Places
    weights: Associations
    starts: Places


def _numbers(row: str) -> Places:
    import numpy as np

    return np.fromstring(open_table("naming_keys.tsv").get(row) or "", np.int64, sep=" ")


def _lists(counts: Places, places: Places, weights: Associations) -> _Lists:
    """The lists that are not empty, of as many words each as `counts` says."""
    owners = counts.nonzero()[0]
    return _Lists(owners, places, weights, (counts.cumsum() - counts)[owners])


@cache
def _keys() -> _Lists:
    """The words of each meaning."""
    import numpy as np

    weights = _numbers("key weights").astype(np.float32) / np.float32(100)
    return _lists(_numbers("key counts"), _numbers("key places"), weights)


@cache
def _facets() -> _Lists:
    """What each word is apt for, the first a little surer than the last."""
    import numpy as np

    counts, places = _numbers("facet counts"), _numbers("facet places")
    before = np.arange(len(places)) - np.repeat(counts.cumsum() - counts, counts)
    return _lists(counts, places, (1 - _LATER * before).astype(np.float32))


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


def ideas_of(brief: Brief, brief_terms: BriefTerms, *, without: Iterable[str] = ()) -> tuple[Idea, ...]:
    """Every idea of a brief, the most relevant first; none that holds a dropped word or one to avoid."""
    avoided = {fold(word) for word in (*brief.avoid, *without)}
    found: dict[tuple[str, str], Idea] = {}
    for idea in (*_words_of_the_brief(brief_terms), *_words_with_meaning(brief_terms), *_world_words(brief_terms)):
        key = ("foreign" if idea.kind == "foreign" else "", idea.word.casefold())
        if idea.word.casefold() in avoided:
            continue
        other = found.get(key)
        if other is None:
            found[key] = idea
            continue
        heavier, chosen = max(idea, other, key=lambda one: one.weight), max(idea.chosen, other.chosen)
        found[key] = heavier if heavier.chosen == chosen else replace(heavier, chosen=chosen)
    return tuple(sorted(found.values(), key=lambda idea: (-idea.weight, idea.kind, idea.word)))


def _words_of_the_brief(brief_terms: BriefTerms) -> Iterator[Idea]:
    import numpy as np

    for place, term in enumerate(brief_terms.terms):
        associations = np.zeros(len(brief_terms.terms), np.float32)
        associations[place] = 1.0
        weight = 0.5 if term.is_concept else _GOODS * term.weight
        yield Idea(term.word, "concept" if term.is_concept else "goods", "", associations, term.word, weight)


def _words_with_meaning(brief_terms: BriefTerms) -> Iterator[Idea]:
    """Words whose meaning is associated with the brief, or that are known to suit its subjects."""
    import numpy as np

    associations, chosen, plain_to_see = _associations(brief_terms)
    evident = _EVIDENT * np.maximum(plain_to_see, chosen) + (1 - _EVIDENT) * associations
    weights = brief_terms.relevances(associations)
    # a name for what is only said in passing of the goods tells little of them
    picked = (chosen * np.minimum(1.0, brief_terms.weights / NAMED) ** 2).max(axis=1, initial=0.0)
    defined = _defined(brief_terms)
    terms = {term.word for term in brief_terms.terms}
    for place in (weights >= _LEAST).nonzero()[0].tolist():
        known = _known()[place]
        plain = known.kind == "foreign" and known.meaning.partition(": ")[2] in terms  # it says so in its language
        if known.kind not in ("first", "title") and known.word.casefold() not in terms and not plain:
            term = brief_terms.terms[brief_terms.best_term(evident[place])].word
            yield Idea(
                known.word, known.kind, known.meaning, associations[place], term, float(weights[place]), known.standing,
                float(picked[place]), known.delight, known.worn, bool(defined[place]), known.written,
            )  # fmt: skip


def _defined(brief_terms: BriefTerms) -> Associations:
    """Of each word that has a meaning, whether that says mostly what the brief itself says, in two words or more."""
    import numpy as np

    keys = _keys()
    same = (brief_terms.associations[:, keys.places] >= NAMED_AS).any(axis=0)
    said, of = np.add.reduceat(same, keys.starts, dtype=np.int64), np.diff(np.append(keys.starts, len(keys.places)))
    found = np.zeros(len(_known()), bool)
    found[keys.owners] = (said > 1) & (said >= _MOSTLY * of)
    return found


def _associations(brief_terms: BriefTerms) -> tuple[Associations, Associations, Associations]:
    """The association of each word that has a meaning with each term: by its meaning, by itself, by what it is apt for;
    the part of it that comes from the short lists; and the part that a reader sees in the word or its meaning."""
    import numpy as np

    found = np.zeros((len(_known()), len(brief_terms.terms)), np.float32)
    keys, facets = _keys(), _facets()
    found[keys.owners] = _MEANT * brief_terms.of_meanings(keys.places, keys.weights, keys.starts)
    known, at = _single_finds()
    np.maximum.at(found, known, _OWN * brief_terms.associations[:, at].T)
    seen = found.copy()
    if len(facets.owners):
        for place, term in enumerate(brief_terms.terms):
            apt = np.maximum.reduceat(
                term.associations[facets.places] ** _FACET_SHARPER * facets.weights, facets.starts
            )
            found[facets.owners, place] = np.maximum(found[facets.owners, place], apt)
    chosen = np.zeros_like(found)
    suited, picked = _suitable(brief_terms), on_short_lists(brief_terms)
    for place, one in enumerate(_known()):
        if one.kind in ("find", "lore") and (associations := suited.get(one.word.casefold())) is not None:
            found[place] = np.maximum(found[place], associations)
        if one.kind not in ("first", "title") and (both := picked.get(one.word.casefold())) is not None:
            found[place] = np.maximum(found[place], both[0])
            chosen[place] = both[1]
    return found, chosen, seen


@cache
def _single_finds() -> tuple[list[int], list[int]]:
    """The existing words that are one word, among all that is known, and their places."""
    rows = [(at, places()[one.word]) for at, one in enumerate(_known()) if one.kind == "find" and one.word in places()]
    return [at for at, _ in rows], [place for _, place in rows]


def _suitable(brief_terms: BriefTerms) -> dict[str, Associations]:
    """The words that suit the subjects of the brief, each with its association with each term."""
    import numpy as np

    found: dict[str, Associations] = {}
    for about, words in _suits():
        standing = _world_relevance(brief_terms, about)
        if standing.any():
            for place, one in enumerate(words):
                associations = standing * np.float32(max(0.3, 1 - _LATER * place))
                found[one] = np.maximum(associations, found[one]) if one in found else associations
    return found


def _world_words(brief_terms: BriefTerms) -> Iterator[Idea]:
    """Short vivid words of the worlds that the brief belongs to."""
    import numpy as np

    best: dict[str, Associations] = {}
    for about, words in _worlds():
        standing = _world_relevance(brief_terms, about, _ALONE_VIVID)
        if not standing.any():
            continue
        for word in words:
            own = brief_terms.of_word(word)
            associations = np.where(standing > 0, standing * (_WORLD + (1 - _WORLD) * own), 0.7 * own)
            best[word] = np.maximum(associations, best[word]) if word in best else associations
    for word in pictures():
        if word not in best:
            best[word] = brief_terms.of_word(word)
    terms = {term.word for term in brief_terms.terms}
    for word, associations in best.items():
        weight = brief_terms.relevance(associations)
        if weight >= (_PICTURE if word_facts(word).charm == 1 else _LEAST) and word not in terms:
            yield Idea(
                word, "world", "", associations, brief_terms.terms[brief_terms.best_term(associations)].word, weight
            )


def _world_relevance(brief_terms: BriefTerms, about: tuple[str, ...], alone: float = _ALONE) -> Associations:
    """How surely each term belongs to a world: less if no other term does, because a single word may mean something
    else there (bath salt, table salt)."""
    import numpy as np

    met = brief_terms.associations[:, [places()[word] for word in about if word in places()]]
    if not met.shape[1]:
        return np.zeros(len(brief_terms.terms), np.float32)
    top = met.max(axis=1)
    first = (met * (1 - _LATER * np.arange(met.shape[1]))).max(axis=1)
    order = np.argsort(-top)
    others = np.full(len(top), top[order[0]])
    others[order[0]] = top[order[1]] if len(top) > 1 else 1.0
    agreed = np.minimum(1.0, others / NAMED_AS)
    named = first * (alone + (1 - alone) * agreed)
    loose = np.where(top >= np.where(brief_terms.concepts, _FIRM, _SURE), first, 0.0) * (_ALONE_LOOSE + agreed**2 / 2)
    return np.asarray(np.where(top >= NAMED_AS, named, loose), np.float32)
