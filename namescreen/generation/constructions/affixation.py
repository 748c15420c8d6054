"""Affixation: an idea with a prefix or suffix (Fernlet, Everclay), joined by the rules of English spelling.

Before a vowel a final e is dropped (Huddleston and Pullum, The Cambridge Grammar of the English Language, 2002,
ch. 18), a consonant after one short stressed vowel doubled, and y after a consonant becomes i before -ful and -ly.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache

from ...tables import open_table
from ..candidate import Proposal
from ..expansion import Idea
from ..material import Material, best_pairs
from ..word_sounds import sounds_of

__all__ = ["attach", "propose"]

NAME = "affix"


@dataclass(frozen=True, slots=True)
class _Affix:
    form: str
    kind: str
    meaning: str
    weight: float
    sounds: tuple[str, ...]


def propose(material: Material) -> Iterator[Proposal]:
    """Ideas with every affix of their kind, those of the brief's tones first."""
    affixes = sorted(_affixes(material), key=lambda affix: (-affix.weight, affix.form))
    material.rng("affixes").shuffle(affixes)
    affixes.sort(key=lambda affix: -affix.weight)
    for idea, affix in best_pairs(material.ideas, affixes):
        if affix.kind not in ("*", idea.pos) and not (idea.role == "concept" and affix.kind in "nv"):
            continue
        form = affix.form.strip("-")
        text = form + idea.word if affix.form.endswith("-") else attach(idea.word, form)
        if text is not None and len(text) <= material.most_letters:
            yield _proposal(idea, affix, text)


def _proposal(idea: Idea, affix: _Affix, text: str) -> Proposal:
    craft = 0.85 if affix.weight >= 1 else 0.65
    return Proposal(
        text.capitalize(), (text,), NAME, f"{idea.word} with {affix.form} ({affix.meaning})", (idea.word,), idea.word,
        _sounds(idea.word, affix), craft, 0.9,
    )  # fmt: skip


def _sounds(word: str, affix: _Affix) -> tuple[str, ...]:
    if affix.form.endswith("-"):
        return affix.sounds + sounds_of(word)
    unstressed = (sound[:-1] + "0" if sound[-1] in "12" else sound for sound in affix.sounds)
    return (*sounds_of(word), *unstressed)


@cache
def _rows() -> tuple[tuple[str, str, list[str]], ...]:
    rows = ((key.split(), value.split("|")) for key, value in open_table("affixes.tsv").items())
    return tuple((form, kind, rest) for (form, kind), rest in rows)


def _affixes(material: Material) -> list[_Affix]:
    return [
        _Affix(form, kind, meaning, material.fits_tone(tones), tuple(sounds.split()))
        for form, kind, (_, tones, meaning, sounds) in _rows()
    ]


def attach(word: str, suffix: str) -> str | None:
    """`word` with `suffix` by the rules of spelling, or None if they do not go together."""
    if suffix[0] in "aeiouy":
        if word.endswith(("ee", "oo", "ow", "aw", "w")) or word[-2:] in ("ia", "io"):
            return None
        if word[-1] in "ey" and len(word) > 3:
            word = word[:-1]
        elif word[-1] in "aiou":
            return None
        elif re.fullmatch(r"[^aeiou]*[aeiou][bdgklmnprt]", word):
            word += word[-1]
        return word + suffix
    if suffix in ("ful", "ly") and word[-1] == "y" and len(word) > 3 and word[-2] not in "aeiou":
        word = word[:-1] + "i"
    if word[-1] == suffix[0] or (word.endswith(("ss", "x", "z")) and suffix[0] == "s"):
        return None
    return word + suffix
