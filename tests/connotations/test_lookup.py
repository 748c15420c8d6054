"""What a name says to readers of other languages."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from namescreen.connotations import KINDS, LANGUAGES, MATCHES, Reading, coverage, readings
from namescreen.outcome import NotChecked
from namescreen.text import fold

ALPHABET = "abcdefghijklmnopqrstuvwxyzäéñøßłıçАвко日本 -'&2"


def met(name: str, language: str, **kinds: object) -> list[Reading]:
    found = readings(name, languages=[language], dictionaries=())
    return [reading for reading in found if all(getattr(reading, key) == value for key, value in kinds.items())]


@pytest.mark.parametrize(
    ("name", "language", "word", "match"),
    [
        ("Merde", "fr", "merde", "exact"),
        ("MERDES", "fr", "merdes", "inflected"),
        ("Penis", "fr", "pénis", "without accents"),
        ("PÉNIS", "fr", "pénis", "exact"),
        ("Klootzak", "nl", "klootzak", "exact"),
        ("Merdova", "it", "merda", "inside"),
        ("Kagare", "it", "cagare", "heard as"),
        ("Gift Box", "de", "gift", "exact"),
        ("Kurvva", "pl", "kurwa", "heard as"),
    ],
)
def test_a_word_is_met_in_each_way(name: str, language: str, word: str, match: str) -> None:
    found = met(name, language, match=match)
    assert fold(word) in {fold(reading.word) for reading in found}
    assert all(reading.meaning for reading in found)


def test_spaces_do_not_hide_a_word() -> None:
    found = met("Pen Island", "nl", match="inside")
    assert any(reading.word == "penis" and "across the space" in reading.where for reading in found)


def test_a_compound_with_an_unlucky_word_is_met_in_a_language_of_compounds() -> None:
    assert any(reading.word == "moord" and reading.severity >= 2 for reading in met("Moordzaak", "nl"))


def test_half_of_a_coined_compound_is_seen_as_a_word() -> None:
    assert any(reading.word == "mist" and reading.severity >= 1 for reading in met("Mistpatch", "de", match="inside"))


def test_a_word_deep_inside_a_long_name_weighs_less_than_alone() -> None:
    alone = max(reading.severity for reading in met("Kanker", "nl"))
    inside = max((reading.severity for reading in met("Bakankersol", "nl")), default=0)
    assert alone == 3 > inside


def test_no_alarm_for_three_letters_inside() -> None:
    assert not [reading for reading in met("Concord", "fr") if reading.severity > 0]
    assert not [reading for reading in met("Computer", "es") if reading.severity > 1]


def test_english_words_quoted_abroad_are_no_words_of_the_language() -> None:
    assert not met("Island", "it")
    assert any(reading.kind == "ordinary" and reading.meaning is None for reading in met("Casa", "it"))


def test_names_in_other_scripts_are_read() -> None:
    assert any(reading.kind != "ordinary" for reading in met("смерть", "ru"))
    assert any(reading.kind != "ordinary" for reading in met("Smert", "ru"))
    assert any(reading.match == "heard as" for reading in met("СМЕРДЬ", "ru")), "a final d is said as t"


def test_look_alike_letters_are_read_as_what_they_pass_for() -> None:
    cyrillic = "с" + "a" + "с" + "a"  # the first and third letters are Cyrillic
    assert fold("caca") in {fold(reading.word) for reading in met(cyrillic, "fr")}


def test_only_asked_languages_are_read() -> None:
    assert {reading.language for reading in readings("Gift", languages=["de-AT", "no"], dictionaries=())} <= {
        "de",
        "nb",
    }


def test_readings_are_worst_first() -> None:
    found = readings("Pen Island Gift", dictionaries=())
    assert [reading.severity for reading in found] == sorted((r.severity for r in found), reverse=True)


@settings(max_examples=60, deadline=None)
@given(st.text(alphabet=ALPHABET, max_size=24))
def test_every_reading_keeps_its_bounds(name: str) -> None:
    found = readings(name, dictionaries=())
    assert found == readings(name, dictionaries=())
    for reading in found:
        assert 0 <= reading.severity <= reading.base_severity <= 3
        assert reading.match in MATCHES
        assert reading.kind in (*KINDS, "ordinary")
        assert (reading.meaning is None) <= (reading.kind == "ordinary")
        assert reading.language in LANGUAGES
        assert reading.frequency is None or reading.frequency > 0
        assert set(reading.to_json()) == {
            "language", "word", "meaning", "kind", "severity", "match", "where", "frequency", "source", "gravity",
            "abroad",
        }  # fmt: skip


@pytest.mark.parametrize("name", ["", " ", "!!", "x" * 5000, "\x00", "🌱", "‮abc"])
def test_odd_names_are_no_error(name: str) -> None:
    assert isinstance(readings(name, dictionaries=()), list)


def test_case_does_not_matter() -> None:
    for name in ("merde", "Klootzak", "Pen Island"):
        one, two = (readings(shape, dictionaries=()) for shape in (name.upper(), name.lower()))
        assert [(r.language, r.word, r.severity) for r in one] == [(r.language, r.word, r.severity) for r in two]


def test_mild_masks_severe_words_only() -> None:
    severe = met("Merde", "fr", base_severity=3)[0].mild()
    assert severe.word == "m***"
    assert "merde" not in str(severe)
    assert severe.kind in str(severe)
    mild = next(reading for reading in readings("Gift", languages=["de"], dictionaries=()) if reading.base_severity < 3)
    assert mild.mild() == mild


def test_coverage_says_what_was_and_was_not_looked_through() -> None:
    found = coverage(["de", "sw"], ())
    assert not isinstance(found[0], NotChecked)
    assert found[0].language == "de"
    assert found[0].words == 30_000
    assert found[0].unlucky > 100
    assert isinstance(found[1], NotChecked)
    assert "sw" in str(found[1])
    every = coverage(None, ())
    assert [one.language for one in every if not isinstance(one, NotChecked)] == list(LANGUAGES)


@pytest.mark.parametrize("name", ["Ebb & Fudge", "Ebb + Fudge"])
def test_what_a_sign_is_read_as_is_no_word_that_anyone_sees(name: str) -> None:
    """Danish has ånd, spirit: the and of a sign spells nothing."""
    found = readings(name, languages=["da", "nb", "sv"])
    assert not any(one.where in ("the word and", "the word plus") for one in found)


@pytest.mark.parametrize(("name", "read"), [("Connecticut Soap", False), ("Connelida Soap", True)])
def test_no_word_is_read_inside_the_name_of_a_known_place(name: str, read: bool) -> None:
    assert any(one.word == "conne" for one in met(name, "fr", match="inside")) is read


@pytest.mark.parametrize(
    ("name", "language", "word", "met"),
    [
        ("Stål", "sv", "stal", False),  # steel, and no theft
        ("Stal", "sv", "stal", True),
        ("Vargstål", "sv", "stal", False),
        ("Stål", "de", "stal", False),
        ("Pesö", "de", "peso", False),
    ],
)
def test_a_marked_letter_of_the_language_makes_another_word(name: str, language: str, word: str, met: bool) -> None:
    found = [one.word for one in readings(name, languages=[language], dictionaries=()) if one.severity]
    assert (word in found) == met


@pytest.mark.parametrize(
    ("name", "language", "word", "least", "most"),
    [
        ("Whole Cloth", "nl", "kloot", 0, 1),  # a short vowel by the rules of Dutch, and a long one
        ("Red Hood", "nl", "reet", 0, 0),
        ("Cloot", "nl", "kloot", 3, 3),
        ("Fika", "it", "fica", 3, 3),
        ("Fikka", "it", "fica", 0, 1),  # a long consonant
    ],
)
def test_a_word_that_is_read_with_another_vowel_is_hardly_heard(
    name: str, language: str, word: str, least: int, most: int
) -> None:
    """What `readings` prints as the likely reading is what is compared."""
    met = [one.severity for one in readings(name, languages=[language], dictionaries=()) if one.word == word]
    assert least <= max(met, default=0) <= most
