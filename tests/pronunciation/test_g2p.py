"""The joint model: what must hold however it was learned."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from namescreen.pronunciation.g2p import JointModel, PythonReadings, cost_character, joint_model
from namescreen.pronunciation.phones import from_marked, is_vowel
from namescreen.tables import open_table


def in_python() -> JointModel:
    """The model without compiled code, which has tests of its own."""
    model = JointModel(open_table("g2p.tsv"), open_table("joint_units.tsv"))
    model._search = PythonReadings(model)
    return model


LETTERS = st.text(alphabet="abcdefghijklmnopqrstuvwxyz", min_size=1, max_size=14)


@given(LETTERS)
@settings(deadline=None)
def test_readings_are_ranked_distinct_probabilities(word: str) -> None:
    readings = joint_model().readings(word, 5)
    shares = [share for _, share in readings]
    assert readings
    assert shares == sorted(shares, reverse=True)
    assert sum(shares) <= 1 + 1e-9
    assert len({reading.replace("1", "").replace("2", "") for reading, _ in readings}) == len(readings)


@given(LETTERS)
@settings(deadline=None)
def test_what_was_read_before_changes_nothing(word: str) -> None:
    fresh = in_python()
    assert fresh.readings(word, 3) == joint_model().readings(word, 3)


@given(st.lists(st.text(alphabet="abl", max_size=6), max_size=8), st.integers(1, 30), st.sampled_from([3.0, 6.0]))
@settings(max_examples=30)
def test_words_read_in_a_row_are_read_as_each_alone(words: list[str], beam: int, within: float) -> None:
    """What one word has in common with the one before it is taken over."""
    row = in_python()
    for word in words:
        assert row.readings(word, 3, beam, within) == in_python().readings(word, 3, beam, within)


def test_reading_the_whole_table_changes_nothing() -> None:
    words = ["zilovane", "kwench", "plorabit", "thruxy"]
    sought = [in_python().readings(word, 3) for word in words]
    model = in_python()
    model.preload()
    assert [model.readings(word, 3) for word in words] == sought


def test_forgetting_changes_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    model = in_python()
    before = model.readings("zilovane", 3), model.spellings("zI1lo", 3)
    monkeypatch.setattr("namescreen.pronunciation.g2p._REMEMBERED", 0)
    assert (model.readings("zilovane", 3), model.spellings("zI1lo", 3)) == before


@pytest.mark.parametrize("word", ["planter", "kettle", "quick", "phone", "knight", "box", "lemon", "shrub", "thyme"])
def test_a_word_read_and_spelled_again_is_among_its_spellings(word: str) -> None:
    reading = joint_model().readings(word, 1)[0][0]
    assert word in dict(joint_model().spellings(reading, 50))


def test_a_beginning_that_is_not_allowed_is_not_followed() -> None:
    found = joint_model().spellings("fo1niks", 20, allowed=lambda beginning: beginning[0] == "f")
    assert found
    assert all(word[0] == "f" for word, _ in found)


def test_costs_are_monotone_and_printable() -> None:
    characters = [cost_character(0.5**power) for power in range(24)]
    assert characters == sorted(characters)
    assert all(character.isprintable() and character != " " for character in characters)


def test_every_word_of_the_dictionary_has_a_vowel_or_is_a_murmur() -> None:
    """Readings by the model have one primary stress whenever they have a vowel."""
    for word in ("brst", "pfft", "zzz", "strx"):
        for reading, _ in joint_model().readings(word, 4):
            phones = from_marked(reading)
            assert reading.count("1") == (1 if any(map(is_vowel, phones)) else 0)
