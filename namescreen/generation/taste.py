"""What a maker likes, and how it moves names up or down a page; their scores stay what they are.

A score says how good a name is for the brief, so that pages can be compared. The order on a page is another value, the
`rank`: the score times factors around 1 for what was liked, without bounds, so that no amount of keeping makes all
names equal.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass, field

from ..text import tokenize
from .candidate import Candidate, Proposal
from .ideas import Idea
from .likeness import Model
from .ranking import AS_IT_IS, resemblance
from .wanted import usable_words

__all__ = ["Liking", "Taste", "preferences"]

_FOND = 0.4  # the power of a word's and its term's learned factor in the rank of a name
_MADE = 0.5  # the power of a construction's
_ALIKE = 0.4  # by how much the rank of a name just like a model and of one quite unlike it lie apart
_KIN, _SAME_AGAIN = 1.2, 0.4  # what it adds to be plainly related to a model, and costs to have its very word
_WEAK, _SOUND = 0.25, 0.5
"""Scores at which being related to a model adds nothing to a name, and all: who likes a name wants no weak ones."""
_DRAWN = 4.0  # by how much the weight of a word that is plainly related to a model is raised
_JUST_ADDED, _NEW, _BESIDE = 0.5, 0.6, 0.5
"""What it adds to be plainly about a word that was just added, or given another meaning, what such a name counts among
those asked for, and what is left beside it of being related to a model: the last wish counts most."""
_UNLIKE = 0.6  # what it costs to be just like a name of which the maker wants less
_WORN, _MOST_WORN = 0.07, 4
"""What each name shown with a word costs a made name that has it again, and how many count at most; all these set by
trying sessions."""
_REPEATED = 0.4  # what it costs to be a first name before a word that was shown already
_PRIOR = 12.0  # as many liked names are taken as spread like those shown, before any is
_MOST = 1.7  # the most that a kind can be preferred by
_UNIT = math.log(1.25)  # a word's factor after one name with it was kept


@dataclass(frozen=True)
class Taste:
    """What a maker likes, as learned from what was kept and dropped: factors around 1 on words and
    constructions, names to resemble, names to be unlike, words not to use, and names not to show again; `worn` counts
    the names already shown with each word, `left` holds words with the meanings in which they are not wanted,
    `added` the words that were added, or given another meaning, since the last page."""

    words: Mapping[str, float] = field(default_factory=dict)
    constructions: Mapping[str, float] = field(default_factory=dict)
    models: tuple[str, ...] = ()
    unlike: tuple[str, ...] = ()
    without: tuple[str, ...] = ()
    seen: Collection[str] = ()
    worn: Mapping[str, int] = field(default_factory=dict)
    left: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    added: tuple[str, ...] = ()


def preferences(
    shown: Mapping[str, float], liked: Mapping[str, float], disliked: Mapping[str, float]
) -> dict[str, float]:
    """A factor around 1 for each kind of which names were `shown`: the root of its share of what was liked, by its
    share of what was disliked. Either counts from its share of what was shown (`_PRIOR`), so a kind of which much was
    shown, and as much was kept as of the others, stays at 1."""
    total, good, bad = sum(shown.values()), sum(liked.values()), sum(disliked.values())
    found = {}
    for kind, times in shown.items():
        prior = _PRIOR * times / total
        share = (liked.get(kind, 0.0) + prior) / (good + _PRIOR)
        factor = math.sqrt(share / ((disliked.get(kind, 0.0) + prior) / (bad + _PRIOR)))
        found[kind] = max(1 / _MOST, min(_MOST, factor))
    return found


class Liking:
    """How a taste ranks the names of a brief, whose words are its `company`: they choose what a model means, and are
    wanted though a name with one of them is not."""

    def __init__(self, taste: Taste, company: Iterable[str] = ()) -> None:
        self._taste = taste
        self._models = tuple(Model(text, company) for text in taste.models)
        own = frozenset(company)
        apart = (tuple(word for word in tokenize(model) if word not in own) for model in taste.unlike)
        self._unlike = tuple(filter(None, apart))
        self._added = frozenset(word for text in taste.added for word in usable_words(text))
        self._ideas: Mapping[str, Idea] = {}
        self._terms: Mapping[str, float] = {}

    def among(self, ideas: Mapping[str, Idea]) -> Liking:
        """The same liking, knowing which term of the brief each word stands for."""
        self._ideas = ideas
        self._terms = self._learned_terms()
        return self

    def weight(self, word: str) -> float:
        """A factor for the weight of a word among the ideas of the brief: words like a model are drawn early."""
        kinship = max((model.of_word(word) for model in self._models), default=0.0)
        return self._taste.words.get(word, 1.0) * (1 + _DRAWN * kinship)

    def kinship(self, proposal: Proposal) -> float | None:
        """How plainly a name is related to the closest of the models, 0 to 1; None if there are none."""
        return max((model.kinship(proposal) for model in self._models), default=None)

    def rank(self, proposal: Proposal, score: float) -> float:
        """The value by which a name of this score takes its place, but for its `pull`: higher is earlier, without
        bounds."""
        rank = score
        if self._models:
            # A factor: what is far from the brief stays far, however much it is built like the model.
            alike = max(resemblance(proposal, model.words) for model in self._models)
            rank *= 1 + _ALIKE * (alike - 0.5)
        unlike = max((resemblance(proposal, model) for model in self._unlike), default=0.0)
        rank -= _UNLIKE * max(0.0, unlike - 0.5)
        made = self._taste.constructions.get(proposal.construction, 1.0) ** _MADE
        return float(rank * self._fondness(proposal.sources) * made)

    def pull(
        self, proposal: Proposal, score: float, kinship: float | None, about: Collection[str]
    ) -> tuple[float, float]:
        """What is added to the rank of a name for what the maker asked for just now, the less the weaker the name is:
        to be related to a model, or about a word that was just added; less than nothing for the model's very word. And
        how plainly it is such a name, in [0, 1]."""
        if any(model.holds(proposal) for model in self._models):
            return -_SAME_AGAIN, 0.0
        sound = max(0.0, min(1.0, (score - _WEAK) / (_SOUND - _WEAK)))
        new = float(not self._added.isdisjoint(about))
        related = (kinship or 0.0) * (_BESIDE if self._added else 1.0)
        return sound * max(_KIN * related, _JUST_ADDED * new), max(related, _NEW * new)

    def wear(self, candidate: Candidate) -> float:
        """What a made name costs for its words on the pages before: the same idea again tires."""
        worn = min(_MOST_WORN, max(self._taste.worn.get(word, 0) for word in candidate.sources))
        if candidate.construction in AS_IT_IS:
            whole = candidate.text.casefold() in map(str.casefold, candidate.sources)
            return 0.0 if whole or not worn else _REPEATED  # a first name before a word that was shown adds little
        return _WORN * worn

    def term_of(self, word: str) -> str:
        """The term of the brief that a word stands for; "" where it stands for none."""
        idea = self._ideas.get(word)
        return idea.term if idea else ""

    def _fondness(self, sources: tuple[str, ...]) -> float:
        """A factor around 1 from what was learned about its sources, and about the terms of the brief they stand for:
        a word is shown once, but what it stands for has more."""
        learned = [
            self._taste.words.get(source, 1.0) * self._terms.get(self.term_of(source), 1.0) for source in sources
        ]
        return float((sum(learned) / len(learned)) ** _FOND)

    def _learned_terms(self) -> dict[str, float]:
        """A factor around 1 for each term of the brief, from what was learned about the words that stand for it."""
        shown: Counter[str] = Counter()
        liked: dict[str, float] = {}
        disliked: dict[str, float] = {}
        for word in {*self._taste.worn, *self._taste.words}:
            if term := self.term_of(word):
                learned = math.log(self._taste.words.get(word, 1.0)) / _UNIT
                shown[term] += max(1, self._taste.worn.get(word, 0))
                side = liked if learned > 0 else disliked
                side[term] = side.get(term, 0.0) + abs(learned)
        return preferences(shown, liked, disliked)
