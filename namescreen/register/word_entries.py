"""What an index keeps of one word, and what follows from its words for a name."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, NamedTuple

from ..closeness.sound import merge_double_phonemes

if TYPE_CHECKING:
    from ..closeness.weights import OwnWeight
    from ..closeness.word_facts import WordFacts

__all__ = ["FLAGS", "HAS_BASE_FORMS", "IS_ABROAD", "IS_EVERYDAY", "IS_FAMILIAR", "IS_KNOWN", "IS_MEANT", "IS_SAID",
           "IS_SURNAME", "Reading", "WordEntry", "codes_of_name", "read_meanings", "read_words"]  # fmt: skip

FLAGS = {
    "has_base_forms": 1, "is_surname": 2, "is_known": 4, "is_familiar": 8, "is_meant": 16, "is_said": 32,
    "is_abroad": 64, "is_everyday_abroad": 128,
}  # fmt: skip
"""Bits of `Index.flags`, by the `closeness.word_facts.WordFacts` that they keep."""
HAS_BASE_FORMS, IS_SURNAME, IS_KNOWN, IS_FAMILIAR, IS_MEANT, IS_SAID, IS_ABROAD, IS_EVERYDAY = FLAGS.values()

MOST_CODES = 3
"""Readings of a whole name that are kept, as in `closeness.sound`."""
VARIED = 5
"""Words of a name that vary in how they are said, as in `pronunciation.pronounce_words`."""
SURELY_LESS = 1 - 1e-12
"""A share below another times this factor stays below it, whatever both are multiplied by: the margin is far larger
than the rounding over all the words that a name can have."""

Reading = tuple[str, float, str]
"""The phoneme code of a word read as written, its probability, and its phones with a space after each."""


class WordEntry(NamedTuple):
    """What the index keeps of one word; `readings` are those of a word that is said as it is written, and in no other
    way, and `abroad` the code of the one by the rules of another language, if any."""

    codes: tuple[str, ...]
    weight: OwnWeight
    facts: WordFacts
    segmentations: tuple[tuple[str, ...], ...] = ()
    readings: tuple[Reading, ...] = ()
    said_as_written: bool = False
    abroad: str = ""


def read_meanings(words: list[str]) -> list[WordEntry]:
    """The entries of words that are compared by meaning alone."""
    from ..closeness.weights import own_weight
    from ..closeness.word_facts import word_facts

    return [WordEntry((), own_weight(word), word_facts(word, in_english=False)) for word in words]


def read_words(words: list[str]) -> list[WordEntry]:
    """The entries of some words."""
    from ..closeness import said_abroad
    from ..closeness.said_abroad import reading_abroad
    from ..closeness.sound import phoneme_codes_of
    from ..closeness.vocabulary import is_known, segmentations
    from ..closeness.weights import own_weight
    from ..closeness.word_facts import word_facts
    from ..lexicon import equivalents, possible_meanings

    # One step after another for all words, so that its memory stays in the cache: the search through the spelling
    # alone goes through more memory than all the rest. The first steps are those of `word_facts`, which remembers them.
    for step in (is_known, equivalents, possible_meanings):
        for word in words:
            step(word)
    said_abroad.expect(words)
    as_written = list(map(_is_said_as_written, words))
    readings = _readings_as_written(words, as_written)
    abroad = [merge_double_phonemes(one.code) if (one := reading_abroad(word)) else "" for word in words]
    facts = list(map(word_facts, words))
    parts = list(map(segmentations, words))
    codes = list(map(phoneme_codes_of, words))
    weights = list(map(own_weight, words))
    return list(map(WordEntry, codes, weights, facts, parts, readings, as_written, abroad))


def _is_said_as_written(word: str) -> bool:
    """Whether a word is read aloud in one way, as a word with these letters."""
    from ..text import parse, ways_to_say

    letters = word.isascii() and word.isalpha() and word.islower()  # as most are: `parse` changes nothing of them
    return (ways_to_say(word) if letters else parse(word).spoken) == ((word,),)


def _readings_as_written(words: list[str], as_written: list[bool]) -> list[tuple[Reading, ...]]:
    """The readings of the words that are said as they are written; none of the others."""
    from ..closeness.sound import READINGS
    from ..pronunciation import pronounce

    return [
        tuple([(merge_double_phonemes(r.code), r.weight, " ".join((*r.phones, ""))) for r in pronounce(word, READINGS)])
        if said_so
        else ()
        for word, said_so in zip(words, as_written, strict=True)
    ]


def combined_codes(choices: list[tuple[Reading, ...]]) -> tuple[str, ...]:
    """The codes of the most probable readings of these words one after another; equally probable ones in order of their
    phones. The spaces keep the order of lists of phones."""
    if not choices:
        return ()
    ways = list(choices[0])
    for at, readings in enumerate(choices[1:], 1):
        if at >= VARIED:
            readings = readings[:1]
        least = 0.0
        if len(ways) * len(readings) > MOST_CODES:
            # A reading outside the most probable ones stays outside.
            shares = [way[1] * reading[1] for way in ways for reading in readings]
            shares.sort()
            least = shares[-MOST_CODES] * SURELY_LESS
        ways = [
            (said + code if said[-1:] != code[:1] else said + code[1:], share, phones + more)
            for said, before, phones in ways
            for code, after, more in readings
            if (share := before * after) >= least
        ]
    if len(ways) > 1:
        ways.sort(key=_by_probability)
    return tuple(dict.fromkeys([way[0] for way in ways[:MOST_CODES]]))


def codes_of_name(words: Sequence[WordEntry]) -> tuple[str, ...]:
    """`closeness.sound.spoken_phoneme_codes` of a name whose words are all said as they are written."""
    found = combined_codes([word.readings for word in words if word.readings])
    if not any(word.abroad for word in words):
        return found
    said = [word.abroad or word.readings[0][0] for word in words if word.abroad or word.readings]
    return tuple(dict.fromkeys((*found, merge_double_phonemes("".join(said)))))


def _by_probability(reading: Reading) -> tuple[float, str]:
    return -reading[1], reading[2]
