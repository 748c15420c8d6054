"""How predictable the spelling of a heard name is, and the sound of a written one.

A listener must guess the letters of a name, a reader its sound. Both rely on the words they know and on the usual
correspondence of letters and sounds (`g2p`).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import lru_cache

from ..tables import open_table
from ..text import fold
from .dictionary import known_readings
from .g2p import joint_model
from .phones import to_marked
from .pronouncing import pronounce
from .word_parts import readings_from_parts

__all__ = ["heard_as_spelled", "likely_codes", "spelled_as_heard", "spelled_by_heart", "spellings", "words_heard"]

_CONSIDERED, _BEAM, _WITHIN = 200, 10, 5.0
"""The limits of the search for spellings: how many in all, how many at a place, how far behind the best."""
HEARD_READINGS = 3
"""The readings of a word in which others are heard; ours."""
_KNOWN_TO_NOBODY, _KNOWN_TO_ALL = 2.0, 5.0
"""Zipf frequencies at which nobody and everybody knows a word (1 in 10 million words, 1 in 10 thousand). Between them
the share grows linearly, which is our choice."""
# Distinctions many speakers of English do not make (J. Wells, Accents of English, 1982: cot-caught, weak vowels).
_MERGED = str.maketrans({"O": "A", "x": "i", "1": "", "2": ""})


def spellings(phones: Sequence[str], limit: int = 5) -> tuple[tuple[str, float], ...]:
    """The likely spellings of a reading (ARPAbet phones with stress), each with its probability among those found,
    most likely first. Dictionary words with this sound are weighted by their frequency."""
    return tuple(_spellings(to_marked(phones))[: max(0, limit)])


@lru_cache(maxsize=1 << 12)
def _spellings(marked: str) -> list[tuple[str, float]]:
    found = joint_model().spellings(marked, _CONSIDERED, _BEAM, _WITHIN)
    shares = {word: math.exp(found[0][1] - cost) for word, cost in found}
    total = sum(shares.values())
    guessed = {word: share / total for word, share in shares.items()}
    known = words_heard(marked)
    sure = max((_knownness(frequency) for frequency in known.values()), default=0.0)
    usage = sum(10**frequency for frequency in known.values())
    shared = {
        word: sure * (10 ** known[word] / usage if word in known else 0.0) + (1 - sure) * guessed.get(word, 0.0)
        for word in {**known, **guessed}
    }
    return sorted(shared.items(), key=lambda item: (-item[1], item[0]))


@lru_cache(maxsize=1 << 12)
def heard_as_spelled(word: str) -> float:
    """How likely a listener is to spell the word correctly, in [0, 1]; 1 = there is no other way to write it.

    The probability of its letters among the spellings of its likeliest reading. 0 without a letter a to z.
    """
    word = _letters(word)
    readings = pronounce(word, 1)
    if not readings:
        return 0.0
    marked = to_marked(readings[0].phones)
    for spelling, probability in _spellings(marked):
        if spelling == word:
            return probability
    found = joint_model().spellings(marked, _CONSIDERED, _BEAM, _WITHIN)
    forced = joint_model().spellings(marked, 1, within=math.inf, allowed=word.startswith)
    if not found or not forced or forced[0][0] != word:
        return 0.0
    return 1 / (1 + sum(math.exp(forced[0][1] - cost) for _, cost in found))


@lru_cache(maxsize=1 << 12)
def spelled_by_heart(word: str) -> float:
    """How likely a listener who may know the word spells it right, in [0, 1]: `heard_as_spelled`, and for a word of
    the dictionary at least how well it is known, times its share of use among the dictionary's words of the same sound
    (knight, night). Known are all dictionary words from a Zipf frequency of 3 (once in a million words: M. Brysbaert
    et al., Word prevalence norms, 2019, from memory), the rarest by half of the listeners, which is our choice."""
    from ..lexicon import lexicon, zipf

    word = _letters(word)
    readings = pronounce(word, 1)
    if not readings or not lexicon().known(word):
        return heard_as_spelled(word)
    alike = {word, *filter(lexicon().known, words_heard(to_marked(readings[0].phones)))}
    share = 10 ** zipf(word) / sum(10 ** zipf(other) for other in alike)
    by_heart = share * min(1.0, 0.5 + zipf(word) / 6)
    return by_heart if by_heart >= 1 else max(heard_as_spelled(word), by_heart)  # of most words nothing need be guessed


@lru_cache(maxsize=1 << 12)
def spelled_as_heard(word: str) -> float:
    """How likely a reader is to pronounce the word as intended, in [0, 1]; 1 = there is no other way to read it.

    The intended reading is the likeliest one (`pronounce`): readers who know the word use it, the others go by the
    letters. Differences that many speakers do not make (cot and caught, weak vowels) do not count. 0 without a letter.
    """
    word = _letters(word)
    readings = pronounce(word)
    if not readings:
        return 0.0
    meant = to_marked(readings[0].phones).translate(_MERGED)
    by_letters = sum(
        probability
        for reading, probability in joint_model().readings(word, _CONSIDERED)
        if reading.translate(_MERGED) == meant
    )
    parts = (word,) if known_readings(word) else readings_from_parts(word)[0]
    if not parts:
        return min(1.0, by_letters)
    from ..lexicon import zipf

    by_heart = sum(r.weight for r in readings if to_marked(r.phones).translate(_MERGED) == meant)
    sure = _knownness(min(zipf(part) for part in parts))
    return min(1.0, sure * by_heart + (1 - sure) * by_letters)


def words_heard(marked: str) -> dict[str, float]:
    """The words of the pronouncing dictionary with this sound (a code, stress or not), each with its Zipf frequency."""
    value = open_table("words_by_sound.tsv").get(marked.replace("1", "").replace("2", ""))
    pairs = (item.split(":") for item in value.split(" ")) if value else ()
    return {word: float(frequency) for word, frequency in pairs}


@lru_cache(maxsize=1 << 12)
def likely_codes(word: str) -> tuple[str, ...]:
    """The phoneme codes of the readings of a word in which other words are heard, the likeliest first."""
    return tuple([reading.code for reading in pronounce(word, HEARD_READINGS)])


def _knownness(frequency: float) -> float:
    return min(1.0, max(0.0, (frequency - _KNOWN_TO_NOBODY) / (_KNOWN_TO_ALL - _KNOWN_TO_NOBODY)))


def _letters(word: str) -> str:
    return "".join(character for character in fold(word) if "a" <= character <= "z")
