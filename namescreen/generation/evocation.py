"""What the words of a brief bring to mind, and how strongly another word, or its meaning, is among it.

A brief is a handful of terms: its concepts, and the words of its goods that say something. For each term the words
that belong with it are known (`lexicon.association`), each with a strength in [0, 1]. A word touches a term as
strongly as it belongs with it; a word with a meaning also as strongly as the best word of that meaning does, the more
so the more of the meaning belongs to the brief. A name is then worth showing if what it is made of touches more than
one term.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import lru_cache

from ..brief import Brief, Concept
from ..lexicon import association, kinds, lexicon, zipf
from ..text import fold
from .senses import guide_words, usable_words
from .vocabulary import among, are_rivals, is_known

__all__ = ["Evocation", "Term", "Touches", "relevance", "weigh_down"]

Touches = tuple[float, ...]
"""How strongly a word touches each term of a brief, in [0, 1], in the order of the terms."""

_FAINT = 0.15  # weaker ties than this are chance
_SHARPER = 1.6  # close ties say more than many loose ones
_RIVAL = 0.3  # what is left of a word that is another thing of the same kind, as hound is beside cat
_GOODS = 8  # words of the goods that are followed, the first that say something
_GOODS_WEIGHT = 0.5  # of a word of the goods beside a concept
_OFF_SENSE = 0.35  # what is left of a word that belongs with a concept but not with the meaning chosen
_SPREAD_LEAST, _SPREAD_FULL = 0.4, 0.45  # what is left if one key alone touches; the mean touch that counts whole
_STEPS = (0.8, 0.8, 0.3)  # what the first, second and third concept touched count
_GOODS_STEPS = (0.8, 0.4)
_FULL = 1.7  # a sum of steps that counts as full relevance
_VAGUE = frozenset("people person user use made set kit piece home small large new old pack range product".split())
"""Words of goods that say nothing of one kind of goods (ours)."""
_MADE_OF, _MADE_FOR = frozenset(("of", "in", "from", "with")), frozenset(("for", "to", "that", "on"))


@dataclass(frozen=True)
class Term:
    """A word of the brief: `weight` 1 for a concept, less for a word of the goods; `reach` maps the words it brings
    to mind to their strength."""

    word: str
    weight: float
    is_concept: bool
    reach: Mapping[str, float]


@dataclass(frozen=True)
class Evocation:
    """The terms of a brief, concepts first."""

    terms: tuple[Term, ...]

    @classmethod
    def of(cls, brief: Brief, *, without: Iterable[str] = ()) -> Evocation:
        """The terms of `brief`, but for the words in `without`."""
        dropped = {fold(word) for word in without}
        concepts = [
            Term(word, 1.0, True, _sensed(concept, word))
            for concept in brief.concepts
            for word in usable_words(concept.word)
            if word not in dropped
        ]
        terms = {term.word: term for term in concepts}
        for word, share in _goods_words(brief).items():
            forms = (word, *lexicon().bases(word))
            if not any(form in terms or form in dropped for form in forms) and len(terms) < len(concepts) + _GOODS:
                term = forms[-1]
                terms[term] = Term(term, _GOODS_WEIGHT * share * weigh_down(term), False, _reach(term))
        return cls(tuple(terms.values()))

    def word(self, word: str) -> Touches:
        """How strongly a word touches each term."""
        if not is_known(word):
            return tuple(1.0 if word == term.word else _tie(term.word, word) for term in self.terms)
        return tuple(term.reach.get(word, 0.0) for term in self.terms)

    def meaning(self, keys: Iterable[tuple[str, float]]) -> Touches:
        """How strongly a meaning touches each term: as its best key does, less
        where the rest of the meaning has nothing to do with the brief; `keys` come with their weights in [0, 1]."""
        keys = tuple(keys)
        best = [max((term.reach.get(key, 0.0) * term.weight for term in self.terms), default=0.0) for key, _ in keys]
        whole = sum(weight for _, weight in keys) or 1.0
        spread = sum(touch * weight for touch, (_, weight) in zip(best, keys, strict=True)) / whole
        share = _SPREAD_LEAST + (1 - _SPREAD_LEAST) * min(1.0, spread / _SPREAD_FULL)
        return tuple(
            share * max((term.reach.get(key, 0.0) * weight for key, weight in keys), default=0.0) for term in self.terms
        )

    def relevance(self, touches: Touches) -> float:
        """How relevant to the brief as a whole, in [0, 1]: one concept well touched gives about half."""
        return relevance(self.terms, touches)

    def best(self, touches: Touches) -> int:
        """The place of the term that is touched most, by weight."""
        return max(range(len(touches)), key=lambda place: touches[place] * self.terms[place].weight)

    def strongest(self, touches: Touches) -> float:
        """The strongest touch, by the weight of its term."""
        return max((touch * term.weight for term, touch in zip(self.terms, touches, strict=True)), default=0.0)


def relevance(terms: tuple[Term, ...], touches: Touches) -> float:
    """See `Evocation.relevance`."""
    concepts = sorted((t for term, t in zip(terms, touches, strict=True) if term.is_concept), reverse=True)
    goods = sorted(
        (term.weight * t for term, t in zip(terms, touches, strict=True) if not term.is_concept), reverse=True
    )
    total = sum(step * touch for step, touch in zip(_STEPS, concepts, strict=False))
    total += sum(step * touch for step, touch in zip(_GOODS_STEPS, goods, strict=False))
    return min(1.0, total / _FULL)


def weigh_down(word: str) -> float:
    """How much a word of a text says, in [0, 1]: common words say little."""
    return max(0.25, min(1.0, (6.6 - zipf(word)) / 2.6))


def _goods_words(brief: Brief) -> dict[str, float]:
    """The words of the goods that say something, each with its share: half for what the goods are made of or come in,
    and for what is no noun."""
    found: dict[str, float] = {}
    for text in (brief.goods, brief.product):
        share = 1.0
        for token in fold(text).replace("-", " ").split():
            word = token.strip(".,:;()")
            if word in _MADE_OF:
                share = 0.5
            elif word in _MADE_FOR or token.startswith("("):
                share = 1.0
            plain = len(word) > 2 and word.isalpha() and word.isascii() and word not in _VAGUE
            if plain and "function word" not in kinds(word):
                bases = lexicon().bases_by_pos(word)
                found.setdefault(word, share * (1.0 if "n" in bases or not bases else 0.5))
    return found


def _sensed(concept: Concept, word: str) -> Mapping[str, float]:
    """What a concept brings to mind; where a meaning is chosen, what belongs with that meaning as well counts whole,
    the rest little."""
    own = _reach(word)
    guides = guide_words(concept)
    if not guides:
        return own
    meant: dict[str, float] = {}
    for guide in guides:
        for other, strength in _reach(guide).items():
            meant[other] = max(meant.get(other, 0.0), strength)
    # the word itself in a meaning does not say in which of its senses it stands there
    found = {
        other: strength * (1.0 if other in meant and other != word else _OFF_SENSE) for other, strength in own.items()
    }
    for other, strength in meant.items():
        if other != word:
            found[other] = max(found.get(other, 0.0), (0.9 if other in own else 0.7) * strength)
    return found


@lru_cache(maxsize=1 << 14)
def _tie(term: str, word: str) -> float:
    """How strongly a word that is not among our ideas belongs with a term."""
    value = association(term, word) or 0.0
    return (value**_SHARPER if value >= _FAINT else 0.0) * (_RIVAL if are_rivals(term, word) else 1.0)


@lru_cache(maxsize=256)
def _reach(term: str) -> Mapping[str, float]:
    """The words among our ideas that a word brings to mind, itself and its base forms with them."""
    found = {other: value**_SHARPER for other, value in among().association(term, _FAINT).items()}
    for other in found:
        if are_rivals(term, other):
            found[other] *= _RIVAL
    found.update(dict.fromkeys((term, *lexicon().bases(term)), 1.0))
    return found
