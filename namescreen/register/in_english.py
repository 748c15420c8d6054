"""Names with foreign words as they may be said in English (`closeness.vocabulary.english_readings`), from what a
register keeps of each word."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

import numpy as np

from ..closeness.likeliest import likeliest, likeliest_places, readings_tried
from ..closeness.many import Rows
from ..closeness.vocabulary import beside_foreign_words, is_known, spellings
from ..lexicon import phrase_equivalents
from .packing import stretches

if TYPE_CHECKING:

    from numpy.typing import NDArray

    from .index import Index

    Places = NDArray[np.int64]

__all__ = ["as_said", "has_further_readings"]


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


def has_further_readings(index: Index, place: int, is_translated: bool) -> bool:
    """Whether a name of the register may be read in ways that `as_said` does not have: with `spellings` across its
    words, with words that are only read as foreign beside others, or as a foreign phrase. Of how it is written only
    where the other name is read in English too (`is_translated`)."""
    first, end = index.name_rows[place : place + 2].tolist()
    words = index.row_words.one(first).tolist()
    is_divided = end - first > 1  # else no word of it is
    if len(words) == 1:
        return False
    written = tuple(map(index.word, words))
    if phrase_equivalents(written):
        return True
    said = list(map(index.english, words))
    if beside_foreign_words(written, said) != said:
        return True
    readings = set(likeliest([[*ways, (word,)] for word, ways in zip(written, said, strict=True)]))
    if not is_translated or not is_divided:
        readings.discard(written)
        if is_translated and any(is_known(one + other) for one, other in pairwise(written)):
            return True
    pairs = {one + other for reading in readings for one, other in pairwise(reading)}
    if any(map(is_known, pairs)):
        return True
    # A reading with an unknown word that cannot be divided is spelled in one way.
    whole = set() if is_divided else {word for word in written if not is_known(word)}
    unknown = (reading for reading in readings if whole.isdisjoint(reading) and not all(map(is_known, reading)))
    return any(len(spellings(reading)) > 1 for reading in unknown)
