"""Whether buyers of a state where English is not spoken understand the English words of a name."""

from __future__ import annotations

from ..lexicon import frequency_languages, zipf
from ..territories import EU_MEMBERS, understood_in
from .grounds import languages_of
from .judged import Judged

__all__ = ["is_understood"]

EVERYDAY_ENGLISH, LOAN = 3.9, 2.8
"""Zipf values from which an English word is taken to be understood by those who learnt some English at school, and from
which a language uses it itself: ours; common practice, no source."""
ENGLISH_LEARNT, LEARNT_ENGLISH = frozenset(("DE", "AT")), 3.3
"""States of the Union where most buyers learnt English for years, though it is not taken for known there as in the
north, and the Zipf value from which they understand a word: ours; common practice, no source."""
LEAST_PART = 4
"""The fewest letters of a part by which a compound is understood."""


def is_understood(plain: tuple[Judged, ...], law: str) -> bool:
    """Whether buyers of a state read the English words of a name: all do where English is a language or widely known,
    elsewhere everyday words and those that their own texts use (T-435/07, New Look, on who knows English)."""
    if law not in EU_MEMBERS or understood_in(law, "en"):
        return True
    own = [one for one in languages_of((law,)) if one in frequency_languages()]
    least = LEARNT_ENGLISH if law in ENGLISH_LEARNT else EVERYDAY_ENGLISH

    def known(word: str) -> bool:
        return zipf(word) >= least or any(zipf(word, one) >= LOAN for one in own)

    def understood(word: str) -> bool:  # a compound by its parts: weatherproof
        cuts = range(LEAST_PART, len(word) - LEAST_PART + 1)
        return known(word) or any(known(word[:at]) and known(word[at:]) for at in cuts)

    return all(map(understood, (part for one in plain for part in (one.heard or one.word).split())))
