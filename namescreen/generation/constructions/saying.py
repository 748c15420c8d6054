"""Sayings as they are: a set phrase of which a word says literally what the brief says, while the sense that everybody
knows is a pleasant one (Make Hay for a scythe).

A double meaning is held suggestive, not descriptive, where the phrase is taken as a whole (TMEP 1213.05(c)).
"""

from __future__ import annotations

from collections.abc import Iterator

from ...lexicon import kinds
from ..candidate import Proposal
from ..ideas import Idea
from ..material import Material, title
from ..vocabulary import word
from .changed import behind

__all__ = ["propose", "said"]

NAME = "saying"
_LITERAL = 0.35  # how strongly a word of a phrase must be associated with the brief by itself
_DEFINES = 0.5  # what is left if its sense says no more than the brief does
_ONCE = 0.5  # what is left of a phrase that says the same of the brief literally and by its sense


def propose(material: Material) -> Iterator[Proposal]:
    """The phrases with a word of the brief, or one like it, that say most of the brief, first."""
    ranked = []
    for idea in material.of_kind(NAME):
        if len(idea.word.split()) <= material.most_words:
            literal = behind(material.brief_terms, idea.word) * (_DEFINES if idea.defined else 1.0)
            if literal >= _LITERAL:
                ranked.append((literal * (_ONCE + idea.weight), said(idea, literal)))
    ranked.sort(key=lambda entry: (-entry[0], entry[1].text))
    return (proposal for _, proposal in ranked)


def said(idea: Idea, literal: float) -> Proposal:
    """A phrase as a name; `literal` says how strongly a word of it is associated with the brief."""
    words = tuple(idea.word.replace("'", "").split())
    telling = next((one for one in words if "function word" not in kinds(one)), words[0])
    sounds = tuple(sound for one in words for sound in word(one).sounds)
    return Proposal(
        title(*idea.word.split()), words, NAME, idea.why, (idea.word,), telling, sounds, original=idea.word, heard=1.0,
        behind=literal,
    )  # fmt: skip
