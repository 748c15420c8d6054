"""One word of a name against every word of a register: scored where it is asked for."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from ..closeness import Word
from ..closeness.appearance import FLOOR as LOOK_FLOOR
from ..closeness.appearance import above_floor
from ..closeness.retrieval import Parameters, combine_look_and_sound
from ..closeness.sound import FLOOR as SOUND_FLOOR
from ..closeness.vocabulary import has_senses
from ..closeness.word_similarity import SAME_MEANING
from .packing import distinct

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from .index import Index

    Places = NDArray[np.int64]
    Values = NDArray[np.float64]

__all__ = ["WordScores"]

NONE = np.zeros(0, np.int64)


class WordScores:
    """The similarity (`closeness.retrieval`) of one word of a name and each word of the
    register that is `scored`, else 0."""

    def __init__(self, word: Word, index: Index, parameters: Parameters) -> None:
        self.word, self._index, self._parameters = word, index, parameters
        self.similarity, self.scored = np.zeros(len(index.words)), np.zeros(len(index.words), bool)
        self._parts: list[Places] = []
        self._has_senses = has_senses(word.letters)
        self._synonyms, self._synonym_meaning = NONE, np.zeros(0)
        if self._has_senses:
            places, values = index.related(word.letters)
            keep = (values >= SAME_MEANING) & (places < len(index.words))
            self._synonyms = distinct(places[keep])
            self._synonym_meaning = np.zeros(len(self._synonyms))
            np.maximum.at(self._synonym_meaning, np.searchsorted(self._synonyms, places[keep]), values[keep])
        same = index.words.find(word.letters)
        self._same = -1 if same is None else same
        self._look_level = self._sound_level = 1.0
        self._different = parameters.different_meaning
        self._differs = (index.known > 0) if self._has_senses else np.zeros(len(index.words), bool)
        self._differs[self._synonyms] = False

    def score_by_look(self, level: float) -> None:
        """Score every word at least so similar in appearance, and those with the same meaning or the same letters."""
        if level >= self._look_level:
            return
        self._look_level = level
        places, _ = self._index.words.near(self.word.letters, LOOK_FLOOR + level * (1 - LOOK_FLOOR))
        same = np.array([self._same] if self._same >= 0 else [], np.int64)
        self.score(distinct(np.concatenate([places, self._synonyms, same])))

    def score_by_sound(self, level: float) -> None:
        """Score every other word whose sound allows it to be at least so similar overall."""
        index = self._index
        if level >= self._sound_level:
            return
        self._sound_level = level
        table, ours = index.word_codes, self.word.phoneme_codes
        # Words more similar than `level` in appearance have been scored: in the others, sound is the stronger aspect.
        share = self._parameters.stronger_aspect
        mean = (1 - share) / 2
        least = (level - mean * level) / (share + mean)
        least_known = (level / self._different - mean * level) / (share + mean)
        least, least_known = (SOUND_FLOOR + one * (1 - SOUND_FLOOR) - 1e-6 for one in (least, least_known))
        codes, similarity = table.near(ours, least)
        words, ends = table.owners.gather(codes)
        wanted = np.where(self._differs[words], least_known, least)
        self.score(distinct(words[np.repeat(similarity, np.diff(ends)) >= wanted].astype(np.int64)))

    def score(self, places: Places) -> None:
        """Score these words."""
        places = places[~self.scored[places]]
        if len(places):
            self.scored[places] = True
            self._parts.append(places)
            look = above_floor(self._index.words.above(self.word.letters, places, LOOK_FLOOR))
            sound = self._index.word_codes.similarity_of(self.word.phoneme_codes, places, SOUND_FLOOR)
            self.similarity[places] = self._combined(places, look, above_floor(sound, SOUND_FLOOR))

    def at_least(self, level: float) -> Places:
        """The scored words that are at least so similar."""
        return np.concatenate([places[self.similarity[places] >= level] for places in (NONE, *self._parts)])

    def of(self, words: NDArray[np.uint32], bound: float | None = None) -> Values:
        """The similarity of these words. Unscored words count 0, or their upper `bound`."""
        similarity = self.similarity[words]
        return similarity if bound is None else np.where(self.scored[words], similarity, bound)

    def _combined(self, places: Places, look: Values, sound: Values) -> Values:
        """`closeness.retrieval.combine_aspects` for many words."""
        parameters = self._parameters
        value = combine_look_and_sound(look, sound, parameters)
        if self._has_senses:
            meaning = np.zeros(len(places))
            if len(self._synonyms):
                at = np.minimum(np.searchsorted(self._synonyms, places), len(self._synonyms) - 1)
                meaning = np.where(self._synonyms[at] == places, self._synonym_meaning[at], 0.0)
            same = meaning >= SAME_MEANING
            value[self._differs[places] & ~same] *= parameters.different_meaning
            value[same] = np.maximum(value[same], parameters.meaning_share * meaning[same])
        value[places == self._same] = 1.0
        return value
