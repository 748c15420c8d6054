"""Kinds of name that the law treats apart from their place on the continuum: surnames, places, letters, praise,
misspellings, coarse words."""

from __future__ import annotations

from ..lexicon import kinds, lexicon
from .composition import is_surname_alone
from .description import EvidenceKind
from .judged import Judged, is_acronym
from .places import place_of

__all__ = ["is_praise", "kinds_of_name"]

COARSE = frozenset(("obscenity", "vulgarism", "ethnic slur", "disparagement", "dirty word", "profanity"))
"""WordNet's labels of usage that make a word coarse."""


def kinds_of_name(
    plain: tuple[Judged, ...], judged: tuple[Judged, ...], *, slogan: bool = False
) -> tuple[str, ...]:
    """Kinds of name that the law treats apart, as it stands, and for praise as translated; a `slogan` is praise."""
    words = [one.word for one in plain]
    asked = {
        "surname": is_surname_alone(plain),
        "place": any(place is not None for place in map(place_of, words)),
        "acronym": any(map(is_acronym, words)),
        "laudatory": slogan
        or any(map(is_praise, judged)),
        "misspelling": any(one.evidence.kind is EvidenceKind.HEARD for one in plain),
        "coarse": any(map(_is_coarse, words)),
    }
    return tuple(kind for kind, is_so in asked.items() if is_so)


def is_praise(one: Judged) -> bool:
    """Whether a word is praise, in English or by what it means."""
    return "laudatory" in kinds(one.meaning.english if one.meaning else one.word)


def _is_coarse(word: str) -> bool:
    """Whether WordNet labels the commonest sense of `word` as coarse."""
    senses = lexicon().senses(word, labelled=False)
    labels = [
        {
            label
            for one in lexicon().relations(sense)
            if one.kind == "usage"
            for label in lexicon().entry(one.sense_id).words
        }
        for sense in senses
    ]
    return any(labels) and bool(max(zip(senses, labels, strict=True), key=lambda pair: pair[0].count)[1] & COARSE)
