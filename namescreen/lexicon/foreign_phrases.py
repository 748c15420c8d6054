"""Phrases of other languages that say one thing with several words, so that no word of them says it: French arc
en ciel is a rainbow. The table has names of things that can be seen; see wordlists/SOURCES.md."""

from __future__ import annotations

from functools import lru_cache

from ..tables import open_table
from .foreign import Equivalent
from .word_kinds import kinds

__all__ = ["phrase_equivalents", "phrases_for"]

LONGEST = 3
"""The most words of a phrase in the table."""


@lru_cache(maxsize=1 << 14)
def phrase_equivalents(words: tuple[str, ...]) -> tuple[Equivalent, ...]:
    """What folded words mean together as a phrase of other languages, with or without an article before it, each as one
    English word, by language; empty if they are no such phrase."""
    if not 2 <= len(words) <= LONGEST + 1:
        return ()
    listed = open_table("foreign_phrases.tsv").get(" ".join(words))
    if not listed and "function word" in kinds(words[0]):
        return phrase_equivalents(words[1:])
    entries = (entry.split(":") for entry in listed.split(",")) if listed else ()
    return tuple(Equivalent(code, english) for code, *said in entries for english in said)


@lru_cache(maxsize=1 << 12)
def phrases_for(english: str) -> tuple[tuple[str, str], ...]:
    """The phrases that say an English word, each with its language, in the order of their letters."""
    lines = open_table("foreign_phrases.tsv").keys_of_lines_with(f":{english}")
    return tuple(
        (one.language, phrase)
        for phrase in lines
        for one in phrase_equivalents(tuple(phrase.split()))
        if one.english == english
    )
