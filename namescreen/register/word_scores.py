"""One word of a name against the words of a register: compared where they are likeliest to be like it, estimated
elsewhere."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from ..closeness import Word, many
from ..closeness.appearance import positive_part
from ..closeness.sound import LETTERS
from ..closeness.vocabulary import base_forms, has_senses, is_familiar, is_known, is_surname
from ..closeness.word_meaning import RELATED, SAME_NAME, combine_meaning
from ..closeness.word_similarity import CHANCE
from .bigram_index import bigrams_of
from .packing import distinct, found_among, highest, least_of_most
from .word_entries import HAS_BASE_FORMS, IS_FAMILIAR, IS_KNOWN, IS_SURNAME
from .word_search import WHOLE

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from ..lexicon.association import Vectors
    from .index import Index
    from .phoneme_index import Codes

    Places = NDArray[np.int64]
    Values = NDArray[np.float64]

__all__ = ["WordScores", "comparable_words", "grounds_of_meaning", "sounds"]

FEW_WORDS, MANY_WORDS = 32_768, 131_072
CONSIDERED, CONSIDERED_OF_MANY = 10_000, 6_000
"""In a register of more distinct words than the first only those are estimated that share most bigrams with the word:
half so many by letters, and the words of half so many readings by phonemes; fewer from the second on, where more would
cost much."""
LIKELY, LIKELY_OF_MORE, LIKELY_OF_MANY = 1500, 1000, 600
"""The words that are compared with the word because their estimates are highest, in registers of few words, of more and
of many."""
MEANT = 0.3
"""The closeness in meaning from which a word is compared however unlike it looks and sounds: words with less decide
nothing (0.1 finds as many of the closest names)."""
FORM, FORM_OF_ESTIMATE = 0.30, 0.42
"""The look and sound of a word that is not compared: so much, and so much more for an estimate of 1."""


class WordScores:
    """The words of an index that are likeliest to be like a word of a name, by their `places`, ascending, and how they
    compare with it (`arrays`)."""

    def __init__(self, word: Word, index: Index) -> None:
        self._index, self._word = index, word
        likeliest = self._likeliest()
        self._related, self._said = self._related_words()
        same = index.words.find(word.letters)
        self._same = np.array([] if same is None else [same], np.int64)
        self.places = distinct(np.concatenate([likeliest, self._related, self._same]))
        self.arrays = self._compared()

    def of(self, words: Places) -> many.WordArrays:
        """How some words of the index compare with the word; those without a place here by their estimate."""
        form = FORM + FORM_OF_ESTIMATE / WHOLE * self._estimates[words].astype(np.float64)
        nothing = np.zeros(len(words))
        found = many.WordArrays(form, form.copy(), nothing, np.maximum(0.0, (form - CHANCE) / (1 - CHANCE)))
        at, here = found_among(self.places, words)
        for values, exact in zip(found, self.arrays, strict=True):
            values[here] = exact[at[here]]
        return found

    def _likeliest(self) -> Places:
        """The words that are likeliest to be like it; of all that are considered the estimate is kept."""
        index, word = self._index, self._word
        places = np.arange(len(index.words))
        likely = LIKELY
        if len(places) > FEW_WORDS:
            of_many = len(places) > MANY_WORDS
            likely = LIKELY_OF_MANY if of_many else LIKELY_OF_MORE
            half = (CONSIDERED_OF_MANY if of_many else CONSIDERED) // 2
            by_letters = index.word_bigrams.sharing_most(bigrams_of(word.letters), half)
            codes = index.code_bigrams.sharing_most(bigrams_of(*word.phoneme_codes), half)
            by_sounds, _ = index.word_codes.owners.gather(codes)
            places = distinct(np.concatenate([by_letters, by_sounds.astype(np.int64)]))
        estimates = index.word_search.estimates(word, places)
        self._estimates = np.zeros(len(index.words), np.uint16)
        self._estimates[places] = estimates
        return places[estimates >= max(least_of_most(estimates, likely), 1)]

    def _related_words(self) -> tuple[Places, Values]:
        """The words that are close to it in meaning, and how close; in a register of more than few words only by
        relations of senses."""
        index, letters, count = self._index, self._word.letters, len(self._index.words)
        if not has_senses(letters):
            return np.zeros(0, np.int64), np.zeros(0)
        places, values = index.related(letters)
        keep = (values >= RELATED) & (places < count)
        places, related = highest(places[keep], values[keep])
        if count > FEW_WORDS:
            return places, related
        said = np.zeros(count)
        said[places] = related
        said = combine_meaning(*grounds_of_meaning(index, index.vectors, letters, np.arange(count), said))
        places = (said >= MEANT).nonzero()[0]
        return places, said[places]

    def _compared(self) -> many.WordArrays:
        index, word, places = self._index, self._word, self.places
        same, flags = np.isin(places, self._same), index.flags[places]
        measures = index.words.measures(word.letters, places)
        look, known = many.looks(measures, same), (flags & IS_KNOWN) > 0
        sound = sounds(index.word_codes, word.phoneme_codes, places, measures, same)
        familiar = ((flags & IS_FAMILIAR) > 0) | is_familiar(word.letters)
        none = np.zeros(len(places), bool)
        said = self._meaning(same)
        return many.word_arrays(look, sound, said, said, is_known(word.letters), known, familiar, none)

    def _meaning(self, same: NDArray[np.bool_]) -> Values:
        """`closeness.word_meaning.meaning` of the words, as far as it is known here; opposites are not told apart."""
        index, letters, places = self._index, self._word.letters, self.places
        if not has_senses(letters):
            return np.where(same, 1.0, np.nan)
        said = np.zeros(len(places))
        said[np.searchsorted(places, self._related)] = self._said
        comparable, english = comparable_words(index, letters, places, said)
        return many.meanings(said, said, np.zeros(len(places), bool), comparable, english, same)


def grounds_of_meaning(
    index: Index, vectors: Vectors, letters: str, words: Places, related: Values
) -> tuple[Values, Values, Values]:
    """How close words of the index, with these vectors, are to one by relations of senses, in texts and in the
    thesaurus: what `closeness.word_meaning.combine_meaning` combines."""
    associated = np.nan_to_num(vectors.associations(letters, index.form_defined[words], index.keys))
    listed = positive_part(np.nan_to_num(vectors.thesaurus_similarities(letters)))
    return related, associated, listed


def comparable_words(
    index: Index, letters: str, words: Places, related: Values
) -> tuple[NDArray[np.bool_], NDArray[np.bool_]]:
    """Which words of the index have a meaning to compare with that of one, and which are English as it is."""
    flags, comparable = index.flags[words], index.known[words] > 0
    if is_surname(letters):
        comparable &= ((flags & IS_SURNAME) == 0) | (related >= SAME_NAME)
    return comparable, (flags & HAS_BASE_FORMS) > 0 if base_forms(letters) else np.zeros(len(words), bool)


def sounds(
    codes: Codes, own: tuple[str, ...], places: Places, measures: Values, same: NDArray[np.bool_],
    share: Values | float = LETTERS,
) -> Values:  # fmt: skip
    """`closeness.sound.sound` of one word or name and each of these; NaN where one cannot be read aloud."""
    if not own or not len(places):
        return np.where(same, 1.0, np.nan)
    articulation, alike = codes.sound_measures(own, places)
    return many.sounds(articulation, alike, measures[:, many.SPELLED], same, share)
