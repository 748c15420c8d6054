"""The language-neutral reading of a word: every letter with its international value.

Outside the English-speaking countries, buyers and examiners meet an invented word that belongs to no language they
know. They give each letter the value on which most languages of the Latin script agree. Those are the values that the
International Phonetic Association gives them too ("international usage should decide": Handbook of the International
Phonetic Association, 1999, appendix 1, from memory): a as in father, i as in machine, j as in hallelujah. The
combinations are those that German, French, Italian, Spanish and Dutch share or do not contradict; stress lies on the
last syllable but one, as in Italian, Spanish and Polish. All from memory of the languages' primers; no source for the
choice.
"""

from __future__ import annotations

import re
from functools import lru_cache
from itertools import chain, groupby

from .phones import VOWELS
from .pronouncing import Pronunciation

__all__ = ["language_neutral_reading"]

_VALUES = {
    "c(?=[eiy])": "S", "y(?=[aeiou])": "Y",
    "sch": "SH", "sh": "SH", "ch": "CH", "ph": "F", "th": "T", "qu": "K W", "ng": "NG", "ai": "AY", "ei": "AY",
    "ay": "AY", "ey": "AY", "au": "AW", "ou": "UW", "ie": "IY", "x": "K S", "a": "AA", "e": "EH", "i": "IY", "o": "OW",
    "u": "UW", "y": "IY", "j": "Y", "c": "K", "q": "K", "w": "V", "b": "B", "d": "D", "f": "F", "g": "G", "h": "HH",
    "k": "K", "l": "L", "m": "M", "n": "N", "p": "P", "r": "R", "s": "S", "t": "T", "v": "V", "z": "Z",
}  # fmt: skip
_BY_NEXT = [letters for letters in _VALUES if "?" in letters]
"""Letters whose value depends on the next one."""
_LETTERS = re.compile(f"({'|'.join(_BY_NEXT)})|({'|'.join(one for one in _VALUES if one not in _BY_NEXT)})")
_SOUNDS = {
    (letters[0], "") if letters in _BY_NEXT else ("", letters): tuple(value.split())
    for letters, value in _VALUES.items()
}


@lru_cache(maxsize=1 << 16)
def language_neutral_reading(word: str) -> Pronunciation | None:
    """The reading by the letters' international values; None without a vowel or with letters beyond a to z."""
    if not (word.isascii() and word.isalpha() and word.islower()):
        return None
    sounds = chain.from_iterable(map(_SOUNDS.__getitem__, _LETTERS.findall(word)))
    phones = [sound for sound, _ in groupby(sounds)]  # a doubled letter is the same sound, held
    vowels = [at for at, phone in enumerate(phones) if phone in VOWELS]
    if not vowels:
        return None
    for at in vowels:
        phones[at] += "1" if at == vowels[-2:][0] else "0"
    return Pronunciation(tuple(phones), "letters", 1.0)
