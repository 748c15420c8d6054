"""The weights of each word of a name.

Rare and invented words are strong. Articles, company forms, words for the kind of business, praise, places, and words
that describe the goods are weak (TMEP 1207.01(b)(viii); 1209.03): that judgement is `goods.weakness`. How much of a
name rests on each word beside the others is its dominance, fitted on what a blind reader took as telling the maker
(wordlists/build/word_dominance.py).
"""

from __future__ import annotations

import math
from functools import cache, lru_cache
from typing import NamedTuple

from ..goods.proper_names import is_surname
from ..goods.weakness import weakness, weakness_for_goods
from ..lexicon import kinds, zipf
from ..tables import open_table
from .kept import kept_word
from .vocabulary import base_forms, has_senses, meant

__all__ = [
    "DOMINANCE", "LEAST", "OwnWeight", "Weight", "evidence_of_dominance", "own_weight", "strength",
    "weight_for_goods", "word_weight",
]  # fmt: skip

LEAST = 0.03
"""The weight of a word that says nothing (the, and, inc); above 0, so that a name of such words has a weight."""

RAREST, COMMONEST = 1.5, 7.0
"""Zipf values between which frequency rises from 0 to 1, and rarity falls: a word that occurs less than once in thirty
million words counts as invented; articles have about seven."""
LONGEST = 10
"""Letters from which a word grows no more dominant with its length."""

OWN = ("frequency", "function word", "kind of business", "letters", "unknown", "surname", "two letters", "digits")
BY_GOODS = ("says little of the maker", "brings the goods to mind")
DOMINANCE = OWN + BY_GOODS
"""What the dominance of a word is judged by, each from 0 to 1: by itself, and by the goods."""


class Weight(NamedTuple):
    """What a word counts, both in [`LEAST`, 1]: its `strength` as a sign of the maker by itself, and its `dominance`
    beside the other words of a name."""

    strength: float
    dominance: float


class OwnWeight(NamedTuple):
    """What the weight of a word rests on whatever the goods are, so that a register can keep it: how common it is and
    how little it says of the maker (`goods.weakness`), both in [0, 1], and the log odds of its dominance by `OWN`."""

    frequency: float
    weakness: float
    odds: float


@lru_cache(maxsize=1 << 17)
def word_weight(word: str, goods_words: tuple[str, ...] = ()) -> Weight:
    """How much the folded `word` counts in a name for goods described by `goods_words`."""
    return weight_for_goods(own_weight(word), *_tied(meant(word), " ".join(goods_words)))


def weight_for_goods(own: OwnWeight, described: float = 0.0, associated: float = 0.0) -> Weight:
    """The weight of a word, from how plainly it describes the goods and how much it brings them to mind, in [0, 1]."""
    weak = weakness_for_goods(own.weakness, described)
    by_weakness, by_association = _dominance_weights(BY_GOODS)
    odds = own.odds + by_weakness * weak + by_association * associated
    return Weight(strength(own.frequency, weak), LEAST + (1 - LEAST) / (1 + math.exp(-odds)))


def strength(frequency: float, weak: float) -> float:
    """The strength of a word: its rarity times what it says about the maker rather than the goods."""
    return max(LEAST, (1.0 - frequency) * (1.0 - weak))


@lru_cache(maxsize=1 << 17)
def own_weight(word: str) -> OwnWeight:
    """What the weight of the folded `word` rests on whatever the goods are."""
    if (kept := kept_word(word)) is not None:
        return kept.weight
    evidence = _own_evidence(word)
    constant, *weights = _dominance_weights(("always", *OWN))
    odds = constant + sum(weight * value for weight, value in zip(weights, evidence, strict=True))
    return OwnWeight(evidence[0], weakness(meant(word)), odds)


def evidence_of_dominance(word: str, goods_words: tuple[str, ...] = ()) -> tuple[float, ...]:
    """The values of `DOMINANCE`."""
    described, associated = _tied(meant(word), " ".join(goods_words))
    return *_own_evidence(word), weakness_for_goods(weakness(meant(word)), described), associated


def _tied(word: str, goods: str) -> tuple[float, float]:
    """How plainly a word describes the goods, and how much it brings them to mind, both in [0, 1]."""
    if not goods:
        return 0.0, 0.0
    from ..goods.description import describe_in_conflict, most_associated, named_goods

    return describe_in_conflict(word, goods).weight, most_associated(word, named_goods(goods))


def _own_evidence(word: str) -> tuple[float, ...]:
    """The values of `OWN`."""
    word = meant(word)
    of_word = kinds(word)
    common = max(map(zipf, (word, *base_forms(word))))  # wipes is as common a word as wipe
    frequency = min(1.0, max(0.0, (common - RAREST) / (COMMONEST - RAREST)))
    return (
        frequency,
        float("function word" in of_word),
        float("generic head" in of_word),
        min(len(word), LONGEST) / LONGEST,
        float(not frequency and not has_senses(word)),
        float(is_surname(word)),
        float(len(word) == 2),
        float(word.isdecimal()),
    )


@cache
def _dominance_weights(of: tuple[str, ...]) -> tuple[float, ...]:
    table = dict(open_table("word_dominance.tsv").items())
    return tuple([float(table[name]) for name in of])
