"""From words to names: how close two names are in each aspect, and overall.

Every name brings its divisions into words. For each pair of divisions the words are matched both ways, each word
with its best counterpart, and the matched share of each name's weight is taken; the best pair of divisions
counts. Beside it, the names run together are compared, for what only the joint hides (hydra pore, hydrapore).
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache

from .appearance import above_floor, letters_closeness
from .parameters import Parameters, shipped_parameters
from .prepare import Features, Word
from .sound import FLOOR as SOUND_FLOOR
from .sound import sound_of_words
from .vocabulary import has_meaning, meaning_of_words
from .weights import LEAST

__all__ = ["Scores", "score", "word_closeness"]

JOINED_FLOOR, JOINED_SOUND_FLOOR = 0.7, 0.75
"""Raw likeness at or below which two names run together are not taken for one another. Higher than for words:
the longer the strings, the more of them agrees by chance."""

JOINED = 0.95
"""What a likeness counts that only shows when the words are run together."""

LIGHT = 0.3
"""What an article or the like counts by length in look and sound: seen and heard, but passed over."""

ASPECT_FULLER = 0.0
"""As `Parameters.fuller_side`, for look and sound taken alone: there, what is added is seen and heard in full."""

ASPECT_FLOOR, ASPECT_SOUND_FLOOR = 0.3, 0.45
"""As the floors of look and sound, for the aspect taken alone: lower, so that a partial likeness shows."""

ENOUGH_KNOWN = 0.5
"""Share of a name's weight that must lie on words of the lexicon for its meaning to be judged."""

SAME_MEANING = 0.5
"""Closeness in meaning from which two words say something alike; below it they say different things."""


@dataclass(frozen=True, slots=True)
class Scores:
    """Closeness of two names: each aspect and overall, in [0, 1], 1 = the same; symmetric.

    `meaning` is None where it is unknown: too few words of the names are in the lexicon.
    """

    appearance: float
    sound: float
    meaning: float | None
    overall: float


@lru_cache(maxsize=1 << 18)
def word_closeness(one: Word, other: Word, parameters: Parameters | None = None) -> float:
    """Overall closeness of two words, in [0, 1]: look and sound, raised or lowered by what they mean."""
    if one.letters == other.letters:
        return 1.0
    parameters = parameters or shipped_parameters()
    look = above_floor(letters_closeness(one.letters, other.letters))
    sound = above_floor(_raw_sound(one, other), SOUND_FLOOR)
    share = parameters.stronger_aspect
    heard_or_seen = share * max(look, sound) + (1 - share) * (look + sound) / 2
    meaning = meaning_of_words(one.letters, other.letters)
    if meaning is None:
        return heard_or_seen
    if meaning < SAME_MEANING:
        return heard_or_seen * parameters.different_meaning
    return max(heard_or_seen, meaning * parameters.meaning_share)


def _look(one: Word, other: Word) -> float:
    return above_floor(letters_closeness(one.letters, other.letters), ASPECT_FLOOR)


def _sound(one: Word, other: Word) -> float:
    return above_floor(_raw_sound(one, other), ASPECT_SOUND_FLOOR)


def _raw_sound(one: Word, other: Word) -> float:
    return sound_of_words(one.codes, other.codes, ASPECT_SOUND_FLOOR)


def _meaning(one: Word, other: Word) -> float:
    meaning = meaning_of_words(one.letters, other.letters) or 0.0
    return meaning if meaning >= SAME_MEANING else 0.0


Match = Callable[[Word, Word], float]
Weigh = Callable[[Word], float]


def _counts(word: Word) -> float:
    return word.weight


def _letters(word: Word) -> float:
    return len(word.letters) * (LIGHT if word.weight <= LEAST else 1.0)


def _phones(word: Word) -> float:
    return len(word.codes[0] if word.codes else word.letters) * (LIGHT if word.weight <= LEAST else 1.0)


