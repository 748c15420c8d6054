"""Everything computed about one name before it is compared: done once a name, kept for every pair."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from itertools import product

from ..lexicon import kinds
from ..text import Name, parse
from .sound import phoneme_codes_of, spoken_phoneme_codes
from .vocabulary import segmentations
from .weights import word_weight

__all__ = ["Features", "Word", "features", "goods_words"]

SEGMENTATIONS = 3
"""The most segmentations of a name that are compared."""


@dataclass(frozen=True, slots=True)
class Word:
    """One word of a name: its folded letters, the phoneme codes of its readings, and its weight."""

    letters: str
    phoneme_codes: tuple[str, ...]
    weight: float


@dataclass(frozen=True, slots=True)
class Features:
    """A name ready to be compared.

    `segmentations` are the ways to read it as words, the written one first. `phoneme_codes` are the sounds of the
    whole name.
    """

    name: Name
    segmentations: tuple[tuple[Word, ...], ...]
    letters: str
    phoneme_codes: tuple[str, ...]


@lru_cache(maxsize=1 << 15)
def features(text: str, goods: tuple[str, ...] = ()) -> Features:
    """The features of the name `text` for goods described by the words `goods` (see `goods_words`)."""
    name = parse(text)
    ways: dict[tuple[str, ...], None] = {}
    for choice in product(*(segmentations(word) for word in name.words)):
        ways.setdefault(tuple(part for parts in choice for part in parts))
        if len(ways) >= SEGMENTATIONS:
            break
    divided = tuple(
        tuple(Word(word, phoneme_codes_of(word), word_weight(word, goods)) for word in words) for words in ways if words
    )
    phoneme_codes = phoneme_codes_of(name.words[0]) if len(name.words) == 1 else spoken_phoneme_codes(name.spoken)
    return Features(name, divided, name.letters, phoneme_codes)


@lru_cache(maxsize=1 << 12)
def goods_words(*stated: str | None) -> tuple[str, ...]:
    """The content words that describe the goods, from every statement of them."""
    words = (word for goods in stated if goods for word in parse(goods).words)
    return tuple(dict.fromkeys(word for word in words if len(word) > 2 and "function word" not in kinds(word)))
