"""Surnames that no census of the frequent ones has: barred in the United States, registrable elsewhere."""

from __future__ import annotations

import pytest

from namescreen.goods import Distinctiveness, distinctiveness


def judged(name: str) -> Distinctiveness:
    found = distinctiveness(name, "garden trowels", markets=("US", "GB"))
    assert isinstance(found, Distinctiveness)
    return found


@pytest.mark.parametrize(
    "name",
    "Threlfall Colquhoun Ramsbotham Micklethwait Trethewey Bhattacharya Etxeberria Jørgensen Schröder Ó'Shaughnessy "
    "Wojciechowski Széchenyi Lindqvist".split(),
)  # surnames by the telephone books of their countries, from memory
def test_a_rare_surname_is_no_coinage(name: str) -> None:
    found = judged(name)
    american, british = found.markets
    assert (american.called, british.ground) == ("surname", "surname")
    assert british.category == "arbitrary"
    assert not any("no dictionary" in reason for reason in found.reasons)


@pytest.mark.parametrize("name", ["Threlfalls", "Threlfall's", "Ramsbothams"])
def test_a_surname_is_one_in_the_plural_and_the_possessive_too(name: str) -> None:
    assert judged(name).markets[0].called == "surname"


@pytest.mark.parametrize(("name", "plural"), [("Threlfall", "Threlfalls"), ("Ramsbotham", "Ramsbothams")])
def test_a_surname_weighs_the_same_in_the_plural(name: str, plural: str) -> None:
    assert judged(plural).score == judged(name).score


@pytest.mark.parametrize("name", ["Trelvano", "Kovrida", "Lumetto", "Zandrix"])
def test_a_coined_name_is_no_surname(name: str) -> None:
    assert judged(name).called == "fanciful"
