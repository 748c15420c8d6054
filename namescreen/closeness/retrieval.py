"""The score by which a register is searched: a simpler closeness than the fitted one, made so that it can be bounded.
Similarity below a floor counts as nothing, so that most words and names need not be looked at. The search
(`register.nearest`) retrieves more names than are wanted by this score; `name_similarity` ranks them. The constants are
reasoned, not fitted: the aim is to miss hardly any name that exhaustive scoring would find (measured in
tests/bench/bench_register.py).
"""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from .appearance import Numbers, above_floor, appearance_similarity, positive_part
from .features import Features, Word
from .sound import FLOOR as SOUND_FLOOR
from .sound import sound_similarity_of_words
from .vocabulary import meaning_similarity_of_words
from .weights import LEAST
from .word_similarity import SAME_MEANING

__all__ = [
    "PARAMETERS",
    "Parameters",
    "add_first_word",
    "combine_aspects",
    "combine_coverage",
    "combine_look_and_sound",
    "lower_if_weak",
    "retrieval_score",
    "similarity_unspaced",
    "stop_words",
]

JOINED_FLOOR, JOINED_SOUND_FLOOR = 0.7, 0.65
"""Raw similarity at or below which two unspaced names count as not similar. Higher than for words: the longer the
strings, the more of them agrees by chance."""

JOINED = 0.95
"""The factor for a similarity that only unspaced names show."""

COUNTS_FIRST = 0.1
"""Weight from which a word counts as the first of a name: an article in front changes nothing."""

Side = tuple[Word, ...]


class Parameters(NamedTuple):
    """The parameters of the score."""

    stronger_aspect: float = 0.8
    """Share of a word pair's similarity that comes from the stronger of look and sound, the rest from their mean."""
    meaning_share: float = 0.85
    """The similarity of two different words with the same meaning."""
    different_meaning: float = 0.8
    """The factor for two known words whose meanings have nothing in common."""
    fuller_side: float = 0.3
    """The weight of the better covered name, which decides how far a mark counts that is incorporated in a longer one;
    the rest falls to the worse covered name (TMEP 1207.01(b)(iii))."""
    first_word: float = 0.25
    """Share of the remaining gap closed when the first words that count are the same."""
    weak_element: float = 0.5
    """The discount for a similarity of weak words only: the exponent grows by this times the missing strength (TMEP
    1207.01(b)(viii))."""
    enough_strength: float = 0.5
    """Weight of the shared words from which there is no discount."""


PARAMETERS = Parameters()


def retrieval_score(one: Features, other: Features) -> float:
    """The closeness of two names in a search, in [0, 1]: 1 for identical letters, 0 for most pairs; symmetric."""
    if not one.segmentations or not other.segmentations:
        return 0.0
    if one.letters == other.letters:
        return 1.0
    if other.letters < one.letters:  # sums run in one order, so that the result is symmetric to the last bit
        one, other = other, one
    unspaced = similarity_unspaced(appearance_similarity(one.letters, other.letters), JOINED_FLOOR)
    if not stop_words(one) & stop_words(other):
        heard = sound_similarity_of_words(one.phoneme_codes, other.phoneme_codes, JOINED_SOUND_FLOOR)
        unspaced = max(unspaced, similarity_unspaced(heard, JOINED_SOUND_FLOOR))
    strongest = max(word.weight for words in (*one.segmentations, *other.segmentations) for word in words)
    by_words = (_by_words(ours, theirs) for ours in one.segmentations for theirs in other.segmentations)
    return max(lower_if_weak(unspaced, strongest, PARAMETERS), *by_words)


def stop_words(features: Features) -> frozenset[str]:
    """The stop words of a name, such as articles. Whole-name sound is skipped for names that share one, because it
    would count there."""
    return frozenset(word.letters for word in features.segmentations[0] if word.weight <= LEAST)


def similarity_unspaced(raw: Numbers, floor: float) -> Numbers:
    """The similarity of two unspaced names from their raw similarity."""
    return JOINED * above_floor(raw, floor)


def combine_look_and_sound(look: Numbers, sound: Numbers, parameters: Parameters) -> Numbers:
    """Closeness of words by look and sound, without meaning: `stronger_aspect` times the stronger of the two and the
    rest times their mean."""
    return (look + sound + parameters.stronger_aspect * abs(look - sound)) / 2


def combine_aspects(look: float, sound: float, meaning: float | None, parameters: Parameters) -> float:
    """Overall closeness of two different words: look and sound, raised or lowered by what they mean."""
    form = combine_look_and_sound(look, sound, parameters)
    if meaning is None:
        return form
    if meaning < SAME_MEANING:
        return form * parameters.different_meaning
    return max(form, meaning * parameters.meaning_share)


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


def _by_words(ours: Side, theirs: Side) -> float:
    """The score of two names in one pair of segmentations."""
    table = [[_of_words(word, match) for match in theirs] for word in ours]
    share, matched, strong = _share(ours, list(map(max, table)))
    other_share, other_matched, other_strong = _share(theirs, list(map(max, zip(*table, strict=True))))
    value = combine_coverage(share, other_share, PARAMETERS)
    first, second = _first(ours), _first(theirs)
    value = add_first_word(value, table[first][second] * min(ours[first].weight, theirs[second].weight), PARAMETERS)
    matched += other_matched
    return lower_if_weak(value, (strong + other_strong) / matched if matched else 0.0, PARAMETERS)


def _of_words(one: Word, other: Word) -> float:
    if one.letters == other.letters:
        return 1.0
    return _cached(one.letters, one.phoneme_codes, other.letters, other.phoneme_codes)


@lru_cache(maxsize=1 << 16)
def _cached(letters: str, codes: tuple[str, ...], other_letters: str, other_codes: tuple[str, ...]) -> float:
    look = above_floor(appearance_similarity(letters, other_letters))
    sound = above_floor(sound_similarity_of_words(codes, other_codes, SOUND_FLOOR), SOUND_FLOOR)
    meaning = meaning_similarity_of_words(letters, other_letters, SAME_MEANING)
    return combine_aspects(look, sound, meaning, PARAMETERS)


def _share(words: Side, best: list[float]) -> tuple[float, float, float]:
    """The matched share of a name's weight, the sum of the matches, and the sum of the matched weights."""
    total = matched = strong = 0.0
    for word, value in zip(words, best, strict=True):
        total += word.weight
        matched += value
        strong += word.weight * value
    return strong / total, matched, strong


def _first(words: Side) -> int:
    return next((place for place, word in enumerate(words) if word.weight >= COUNTS_FIRST), 0)
