"""What names say in English: coarse words, slurs by market, and no alarm at words that only hold their letters."""

from __future__ import annotations

import pytest

from namescreen.connotations import english_coverage, english_readings
from namescreen.connotations.results import KINDS


@pytest.mark.parametrize(
    ("name", "markets", "severity"),
    [
        ("Pikey", ["GB"], 3),  # Collins English Dictionary: offensive, British; from memory
        ("Pikey", ["US"], 2),  # meant so elsewhere
        ("Pikey", [], 3),
        ("Pikey Lane", ["IE"], 3),  # a word of the name
        ("Gypsy Lane", ["US"], 2),
        ("Nancy", ["GB"], 1),  # a given name before all
        ("Whorestone", ["GB"], 2),  # a word of a closed compound
    ],
)
def test_how_grave_a_word_is(name: str, markets: list[str], severity: int) -> None:
    found = english_readings(name, markets)
    assert max((one.severity for one in found), default=0) == severity


@pytest.mark.parametrize("name", ["Scunthorpe", "Grasshopper", "Cockatoo", "Loamlet", "Titmouse"])
def test_letters_inside_a_word_are_no_word(name: str) -> None:
    """The Scunthorpe problem of word filters."""
    assert english_readings(name) == []


def test_every_word_of_the_list_has_a_known_kind() -> None:
    assert english_coverage().unlucky > 400
    found = english_readings("Turd Satan Coffin Rabies Nazi Dud Ache Scum Twat Hooker Filth")
    assert len(found) == 11
    assert {one.kind for one in found} <= {*KINDS}
