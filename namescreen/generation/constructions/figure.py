"""Figures: a plain first name with a word of the brief for a surname (Nell Thyme), a thing with a title, and names of
lore by what they stand for."""

from __future__ import annotations

from collections.abc import Iterator

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
    ranked: list[tuple[float, str, Proposal]] = []
    for idea in material.of_kind("lore"):
        ranked.append((idea.weight, idea.word, as_it_is(idea, NAME)))
    if material.most_words > 1:
        names, titles = first_names()
        for idea in _surnames(material):
            for before, loss in ((names, 0.0), (titles, _TITLED)):
                for first in before:
                    echo = _echo(first, idea.word)
                    if echo and first.casefold() != idea.word:
                        ranked.append((idea.weight * (0.7 + echo) - loss, f"{first} {idea.word}", named(first, idea)))
    ranked.sort(key=lambda entry: (-entry[0], entry[1]))
    return (proposal for _, _, proposal in ranked)


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


def _echo(first: str, second: str) -> float:
    """How much two words sound alike where it is noticed: the same beginning, the same stressed vowel; 0 if neither."""
    one, two = word(first.casefold()).sounds, word(second).sounds
    if not one or not two:
        return 0.0
    same_start = one[0] == two[0] and not is_vowel(one[0])
    vowels = [next((s for s in sounds if s.endswith("1")), "") for sounds in (one, two)]
    return 0.2 * same_start + 0.15 * (vowels[0] == vowels[1] and bool(vowels[0]))
