"""The weight of each word of a name.

Rare and invented words count most. Articles, company forms, words for the kind of business, praise, places, and
words that describe the goods count little (TMEP 1207.01(b)(viii); 1209.03): that judgement is `goods.weakness`.
"""

from __future__ import annotations

from ..goods import weakness
from ..lexicon import zipf
from ..processes import shared_cache
from .vocabulary import base_forms, meant

__all__ = ["LEAST", "word_weight"]

LEAST = 0.03
"""The weight of a word that says nothing (the, and, inc); above 0, so that a name of such words has a weight."""

RAREST, COMMONEST = 1.5, 7.0
"""Zipf values between which rarity falls from 1 to 0: a word that occurs less than once in thirty million words counts
as invented; articles have about seven."""


@shared_cache(1 << 17)
def word_weight(word: str, goods_words: tuple[str, ...] = ()) -> float:
    """How much the folded `word` counts in a name for goods described by `goods_words`: in [`LEAST`, 1].

    Its rarity times what it says about the maker rather than the goods.
    """
    word = meant(word)
    common = max(map(zipf, (word, *base_forms(word))))  # wipes is as common a word as wipe
    rarity = 1.0 - min(1.0, max(0.0, (common - RAREST) / (COMMONEST - RAREST)))
    weight = rarity * (1.0 - weakness(word, goods_words))
    return max(LEAST, weight)
