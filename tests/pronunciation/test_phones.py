"""The inventory: letters of codes, marked codes, and the properties of the difference of phones."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from namescreen.pronunciation.articulatory_features import CONSONANT, VOWEL, difference, percent_differences
from namescreen.pronunciation.phones import (
    CONSONANTS,
    LETTER_OF,
    VOWELS,
    code_of,
    from_marked,
    is_vowel,
    to_marked,
)

PHONES = st.sampled_from(sorted((*CONSONANTS, *(vowel + stress for vowel in VOWELS for stress in "012"))))


def test_every_phone_has_its_own_letter_and_only_the_schwa_two() -> None:
    letters = [*CONSONANTS.values(), *VOWELS.values()]
    assert len(set(letters)) == len(letters) == 39
    assert LETTER_OF["AH0"] not in letters
    assert LETTER_OF["AH1"] == LETTER_OF["AH2"] == VOWELS["AH"]


@given(st.lists(PHONES, max_size=12))
def test_marked_codes_lose_nothing(phones: list[str]) -> None:
    assert from_marked(to_marked(phones)) == tuple(phones)


@given(st.lists(PHONES, max_size=12))
def test_codes_have_one_letter_a_phone_and_no_stress(phones: list[str]) -> None:
    code = code_of(phones)
    assert len(code) == len(phones)
    assert code == to_marked(phones).replace("1", "").replace("2", "")


@pytest.mark.parametrize(("phone", "vowel"), [("AA1", True), ("ER0", True), ("R", False), ("Y", False), ("OY", True)])
def test_vowels_are_told_from_consonants(phone: str, vowel: bool) -> None:
    assert is_vowel(phone) is vowel


@given(PHONES, PHONES)
def test_difference_is_symmetric_within_range_and_nothing_for_the_same_phone(one: str, other: str) -> None:
    assert difference(one, other) == difference(other, one)
    assert 0.0 <= difference(one, other) <= 1.0
    assert difference(one, one) == 0.0


def test_every_phone_has_features_and_every_letter_differences() -> None:
    assert set(CONSONANT) == set(CONSONANTS)
    assert set(VOWEL) == {*VOWELS, "AH0"}
    table = percent_differences()
    assert set(table) == set(LETTER_OF.values())
    assert all(table[one][other] == table[other][one] > 0 for one in table for other in table if one != other)


@pytest.mark.parametrize(
    ("near", "far"),
    [
        # One feature apart is nearer than two, two nearer than three; common practice in phonetics.
        (("P", "B"), ("P", "D")),
        (("S", "Z"), ("S", "V")),
        (("M", "N"), ("M", "T")),
        (("F", "V"), ("F", "G")),
        (("CH", "SH"), ("CH", "R")),
        (("IY", "IH"), ("IY", "AA")),
        (("EH", "AE"), ("EH", "UW")),
        (("OW", "UW"), ("OW", "IY")),
        (("Y", "IY"), ("Y", "AA")),
    ],
)
def test_phones_that_share_more_features_differ_less(near: tuple[str, str], far: tuple[str, str]) -> None:
    assert difference(*near) < difference(*far)
