"""The place of a name on the continuum, from the evidence: a multinomial logistic model (softmax) with five categories.

Fitted by wordlists/build/distinctiveness_weights.py on names that tribunals, textbooks and we have placed; how well it
did on names left out is in wordlists/SOURCES.md."""

from __future__ import annotations

import math
from collections.abc import Mapping
from functools import cache

from ..tables import open_table

__all__ = ["CATEGORIES", "PLACES", "chances", "inherent", "score"]

CATEGORIES = ("generic", "descriptive", "suggestive", "arbitrary", "fanciful")
"""The continuum from the least to the most distinctive (Abercrombie & Fitch v. Hunting World, 2d Cir.
1976)."""
PLACES = (0.0, 0.1, 0.7, 0.9, 1.0)
"""Where each category stands between 0 and 1, with a wide gap at the line between registrable and not. Ours, not
fitted."""


@cache
def _weights() -> dict[str, tuple[float, ...]]:
    rows = open_table("distinctiveness_weights.tsv").items()
    return {name: tuple(map(float, row.split())) for name, row in rows}


def chances(values: Mapping[str, float], weights: Mapping[str, tuple[float, ...]] | None = None) -> tuple[float, ...]:
    """How likely each of `CATEGORIES` is, by what was asked of the name (`evidence.values`); they add up to 1."""
    rows = _weights() if weights is None else weights
    sums = list(rows["always"])
    for name, value in values.items():
        if value:
            for at, weight in enumerate(rows[name]):
                sums[at] += weight * value
    most = max(sums)
    odds = [math.exp(one - most) for one in sums]
    return tuple(odd / sum(odds) for odd in odds)


def inherent(chances: tuple[float, ...]) -> float:
    """The likelihood that a name is inherently distinctive: suggestive, arbitrary or fanciful (registrable without
    proof that buyers have learnt it, TMEP 1209.01); 0 to 1."""
    return sum(chances[2:])


def score(chances: tuple[float, ...]) -> float:
    """The place on the continuum that is to be expected, 0 (generic) to 1 (fanciful)."""
    return sum(place * chance for place, chance in zip(PLACES, chances, strict=True))
