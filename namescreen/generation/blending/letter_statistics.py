"""Letters in English: which words begin or end with them, and how usual their trigrams are."""

from __future__ import annotations

import math
from functools import cache, lru_cache

from ...lexicon.frequency import zipf
from ...tables import open_table

__all__ = [
    "doubt_of_beginning", "doubt_of_ending", "is_word", "surprise", "turn_of_beginning", "turn_of_ending", "weight",
]  # fmt: skip

_LONGEST = 7  # the longest beginning in the tables; a longer one is as good as the word itself
_UNSEEN = 2.0
"""log2 of the weight of a word in no list: a name, or one rarer than once in ten million words."""


def doubt_of_beginning(beginning: str, word: str) -> float:
    """Bits of doubt that `beginning` stands for `word`: 0 = it can only be this word, 10 = one in a thousand.

    The weight of all words so beginning against that of `word` itself (beginnings.tsv).
    """
    return 0.0 if beginning == word else _doubt("beginnings.tsv", beginning, word)


def doubt_of_ending(ending: str, word: str) -> float:
    """Bits of doubt that `ending` stands for `word`, as for a beginning (endings.tsv)."""
    return 0.0 if ending == word else _doubt("endings.tsv", ending[::-1], word)


def is_word(part: str) -> bool:
    """Whether a part of a word is by itself a word that everybody knows: three letters or more, and met more
    than three times in a million words (Zipf 3.5)."""
    return len(part) > 2 and zipf(part) >= 3.5


def turn_of_beginning(beginning: str, word: str) -> float:
    """Bits that the next letter of `word` would tell after `beginning`: high where a part of the word ends.

    Harris's successor variety (Language 31, 1955) with weights in the place of counts; at most 8.
    """
    return _turn("beginnings.tsv", beginning, word)


def turn_of_ending(ending: str, word: str) -> float:
    """Bits that the letter before `ending` in `word` would tell."""
    return _turn("endings.tsv", ending[::-1], word[::-1])


@lru_cache(maxsize=65536)
def _turn(table: str, part: str, word: str) -> float:
    stored = open_table(table).get(part)
    if stored is None or part == word:
        return 0.0
    longer = open_table(table).get(word[: len(part) + 1])
    following = int(longer) / 10 if longer is not None else _UNSEEN
    return min(8.0, max(0.0, int(stored) / 10 - following))


@lru_cache(maxsize=65536)
def _doubt(table: str, part: str, word: str) -> float:
    stored = open_table(table).get(part[:_LONGEST])
    return 0.0 if stored is None else max(0.0, int(stored) / 10 - weight(word))


@lru_cache(maxsize=4096)
def weight(word: str) -> float:
    """log2 of the square root of a word's occurrences per thousand million: how readily it comes to mind."""

    return max(_UNSEEN, zipf(word) / 2 * math.log2(10))


@cache
def _follow() -> dict[str, tuple[dict[str, int], int]]:
    table: dict[str, tuple[dict[str, int], int]] = {}
    for pair, row in open_table("trigrams.tsv").items():
        counts = {entry[0]: int(entry[1:]) for entry in row.split()}
        table[pair] = counts, sum(counts.values())
    return table


@lru_cache(maxsize=65536)
def _bits(pair: str, letter: str) -> float:
    counts, total = _follow().get(pair, ({}, 0))
    return -math.log2((counts.get(letter, 0) + 0.5) / (total + 14))  # half a word each: Jeffreys' prior, 28 letters


def surprise(letters: str) -> list[float]:
    """Bits of surprise at each letter of a word, and at its end, after the two before (trigrams.tsv)."""
    marked = f"^^{letters}$"
    return [_bits(marked[place - 2 : place], marked[place]) for place in range(2, len(marked))]
