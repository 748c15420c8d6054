"""The last syllable read by analogy with words that rhyme by spelling."""

from __future__ import annotations

import pytest

from namescreen.closeness import compare
from namescreen.closeness.sound import phoneme_codes_of
from namescreen.pronunciation import pronounce, reading_by_rime
from namescreen.pronunciation.phones import VOWEL_LETTERS
from namescreen.tables import open_table


@pytest.mark.parametrize(
    ("word", "ending"),
    [("tolvane", "En"), ("tolvayne", "En"), ("tolvain", "En"), ("mudeek", "Yk"), ("sorrade", "Ed"), ("pelkyte", "It")],
)
def test_a_last_syllable_is_read_as_words_of_one_syllable_are(word: str, ending: str) -> None:
    """lane and payne, train, week, made, kite: the CMU Pronouncing Dictionary."""
    reading = reading_by_rime(word)
    assert reading is not None
    assert reading.code.endswith(ending)
    assert reading.code in phoneme_codes_of(word) or pronounce(word, 1)[0].source != "spelling"


@pytest.mark.parametrize("word", ["lane", "tolvan", "xkcd", "tolvouzre"])
def test_short_vowels_single_syllables_and_unknown_rimes_have_no_such_reading(word: str) -> None:
    assert reading_by_rime(word) is None


@pytest.mark.parametrize(
    ("one", "other"), [("Tolvane", "Tolvayne"), ("Sorrade", "Sorraid"), ("Mudeek", "Mudeke"), ("Brivole", "Brivoal")]
)
def test_two_spellings_of_one_last_syllable_may_sound_the_same(one: str, other: str) -> None:
    assert compare(one, other).sound == pytest.approx(1.0)


def test_glides_stand_before_vowels_only_in_the_dictionary_and_in_coined_words() -> None:
    """y and w before a vowel only (Giegerich, English Phonology, 1992); foreign names aside."""

    def strays(code: str) -> bool:
        plain = code.translate(str.maketrans("", "", "012"))
        return any(a in "yw" and b not in VOWEL_LETTERS for a, b in zip(plain, f"{plain[1:]}-", strict=True))

    readings = [reading for _, value in open_table("pronunciations.tsv").items() for reading in value.split(" ")]
    assert sum(map(strays, readings)) < len(readings) / 4000
    for word in ("tolvayne", "sayble", "drowm", "krawnet", "voylen"):
        assert not any(strays(reading.code) for reading in pronounce(word))
