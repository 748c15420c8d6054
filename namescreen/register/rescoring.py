"""The names that a search brings, scored in full and put in order.

`nearest` goes by a plainer score; what it brings, more than is wanted, is scored here as `closeness.score`
scores any two names (`closeness.many`), from what the register keeps of its names.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import cache
from typing import TYPE_CHECKING, NamedTuple

import numpy as np
from rapidfuzz.fuzz import token_set_ratio, token_sort_ratio
from rapidfuzz.process import cdist

from ..closeness import features, goods_words, many, score
from ..closeness.kept import keep_meanings, keep_similarities
from ..closeness.name_similarity import (
    JUDGED_FROM,
    is_one_coined_word,
    is_one_known_word,
    meant_by_sound,
    plain_words,
    says_something,
)
from ..closeness.sound import LETTERS, LETTERS_OF_NAME
from ..closeness.telling import ADDED
from ..closeness.vocabulary import (
    all_known,
    content_words,
    english_readings,
    has_senses,
    is_familiar,
    is_known,
    spellings,
)
from ..closeness.word_meaning import OPPOSITE, RELATED, are_opposite, combine_meaning, say_the_same
from ..lexicon import broken_phrases, lexicon
from ..text.inflection import other_number
from .candidates import Candidates, taken
from .hit import Wanted
from .nearest import nearest
from .packing import distinct, found_among
from .word_entries import IS_FAMILIAR, IS_KNOWN
from .word_scores import comparable_words, grounds_of_meaning, sounds

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from ..closeness import Features, Scores
    from .index import Index

    Places = NDArray[np.int64]
    Values = NDArray[np.float64]

__all__ = ["FETCHED", "LEAST_FETCHED", "Compared", "Found", "best_of", "fetched"]

FETCHED, LEAST_FETCHED = 4, 200
"""How many times as many names as are wanted are scored in full, and at least how many. How many of the 50 closest that
misses is measured in tests/bench/bench_recall.py."""
SCORED_WHOLE = 600
"""A register of no more names is scored as a whole."""
PLAIN_SHARE = 0.75
"""The share of a closeness in full that the plainer score of the same names reaches; where it does not, a name that is
only wanted from some closeness on may be missed."""
WORTH_EXPECTING = 10
"""The number of words from which it pays to find first what the opposites of a word are close to."""
DECIMALS = 9
"""Decimal places of closeness that are told: a sum made in another order differs in its last digits."""


class Found(NamedTuple):
    """A name of the index, how close it is overall, and in every aspect for the goods that were stated, if any; and so
    to the name as its readers divide it, if that was wanted; and how close it counts `as_bare` (see `Hit`)."""

    place: int
    overall: float
    scores: Scores | None = None
    spaced: Scores | None = None
    as_bare: float = 0.0


def fetched(
    index: Index, name: Features, top: int, left_out: NDArray[np.bool_] | None = None, least: float = 0.0
) -> Places:
    """The names of the index to be scored in full where the `top` closest are wanted, none of them `left_out`; with
    `least`, only those that may be so close."""
    count = FETCHED * top if least else max(LEAST_FETCHED, FETCHED * top)
    if len(index.names) > (top if least else max(count, SCORED_WHOLE)):
        return _with_fuller(index, nearest(index, name, count, left_out, PLAIN_SHARE * least), left_out)
    return np.arange(len(index.names)) if left_out is None else (~left_out).nonzero()[0]


def _with_fuller(index: Index, places: Places, left_out: NDArray[np.bool_] | None) -> Places:
    """Some names of the index, with those that are one of them but for what says nothing of the maker, and what such
    ones among them are without it."""
    bare = index.bare[places].astype(np.int64)
    fuller, _ = index.fuller.gather(distinct(bare))
    every = distinct(np.concatenate([places, bare, fuller.astype(np.int64)]))
    return every if left_out is None else every[~left_out[every]]


def best_of(
    index: Index, name: Features, places: Places, wanted: Wanted, carried: NDArray[np.bool_] | None = None
) -> list[Found]:
    """The closest of some names of the index, given ascending: closest first, equally close ones in the order of their
    first marks. Names with nothing in common (closeness 0) are left out, and those that no mark of a choice has
    `carried`."""
    places = places[index.name_rows[places + 1] > index.name_rows[places]]  # those with words
    if not name.segmentations or not len(places):
        return []
    candidates = index.everything if len(places) == len(index.names) else Candidates(index, places)
    compared = Compared(index, name, candidates)
    scored = compared.scores(name)
    as_bare = _as_bare(index, places, scored.overall)
    overall = np.maximum(scored.overall, as_bare).round(DECIMALS)
    marks = index.name_marks
    shown = (marks.start[places + 1] > marks.start[places] if carried is None else carried[places]).nonzero()[0]
    first = marks.values[marks.start[places[shown]]]
    order = shown[np.lexsort((first, -overall[shown]))[: wanted.top]]
    index.keep(places[order])
    compared.keep(order)
    found = [
        Found(place, closeness, as_bare=bare)
        for place, closeness, bare in zip(*(each[order].tolist() for each in (places, overall, as_bare)), strict=True)
    ]
    alone = compared.scored_alone(name, order)
    for at, scores in alone.items():
        found[at] = found[at]._replace(overall=round(max(scores.overall, found[at].as_bare), DECIMALS))
    if wanted.goods is not None:
        goods = goods_words(wanted.goods)
        if goods:
            each = compared.in_full(features(wanted.name, goods), order, goods)
        else:
            each = [alone.get(at, scores) for at, scores in enumerate(scored.some(order).each())]
        found = [one._replace(scores=scores) for one, scores in zip(found, each, strict=True)]
        if wanted.spaced:
            told = _spaced(index, wanted.spaced, goods, [one.place for one in found])
            found = [one._replace(spaced=told.get(one.place)) for one in found]
    found = [one for one in found if one.overall > 0 and one.overall >= wanted.least]
    return sorted(found, key=lambda one: -one.overall)


def _as_bare(index: Index, places: Places, overall: Values) -> Values:
    """How close some names of the index, ascending, are as what they are without what says nothing of the maker, which
    is among them where it is compared; 0 for those that say no more."""
    bare = index.bare[places].astype(np.int64)
    at, here = found_among(places, bare)
    return np.where(here & (bare != places), ADDED * overall[at], 0.0)


def _reading(others: Callable[[], list[str]], values: Values) -> Callable[[], Iterator[tuple[str, tuple[float, ...]]]]:
    """Reads some values of the first of some words, a column a word."""
    return lambda: zip(others(), zip(*values.tolist(), strict=True), strict=False)


def _spaced(index: Index, name: str, goods: tuple[str, ...], places: list[int]) -> dict[int, Scores]:
    """The closeness of a name, as its readers divide it, to those of some names that have a part of it."""
    own = features(name)
    parts, places = own.name.words, sorted(places)
    each = zip(places, index.names.texts(np.array(places, np.int64)), strict=True)
    chosen = np.array([place for place, text in each if any(part in text for part in parts)], np.int64)
    if not len(chosen):
        return {}
    compared, every = Compared(index, own, Candidates(index, chosen)), np.arange(len(chosen))
    compared.keep(every)
    return dict(zip(chosen.tolist(), compared.in_full(features(name, goods), every, goods), strict=True))


class Compared:
    """One name against some of a register; all have words."""

    def __init__(self, index: Index, name: Features, candidates: Candidates) -> None:
        self.index, self._name, self.candidates = index, name, candidates
        self._meanings: dict[str, Values] = {}
        self._breaks, self._shares = self._shared_words()
        self._is_translated = bool(english_readings(name.name.words))
        self._arrays = self._word_arrays()
        places = candidates.places
        self._same = np.array([text == name.letters for text in index.names.texts(places)], bool)
        measures = index.names.measures(name.letters, places)
        look = many.looks(measures, self._same)
        own = name.name.words
        both_known = candidates.all_known & (candidates.sizes == 1) & is_one_known_word(own)
        share = np.where(both_known, LETTERS, LETTERS_OF_NAME)
        sound = sounds(index.name_codes, name.phoneme_codes, places, measures, self._same, share)
        self._form = np.array([look, sound, measures[:, many.SPELLED], self._letters_in_any_order()])
        self._translated = self._in_translation()
        self._as_heard = meant_by_sound(np.nan_to_num(sound), candidates.all_known != all_known(own))

    def scores(self, name: Features, chosen: Places | None = None, goods: tuple[str, ...] = ()) -> many.ManyScores:
        """The closeness of every name, or of the `chosen` ones, by their places among these, for `goods` described by
        these words. `name` is the one compared, with the weights it has for them."""
        candidates, weights = self.candidates, self.candidates.weights
        every = np.arange(len(candidates)) if chosen is None else chosen
        written = candidates.written if chosen is None else taken(candidates.written, chosen)
        if goods:
            weights = many.Weights(*(each.copy() for each in weights))
            held = distinct(written.words)
            found = self.index.weights_for(goods).of(candidates.words[held])
            weights.strength[held], weights.dominance[held] = found
        parts = many.parts_by_words(name.segmentations, self._arrays, written, weights, candidates.length)
        for part, found in zip((parts.meanings, parts.elements), self._translated, strict=True):
            np.maximum(part, found[:, every], out=part)
        np.maximum(parts.meanings, self._as_heard[every], out=parts.meanings)
        says = candidates.says_something[every] & says_something(self._name.segmentations)
        meant = says | (parts.meanings[1] >= JUDGED_FROM)
        look, sound, spelled, in_any_order = self._form[:, every]
        same, breaks, shares = self._same[every], self._breaks[every], self._shares[every]
        divided = candidates.sizes[every] != len(self._name.name.words)
        coined = (candidates.sizes[every] == 1) & ~candidates.all_known[every]
        coined &= is_one_coined_word(self._name.name.words)
        return many.scores(
            parts, look, sound, spelled, in_any_order, same, meant, breaks, shares, divided, coined,
            self._translated[0, 0, every],
        )  # fmt: skip

    def in_full(self, name: Features, chosen: Places, goods: tuple[str, ...]) -> list[Scores]:
        """As `scores`, one after another, those that may be read in further ways scored alone."""
        alone = self.scored_alone(name, chosen, goods)
        return [alone.get(at, scores) for at, scores in enumerate(self.scores(name, chosen, goods).each())]

    def scored_alone(self, name: Features, chosen: Places, goods: tuple[str, ...] = ()) -> dict[int, Scores]:
        """Those of the `chosen` names that may be read in ways which are not compared here, by their places among the
        chosen, scored as any two names are."""
        index, places = self.index, self.candidates.places[chosen]
        found = {}
        for at, is_read_further in enumerate(index.further_readings.of(places, self._is_translated)):
            if is_read_further:
                words = index.row_words.one(int(index.name_rows[places[at]])).tolist()
                found[at] = score(name, features(" ".join(map(index.word, words)), goods))
        return found

    def _in_translation(self) -> Values:
        """What each name and the one compared have in common as one of them is said in English: in meaning and word for
        word, each less covered and better covered; 0 where there is nothing."""
        candidates, own = self.candidates, self._name.name.words
        best = np.zeros((2, 2, len(candidates)))
        in_english = {way: None for reading in english_readings(own) for way in spellings(reading)}
        compared = [(way, candidates.to_be_said, np.arange(len(candidates))) for way in in_english]
        if len(candidates.foreign):
            compared += [(way, candidates.said, candidates.foreign) for way in spellings(own)]
        for words, others, names in compared:
            if words:
                meanings = {word: self._meaning(word)[0] for word in words}
                found = many.parts_translated(plain_words(words), meanings, others)
                best[:, :, names] = np.maximum(best[:, :, names], found)
        return best

    def _letters_in_any_order(self) -> Values:
        """`closeness.letters.in_any_order` of every name."""
        own, names = [" ".join(self._name.name.words)], self.candidates.spaced
        ratios = [cdist(own, names, scorer=one, dtype=np.float64)[0] for one in (token_sort_ratio, token_set_ratio)]
        return np.asarray(sum(ratios) / 200, np.float64)

    def _shared_words(self) -> tuple[NDArray[np.bool_], NDArray[np.bool_]]:
        """Which names break a phrase, or have one that the name breaks (`lexicon.broken_phrases`), and which share a
        word with it that is no function word."""
        candidates, own = self.candidates, self._name.name.words
        places = {word: place for word in own if (place := self.index.words.find(word)) is not None}
        words, start = candidates.words[candidates.first.words], candidates.first.start
        shared = [
            np.logical_or.reduceat(np.isin(words, [places[word] for word in some if word in places]), start)
            for some in (own, content_words(own))
        ]
        broken = np.zeros(len(candidates), bool)
        for at in shared[0].nonzero()[0].tolist():
            broken[at] = bool(broken_phrases(own, tuple(candidates.spaced[at].split())))
        return broken, shared[1]

    def _word_arrays(self) -> dict[str, many.WordArrays]:
        """Each word of the name against all that are compared; those only said are left at 0."""
        index, name, held, found = self.index, self._name, self.candidates.held, {}
        at = np.searchsorted(self.candidates.words, held)
        for word in {word.letters: word for words in name.segmentations for word in words}.values():
            place = index.words.find(word.letters)
            same = held == (-1 if place is None else place)
            measures = index.words.measures(word.letters, held)
            sound = sounds(index.word_codes, word.phoneme_codes, held, measures, same)
            known = (index.flags[held] & IS_KNOWN) > 0
            idea, same_said = self._meaning(word.letters)[:, at]
            familiar = ((index.flags[held] & IS_FAMILIAR) > 0) | is_familiar(word.letters)
            look = many.looks(measures, same)
            others = [index.words.find(form) for form in other_number(word.letters)]
            inflected = np.isin(held, [other for other in others if other is not None])
            arrays = many.word_arrays(look, sound, idea, same_said, is_known(word.letters), known, familiar, inflected)
            every = np.zeros((len(arrays), len(self.candidates.words)))
            every[:, at] = arrays
            found[word.letters] = many.WordArrays(*every)
        return found

    def keep(self, chosen: Places) -> None:
        """Have closeness know how the words that were compared compare with those of the `chosen` names."""
        candidates, index = self.candidates, self.index
        written, said = (distinct(each) for each in candidates.words_of(chosen))
        at = np.concatenate([written, np.setdiff1d(said, written, assume_unique=True)])
        words = candidates.words[at]
        count = len(written)
        others = cache(lambda: [*index.words.texts(words[:count]), *index.texts(words[count:])])
        for word, arrays in self._arrays.items():
            keep_similarities(word, _reading(others, np.array([one[written] for one in arrays])))
        for word, meanings in self._meanings.items():
            keep_meanings(word, _reading(others, meanings[:, at]))

    def _meaning(self, letters: str) -> Values:
        """`closeness.word_meaning.meanings` of a word and every word that is compared, NaN for None."""
        if letters not in self._meanings:
            self._meanings[letters] = self._find_meaning(letters)
        return self._meanings[letters]

    def _find_meaning(self, letters: str) -> Values:
        index, words = self.index, self.candidates.words
        places = index.words_of_lemma(letters)
        same = np.isin(words, places[[index.word(at) == letters for at in places.tolist()]])
        if not has_senses(letters):
            return np.tile(np.where(same, 1.0, np.nan), (2, 1))
        related = np.zeros(len(words))
        keyed, values = index.related(letters)
        at, here = found_among(words, keyed)
        np.maximum.at(related, at[here], values[here])
        comparable, english = comparable_words(index, letters, words, related)
        by_senses = np.where(related < RELATED, 0.0, related)
        grounds = grounds_of_meaning(index, self.candidates.vectors, letters, words, by_senses)
        said = combine_meaning(*grounds), say_the_same(*grounds, english.astype(np.float64))
        opposite = np.zeros(len(words), bool)
        similar = np.flatnonzero(comparable & ~same & (said[0] > OPPOSITE)).tolist()
        if len(similar) >= WORTH_EXPECTING:
            lexicon().expect_opposites(letters)
        for one in similar:
            opposite[one] = are_opposite(letters, index.word(int(words[one])))
        return np.array([many.meanings(related, one, opposite, comparable, english, same) for one in said])
