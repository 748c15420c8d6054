"""Initials: the first letters of ideas, one from each concept, that can be said as a word (acronyms)."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import permutations, product

from ..candidate import Proposal
from ..expansion import Idea
from ..material import Material

__all__ = ["propose"]

NAME = "initials"
_DEEP = 4  # ideas of each concept that lend their letters


def propose(material: Material) -> Iterator[Proposal]:
    """Words of three to six letters from one or two first letters of one idea of each concept."""
    concepts = list(dict.fromkeys(idea.concept for idea in material.ideas if idea.role in ("concept", "idea")))[:5]
    by_concept: dict[str, list[Idea]] = {
        concept: [idea for idea in material.ideas if idea.concept == concept][:_DEEP] for concept in concepts
    }
    for many in (3, 4, 2):
        for order in permutations(concepts, many):
            for chosen in product(*(by_concept[concept] for concept in order)):
                for lengths in product((1, 2), repeat=many):
                    parts = [idea.word[:length] for idea, length in zip(chosen, lengths, strict=True)]
                    text = "".join(parts)
                    if 3 <= len(text) <= 6 and _sayable(text):
                        how = " + ".join(
                            f"{part}({idea.word[len(part) :]})" for part, idea in zip(parts, chosen, strict=True)
                        )
                        yield Proposal(
                            text.capitalize(), (text,), NAME, how, tuple(idea.word for idea in chosen), text, (), 0.5,
                            0.15,
                        )  # fmt: skip


def _sayable(text: str) -> bool:
    """Vowels and consonants take turns, with at most one pair of consonants between vowels."""
    shape = "".join("v" if letter in "aeiouy" else "c" for letter in text)
    return (
        "v" in shape
        and "vv" not in shape
        and "ccc" not in shape
        and not shape.startswith("cc")
        and not shape.endswith("cc")
    )
