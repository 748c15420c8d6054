"""Promises and stuffs in names, held against what goods are, are made of or hold, and not against what they are for.

The law: TMEP 1203.02, EUTMR Article 7(1)(g). The names are our own; which of them mislead is common practice, no
source."""

from __future__ import annotations

import pytest

from namescreen.goods import protected_signs
from namescreen.goods.made_of import made_of
from namescreen.goods.set_phrases import in_other_sense


def _told(name: str, goods: str) -> list[bool]:
    """Whether each finding on what the goods are of is serious."""
    found = protected_signs(name, goods, markets=("US", "GB"))
    return [one.serious for one in found if one.kind in ("misleading", "material")]


@pytest.mark.parametrize(
    ("name", "goods"),
    [
        ("Vegan Owl", "egg cups"), ("Vegan Owl", "milk jugs"), ("Vegan Owl", "butter dishes"),
        ("Vegan Otter", "cheese graters"), ("Vegan Otter", "fish hooks"), ("Vegan Fox", "soap for leather"),
        ("Vegan Fox", "laces for leather boots"), ("Vegan Heron", "hand cream"), ("Vegan Heron", "bars of shea butter"),
        ("Vegan Heron", "coconut milk"), ("Vegan Wren", "leather cleaner"), ("Vegan Wren", "honey dippers of beech"),
        ("Handmade Hen", "covers for sewing machines"), ("Handmade Hen", "coffee machines"),
        ("Artisan Owl", "cups for coffee machines"), ("Handmade Hare", "industrial shelving"),
        ("Compostable Crow", "tape for plastic bottles"), ("Organic Otter", "inorganic pigments"),
        ("Organic Otter", "conventional ovens"),
    ],
)  # fmt: skip
def test_a_promise_says_nothing_of_what_goods_are_for(name: str, goods: str) -> None:
    assert _told(name, goods) == []


@pytest.mark.parametrize(
    ("name", "goods"),
    [
        ("Vegan Otter", "leather belts"), ("Vegan Otter", "belts of leather"), ("Vegan Otter", "candles of beeswax"),
        ("Vegan Otter", "soap with goat milk"), ("Vegan Otter", "milk chocolate"), ("Vegan Otter", "wool scarves"),
        ("Vegan Otter", "goat cheese"), ("Vegan Otter", "egg noodles"), ("Vegan Owl", "leather cases for knives"),
        ("Handmade Hare", "machine-made rugs"), ("Handmade Hare", "scarves knitted by machine"),
        ("Compostable Crow", "plastic bags"), ("Organic Otter", "conventional eggs"),
    ],
)  # fmt: skip
def test_a_promise_that_goods_are_stated_to_break_misleads(name: str, goods: str) -> None:
    assert any(_told(name, goods))


@pytest.mark.parametrize(
    ("name", "goods"),
    [
        ("Silver Birch", "oak furniture"), ("Copper Beech", "steel pans"), ("Hemp Nettle", "cotton rope"),
        ("Cherry Stone", "oak tables"), ("Bone Idle", "plastic rulers"), ("Silver Lining", "gold rings"),
        ("Silver Fox", "gold rings"), ("Oak Apple", "beech chairs"), ("Flax Lily", "cotton towels"),
        ("Cherry Blossom", "plum jam"), ("Rose Gold", "garden gloves"), ("Jade Plant", "plant pots"),
        ("Harris & Finch", "wool scarves"), ("Donegal Duck", "tweed caps"), ("Romney Lane", "wool scarves"),
    ],
)  # fmt: skip
def test_a_stuff_in_a_set_phrase_a_plant_a_colour_or_a_name_is_none(name: str, goods: str) -> None:
    assert not any(_told(name, goods))


@pytest.mark.parametrize(
    ("name", "goods"),
    [
        ("Pure Copper", "steel pans"), ("Solid Oak", "beech chairs"), ("Cherry Touch", "oak tables"),
        ("Cast Iron", "aluminium pans"), ("Pure Silk", "polyester scarves"), ("Flax Touch", "cotton towels"),
        ("Sapphire Quality", "glass beads"), ("Cashmere Cloud", "acrylic scarves"),
    ],
)  # fmt: skip
def test_a_stuff_that_the_goods_rule_out_misleads(name: str, goods: str) -> None:
    assert any(_told(name, goods))


@pytest.mark.parametrize(
    ("name", "goods"),
    [("Sapphire Moon", "glass beads"), ("Pearl Harbour", "plastic beads"), ("Nature Nook", "plastic tubs"),
     ("Diamond Dog", "glass beads"), ("Red Oak", "beech chairs"), ("Silver Birch", "oak furniture"),
     ("Black Walnut", "oak tables")],
)  # fmt: skip
def test_a_stuff_said_in_play_or_a_sort_of_wood_is_a_question(name: str, goods: str) -> None:
    assert _told(name, goods) == [False]


def test_goods_are_told_by_what_they_are_of() -> None:
    assert made_of("shoe laces for leather boots") == " shoe laces "
    assert " leather " in made_of("cases of leather for knives")
    assert " egg " not in made_of("egg cups")


def test_words_stand_in_another_sense_in_set_phrases() -> None:
    assert in_other_sense(("bone", "idle")) == {"bone", "idle"}
    assert in_other_sense(("cast", "iron")) == set()
    assert in_other_sense(("rose", "gold")) == set()
    assert in_other_sense(("rose", "gold"), shades=True) == {"gold"}


@pytest.mark.parametrize(
    ("name", "goods", "market", "serious"),
    [
        ("Algodón", "polyester shirts", "ES", True), ("Cuir", "wallets of vinyl", "FR", True),
        ("Kirsche", "plum jam", "DE", True), ("Legno Puro", "plastic toys", "IT", True),
        ("Wol", "acrylic hats", "NL", True), ("Hodváb", "polyester scarves", "SK", True),
        ("Antes del Alba", "cotton socks", "ES", False), ("Ante", "wool coats", "ES", False),
        ("Kaz", "tea leaves", "NL", False), ("Mori", "apple juice", "IT", False),
    ],
)  # fmt: skip
def test_a_word_of_another_language_misleads_surely_only_if_buyers_first_read_that_in_it(
    name: str, goods: str, market: str, serious: bool
) -> None:
    """Antes is "before" to the Spanish, before it is suede; kaas is Dutch for cheese, and kaz no word at all."""
    found = protected_signs(name, goods, markets=("GB", market))
    assert any(one.serious for one in found if one.misleads) is serious
