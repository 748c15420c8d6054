"""Affixation: an idea with a living prefix or suffix (Fernlet, Unsip), joined by the rules of English spelling.

Before a vowel a final e is dropped (Huddleston and Pullum, The Cambridge Grammar of the English Language, 2002,
ch. 18); the suffixes here begin with a consonant, and an idea that ends in the same one is left alone.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from typing import NamedTuple

from ...tables import open_table
from ..candidate import Proposal
from ..ideas import Idea
from ..material import Material, best_pairs
from ..vocabulary import word as facts
from .pair import seam

__all__ = ["Affix", "affixed", "affixes", "propose"]

NAME = "affix"


class Affix(NamedTuple):
    """A prefix ("un-") or suffix ("-ling"): the part of speech it is put to, what it means, the tones it suits."""

    form: str
    kind: str
    meaning: str
    tones: str
    sounds: tuple[str, ...]


def propose(material: Material) -> Iterator[Proposal]:
    """Ideas with every affix of their kind, those of the brief's tones first."""
    found = list(affixes())
    material.rng("affixes").shuffle(found)
    found.sort(key=lambda affix: -material.fits_tone(affix.tones))

    def weigh(one: Idea | Affix) -> float:
        return one.weight if isinstance(one, Idea) else material.fits_tone(one.tones)

    for idea, affix in best_pairs([idea for idea in material.short if material.is_firm(idea)], found, weigh):
        if affix.kind in ("*", idea.pos) and _joins(idea.word, affix):
            proposal = affixed(idea, affix)
            if len(proposal.letters) <= material.most_letters:
                yield proposal


def affixed(idea: Idea, affix: Affix) -> Proposal:
    """An idea with an affix."""
    form = affix.form.strip("-")
    text = form + idea.word if affix.form.endswith("-") else idea.word + form
    join = seam(form, idea.word) if affix.form.endswith("-") else seam(idea.word, form)
    return Proposal(
        text.capitalize(), (text,), NAME, f"{idea.named} with {affix.form}, {affix.meaning}", (idea.word,), idea.word,
        _sounds(idea.word, affix), join, 0.9,
    )  # fmt: skip


def _sounds(word: str, affix: Affix) -> tuple[str, ...]:
    if affix.form.endswith("-"):
        return affix.sounds + facts(word).sounds
    unstressed = (sound[:-1] + "0" if sound[-1] in "12" else sound for sound in affix.sounds)
    return (*facts(word).sounds, *unstressed)


@cache
def affixes() -> tuple[Affix, ...]:
    """Every affix there is."""
    rows = ((key.split(), value.split("|")) for key, value in open_table("affixes.tsv").items())
    return tuple(
        Affix(form, kind, meaning, tones, tuple(sounds.split())) for (form, kind), (_, tones, meaning, sounds) in rows
    )


def _joins(word: str, affix: Affix) -> bool:
    form = affix.form.strip("-")
    if affix.form.endswith("-"):
        return form[-1] != word[0]
    return word[-1] != form[0] and not word.endswith(form[-3:])
