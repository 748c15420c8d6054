"""The names that a search brings, scored in full and put in order.

`nearest` goes by a score that can be bounded; what it brings, more than is wanted, is scored here as `closeness.score`
scores any two names (`closeness.many`), from what the register keeps of its names.
"""

from __future__ import annotations

from itertools import islice, product
from typing import TYPE_CHECKING, NamedTuple

import numpy as np
from rapidfuzz.distance import Levenshtein
from rapidfuzz.process import cdist

from ..closeness import many
from ..closeness.name_similarity import EVOKES, plain_words, says_something
from ..closeness.vocabulary import MOST_READINGS, OPPOSITE, english_readings, has_senses, related_words, word_facts
from ..lexicon import lexicon
from ..lexicon.association import associations
from .index import HAS_BASE_FORMS, IS_SURNAME
from .nearest import nearest
from .packing import distinct

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from numpy.typing import NDArray

    from ..closeness import Features, Word
    from .index import Index
    from .phoneme_index import Codes

    Places = NDArray[np.int64]
    Values = NDArray[np.float64]

__all__ = ["FETCHED", "LEAST_FETCHED", "Compared", "best_of", "fetched"]

FETCHED, LEAST_FETCHED = 6, 300
"""How many times as many names as are wanted are scored in full, and at least how many: a register that has no more is
scored as a whole. How many of the 50 closest that misses is measured in tests/bench/bench_register.py."""
DECIMALS = 9
"""Decimal places of closeness that are told: a sum made in another order differs in its last digits."""


def fetched(index: Index, name: Features, top: int, left_out: NDArray[np.bool_] | None = None) -> Places:
    """The names of the index to be scored in full where the `top` closest are wanted, none of them `left_out`."""
    count = max(LEAST_FETCHED, FETCHED * top)
    if len(index.names) > count:
        return nearest(index, name, count, left_out)[0]
    return np.arange(len(index.names)) if left_out is None else (~left_out).nonzero()[0]


def best_of(index: Index, name: Features, places: Places, top: int) -> list[tuple[int, float]]:
    """The `top` closest of some names of the index, with how close they are, closest first, equally close ones in the
    order of their first marks. Names with nothing in common (closeness 0) are left out."""
    places = places[index.name_rows[places + 1] > index.name_rows[places]]  # those with words
    if not name.segmentations or not len(places):
        return []
    compared = Compared(index, name, places)
    overall = compared.scores(name).overall.round(DECIMALS)
    marks = index.name_marks
    order = np.lexsort((marks.values[marks.start[places]], -overall))[:top]
    found = zip(places[order].tolist(), overall[order].tolist(), strict=True)
    return [(place, value) for place, value in found if value > 0]


class _Rows(NamedTuple):
    """Rows of words, and to which of the compared names they belong."""

    rows: many.Rows
    names: Places


