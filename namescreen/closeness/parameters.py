"""The few numbers on which overall closeness turns, each with its meaning.

Their values come from wordlists/closeness_parameters.tsv, chosen by cross-validation over decided cases by
wordlists/build/closeness_parameters.py; the table also holds how well they did on cases held out.
"""

from __future__ import annotations

from dataclasses import dataclass, fields
from functools import cache

from ..tables import open_table

__all__ = ["Parameters", "shipped_parameters"]


@dataclass(frozen=True, slots=True)
class Parameters:
    """One setting; the defaults are the reasoned starting point."""

    stronger_aspect: float = 0.8
    """Share of a word pair's likeness that comes from the stronger of look and sound, the rest from their mean:
    likeness in one aspect can be enough (TMEP 1207.01(b))."""
    meaning_share: float = 0.85
    """Likeness of two words that say the same in other words, as a share of being the same word."""
    different_meaning: float = 0.8
    """What is left of the likeness of two known words whose meanings have nothing in common (conceptual
    difference counteracts: EUIPO Guidelines, part C, section 2, chapter 4)."""
    fuller_side: float = 0.3
    """How far a mark taken over whole into a longer one counts: the weight of the better covered name, the rest
    falls to the worse covered one (TMEP 1207.01(b)(iii))."""
    first_word: float = 0.3
    """Share of the remaining gap closed when the first words that count are the same."""
    weak_element: float = 1.0
    """How much less a likeness counts that rests on weak words only: the exponent grows by this times the
    missing strength (TMEP 1207.01(b)(viii))."""
    enough_strength: float = 0.6
    """Weight of the shared words from which on nothing is taken off."""


@cache
def shipped_parameters() -> Parameters:
    """The values in use."""
    table = open_table("closeness_parameters.tsv")
    return Parameters(**{field.name: float(table.get(field.name) or "nan") for field in fields(Parameters)})
