"""The phones of English as the CMU Pronouncing Dictionary writes them, one character each.

Phones are ARPAbet symbols: 24 consonants and 15 vowels. In `phones` tuples a vowel carries its stress digit
(0 none, 1 primary, 2 secondary), as in the dictionary. A *code* is the same reading with one ASCII letter a
phone and no stress, for fast comparison; the unstressed AH (the schwa, IPA ə) has a letter of its own, so
that a code still shows which syllables are reduced.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

__all__ = [
    "CONSONANTS",
    "LETTER_OF",
    "PHONE_OF",
    "SCHWA",
    "VOWELS",
    "VOWEL_LETTERS",
    "code_of",
    "from_marked",
    "is_vowel",
    "to_marked",
]

VOWELS = {
    "AA": "A", "AE": "a", "AH": "V", "AO": "O", "AW": "W", "AY": "I", "EH": "e", "ER": "R", "EY": "E", "IH": "i",
    "IY": "Y", "OW": "o", "OY": "Q", "UH": "U", "UW": "u",
}  # fmt: skip
"""Each vowel and its letter in a code."""

CONSONANTS = {
    "B": "b", "CH": "C", "D": "d", "DH": "D", "F": "f", "G": "g", "HH": "h", "JH": "j", "K": "k", "L": "l", "M": "m",
    "N": "n", "NG": "N", "P": "p", "R": "r", "S": "s", "SH": "S", "T": "t", "TH": "T", "V": "v", "W": "w", "Y": "y",
    "Z": "z", "ZH": "Z",
}  # fmt: skip
"""Each consonant and its letter in a code."""

SCHWA = "x"
"""The letter in a code of an unstressed AH."""

LETTER_OF = {
    **CONSONANTS,
    **{vowel + stress: letter for vowel, letter in VOWELS.items() for stress in "012"},
    **VOWELS,
    "AH0": SCHWA,
}
PHONE_OF = {**{letter: phone for phone, letter in (*VOWELS.items(), *CONSONANTS.items())}, SCHWA: "AH"}

VOWEL_LETTERS = frozenset((*VOWELS.values(), SCHWA))
"""The letters of a code that stand for vowels."""

_SOUND = re.compile(r".[12]?")
_MARKED = {
    **{letter: phone for phone, letter in CONSONANTS.items()},
    **{letter + mark: PHONE_OF[letter] + (mark or "0") for letter in VOWEL_LETTERS for mark in ("", "1", "2")},
}
"""Every sound as `to_marked` writes it, and its phone."""


def is_vowel(phone: str) -> bool:
    """Whether an ARPAbet phone, with or without its stress digit, is a vowel."""
    return phone.rstrip("012") in VOWELS


def code_of(phones: Iterable[str]) -> str:
    """The code of these phones: one letter each, stress left out."""
    return "".join([LETTER_OF[phone] for phone in phones])


def to_marked(phones: Iterable[str]) -> str:
    """Phones as the shipped tables write them: the code with a 1 or 2 after each stressed vowel."""
    return "".join([LETTER_OF[phone] + (phone[-1] if phone[-1] in "12" else "") for phone in phones])


def from_marked(marked: str) -> tuple[str, ...]:
    """The phones that `to_marked` wrote."""
    return tuple(map(_MARKED.__getitem__, _SOUND.findall(marked)))
