"""Singular, plural and possessive: one word, as buyers and offices see it."""

from __future__ import annotations

from functools import lru_cache
from itertools import chain

__all__ = ["other_number"]

SHORTEST = 3
_HISSING = ("s", "x", "z", "ch", "sh")
_VOWELS = frozenset("aeiou")


@lru_cache(maxsize=1 << 15)
def other_number(word: str) -> frozenset[str]:
    """The folded words that are the English plural or possessive of the folded `word`, or whose it is, or that of the
    same one: of kite kites, of bakeries bakery and bakerys (bakery's), of zorvexes zorvex. By letters alone, so that
    invented words have one too."""
    singular = [one for one in (word[:-1], word[:-2], word[:-3] + "y") if word in _plurals(one)]
    return frozenset([*_plurals(word), *singular, *chain.from_iterable(map(_plurals, singular))]) - {word}


def _plurals(word: str) -> tuple[str, ...]:
    if len(word) < SHORTEST or not word.isascii() or not word.isalpha():
        return ()
    if word.endswith(_HISSING):
        return (word + "es",)
    if word[-1] == "y" and word[-2] not in _VOWELS:
        return word[:-1] + "ies", word + "s"  # families, and the possessive of a name: Henrys
    return (word + "s", word + "es") if word[-1] == "o" else (word + "s",)
