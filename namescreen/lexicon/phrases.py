"""Fixed phrases: words that together mean something of their own (red herring, paper tiger, tiger lily)."""

from __future__ import annotations

from functools import cache, lru_cache

from ..tables import open_table
from .word_kinds import kinds
from .wordnet import lexicon

__all__ = ["broken_phrases", "fixed_phrases", "is_saying"]

LONGEST = 5
"""The most words of a phrase that is looked for."""
_BEFORE_NUMBERS = ("in", "on", "at", "by")


@cache
def _familiar() -> frozenset[str]:
    return frozenset(phrase.lower() for phrase, _ in open_table("familiar_phrases.tsv").items() if " " in phrase)


@lru_cache(maxsize=1 << 14)
def fixed_phrases(words: tuple[str, ...]) -> tuple[tuple[str, ...], ...]:
    """The fixed phrases among folded words in a row: compounds of WordNet, in some form, and familiar sayings."""
    stretches = (
        words[start:end]
        for start in range(len(words) - 1)
        for end in range(start + 2, min(len(words), start + LONGEST) + 1)
    )
    return tuple(each for each in stretches if lexicon().known(text := " ".join(each)) or text in _familiar())


@lru_cache(maxsize=1 << 14)
def is_saying(phrase: str) -> bool:
    """Whether folded words are a familiar saying or set phrase with a sense of its own (forty winks), or the rest of
    one from its number on (two shakes, of: in two shakes)."""
    if " " not in phrase:
        return False
    if phrase in _familiar() or "set phrase" in kinds(phrase):
        return True
    befores = _BEFORE_NUMBERS if "number" in kinds(phrase.partition(" ")[0]) else ()
    table = open_table("naming_ideas.tsv")
    return any(f"saying {whole}" in table for whole in (phrase, *(f"{before} {phrase}" for before in befores)))


def broken_phrases(words: tuple[str, ...], others: tuple[str, ...]) -> tuple[tuple[str, ...], ...]:
    """The fixed phrases of two names of which both share a word and not all (Red Herring, Herring): the word means
    something else in the phrase. Symmetric but for the order."""
    pairs = ((phrase, other) for mine, other in ((words, others), (others, words)) for phrase in fixed_phrases(mine))
    return tuple(phrase for phrase, other in pairs if _is_broken(phrase, other))


def _is_broken(phrase: tuple[str, ...], words: tuple[str, ...]) -> bool:
    shared = [word in words for word in phrase if "function word" not in kinds(word)]
    return any(shared) and not all(shared)
