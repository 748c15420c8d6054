"""Names with foreign words as they may be said in English (`closeness.vocabulary.english_readings`), from what a
register keeps of each word."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from typing import TYPE_CHECKING

import numpy as np

from ..closeness.likeliest import likeliest, likeliest_places, readings_tried
from ..closeness.many import Rows
from ..closeness.vocabulary import beside_foreign_words, divided_into_known, is_known, known_among
from ..lexicon import phrase_equivalents
from .packing import distinct, stretches

if TYPE_CHECKING:

    from numpy.typing import NDArray

    from .index import Index

    Places = NDArray[np.int64]

__all__ = ["FurtherReadings", "as_said"]

Words = tuple[str, ...]
Ways = tuple[Words, ...]

MOST_HELD = 1 << 14
"""Names of which it is held whether they have further readings."""


def as_said(index: Index, written: Rows) -> tuple[Places, Rows]:
    """Which of some names, one row each, have foreign words, and how these may be said in English: the likeliest rows
    of words besides the one that is written."""
    first = index.choices.start[written.words].astype(np.int64)
    listed = index.choices.start[written.words + 1] - first
    names = np.logical_or.reduceat(listed > 0, written.start).nonzero()[0]
    lengths = np.diff(written.start, append=len(written.words))
    tried = np.array([0, *map(readings_tried, range(1, int(lengths.max(initial=0)) + 1))])
    listed = np.minimum(listed, np.repeat(tried[lengths], lengths))
    # The last of the readings of a word is the word itself. A cell is one word of a name in one of its ways.
    sizes, start = (listed + 1).tolist(), written.start[names].tolist()
    ends = (written.start + lengths)[names].tolist()
    ways = [likeliest_places(tuple(sizes[at:end])) for at, end in zip(start, ends, strict=True)]
    owner = np.repeat(names, np.array(list(map(len, ways)), np.int64))
    cells, of_way = stretches(written.start[owner], lengths[owner])
    reading = np.concatenate([np.zeros(0, np.int64), *(np.array(each, np.int64).ravel() for each in ways)])
    foreign = reading < listed[cells]
    said, said_ends = index.choice_words.gather(index.choices.values[(first[cells] + reading)[foreign]])
    size = np.ones(len(cells), np.int64)
    size[foreign] = np.diff(said_ends)
    at = np.append(0, np.cumsum(size))
    words = np.zeros(int(at[-1]), np.int64)
    words[at[:-1][~foreign]] = written.words[cells[~foreign]]
    words[stretches(at[:-1][foreign], size[foreign])[0]] = said
    rows = at[of_way]
    keep = ~_same_words(words, rows, written, owner)
    chosen, ends = stretches(rows[:-1][keep], np.diff(rows)[keep])
    begins = np.append(True, owner[keep][1:] != owner[keep][:-1])[: int(keep.sum())]
    return owner[keep][begins], Rows(words[chosen], ends[:-1], begins.nonzero()[0])


def _same_words(words: Places, rows: Places, written: Rows, owner: Places) -> NDArray[np.bool_]:
    """Which rows (where each begins, and the last ends) have the words that their owners are written with."""
    sizes = np.diff(written.start, append=len(written.words))[owner]
    same: NDArray[np.bool_] = np.diff(rows) == sizes
    if same.any():
        mine, ends = stretches(rows[:-1][same], sizes[same])
        theirs, _ = stretches(written.start[owner[same]], sizes[same])
        same[same] = np.logical_and.reduceat(words[mine] == written.words[theirs], ends[:-1])
    return same


class FurtherReadings:
    """Whether names of a register may be read in ways that `as_said` does not have: with `spellings` across their
    words, with words that are only read as foreign beside others, or as a foreign phrase."""

    def __init__(self, index: Index) -> None:
        self._index = index
        self._known: dict[tuple[int, bool], bool] = {}

    def of(self, places: Places, is_translated: bool) -> list[bool]:
        """Which of some names may. Of how they are written it is asked only where the other name is read in English too
        (`is_translated`)."""
        names = [(place, is_translated) for place in places.tolist()]
        new = [place for place, _ in names if (place, is_translated) not in self._known]
        if len(self._known) + len(new) > MOST_HELD:
            self._known.clear()
            new = [place for place, _ in names]
        if new:
            self._known.update(dict.fromkeys([(place, is_translated) for place in new], False))
            self._known.update(((place, is_translated), True) for place in self._found(new, is_translated))
        return [self._known[name] for name in names]

    def _found(self, places: list[int], is_translated: bool) -> Iterator[int]:
        """Those of some names that may."""
        found = [one for each in self._several(places) if (one := _further(*each, is_translated))]
        joined = {first + second for _, readings, _ in found for each in readings for first, second in pairwise(each)}
        known = known_among(list(joined))
        for place, readings, whole in found:
            pairs = (pair for each in readings for pair in pairwise(each))
            # A reading with an unknown word that cannot be divided is spelled in one way.
            if (
                not readings
                or any(first + second in known for first, second in pairs)
                or any(divided_into_known(each) != each for each in readings if whole.isdisjoint(each))
            ):
                yield place

    def _several(self, places: list[int]) -> Iterator[tuple[int, Words, list[Ways], bool]]:
        """Those of some names that have several words: the words, what each may be in English, and whether one of them
        is divided."""
        index, names = self._index, np.array(places, np.int64)
        first = index.name_rows[names].astype(np.int64)
        divided = (index.name_rows[names + 1] - first > 1).tolist()
        held, ends = index.row_words.gather(first)
        once = distinct(held.astype(np.int64))
        said = zip(index.texts(once), index.english_of(once), strict=True)
        known = dict(zip(once.tolist(), said, strict=True))
        words = list(map(known.__getitem__, held.tolist()))
        for place, is_divided, (start, end) in zip(places, divided, pairwise(ends.tolist()), strict=True):
            if end - start > 1:
                written, ways = zip(*words[start:end], strict=True)
                yield place, written, list(ways), is_divided


def _further(
    place: int, written: Words, said: list[Ways], is_divided: bool, is_translated: bool
) -> tuple[int, set[Words], set[str]] | None:
    """A name, what decides whether it has further readings, if two words of these make a known one or an unknown word
    can be divided, and its words that cannot be, where no word of it is divided. No readings: it surely has further
    ones. None: it has none."""
    if phrase_equivalents(written):
        return place, set(), set()
    if beside_foreign_words(written, said) != said:
        return place, set(), set()
    if not is_translated and not any(said):
        return None
    readings = set(likeliest([[*ways, (word,)] for word, ways in zip(written, said, strict=True)]))
    if not is_translated:
        readings.discard(written)
    whole = set() if is_divided else {word for word in written if not is_known(word)}
    return (place, readings, whole) if readings else None
