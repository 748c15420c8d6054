"""The broader terms of a word's senses, and what they are part of: whatever goes up the lexicon for goods goes through
this module."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import lru_cache

from ..lexicon import lexicon

__all__ = ["ancestors", "is_part_of", "layers_above", "leading_senses", "names_above", "names_of", "senses_of_goods"]

NEVER_SOLD = frozenset(
    "land,body of water,location,geological formation,person,attribute,state,phenomenon,feeling,cognition,"
    "time period".split(",")
)
"""What WordNet calls the kinds of thing that are never goods; from memory."""
LOOKED_AT = 4
"""The leading senses among which one is looked for that may be goods."""


def leading_senses(word: str, most: int) -> list[tuple[str, float]]:
    """The leading noun senses of a word and how leading they are, (0, 1]."""
    strengths = lexicon().sense_strengths(word)
    nouns = [(sense_id, strength / 9) for sense_id, strength in strengths if sense_id[0] == "n"]
    return sorted(nouns, key=lambda pair: -pair[1])[:most]


@lru_cache(maxsize=1 << 13)
def senses_of_goods(word: str, most: int) -> tuple[tuple[str, float], ...]:
    """The leading senses of a word for goods: those of things that may be sold, if any is (a cape is no land)."""
    senses = leading_senses(word, LOOKED_AT)
    sold = [pair for pair in senses if NEVER_SOLD.isdisjoint(names_above(pair[0]))]
    return tuple((sold or senses)[:most])


def layers_above(senses: Iterable[str], *relations: str) -> Iterator[list[str]]:
    """These senses, then those one step above them, and so on; no sense again once its layer is passed. Up go the
    `relations` (WordNet's pointers), those to broader terms if none are given."""
    steps = relations or ("@", "@i")
    layer = [*senses]
    seen: set[str] = set()
    while layer:
        yield layer
        seen.update(layer)
        layer = [up for one in layer for up in lexicon().related_ids(one, *steps) if up not in seen]


@lru_cache(maxsize=1 << 14)
def ancestors(sense_id: str) -> frozenset[str]:
    """Every sense above this one, and itself."""
    return frozenset(one for layer in layers_above([sense_id]) for one in layer)


def names_of(senses: Iterable[str]) -> set[str]:
    """The words that name any of these senses, in small letters."""
    return {name.lower() for one in senses for name in lexicon().entry(one).words}


def names_above(sense_id: str) -> set[str]:
    """The words that name this sense or any above it, in small letters."""
    return names_of(ancestors(sense_id))


def is_part_of(word: str, wholes: Iterable[str]) -> bool:
    """Whether a leading sense of `word` is a part or the stuff of what one of the `wholes` names (clapper: bell)."""
    held = {sense for whole in wholes for sense, _ in leading_senses(whole, LOOKED_AT)}
    senses = (sense for sense, _ in leading_senses(word, LOOKED_AT))
    return any(not held.isdisjoint(lexicon().related_ids(sense, "#p", "#s", "#m")) for sense in senses)
