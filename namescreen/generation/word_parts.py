"""Parts of the ranking that follow from the words of a name, or from how they are tied to a brief: each in [0, 1].

`ranking.PARTS` says what each means."""

from __future__ import annotations

import heapq
from functools import lru_cache
from math import log1p
from typing import TYPE_CHECKING

from ..lexicon import association
from .short_lists import lists_held
from .vocabulary import word

if TYPE_CHECKING:
    from collections.abc import Iterable

    from .brief_terms import Associations, BriefTerms

__all__ = [
    "apart",
    "company",
    "familiar",
    "foremost",
    "fresh",
    "known",
    "living",
    "mean",
    "picture",
    "pleasant",
    "special",
    "true",
    "untraded",
]

_ALONE, _LOOSELY = 0.5, 0.35  # factor for an association that stands alone; a second one that is enough
_COMMON, _FAMILIAR, _OBSCURE, _UNKNOWN = 3.8, 2.4, 1.5, 0.6
"""Zipf frequencies beyond which a word is too common for a good name, between which it is as well known as the best
rated ones, and what a word that nobody knows is still worth (read from ratings, see wordlists/build/name_ranker.py)."""
_LATER, _ONE_OF_SEVERAL, _OF_GOODS = 0.5, 0.5, 0.4
_TRADED = {"noun.artifact": 0.5, "noun.food": 0.0}
_OFTEN = 29  # further short lists that hold a word which is special to no subject
_HARDLY, _EVERYDAY = 2.0, 5.0  # Zipf frequencies of a word that is hardly known, and of an everyday one


def foremost(brief_terms: BriefTerms) -> Associations:
    """How much each term of a brief is what it speaks of first, in [0, 1]: 1 = its first concept, alone; those that
    follow count less, a word of a concept of several words half, a word of the goods as little as a late concept."""
    import numpy as np

    several = {place for phrase in brief_terms.phrases for place in phrase}
    firsts = {place: phrase[0] for phrase in brief_terms.phrases for place in phrase}
    found, met = [], []
    for place, term in enumerate(brief_terms.terms):
        concept = firsts.get(place, place)
        if term.is_concept and concept not in met:
            met.append(concept)
        worth = 1 / (1 + _LATER * met.index(concept)) if term.is_concept else _OF_GOODS
        found.append(worth * (_ONE_OF_SEVERAL if place in several else 1.0))
    return np.array(found, np.float32)


def apart(one: Associations, other: Associations) -> float:
    """1 if two words are associated with different terms, 0 if the other shares all associations of the weaker one."""
    weaker = min(float(one.max()), float(other.max()))
    return 1 - float(one.clip(max=other).max()) / weaker if weaker else 0.0


@lru_cache(maxsize=1 << 14)
def living(text: str) -> bool:
    """Whether it is a creature or plant, by WordNet's domain of its leading sense."""
    return word(text.split()[-1]).domain in ("noun.animal", "noun.plant")


@lru_cache(maxsize=1 << 14)
def known(text: str) -> float:
    """As well known as it should be; the commonest of its words counts, as if less common if it is a fixed term."""
    parts = text.split()
    common = min(word(part).zipf for part in parts) - (len(parts) > 1)
    too_common = min(1.0, max(0.0, (_COMMON - common) / (_COMMON - _FAMILIAR)))
    return too_common * (_UNKNOWN + (1 - _UNKNOWN) * min(1.0, max(0.0, common / _OBSCURE)))


@lru_cache(maxsize=1 << 14)
def untraded(text: str) -> float:
    """Whether its leading sense is neither an artefact nor a food, by WordNet's domain of it."""
    return _TRADED.get(word(text.split()[-1]).domain, 1.0)


def true(associations: Associations) -> float:
    """How surely a word stands for something in the brief: an association with a second term confirms the sense of the
    first (bath salt, table salt)."""
    if len(associations) == 1:
        return float(associations[0])
    second, first = heapq.nlargest(2, associations.tolist())[::-1]
    return float(first * (_ALONE + (1 - _ALONE) * min(1.0, second / _LOOSELY)))


def picture(text: str) -> float:
    """How concrete: as its head is."""
    return word(text.split()[-1]).picture


@lru_cache(maxsize=1 << 15)
def company(one: str, other: str) -> float:
    """How much two words have to do with each other."""
    return association(one, other) or 0.0


def pleasant(text: str) -> float:
    """How it feels: as the least pleasant of its words."""
    return min(word(part).pleasant for part in text.split())


def fresh(text: str) -> float:
    """How little worn it is: as the commonest of its words."""
    return max(word(part).fresh for part in text.split())


@lru_cache(maxsize=1 << 14)
def special(text: str) -> float:
    """For how few subjects short lists hold it."""
    return max(0.0, 1 - log1p(max(0, lists_held().get(text, 0) - 1)) / log1p(_OFTEN))


@lru_cache(maxsize=1 << 14)
def familiar(text: str) -> float:
    """How well known it is: as the least known of its words."""
    least = min(word(part).zipf for part in text.split())
    return max(0.0, min(1.0, (least - _HARDLY) / (_EVERYDAY - _HARDLY)))


def mean(values: Iterable[float]) -> float:
    """The mean of some values."""
    found = list(values)
    return float(sum(found) / len(found))
