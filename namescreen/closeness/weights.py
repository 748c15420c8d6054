"""How much each word of a name counts.

Rare and invented words count most; articles, company forms, words for the kind of business, praise, places, and
words that describe the goods count little (TMEP 1207.01(b)(viii); 1209.03).
"""

from __future__ import annotations

from functools import lru_cache

from ..lexicon import kinds, zipf
from .vocabulary import meaning_of_words

__all__ = ["LEAST", "word_weight"]

LEAST = 0.03
"""The weight of a word that says nothing (the, and, inc); above 0, so that a name of such words has a weight."""

RAREST, COMMONEST = 1.5, 7.0
"""Zipf values between which weight falls from 1 to `LEAST`: a word met less than once in thirty million words is
as good as invented; seven is where articles stand."""

FACTORS = {
    "function word": 0.0,
    "company form": 0.1,
    "domain ending": 0.1,
    "generic head": 0.35,
    "laudatory": 0.5,
    "quality": 0.5,
    "place": 0.6,
    "given name": 0.7,
}
"""What is left of a word's weight for each kind it belongs to, the smallest counting. Common practice, no source
for the sizes; the order is that of TMEP 1207.01(b)(viii) and 1209.03."""

DESCRIBES_GOODS, DESCRIBES_FROM = 0.5, 0.65
"""What is left where the word means the goods or something close to them, and from which closeness in meaning."""


@lru_cache(maxsize=1 << 17)
def word_weight(word: str, goods_words: tuple[str, ...] = ()) -> float:
    """How much the folded `word` counts in a name for goods described by `goods_words`: in [`LEAST`, 1]."""
    span = COMMONEST - RAREST
    weight = 1.0 - min(1.0, max(0.0, (zipf(word) - RAREST) / span))
    weight *= min((FACTORS[kind] for kind in kinds(word) if kind in FACTORS), default=1.0)
    if any((meaning_of_words(word, other) or 0.0) >= DESCRIBES_FROM for other in goods_words):
        weight *= DESCRIBES_GOODS
    return max(LEAST, weight)
