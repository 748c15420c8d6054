"""Everything computed about one name before it is compared: done once a name, kept for every pair."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import lru_cache
from itertools import chain, islice, product
from typing import NamedTuple

from ..lexicon import kinds
from ..text import Name, parse, spoken_forms
from .kept import kept_name
from .sound import phoneme_codes_of, spoken_phoneme_codes
from .vocabulary import is_known, meant, segmentations
from .weights import Weight, word_weight

__all__ = ["Features", "Word", "digits_read", "features", "goods_words", "segmentations_of"]

SEGMENTATIONS = 3
"""The most segmentations of a name that are compared."""


class Word(NamedTuple):
    """One word of a name: its folded letters, the phoneme codes of its readings, and its weight."""

    letters: str
    phoneme_codes: tuple[str, ...]
    weight: Weight


class Features(NamedTuple):
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
    kept = kept_name(name.words)
    ways = segmentations_of(name.words, segmentations) if kept is None else kept.divisions
    divided = tuple(
        tuple(Word(word, phoneme_codes_of(word), word_weight(word, goods)) for word in words) for words in ways if words
    )
    return Features(name, divided, name.letters, _codes_of(name) if kept is None else kept.codes)


def _codes_of(name: Name) -> tuple[str, ...]:
    """The phoneme codes of a whole name."""
    return phoneme_codes_of(name.words[0]) if len(name.words) == 1 else spoken_phoneme_codes(name.spoken)


def segmentations_of(
    words: tuple[str, ...], of_word: Callable[[str], tuple[tuple[str, ...], ...]]
) -> tuple[tuple[str, ...], ...]:
    """The segmentations of a name with these words, those `of_word` of each in turn and the words that its digits
    stand for: the written one first, at most `SEGMENTATIONS`."""
    choices = product(*map(of_word, words))
    written = (tuple(chain.from_iterable(choice)) for choice in choices)
    in_turn = chain(islice(written, 1), digits_read(words), written)
    return tuple(filter(None, dict.fromkeys(islice(in_turn, SEGMENTATIONS))))


def digits_read(words: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    """The words that a name with digits stands for: 22 is twenty two, gr8 great, 4tified fortified."""
    if any(map(str.isdecimal, words)):
        for said in spoken_forms(words):
            joined = "".join(said)
            if is_known(joined):
                yield (joined,)
            elif all(is_known(meant(word)) for word in said):
                yield tuple(map(meant, said))


@lru_cache(maxsize=1 << 12)
def goods_words(*stated: str | None) -> tuple[str, ...]:
    """The content words that describe the goods, from every statement of them."""
    words = (word for goods in stated if goods for word in parse(goods).words)
    return tuple(dict.fromkeys(word for word in words if len(word) > 2 and "function word" not in kinds(word)))
