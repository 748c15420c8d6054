"""A name, parsed once: its text, its folded words and its spoken forms."""

from __future__ import annotations

import unicodedata
from functools import lru_cache
from typing import NamedTuple

from .spoken_forms import spoken_forms
from .tokenization import MAX_LENGTH, tokenize

__all__ = ["Name", "parse"]


class Name(NamedTuple):
    """A name, split into words and folded once.

    `text` is the name as given, trimmed; `words` its folded words, in order; `spoken` the ways it may be read
    aloud, each a tuple of ordinary words, most likely first, never empty for a name with words.
    """

    text: str
    words: tuple[str, ...]
    spoken: tuple[tuple[str, ...], ...]

    @property
    def letters(self) -> str:
        """The folded letters and digits without spaces."""
        return "".join(self.words)

    def __str__(self) -> str:
        return self.text


@lru_cache(maxsize=65536)
def parse(text: str) -> Name:
    """Parse `text` as a `Name`. Never fails; a text without letters or digits has no words."""
    words = tokenize(text)
    shown = text[:MAX_LENGTH]
    if not (shown.isascii() and shown.isprintable()):
        shown = "".join(c for c in shown if unicodedata.category(c) not in ("Cc", "Cf", "Cs") or c in "\t\n ")
    return Name(" ".join(shown.split()), words, spoken_forms(words))
