"""The names of a register that are likeliest to be closest to one name, found without scoring every one of them.

1. By words: those that share most bigrams, of letters or of phonemes, with a word of the name, and those that mean the
   same or are the same, are compared with it (`word_scores`); a register of few words (`FEW_WORDS`) is compared word by
   word. Of the names that hold a similar word the likeliest are taken, by a score simpler than the full one.
2. By the whole, without spaces (thyme pot, thymepot): of the names that share most bigrams those that look most alike.

`rescoring` scores what is found in full. How many of the closest names that misses is measured in
tests/bench/bench_recall.py.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from ..closeness.many import looks
from .packing import distinct
from .word_scores import WordScores

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from ..closeness import Features
    from .index import Index

    Places = NDArray[np.int64]
    Values = NDArray[np.float64]

__all__ = ["nearest"]

FEW_WORDS = 2000
"""Registers with at most so many distinct words are searched word by word."""
BY_LETTERS = 1000
"""In larger ones: the words that are compared with a word of the name because they share most bigrams of letters with
it."""
MANY_WORDS, BY_SOUNDS, BY_SOUNDS_OF_MANY = 20_000, 3000, 600
"""The readings that share most bigrams of phonemes with one of its own, whose words are compared too, in registers of
at most so many distinct words, and in larger ones, where more would cost much and find 0.008 more of the 50 closest. Of
10,000 names 0.955 of the 50 closest are found so, as by comparing all of their 17,631 words, in less than half the
time; with 600 readings 0.945."""
SHARING, ALIKE = 3000, 500
"""The names that share most bigrams with the whole, and how many of them are taken because they look most alike. With
them 0.95 of the 50 closest of 200,000 names are found, without 0.89."""
FULLER_SIDE = 0.3
"""The weight of the better covered name, which decides how far a mark counts that is incorporated in a longer one; the
rest falls to the worse covered name. This and the next two are reasoned, not fitted."""
FIRST_WORD, COUNTS_FIRST = 0.25, 0.1
"""Share of the remaining gap closed when the first words are the same, and the weight from which a word counts as the
first: an article in front changes nothing."""


class _Search:
    """One name against the words of an index."""

    def __init__(self, index: Index, name: Features) -> None:
        self._index, self._name = index, name
        words = {word.letters: word for segmentation in name.segmentations for word in segmentation}
        self._words = {letters: WordScores(word, index) for letters, word in words.items()}

    def likeliest(self, count: int, left_out: NDArray[np.bool_] | None, least: float) -> Places:
        """The `count` names that have most in common with the name, word by word, ascending."""
        index, words = self._index, self._words.values()
        few = len(index.words) <= FEW_WORDS
        for word in words:
            if few:
                word.score(np.arange(len(index.words)))
            else:
                word.score_alike(BY_LETTERS, BY_SOUNDS if len(index.words) <= MANY_WORDS else BY_SOUNDS_OF_MANY)
        held = np.zeros(len(index.names), bool)
        for word in words:
            rows, _ = index.postings.gather(word.similar())
            held[index.row_name[rows]] = True
        if left_out is not None:
            held &= ~left_out
        names = held.nonzero()[0]
        if not few:  # by the words that were met, then by all words of the likelier half
            names = names[_greatest(self._overall(names), 2 * count)]
            held_words, _ = index.row_words.gather(index.rows_of_names(np.sort(names)))
            for word in words:
                word.score(distinct(held_words.astype(np.int64)))
        names = np.sort(names)
        overall = self._overall(names)
        names, overall = names[overall >= least], overall[overall >= least]
        return np.sort(names[_greatest(overall, count)])

    def _overall(self, names: Places) -> Values:
        """How much each of some names, ascending, has in common with the name by the words that are scored."""
        index = self._index
        if not len(names):
            return np.zeros(0)
        rows = index.rows_of_names(names)
        words, ends = index.row_words.gather(rows)
        starts = ends[:-1]
        strength, counts = index.strength[words], index.dominance[words]
        whole, first = np.add.reduceat(counts, starts), _firsts(strength, starts, np.diff(ends))
        best = np.zeros(len(rows))
        for segmentation in self._name.segmentations:
            leading = next((word for word in segmentation if word.weight.strength >= COUNTS_FIRST), segmentation[0])
            similar = {word.letters: self._words[word.letters].similarity[words] for word in segmentation}
            share = np.zeros(len(rows))
            for word in segmentation:
                share += word.weight.dominance * np.maximum.reduceat(similar[word.letters], starts)
            share /= sum(word.weight.dominance for word in segmentation)
            other = np.add.reduceat(counts * np.max(list(similar.values()), axis=0), starts) / whole
            value = (1 - FULLER_SIDE) * np.minimum(share, other) + FULLER_SIDE * np.maximum(share, other)
            firsts = similar[leading.letters][first] * np.minimum(strength[first], leading.weight.strength)
            np.maximum(best, value + FIRST_WORD * firsts * (1 - value), out=best)
        return np.asarray(np.maximum.reduceat(best, np.searchsorted(index.row_name[rows], names)), np.float64)


def _firsts(weight: Values, starts: Places, counts: Places) -> Places:
    """Where the first word of each row stands that counts as one (`COUNTS_FIRST`)."""
    place = np.where(weight >= COUNTS_FIRST, np.arange(len(weight)), len(weight))
    found = np.minimum.reduceat(place, starts)
    return np.where(found < starts + counts, found, starts)


def _greatest(values: Values, count: int) -> Places:
    """Where the `count` greatest of some values stand, in no order."""
    if len(values) <= count:
        return np.arange(len(values))
    return np.argpartition(values, -count)[-count:]


def _alike(index: Index, name: Features, left_out: NDArray[np.bool_] | None, least: float) -> Places:
    """The names that look most like a name, both without spaces, at least as much as `least`."""
    places = index.name_bigrams.most_alike(name.letters, SHARING, left_out)
    look = looks(index.names.measures(name.letters, places), np.zeros(len(places), bool))
    places, look = places[look >= least], look[look >= least]
    return places[_greatest(look, ALIKE)]


def nearest(
    index: Index, name: Features, count: int, left_out: NDArray[np.bool_] | None = None, least: float = 0.0
) -> Places:
    """The names of `index` likeliest to be closest to `name` overall, ascending, none of them `left_out`: `count` by
    their words and `ALIKE` by the whole, each with at least `least` in common."""
    if not name.segmentations or not len(index.names):
        return np.zeros(0, np.int64)
    by_words = _Search(index, name).likeliest(count, left_out, least)
    return distinct(np.concatenate([by_words, _alike(index, name, left_out, least)]))
