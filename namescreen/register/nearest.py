"""The names of a register that are likeliest to be closest to one name, found without scoring every one of them.

1. Each word of the name is compared with the words of the register that are likeliest to be like it (`word_search`),
   and with those that are related to it in meaning (`word_scores`).
2. Of the names that hold them those are taken that have most in common with the name, by what is covered of both
   (`_holding`), and of the names that share most bigrams with the whole, without spaces (thyme pot, thymepot), those
   too.
3. What these have in common with the name is put together as `closeness` does, with what they have in common as said in
   English (`said_in_english`), but for what rests on the sound of the whole and on phrases.

`rescoring` scores what comes out best in full. How many of the closest names that misses is measured in
tests/bench/bench_recall.py.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from ..closeness import many
from ..closeness.name_similarity import is_one_coined_word, weights_of
from .bigram_index import bigrams_of
from .candidates import rows_of
from .packing import distinct, highest
from .said_in_english import SaidInEnglish
from .word_entries import IS_KNOWN
from .word_scores import WordScores

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from ..closeness import Features
    from .index import Index

    Places = NDArray[np.int64]
    Values = NDArray[np.float64]

__all__ = ["nearest"]

LOOKED_AT, HOLDING, SHARING = 8000, 700, 300
"""The ways to divide names that hold most of the name's words; those of them that are kept by what is covered of both;
and the names that share most of the rarer bigrams of the whole."""
STEPS = 1000
"""How finely it is told what a word adds to the names that hold it."""


def nearest(
    index: Index, name: Features, count: int, left_out: NDArray[np.bool_] | None = None, least: float = 0.0
) -> Places:
    """The `count` names of `index` likeliest to be closest to `name` overall, ascending, none of them `left_out`, each
    with at least `least` in common."""
    if not name.segmentations or not len(index.names):
        return np.zeros(0, np.int64)
    words = {word.letters: word for segmentation in name.segmentations for word in segmentation}
    scores = {letters: index.word_scores(word) for letters, word in words.items()}
    telling = index.name_bigrams.rarer_half(bigrams_of(name.letters))
    alike = index.name_bigrams.sharing_most(telling, SHARING, left_out)
    said = SaidInEnglish(index, name.name.words)
    names: Places = distinct(np.concatenate([_holding(index, name, scores, said, left_out), alike]))
    names = names[index.name_rows[names + 1] > index.name_rows[names]]
    if not len(names):
        return names
    overall = _overall(index, name, scores, said, names)
    close = names[overall >= least]
    return np.sort(close[_greatest(overall[overall >= least], count)])


def _holding(
    index: Index, name: Features, scores: dict[str, WordScores], said: SaidInEnglish,
    left_out: NDArray[np.bool_] | None,
) -> Places:  # fmt: skip
    """The names of which words that are like those of the name cover most of both, each by the shares of its words:
    where many names hold as much of the name, a single word like it comes before one beside others."""
    in_english, close = said.adds
    found = [(in_english, close, close)]
    for segmentation in name.segmentations:
        for word, share in zip(segmentation, weights_of(segmentation).counts, strict=True):
            compared = scores[word.letters]
            found.append((compared.places, share * compared.arrays.overall, compared.arrays.overall))
    words, covers, alike = map(np.concatenate, zip(*found, strict=True))
    places, adds = highest(words, covers)
    rows = index.word_search.holding(places, np.rint(STEPS * adds).astype(np.uint16), left_out, LOOKED_AT)
    held, ends = index.row_words.gather(rows)
    own, theirs = index.of_each_word
    try:
        own[places], theirs[places] = adds, highest(words, alike)[1]
        ours, close = own[held], theirs[held]
    finally:
        own[places] = theirs[places] = 0.0
    weight, start = index.dominance[held], ends[:-1]
    covered = np.minimum(1.0, np.add.reduceat(ours, start))
    covered += np.add.reduceat(close * weight, start) / np.add.reduceat(weight, start)
    return index.row_name[rows[_greatest(covered, HOLDING)]].astype(np.int64)


def _overall(
    index: Index, name: Features, scores: dict[str, WordScores], said: SaidInEnglish, names: Places
) -> Values:
    """How close each of some names, ascending, is overall, by what is known of its words and the letters of the
    whole."""
    rows = rows_of(index, names)
    held = distinct(rows.words)
    rows = rows._replace(words=np.searchsorted(held, rows.words))
    arrays = {letters: each.of(held) for letters, each in scores.items()}
    weights = many.Weights(index.strength[held], index.dominance[held])
    length = index.length[held].astype(np.float64)
    parts = many.parts_by_words(name.segmentations, arrays, rows, weights, length)
    said.raise_parts(parts, rows, held, weights, length)
    measures = index.names.measures(name.letters, names)
    none, unknown = np.zeros(len(names), bool), np.zeros(len(names))
    look, spelled = many.looks(measures, none), measures[:, many.SPELLED]
    sound = np.maximum(look, parts.sounds[0])
    coined = none
    if is_one_coined_word(name.name.words):
        sizes = np.diff(rows.start, append=len(rows.words))
        known = index.flags[held[rows.words[rows.start[rows.first]]]] & IS_KNOWN
        coined = (sizes[rows.first] == 1) & (known == 0)
    return many.scores(parts, look, sound, spelled, look, none, none, none, none, none, coined, unknown).overall


def _greatest(values: Values, count: int) -> Places:
    """Where the `count` greatest of some values stand, in no order."""
    if len(values) <= count:
        return np.arange(len(values))
    return np.argpartition(values, -count)[-count:]
