"""Readings of words: where they come from, their order, and what must hold for any input."""

from __future__ import annotations

import subprocess
import sys
import unicodedata

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from namescreen.pronunciation import Pronunciation, pronounce, pronounce_many, pronounce_words
from namescreen.pronunciation.phones import LETTER_OF, is_vowel
from namescreen.text import fold

LETTERS = st.text(alphabet="abcdefghijklmnopqrstuvwxyz", min_size=1, max_size=15)


def _as_text(readings: tuple[Pronunciation, ...]) -> list[str]:
    return [" ".join(reading.phones) for reading in readings]


@given(LETTERS)
@settings(deadline=None)
def test_any_letters_can_be_read(word: str) -> None:
    readings = pronounce(word)
    assert 1 <= len(readings) <= 3
    for reading in readings:
        assert set(reading.phones) <= set(LETTER_OF)
        assert 0 < reading.weight <= 1 + 1e-9
        assert len(reading.code) == len(reading.phones)
        assert len(reading.stress) == sum(map(is_vowel, reading.phones)) == len(reading.syllables)
    if readings[0].source == "spelling":
        assert len({reading.code for reading in readings}) == len(readings)
        assert all(reading.stress.count("1") == 1 for reading in readings if reading.stress)
        assert sum(reading.weight for reading in readings) <= 1 + 1e-9
        assert [r.weight for r in readings] == sorted((r.weight for r in readings), reverse=True)


@given(st.text(max_size=30))
@settings(deadline=None)
def test_any_text_is_read_if_it_has_a_latin_letter_and_only_then(text: str) -> None:
    has_letter = any("a" <= character <= "z" for character in fold(text))
    assert bool(pronounce(text)) is has_letter


@given(LETTERS, st.integers(1, 4))
@settings(deadline=None)
def test_the_first_readings_do_not_depend_on_how_many_are_asked_for(word: str, limit: int) -> None:
    assert pronounce(word, limit) == pronounce(word, 4)[:limit]


@given(st.lists(LETTERS, max_size=8), st.integers(1, 3))
@settings(deadline=None)
def test_many_words_are_read_as_one_by_one(words: list[str], limit: int) -> None:
    assert pronounce_many(words, limit) == [pronounce(word, limit) for word in words]


@pytest.mark.parametrize("word", ["Crème", "CREME", "creme", unicodedata.normalize("NFD", "crème")])
def test_case_and_accents_change_nothing(word: str) -> None:
    assert pronounce(word) == pronounce("creme")


@pytest.mark.parametrize(
    ("word", "source", "reading"),
    [
        ("planter", "dictionary", "P L AE1 N T ER0"),
        ("womens", "dictionary", "W IH1 M AH0 N Z"),
        ("thymepot", "parts", "TH AY1 M P AA2 T"),
        ("ranchmaster", "parts", "R AE1 N CH M AE2 S T ER0"),
        ("zilches", "parts", "Z IH1 L CH AH0 Z"),
    ],
)
def test_readings_come_from_the_surest_source(word: str, source: str, reading: str) -> None:
    first = pronounce(word)[0]
    assert (first.source, " ".join(first.phones)) == (source, reading)


@pytest.mark.parametrize(
    ("respelled", "plain"),
    [
        # Brand-like respellings of ordinary words are read like them.
        ("kwikk", "quick"), ("fotto", "photo"), ("ezee", "easy"), ("kleen", "clean"), ("krispee", "crispy"),
        ("phantazy", "fantasy"), ("lyte", "light"), ("brite", "bright"), ("kool", "cool"), ("rokk", "rock"),
        ("qwik", "quick"), ("shyne", "shine"), ("blu", "blue"), ("fresch", "fresh"), ("xtreem", "extreme"),
        ("trux", "trucks"), ("sox", "socks"), ("nu", "new"),
    ],
)  # fmt: skip
def test_sound_spellings_are_read_as_the_word_they_stand_for(respelled: str, plain: str) -> None:
    from namescreen.pronunciation import sound_similarity
    from namescreen.text import parse

    said = [reading.code for way in parse(respelled).spoken for reading in pronounce_words(way)]
    meant = [reading.code for reading in pronounce(plain)]
    assert max(sound_similarity(a, b) for a in said for b in meant) >= 0.88


def test_words_said_together_are_the_words_one_after_another() -> None:
    together = pronounce_words(("ice", "zilo"))
    assert together[0].phones == pronounce("ice")[0].phones + pronounce("zilo")[0].phones
    assert together[0].source == "spelling"
    assert sum(reading.weight for reading in together) == pytest.approx(1)


def test_words_without_letters_are_silent() -> None:
    assert pronounce_words(()) == pronounce_words(("42", "!")) == ()
    assert pronounce_words(("42", "ice")) == pronounce("ice")


def test_a_long_row_of_words_stays_within_bounds() -> None:
    assert len(pronounce_words(("read",) * 40)) == 3


def test_a_very_long_word_is_read() -> None:
    assert pronounce("zilo" * 75)


def test_reading_does_not_load_numpy() -> None:
    """A cold start stays quick; numpy belongs to the batch doors."""
    code = "import sys; from namescreen.pronunciation import pronounce; pronounce('planter'); pronounce('zilovane');"
    code += "print('numpy' in sys.modules)"
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert run.stdout.strip() == "False"
