"""What the words of a brief bring to mind, and how strongly another word, or its meaning, is among it.

A brief is a handful of terms: its concepts, and the words of its goods that say something. For each term it is known
how strongly each word of our ideas belongs with it (`lexicon.association`). A word touches a term as strongly as it
belongs with it; a word with a meaning also as strongly as the best word of that meaning does, the more so the more of
the meaning belongs to the brief. A name is then worth showing if what it is made of touches more than one term.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from functools import cached_property, lru_cache
from typing import TYPE_CHECKING, Any

from ..brief import Brief, Concept
from ..lexicon import association, kinds, lexicon, zipf
from ..text import fold
from .senses import guide_words, usable_words
from .vocabulary import are_rivals, associations, is_known, places, rivals, synonyms

if TYPE_CHECKING:
    import numpy as np

    Places = np.ndarray[Any, np.dtype[np.int64]]
    Touches = np.ndarray[Any, np.dtype[np.float32]]
    """How strongly a word touches each term of a brief, in [0, 1], in the order of the terms."""

__all__ = ["NAMED", "Evocation", "Term", "weigh_down"]

_FAINT = 0.15  # weaker ties than this are chance
_SHARPER = 1.6  # close ties say more than many loose ones
_OTHER, _SYNONYM = 0.65, 0.9  # what another word counts beside the word itself, and one with the same leading sense
_RIVAL = 0.3  # what is left of a word that is another thing of the same kind, as hound is beside cat
_GOODS = 10  # words of the goods that are followed, the first that say something
NAMED, _GOODS_WEIGHT = 0.75, 0.45  # beside a concept: of a word that names the goods, and of another said of them
_OFF_SENSE = 0.35  # what is left of a word that belongs with a concept but not with the meaning chosen
_SPREAD_LEAST, _SPREAD_FULL = 0.4, 0.45  # what is left if one key alone touches; the mean touch that counts whole
_STEPS = (0.5, 0.3, 0.16, 0.09, 0.05)
"""What the term touched most adds to relevance, then the next ones: two terms well touched make a word apt."""
_VAGUE = frozenset("people person user use made set kit piece home small large new old pack range product".split())
"""Words of goods that say nothing of one kind of goods (ours)."""
_MADE_OF, _MADE_FOR = frozenset(("of", "in", "from", "with")), frozenset(("for", "to", "that", "on"))


@dataclass(frozen=True)
class Term:
    """A word of the brief: `weight` 1 for a concept, less for a word of the goods; `reach` how strongly each word of
    our ideas belongs with it, by `vocabulary.places`."""

    word: str
    weight: float
    is_concept: bool
    reach: Touches = field(compare=False, repr=False)


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
        for word, weight in _goods_words(brief).items():
            forms = (word, *lexicon().bases(word))
            if not any(form in terms or form in dropped for form in forms) and len(terms) < len(concepts) + _GOODS:
                term = forms[-1]
                terms[term] = Term(term, weight, False, _reach(term))
        return cls(tuple(terms.values()))

    @cached_property
    def weights(self) -> Touches:
        """The weight of each term."""
        import numpy as np

        return np.array([term.weight for term in self.terms], np.float32)

    @cached_property
    def concepts(self) -> np.ndarray[Any, np.dtype[np.bool_]]:
        """Whether each term is a concept."""
        import numpy as np

        return np.array([term.is_concept for term in self.terms], bool)

    @cached_property
    def reach(self) -> Touches:
        """How strongly each word of our ideas touches each term: a row for each term."""
        import numpy as np

        return np.array([term.reach for term in self.terms], np.float32).reshape(len(self.terms), -1)

    def word(self, word: str) -> Touches:
        """How strongly a word touches each term."""
        import numpy as np

        if is_known(word):
            return np.asarray(self.reach[:, places()[word]])
        return np.array([1.0 if word == term.word else _tie(term.word, word) for term in self.terms], np.float32)

    def meanings(self, keys: Places, weights: Touches, starts: Places) -> Touches:
        """How strongly meanings touch each term, a row for each meaning: as its best key does, less where the rest of
        the meaning has nothing to do with the brief. `keys` are places of words one meaning after the other, `weights`
        theirs in [0, 1], `starts` says where each meaning starts; none is empty."""
        import numpy as np

        rows, best = [], np.zeros(len(keys), np.float32)
        for term in self.terms:  # one by one: a brief of a thousand concepts would fill the memory
            touch = term.reach[keys]
            np.maximum(best, touch * np.float32(term.weight), out=best)
            rows.append(np.maximum.reduceat(touch * weights, starts))
        spread = np.add.reduceat(best * weights, starts) / np.add.reduceat(weights, starts)
        share = _SPREAD_LEAST + (1 - _SPREAD_LEAST) * np.minimum(1.0, spread / _SPREAD_FULL)
        return np.asarray((np.array(rows) * share).T, np.float32)

    def meaning(self, keys: Iterable[tuple[str, float]]) -> Touches:
        """How strongly one meaning touches each term; `keys` come with their weights in [0, 1]."""
        import numpy as np

        known = [(places()[key], weight) for key, weight in keys if key in places()]
        if not known:
            return np.zeros(len(self.terms), np.float32)
        at, weights = zip(*known, strict=True)
        return np.asarray(self.meanings(np.array(at), np.array(weights, np.float32), np.array([0]))[0])

    def relevance(self, touches: Touches) -> float:
        """How relevant to the brief as a whole, in [0, 1]: one concept fully touched gives half, two 0.8."""
        return float(self.relevances(touches[None, :])[0])

    def relevances(self, touches: Touches) -> Touches:
        """`relevance` of each row."""
        import numpy as np

        found = touches * self.weights
        most = min(len(_STEPS), found.shape[1])
        best = -np.sort(np.partition(-found, most - 1, axis=1)[:, :most], axis=1) if most else found
        return np.asarray(best @ np.array(_STEPS[:most], np.float32) / sum(_STEPS[:4]), np.float32).clip(0.0, 1.0)

    def best(self, touches: Touches) -> int:
        """The place of the term that is touched most, by weight."""
        return int((touches * self.weights).argmax())

    def strongest(self, touches: Touches) -> float:
        """The strongest touch, by the weight of its term."""
        return float((touches * self.weights).max(initial=0.0))


def weigh_down(word: str) -> float:
    """How much a word of a text says, in [0, 1]: common words say little."""
    return max(0.25, min(1.0, (6.6 - zipf(word)) / 2.6))


def _goods_words(brief: Brief) -> dict[str, float]:
    """The words of the goods that say something, each with its weight: more for the nouns that name the goods, before
    the first word that says of what or for what they are; less for what is no noun."""
    found: dict[str, float] = {}
    for text in (brief.goods, brief.product):
        names = True
        for token in fold(text).replace("-", " ").split():
            word = token.strip(".,:;()'")
            if found and (word in _MADE_OF or word in _MADE_FOR):
                names = False
            plain = len(word) > 2 and word.isalpha() and word.isascii() and word not in _VAGUE
            if plain and "function word" not in kinds(word):
                bases = lexicon().bases_by_pos(word)
                noun = "n" in bases or not bases
                weight = NAMED if names else _GOODS_WEIGHT * weigh_down(word)
                found.setdefault(word, weight * (1.0 if noun else 0.5))
            names = names and not token.endswith((",", ":", ";"))
    return found


def _sensed(concept: Concept, word: str) -> Touches:
    """What a concept brings to mind; where a meaning is chosen, what belongs with that meaning as well counts whole,
    the rest little."""
    import numpy as np

    own = _reach(word)
    guides = guide_words(concept)
    if not guides:
        return own
    meant = np.max([_reach(guide) for guide in guides], axis=0)
    here = places().get(word)
    if here is not None:  # the word itself in a meaning does not say in which of its senses it stands there
        meant[here] = 0.0
    found = own * np.where(meant > 0, 1.0, _OFF_SENSE)
    return np.asarray(np.maximum(found, meant * np.where(own > 0, 0.9, 0.7)), np.float32)


@lru_cache(maxsize=1 << 14)
def _tie(term: str, word: str) -> float:
    """How strongly a word that is not among our ideas belongs with a term."""
    value = association(term, word) or 0.0
    return (_OTHER * value**_SHARPER if value >= _FAINT else 0.0) * (_RIVAL if are_rivals(term, word) else 1.0)


@lru_cache(maxsize=128)
def _reach(term: str) -> Touches:
    """How strongly each word of our ideas belongs with a word, itself and its base forms wholly. Do not change it."""
    import numpy as np

    value = associations(term)
    found = np.where(value >= _FAINT, _OTHER * value**_SHARPER, 0.0)
    found[rivals(term)] *= _RIVAL
    found[synonyms(term)] = _SYNONYM
    found[[places()[form] for form in (term, *lexicon().bases(term)) if form in places()]] = 1.0
    return np.asarray(found, np.float32)
