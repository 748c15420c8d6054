"""What a name must not name: the goods, wares like them, stuffs that the goods do not hold."""

from __future__ import annotations

import pytest

from namescreen.brief import Brief
from namescreen.generation.candidate import Proposal
from namescreen.generation.wares import Wares, head_of


def told(goods: str, name: str, meaning: str = "", construction: str = "found") -> str:
    words = tuple(name.lower().split())
    sources = words if construction == "pair" else (name.lower(),)
    return Wares(Brief(goods=goods)).named_by(Proposal(name, words, construction, meaning, sources, words[0], ()))


@pytest.mark.parametrize(
    ("goods", "name"),
    [
        ("blankets of lambswool", "Alpaca"),
        ("hand cream", "Neroli"),
        ("spoons of beech", "Walnut"),
        ("oat biscuits", "Sorrel"),
    ],
)
def test_a_stuff_misleads_where_goods_of_the_sort_have_another(goods: str, name: str) -> None:
    assert "no part of" in told(goods, name)
    assert not told(f"{goods} with {name}", name, construction="pair")
    assert not told("bells for bicycles", name)


def test_a_stuff_misleads_in_a_pair_too() -> None:
    assert told("blankets of lambswool", "Moss Alpaca", construction="pair")


def test_a_word_that_wordnet_lacks_is_judged_by_its_meaning() -> None:
    assert "same trade" in told("oat biscuits", "Zorgle", "thin biscuit of rye (for crisp)")
    assert not told("oat biscuits", "Zorgle", "walk at an easy pace (for slow)")


def test_the_head_of_a_meaning_stands_before_what_says_more() -> None:
    assert head_of("rug before the fire") == head_of("flat woven rug") == "rug"


def test_no_creature_stands_among_goods_to_eat_that_name_none() -> None:
    assert "animal" in told("oat biscuits", "Wagtail")
    assert not told("oat biscuits shaped like birds", "Wagtail")
    assert not told("bells for bicycles", "Wagtail")
