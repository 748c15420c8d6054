"""From the terms of a brief to ideas: words with a meaning that names may be made of, each with why it is here.

The knowledge is ours (wordlists/curated/): existing words that a product may be named after, words of other languages
and figures of lore, each with its meaning in a few words, and short vivid words by world. An idea is as good as it
touches the terms of the brief, by itself or by its meaning.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cache

from ..brief import Brief
from ..tables import open_table
from ..text import fold
from .evocation import Evocation, Term, Touches
from .senses import unfit
from .vocabulary import Word, pictures
from .vocabulary import word as word_facts

__all__ = ["Idea", "first_names", "ideas_of"]

_OWN = 0.85  # what a word's own company counts beside its meaning, which is surer
_WORLD = 0.55  # what standing in a world of the brief counts by itself; the rest is the word's own company
_FIRM = 0.6  # how strongly a term must bring the subject of a world to mind for its words to count
_SURE = 0.85  # as much for a word of the goods, which may only say what they are made of
_ALONE, _AGREED = 0.55, 0.5  # what is left of a world of which one term alone speaks; a tie of another that agrees
_LATER = 0.012  # what each place in a list of apt words costs
_PICTURE = 0.03  # how relevant a word whose picture pleases must be to stand in a name
_LEAST = 0.08  # less relevant ideas are left out
_GOODS = 0.25  # words of the goods describe: they may serve, but weigh little


@dataclass(frozen=True, slots=True)
class Idea:
    """A word to make names of.

    `kind` says where it comes from: "concept" and "goods" (the brief), "world" (a short vivid word), "find" (an
    existing word with its `meaning`), "foreign", "lore". `touches` say how strongly it touches each term of the
    brief, `term` is the one it touches most, and `weight` in [0, 1] how relevant it is to the brief as a whole.
    """

    word: str
    kind: str
    meaning: str
    touches: Touches
    term: str
    weight: float

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


@dataclass(frozen=True, slots=True)
class _Known:
    kind: str
    word: str
    meaning: str
    keys: tuple[tuple[str, float], ...]


@cache
def _known() -> tuple[_Known, ...]:
    found = []
    for key, value in open_table("naming_ideas.tsv").items():
        kind, _, word = key.partition(" ")
        meaning, _, keys = value.partition("|")
        pairs = (entry.rpartition(":") for entry in keys.split())
        found.append(_Known(kind, word, meaning, tuple((other, int(w) / 100) for other, _, w in pairs)))
    return tuple(found)


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
    for place, term in enumerate(evocation.terms):
        touches = tuple(float(other == place) for other in range(len(evocation.terms)))
        weight = 0.5 if term.is_concept else _GOODS * term.weight
        yield Idea(term.word, "concept" if term.is_concept else "goods", "", touches, term.word, weight)


def _meant(evocation: Evocation) -> Iterator[Idea]:
    """Words with a meaning that touches the brief, or that are known to suit what it speaks of."""
    apt = _apt(evocation)
    terms = {term.word for term in evocation.terms}
    for known in _known():
        if known.kind in ("first", "title") or known.word.casefold() in terms:
            continue
        touches = evocation.meaning(known.keys)
        if known.kind == "find" and " " not in known.word:
            touches = tuple(map(max, touches, (_OWN * touch for touch in evocation.word(known.word))))
        suited = apt.get(known.word.casefold()) if known.kind in ("find", "lore") else None
        if suited:
            touches = tuple(map(max, touches, suited))
        weight = evocation.relevance(touches)
        if weight >= _LEAST:
            term = evocation.terms[evocation.best(touches)].word
            yield Idea(known.word, known.kind, known.meaning, touches, term, weight)


def _apt(evocation: Evocation) -> dict[str, Touches]:
    """The words that suit what the brief speaks of, each with how surely it touches each term."""
    found: dict[str, Touches] = {}
    for about, words in _suits():
        standing = _standings(evocation, about)
        if any(standing):
            for place, one in enumerate(words):
                touches = tuple(stand * (1 - _LATER * place) for stand in standing)
                found[one] = tuple(map(max, touches, found[one])) if one in found else touches
    return found


def _vivid(evocation: Evocation) -> Iterator[Idea]:
    """Short vivid words of the worlds that the brief speaks of."""
    best: dict[str, Touches] = {}
    for about, words in _worlds():
        standing = _standings(evocation, about)
        if not any(standing):
            continue
        for word in words:
            own = evocation.word(word)
            touches = tuple(
                stand * (_WORLD + (1 - _WORLD) * touch) if stand else 0.7 * touch
                for stand, touch in zip(standing, own, strict=True)
            )
            best[word] = tuple(map(max, touches, best[word])) if word in best else touches
    for word in pictures():
        best.setdefault(word, evocation.word(word))
    terms = {term.word for term in evocation.terms}
    for word, touches in best.items():
        weight = evocation.relevance(touches)
        if weight >= (_PICTURE if word_facts(word).charm == 1 else _LEAST) and word not in terms and not unfit(word):
            yield Idea(word, "world", "", touches, evocation.terms[evocation.best(touches)].word, weight)


def _standings(evocation: Evocation, about: tuple[str, ...]) -> Touches:
    """How surely each term speaks of a world: less where no other term has to do with it, as a word alone may mean
    something else there (salt of the bath, salt of the table)."""
    standing = tuple(_standing(term, about) for term in evocation.terms)
    if not any(standing) or len(evocation.terms) == 1:
        return standing
    met = [max(term.reach.get(word, 0.0) for word in about) for term in evocation.terms]
    agreeing = [max(met[:place] + met[place + 1 :]) for place in range(len(met))]
    shares = [_ALONE + (1 - _ALONE) * min(1.0, other / _AGREED) for other in agreeing]
    return tuple(stand * share for stand, share in zip(standing, shares, strict=True))


def _standing(term: Term, about: tuple[str, ...]) -> float:
    """How surely a term speaks of a world: 1 if it names it, less for the later words of its subject."""
    best = max(term.reach.get(word, 0.0) - 0.03 * place for place, word in enumerate(about))
    return best if best >= (_FIRM if term.is_concept else _SURE) else 0.0
