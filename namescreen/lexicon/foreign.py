"""Everyday words of other languages and their English equivalents: what a buyer who knows both would translate."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from ..tables import open_table
from .frequency import zipf

__all__ = ["Equivalent", "equivalents", "foreign_words"]

PLAIN_ENGLISH = 3.8
"""Zipf value in English from which a word is read as English and not translated (pain, chat, son); the doctrine of
foreign equivalents asks whether the ordinary buyer would stop and translate (TMEP 1207.01(b)(vi)(A))."""


@dataclass(frozen=True, slots=True)
class Equivalent:
    """What a word means in one language (BCP 47 code), as an English word."""

    language: str
    english: str


@lru_cache(maxsize=1 << 16)
def equivalents(word: str) -> tuple[Equivalent, ...]:
    """The English equivalents of the folded `word` in the languages of the table; empty if it is read as English.

    French, Spanish, Italian, German, Portuguese, Dutch, Swedish and Latin, some 300 ideas common in names,
    written by us from memory: a word that is missing is not known here, which is not the same as meaningless.
    """
    value = open_table("foreign_words.tsv").get(word)
    if value is None or zipf(word) >= PLAIN_ENGLISH:
        return ()
    return tuple(Equivalent(*entry.split(":")) for entry in value.split(","))


@lru_cache(maxsize=1 << 14)
def foreign_words(english: str) -> tuple[str, ...]:
    """The foreign words whose equivalent is the `english` word, folded and sorted, those read as English left out."""
    found = (open_table("foreign_of.tsv").get(english) or "").split()
    return tuple(word for word in found if zipf(word) < PLAIN_ENGLISH)
