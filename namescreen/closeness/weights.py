"""The weights of each word of a name.

Rare and invented words are strong. Articles, company forms, words for the kind of business, praise, places, and words
that describe the goods are weak (TMEP 1207.01(b)(viii); 1209.03): that judgement is `goods.weakness`. How much of a
name rests on each word beside the others is its dominance, fitted on what a blind reader took as telling the maker
(wordlists/build/word_dominance.py).
"""

from __future__ import annotations

import math
from functools import cache
from typing import NamedTuple

from ..goods import weakness
from ..goods.description import describe_in_conflict, most_associated, named_goods
from ..goods.proper_names import is_surname
from ..lexicon import kinds, zipf
from ..tables import open_table
from ..team import shared_cache
from .vocabulary import base_forms, has_senses, meant

__all__ = ["DOMINANCE", "LEAST", "Weight", "evidence_of_dominance", "word_weight"]

LEAST = 0.03
"""The weight of a word that says nothing (the, and, inc); above 0, so that a name of such words has a weight."""

RAREST, COMMONEST = 1.5, 7.0
"""Zipf values between which frequency rises from 0 to 1, and rarity falls: a word that occurs less than once in thirty
million words counts as invented; articles have about seven."""
LONGEST = 10
"""Letters from which a word grows no more dominant with its length."""

DOMINANCE = ("frequency", "function word", "kind of business", "describes the goods", "brings the goods to mind",
             "letters", "unknown", "surname", "two letters")  # fmt: skip
"""What the dominance of a word is judged by, each from 0 to 1."""


class Weight(NamedTuple):
    """What a word counts, both in [`LEAST`, 1]: its `strength` as a sign of the maker by itself, and its `dominance`
    beside the other words of a name."""

    strength: float
    dominance: float


@shared_cache(1 << 17)
def word_weight(word: str, goods_words: tuple[str, ...] = ()) -> Weight:
    """How much the folded `word` counts in a name for goods described by `goods_words`.

    Its strength is its rarity times what it says about the maker rather than the goods.
    """
    evidence = evidence_of_dominance(word, goods_words)
    frequency, *_ = evidence
    strength = (1.0 - frequency) * (1.0 - weakness(meant(word), goods_words))
    weights, constant = _dominance_weights()
    odds = constant + sum(weight * value for weight, value in zip(weights, evidence, strict=True))
    return Weight(max(LEAST, strength), LEAST + (1 - LEAST) / (1 + math.exp(-odds)))


def evidence_of_dominance(word: str, goods_words: tuple[str, ...] = ()) -> tuple[float, ...]:
    """The values of `DOMINANCE`."""
    word = meant(word)
    goods, of_word = " ".join(goods_words), kinds(word)
    common = max(map(zipf, (word, *base_forms(word))))  # wipes is as common a word as wipe
    frequency = min(1.0, max(0.0, (common - RAREST) / (COMMONEST - RAREST)))
    return (
        frequency,
        float("function word" in of_word),
        float("generic head" in of_word),
        describe_in_conflict(word, goods).weight if goods else 0.0,
        most_associated(word, named_goods(goods)) if goods else 0.0,
        min(len(word), LONGEST) / LONGEST,
        float(not frequency and not has_senses(word)),
        float(is_surname(word)),
        float(len(word) == 2),
    )


@cache
def _dominance_weights() -> tuple[tuple[float, ...], float]:
    table = dict(open_table("word_dominance.tsv").items())
    return tuple([float(table[name]) for name in DOMINANCE]), float(table["always"])
