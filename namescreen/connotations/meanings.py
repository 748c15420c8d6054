"""Meanings of a word from a dictionary that the user has installed, and how they are rated."""

from __future__ import annotations

import re
from typing import NamedTuple, Protocol

from .unlucky import rated

__all__ = ["Dictionary", "Meaning", "judged"]


class Meaning(NamedTuple):
    """One headword as the dictionary spells it, and what it means in a few English words."""

    word: str
    text: str


class Dictionary(Protocol):
    """A source of meanings: `name` says which, `languages` which headwords it holds (two-letter codes)."""

    @property
    def name(self) -> str:
        """What the source calls itself."""
        ...

    @property
    def languages(self) -> frozenset[str]:
        """The languages of its headwords."""
        ...

    def meanings(self, letters: str, language: str) -> tuple[Meaning, ...]:
        """The meanings of the words of `language` that fold to `letters`."""
        ...


def judged(text: str) -> tuple[str, int]:
    """The kind and severity of a meaning from a dictionary, as the shipped tables rate the same English
    words; ``("ordinary", 0)`` when none of its parts is known as unlucky.

    The first of its parts counts in full, later ones one step less: a word's second sense is met less often.
    """
    best = ("ordinary", 0)
    parts = [part.strip() for part in re.split(r"[,;]", re.sub(r"\s*[(\[<][^)\]>]*[)\]>]\s*", " ", text))]
    for place, part in enumerate(part for part in parts if part):
        rating = rated(part.lower().removeprefix("to "))
        if rating is not None:
            kind, severity = rating[0], rating[1] - (place > 0)
            if severity > best[1]:
                best = (kind, severity)
    return best
