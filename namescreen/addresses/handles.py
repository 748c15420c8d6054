"""Handles: the short name on a social page, within the lengths that a maker's places allow.

Letters, digits, underscore and dot; no two marks in a row, none at either end. Lengths of 15, 20, 24 and 30
characters are common tiers (from memory; no service is named, and each has rules of its own).
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from ..lexicon import kinds
from ..names import Name
from .labels import plain_label

__all__ = ["COMMON_LENGTHS", "Handle", "handles_of"]

COMMON_LENGTHS = (15, 20, 24, 30)

LOSSES = {"": 0.0, "hyphens": 0.0, "small words": 0.1, "vowels": 0.4, "later words": 0.5, "the end": 0.7}
"""What is lost, from nothing to most, when a handle must be cut, with how much that takes off its fit; the order
is common practice, no source."""


@dataclass(frozen=True, slots=True)
class Handle:
    """A handle for a name: its `text`, the `limit` it keeps to, what is `lost` by cutting ("" = nothing), and its
    fit in [0, 1], 1 = the whole name."""

    text: str
    limit: int
    lost: str

    @property
    def fit(self) -> float:
        """1 less what the loss takes off."""
        return 1.0 - LOSSES[self.lost]


@lru_cache(maxsize=1 << 12)
def handles_of(name: Name, limits: tuple[int, ...] = COMMON_LENGTHS) -> tuple[Handle, ...]:
    """The best handle for each limit, shortest limit first; nothing for a name without Latin letters or digits."""
    shortenings = list(_shortenings(name))
    found = []
    for limit in sorted(set(limits)):
        fitting = [(text, lost) for text, lost in shortenings if len(text) <= limit]
        if fitting:
            text, lost = min(fitting, key=lambda one: (LOSSES[one[1]], -len(one[0]), one[0]))
            found.append(Handle(text, limit, lost))
        elif shortenings:
            found.append(Handle(shortenings[0][0][:limit], limit, "the end"))
    return tuple(found)


def _shortenings(name: Name) -> Iterator[tuple[str, str]]:
    """Ways to write the name as one handle, with what each loses."""
    words = [plain for word in name.words if (plain := plain_label(word))]
    if not words:
        return
    yield "".join(words), ""
    telling = [word for word in words if not kinds(word) & {"function word", "company form", "domain ending"}]
    if telling and telling != words:
        yield "".join(telling), "small words"
    telling = telling or words
    for kept in range(len(telling) - 1, 0, -1):
        yield "".join(telling[:kept]), "later words"
    yield "".join(_without_vowels(word) for word in telling), "vowels"


def _without_vowels(word: str) -> str:
    return word[:1] + "".join(letter for letter in word[1:] if letter not in "aeiou")
