"""The phones' features against the chart of the International Phonetic Association.

Consonants: the pulmonic chart, place by column and manner by row, voiceless left and voiced right of a cell, and w
among the other symbols; vowels: the quadrilateral, height by row and backness by column, rounded right of a pair
(International Phonetic Association, The International Phonetic Alphabet, revised to 2020; and its Handbook, 1999,
"American English", for the symbols of General American). Values from memory of the chart.
"""

from __future__ import annotations

import pytest

from namescreen.pronunciation.articulatory_features import CONSONANT, VOWEL

CHART = {
    # manner: {place: (voiceless, voiced)}
    "plosive": {"bilabial": ("p", "b"), "alveolar": ("t", "d"), "velar": ("k", "ɡ")},
    "nasal": {"bilabial": ("", "m"), "alveolar": ("", "n"), "velar": ("", "ŋ")},
    "fricative": {
        "labiodental": ("f", "v"),
        "dental": ("θ", "ð"),
        "alveolar": ("s", "z"),
        "postalveolar": ("ʃ", "ʒ"),
        "glottal": ("h", "ɦ"),
    },
    "approximant": {"alveolar": ("", "ɹ"), "palatal": ("", "j"), "labial-velar": ("ʍ", "w")},
    "lateral approximant": {"alveolar": ("", "l")},
    "affricate": {"postalveolar": ("tʃ", "dʒ")},
}

QUADRILATERAL = {
    # (height, backness): (unrounded, rounded)
    ("close", "front"): ("i", "y"),
    ("close", "back"): ("ɯ", "u"),
    ("near-close", "near-front"): ("ɪ", "ʏ"),
    ("near-close", "near-back"): ("", "ʊ"),
    ("close-mid", "front"): ("e", "ø"),
    ("close-mid", "back"): ("ɤ", "o"),
    ("mid", "central"): ("ə", ""),
    ("open-mid", "front"): ("ɛ", "œ"),
    ("open-mid", "central"): ("ɜ", "ɞ"),
    ("open-mid", "back"): ("ʌ", "ɔ"),
    ("near-open", "front"): ("æ", ""),
    ("open", "front"): ("a", "ɶ"),
    ("open", "back"): ("ɑ", "ɒ"),
}

SYMBOLS = {
    # ARPAbet to IPA, as published with the TIMIT corpus and the CMU Pronouncing Dictionary (from memory).
    "P": "p", "B": "b", "T": "t", "D": "d", "K": "k", "G": "ɡ", "CH": "tʃ", "JH": "dʒ", "F": "f", "V": "v", "TH": "θ",
    "DH": "ð", "S": "s", "Z": "z", "SH": "ʃ", "ZH": "ʒ", "HH": "h", "M": "m", "N": "n", "NG": "ŋ", "L": "l", "R": "ɹ",
    "Y": "j", "W": "w", "IY": "i", "IH": "ɪ", "EY": "eɪ", "EH": "ɛ", "AE": "æ", "AA": "ɑ", "AO": "ɔ", "OW": "oʊ",
    "UH": "ʊ", "UW": "u", "AH": "ʌ", "AH0": "ə", "ER": "ɝ", "AY": "aɪ", "AW": "aʊ", "OY": "ɔɪ",
}  # fmt: skip


@pytest.mark.parametrize("phone", sorted(CONSONANT))
def test_consonants_stand_where_the_chart_has_them(phone: str) -> None:
    consonant = CONSONANT[phone]
    assert consonant.ipa == SYMBOLS[phone]
    assert CHART[consonant.manner][consonant.place][consonant.voiced] == consonant.ipa


@pytest.mark.parametrize("phone", sorted(VOWEL))
def test_vowels_stand_where_the_quadrilateral_has_them(phone: str) -> None:
    vowel = VOWEL[phone]
    assert vowel.ipa + vowel.glide == SYMBOLS[phone]
    symbol = "ɜ" if vowel.rhotic else vowel.ipa  # the hook marks r-colouring, not a place
    assert QUADRILATERAL[vowel.height, vowel.backness][vowel.rounded] == symbol


def test_glides_end_on_the_chart() -> None:
    assert {vowel.glide for vowel in VOWEL.values()} == {"", "ɪ", "ʊ"}
