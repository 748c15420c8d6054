"""Which names a line of a steered session means: numbers and ranges of the page, and names as people type them."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from typing import TypeVar

from namescreen.expressions import expression
from namescreen.text import fold

__all__ = ["name_key", "named_in"]

Name = TypeVar("Name")

_DIGITS = 5  # no page has numbers so long
_MOST_WORDS = 8  # of a name
_JOINS = ("and", "&", "+")
_RANGE = expression(r"(?<![^\s,])(\d+)\s*(?:[-\u2013]|\bto\b|\.\.+)\s*(\d+)(?![^\s,])", re.IGNORECASE)
_SIGNS = expression(r";|#(?=\d)")
_AND = expression(r"(?:^|\s+)(?:and|&|\+)\s+", re.IGNORECASE)


def name_key(text: str) -> str:
    """What two ways to type a name have in common: its letters and digits without case, accents and apostrophes, word
    by word; "&" is read as and."""
    plain = re.sub("['\u2018\u2019\u02bc`]", "", fold(text)).replace("&", " and ")
    return " ".join(re.sub(r"[\W_]", " ", plain).split())


def named_in(line: str, known: Callable[[str], Name | None]) -> tuple[list[Name], list[str]]:
    """The names that `line` means, each once, and the pieces of it that name nothing `known`.

    Pieces are parted by commas or semicolons, and by "and" where that is no part of a name; numbers by spaces; a range
    may have blanks (3 - 5, 3 to 5), and a number a sign before it (#3). A piece may hold
    several names and numbers, but if any of its words names nothing, all of it does: it may be a name of the maker's
    own.
    """
    found: list[Name] = []
    unknown: list[str] = []
    for piece in _pieces(_RANGE.sub(r"\1-\2", _SIGNS.sub(_plainly, line)), known):
        names = _names_of(piece, known)
        if names:
            found += [name for name in names if name not in found]
        else:
            unknown.append(piece)
    return list(dict.fromkeys(found)), unknown


def _plainly(sign: re.Match[str]) -> str:
    return "," if sign[0] == ";" else ""


def _pieces(line: str, known: Callable[[str], Name | None]) -> Iterator[str]:
    for piece in filter(None, map(str.strip, line.split(","))):
        if all(word[0].isdecimal() for word in piece.split()):
            yield from piece.split()
        elif _names_of(piece, known):
            yield piece
        else:
            yield from filter(None, map(str.strip, _AND.split(piece)))


def _names_of(piece: str, known: Callable[[str], Name | None]) -> list[Name]:
    """What each word of a piece means, alone or with those after it, the most that are a name; none if one means
    nothing."""
    words = piece.split()
    found: list[Name] = []
    at = 0
    while at < len(words):
        ends = range(min(len(words), at + _MOST_WORDS), at, -1)
        name, end = next(((one, end) for end in ends if (one := known(" ".join(words[at:end])))), (None, at + 1))
        names = _ranged(words[at], known) if name is None else [name]
        if not names and words[at].casefold() not in _JOINS:
            return []
        found += names
        at = end
    return found


def _ranged(word: str, known: Callable[[str], Name | None]) -> list[Name]:
    """The names with the numbers of a range, as in 3-5; none unless all are there."""
    first, dash, last = word.partition("-")
    if not (dash and first.isdecimal() and last.isdecimal()) or len(first + last) >= _DIGITS:
        return []
    names = [known(str(number)) for number in range(int(first), int(last) + 1)]
    return [name for name in names if name is not None] if None not in names else []
