"""What a word of other languages may be, found out quickly where very many are asked about: most words of a register
are of no language, and need not be looked up in each.

The answers may name a language too many, never one too few, so that what follows from them is the same with and
without. Without the compiled code, or before `expect_many`, every language is named.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from functools import cache, lru_cache
from itertools import count, product

from ..native import choose
from ..native.foreign import LONGEST_CHANGE, Change, Ending, compiled_may_be
from ..tables import open_table
from .foreign_forms import (
    BITS,
    CHANGES,
    COMPOUNDING,
    DIMINUTIVES,
    LANGUAGES_OF_ENDING,
    SHORTEST,
    VOWELS,
    bits_of,
)

__all__ = ["SHORTEST_COGNATE", "compound_in", "expect_many", "guessed_in", "listed_in"]

SHORTEST_COGNATE = 5
SHORTEST_PART, SHORTEST_COMPOUND, LONGEST_COMPOUND = 3, 7, 40
"""Letters of a part, and of a word that is taken apart. Longer words are no word of any language, and cost the most."""
_TABLES = ("foreign_words.tsv", "foreign_parts.tsv", "international_words.tsv")
_EVERYTHING = -1
_MANY = len(BITS)
_FIRST = len(COMPOUNDING)  # the languages with compounds are the first
_TOKEN = re.compile(r"\[[a-z]+\]|\(\?:|\{1,2\}|\\\d|.")
_TIMES = {"?": (0, 1), "{1,2}": (1, 2), "+": tuple(range(1, LONGEST_CHANGE + 1))}

Way = tuple[tuple[str, int], ...]
"""A sequence of letters, each as those that may stand there, with the number of the group that it belongs to."""


def compound_in(word: str) -> int:
    """The languages (`foreign_forms.BITS`) in which the folded `word` may be a compound."""
    return _may_be(word) & (1 << _FIRST) - 1


def listed_in(word: str) -> int:
    """The languages in which `word`, or a word with its stem, may be in the table."""
    return _may_be(word) >> _FIRST & (1 << _MANY) - 1


def guessed_in(word: str) -> bool:
    """Whether `word` may be an English word in the spelling of another language, or a diminutive."""
    return bool(_may_be(word) >> _FIRST + _MANY)


def expect_many() -> None:
    """Make ready for many words: it takes a tenth of a second, and processes forked later share it."""
    global _ask
    _ask = _index()
    _may_be.cache_clear()
    if _ask is _everything:
        for name in _TABLES:
            open_table(name).preload()


def _everything(word: str) -> int:
    return _EVERYTHING


_ask: Callable[[str], int] = _everything


@lru_cache(maxsize=1 << 12)
def _may_be(word: str) -> int:
    return _ask(word)


@cache
def _index() -> Callable[[str], int]:
    return choose(
        lambda library: compiled_may_be(
            library,
            [open_table(name).lines() for name in _TABLES],
            list(BITS),
            _endings(),
            _small(),
            sorted(_changes(), key=lambda pair: pair[0]),
            dutch=BITS["nl"],
            compounding=bits_of(COMPOUNDING),
            shortest=SHORTEST,
            shortest_part=SHORTEST_PART,
            shortest_compound=SHORTEST_COMPOUND,
            longest_compound=LONGEST_COMPOUND,
            shortest_cognate=SHORTEST_COGNATE,
            vowels="".join(filter(str.isascii, VOWELS)),
        ),
        lambda: _everything,
    )


def _endings() -> list[Ending]:
    listed = ((text.encode(), languages) for text, languages in LANGUAGES_OF_ENDING.items() if text.isascii())
    return [Ending(languages, len(text), text) for text, languages in listed]


def _small() -> list[Ending]:
    texts = {code: {text for way in _ways(ending) for text in _texts(way)} for code, (ending, _) in DIMINUTIVES.items()}
    return [
        Ending(BITS[code], len(text), text.encode())
        for code, endings in texts.items()
        for text in sorted(endings)
        if not any(text != other and text.endswith(other) for other in endings)
    ]


def _texts(way: Way) -> Iterator[str]:
    return map("".join, product(*(letters for letters, _ in way)))


def _changes() -> Iterator[tuple[str, Change]]:
    """Every change of a form's end that `CHANGES` describe, by its last letter."""
    for code, changes in CHANGES.items():
        for pattern, new in changes:
            for way in _ways(pattern):
                if len(way) <= LONGEST_CHANGE:
                    *before, (lasts, group) = way
                    yield from ((last, _change(code, (*before, (last, group)), new)) for last in lasts)


def _change(code: str, way: Way, new: str) -> Change:
    change = Change(BITS[code], length=len(way))
    for at, (letters, _) in enumerate(way):
        change.letters[at] = sum(1 << ord(letter) - ord("a") for letter in set(letters))
    made: list[int] = []
    for token in _TOKEN.findall(new):
        if token[0] == "\\":
            made += [-1 - at for at, (_, group) in enumerate(way) if group == int(token[1:])]
        else:
            made.append(ord(token))
    for at, one in enumerate(made):
        change.made[at] = one
    change.size = len(made)
    return change


def _ways(pattern: str) -> list[Way]:
    """All sequences of letters that a pattern of `CHANGES` matches at the end of a form."""
    tokens, groups = iter(_TOKEN.findall(pattern)), count(1)

    def either(group: int) -> list[Way]:
        found: list[Way] = []
        before: list[Way] = [()]
        now: list[Way] = [()]
        one: list[Way] = []
        for token in tokens:
            if token == ")":
                break
            if token == "|":
                found += now
                now = [()]
            elif token in _TIMES:
                several = [sum(way, ()) for times in _TIMES[token] for way in product(one, repeat=times)]
                now = [way + more for way in before for more in several]
            elif token != "$":
                if token in ("(", "(?:"):
                    one = either(next(groups) if token == "(" else group)
                else:
                    one = [((token.strip("[]"), group),)]
                before, now = now, [way + more for way in now for more in one]
        return found + now

    return either(0)
