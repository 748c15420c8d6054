"""The similarity of two words in sound: that of the closest of their plausible readings.

There is no single correct pronunciation of a mark (TMEP 1207.01(b)(iv)), so every word brings several readings
and the closest pair counts, a less likely reading a little less.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import lru_cache
from itertools import chain
from operator import itemgetter

from rapidfuzz.distance import Levenshtein

from ..pronunciation import (
    Pronunciation,
    closest_similarity,
    language_neutral_reading,
    pronounce,
    pronounce_words,
    reading_by_rime,
)
from ..text import ways_to_say
from .kept import kept_word
from .letters import spelled_alike
from .model import shipped_model
from .respelling import with_vowels
from .said_abroad import name_abroad, reading_abroad
from .vocabulary import is_known, segmentations

__all__ = [
    "FLOOR",
    "merge_double_phonemes",
    "phoneme_codes_of",
    "readings_of",
    "sound",
    "sound_in_english",
    "sound_measures",
    "sound_similarity_of_words",
    "spoken_phoneme_codes",
]

FLOOR = 0.6
"""Raw similarity at or below which two words count as not similar at all: 1 in 100 random pairs of words from the
lexicon reaches it (measured)."""

LETTERS, LETTERS_OF_NAME = 0.5, 1.0
"""The share of a difference in sound that disappears as the spelling becomes the same (`letters.spelled_alike`): people
hear with it in mind, and how a coined word is read is a guess; and that share for whole names, if not both are words of
the lexicon. On ratings of spoken words (Vitz and Winkler 1973) any share from a quarter to three quarters does as well
as the first; the second is the one of 0.5 to 1 that fits the ratings of names best."""

READINGS, OF_A_WORD = 3, 2
"""The number of English readings compared: of a name, and of a word; one by the rules of another language, one by its
rime and one by letters may come on top."""

_RUN, _ITS_SOUND = re.compile(r"(.)\1+"), itemgetter(1)


@lru_cache(maxsize=1 << 16)
def phoneme_codes_of(word: str) -> tuple[str, ...]:
    """The sound codes of the plausible readings of one folded word, most likely first; empty if unreadable."""
    kept = kept_word(word)
    return tuple(_readings(word)) if kept is None else kept.codes


def readings_of(word: str) -> tuple[Pronunciation, ...]:
    """The plausible readings of one folded word: English ones, most likely first; for a word of another language, or
    one that looks like one, that by its rules; and for a coined word the one by letters, as buyers elsewhere read it,
    and by its rime. A closed compound may also be said as its parts (herbwell: herb, well).
    """
    return tuple(_readings(word).values())


def _readings(word: str) -> dict[str, Pronunciation]:
    """As `readings_of`, by their phones."""
    ways = ways_to_say(word, is_known)
    if full := with_vowels(word):
        ways = ((full,), *ways)
    further = [reading_abroad]
    if not is_known(word) and any(reading.source == "spelling" for reading in pronounce(word, 1)):
        parts = (chain.from_iterable(ways_to_say(part)[0] for part in parts) for parts in segmentations(word)[1:])
        ways = (*ways, *map(tuple, parts))
        further += [reading_by_rime, language_neutral_reading]
    found = _in_turn(ways, OF_A_WORD)
    kept = kept_word(word)
    for read in further:
        if kept is not None and len(found) == len(kept.codes):
            break  # all its codes have a reading
        if reading := read(word):
            found.setdefault(merge_double_phonemes(reading.code), reading)
    return found


def merge_double_phonemes(code: str) -> str:
    """`code` with two equal phonemes in a row merged, as English says them where words join (ex seed: exceed)."""
    return _RUN.sub(_ITS_SOUND, code) if _RUN.search(code) else code  # most have none, and a search costs less


def spoken_phoneme_codes(ways: tuple[tuple[str, ...], ...]) -> tuple[str, ...]:
    """The phoneme codes of a name that may be said in these ways: at most `READINGS` of them, and one with its foreign
    words said by the rules of their languages."""
    in_full = (tuple(with_vowels(word) or word for word in way) for way in ways)
    found = tuple(_in_turn((*(way for way in in_full if way not in ways), *ways), READINGS))
    abroad = name_abroad(ways[0]) if ways else None
    return tuple(dict.fromkeys((*found, merge_double_phonemes(abroad.code)))) if abroad else found


def sound_in_english(one: Sequence[str], other: Sequence[str]) -> float:
    """The similarity of two names in sound, given by their folded words, without the readings by the rules of other
    languages: in [0, 1], 1 = said the same; 0 where one cannot be read aloud."""
    letters, other_letters = "".join(one), "".join(other)
    return sound(letters, _english_codes(one), other_letters, _english_codes(other), LETTERS_OF_NAME) or 0.0


def _english_codes(words: Sequence[str]) -> tuple[str, ...]:
    """The phoneme codes of a name but those that only another language gives it, or letters said as elsewhere."""
    ways = ways_to_say(words[0], is_known) if len(words) == 1 else (tuple(words),)
    english = _in_turn(ways, READINGS)
    abroad = name_abroad(words)
    neutral = language_neutral_reading(words[0]) if len(words) == 1 else None
    foreign = {merge_double_phonemes(one.code) for one in (abroad, neutral) if one}
    found = phoneme_codes_of(words[0]) if len(words) == 1 else spoken_phoneme_codes((tuple(words),))
    return tuple(code for code in found if code not in foreign or code in english)


def _in_turn(ways: tuple[tuple[str, ...], ...], limit: int) -> dict[str, Pronunciation]:
    """The best reading of each way to say something, then the second ones, by their phones; at most `limit`."""
    said = [pronounce_words(way, limit) for way in ways]
    found: dict[str, Pronunciation] = {}
    for place in range(limit):
        for readings in said:
            code = merge_double_phonemes(readings[place].code) if place < len(readings) else ""
            if code and code not in found:
                found[code] = readings[place]
                if len(found) == limit:
                    return found
    return found


@lru_cache(maxsize=1 << 16)
def sound_similarity_of_words(one: tuple[str, ...], other: tuple[str, ...], least: float) -> float:
    """Raw similarity in sound of two words given by the codes of their readings: in [0, 1], 1 = sound the same.

    A value below `least` comes out as 0.
    """
    return closest_similarity(one, other, least)


def sound_measures(one: tuple[str, ...], other: tuple[str, ...]) -> tuple[float, float]:
    """The similarity of two words or names in sound, given by the codes of their readings, neither empty: by
    articulation, and by the share of equal phonemes; each between the two readings that are closest by it. In [0,
    1]."""
    same = max(Levenshtein.normalized_similarity(mine, yours) for mine in one for yours in other)
    return sound_similarity_of_words(one, other, 0.0), same


@lru_cache(maxsize=1 << 17)
def sound(
    letters: str, codes: tuple[str, ...], other_letters: str, other_codes: tuple[str, ...], share: float = LETTERS
) -> float | None:
    """The similarity of two words or names in sound, by their letters and the codes of their readings; `share` is what
    spelling takes off a difference (`LETTERS`). In [0, 1], 1 = said the same; None if one cannot be read aloud;
    symmetric."""
    if letters == other_letters:
        return 1.0
    if not codes or not other_codes:
        return None
    apart = 1.0 - shipped_model().sound(*sound_measures(codes, other_codes))
    return 1.0 - apart * (1.0 - share * spelled_alike(letters, other_letters))
