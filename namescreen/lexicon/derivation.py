"""Words derived from one another by an English suffix: sun and sunny, bake and bakery, nature and natural.

WordNet joins some of them and not others; wordlists/build/derived_words.py finds them by spelling and association."""

from __future__ import annotations

from functools import lru_cache
from itertools import product

from ..tables import open_table
from .wordnet import lexicon

__all__ = ["derived_words", "is_derived", "nouns_of"]

_MADE_FROM = "<"


@lru_cache(maxsize=1 << 13)
def _listed(word: str) -> tuple[str, ...]:
    return tuple((open_table("derived_words.tsv").get(word) or "").split())


def derived_words(word: str) -> frozenset[str]:
    """The words of the lexicon that `word`, a base form, is derived from, that are derived from it, or that are derived
    from the same word; symmetric."""
    return frozenset(one.removeprefix(_MADE_FROM) for one in _listed(word))


def is_derived(one: str, other: str) -> bool:
    """Whether two words, or base forms of them where they are not in the lexicon, are `derived_words` of each other."""
    if one[:2] != other[:2]:
        return False
    return any(ours in derived_words(theirs) for ours, theirs in product(_forms(one), _forms(other)))


def _forms(word: str) -> tuple[str, ...]:
    return (word,) if lexicon().is_lemma(word) else lexicon().bases(word)


@lru_cache(maxsize=1 << 12)
def nouns_of(adjective: str) -> tuple[str, ...]:
    """The nouns that an English adjective is made from or pertains to (nocturnal: night; wooden: wood), where another
    language may well have the noun; empty for other words."""
    words = lexicon()
    if adjective not in words.bases_by_pos(adjective).get("a", ()):
        return ()
    relations = (one for sense in words.senses(adjective, "a", labelled=False) for one in words.relations(sense))
    pertains = [one.other.lower() for one in relations if one.kind == "pertains to" and one.word == adjective]
    bases = (one.removeprefix(_MADE_FROM) for one in _listed(adjective) if one.startswith(_MADE_FROM))
    return tuple(dict.fromkeys([*pertains, *(base for base in bases if "n" in words.bases_by_pos(base))]))
