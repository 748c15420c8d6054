"""All that is worked out about one name before it meets another: done once a name, kept for every pair."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from itertools import product

from ..lexicon import kinds
from ..names import Name, parse
from .sound import codes_of, spoken_codes
from .vocabulary import divisions
from .weights import word_weight

__all__ = ["Features", "Word", "features", "goods_words"]

DIVISIONS = 3
"""How many divisions of a name into words are compared."""


@dataclass(frozen=True, slots=True)
class Word:
    """One word of a name: its folded letters, the sound codes of its readings, how much it counts."""

    letters: str
    codes: tuple[str, ...]
    weight: float


@dataclass(frozen=True, slots=True)
class Features:
    """A name ready to be compared.

    `divisions` are the ways to divide it into words, the written one first; `codes` the sounds of the whole.
    """

    name: Name
    divisions: tuple[tuple[Word, ...], ...]
    letters: str
    codes: tuple[str, ...]


@lru_cache(maxsize=1 << 15)
def features(text: str, goods: tuple[str, ...] = ()) -> Features:
    """The features of the name `text` for goods described by the words `goods` (see `goods_words`)."""
    name = parse(text)
    ways: dict[tuple[str, ...], None] = {}
    for choice in product(*(divisions(word) for word in name.words)):
        ways.setdefault(tuple(part for parts in choice for part in parts))
        if len(ways) >= DIVISIONS:
            break
    divided = tuple(
        tuple(Word(word, codes_of(word), word_weight(word, goods)) for word in words) for words in ways if words
    )
    codes = codes_of(name.words[0]) if len(name.words) == 1 else spoken_codes(name.spoken)
    return Features(name, divided, name.letters, codes)


@lru_cache(maxsize=1 << 12)
def goods_words(*stated: str | None) -> tuple[str, ...]:
    """The words that describe the goods, from every statement of them, without the words that say nothing."""
    words = (word for goods in stated if goods for word in parse(goods).words)
    return tuple(dict.fromkeys(word for word in words if len(word) > 2 and "function word" not in kinds(word)))
