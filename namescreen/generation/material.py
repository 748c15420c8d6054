"""What the constructions work with: ideas by part of speech, companion words by tone, and the brief's limits."""

from __future__ import annotations

import heapq
import random
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import TypeVar

from ..brief import Brief
from ..tables import open_table
from ..text import fold
from .expansion import Idea, widen

__all__ = ["PLACES", "TONES", "Material", "best_pairs", "gather", "title", "tone_of"]

TONES = ("plain", "warm", "playful", "bold", "calm", "elegant", "modern", "natural", "technical")
"""The tones that companion words and affixes are marked with."""

PLACES = ("after", "before", "verb", "of")
"""Where a companion word may stand."""

_LIKE_TONES = {
    "simple": "plain", "honest": "plain", "down-to-earth": "plain", "sober": "plain", "serious": "plain",
    "friendly": "warm", "cosy": "warm", "cozy": "warm", "homely": "warm", "kind": "warm", "caring": "warm",
    "fun": "playful", "funny": "playful", "cheerful": "playful", "quirky": "playful", "childlike": "playful",
    "strong": "bold", "brave": "bold", "loud": "bold", "fierce": "bold", "daring": "bold", "tough": "bold",
    "quiet": "calm", "gentle": "calm", "soft": "calm", "peaceful": "calm", "slow": "calm",
    "refined": "elegant", "fine": "elegant", "luxurious": "elegant", "classic": "elegant", "noble": "elegant",
    "new": "modern", "fresh": "modern", "minimal": "modern", "urban": "modern", "sleek": "modern",
    "earthy": "natural", "rustic": "natural", "organic": "natural", "wild": "natural", "green": "natural",
    "precise": "technical", "scientific": "technical", "engineered": "technical", "clever": "technical",
}  # fmt: skip
"""Other words for the tones, as makers may put them (ours)."""

_OFF_TONE = 0.55
"""What is left of a companion's or an affix's weight where the brief asks for other tones."""

First = TypeVar("First")
Second = TypeVar("Second")


@dataclass(frozen=True)
class Material:
    """Everything a construction may draw on; ideas stand weightiest first."""

    ideas: tuple[Idea, ...]
    tones: frozenset[str]
    most_letters: int
    most_words: int
    seed: int
    without: frozenset[str] = frozenset()

    @cached_property
    def nouns(self) -> tuple[Idea, ...]:
        """Ideas that are nouns."""
        return tuple(idea for idea in self.ideas if idea.pos == "n")

    @cached_property
    def verbs(self) -> tuple[Idea, ...]:
        """Ideas that are verbs, and concepts that may be."""
        return tuple(idea for idea in self.ideas if idea.pos == "v")

    @cached_property
    def adjectives(self) -> tuple[Idea, ...]:
        """Ideas that are adjectives."""
        return tuple(idea for idea in self.ideas if idea.pos == "a")

    def companions(self, place: str) -> tuple[Idea, ...]:
        """Companion words of a place ("after", "before", "verb", "of"), those of the brief's tones first."""
        found: dict[str, float] = {}
        table = open_table("companions.tsv")
        for tone in TONES:
            fits = 1.0 if not self.tones or tone in self.tones else _OFF_TONE
            for word in (table.get(f"{place} {tone}") or "").split():
                found[word] = max(found.get(word, 0.0), 0.62 * fits)
        pos = {"before": "a", "verb": "v"}.get(place, "n")
        shuffled = sorted(found)
        self.rng(f"companions {place}").shuffle(shuffled)
        ideas = [Idea(word, "", f"a {place} word", 0, found[word], pos, "companion") for word in shuffled]
        own = {idea.word for idea in self.ideas} | self.without
        return tuple(sorted((i for i in ideas if i.word not in own), key=lambda idea: -idea.weight))

    def fits_tone(self, tones: str) -> float:
        """1 if any of these tones is asked for (or none is), less otherwise."""
        return 1.0 if not self.tones or self.tones & set(tones.split()) else _OFF_TONE

    def rng(self, purpose: str) -> random.Random:
        """A source of chance of its own for each purpose, the same for the same seed."""
        return random.Random(f"{self.seed} {purpose}")


def tone_of(word: str) -> str | None:
    """The tone of `TONES` that a word of the brief means, or None if it is not known."""
    folded = fold(word)
    return folded if folded in TONES else _LIKE_TONES.get(folded)


def gather(
    brief: Brief, *, seed: int, without: Sequence[str] = (), weights: dict[str, float] | None = None
) -> Material:
    """The material of a brief. `without` are dropped words; `weights` raise or lower ideas by what was learned."""
    ideas = widen(brief, without=without)
    rng = random.Random(f"{seed} ideas")
    # the seed stirs the order a little, so that another seed shows other names of like worth
    stirred = [
        (
            idea.weight * (weights or {}).get(idea.word, 1.0) * (1 if idea.distance == 0 else rng.uniform(0.85, 1.0)),
            idea,
        )
        for idea in ideas
    ]
    ordered = sorted(stirred, key=lambda entry: (-entry[0], entry[1].word))
    tones = frozenset(tone for tone in map(tone_of, brief.tone) if tone)
    return Material(
        tuple(idea for _, idea in ordered), tones, brief.most_letters, brief.most_words or 3, seed, frozenset(without)
    )


def best_pairs(
    first: Sequence[First], second: Sequence[Second], weigh: str = "weight"
) -> Iterator[tuple[First, Second]]:
    """Every pair of two lists that stand weightiest first, by the product of their weights, largest first."""
    if not first or not second:
        return

    def product(i: int, j: int) -> float:
        return float(getattr(first[i], weigh) * getattr(second[j], weigh))

    front = [(-product(i, 0), i, 0) for i in range(min(len(first), 1))]
    while front:
        _, i, j = heapq.heappop(front)
        yield first[i], second[j]
        if j + 1 < len(second):
            heapq.heappush(front, (-product(i, j + 1), i, j + 1))
        if j == 0 and i + 1 < len(first):
            heapq.heappush(front, (-product(i + 1, 0), i + 1, 0))


def title(*words: str) -> str:
    """Words as a name is written: each with a capital, small words between in lower case."""
    return " ".join(word if word in ("of", "and", "the", "on", "to") else word.capitalize() for word in words)
