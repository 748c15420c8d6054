"""Closeness of two words in meaning, from the relations between their senses.

Every kind of relation has a weight in [0, 1]; where two words are related in several ways the strongest
counts. Up and down the hierarchy the weight follows Lin's measure (Lin 1998) on intrinsic information
content (Seco, Veale and Hayes 2004: the more senses lie below a sense, the less information it has), less a tenth for
every step after the first. Words without a relation are compared by the Moby Thesaurus: the more entries they share,
the closer, but never as close as related words. Everything is symmetric by construction. The weights state an
ordering (same, synonym, derived, similar, broader, sister, part, opposite), not fitted to
data."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Callable, Iterable
from functools import cached_property, lru_cache, partial
from typing import TYPE_CHECKING, NamedTuple

from ..native import choose
from .embedding import thesaurus_cosine

if TYPE_CHECKING:
    from ctypes import CDLL

    from ..native.senses import RelatedWords
    from .wordnet import Entry, Lexicon

__all__ = ["FLOOR", "SenseSimilarity"]

SYNONYM = 0.9
INFLECTED = 0.97  # glass, glasses: an inflected form that has become a separate word
OPPOSITE = 0.35
CONTRARY = 0.5  # closeness to an opposite from which a word is one too
ALIKE = 0.6  # closeness from which two words are no opposites through their synonyms (daybreak, sunrise)
HIERARCHY = 0.8
SIMILAR, FEW = 0.6, 20  # adjectives similar to the same third one (drowsy, sleepy), if it has at most so many
STEP = 0.9
ONE_STEP = 0.55  # a broader word one step up, if at most
TOO_WIDE = 1000  # senses lie below it: wider ones say too little (person, artifact)
FLOOR = 0.4
"""Words below this closeness are not neighbours; path-based closeness between others never exceeds it."""
BY_SYMBOL = {"&": 0.7, "$": 0.7, "*": 0.55, "<*": 0.55, ">": 0.55, "<>": 0.55, "=": 0.55, "^": 0.55,
             "%p": 0.5, "#p": 0.5, "%m": 0.5, "#m": 0.5, "%s": 0.5, "#s": 0.5,
             "+": 0.65, "\\": 0.65, "<\\": 0.65, ";c": 0.45, "-c": 0.45}  # fmt: skip
LEXICAL = 0.8  # derived or pertaining, where the relation joins these two very words
SENSE_TOTALS = {"n": 82_115, "v": 13_767}  # WordNet 3.0, wnstats(7WN)
MOST_SENSES = 6
STRONGEST = 9  # the strength of the leading sense of a word
MOST_EXPANDED = 1 << 13  # words whose neighbours are kept in memory
MOST_STEPS = 3  # between senses through a common ancestor, fewer than so many of them straight up or down
MEASURES = {
    "floor": FLOOR, "hierarchy": HIERARCHY, "one_step": ONE_STEP, "too_wide": TOO_WIDE, "strongest": STRONGEST,
    "nouns": math.log(SENSE_TOTALS["n"]), "verbs": math.log(SENSE_TOTALS["v"]),
    **{f"step{power}": STEP**power for power in range(6)},
}  # fmt: skip
"""What the compiled code is to reckon with, which has these measures and not their values."""


class _Around(NamedTuple):
    """The senses and words around one word; do not change."""

    own: dict[str, int]
    """Its senses, and how strong each is (1 to 9) for it."""
    reached: dict[str, list[tuple[float, int]]]
    """Senses one relation away, and its own: the weights of the relations, each with the strength of the sense it
    starts from."""
    joined: dict[str, float]
    """Closeness of the words that a relation joins to this very word."""
    opposite: frozenset[str]
    inflected: frozenset[str]


class _Opposites(NamedTuple):
    """The opposites of one word, and these with those of its synonyms, in order."""

    own: frozenset[str]
    all: tuple[str, ...]


@lru_cache(maxsize=1 << 14)
def _between(weight: float, strength: int, other: int) -> float:
    """Closeness of two words through a relation of two senses, given how strong each sense is for its word."""
    return round(weight * math.sqrt(strength * other) / STRONGEST, 4)


def _has_neighbours(weight: float, strength: int) -> bool:
    """Whether some word is a neighbour through a relation of a sense of this strength."""
    return _between(weight, strength, STRONGEST) >= FLOOR


def _reached(around: _Around) -> list[tuple[str, float, int]]:
    """The senses that may bring neighbours, with every weight and strength by which they are reached."""
    ways = ((sense_id, *way) for sense_id, ways in around.reached.items() for way in ways)
    return [way for way in ways if _has_neighbours(*way[1:])]


def _with_cousins(around: _Around) -> list[tuple[str, int]]:
    """Its own senses whose cousins may be neighbours, with their strengths."""
    return [one for one in around.own.items() if _has_neighbours(HIERARCHY, one[1])]


def _ask(related: RelatedWords, lemma: str, around: _Around) -> list[tuple[str, float]]:
    """`SenseSimilarity._words_of` in compiled code."""
    wanted = (lemma, *around.inflected, *around.opposite)
    return related.neighbours(_with_cousins(around), _reached(around), wanted)


class SenseSimilarity:
    """Closeness in meaning of the words of one lexicon; results are cached."""

    def __init__(self, words: Lexicon) -> None:
        self._lexicon = words
        self.neighbours = lru_cache(maxsize=1 << 13)(self._all_neighbours)
        self._expansions: dict[str, dict[str, float]] = {}
        self._around = lru_cache(maxsize=1 << 13)(self._find_around)
        self._similar_to = lru_cache(maxsize=1 << 13)(self._find_similar_to)
        self._opposites = lru_cache(maxsize=1 << 14)(self._find_opposites)
        self._ancestors = lru_cache(maxsize=1 << 13)(self._find_ancestors)
        self._information = lru_cache(maxsize=1 << 16)(self._find_information)
        self._information_below = lru_cache(maxsize=1 << 13)(self._find_information_below)
        self._above = lru_cache(maxsize=1 << 15)(self._find_above)
        self.closeness = lru_cache(maxsize=1 << 16)(self._find_closeness)
        self.are_opposite = lru_cache(maxsize=1 << 14)(self._find_opposite)

    def _forms(self, word: str) -> tuple[str, ...]:
        word = word.lower()
        return (word,) if self._lexicon.is_lemma(word) else self._lexicon.bases(word)

    def _find_closeness(self, word_a: str, word_b: str, least: float = 0.0) -> float | None:
        """How close two words are in meaning, in [0, 1], 1 for one word and its inflections; symmetric.

        About 0.9 for synonyms, 0.8 derived words, 0.7 broader and sister terms of a narrow class, 0.6 for adjectives
        similar to a third one, 0.5 parts, below 0.4 distant or opposite. None if either word is unknown. A value below
        `least` may be returned as 0: if `least` is 0.4 (`FLOOR`) or more, only neighbours are computed."""
        forms_a, forms_b = self._forms(word_a), self._forms(word_b)
        if not forms_a or not forms_b:
            return None
        if set(forms_a) & set(forms_b):
            return 1.0
        best = 0.0
        for a in forms_a:
            for b in forms_b:
                near = self._near(a, b)
                best = max(best, self._far(a, b) if near is None and least < FLOOR else near or 0.0)
        return best

    def _find_opposite(self, word_a: str, word_b: str) -> bool:
        """Whether two words, in some of their forms, are opposites (hot, cold), or one is close to what is opposite to
        the other or to its synonyms (dawn, dusk; indirect antonyms of WordNet), unless they are close themselves."""
        return any(
            b in self._opposites(a).own
            or ((self._is_contrary(a, b) or self._is_contrary(b, a)) and (self.closeness(a, b, ALIKE) or 0.0) < ALIKE)
            for a in self._forms(word_a)
            for b in self._forms(word_b)
        )

    def expect_opposites(self, word: str) -> None:
        """Prepare for `are_opposite` of a word and many others: what its opposites are close to is found once."""
        for lemma in self._forms(word):
            for one in self._opposites(lemma).all:
                self.neighbours(one)

    def _is_contrary(self, lemma: str, other: str) -> bool:
        return any((self.closeness(one, other, CONTRARY) or 0.0) >= CONTRARY for one in self._opposites(lemma).all)

    def _near(self, lemma_a: str, lemma_b: str) -> float | None:
        """The value of `_lemma_neighbours` for two different words, None if they are not neighbours.

        If neither has been expanded, their own senses alone are compared: an expansion costs more than many
        pairs."""
        for one, other in ((lemma_a, lemma_b), (lemma_b, lemma_a)):
            if one in self._expansions:
                return self._expansions[one].get(other)
        a, b = self._around(lemma_a), self._around(lemma_b)
        if lemma_b in a.opposite:
            return OPPOSITE
        if lemma_b in a.inflected:
            return INFLECTED
        best = a.joined.get(lemma_b, 0.0)
        for sense_id in a.reached.keys() & b.own.keys():
            there = b.own[sense_id]
            best = max(best, *(_between(weight, strength, there) for weight, strength in a.reached[sense_id]))
        above_a, above_b = self._ancestors(lemma_a), self._ancestors(lemma_b)
        for ancestor in above_a.keys() & above_b.keys():
            for one, up, strength in above_a[ancestor]:
                for other, down, there in above_b[ancestor]:
                    if up + down <= MOST_STEPS and one != other:
                        weight = self._related(ancestor, one, other, up + down)
                        best = max(best, _between(weight, strength, there)) if weight >= FLOOR else best
        return best if best >= FLOOR else None

    def _find_around(self, lemma: str) -> _Around:
        words = self._lexicon
        senses = words.sense_strengths(lemma)
        own = dict(senses)
        inflected = frozenset(words.inflections(lemma))
        opposite = self._opposites(lemma).own
        around = _Around(own, defaultdict(list), {}, opposite, inflected)
        for sense_id, strength in senses:
            around.reached[sense_id].append((SYNONYM, strength))
            for symbol, other_id, here, there in words.pointers(sense_id, *BY_SYMBOL):
                weight = BY_SYMBOL[symbol]
                around.reached[other_id].append((weight, strength))
                if symbol == "&":
                    for similar, value in self._similar_to(other_id).items():
                        around.reached[similar].append((value, strength))
                if here and words.entry(sense_id).words[here - 1].lower() == lemma:
                    other = words.entry(other_id)
                    word = other.words[there - 1].lower()
                    value = _between(LEXICAL, strength, other.strengths[there - 1])
                    around.joined[word] = max(value, around.joined.get(word, 0.0))
        return around

    def _find_similar_to(self, sense_id: str) -> dict[str, float]:
        """The senses similar to a sense, with the weight of any two of them; none where they are so many that they have
        little in common (red, blue)."""
        similar = self._lexicon.related_ids(sense_id, "&")
        weight = SIMILAR * min(1.0, FEW / max(len(similar), 1))
        return dict.fromkeys(similar, weight) if _has_neighbours(weight, STRONGEST) else {}

    def _find_ancestors(self, lemma: str) -> dict[str, list[tuple[str, int, int]]]:
        """Senses a few steps above those of a word, each with the sense below it, the steps, and its strength."""
        found: dict[str, list[tuple[str, int, int]]] = defaultdict(list)
        for sense_id, strength in self._lexicon.sense_strengths(lemma):
            for ancestor, steps in self._above(sense_id).items():
                if steps < MOST_STEPS:
                    found[ancestor].append((sense_id, steps, strength))
        return found

    def _find_opposites(self, lemma: str) -> _Opposites:
        words = self._lexicon
        own: set[str] = set()
        contrary: set[str] = set()
        for sense_id in words.sense_ids(lemma):
            for _, other_id, here, there in words.pointers(sense_id, "!"):
                joins = here and words.entry(sense_id).words[here - 1].lower() == lemma
                (own if joins else contrary).add(words.entry(other_id).words[there - 1].lower())
        return _Opposites(frozenset(own), tuple(sorted(own | contrary)))

    def _all_neighbours(self, word: str) -> dict[str, float]:
        """Every lexicon word related to `word` with its closeness, at least `FLOOR` (opposites: 0.35),
        itself 1.0.

        Consistent with `closeness`; the words are base forms. Empty for an unknown word. Do not change the
        result."""
        forms = self._forms(word)
        if len(forms) == 1:
            return self._expanded(forms[0])
        merged: dict[str, float] = {}
        for form in forms:
            for other, score in self._expanded(form).items():
                merged[other] = max(score, merged.get(other, 0.0))
        for other in [one for one, score in merged.items() if score < FLOOR]:
            merged[other] = self.closeness(word, other) or 0.0  # the opposite of one form, but not of another
        return merged

    def _expanded(self, lemma: str) -> dict[str, float]:
        """The neighbours of `lemma`, cached; do not change the result."""
        found = self._expansions.get(lemma)
        if found is None:
            if len(self._expansions) >= MOST_EXPANDED:
                self._expansions.clear()
            found = self._expansions[lemma] = self._lemma_neighbours(lemma)
        return found

    def _lemma_neighbours(self, lemma: str) -> dict[str, float]:
        around = self._around(lemma)
        found = dict(around.joined)
        for word, score in self.related_words(lemma, around):
            if score > found.get(word, 0.0):
                found[word] = score
        found.update(dict.fromkeys(sorted(around.inflected), INFLECTED))
        found.update(dict.fromkeys(sorted(around.opposite), OPPOSITE))
        found[lemma] = 1.0
        return {word: score for word, score in found.items() if score >= FLOOR or word in around.opposite}

    @cached_property
    def related_words(self) -> Callable[[str, _Around], Iterable[tuple[str, float]]]:
        """Gives the words of the senses that are reached from a word, and of their cousins, with their closeness: at
        least those that are close enough, in the order in which they are met."""

        def compiled(library: CDLL) -> Callable[[str, _Around], Iterable[tuple[str, float]]]:
            return partial(_ask, self._lexicon.related_words(library, MEASURES))

        return choose(compiled, lambda: self._words_of)

    def _words_of(self, _: str, around: _Around) -> Iterable[tuple[str, float]]:
        words = self._lexicon
        found: dict[str, float] = defaultdict(float)

        def add(entry: Entry, weight: float, strength: int) -> None:
            for other, there in zip(entry.words, entry.strengths, strict=True):
                score = _between(weight, strength, there)
                if score > found[other.lower()]:
                    found[other.lower()] = score

        for sense_id, weight, strength in _reached(around):
            add(words.entry(sense_id), weight, strength)
        for sense_id, strength in _with_cousins(around):
            for number, score in self._cousins(sense_id, strength).items():
                add(words.entry_at(number), score, strength)
        return found.items()

    def _cousins(self, sense_id: str, strength: int) -> dict[int, float]:
        """The senses up to three steps away through a common ancestor, no more than two of them straight down, by their
        numbers in the hierarchy; those of which some word may be a neighbour of a word with a sense of this strength.
        """
        found: dict[int, float] = {}
        tree, pos = self._lexicon.hierarchy, sense_id[0]
        below, informative = tree.below, self._information_below
        number = tree.number(sense_id)
        own = informative(pos, below[number])
        for ancestor, up in tree.above(number, MOST_STEPS).items():
            shared, narrow = informative(pos, below[ancestor]), below[ancestor] <= TOO_WIDE
            layer = [ancestor]
            for down in range(min(MOST_STEPS - up, MOST_STEPS - 1) + 1):
                steps = up + down
                if down:
                    layer = [one for above in layer if below[above] for one in tree.narrower(above)]
                scores: dict[int, float] = {}  # by how many senses are below: it decides the score, and is mostly 0
                for one in layer:
                    size = below[one]
                    score = scores.get(size)
                    if score is None:
                        score = scores[size] = self._lin(shared, own, informative(pos, size), steps, narrow)
                    if score > found.get(one, 0.0):
                        found[one] = score
                if HIERARCHY * 2 * shared / ((own + shared) or 1.0) * STEP**steps < FLOOR and steps:
                    break
        found.pop(number, None)
        near = {score for score in set(found.values()) if _has_neighbours(score, strength)}
        return {one: score for one, score in found.items() if score in near}

    def _related(self, ancestor: str, one: str, other: str, steps: int) -> float:
        """The relatedness of two senses through a common ancestor, with this many steps between them."""
        information = self._information
        narrow = self._lexicon.entry(ancestor).below <= TOO_WIDE
        return self._lin(information(ancestor), information(one), information(other), steps, narrow)

    @staticmethod
    def _lin(shared: float, own: float, other: float, steps: int, narrow: bool = False) -> float:
        """Lin's measure, less a tenth for each step after the first; `narrow`: one step up says something at least."""
        total = own + other
        score = HIERARCHY * 2 * shared / total * STEP ** max(steps - 1, 0) if total else 0.0
        return max(score, ONE_STEP) if narrow and steps == 1 else score

    def _far(self, lemma_a: str, lemma_b: str) -> float:
        """Closeness of two words that are not neighbours, by path or by the thesaurus they share: below `FLOOR`."""
        best = (FLOOR - 0.01) * max(thesaurus_cosine(lemma_a, lemma_b, self._lexicon.bases) or 0.0, 0.0)
        senses_b = self._leading(lemma_b)
        for a, strength_a in self._leading(lemma_a):
            for b, strength_b in senses_b:
                if a[0] == b[0] and a[0] in SENSE_TOTALS:
                    best = max(best, self._through_ancestor(a, b) * math.sqrt(strength_a * strength_b) / 9)
        return round(min(best, FLOOR - 0.01), 4)

    def _leading(self, lemma: str) -> list[tuple[str, int]]:
        return sorted(self._lexicon.sense_strengths(lemma), key=lambda pair: (-pair[1], pair[0]))[:MOST_SENSES]

    def _through_ancestor(self, sense_a: str, sense_b: str) -> float:
        """Lin's measure through the common ancestor that gives most."""
        above_a, above_b = self._above(sense_a), self._above(sense_b)
        own, other = self._information(sense_a), self._information(sense_b)
        return max(
            (
                self._lin(self._information(one), own, other, above_a[one] + above_b[one])
                for one in above_a.keys() & above_b.keys()
            ),
            default=0.0,
        )

    def _find_information(self, sense_id: str) -> float:
        return self._information_below(sense_id[0], self._lexicon.entry(sense_id).below)

    @staticmethod
    def _find_information_below(pos: str, below: int) -> float:
        """Intrinsic information content in [0, 1]: 1 for a sense with nothing below it."""
        total = SENSE_TOTALS.get(pos)
        return 1 - math.log(below + 1) / math.log(total) if total else 0.0

    def _find_above(self, sense_id: str) -> dict[str, int]:
        """The sense and all its ancestors, with the fewest steps to each."""
        found = {sense_id: 0}
        layer = [sense_id]
        while layer:
            layer = [up for one in layer for up in self._lexicon.related_ids(one, "@", "@i") if up not in found]
            step = max(found.values()) + 1
            for one in layer:
                found.setdefault(one, step)
        return found
