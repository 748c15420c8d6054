"""Found names: existing words one true step away from the goods, by what they mean (an arbitrary or suggestive mark in
the terms of TMEP 1209.01(a); no word of the brief is added)."""

from __future__ import annotations

from collections.abc import Iterator

from ...text import tokenize
from ..candidate import Proposal
from ..ideas import Idea
from ..material import Material, title
from ..vocabulary import word as facts

__all__ = ["as_it_is", "propose", "propose_foreign", "propose_local"]

_LISTED, _WHOLE, _DELIGHT = 0.6, 0.6, 0.5
"""How much each says of the ranking beside the relevance of an idea: the 20 that it puts first are then among the first
150."""


def propose(material: Material) -> Iterator[Proposal]:
    """English words and fixed terms, those first that promise most: by what they have to do with the brief, and by how
    they pleased for it, for other subjects, and for all that they suit."""
    ideas = sorted(material.of_kind("find"), key=lambda idea: (-_promise(idea), idea.word))
    return (as_it_is(idea, "found") for idea in ideas)


def _promise(idea: Idea) -> float:
    """About what the ranking makes of an idea, in parts of its relevance."""
    return idea.weight + _LISTED * idea.listed + _WHOLE * idea.whole + _DELIGHT * idea.delight


def propose_foreign(material: Material) -> Iterator[Proposal]:
    """Words of other languages, by what they mean there."""
    return (as_it_is(idea, "foreign") for idea in material.of_kind("foreign"))


def propose_local(material: Material) -> Iterator[Proposal]:
    """Words and turns of phrase of the buyers' own language, as they are written there."""
    for idea in material.of_kind("local"):
        words = tokenize(idea.word)
        yield Proposal(idea.word, words, "local", idea.why, (idea.word,), words[0], meaning=idea.meaning)


def as_it_is(idea: Idea, construction: str) -> Proposal:
    """An idea as a name."""
    words = tuple(idea.word.casefold().split())
    sounds = tuple(sound for word in words for sound in facts(word).sounds)
    return Proposal(
        title(*(idea.written or idea.word).split()), words, construction, idea.why, (idea.word,), words[0],
        sounds, meaning=idea.meaning,
    )  # fmt: skip
