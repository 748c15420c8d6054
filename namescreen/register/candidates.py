"""Some names of a register as each name that is searched for is compared with them: what does not rest on that name is
gathered once."""

from __future__ import annotations

from functools import cached_property
from itertools import pairwise
from typing import TYPE_CHECKING

import numpy as np

from ..closeness.many import Rows, Said, Weights
from ..closeness.name_similarity import said_length
from ..closeness.weights import LEAST
from ..lexicon.association import Vectors
from .in_english import as_said
from .packing import distinct, stretches
from .word_entries import IS_KNOWN

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from .index import Index

    Places = NDArray[np.int64]
    Values = NDArray[np.float64]

__all__ = ["Candidates", "rows_of", "taken"]


class Candidates:
    """Names of an index, by their `places`; all have words.

    `words` are all words that they are written with or that say them in English, ascending; `held` those that they are
    written with. Rows hold words by their places among `words`: `written` every way to divide each name, `first` each
    as it stands, and `said` how those that are `foreign` (their places among the names) may be said in English.
    """

    def __init__(self, index: Index, places: Places) -> None:
        self._index, self.places = index, places
        written = rows_of(index, places)
        first = _rows(written, written.first)
        self.foreign, said = as_said(index, first)
        self.held = distinct(written.words)
        self.words = distinct(np.concatenate([self.held, said.words]))
        self.written, self.first, self._said = (
            Rows(np.searchsorted(self.words, each.words), each.start, each.first) for each in (written, first, said)
        )
        self.sizes = np.diff(first.start, append=len(first.words))
        self.flags = index.flags[self.words]
        self.weights = Weights(index.strength[self.words], index.dominance[self.words])
        letters = index.length[self.words].astype(np.float64)
        self.length, self._length_translated = letters.copy(), letters.copy()
        """The `said_length` of the words, and as they count in a translation."""
        for at in (self.weights.strength <= LEAST).nonzero()[0].tolist():
            word = index.word(int(self.words[at]))
            self.length[at], self._length_translated[at] = said_length(word), said_length(word, translated=True)
        telling = (letters > 2) & (index.known[self.words] > 0)
        ways = np.logical_and.reduceat(telling[self.written.words], written.start)
        as_it_stands = np.logical_or.reduceat(telling[self.first.words], first.start)
        self.says_something = as_it_stands | np.logical_or.reduceat(ways, written.first)
        """`name_similarity.says_something` of each name."""
        self.all_known = np.logical_and.reduceat((self.flags[self.first.words] & IS_KNOWN) > 0, first.start)
        """`vocabulary.all_known` of each name."""

    def __len__(self) -> int:
        return len(self.places)

    def words_of(self, names: Places) -> tuple[Places, Places]:
        """The words that some of the names are written with, in every way to divide them, and those that say them in
        English, by their places among `words`."""
        foreign = np.isin(self.foreign, names).nonzero()[0]
        return taken(self.written, names).words, taken(self._said, foreign).words

    @cached_property
    def vectors(self) -> Vectors:
        """The vectors of the words."""
        return Vectors(self._index.vector_row[self.words])

    @cached_property
    def spaced(self) -> list[str]:
        """The words of each name, a space between them."""
        words = self._index.words.texts(self.held)
        at = np.searchsorted(self.held, self.words[self.first.words]).tolist()
        ends = [*self.first.start.tolist(), len(at)]
        return [" ".join(map(words.__getitem__, at[start:end])) for start, end in pairwise(ends)]

    @cached_property
    def said(self) -> Said:
        """The foreign names as they may be said in English."""
        return Said.of(self._said, self.weights, self._length_translated)

    @cached_property
    def to_be_said(self) -> Said:
        """The names as they are compared with what another name says in English: as written, and divided into words
        that are all known."""
        rows, known = self.written, (self.flags & IS_KNOWN) > 0
        keep = np.logical_and.reduceat(known[rows.words], rows.start)
        keep[rows.first] = True
        before = np.cumsum(keep) - keep
        chosen = _rows(rows, keep.nonzero()[0])._replace(first=before[rows.first])
        return Said.of(chosen, self.weights, self._length_translated)


def rows_of(index: Index, places: Places) -> Rows:
    """Every way to divide each of some names, by the places of words in the index."""
    words, ends = index.row_words.gather(index.rows_of_names(places))
    sizes = (index.name_rows[places + 1] - index.name_rows[places]).astype(np.int64)
    return Rows(words.astype(np.int64), ends[:-1], np.cumsum(sizes) - sizes)


def _rows(rows: Rows, chosen: Places) -> Rows:
    """Some of the rows, one a name."""
    start = np.append(rows.start, len(rows.words))
    words, ends = stretches(rows.start[chosen], start[chosen + 1] - rows.start[chosen])
    return Rows(rows.words[words], ends[:-1], np.arange(len(chosen)))


def taken(rows: Rows, names: Places) -> Rows:
    """The rows of some of the names."""
    end = np.append(rows.first[1:], len(rows.start))
    chosen, ends = stretches(rows.first[names], end[names] - rows.first[names])
    return _rows(rows, chosen)._replace(first=ends[:-1])
