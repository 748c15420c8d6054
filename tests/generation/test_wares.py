"""What a name must not name: the goods, wares like them, stuffs that the goods do not hold."""

from __future__ import annotations

import pytest

from namescreen.brief import Brief, Concept
from namescreen.generation.candidate import Proposal
from namescreen.generation.wares import Wares, head_of


def as_found(name: str, meaning: str) -> Proposal:
    words = tuple(name.split())
    return Proposal(name, words, "found", "", (name,), words[0], meaning=meaning)


def told(goods: str, name: str, meaning: str = "", construction: str = "found") -> str:
    words = tuple(name.lower().split())
    sources = words if construction == "pair" else (name.lower(),)
    proposal = Proposal(name, words, construction, "", sources, words[0], meaning=meaning)
    return Wares(Brief(goods=goods)).named_by(proposal)


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
    assert "same trade" in told("oat biscuits", "Zorgle", "thin biscuit of rye")
    assert not told("oat biscuits", "Zorgle", "walk at an easy pace")


def test_the_head_of_a_meaning_stands_before_what_says_more() -> None:
    assert head_of("rug before the fire") == head_of("flat woven rug") == "rug"


def test_no_creature_stands_among_goods_to_eat_that_name_none() -> None:
    assert "animal" in told("oat biscuits", "Wagtail")
    assert not told("oat biscuits shaped like birds", "Wagtail")
    assert not told("bells for bicycles", "Wagtail")


def test_what_goods_are_made_of_makes_no_ware_of_a_name() -> None:
    """Cherry is a wood here: food is no ware of the same trade."""
    brief = Brief(goods="hand-carved wooden spoons of birch and cherry wood", concepts=(Concept("stir"),))
    assert Wares(brief).named_by(as_found("stone soup", "folk tale of a soup to which all give")) == ""


def test_a_word_of_labels_of_these_goods_is_told() -> None:
    wares = Wares(Brief(goods="wooden spoons", concepts=(Concept("stir"),)))
    said, plainly = wares.on_labels(as_found("treen", "small things made of wood"))
    assert "wooden spoon" in said
    assert plainly
    assert wares.on_labels(as_found("treen", "small things made of wood"), 0.9) == (said, False)
    assert wares.on_labels(as_found("otter", "playful river animal")) == ("", False)
