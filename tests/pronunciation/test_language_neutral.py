"""Words read by their letters' international values: rows of the IPA's own examples and of shared spelling rules."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from namescreen.pronunciation import language_neutral_reading
from namescreen.pronunciation.articulatory_features import CONSONANT, VOWEL

letters = st.text("abcdefghijklmnopqrstuvwxyz", max_size=14)


def said(word: str) -> str:
    reading = language_neutral_reading(word)
    assert reading is not None
    return " ".join(phone.rstrip("012") for phone in reading.phones)


@pytest.mark.parametrize(("letter", "ipa"), [*((one, one) for one in "bdfhjklmnpstvz"), ("g", "ɡ"), ("r", "ɹ")])
def test_consonant_letters_have_the_value_of_the_ipa_symbol_of_that_shape(letter: str, ipa: str) -> None:
    # Source: the chart of the International Phonetic Association (revised to 2020), whose symbols for these sounds are
    # the letters themselves; r stands for any r, here the English one.
    consonant = said(f"a{letter}a").split()[1]
    assert CONSONANT[consonant].ipa == ipa


@pytest.mark.parametrize(("letter", "ipa"), [("a", "ɑ"), ("e", "ɛ"), ("i", "i"), ("o", "o"), ("u", "u")])
def test_vowel_letters_have_continental_values(letter: str, ipa: str) -> None:
    # Source: the same chart; English has no [a] or [e] of its own outside diphthongs, so the nearest stand in.
    assert VOWEL[said(f"t{letter}t").split()[1]].ipa == ipa


@pytest.mark.parametrize(
    ("word", "expected"),
    [  # common to the spelling of German, French, Italian, Spanish and Dutch, or contradicted by none; from memory
        ("maja", "M AA Y AA"),
        ("cilo", "S IY L OW"),
        ("calo", "K AA L OW"),
        ("schal", "SH AA L"),
        ("phono", "F OW N OW"),
        ("quinta", "K W IY N T AA"),
        ("mais", "M AY S"),
        ("yatto", "Y AA T OW"),
        ("sysma", "S IY S M AA"),
    ],
)
def test_combinations_of_letters(word: str, expected: str) -> None:
    assert said(word) == expected


@pytest.mark.parametrize(("doubled", "single"), [("pukka", "puka"), ("maasto", "masto"), ("bellissa", "belisa")])
def test_what_is_written_twice_is_one_sound(doubled: str, single: str) -> None:
    assert said(doubled) == said(single)


@given(letters)
def test_every_word_with_a_vowel_is_read_once_and_stressed_once(word: str) -> None:
    reading = language_neutral_reading(word)
    if not set(word) & set("aeiouy"):
        assert reading is None
        return
    if reading is not None:  # y before a vowel is none, nor is the u of qu
        assert reading.stress.count("1") == 1
        assert reading == language_neutral_reading(word)
        assert reading.source == "letters"


@pytest.mark.parametrize("word", ["", "Maja", "ma ja", "é", "7", "bcd"])
def test_what_cannot_be_read_so(word: str) -> None:
    assert language_neutral_reading(word) is None
