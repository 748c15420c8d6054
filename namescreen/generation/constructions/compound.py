"""Compounds: two words side by side, closed (Fernsill), hyphenated (Fern-Light) or open (Fern Sill).

A compound names by its second word what its first narrows down (L. Bauer, English Word-Formation, 1983, ch. 7).
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import chain, zip_longest

from ..candidate import Proposal
from ..expansion import Idea
from ..material import Material, best_pairs, title
from ..word_sounds import is_vowel, sounds_of

__all__ = ["joined", "propose", "seam"]

NAME = "compound"


def propose(material: Material) -> Iterator[Proposal]:
    """Two ideas of different concepts, an idea before a companion word, a companion before an idea."""
    ideas = material.nouns
    groups = (
        ((a, b) for a, b in best_pairs(ideas, ideas) if a.concept != b.concept),
        best_pairs(ideas, material.companions("after")),
        ((a, b) for a, b in best_pairs(material.verbs, ideas) if a.concept != b.concept),
    )
    for pair in chain.from_iterable(zip_longest(*groups)):
        if pair is not None and pair[0].word != pair[1].word:
            yield from _spellings(material, *pair)


def _spellings(material: Material, a: Idea, b: Idea) -> Iterator[Proposal]:
    how = f"{a.word} + {b.word}"
    clash = seam(a.word, b.word)
    short = len(a.word) + len(b.word) <= min(12, material.most_letters)
    if short and clash >= 0.35 and a.word != b.word:
        yield joined(a, b, NAME, how, clash)
    if material.most_words > 1 and (clash < 0.6 or not short):
        mark = "-" if short and clash < 0.35 else " "
        words = (a.word, b.word)
        yield Proposal(
            mark.join((a.word.capitalize(), b.word.capitalize())) if mark == "-" else title(*words),
            words, NAME, f"{a.word} {b.word}, {'hyphenated' if mark == '-' else 'side by side'}",
            words, a.word, sounds_of(a.word) + sounds_of(b.word), craft=0.7,
        )  # fmt: skip


def joined(a: Idea, b: Idea, construction: str, how: str, craft: float) -> Proposal:
    """Two words written as one."""
    text = a.word + b.word
    sounds = sounds_of(a.word) + _weakened(sounds_of(b.word))
    return Proposal(text.capitalize(), (text,), construction, how, (a.word, b.word), a.word, sounds, craft)


def _weakened(sounds: tuple[str, ...]) -> tuple[str, ...]:
    """A second part keeps secondary stress (Chomsky and Halle, The Sound Pattern of English, 1968)."""
    return tuple(sound[:-1] + "2" if sound.endswith("1") else sound for sound in sounds)


def seam(first: str, second: str) -> float:
    """How cleanly two words join when closed up, 0 to 1: no doubled letter, no heap of consonants or vowels."""
    value = 1.0
    if first[-1] == second[0]:
        value -= 0.5
    if first[-1] in "aeiou" and second[0] in "aeiou":
        value -= 0.6
    if first[-1] == "e" and second[0] in "aeiouy":
        value -= 0.2
    if first.endswith(("s", "p", "t", "c")) and second[0] == "h":
        value -= 0.45  # reads as sh, ph, th, ch
    one, two = sounds_of(first), sounds_of(second)
    heap = _edge(one[::-1]) + _edge(two)
    value -= 0.12 * max(0, heap - 2)
    return max(0.0, value)


def _edge(sounds: tuple[str, ...]) -> int:
    return next((place for place, sound in enumerate(sounds) if is_vowel(sound)), len(sounds))
