"""Figures: a plain first name with a word of the brief for a surname (Nell Thyme), a thing with a title, and names of
lore by what they stand for."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from ..candidate import Proposal
from ..ideas import Idea, first_names
from ..material import Material, title
from ..vocabulary import word
from ..word_sounds import is_vowel
from .found import as_it_is

__all__ = ["named", "propose"]

NAME = "figure"
_SURNAMES = 40  # of the best short nouns serve as surnames
_LONGEST = 6
_TITLED = 0.25  # what a title loses beside a first name


def propose(material: Material) -> Iterator[Proposal]:
    """Names with an echo in them first, by how relevant the surname is; then figures of lore among them."""
    ranked: list[tuple[float, str, str, Idea]] = []
    for idea in material.of_kind("lore"):
        ranked.append((idea.weight, idea.word, "", idea))
    if material.most_words > 1:
        firsts = [(first, _heard(first), loss) for first, loss in _before()]
        for idea in _surnames(material):
            heard = _heard(idea.word)
            for first, other, loss in firsts:
                echo = _echo(other, heard)
                if echo and first.casefold() != idea.word:
                    ranked.append((idea.weight * (0.7 + echo) - loss, f"{first} {idea.word}", first, idea))
    ranked.sort(key=lambda entry: (-entry[0], entry[1]))
    for _, _, first, idea in ranked:
        yield named(first, idea) if first else as_it_is(idea, NAME)


def _before() -> Iterator[tuple[str, float]]:
    """What may stand before a surname, with what it loses."""
    names, titles = first_names()
    yield from ((first, 0.0) for first in names)
    yield from ((first, _TITLED) for first in titles)


def named(first: str, idea: Idea) -> Proposal:
    """A first name or title before an idea."""
    words = (first.casefold(), idea.word)
    sounds = word(words[0]).sounds + word(words[1]).sounds
    return Proposal(title(first, idea.word), words, NAME, f"{first}, and {idea.named}", (idea.word,), idea.word, sounds)


def _surnames(material: Material) -> Iterator[Idea]:
    nouns = [
        idea for idea in material.short if idea.pos == "n" and len(idea.word) <= _LONGEST and material.is_firm(idea)
    ]
    return iter(nouns[:_SURNAMES])


@lru_cache(maxsize=1 << 10)
def _heard(text: str) -> tuple[str, str]:
    """What is noticed of a word's sounds: a consonant that it begins with, and its stressed vowel; empty if none."""
    sounds = word(text.casefold()).sounds
    vowel = next((sound for sound in sounds if sound.endswith("1")), "")
    return (sounds[0] if sounds and not is_vowel(sounds[0]) else ""), vowel


def _echo(one: tuple[str, str], other: tuple[str, str]) -> float:
    """How much two words sound alike where it is noticed: the same beginning, the same stressed vowel; 0 if neither."""
    return 0.2 * (one[0] == other[0] != "") + 0.15 * (one[1] == other[1] != "")
