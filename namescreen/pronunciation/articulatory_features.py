"""Articulatory features of the phones, and how different two phones are.

Consonants stand on the International Phonetic Association's chart (revised to 2020) by place, manner and voice;
vowels by height, backness and rounding, diphthongs by both their ends. The IPA symbols for General American are
those of the Handbook of the International Phonetic Association (1999), "American English" (P. Ladefoged).

The difference of two phones is 1 - exp(-sum of weighted feature differences), so that the first step away from a phone
is the largest: listeners hear phones as categories (A. Liberman et al., "The discrimination of speech sounds within and
across phoneme boundaries", 1957). The sum is taken times a factor of the two phones, for what listeners confuse more or
less often than features tell (as p and k, m and n in the tables of G. Miller and P. Nicely, "An analysis of perceptual
confusions among some English consonants", 1955; from memory). Features on scales from 0 to 1 as in ALINE (G. Kondrak,
"A new algorithm for the alignment of phonetic sequences", NAACL 2000), its values from memory save where a comment says
otherwise. What each feature weighs, and the factors, are fitted on words misheard in noise and on ratings of spoken
words (`wordlists/build/sound_costs.py`).
"""

from __future__ import annotations

import math
from functools import cache
from itertools import combinations_with_replacement
from operator import mul
from typing import NamedTuple

from ..tables import open_table
from .phones import LETTER_OF, SCHWA

__all__ = ["CONSONANT", "CONSONANT_FEATURES", "GLIDES", "SIBILANTS", "SONORANTS", "VOWEL", "VOWEL_FEATURES",
           "Consonant", "Vowel", "difference", "feature_differences", "percent_differences"]  # fmt: skip


class Consonant(NamedTuple):
    """A consonant of the IPA chart."""

    ipa: str
    place: str
    manner: str
    voiced: bool


class Vowel(NamedTuple):
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

_ONSET_SHARE = 0.6
"""The share of a diphthong's first part, which is longer and louder (Giegerich, English Phonology,
1992, section 3.3; the figure is ours)."""

GLIDES = {
    frozenset(pair): cost
    for pair, cost in {
        ("Y", "IY"): 0.4, ("Y", "IH"): 0.5, ("W", "UW"): 0.4, ("W", "UH"): 0.5, ("W", "OW"): 0.6, ("R", "ER"): 0.3,
    }.items()
}  # fmt: skip
"""Approximants and the vowels made in the same place (IPA Handbook 1999, section 2.5: glides as non-syllabic
vowels); every other consonant and vowel differ fully."""


CONSONANT_FEATURES = ("any", "place", "manner", "voice", "nasal", "sonorant", "sibilant")
VOWEL_FEATURES = ("any", "height", "backness", "rounding", "tenseness", "diphthong", "rhotic")
"""In what two consonants, or two vowels, may differ; "any" is 1 for any two."""
SIBILANTS = frozenset(("S", "Z", "SH", "ZH", "CH", "JH"))
SONORANTS = frozenset(("M", "N", "NG", "L", "R", "W", "Y"))


@cache
def difference(one: str, other: str) -> float:
    """How different two phones are, in [0, 1]: 0 the same phone, 1 a consonant and a vowel that share nothing.

    Phones are ARPAbet symbols, stress ignored except that AH0 is the schwa. Symmetric.
    """
    one, other = _bare(one), _bare(other)
    if one == other:
        return 0.0
    found = feature_differences(one, other)
    if found is None:
        return GLIDES.get(frozenset((one, other)), 1.0)
    kind, values = found
    return 1.0 - math.exp(-_factor_of(one, other) * sum(map(mul, _costs(kind), values)))


def _factor_of(one: str, other: str) -> float:
    """How much further apart listeners hear two different phones than their features tell."""
    return float(open_table("sound_costs.tsv").get(f"pair: {' '.join(sorted((one, other)))}") or 1.0)


@cache
def _costs(kind: str) -> tuple[float, ...]:
    table = open_table("sound_costs.tsv")
    names = CONSONANT_FEATURES if kind == "consonants" else VOWEL_FEATURES
    return tuple(float(table.get(f"{kind}: {name}") or "nan") for name in names)


@cache
def percent_differences() -> dict[str, dict[str, int]]:
    """`difference` between the letters of a code, in whole hundredths, so that sums are exact."""
    phones = {LETTER_OF[phone]: phone for phone in (*CONSONANT, *VOWEL)}
    assert phones[SCHWA] == "AH0"

    found: dict[str, dict[str, int]] = {one: {} for one in phones}
    for one, other in combinations_with_replacement(phones, 2):
        percent = round(100 * difference(*sorted((phones[one], phones[other]))))
        found[one][other] = found[other][one] = percent
    return found


def feature_differences(one: str, other: str) -> tuple[str, tuple[float, ...]] | None:
    """How far two different phones of that kind differ in each of its features, after
    "consonants" or "vowels"; None for a consonant and a vowel."""
    if one in CONSONANT and other in CONSONANT:
        return "consonants", _of_consonants(one, other)
    if one in VOWEL and other in VOWEL:
        return "vowels", _of_vowels(VOWEL[one], VOWEL[other])
    return None


def _bare(phone: str) -> str:
    return phone if phone == "AH0" else phone.rstrip("012")


def _of_consonants(one: str, other: str) -> tuple[float, ...]:
    first, second = CONSONANT[one], CONSONANT[other]
    return (
        1.0,
        abs(_PLACE[first.place] - _PLACE[second.place]),
        abs(_MANNER[first.manner] - _MANNER[second.manner]),
        float(first.voiced != second.voiced),
        float((first.manner == "nasal") != (second.manner == "nasal")),
        float((one in SONORANTS) != (other in SONORANTS)),
        float((one in SIBILANTS) != (other in SIBILANTS)),
    )


def _of_vowels(one: Vowel, other: Vowel) -> tuple[float, ...]:
    (begin_one, end_one), (begin_other, end_other) = _ends(one), _ends(other)
    points = zip(_point_difference(begin_one, begin_other), _point_difference(end_one, end_other), strict=True)
    return (
        1.0,
        *(_ONSET_SHARE * begin + (1 - _ONSET_SHARE) * end for begin, end in points),
        float(one.tense != other.tense),
        float(bool(one.glide) != bool(other.glide)),
        float(one.rhotic != other.rhotic),
    )


def _ends(vowel: Vowel) -> tuple[tuple[str, str, bool], tuple[str, str, bool]]:
    begin = (vowel.height, vowel.backness, vowel.rounded)
    return begin, _GLIDE.get(vowel.glide, begin)


def _point_difference(one: tuple[str, str, bool], other: tuple[str, str, bool]) -> tuple[float, float, float]:
    return (
        abs(_HEIGHT[one[0]] - _HEIGHT[other[0]]),
        abs(_BACKNESS[one[1]] - _BACKNESS[other[1]]),
        float(one[2] != other[2]),
    )