@dataclass(frozen=True, slots=True)
class _Coverage:
    """How much of each of two names is matched, and by words of what strength."""

    less: float
    more: float
    strength: float
    firsts: float


def _cover(ours: tuple[Word, ...], theirs: tuple[Word, ...], match: Match, weigh: Weigh) -> _Coverage:
    table = [[match(word, other) for other in theirs] for word in ours]
    best_ours = [max(row) for row in table]
    best_theirs = [max(column) for column in zip(*table, strict=True)]
    shares, matched, strong = [], 0.0, 0.0
    for words, best in ((ours, best_ours), (theirs, best_theirs)):
        weights = [weigh(word) for word in words]
        hits = [weight * value for weight, value in zip(weights, best, strict=True)]
        shares.append(sum(hits) / sum(weights))
        matched += sum(best)
        strong += sum(hits)
    first, second = _first(ours), _first(theirs)
    firsts = table[first][second] * min(ours[first].weight, theirs[second].weight)
    return _Coverage(min(shares), max(shares), strong / matched if matched else 0.0, firsts)


def _first(words: tuple[Word, ...]) -> int:
    """The place of the first word that counts: an article in front changes nothing."""
    return next((place for place, word in enumerate(words) if word.weight >= 0.1), 0)


def _meant(features: Features) -> bool:
    """Whether enough of a name is made of known words for its meaning to be judged, in some division."""
    return any(
        sum(word.weight for word in words if has_meaning(word.letters))
        >= ENOUGH_KNOWN * sum(word.weight for word in words)
        for words in features.divisions
    )


def _aspect(one: Features, other: Features, match: Match, weigh: Weigh, joined: float, fuller: float) -> float:
    """Closeness in one aspect: the best of matching words and of comparing the names run together."""
    best = joined
    for ours in one.divisions:
        for theirs in other.divisions:
            cover = _cover(ours, theirs, match, weigh)
            best = max(best, fuller * cover.more + (1 - fuller) * cover.less)
    return best


def score(one: Features, other: Features, parameters: Parameters | None = None) -> Scores:
    """How close two names are. Symmetric; identical letters score 1 in every aspect; names without words 0."""
    if not one.divisions or not other.divisions:
        return Scores(0.0, 0.0, None, 0.0)
    if one.letters == other.letters:
        return Scores(1.0, 1.0, 1.0, 1.0)
    parameters = parameters or shipped_parameters()
    if other.letters < one.letters:  # sums run in one order, so that the result is symmetric to the last bit
        one, other = other, one
    look = JOINED * above_floor(letters_closeness(one.letters, other.letters), JOINED_FLOOR)
    sound = JOINED * above_floor(sound_of_words(one.codes, other.codes, JOINED_SOUND_FLOOR), JOINED_SOUND_FLOOR)
    return Scores(
        _aspect(one, other, _look, _letters, look, ASPECT_FULLER),
        _aspect(one, other, _sound, _phones, sound, ASPECT_FULLER),
        _aspect(one, other, _meaning, _counts, 0.0, parameters.fuller_side) if _meant(one) and _meant(other) else None,
        _overall(one, other, max(look, sound), parameters),
    )


def _overall(one: Features, other: Features, joined: float, parameters: Parameters) -> float:
    best = 0.0
    fuller, first = parameters.fuller_side, parameters.first_word
    for ours in one.divisions:
        for theirs in other.divisions:
            cover = _cover(ours, theirs, lambda word, match: word_closeness(word, match, parameters), _counts)
            value = fuller * cover.more + (1 - fuller) * cover.less
            value += first * cover.firsts * (1 - value)
            best = max(best, _less_if_weak(value, cover.strength, parameters))
    strongest = max(word.weight for words in (*one.divisions, *other.divisions) for word in words)
    return max(best, _less_if_weak(joined, strongest, parameters))


def _less_if_weak(value: float, strength: float, parameters: Parameters) -> float:
    missing = max(0.0, 1 - strength / parameters.enough_strength)
    return float(value ** (1 + parameters.weak_element * missing)) if value > 0 else 0.0
