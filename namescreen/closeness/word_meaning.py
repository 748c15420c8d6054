"""How close two words are in meaning: whether they share an idea, and whether they say the same."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from ..lexicon import association, lexicon, thesaurus_similarity
from ..lexicon.derivation import is_derived
from .appearance import Numbers, positive_part
from .kept import kept_meaning
from .vocabulary import RELATED, base_forms, has_senses, is_known, is_surname, meaning_similarity_of_words

__all__ = [
    "OPPOSITE", "RELATED", "SAME_NAME", "Meaning", "are_opposite", "combine_meaning", "meaning", "meanings",
    "say_the_same",
]  # fmt: skip

ASSOCIATED, LISTED = 0.5, 0.5
"""How far the most strongly associated words, and words in the same entries of a thesaurus, share an idea: words that
go together (salt, pepper) do and need not mean the same. Of the values tried, those that follow people's judgement of
similarity best (SimLex-999; 0.70)."""
SAID_ASSOCIATED, SAID_LISTED, UNSUPPORTED = 0.37, 0.28, 0.61
"""How far such words say the same, and the share that a relation of senses loses where two English words neither go
together nor stand in the same entries, because one is seldom meant so (crock: soot). Fitted on pairs of single words
that two readers rated (wordlists/build/closeness_word_likeness.py)."""
SAME_NAME = 0.9
"""The similarity from which two surnames are one name."""
OPPOSITE = 0.4
"""The highest closeness in meaning of opposites (hot, cold)."""


class Meaning(NamedTuple):
    """The closeness of two words in meaning, each in [0, 1], 1 = the same word: how far they share an `idea`, and how
    far they say the `same`, which is never more. Ideas make names alike in meaning; a word that says the same may stand
    for another."""

    idea: float
    same: float


def combine_meaning(related: Numbers, associated: Numbers, listed: Numbers) -> Numbers:
    """How far words share an idea, from relations of senses, association and a thesaurus, each in [0, 1], as
    independent grounds (noisy or)."""
    return 1 - (1 - related) * (1 - ASSOCIATED * associated) * (1 - LISTED * listed)


def say_the_same(related: Numbers, associated: Numbers, listed: Numbers, english: Numbers) -> Numbers:
    """How far words say the same, from the same grounds; `english`: 1 where both are English words, which a relation
    alone does not show to be meant in the senses that it joins, else 0."""
    unsupported = (1 - associated) * (1 - listed) * english
    return 1 - (1 - related * (1 - UNSUPPORTED * unsupported)) * (1 - SAID_ASSOCIATED * associated) * (
        1 - SAID_LISTED * listed
    )


@lru_cache(maxsize=1 << 17)
def meanings(one: str, other: str) -> Meaning | None:
    """The closeness of two words in meaning; symmetric. None if either is not known, and for two surnames, whose
    meanings do not relate unless they are one name (William, Guglielmo).

    It rests on the relations between their senses, in English or translated, on their association and on the entries of
    a thesaurus that they share; opposites only share an idea.
    """
    if one == other:
        return Meaning(1.0, 1.0)
    if (kept := kept_meaning(one, other)) is not None:
        found = Meaning(*kept)
        return found if found.idea == found.idea else None
    if not (has_senses(one) and has_senses(other)):
        return None
    related = meaning_similarity_of_words(one, other, RELATED) or 0.0
    if related < SAME_NAME and is_surname(one) and is_surname(other):
        return None
    english = bool(base_forms(one) and base_forms(other))
    if related < RELATED:
        if not english:
            return None  # a word that only another language knows need not be read as that
        related = 0.0
    grounds = related, association(one, other) or 0.0, positive_part(thesaurus_similarity(one, other) or 0.0)
    found = Meaning(combine_meaning(*grounds), say_the_same(*grounds, float(english)))
    if found.idea > OPPOSITE and are_opposite(one, other):
        return Meaning(min(found.idea, OPPOSITE), min(found.same, OPPOSITE))
    return found


def meaning(one: str, other: str) -> float | None:
    """How far two words share an idea, in [0, 1], as `meanings` has it; None where it has none."""
    found = meanings(one, other)
    return None if found is None else found.idea


def are_opposite(one: str, other: str) -> bool:
    """Whether two words are opposites (hot, cold; dawn, dusk). A word is none of its own, though one sense of it may be
    of another, nor one derived from it, though WordNet joins both to the same opposite (beauty, beautiful, ugly), nor a
    compound that it is part of (ebb, ebb tide)."""
    return (
        one != other
        and lexicon().are_opposite(one, other)
        and not is_derived(one, other)
        and not _is_compound_of(one, other)
        and not _is_compound_of(other, one)
    )


NEGATING = frozenset(("non", "anti", "less", "counter", "mis", "dis", "out", "under", "over"))
"""Parts that turn a word into its opposite."""


def _is_compound_of(word: str, part: str) -> bool:
    """Whether a closed word is another and a known word beside it."""
    rest = word.removeprefix(part) if word.startswith(part) else word.removesuffix(part)
    return len(part) > 2 and 2 < len(rest) < len(word) and rest not in NEGATING and is_known(rest)
