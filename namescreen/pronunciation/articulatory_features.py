"""Articulatory features of the phones, and how different two phones are.

Consonants stand on the International Phonetic Association's chart (revised to 2020) by place, manner and voice;
vowels by height, backness and rounding, diphthongs by both their ends. The IPA symbols for General American are
those of the Handbook of the International Phonetic Association (1999), "American English" (P. Ladefoged).

The difference of two phones is a weighted sum of feature differences, after ALINE (G. Kondrak, "A new algorithm
for the alignment of phonetic sequences", NAACL 2000; Algorithms for Language Reconstruction, 2002): feature
values on a scale from 0 to 1, multiplied by saliences, places and manners by far the heaviest. Values and
saliences are ALINE's, from memory, save where a comment says otherwise. The square root of the sum counts:
listeners hear phones as categories, so that the first step away from a phone is the largest (A. Liberman et al.,
"The discrimination of speech sounds within and across phoneme boundaries", 1957; the root is our choice).
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cache

from .phones import LETTER_OF, SCHWA

__all__ = ["CONSONANT", "VOWEL", "Consonant", "Vowel", "difference", "percent_differences"]


@dataclass(frozen=True, slots=True)
class Consonant:
    """A consonant of the IPA chart."""

    ipa: str
    place: str
    manner: str
    voiced: bool


@dataclass(frozen=True, slots=True)
class Vowel:
    """A vowel of the IPA chart, by where it begins and, for a diphthong, where it ends (an IPA symbol).

    `height` and `backness` are the chart's rows and columns; `tense` as English phonology uses the word.
    """

    ipa: str
    height: str
    backness: str
    rounded: bool
    tense: bool
    glide: str = ""
    rhotic: bool = False


CONSONANT = {
    "P": Consonant("p", "bilabial", "plosive", False),
    "B": Consonant("b", "bilabial", "plosive", True),
    "T": Consonant("t", "alveolar", "plosive", False),
    "D": Consonant("d", "alveolar", "plosive", True),
    "K": Consonant("k", "velar", "plosive", False),
    "G": Consonant("ɡ", "velar", "plosive", True),
    "CH": Consonant("tʃ", "postalveolar", "affricate", False),
    "JH": Consonant("dʒ", "postalveolar", "affricate", True),
    "F": Consonant("f", "labiodental", "fricative", False),
    "V": Consonant("v", "labiodental", "fricative", True),
    "TH": Consonant("θ", "dental", "fricative", False),
    "DH": Consonant("ð", "dental", "fricative", True),
    "S": Consonant("s", "alveolar", "fricative", False),
    "Z": Consonant("z", "alveolar", "fricative", True),
    "SH": Consonant("ʃ", "postalveolar", "fricative", False),
    "ZH": Consonant("ʒ", "postalveolar", "fricative", True),
    "HH": Consonant("h", "glottal", "fricative", False),
    "M": Consonant("m", "bilabial", "nasal", True),
    "N": Consonant("n", "alveolar", "nasal", True),
    "NG": Consonant("ŋ", "velar", "nasal", True),
    "L": Consonant("l", "alveolar", "lateral approximant", True),
    "R": Consonant("ɹ", "alveolar", "approximant", True),
    "Y": Consonant("j", "palatal", "approximant", True),
    "W": Consonant("w", "labial-velar", "approximant", True),
}

VOWEL = {
    "IY": Vowel("i", "close", "front", False, True),
    "IH": Vowel("ɪ", "near-close", "near-front", False, False),
    "EY": Vowel("e", "close-mid", "front", False, True, glide="ɪ"),
    "EH": Vowel("ɛ", "open-mid", "front", False, False),
    "AE": Vowel("æ", "near-open", "front", False, False),
    "AA": Vowel("ɑ", "open", "back", False, True),
    "AO": Vowel("ɔ", "open-mid", "back", True, True),
    "OW": Vowel("o", "close-mid", "back", True, True, glide="ʊ"),
    "UH": Vowel("ʊ", "near-close", "near-back", True, False),
    "UW": Vowel("u", "close", "back", True, True),
    "AH": Vowel("ʌ", "open-mid", "back", False, False),
    "AH0": Vowel("ə", "mid", "central", False, False),
    "ER": Vowel("ɝ", "open-mid", "central", False, True, rhotic=True),
    "AY": Vowel("a", "open", "front", False, True, glide="ɪ"),
    "AW": Vowel("a", "open", "front", False, True, glide="ʊ"),
    "OY": Vowel("ɔ", "open-mid", "back", True, True, glide="ɪ"),
}
"""AH0, the unstressed AH, is the schwa."""

_PLACE = {
    "bilabial": 1.0, "labiodental": 0.95, "dental": 0.9, "alveolar": 0.85, "postalveolar": 0.75, "palatal": 0.7,
    "velar": 0.6, "labial-velar": 0.8, "glottal": 0.1,
}  # fmt: skip
# ALINE takes w as velar; it is both labial and velar, and stands midway here.
_MANNER = {
    "plosive": 1.0, "nasal": 1.0, "affricate": 0.9, "fricative": 0.8, "approximant": 0.6, "lateral approximant": 0.6,
}  # fmt: skip
_HEIGHT = {
    "close": 1.0, "near-close": 0.85, "close-mid": 0.65, "mid": 0.5, "open-mid": 0.35, "near-open": 0.15, "open": 0.0,
}  # fmt: skip
# ALINE has three heights (1, 0.5, 0) and three backnesses; the chart's steps between them are spaced evenly.
_BACKNESS = {"front": 1.0, "near-front": 0.85, "central": 0.5, "near-back": 0.15, "back": 0.0}
_GLIDE = {"ɪ": ("near-close", "near-front", False), "ʊ": ("near-close", "near-back", True)}

_SALIENCE = {
    "place": 40.0, "manner": 50.0, "voice": 10.0, "nasal": 10.0, "lateral": 10.0, "retroflex": 10.0,
    "high": 5.0, "back": 5.0, "round": 5.0, "long": 1.0, "rhotic vowel": 5.0,
}  # fmt: skip
# ALINE counts a rhotic vowel with retroflex (10); half of it here, since many speakers of English drop the r.
_CONSONANT_SCALE = 35.0
"""ALINE's score for a perfect match of consonants: a difference this large leaves no similarity."""
_VOWEL_SCALE = 15.0
"""ALINE's score for a perfect match of vowels (35 less 10 for each vowel)."""
_ONSET_SHARE = 0.6
"""The share of a diphthong's first part, which is longer and louder (Giegerich, English Phonology,
1992, section 3.3; the figure is ours)."""

