"""Whether buyers of a state where English is not spoken understand the English words of a name."""

from __future__ import annotations

from ..lexicon import frequency_languages, zipf
from ..territories import EU_MEMBERS, understood_in
from .grounds import languages_of
from .judged import Judged

__all__ = ["is_understood"]

KNOWN = 2.8
"""The Zipf value, in English or in a language of the state, from which an English word is taken to be understood:
labels in English are read in every state, and only seldom words are strange. Ours; common practice, no source; higher
values, also by how much English a state learns, agreed no better with 480 cases graded from memory by two authors."""
LEAST_PART = 4
"""The fewest letters of a part by which a compound is understood."""


def is_understood(plain: tuple[Judged, ...], law: str) -> bool:
    """Whether buyers of a state read the English words of a name: all do where English is a language or widely known,
    elsewhere words that are not seldom, or that their own texts use (T-435/07, New Look, on who knows English)."""
    if law not in EU_MEMBERS or understood_in(law, "en"):
        return True
    read = [one for one in languages_of((law,)) if one in frequency_languages()]  # English first

    def known(word: str) -> bool:
        return any(zipf(word, one) >= KNOWN for one in read)

    def understood(word: str) -> bool:  # a compound by its parts: weatherproof
        cuts = range(LEAST_PART, len(word) - LEAST_PART + 1)
        return known(word) or any(known(word[:at]) and known(word[at:]) for at in cuts)

    return all(map(understood, (part for one in plain for part in (one.heard or one.word).split())))
