"""From words to names: how close two names are in each aspect, and overall.

Every name brings its divisions into words. For each pair of divisions the words are matched both ways, each word
with its best counterpart, and the matched share of each name's weight is taken; the best pair of divisions
counts. Beside it, the names run together are compared, for what only the joint hides (thyme pot, thymepot).

What was fitted stands in `parameters`. The other constants of this package are choices of ours, where no measure
and no source stands beside them.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from functools import lru_cache
from typing import NamedTuple

from ..lexicon import lexicon
from .appearance import Numbers, above_floor, appearance_similarity, positive_part
from .features import Features, Word
from .parameters import Parameters, shipped_parameters
from .sound import sound_similarity_of_words
from .vocabulary import TRANSLATED, english_readings, has_meaning
from .weights import LEAST, word_weight
from .word_similarity import (
    ASPECT_FLOOR,
    ASPECT_SOUND_FLOOR,
    SAME_MEANING,
    AspectSimilarity,
    aspect_similarity,
    combine_aspects,
)

__all__ = [
    "Scores",
    "add_first_word",
    "combine_coverage",
    "lower_if_weak",
    "score",
    "similarity_unspaced",
    "stop_words",
]

JOINED_FLOOR, JOINED_SOUND_FLOOR = 0.7, 0.65
"""Raw likeness at or below which two names run together are not taken for one another. Higher than for words:
the longer the strings, the more of them agrees by chance."""

JOINED = 0.95
"""What a likeness counts that only shows when the words are run together."""

LIGHT = 0.3
"""What an article or the like counts by length in look and sound: seen and heard, but passed over."""

MOST_IN_LOOK = 0.97
"""The most that names look alike whose letters differ in any way, if only in the order of the words."""

ENOUGH_KNOWN = 0.5
"""Share of a name's weight that must lie on words of the lexicon for its meaning to be judged."""

COUNTS_FIRST = 0.1
"""Weight from which a word can be a name's first: an article in front changes nothing."""

Side = tuple[Word, ...]
Grid = Sequence[Sequence[AspectSimilarity]]
"""The likeness of every word of one name (a row each) with every word of the other."""


class Scores(NamedTuple):
    """Closeness of two names: each aspect and overall, in [0, 1], 1 = the same; symmetric.

    `meaning` is None where it is unknown: too few words of the names are in the lexicon.
    """

    appearance: float
    sound: float
    meaning: float | None
    overall: float


def score(one: Features, other: Features, parameters: Parameters | None = None) -> Scores:
    """How close two names are. Symmetric; identical letters score 1 in every aspect; names without words 0."""
    if not one.segmentations or not other.segmentations:
        return Scores(0.0, 0.0, None, 0.0)
    if one.letters == other.letters:
        return Scores(1.0, 1.0, 1.0, 1.0)
    parameters = parameters or shipped_parameters()
    if other.letters < one.letters:  # sums run in one order, so that the result is symmetric to the last bit
        one, other = other, one
    look = similarity_unspaced(appearance_similarity(one.letters, other.letters), JOINED_FLOOR)
    sound = 0.0
    if not stop_words(one) & stop_words(other):
        heard = sound_similarity_of_words(one.phoneme_codes, other.phoneme_codes, JOINED_SOUND_FLOOR)
        sound = similarity_unspaced(heard, JOINED_SOUND_FLOOR)
    strongest = max(word.weight for words in (*one.segmentations, *other.segmentations) for word in words)
    best = [look, sound, 0.0, lower_if_weak(max(look, sound), strongest, parameters)]
    for ours in one.segmentations:
        for theirs in other.segmentations:
            grid = [[aspect_similarity(word, match) for match in theirs] for word in ours]
            best = [max(pair) for pair in zip(best, _aspects(ours, theirs, grid, parameters), strict=True)]
    meant = _meant(one) and _meant(other)
    translated = max(_translated(one, other, parameters), _translated(other, one, parameters))
    meaning = max(best[2], translated) if meant or translated >= SAME_MEANING else None
    return Scores(min(best[0], MOST_IN_LOOK), best[1], meaning, best[3])


def _translated(one: Features, other: Features, parameters: Parameters) -> float:
    """Closeness in meaning of `other` with `one` as said in English, where words of it are foreign."""
    words, theirs = other.name.words, _plain(other.name.words)
    best = 0.0
    for ours in english_readings(one.name.words):
        grid = [[_said(_closeness(word, match)) for match in words] for word in ours]
        covered = _covered(_plain(ours), theirs, grid, _counts)
        best = max(best, TRANSLATED * combine_coverage(covered.less, covered.more, parameters))
    return best


def _closeness(word: str, match: str) -> float | None:
    return 1.0 if word == match else lexicon().closeness(word, match, SAME_MEANING)


