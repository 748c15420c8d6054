"""What the names of a register have in common with one as it, or they, are said in English, by the words that are
related in meaning: what `rescoring` looks up for every word is found here from the few that are."""

from __future__ import annotations

from functools import cached_property
from typing import TYPE_CHECKING

import numpy as np

from ..closeness import many
from ..closeness.name_similarity import plain_words, weights_of
from ..closeness.vocabulary import TRANSLATED, english_readings, spellings
from ..closeness.word_meaning import RELATED
from ..closeness.word_similarity import SAID_OTHERWISE
from .candidates import taken
from .packing import found_among, highest

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from .index import Index

    Places = NDArray[np.int64]
    Values = NDArray[np.float64]
    Related = tuple[Places, Values]

__all__ = ["SaidInEnglish"]


class SaidInEnglish:
    """One name, given by its words, against the names of an index: each way to say it in English against their words
    and what these mean, and it as it is written against what foreign words mean."""

    def __init__(self, index: Index, words: tuple[str, ...]) -> None:
        self._index = index
        said = {way: None for reading in english_readings(words) for way in spellings(reading)}
        self._ways = [(way, True) for way in said if way] + [(way, False) for way in spellings(words) if way]
        self._related: dict[tuple[str, bool], Related] = {}
        for way, translated in self._ways:
            for word in way:
                if (word, translated) not in self._related:
                    self._related[word, translated] = self._words_related_to(word, translated)

    @cached_property
    def adds(self) -> Related:
        """The words that some way to say the name has a counterpart in, ascending, and what each adds to a name that
        holds it: the share of the way that the counterpart has, times how close the two are."""
        places, values = [np.zeros(0, np.int64)], [np.zeros(0)]
        for way, translated in self._ways:
            for word, share in zip(way, weights_of(plain_words(way)).counts, strict=True):
                found, close = self._related[word, translated]
                places.append(found)
                values.append(SAID_OTHERWISE * TRANSLATED * share * close)
        return highest(np.concatenate(places), np.concatenate(values))

    def raise_parts(
        self, parts: many.Parts, rows: many.Rows, held: Places, weights: many.Weights, length: Values
    ) -> None:
        """Raise the meanings and elements of names to those that they have as said in English. `rows` divide the names
        into words, by their places among `held`, which have these weights and lengths."""
        places, _ = self.adds
        holds = np.logical_or.reduceat(np.isin(held, places)[rows.words], rows.start)
        names = np.logical_or.reduceat(holds, rows.first).nonzero()[0]
        if not len(names):
            return
        others = many.Said.of(taken(rows, names), weights, length)
        for way, translated in self._ways:
            meanings = {word: np.zeros(len(held)) for word in way}
            for word, values in meanings.items():
                places, close = self._related[word, translated]
                at, here = found_among(held, places)
                values[at[here]] = close[here]
            if any(values.any() for values in meanings.values()):
                translations = many.parts_translated(plain_words(way), meanings, others)
                for part, found in zip((parts.meanings, parts.elements), translations, strict=True):
                    part[:, names] = np.maximum(part[:, names], found)

    def _words_related_to(self, word: str, translated: bool) -> Related:
        """The words of the index that are close in meaning to an English one, or mean such a word."""
        index, own = self._index, len(self._index.words)
        places, values = index.related(word)
        places, values = places[values >= RELATED], values[values >= RELATED]
        foreign, which, share = index.words_meaning(places)
        said = values[which] * share
        if translated:
            foreign, said = np.concatenate([foreign, places]), np.concatenate([said, values])
        return highest(foreign[foreign < own], said[foreign < own])
