"""Reasons know what they are about: nobody reads a sentence to find out."""

from __future__ import annotations

import pickle

import pytest

from namescreen.closeness import compare, without_meaning
from namescreen.closeness.reason import About, Reason, about


@pytest.mark.parametrize(
    ("name", "mark", "told"),
    [
        ("Sprig Wick", "SPRIGWICK", [About.SAME]),
        ("Quiet Forest", "FORET TRANQUILLE", [About.APPEARANCE, About.SOUND, About.WHAT_IS_SAID, About.TRANSLATION]),
        ("Copper Kettle", "COPPER POT", [About.SHARED, About.APPEARANCE, About.SOUND, About.WHAT_IS_SAID]),
    ],
)
def test_every_reason_says_what_it_is_about(name: str, mark: str, told: list[About]) -> None:
    found = [about(reason) for reason in compare(name, mark).reasons]
    assert [one for one in found if one is not About.WEAK] == told


def test_weak_words_and_readings_stand_beside_their_sentence() -> None:
    found = compare("The Sprig Company", "SPRAGG COMPANY", name_goods="pots")
    (weak,) = (one for one in found.reasons if about(one) is About.WEAK)
    assert isinstance(weak, Reason)
    assert "company" in weak.words
    (heard,) = (one for one in found.reasons if about(one) is About.SOUND)
    assert isinstance(heard, Reason)
    assert all(word in heard for word in heard.words)


def test_a_reason_survives_the_way_to_another_process() -> None:
    reason = Reason("Sound: close (a / b).", About.SOUND, ("a", "b"))
    again = pickle.loads(pickle.dumps(reason))
    assert (again, again.about, again.words) == (reason, About.SOUND, ("a", "b"))
    assert about("any sentence") is About.OTHER


def test_a_coined_name_has_no_reason_of_meaning_whatever_its_words() -> None:
    found = without_meaning(compare("Quiet Forest", "Silent Wood"))
    assert not any(about(one) is About.WHAT_IS_SAID for one in found.reasons)
