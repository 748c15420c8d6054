"""One word of a name against every word of a register: scored where it is asked for."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from ..closeness import Word
from ..closeness.appearance import above_floor
from ..closeness.many import looks
from ..closeness.sound import FLOOR as SOUND_FLOOR
from ..closeness.vocabulary import has_senses
from ..closeness.word_similarity import CHANCE, SAID_OTHERWISE, SAME_MEANING
from .packing import distinct

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from .index import Index

    Places = NDArray[np.int64]
    Values = NDArray[np.float64]

__all__ = ["WordScores"]

NONE = np.zeros(0, np.int64)
STRONGER_ASPECT = 0.8
"""Share of a word pair's similarity that comes from the stronger of look and sound, the rest from their mean. This and
the next are reasoned, not fitted."""
DIFFERENT_MEANING = 0.8
"""The factor for two known words whose meanings have nothing in common."""


class WordScores:
    """The `similarity` of one word of a name and each word of the register that was scored, in [0, 1]; else 0. Look and
    sound below a floor count as nothing, so that most words need not be looked at."""

    def __init__(self, word: Word, index: Index) -> None:
        self.word, self._index = word, index
        self.similarity, self._scored = np.zeros(len(index.words)), np.zeros(len(index.words), bool)
        self._parts: list[Places] = [NONE]
        self._synonyms, self._synonym_meaning = NONE, np.zeros(0)
        self._has_senses = has_senses(word.letters)
        if self._has_senses:
            places, values = index.related(word.letters)
            keep = (values >= SAME_MEANING) & (places < len(index.words))
            self._synonyms = distinct(places[keep])
            self._synonym_meaning = np.zeros(len(self._synonyms))
            np.maximum.at(self._synonym_meaning, np.searchsorted(self._synonyms, places[keep]), values[keep])
        same = index.words.find(word.letters)
        self._same = np.array([] if same is None else [same], np.int64)

    def score_alike(self, by_letters: int, by_sounds: int) -> None:
        """Score the words that share most bigrams of letters, those with the readings that share most of phonemes with
        each reading of the word, as many as these say, and those with the same meaning or the same letters."""
        index = self._index
        looks = index.word_bigrams.most_alike(self.word.letters, by_letters)
        codes = [index.code_bigrams.most_alike(code, by_sounds) for code in self.word.phoneme_codes]
        sounds, _ = index.word_codes.owners.gather(np.concatenate([NONE, *codes]))
        self.score(distinct(np.concatenate([looks, sounds.astype(np.int64), self._synonyms, self._same])))

    def score(self, places: Places) -> None:
        """Score these words."""
        places = places[~self._scored[places]]
        if len(places):
            self._scored[places] = True
            self._parts.append(places)
            look = looks(self._index.words.measures(self.word.letters, places), np.zeros(len(places), bool))
            sound = self._index.word_codes.similarity_of(self.word.phoneme_codes, places, SOUND_FLOOR)
            self.similarity[places] = self._combined(places, above_floor(look, CHANCE), above_floor(sound, SOUND_FLOOR))

    def similar(self) -> Places:
        """The scored words that are similar at all."""
        return np.concatenate([places[self.similarity[places] > 0] for places in self._parts])

    def _combined(self, places: Places, look: Values, sound: Values) -> Values:
        """Look and sound, raised or lowered by what the words mean."""
        value = (look + sound + STRONGER_ASPECT * abs(look - sound)) / 2
        if self._has_senses:
            same, at = np.zeros(len(places), bool), np.searchsorted(self._synonyms, places)
            if len(self._synonyms):
                at = np.minimum(at, len(self._synonyms) - 1)
                same = self._synonyms[at] == places
            value[(self._index.known[places] > 0) & ~same] *= DIFFERENT_MEANING
            value[same] = np.maximum(value[same], SAID_OTHERWISE * self._synonym_meaning[at[same]])
        value[np.isin(places, self._same)] = 1.0
        return value
