"""Words that no dictionary holds: a misspelling of a describing word, parts run together, or truly coined?

A misspelling that sounds like a describing word is as descriptive as that word (TMEP 1209.03(j)); a compound or
blend of describing parts is, too, unless it makes something new of them (TMEP 1209.03(d)).
"""

from __future__ import annotations

from functools import lru_cache

import jellyfish

from ..lexicon import kinds, lexicon, zipf
from ..names import split_compound
from .context import context
from .description import NOTHING, Evidence, describe, is_trade_name

__all__ = ["divided", "is_coined", "understood"]

LEAST_PART = 4
_PRAISE_AND_QUALITY = ("quick", "light", "night", "fresh", "clean", "cream", "creamy", "cold", "cool", "easy", "super", "supreme",
                       "best", "crisp", "fast", "speedy", "right", "bright", "tasty", "true", "sure", "pure", "rich", "extra",
                       "express", "perfect", "premium", "natural", "permanent", "quality", "smart", "nice", "magic", "deluxe",
                       "instant", "mini", "max", "safe", "soft", "smooth", "sweet", "warm", "dry", "thin", "slim", "strong")  # fmt: skip


@lru_cache(maxsize=1 << 14)
def is_coined(word: str) -> bool:
    """Whether the folded `word` is in no word list as an ordinary word: not a lemma, place, name or common form."""
    if lexicon().known(word):
        return is_trade_name(word)
    return not kinds(word) - {"surname"}


@lru_cache(maxsize=1 << 13)
def understood(word: str, goods: str) -> tuple[Evidence, ...]:
    """What a reader may understand by the unknown `word`: evidence for each part, or nothing for a coined word."""
    heard = _heard_as(word, goods)
    if heard.weight:
        return (heard,)
    parts = divided(word)
    if len(parts) > 1:
        return tuple(describe(part, goods) for part in parts)
    return (_blended(word, goods),)


@lru_cache(maxsize=1 << 13)
def divided(word: str) -> tuple[str, ...]:
    """An unknown word as two ordinary words where it is made of them (gelcare: gel, care); short scraps are none."""
    if lexicon().known(word) or kinds(word) - {"surname"}:
        return (word,)
    return split_compound(word, lambda part: zipf(part) if lexicon().known(part) else 0.0)


@lru_cache(maxsize=256)
def _vicinity(goods: str) -> dict[str, float]:
    """Words that describe the goods, with their weight: what an unknown word might be a variant of."""
    near = {word: 0.7 for word in _PRAISE_AND_QUALITY}
    for word, found in context(goods).near.items():
        if found.weight >= 0.4 and " " not in word and len(word) >= 3:
            near[word] = max(found.weight, near.get(word, 0.0))
    return near


def _heard_as(word: str, goods: str) -> Evidence:
    """The describing word that `word` sounds like, if there is one."""
    code = jellyfish.metaphone(word)
    best = NOTHING
    for other, weight in _vicinity(goods).items():
        if (
            weight > best.weight
            and len(code) >= 2
            and jellyfish.metaphone(other) == code
            and jellyfish.jaro_winkler_similarity(word, other) >= 0.7
        ):
            best = Evidence(0.95 * weight, f'sounds like "{other}" (TMEP 1209.03(j))')
    return best


def _blended(word: str, goods: str) -> Evidence:
    """The share of the letters of `word` that a reader recognises as the start or end of describing words."""
    best = NOTHING
    for other, weight in _vicinity(goods).items():
        shared = _common_start(word, other)
        if shared < LEAST_PART or (shared < len(other) and shared < 0.6 * len(other)):
            continue
        score = weight * shared / len(word)
        if score > best.weight:
            best = Evidence(score, f'begins like "{other}"')
    return best


def _common_start(word: str, other: str) -> int:
    count = 0
    for one, two in zip(word, other, strict=False):
        if one != two:
            break
        count += 1
    return count