class Compared:
    """One name against some of a register; all have words."""

    def __init__(self, index: Index, name: Features, places: Places) -> None:
        self.index, self._name = index, name
        self.places = places
        rows = index.rows_of_names(self.places)
        words, ends = index.row_words.gather(rows)
        held = distinct(words.astype(np.int64))
        sizes = (index.name_rows[self.places + 1] - index.name_rows[self.places]).astype(np.int64)
        first = np.cumsum(sizes) - sizes
        self._written = _Rows(many.Rows(_at(held, words), ends[:-1], first), np.arange(len(self.places)))
        as_written = _chosen(words, ends, first)
        said = self._as_said(as_written)
        self._words = distinct(np.concatenate([held, said.rows.words]))
        self._held = _at(self._words, held)
        self._said = said._replace(rows=_renamed(said.rows, self._words))
        self._first = _Rows(_renamed(as_written, self._words), self._written.names)
        self._weight, self._length = index.weight[self._words], index.length[self._words].astype(np.float64)
        distinct_words = {word.letters: word for words in name.segmentations for word in words}
        self._meanings: dict[str, Values] = {}
        self._arrays = {letters: self._word_arrays(word, held) for letters, word in distinct_words.items()}
        same = np.array([text == name.letters for text in index.names.texts(self.places)], bool)
        self._same = same
        measures = index.names.measures(name.letters, self.places) if name.letters else np.zeros((len(same), 9))
        self._look = many.looks(measures, same)
        self._sound = _sounds(index.name_codes, name.phoneme_codes, self.places, measures, same)

    def scores(
        self, name: Features, weight: Callable[[Sequence[str]], Sequence[float]] | None = None
    ) -> many.ManyScores:
        """The closeness of every name. `name` is the one compared, with the weights it has for some goods; `weight`
        gives those of other words, by default those that they have without goods."""
        held_weights = self._weight[self._held]
        if weight is not None:
            held_weights = np.array(weight([self.index.word(at) for at in self._words[self._held].tolist()]))
        length = self._length[self._held]
        parts = many.parts_by_words(name.segmentations, self._arrays, self._written.rows, held_weights, length)
        for said in english_readings(self._name.name.words):
            parts = self._translated(parts, plain_words(said), self._first)
        parts = self._translated(parts, plain_words(self._name.name.words), self._said)
        telling = (self._length > 2) & (self.index.known[self._words] > 0)
        rows = self._written.rows
        says = np.logical_or.reduceat(np.logical_or.reduceat(telling[self._held][rows.words], rows.start), rows.first)
        meant = 1 * says + says_something(self._name.segmentations)
        meant = (meant == 2) | ((meant == 1) & (parts.meanings[1] >= EVOKES))
        return many.scores(parts, self._look, self._sound, self._same, meant)

    def _translated(self, parts: many.Parts, own: Sequence[Word], others: _Rows) -> many.Parts:
        if not own or not len(others.names):
            return parts
        chosen = many.Parts(*(part[..., others.names] for part in parts))
        meanings = {word.letters: self._meaning(word.letters) for word in own}
        better = many.parts_translated(chosen, own, meanings, others.rows, self._weight, self._length)
        for part, found in zip((parts.meanings, parts.elements), (better.meanings, better.elements), strict=True):
            part[..., others.names] = found
        return parts

    def _as_said(self, written: many.Rows) -> _Rows:
        """The foreign names among these as they may be said in English (`closeness.vocabulary.english_readings`)."""
        index = self.index
        foreign = np.diff(index.choices.start)[written.words] > 0 if len(written.words) else np.zeros(0, bool)
        rows: list[tuple[int, ...]] = []
        names, first = [], []
        if foreign.any():
            ends = np.append(written.start, len(written.words))
            english: dict[int, list[tuple[int, ...]]] = {}
            for name in np.logical_or.reduceat(foreign, written.start).nonzero()[0].tolist():
                words = written.words[ends[name] : ends[name + 1]].tolist()
                for word in words:
                    if word not in english:
                        english[word] = [*index.english(word), (word,)]
                ways = product(*(english[word] for word in words))
                said = dict.fromkeys(sum(way, ()) for way in islice(ways, MOST_READINGS))
                said.pop(tuple(words), None)
                if said:
                    names.append(name)
                    first.append(len(rows))
                    rows.extend(said)
        sizes = np.fromiter(map(len, rows), np.int64, len(rows))
        words_of = np.fromiter((word for row in rows for word in row), np.int64, int(sizes.sum()))
        rows_said = many.Rows(words_of, np.cumsum(sizes) - sizes, np.array(first, np.int64))
        return _Rows(rows_said, np.array(names, np.int64))

    def _word_arrays(self, word: Word, held: Places) -> many.WordArrays:
        index = self.index
        place = index.words.find(word.letters)
        same = held == (-1 if place is None else place)
        measures = index.words.measures(word.letters, held)
        sound = _sounds(index.word_codes, word.phoneme_codes, held, measures, same)
        return many.word_arrays(many.looks(measures, same), sound, self._meaning(word.letters)[self._held])

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
        facts = word_facts(letters)
        related = np.zeros(len(words))
        keyed, values = index.words_of_lemmas(related_words(letters))
        at = np.searchsorted(words, keyed)
        at[at == len(words)] = 0
        here = words[at] == keyed
        np.maximum.at(related, at[here], values[here])
        flags = index.flags[words]
        comparable = index.known[words] > 0
        if facts.is_surname:
            comparable &= (flags & IS_SURNAME) == 0
        english = (flags & HAS_BASE_FORMS) > 0 if facts.has_base_forms else np.zeros(len(words), bool)

        def mentioned_at(form: str) -> list[int]:
            places = _at(words, found := index.words_defined_as(form))
            return [at for at, word in zip(places.tolist(), found.tolist(), strict=True)
                    if at < len(words) and words[at] == word]  # fmt: skip

        associated = associations(letters, index.vector_row[words], mentioned_at)
        opposite = np.zeros(len(words), bool)
        for one in np.flatnonzero(0.5 * np.nan_to_num(associated) > OPPOSITE).tolist():
            opposite[one] = lexicon().are_opposite(letters, index.word(int(words[one])))
        return many.meanings(related, associated, opposite, comparable, english, same)


def _sounds(codes: Codes, own: tuple[str, ...], places: Places, measures: Values, same: NDArray[np.bool_]) -> Values:
    """`closeness.sound.sound` of one word or name and each of these; NaN where one cannot be read aloud."""
    if not own or not len(places):
        return np.where(same, 1.0, np.nan)
    ids, ends = codes.ids.gather(places)
    has = ends[1:] > ends[:-1]
    alike = np.full(len(places), np.nan)
    if len(ids):
        each = distinct(ids)
        texts = [codes.text(at) for at in each.tolist()]
        most = cdist(own, texts, scorer=Levenshtein.normalized_similarity, dtype=np.float64).max(axis=0)
        alike[has] = np.maximum.reduceat(most[np.searchsorted(each, ids)], ends[:-1][has])
    articulation = np.where(has, codes.similarity_of(own, places, 0.0), np.nan)
    return many.sounds(articulation, alike, measures[:, many.EDITS], same)


def _at(among: Places, words: NDArray[np.integer]) -> Places:
    """Where these words stand among others, ascending."""
    return np.searchsorted(among, words.astype(among.dtype, copy=False))


def _renamed(rows: many.Rows, words: Places) -> many.Rows:
    return many.Rows(_at(words, rows.words), rows.start, rows.first)


def _chosen(words: NDArray[np.uint32], ends: Places, rows: Places) -> many.Rows:
    """Some rows, one a name."""
    sizes = np.diff(ends)[rows]
    start = np.cumsum(sizes) - sizes
    at = np.arange(int(sizes.sum())) + np.repeat(ends[:-1][rows] - start, sizes)
    return many.Rows(words[at].astype(np.int64), start, np.arange(len(rows)))
