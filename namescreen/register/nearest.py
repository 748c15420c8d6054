"""The names of a register closest to one name, found without scoring every one of them.

Overall closeness rests on the closeness of words, so the search goes by words:

1. A register of few words (`FEW_WORDS`) is compared word by word. The result is exact.
2. In a larger one, words that look like a word of the name, mean the same or are the same give a first set of names.
   The k-th best score of that set is the one to beat.
3. A name can beat the k-th score only through a word pair above a threshold
   (`_Search._minimum_word_similarity`). Upper bounds in look and sound find all such words.
4. Names that hold them are scored in full where their upper bound passes the k-th score. Unscored words count at
   their upper bound.
5. Unspaced names (thyme pot, thymepot) are found apart, by the letters and phonemes of the whole.

Scores are those of `closeness.retrieval`, made to be bounded; `rescoring` scores what is found in full. Every filter is
an upper bound, with two exceptions: names below `LEAST_LEVEL`, and unspaced names that only sound similar and share few
letters (`SHARED_JOINED`). tests/bench/bench_register.py measures how often that costs a place.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from ..closeness import Features
from ..closeness.retrieval import (
    COUNTS_FIRST,
    JOINED,
    JOINED_FLOOR,
    JOINED_SOUND_FLOOR,
    PARAMETERS,
    Parameters,
    add_first_word,
    combine_coverage,
    lower_if_weak,
    similarity_unspaced,
    stop_words,
)
from .packing import distinct
from .word_scores import WordScores

if TYPE_CHECKING:
    from collections.abc import Iterable

    from numpy.typing import NDArray

    from .index import Index

    Places = NDArray[np.int64]
    Values = NDArray[np.float64]

__all__ = ["nearest"]

FEW_WORDS = 20_000
"""Registers with at most so many distinct words are searched word by word: the result is exact."""
FIRST_LEVEL, FIRST_SOUND, LEAST_LEVEL = 0.34, 0.45, 0.2
"""In larger registers: the similarity of words that is searched first, in appearance and, where that gives few names,
in sound; and the lowest that is searched. The first two change only the time."""
SHORT = 10
"""Letters up to which every unspaced name with a similar sound is found."""
SHARED_JOINED, SHARED_LONG, SHARED_IN_ORDER = 0.52, 0.75, 0.5
"""Share of letters that longer unspaced names with a similar sound must have in common: the first and 0.01 for each
letter, up to the second; and the share in the same order. Of pairs of more than ten letters with a sound similarity of
0.8, measured over 160 names and a million marks, one in a hundred has less than 0.5 in order."""
PLACES = 9
"""Decimal places of closeness that are compared and returned: a sum in another order differs in its last digits."""
ROUNDING = 10.0**-PLACES


class _Search:
    """One name against one index."""

    def __init__(
        self,
        index: Index,
        name: Features,
        parameters: Parameters,
        left_out: NDArray[np.bool_] | None,
        sure: int,
        least: float,
    ) -> None:
        self.index, self.name, self.parameters = index, name, parameters
        self._words: dict[str, WordScores] = {}
        for segmentation in name.segmentations:
            for word in segmentation:
                if word.letters not in self._words:
                    self._words[word.letters] = WordScores(word, index, parameters)
        self.done = np.zeros(len(index.names), bool)
        self._left_out = left_out
        self._sure, self._least = sure, least
        self.found: list[tuple[Places, Values]] = []

    def score(self, names: Places) -> None:
        """Score some names in full, those not yet scored."""
        names = distinct(names)
        names = names[~self.done[names]]
        if not len(names):
            return
        self.done[names] = True
        rows = self.index.rows_of_names(names)
        words, _ = self.index.row_words.gather(rows)
        held = distinct(words.astype(np.int64))
        for word in self._words.values():
            word.score(held)
        values = self.overall(rows)
        of = self.index.row_name[rows]
        first = np.searchsorted(of, names)
        self.found.append((names, np.maximum.reduceat(values, first)))

    def overall(self, rows: Places, bound: float | None = None) -> Values:
        """Overall closeness of some rows by their scored words.

        With the upper `bound` of unscored words it is an upper bound: what weak words take off is left on.
        """
        parameters = self.parameters
        words, ends = self.index.row_words.gather(rows)
        starts = ends[:-1]
        weight = self.index.weight[words]
        whole = np.add.reduceat(weight, starts)
        counts = np.diff(ends)
        best = np.zeros(len(rows))
        for segmentation in self.name.segmentations:
            theirs = np.zeros(len(words))
            share = np.zeros(len(rows))
            ours = np.zeros(len(rows))
            first = next((word for word in segmentation if word.weight >= COUNTS_FIRST), segmentation[0])
            for word in segmentation:
                against = self._words[word.letters].of(words, bound)
                if word is first:
                    of_first = against
                np.maximum(theirs, against, out=theirs)
                nearest_here = np.maximum.reduceat(against, starts)
                share += word.weight * nearest_here
                ours += nearest_here
            own = sum(word.weight for word in segmentation)
            hits = np.add.reduceat(weight * theirs, starts)
            value = combine_coverage(share / own, hits / whole, parameters)
            if parameters.first_word:
                theirs_first = _firsts(weight, starts, counts)
                firsts = of_first[theirs_first] * np.minimum(weight[theirs_first], first.weight)
                value = add_first_word(value, firsts, parameters)
            if bound is not None:
                np.maximum(best, value, out=best)
                continue
            matched = ours + np.add.reduceat(theirs, starts)
            strength = np.divide(share + hits, matched, out=np.zeros(len(rows)), where=matched > 0)
            np.maximum(best, lower_if_weak(value, strength, parameters), out=best)
        return best

    def last_place(self, top: int) -> float:
        """The `top`-th best score so far; 0 while there are fewer."""
        values = np.concatenate([values for _, values in self.found]) if self.found else np.zeros(0)
        top = min(self._sure, top)
        return max(self._least, float(np.partition(values, -top)[-top]) if len(values) >= top else 0.0)

    def by_words(self, top: int) -> None:
        """Score the names that hold words similar to those of the name, and all that may be among the closest."""
        if len(self.index.words) <= FEW_WORDS:
            for word in self._words.values():
                word.score(np.arange(len(self.index.words)))
            self._rank(top, 0.0)
            return
        level = max(FIRST_LEVEL, self._minimum_word_similarity(self._least))
        for word in self._words.values():
            word.score_by_look(level)
        self._rank(top, level, at_once=True)
        level = max(LEAST_LEVEL, self._minimum_word_similarity(self.last_place(top)))
        if level < FIRST_LEVEL:
            for word in self._words.values():
                word.score_by_sound(FIRST_SOUND)
            self._rank(top, level, at_once=True)
            level = max(LEAST_LEVEL, self._minimum_word_similarity(self.last_place(top)))
        for word in self._words.values():
            word.score_by_look(level)
            word.score_by_sound(level)
        self._rank(top, level)

    def _minimum_word_similarity(self, overall: float) -> float:
        """The least similarity of the most similar words of two names that are so close overall.

        With all words at most v similar, both shares are at most v, and the first words close at most `first_word` v of
        the gap: the names are at most v + first_word v (1 - v) close.
        """
        gain = self.parameters.first_word
        return overall if not gain else ((1 + gain) - ((1 + gain) ** 2 - 4 * gain * overall) ** 0.5) / (2 * gain)

    def _rank(self, top: int, level: float, at_once: bool = False) -> None:
        """Score the names that hold a word at least `level` similar and may beat the last place.

        Unscored words count at their upper bound. With `at_once` they count 0, and only the names that come out closest
        are scored.
        """
        index = self.index
        held = np.zeros(len(index.names), bool)
        for word in self._words.values():
            holding, _ = index.postings.gather(word.at_least(max(level - ROUNDING, ROUNDING)))
            held[index.row_name[holding]] = True
        if self._left_out is not None:
            held &= ~self._left_out
        names = (held & ~self.done).nonzero()[0]
        if not len(names):
            return
        rows = index.rows_of_names(names)
        first = np.searchsorted(index.row_name[rows], names)
        if not level:
            self.done[names] = True
            self.found.append((names, np.maximum.reduceat(self.overall(rows), first)))
            return
        if at_once:
            guess = np.maximum.reduceat(self.overall(rows), first)
            self.score(names[_greatest(guess, 2 * top)])
            return
        most = np.maximum.reduceat(self.overall(rows, level), first)
        order = np.argsort(-most, kind="stable")
        names, most = names[order], most[order]
        # Names that tie with the last place are scored too: the choice among them must not depend on a bound.
        while len(names) and most[0] >= (last := self.last_place(top) - ROUNDING):
            # Most of these are needed in any case: the last place rises little.
            likely = int(np.searchsorted(-most, -last))
            part = max(top, min(likely, 10 * top))
            self.score(names[:part])
            names, most = names[part:], most[part:]

    def unspaced(self, top: int) -> None:
        """Score names that are close only without their spaces."""
        index = self.index
        last = max(self.last_place(top) - ROUNDING, ROUNDING)
        looks = min(1.0, JOINED_FLOOR + last / JOINED * (1 - JOINED_FLOOR))
        names, raw = index.names.near(self.name.letters, looks)
        value = np.where(raw == 1.0, 1.0, similarity_unspaced(raw, JOINED_FLOOR))
        self._raise(names[value > 0], value[value > 0])
        sounds = min(1.0, JOINED_SOUND_FLOOR + last / JOINED * (1 - JOINED_SOUND_FLOOR))
        among = None
        if len(self.name.letters) > SHORT and len(index.words) > FEW_WORDS:
            # The bound on sound grows weak with length: most phonemes are there somewhere. But names that sound similar
            # from end to end share letters, the more of them the longer they are, and in order.
            shared = min(SHARED_LONG, SHARED_JOINED + 0.01 * len(self.name.letters))
            names = index.names.sharing(self.name.letters, shared)
            names = names[index.names.in_order(self.name.letters, names) >= SHARED_IN_ORDER]
            ids, _ = index.name_codes.ids.gather(names)
            among = distinct(ids.astype(np.int64))
        codes, raw = index.name_codes.near(self.name.phoneme_codes, sounds, among)
        owners, ends = index.name_codes.owners.gather(codes)
        names = owners.astype(np.int64)
        joined = similarity_unspaced(np.repeat(raw, np.diff(ends)), JOINED_SOUND_FLOOR)
        apart = ~self._share_a_word(names, stop_words(self.name))
        self._raise(names[apart], joined[apart])

    def _share_a_word(self, names: Places, words: Iterable[str]) -> NDArray[np.bool_]:
        """Which of some names hold one of these words as written (in their first rows)."""
        index = self.index
        sharing = np.zeros(len(names), bool)
        for word in words:
            place = index.words.find(word)
            if place is not None and len(names):
                held, ends = index.row_words.gather(index.name_rows[names].astype(np.int64))
                sharing |= np.logical_or.reduceat(held == place, ends[:-1])
        return sharing

    def _raise(self, names: Places, joined: Values) -> None:
        """Score some names; each is at least as close as its unspaced form."""
        if self._left_out is not None:
            joined, names = joined[~self._left_out[names]], names[~self._left_out[names]]
        if not len(names):
            return
        self.score(names)
        order = np.argsort(names, kind="stable")
        names, joined = names[order], joined[order]
        rows = self.index.rows_of_names(names)
        words, ends = self.index.row_words.gather(rows)
        heaviest = np.maximum.reduceat(self.index.weight[words], ends[:-1])
        sizes = (self.index.name_rows[names + 1] - self.index.name_rows[names]).astype(np.int64)
        first = np.cumsum(sizes) - sizes
        own = max(word.weight for segmentation in self.name.segmentations for word in segmentation)
        strongest = np.maximum(np.maximum.reduceat(heaviest, first), own)
        value = np.where(joined >= 1.0, 1.0, lower_if_weak(joined, strongest, self.parameters))
        self.found.append((names, value))

    def best(self, top: int) -> tuple[Places, Values]:
        """The names found, closest first, equal ones in the order of their first marks."""
        if not self.found:
            return np.zeros(0, np.int64), np.zeros(0)
        names = np.concatenate([names for names, _ in self.found])
        values = np.concatenate([values for _, values in self.found]).round(PLACES)
        order = np.lexsort((-values, names))
        names, values = names[order], values[order]
        keep = np.r_[True, names[1:] != names[:-1]]
        keep &= values > 0
        names, values = names[keep], values[keep]
        carriers = self.index.name_marks
        order = np.lexsort((carriers.values[carriers.start[names]], -values))[:top]
        return names[order], values[order]


def _greatest(values: Values, count: int) -> Places:
    """Where the `count` greatest of some values stand, in no order."""
    if len(values) <= count:
        return np.arange(len(values))
    return np.argpartition(values, -count)[-count:]


def _firsts(weight: Values, starts: Places, counts: Places) -> Places:
    """Where the first word of each row stands that counts as one (`closeness.retrieval.COUNTS_FIRST`)."""
    place = np.where(weight >= COUNTS_FIRST, np.arange(len(weight)), len(weight))
    found = np.minimum.reduceat(place, starts)
    return np.where(found < starts + counts, found, starts)


def nearest(
    index: Index,
    name: Features,
    top: int,
    left_out: NDArray[np.bool_] | None = None,
    *,
    sure: int = 0,
    least: float = 0.0,
) -> tuple[Places, Values]:
    """The `top` names of `index` closest to `name` overall, closest first, and how close they are.

    Names that have nothing in common with `name` (closeness 0) are not among them, nor those `left_out`. Only the
    first `sure` of them (0: all) are certain to be the closest; the others are the best of what was met on the way.
    Names less close than `least` may be left out.
    """
    if not name.segmentations or not len(index.names):
        return np.zeros(0, np.int64), np.zeros(0)
    search = _Search(index, name, PARAMETERS, left_out, sure or top, least)
    search.by_words(top)
    search.unspaced(top)
    return search.best(top)
