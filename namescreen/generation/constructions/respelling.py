"""Respellings: an idea written otherwise, with the same sound (Klay, Kumin)."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from ...lexicon import zipf
from ...tables import open_table
from ..candidate import Proposal
from ..material import Material
from ..word_sounds import sounds_of
from .compound import seam

__all__ = ["propose", "respelled"]

NAME = "respelling"


def propose(material: Material) -> Iterator[Proposal]:
    """Respelled ideas, near ones first; then respelled before or after a companion word."""
    companions = material.companions("after")
    for place, idea in enumerate(material.ideas):
        for text, what in respelled(idea.word):
            yield Proposal(
                text.capitalize(), (text,), NAME, f"{idea.word} with {what}", (idea.word,), idea.word,
                sounds_of(idea.word), 0.7, 0.85,
            )  # fmt: skip
            other = companions[place % len(companions)] if companions else None
            if other is not None and len(text) + len(other.word) <= min(10, material.most_letters):
                whole = text + other.word
                yield Proposal(
                    whole.capitalize(), (whole,), NAME, f"{idea.word} with {what} + {other.word}",
                    (idea.word, other.word), idea.word, sounds_of(idea.word) + sounds_of(other.word),
                    0.8 * seam(idea.word, other.word), 0.8,
                )  # fmt: skip


@cache
def _rules() -> tuple[tuple[re.Pattern[str], str, str], ...]:
    rows = (value.split("|") for _, value in open_table("respellings.tsv").items())
    return tuple((re.compile(pattern), replacement, what) for pattern, replacement, what in rows)


def respelled(word: str) -> Iterator[tuple[str, str]]:
    """Other spellings of `word` that are no words themselves, with what changed.

    Whether they are still read as the word is asked when one is about to be shown, since it takes time to know.
    """
    for pattern, replacement, what in _rules():
        text = pattern.sub(replacement, word, count=1)
        if text == word or len(text) < 3 or zipf(text) >= 2.5:
            continue
        yield text, what
