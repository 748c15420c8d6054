"""Phonotactic probability: how natural a sequence of sounds is in English.

A step's surprise is how much less likely a phone is after the two before it than anywhere: log2 of its probability
at large over its probability there, in bits, learned from common dictionary words (wordlists/build/phonotactics.py).
A phone that is merely rare thus costs nothing, a sequence that English avoids does. Phonotactic probability of this
kind predicts how speakers judge invented words (M. Vitevitch and P. Luce, "Phonotactics, neighborhood activation,
and lexical access for spoken words", 1999); a word is compared with words of its own length, since short ones have few
steps.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Mapping, Sequence
from functools import cache

from ..tables import open_table
from .phones import VOWEL_LETTERS, code_of
from .pronouncing import pronounce

__all__ = ["EDGE", "LONGEST", "PERCENTILES", "SHORTEST", "length_class", "pronounceability", "surprise_from"]

EDGE = "#"
"""The symbol before and after a word."""
PERCENTILES = "percentiles"
"""Begins the keys of the rows that hold, for each length in phones, the hundred steps from the least surprising word
to the most."""
SHORTEST, LONGEST = 2, 10
"""The shortest and longest lengths with their own scale; other words use the nearest."""
_WORST_SHARE = 0.3
"""How much the single most surprising step counts beside the mean: one impossible cluster spoils a word. Ours."""
_TOLERATED, _HALVED_BY = 3.0, 4.0
"""Bits of surprise in one step that any legal sequence may have, and bits beyond them that halve the score. Set by
the classic made-up words: blick and bwick stay legal, thlep does not quite, bnick not at all (N. Chomsky and M. Halle,
"Some controversial questions in phonological theory", 1965, for brick, blick and bnick). Ours."""


def _steps(costs: Mapping[str, Mapping[str, float]], code: str) -> list[float]:
    padded = EDGE * 2 + code + EDGE
    steps = []
    for at in range(2, len(padded)):
        context = padded[at - 2 : at]
        row = costs.get(context) or costs.get(context[1:]) or costs[""]
        steps.append(row[padded[at]] - costs[""][padded[at]])
    return steps


def surprise_from(costs: Mapping[str, Mapping[str, float]], code: str) -> float:
    """The surprise of a code under these costs, in bits a phone: the mean over its steps, and the worst of them."""
    steps = _steps(costs, code)
    return (1 - _WORST_SHARE) * sum(steps) / len(steps) + _WORST_SHARE * max(steps)


def length_class(code: str) -> int:
    """The length in phones of the words that a code is compared with."""
    return max(SHORTEST, min(LONGEST, len(code)))


@cache
def _costs() -> dict[str, dict[str, float]]:
    return {
        context: {item[0]: int(item[1:]) / 100 for item in value.split(" ")}
        for context, value in open_table("phonotactics.tsv").items()
        if not context.startswith(PERCENTILES)
    }


@cache
def _percentiles(length: int) -> tuple[float, ...]:
    return tuple(map(float, (open_table("phonotactics.tsv").get(f"{PERCENTILES} {length}") or "").split(" ")))


def pronounceability(what: str | Sequence[str]) -> float:
    """How easily a word (or a reading, as ARPAbet phones) is said in English, in [0, 1].

    1 as natural as the most natural words; sequences that English allows lie between 0.5 and 1, by the share of
    common words of the same length that are more surprising; one that English avoids pulls the score towards 0.
    Without a vowel, 0. A word is taken in its likeliest reading.
    """
    if isinstance(what, str):
        readings = pronounce(what, 1)
        what = readings[0].phones if readings else ()
    code = code_of(what)
    if not any(letter in VOWEL_LETTERS for letter in code):
        return 0.0
    costs = _costs()
    beyond = sum(max(0.0, step - _TOLERATED) for step in _steps(costs, code))
    return float(2 ** (-beyond / _HALVED_BY)) * (1 + _naturalness(code)) / 2


def _naturalness(code: str) -> float:
    """The share of common words of the same length that are more surprising."""
    value, steps = surprise_from(_costs(), code), _percentiles(length_class(code))
    at = bisect_left(steps, value)
    if at in (0, len(steps)):
        return 1.0 if at == 0 else 0.0
    below, above = steps[at - 1], steps[at]
    return 1.0 - (at - 1 + (value - below) / (above - below)) / (len(steps) - 1)
