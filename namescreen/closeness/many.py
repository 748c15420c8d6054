"""One name against many at once, in arrays: what `word_similarity` and `name_similarity` compute for one pair. The
arithmetic is the same, step for step; tests/closeness compare the two. The facts on words and names come in as arrays,
from a register that keeps them (`register.rescoring`). Sums may differ in their last digits. Where a value is unknown
(None for one pair) arrays hold NaN.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from .appearance import SHAPE_ONLY, above_floor
from .covering import covering
from .features import Word
from .letters import LETTER_MEASURES
from .model import shipped_model
from .name_similarity import (
    LATER,
    LATER_IN_SENSE,
    LEAST_IN_FORM,
    LEAST_IN_MEANING,
    Side,
    weights_of,
)
from .parts import SAME_SOUND, Scores, all_looks, all_sounds, at_least, of_overall
from .sound import FLOOR, LETTERS
from .vocabulary import TRANSLATED
from .word_meaning import OPPOSITE, RELATED
from .word_similarity import (
    CHANCE,
    DIFFERENT,
    ONE_WORD,
    SAID_OTHERWISE,
    SEEN,
    SEEN_IF_GUESSED,
    STRONGER,
    recalled_meaning,
)  # fmt: skip

__all__ = ["SPELLED", "ManyScores", "Parts", "Rows", "Said", "Weights", "WordArrays", "looks", "meanings",
           "parts_by_words", "parts_translated", "scores", "sounds", "word_arrays"]  # fmt: skip

Values = NDArray[np.float64]
Places = NDArray[np.int64]

SPELLED, SAME_SHAPES = LETTER_MEASURES.index("spelling"), len(LETTER_MEASURES)
"""Columns of the measures of letters: `letters.spelled_alike`, and after those of `LETTER_MEASURES` whether only shapes
that are easily confused are different."""


def looks(measures: Values, same: NDArray[np.bool_]) -> Values:
    """`letters.look` from measures of letters, a row a string; `same` are those with the same letters."""
    value = np.minimum(1.0, shipped_model().look(*measures.T[:SAME_SHAPES]))
    return np.where(same, 1.0, np.where(measures[:, SAME_SHAPES] > 0, SHAPE_ONLY, value))


def sounds(
    articulation: Values, same_sounds: Values, spelled: Values, same: NDArray[np.bool_], share: Values | float = LETTERS
) -> Values:
    """`sound.sound` from the two measures of sounds (NaN where one has no reading), how alike they are spelled, and the
    share that spelling takes off."""
    apart = 1.0 - shipped_model().sound(articulation, same_sounds)
    return np.where(same, 1.0, 1.0 - apart * (1.0 - share * spelled))


def meanings(
    related: Values, said: Values, opposite: NDArray[np.bool_], comparable: NDArray[np.bool_],
    english: NDArray[np.bool_], same: NDArray[np.bool_],
) -> Values:  # fmt: skip
    """One of `word_meaning.meanings` from the similarity in meaning (0 where none is known), what it says together with
    association and thesaurus, and which words are opposites; `comparable` are those of which both have senses and that
    are not both surnames, `english` those of which both have base forms."""
    known = comparable & ((related >= RELATED) | english)
    return np.where(same, 1.0, np.where(known, np.where(opposite, np.minimum(said, OPPOSITE), said), np.nan))


class WordArrays(NamedTuple):
    """One word against many, as `WordSimilarity`: an array each."""

    look: Values
    sound: Values
    meaning: Values
    overall: Values


def word_arrays(
    look: Values, sound: Values, idea: Values, same: Values, is_known: bool, known: NDArray[np.bool_],
    familiar: NDArray[np.bool_], inflected: NDArray[np.bool_],
) -> WordArrays:  # fmt: skip
    """`word_similarity.word_similarity` from look, sound (which may be NaN) and both of `word_meaning.meanings` (NaN
    where there are none); whether the word `is_known`, which of the others are `known`, in which pairs one is
    `familiar`, and which others are `inflected` forms of it (`text.inflection.other_number`)."""
    heard = np.where(np.isnan(sound), look, sound)
    share = np.where(known, SEEN, SEEN_IF_GUESSED) if is_known else SEEN_IF_GUESSED
    form = STRONGER * np.maximum(look, heard) + (1 - STRONGER) * (share * look + (1 - share) * heard)
    form = np.maximum(0.0, (form - CHANCE) / (1 - CHANCE))
    unknown = np.isnan(idea)
    least = np.where(inflected & (unknown | (idea >= ONE_WORD)), ONE_WORD, 0.0)
    recalled = np.maximum(least, np.where(known != is_known, recalled_meaning(heard), 0.0))
    idea, same = np.where(unknown, recalled, idea), np.where(unknown, recalled, same)
    form = np.where(unknown | ~familiar, form, form * (1 - DIFFERENT * (1 - same)))
    return WordArrays(look, heard, idea, np.maximum(np.maximum(form, SAID_OTHERWISE * same), least))


class Weights(NamedTuple):
    """`weights.word_weight` of many words."""

    strength: Values
    dominance: Values


class Rows(NamedTuple):
    """Ways to divide many names into words, one after another: the `words` of each, by their places, and where each
    begins; `first` is the first row of each name. Every row has a word, every name a row."""

    words: Places
    start: Places
    first: Places

    def shares(self, weights: Weights, length: Values) -> tuple[Values, Values, Values, Values]:
        """`name_similarity.weights_of` each row, word for word, by the weights and the `said_length` of every word."""
        sizes = np.diff(self.start, append=len(self.words))
        place = np.arange(len(self.words)) - np.repeat(self.start, sizes)
        places = range(int(sizes.max(initial=0)))
        later, in_sense = (np.array([share**at for at in places])[place] for share in (LATER, LATER_IN_SENSE))
        strength, dominance = weights.strength[self.words], weights.dominance[self.words]
        counts = dominance * in_sense
        most = np.repeat(np.maximum.reduceat(dominance, self.start), sizes)
        seen = (LEAST_IN_FORM + (1 - LEAST_IN_FORM) * strength) * later
        said = length[self.words] * (LEAST_IN_MEANING + (1 - LEAST_IN_MEANING) * strength) * in_sense
        sums = (np.repeat(np.add.reduceat(one, self.start), sizes) for one in (counts, seen, said))
        return np.minimum(strength, dominance / most) * later, counts / next(sums), seen / next(sums), said / next(sums)


class Said(NamedTuple):
    """Names that are compared as said in another language: their rows, and the shares that each word of these has, as
    an element and in what is said."""

    rows: Rows
    counts: Values
    said: Values

    @classmethod
    def of(cls, rows: Rows, weights: Weights, length: Values) -> Said:
        """By the weights of all words without goods, and their lengths as they count in a translation."""
        _, counts, _, said = rows.shares(weights, length)
        return cls(rows, counts, said)


class Parts(NamedTuple):
    """As `name_similarity.Parts`, of many names: the parts that rest on words, (less covered, better covered)."""

    looks: Values
    sounds: Values
    meanings: Values
    elements: Values
    shared: Values
    kept: Values


def parts_by_words(
    own: Sequence[Side], arrays: Mapping[str, WordArrays], rows: Rows, weights: Weights, length: Values
) -> Parts:
    """The parts of one name, in its divisions, and of many in theirs. `arrays` has each word of `own`, by its letters,
    against all words; `weights` and `length` (`said_length`) are those of all words."""
    counted, *shares = rows.shares(weights, length)
    cover, found = covering(*rows), []
    for words in own:
        ours = weights_of(words)
        against = [arrays[word.letters] for word in words]
        look, sound, meant, alike = (np.array([one[aspect] for one in against]) for aspect in range(4))
        found.append(np.vstack([
            cover.covered(look, ours.in_form, shares[1]),
            cover.covered(sound, ours.in_form, shares[1])[:1],
            cover.covered(above_floor(sound, FLOOR), ours.in_form, shares[1])[1:],
            cover.covered(meant, ours.in_meaning, shares[2]),
            cover.elements(alike, ours.counts, shares[0], ours.weight, counted),
        ]))  # fmt: skip
    best = np.max(found, axis=0)
    return Parts(best[0:2], best[2:4], best[4:6], best[6:8], best[8], best[9])


def parts_translated(
    own: Sequence[Word], meanings: Mapping[str, Values], others: Said
) -> tuple[Values, Values]:
    """The meanings and elements of `Parts` that names have in common as said in another language.

    `others` are foreign names as said in English, or names as written where `own` is what the name says in English;
    `meanings` has the meaning of each word of `own` against all.
    """
    ours, rows = weights_of(tuple(own)), others.rows
    table, cover = TRANSLATED * np.nan_to_num(np.array([meanings[word.letters] for word in own])), covering(*rows)
    return (
        cover.covered(table, ours.in_translation, others.said),
        SAID_OTHERWISE * cover.covered(table, ours.counts, others.counts),
    )


class ManyScores(NamedTuple):
    """As `Scores`, of many names; NaN for None in `sound` and `meaning`."""

    appearance: Values
    sound: Values
    meaning: Values
    overall: Values
    translated: Values

    def some(self, chosen: Places) -> ManyScores:
        """Those of some names."""
        return ManyScores(*(aspect[chosen] for aspect in self))

    def each(self) -> list[Scores]:
        """One after another."""
        known = [[None if value != value else value for value in aspect.tolist()] for aspect in self]
        return [Scores(*one) for one in zip(*known, strict=True)]


def scores(
    found: Parts, look: Values, sound: Values, spelled: Values, in_any_order: Values, same: NDArray[np.bool_],
    meant: NDArray[np.bool_], breaks: NDArray[np.bool_], shares: NDArray[np.bool_],
    divided_otherwise: NDArray[np.bool_], coined: NDArray[np.bool_], translated: Values,
) -> ManyScores:  # fmt: skip
    """`name_similarity.score` of many names from their parts; look, sound (NaN where one cannot be read aloud) and
    spelling run together; their letters `in_any_order` of their words; which have the same letters, of which `meant`
    meaning can be judged, which break a phrase, which share a word, which have another number of words, and which are a
    single coined word, as the name is; and `Scores.translated`, which is in their meanings."""
    model = shipped_model()
    unheard = np.isnan(sound)
    run_together = np.where(unheard, look, sound)
    appearance = np.minimum(1.0, model.appearance(*all_looks(look, tuple(found.looks), spelled, in_any_order)))
    appearance = np.where(look >= SHAPE_ONLY, np.maximum(appearance, look), appearance)
    otherwise = divided_otherwise.astype(np.float64)
    heard = np.minimum(1.0, model.sound_of_names(*all_sounds(run_together, tuple(found.sounds), otherwise, look)))
    heard = np.where(~unheard & (run_together >= 1.0), 1.0, heard)
    less, better = found.meanings
    rest = np.where(shares, (found.elements[0], in_any_order), less)
    said = np.minimum(1.0, model.meaning(less, better, np.where(breaks, 0.0, less), *rest))
    of_words = found.elements[0], found.shared, found.sounds[0], run_together**SAME_SOUND, found.kept
    overall = model.overall(*of_overall(of_words, appearance, heard, coined.astype(np.float64)))
    shared, as_one = np.where(breaks, 0.0, found.shared), np.where(unheard, 0.0, run_together)
    overall = np.minimum(1.0, at_least(overall, tuple(found.elements), shared, as_one))
    one = np.ones(1)
    return ManyScores(
        np.where(same, one, appearance),
        np.where(same, one, np.where(unheard, np.nan, heard)),
        np.where(same, one, np.where(meant, said, np.nan)),
        np.where(same, one, overall),
        np.where(same, 0.0, translated),
    )