@lru_cache(maxsize=1 << 14)
def _plain(words: tuple[str, ...]) -> Side:
    """Words of which only the weight matters."""
    return tuple(Word(word, (), word_weight(word, ())) for word in words)


def stop_words(features: Features) -> frozenset[str]:
    """The articles and the like in a name. Names that share one are not compared by their sound as wholes: it would be
    heard there as if it counted."""
    return frozenset(word.letters for word in features.segmentations[0] if word.weight <= LEAST)


def _aspects(ours: Side, theirs: Side, grid: Grid, parameters: Parameters) -> tuple[float, float, float, float]:
    """Appearance, sound, meaning and overall of two names in one pair of divisions."""
    look = _covered(ours, theirs, [[above_floor(pair.look, ASPECT_FLOOR) for pair in row] for row in grid], _letters)
    sound = _covered(
        ours, theirs, [[above_floor(pair.sound, ASPECT_SOUND_FLOOR) for pair in row] for row in grid], _phones
    )
    meaning = _covered(ours, theirs, [[_said(pair.meaning) for pair in row] for row in grid], _counts)
    table = [[combine_aspects(pair, parameters) for pair in row] for row in grid]
    whole = _covered(ours, theirs, table, _counts)
    first, second = _first(ours), _first(theirs)
    weight = min(ours[first].weight, theirs[second].weight)
    value = combine_coverage(whole.less, whole.more, parameters)
    value = add_first_word(value, table[first][second] * weight, parameters)
    return (
        look.less,
        sound.less,
        combine_coverage(meaning.less, meaning.more, parameters),
        lower_if_weak(value, whole.strength, parameters),
    )


def similarity_unspaced(raw: Numbers, floor: float) -> Numbers:
    """What a raw likeness of two names without their spaces counts."""
    return JOINED * above_floor(raw, floor)


def combine_coverage(one: Numbers, other: Numbers, parameters: Parameters) -> Numbers:
    """Closeness from the matched shares of two names: `fuller_side` times the better covered one, the rest times the
    worse covered one."""
    return (one + other + (2 * parameters.fuller_side - 1) * abs(one - other)) / 2


def add_first_word(value: Numbers, similarity: Numbers, parameters: Parameters) -> Numbers:
    """`value` raised by what the first words have in common: their `similarity` times the lesser of their weights."""
    return value + parameters.first_word * similarity * (1 - value)


def lower_if_weak(value: Numbers, strength: Numbers, parameters: Parameters) -> Numbers:
    """`value` (0 or more) lowered where it rests on words of little weight; `strength` is their mean weight."""
    missing = positive_part(1 - strength / parameters.enough_strength)
    lowered: Numbers = value ** (1 + parameters.weak_element * missing)
    return lowered


class _Coverage(NamedTuple):
    """The matched share of the worse and of the better covered name, and the mean weight of what is matched.

    For look and sound alone the worse covered name decides: there, what is added is seen and heard in full.
    """

    less: float
    more: float
    strength: float


def _covered(ours: Side, theirs: Side, table: Sequence[Sequence[float]], weigh: Callable[[Word], float]) -> _Coverage:
    share, matched, strong = _share(ours, (max(row) for row in table), weigh)
    other_share, other_matched, other_strong = _share(theirs, map(max, zip(*table, strict=True)), weigh)
    matched += other_matched
    strength = (strong + other_strong) / matched if matched else 0.0
    return _Coverage(min(share, other_share), max(share, other_share), strength)


def _share(words: Side, best: Iterable[float], weigh: Callable[[Word], float]) -> tuple[float, float, float]:
    """The matched share of a name's weight, the sum of the matches, and the sum of the matched weights."""
    total = matched = strong = 0.0
    for word, value in zip(words, best, strict=True):
        weight = weigh(word)
        total += weight
        matched += value
        strong += weight * value
    return strong / total, matched, strong


def _counts(word: Word) -> float:
    return word.weight


def _letters(word: Word) -> float:
    return len(word.letters) * (LIGHT if word.weight <= LEAST else 1.0)


def _phones(word: Word) -> float:
    return len(word.phoneme_codes[0] if word.phoneme_codes else word.letters) * (LIGHT if word.weight <= LEAST else 1.0)


def _said(meaning: float | None) -> float:
    return meaning if meaning is not None and meaning >= SAME_MEANING else 0.0


def _first(words: Side) -> int:
    return next((place for place, word in enumerate(words) if word.weight >= COUNTS_FIRST), 0)


def _meant(features: Features) -> bool:
    """Whether enough of a name is made of known words for its meaning to be judged, in some division."""
    return any(
        sum(word.weight for word in words if has_meaning(word.letters))
        >= ENOUGH_KNOWN * sum(word.weight for word in words)
        for words in features.segmentations
    )
