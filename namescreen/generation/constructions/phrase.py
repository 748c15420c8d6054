"""Short phrases: an adjective before a noun, a verb before a noun, a noun of a noun, a pair across concepts.

Each keeps ordinary word order, so that it reads at once (R. Huddleston and G. Pullum, The Cambridge Grammar of
the English Language, 2002).
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import chain, zip_longest

from ..candidate import Proposal
from ..expansion import Idea
from ..material import Material, best_pairs, title
from ..word_sounds import sounds_of

_NEAR = 0.3  # lighter nouns say too little to carry another concept's adjective

__all__ = ["adjective_noun", "noun_of_noun", "pair", "verb_noun"]


def adjective_noun(material: Material) -> Iterator[Proposal]:
    """Slow Fern: a quality, then an idea."""
    if material.most_words < 2:
        return
    near = tuple(idea for idea in material.nouns if idea.weight >= _NEAR)
    groups = (
        best_pairs(material.companions("before"), material.nouns),
        ((a, b) for a, b in best_pairs(material.adjectives, near) if a.concept != b.concept),
    )
    for both in chain.from_iterable(zip_longest(*groups)):
        if both is not None:
            yield _phrase("adjective + noun", both[0], both[1])


def verb_noun(material: Material) -> Iterator[Proposal]:
    """Gather Thyme: an action, then what it is done to or with."""
    if material.most_words < 2:
        return
    groups = (
        best_pairs(material.companions("verb"), material.nouns),
        ((a, b) for a, b in best_pairs(material.verbs, material.nouns) if a.concept != b.concept),
    )
    for both in chain.from_iterable(zip_longest(*groups)):
        if both is not None:
            yield _phrase("verb + noun", both[0], both[1])


def noun_of_noun(material: Material) -> Iterator[Proposal]:
    """House of Fern: a place or company, then an idea."""
    if material.most_words < 3:
        return
    for head, idea in best_pairs(material.companions("of"), material.nouns):
        words = (head.word, "of", idea.word)
        sounds = tuple(sound for word in words for sound in sounds_of(word))
        yield Proposal(
            title(*words), words, "noun of noun", " ".join(words), (head.word, idea.word), idea.word, sounds, 0.75
        )


def pair(material: Material) -> Iterator[Proposal]:
    """Clay & Thyme: two words of different concepts, of like length."""
    if material.most_words < 2:
        return
    for a, b in best_pairs(material.nouns, material.nouns):
        if a.concept != b.concept and a.word != b.word and abs(len(a.word) - len(b.word)) <= 2:
            words = (a.word, "and", b.word)
            sounds = tuple(sound for word in words for sound in sounds_of(word))
            yield Proposal(
                f"{a.word.capitalize()} & {b.word.capitalize()}", words, "word pair", f"{a.word} and {b.word}",
                (a.word, b.word), a.word, sounds, 0.8,
            )  # fmt: skip


def _phrase(construction: str, a: Idea, b: Idea) -> Proposal:
    words = (a.word, b.word)
    sounds = sounds_of(a.word) + sounds_of(b.word)
    craft = 0.65 if a.pos == "v" and a.role == "companion" else 0.8  # an action that has nothing to do with it
    return Proposal(title(*words), words, construction, f"{a.word} + {b.word}", words, b.word, sounds, craft)