_GLIDES = {
    frozenset(pair): cost
    for pair, cost in {
        ("Y", "IY"): 0.4, ("Y", "IH"): 0.5, ("W", "UW"): 0.4, ("W", "UH"): 0.5, ("W", "OW"): 0.6, ("R", "ER"): 0.3,
    }.items()
}  # fmt: skip
"""Approximants and the vowels made in the same place (IPA Handbook 1999, section 2.5: glides as non-syllabic
vowels); every other consonant and vowel differ fully."""


@cache
def difference(one: str, other: str) -> float:
    """How different two phones are, in [0, 1]: 0 the same phone, 1 no closer than any two phones.

    Phones are ARPAbet symbols, stress ignored except that AH0 is the schwa. Symmetric.
    """
    one, other = _bare(one), _bare(other)
    if one == other:
        return 0.0
    if one in VOWEL and other in VOWEL:
        return math.sqrt(min(1.0, _vowel_difference(VOWEL[one], VOWEL[other]) / _VOWEL_SCALE))
    if one in CONSONANT and other in CONSONANT:
        return math.sqrt(min(1.0, _consonant_difference(CONSONANT[one], CONSONANT[other]) / _CONSONANT_SCALE))
    return _GLIDES.get(frozenset((one, other)), 1.0)


@cache
def percent_differences() -> dict[str, dict[str, int]]:
    """`difference` between the letters of a code, in whole hundredths, so that sums are exact."""
    phones = {LETTER_OF[phone]: phone for phone in (*CONSONANT, *VOWEL)}
    assert phones[SCHWA] == "AH0"
    return {one: {other: round(100 * difference(phones[one], phones[other])) for other in phones} for one in phones}


def _bare(phone: str) -> str:
    return phone if phone == "AH0" else phone.rstrip("012")


def _consonant_difference(one: Consonant, other: Consonant) -> float:
    return (
        _SALIENCE["place"] * abs(_PLACE[one.place] - _PLACE[other.place])
        + _SALIENCE["manner"] * abs(_MANNER[one.manner] - _MANNER[other.manner])
        + _SALIENCE["voice"] * (one.voiced != other.voiced)
        + _SALIENCE["nasal"] * ((one.manner == "nasal") != (other.manner == "nasal"))
        + _SALIENCE["lateral"] * (one.manner.startswith("lateral") != other.manner.startswith("lateral"))
        + _SALIENCE["retroflex"] * ((one.ipa == "ɹ") != (other.ipa == "ɹ"))
    )


def _vowel_difference(one: Vowel, other: Vowel) -> float:
    (begin_one, end_one), (begin_other, end_other) = _ends(one), _ends(other)
    return (
        _ONSET_SHARE * _point_difference(begin_one, begin_other)
        + (1 - _ONSET_SHARE) * _point_difference(end_one, end_other)
        + _SALIENCE["long"] * (one.tense != other.tense)
        + _SALIENCE["rhotic vowel"] * (one.rhotic != other.rhotic)
    )


def _ends(vowel: Vowel) -> tuple[tuple[str, str, bool], tuple[str, str, bool]]:
    begin = (vowel.height, vowel.backness, vowel.rounded)
    return begin, _GLIDE.get(vowel.glide, begin)


def _point_difference(one: tuple[str, str, bool], other: tuple[str, str, bool]) -> float:
    return (
        _SALIENCE["high"] * abs(_HEIGHT[one[0]] - _HEIGHT[other[0]])
        + _SALIENCE["back"] * abs(_BACKNESS[one[1]] - _BACKNESS[other[1]])
        + _SALIENCE["round"] * (one[2] != other[2])
    )
