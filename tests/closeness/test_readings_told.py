"""Which English readings of a foreign name are told: of all of it, in one language, where it carries the finding."""

from __future__ import annotations

import pytest

from namescreen.closeness import compare


@pytest.mark.parametrize(
    ("name", "mark", "read"),
    [
        ("White Swan", "WEISSER SCHWAN", "white swan"), ("Copper Kettle", "KUPFERKESSEL", "copper kettle"),
        ("Moon Fox", "RENARD DE LUNE", "moon fox"), ("Rainbow", "ARC EN CIEL", "rainbow"),
    ],
)  # fmt: skip
def test_a_reading_of_the_whole_name_is_told_without_its_articles(name: str, mark: str, read: str) -> None:
    assert any(f'may be read as "{read}"' in reason for reason in compare(name, mark).reasons)


@pytest.mark.parametrize(
    ("name", "mark"),
    [
        ("Fellwild", "FELL & TIDE"), ("Penrose", "PENROSE & LOWE"), ("Salt Moon", "SALTBLOOM"),
        ("Hart", "HART & VOSS"), ("Thornwild", "TARN & DYKE"),
    ],
)  # fmt: skip
def test_words_of_several_languages_or_of_names_are_not_read(name: str, mark: str) -> None:
    assert not [reason for reason in compare(name, mark).reasons if "may be read as" in reason]


def test_a_name_cut_into_many_words_by_chance_is_not_read() -> None:
    """Of Saint-Étienne, a town, words of several lengths can be cut; nobody reads it so."""
    told = compare("Saint-Étienne", "SAINT-ÉTIENNE CYCLES").reasons + compare("Saint Etienne", "ST STEPHEN").reasons
    assert not [reason for reason in told if "sir" in reason]
