"""The names that a search brings, scored in full and put in order.

`nearest` goes by a score that can be bounded; what it brings, more than is wanted, is scored here as `closeness.score`
scores any two names (`closeness.many`), from what the register keeps of its names.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING, NamedTuple

import numpy as np
from rapidfuzz.fuzz import token_set_ratio, token_sort_ratio
from rapidfuzz.process import cdist

from ..closeness import features, goods_words, many, score
from ..closeness.appearance import positive_part
from ..closeness.name_similarity import JUDGED_FROM, is_one_known_word, plain_words, said_length, says_something
from ..closeness.sound import LETTERS, LETTERS_OF_NAME
from ..closeness.vocabulary import (
    OPPOSITE,
    RELATED,
    SAME_NAME,
    are_opposite,
    base_forms,
    combine_meaning,
    english_readings,
    has_senses,
    is_familiar,
    is_known,
    is_surname,
    spellings,
)
from ..closeness.weights import LEAST
from ..lexicon import broken_phrases, lexicon
from ..lexicon.association import Vectors
from ..text.inflection import other_number
from .hit import Wanted
from .in_english import as_said, has_further_readings
from .nearest import nearest
from .packing import distinct, stretches
from .word_entries import HAS_BASE_FORMS, IS_FAMILIAR, IS_KNOWN, IS_SURNAME

if TYPE_CHECKING:
    from collections.abc import Sequence

    from numpy.typing import NDArray

    from ..closeness import Features, Scores, Word
    from .index import Index
    from .phoneme_index import Codes

    Places = NDArray[np.int64]
    Values = NDArray[np.float64]

__all__ = ["FETCHED", "LEAST_FETCHED", "Compared", "Found", "best_of", "fetched"]

FETCHED, LEAST_FETCHED = 6, 300
"""How many times as many names as are wanted are scored in full, and at least how many: a register that has no more is
scored as a whole. How many of the 50 closest that misses is measured in tests/bench/bench_register.py."""
PLAIN_SHARE = 0.75
"""The share of a closeness in full that the plainer score of the same names reaches; where it does not, a name that is
only wanted from some closeness on may be missed."""
WORTH_EXPECTING = 10
"""The number of words from which it pays to find first what the opposites of a word are close to."""
DECIMALS = 9
"""Decimal places of closeness that are told: a sum made in another order differs in its last digits."""


class Found(NamedTuple):
    """A name of the index, how close it is overall, and in every aspect for the goods that were stated, if any."""

    place: int
    overall: float
    scores: Scores | None = None


def fetched(
    index: Index, name: Features, top: int, left_out: NDArray[np.bool_] | None = None, least: float = 0.0
) -> Places:
    """The names of the index to be scored in full where the `top` closest are wanted, none of them `left_out`; with
    `least`, only those that may be so close."""
    count = FETCHED * top if least else max(LEAST_FETCHED, FETCHED * top)
    if len(index.names) > count or (least and len(index.names) > top):
        return nearest(index, name, count, left_out, PLAIN_SHARE * least)
    return np.arange(len(index.names)) if left_out is None else (~left_out).nonzero()[0]


def best_of(index: Index, name: Features, places: Places, wanted: Wanted) -> list[Found]:
    """The closest of some names of the index, closest first, equally close ones in the order of their first marks.
    Names with nothing in common (closeness 0) are left out."""
    places = places[index.name_rows[places + 1] > index.name_rows[places]]  # those with words
    if not name.segmentations or not len(places):
        return []
    compared = Compared(index, name, places)
    overall = compared.scores(name).overall.round(DECIMALS)
    marks = index.name_marks
    order = np.lexsort((marks.values[marks.start[places]], -overall))[: wanted.top]
    found = list(map(Found, places[order].tolist(), overall[order].tolist()))
    if wanted.goods is not None and found:
        goods = goods_words(wanted.goods)
        scores = compared.scores(features(wanted.name, goods), order, goods).each()
        found = [one._replace(scores=each) for one, each in zip(found, scores, strict=True)]
    for at, chosen in enumerate(order.tolist()):
        if compared.needs_all_readings(chosen):
            found[at] = _scored_alone(index, name, found[at], wanted)
    found = [one for one in found if one.overall > 0 and one.overall >= wanted.least]
    return sorted(found, key=lambda one: -one.overall)


def _scored_alone(index: Index, name: Features, found: Found, wanted: Wanted) -> Found:
    """A name of the index scored as any two names are."""
    text = " ".join(map(index.word, index.row_words.one(int(index.name_rows[found.place])).tolist()))
    overall = round(score(name, features(text)).overall, DECIMALS)
    if wanted.goods is None:
        return found._replace(overall=overall)
    goods = goods_words(wanted.goods)
    return Found(found.place, overall, score(features(wanted.name, goods), features(text, goods)))


class Compared:
    """One name against some of a register; all have words."""

    def __init__(self, index: Index, name: Features, places: Places) -> None:
        self.index, self._name = index, name
        self.places = places
        rows = index.rows_of_names(places)
        words, ends = index.row_words.gather(rows)
        sizes = (index.name_rows[places + 1] - index.name_rows[places]).astype(np.int64)
        written = many.Rows(words.astype(np.int64), ends[:-1], np.cumsum(sizes) - sizes)
        first = _rows(written, written.first)
        self._breaks = self._break_phrases(first)
        self._foreign, said = as_said(index, first)
        held = distinct(written.words)
        self._words = distinct(np.concatenate([held, said.words]))
        self._written, self._first, self._said = (
            many.Rows(np.searchsorted(self._words, each.words), each.start, each.first)
            for each in (written, first, said)
        )
        self._weights = many.Weights(index.strength[self._words], index.dominance[self._words])
        self._letters = index.length[self._words].astype(np.float64)
        weak = (self._weights.strength <= LEAST).nonzero()[0].tolist()
        self._length, self._length_translated = self._letters.copy(), self._letters.copy()
        for at in weak:
            word = index.word(int(self._words[at]))
            self._length[at], self._length_translated[at] = said_length(word), said_length(word, translated=True)
        self._vectors = Vectors(index.vector_row[self._words])
        self._meanings: dict[str, Values] = {}
        self._arrays = self._word_arrays(name, held)
        self._same = np.array([text == name.letters for text in index.names.texts(places)], bool)
        measures = index.names.measures(name.letters, places)
        look = many.looks(measures, self._same)
        single = np.diff(first.start, append=len(first.words)) == 1
        known = single & ((index.flags[first.words[first.start]] & IS_KNOWN) > 0)
        share = np.where(known & is_one_known_word(name.name.words), LETTERS, LETTERS_OF_NAME)
        sound = _sounds(index.name_codes, name.phoneme_codes, places, measures, self._same, share)
        self._form = np.array([look, sound, measures[:, many.SPELLED], self._letters_in_any_order(first)])

    def scores(self, name: Features, chosen: Places | None = None, goods: tuple[str, ...] = ()) -> many.ManyScores:
        """The closeness of every name, or of the `chosen` ones, by their places among these, for `goods` described by
        these words. `name` is the one compared, with the weights it has for them."""
        every = np.arange(len(self.places)) if chosen is None else chosen
        written, first = _taken(self._written, every), _taken(self._first, every)
        weights = self._weights
        if goods:
            weights = many.Weights(*(each.copy() for each in weights))
            held = distinct(written.words)
            weights.strength[held], weights.dominance[held] = self.index.weights_for(goods).of(self._words[held])
        parts = many.parts_by_words(name.segmentations, self._arrays, written, weights, self._length)
        own = self._name.name.words
        if english_readings(own):
            known = (self.index.flags[self._words] & IS_KNOWN) > 0
            rows = _whole_or_known(written, known)
            for said in {way: None for reading in english_readings(own) for way in spellings(reading)}:
                parts = self._translated(parts, plain_words(said), rows, np.arange(len(every)))
        place = np.full(len(self.places), -1)
        place[every] = np.arange(len(every))
        foreign = (place[self._foreign] >= 0).nonzero()[0]
        said_rows = _taken(self._said, foreign)
        for way in spellings(own):
            parts = self._translated(parts, plain_words(way), said_rows, place[self._foreign[foreign]])
        telling = (self._letters > 2) & (self.index.known[self._words] > 0)
        says = np.logical_or.reduceat(np.logical_and.reduceat(telling[written.words], written.start), written.first)
        says |= np.logical_or.reduceat(telling[first.words], first.start)
        says = says.astype(np.int64) + says_something(self._name.segmentations)
        meant = (says == 2) | (parts.meanings[1] >= JUDGED_FROM)
        look, sound, spelled, in_any_order = self._form[:, every]
        same, breaks = self._same[every], self._breaks[every]
        divided = np.diff(first.start, append=len(first.words)) != len(own)
        return many.scores(parts, look, sound, spelled, in_any_order, same, meant, breaks, divided)

    def _translated(self, parts: many.Parts, own: Sequence[Word], rows: many.Rows, names: Places) -> many.Parts:
        """The parts with what is in common in another language; `names` are those that the rows belong to."""
        if not own or not len(names):
            return parts
        meanings = {word.letters: self._meaning(word.letters) for word in own}
        meant, counted = many.parts_translated(own, meanings, rows, self._weights, self._length_translated)
        for part, found in ((parts.meanings, meant), (parts.elements, counted)):
            part[:, names] = np.maximum(part[:, names], found)
        return parts

    def _letters_in_any_order(self, written: many.Rows) -> Values:
        """`closeness.letters.in_any_order` of every name."""
        held, at = np.unique(written.words, return_inverse=True)
        words, at = self.index.words.texts(held), at.tolist()
        ends = np.append(written.start, len(written.words)).tolist()
        names = [" ".join(map(words.__getitem__, at[start:end])) for start, end in pairwise(ends)]
        own = [" ".join(self._name.name.words)]
        ratios = [cdist(own, names, scorer=one, dtype=np.float64)[0] for one in (token_sort_ratio, token_set_ratio)]
        return np.asarray(sum(ratios) / 200, np.float64)

    def _break_phrases(self, written: many.Rows) -> NDArray[np.bool_]:
        """Which names break a phrase, or have one that the name breaks (`lexicon.broken_phrases`)."""
        index, own = self.index, self._name.name.words
        places = [place for word in own if (place := index.words.find(word)) is not None]
        shared = np.logical_or.reduceat(np.isin(written.words, places), written.start)
        ends = np.append(written.start, len(written.words))
        broken = np.zeros(len(self.places), bool)
        for at in shared.nonzero()[0].tolist():
            words = tuple(map(index.word, written.words[ends[at] : ends[at + 1]].tolist()))
            broken[at] = bool(broken_phrases(own, words))
        return broken

    def _word_arrays(self, name: Features, held: Places) -> dict[str, many.WordArrays]:
        """Each word of a name against all that are compared; those only said are left at 0."""
        index, found = self.index, {}
        at = np.searchsorted(self._words, held)
        for word in {word.letters: word for words in name.segmentations for word in words}.values():
            place = index.words.find(word.letters)
            same = held == (-1 if place is None else place)
            measures = index.words.measures(word.letters, held)
            sound = _sounds(index.word_codes, word.phoneme_codes, held, measures, same)
            known = (index.flags[held] & IS_KNOWN) > 0
            meaning = self._meaning(word.letters)[at]
            familiar = ((index.flags[held] & IS_FAMILIAR) > 0) | is_familiar(word.letters)
            look = many.looks(measures, same)
            others = [index.words.find(form) for form in other_number(word.letters)]
            inflected = np.isin(held, [other for other in others if other is not None])
            arrays = many.word_arrays(look, sound, meaning, is_known(word.letters), known, familiar, inflected)
            every = np.zeros((len(arrays), len(self._words)))
            every[:, at] = arrays
            found[word.letters] = many.WordArrays(*every)
        return found

    def needs_all_readings(self, chosen: int) -> bool:
        """Whether a name is read in ways that are not compared here (`in_english.has_further_readings`)."""
        words = self.index.row_words.one(int(self.index.name_rows[self.places[chosen]])).tolist()
        return has_further_readings(self.index, words, bool(english_readings(self._name.name.words)))

    def _meaning(self, letters: str) -> Values:
        """`closeness.vocabulary.meaning` of a word and every word that is compared."""
        if letters not in self._meanings:
            self._meanings[letters] = self._find_meaning(letters)
        return self._meanings[letters]

    def _find_meaning(self, letters: str) -> Values:
        index, words = self.index, self._words
        places = index.words_of_lemma(letters)
        same = np.isin(words, places[[index.word(at) == letters for at in places.tolist()]])
        if not has_senses(letters):
            return np.where(same, 1.0, np.nan)
        related = np.zeros(len(words))
        keyed, values = index.related(letters)
        at = np.minimum(np.searchsorted(words, keyed), len(words) - 1)
        here = words[at] == keyed
        np.maximum.at(related, at[here], values[here])
        flags = index.flags[words]
        comparable = index.known[words] > 0
        if is_surname(letters):
            comparable &= ((flags & IS_SURNAME) == 0) | (related >= SAME_NAME)
        english = (flags & HAS_BASE_FORMS) > 0 if base_forms(letters) else np.zeros(len(words), bool)
        associated = np.nan_to_num(self._vectors.associations(letters, index.form_defined[words], index.key))
        listed = positive_part(np.nan_to_num(self._vectors.thesaurus_similarities(letters)))
        said = combine_meaning(np.where(related < RELATED, 0.0, related), associated, listed)
        opposite = np.zeros(len(words), bool)
        similar = np.flatnonzero(comparable & ~same & (said > OPPOSITE)).tolist()
        if len(similar) >= WORTH_EXPECTING:
            lexicon().expect_opposites(letters)
        for one in similar:
            opposite[one] = are_opposite(letters, index.word(int(words[one])))
        return many.meanings(related, said, opposite, comparable, english, same)


def _sounds(
    codes: Codes, own: tuple[str, ...], places: Places, measures: Values, same: NDArray[np.bool_],
    share: Values | float = LETTERS,
) -> Values:  # fmt: skip
    """`closeness.sound.sound` of one word or name and each of these; NaN where one cannot be read aloud."""
    if not own or not len(places):
        return np.where(same, 1.0, np.nan)
    articulation, alike = codes.sound_measures(own, places)
    return many.sounds(articulation, alike, measures[:, many.SPELLED], same, share)


def _rows(rows: many.Rows, chosen: Places) -> many.Rows:
    """Some of the rows, one a name."""
    start = np.append(rows.start, len(rows.words))
    words, ends = stretches(rows.start[chosen], start[chosen + 1] - rows.start[chosen])
    return many.Rows(rows.words[words], ends[:-1], np.arange(len(chosen)))


def _whole_or_known(rows: many.Rows, known: NDArray[np.bool_]) -> many.Rows:
    """The first row of each name, as it is written, and those all of whose words are known."""
    keep = np.logical_and.reduceat(known[rows.words], rows.start)
    keep[rows.first] = True
    before = np.cumsum(keep) - keep
    return _rows(rows, keep.nonzero()[0])._replace(first=before[rows.first])


def _taken(rows: many.Rows, names: Places) -> many.Rows:
    """The rows of some of the names."""
    end = np.append(rows.first[1:], len(rows.start))
    chosen, ends = stretches(rows.first[names], end[names] - rows.first[names])
    return _rows(rows, chosen)._replace(first=ends[:-1])
