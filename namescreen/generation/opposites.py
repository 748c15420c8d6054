"""Which existing words speak against a concept of a brief: a bugle call for a slow morning, a prickle for a soft one.

What is the opposite of a quality is a list of ours (wordlists/curated/naming_opposites.txt).
"""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING

from ..lexicon import lexicon
from ..tables import open_table
from .brief_terms import BriefTerms
from .purpose import NAMED
from .ties import Lists, facets_of_words, keys_of_meanings, known_words
from .vocabulary import places

if TYPE_CHECKING:
    from .brief_terms import Associations

__all__ = ["against", "opposites"]

_LATER_FACET = 0.95
"""The weight of a facet from which it says what a word is about, as the first four do; later ones go without saying."""


@cache
def opposites(word: str) -> frozenset[str]:
    """The words for the opposite of a concept; none for most."""
    rows = map(open_table("naming_opposites.tsv").get, (word, *lexicon().bases(word)))
    return frozenset(" ".join(filter(None, rows)).split())


def against(brief_terms: BriefTerms, ties: Associations) -> Associations:
    """How much each existing word speaks against a concept, 0 to 1: by its meaning and by what it is most apt for.
    Less where it is tied to that concept too, or to what the goods deal with: a shower of
    rain suits a rain cape that keeps one dry. `ties` are those of the words with each term."""
    import numpy as np

    found = np.zeros(len(known_words()), np.float32)
    said = {form for term in brief_terms.terms for form in (term.word, *lexicon().bases(term.word))}
    for place, term in enumerate(brief_terms.terms):
        contrary = opposites(term.word) - said if term.is_concept else frozenset()
        if contrary:
            foremost = ((_about(contrary, facets_of_words()) - _LATER_FACET) / (1 - _LATER_FACET)).clip(0.0)
            strength = np.maximum(_about(contrary, keys_of_meanings()), foremost)
            np.maximum(found, strength * (1 - ties[:, place]), out=found)
    dealt_with = ties[:, brief_terms.weights >= NAMED] * ~brief_terms.concepts[brief_terms.weights >= NAMED]
    return np.asarray(found * (1 - dealt_with.max(axis=1, initial=0.0)), np.float32)


def _about(words: frozenset[str], lists: Lists) -> Associations:
    """How much of each existing word's list is one of these words: the weight of the first of them."""
    import numpy as np

    meant = np.zeros(len(places()), np.float32)
    meant[[places()[word] for word in words if word in places()]] = 1.0
    found = np.zeros(len(known_words()), np.float32)
    if len(lists.owners):
        found[lists.owners] = np.maximum.reduceat(meant[lists.places] * lists.weights, lists.starts)
    return found
