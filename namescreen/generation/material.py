"""What the constructions work with: the ideas of a brief by kind, its tones, and its limits."""

from __future__ import annotations

import heapq
import random
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache
from typing import TypeVar

from ..brief import Brief
from ..text import fold
from .brief_terms import BriefTerms
from .buyers import local_language
from .ideas import Idea, ideas_of
from .local_names import local_ideas
from .senses import unfit

__all__ = ["TONES", "Material", "best_pairs", "gather", "title", "tone_of"]

TONES = ("plain", "warm", "playful", "bold", "calm", "elegant", "modern", "natural", "technical")
"""The tones that affixes are marked with."""

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
"""What is left of an affix's weight where the brief asks for other tones."""
_SHORTEST, _LONGEST = 3, 7  # letters of a word that may be half of a name
_KNOWN = 2.9  # Zipf frequency of a word that is known by itself
_LINKED = 0.18  # association by itself that a known word needs with the term it stands for
_HALF_KNOWN = 2.0  # Zipf frequency of a word that is known well enough if a short list of ours holds it
_CARRIES = 0.42, 0.56  # association with a term that a word needs to carry a part; the second for an existing word
_ENOUGH = 15  # so many short words are enough
_STIR = 0.12  # by how much a seed varies the weights

First = TypeVar("First")
Second = TypeVar("Second")


@dataclass(frozen=True)
class Material:
    """Everything a construction may draw on; ideas stand weightiest first."""

    ideas: tuple[Idea, ...]
    brief_terms: BriefTerms
    tones: frozenset[str]
    most_letters: int
    most_words: int
    seed: int

    def of_kind(self, *kinds: str) -> Iterator[Idea]:
        """The ideas of these kinds."""
        return (idea for idea in self.ideas if idea.kind in kinds)

    @cached_property
    def short(self) -> tuple[Idea, ...]:
        """Short words fit to be part of a name: known nouns, verbs and adjectives of one or two syllables that are
        associated with a term by themselves, without their meaning being told; or whose picture pleases in any name."""
        found = []
        for idea in self.of_kind("world", "find", "concept", "goods"):
            if not idea.word.isalpha() or idea.pos == "r":
                continue
            if idea.kind in ("concept", "goods") and unfit(idea.word):  # of our own words none is
                continue
            if idea.kind == "find" and not self._is_plain(idea):
                continue
            if idea.kind == "concept" or (
                _SHORTEST <= len(idea.word) <= _LONGEST and 1 <= idea.facts.beats <= 2 and self.is_firm(idea)
            ):
                found.append(idea)
        if len(found) < _ENOUGH:  # a brief that says little: what pleases by itself stands in
            found += [idea for idea in self.of_kind("world") if idea.facts.charm == 1 and idea not in found]
        return tuple(sorted(found, key=lambda idea: (-idea.weight, idea.word)))

    def is_firm(self, idea: Idea) -> bool:
        """Whether a short word is associated with a term so strongly that it can carry a part of a name."""
        return idea.kind == "concept" or self.brief_terms.strongest(idea.associations) >= _CARRIES[idea.kind == "find"]

    def _is_plain(self, idea: Idea) -> bool:
        """Whether people know an existing word, and link it with its term without being told what it means; of a short
        list, whether it is well enough known."""
        if idea.chosen and idea.standing > 0:
            return idea.facts.zipf >= _HALF_KNOWN
        linked = self.brief_terms.of_word(idea.word)[self.brief_terms.best_term(idea.associations)]
        return idea.facts.zipf >= _KNOWN and bool(linked >= _LINKED)

    def fits_tone(self, tones: str) -> float:
        """1 if any of these tones is asked for (or none is), less otherwise."""
        return 1.0 if not self.tones or self.tones & set(tones.split()) else _OFF_TONE

    def rng(self, purpose: str) -> random.Random:
        """A separate random generator for each purpose, the same for the same seed."""
        return random.Random(f"{self.seed} {purpose}")


def tone_of(word: str) -> str | None:
    """The tone of `TONES` that a word of the brief means, or None if it is not known."""
    folded = fold(word)
    return folded if folded in TONES else _LIKE_TONES.get(folded)


def gather(
    brief: Brief, *, seed: int, without: Sequence[str] = (), weigh: Callable[[str], float] = lambda word: 1.0,
    left: Mapping[str, Sequence[str]] | None = None,
) -> Material:  # fmt: skip
    """The material of a brief. `without` are dropped words, `left` words with the meanings that are not meant; `weigh`
    gives a factor for the weight of each word."""
    meanings_left = tuple((word, tuple(meanings)) for word, meanings in (left or {}).items())
    brief_terms, found = _terms_and_ideas(brief, tuple(without), meanings_left)
    rng = random.Random(f"{seed} ideas")
    # the seed varies the weights a little, so that another seed shows other names of similar worth
    ideas = [idea._replace(weight=idea.weight * weigh(idea.word) * rng.uniform(1 - _STIR, 1.0)) for idea in found]
    ideas.sort(key=lambda idea: (-idea.weight, idea.kind, idea.word))
    tones = frozenset(tone for tone in map(tone_of, brief.tone) if tone)
    return Material(tuple(ideas), brief_terms, tones, brief.most_letters, brief.most_words or 3, seed)


@lru_cache(maxsize=2)  # a session that is steered mostly changes nothing but how words are weighed
def _terms_and_ideas(
    brief: Brief, without: tuple[str, ...], left: tuple[tuple[str, tuple[str, ...]], ...]
) -> tuple[BriefTerms, tuple[Idea, ...]]:
    terms = BriefTerms.of(brief, without=without, left=dict(left))
    return terms, (*ideas_of(brief, terms, without=without), *local_ideas(terms, local_language(brief)))


def best_pairs(
    first: Sequence[First], second: Sequence[Second], weigh: Callable[[First | Second], float]
) -> Iterator[tuple[First, Second]]:
    """Every pair of two lists that stand weightiest first, by the product of their weights, largest first."""
    if not first or not second:
        return
    front = [(-weigh(first[0]) * weigh(second[0]), 0, 0)]
    while front:
        _, i, j = heapq.heappop(front)
        yield first[i], second[j]
        if j + 1 < len(second):
            heapq.heappush(front, (-weigh(first[i]) * weigh(second[j + 1]), i, j + 1))
        if j == 0 and i + 1 < len(first):
            heapq.heappush(front, (-weigh(first[i + 1]) * weigh(second[0]), i + 1, 0))


def title(*words: str) -> str:
    """Words as a name is written: each with a capital, small words between in lower case."""
    small = ("of", "and", "the", "on", "to", "in", "by", "a", "an", "as", "for", "my", "or")
    return " ".join(
        word if word in small and place else word[:1].upper() + word[1:] for place, word in enumerate(words)
    )
