"""Stuffs, shapes, sorts, users, occasions, qualities, sizes and grades that tell of goods called so or covered; the
names are ours, common practice, no source."""

from __future__ import annotations

import pytest

from namescreen.goods import Distinctiveness, distinctiveness
from namescreen.goods.trade_words import term_for

BARRED = ("generic", "descriptive")


def category(name: str, goods: str) -> str:
    found = distinctiveness(name, goods, markets=["US"])
    assert isinstance(found, Distinctiveness)
    return found.category


@pytest.mark.parametrize(
    ("name", "goods"),
    [
        ("Guanaco", "knitted scarves"),
        ("Stingray", "leather wallets"),
        ("Octagon", "floor tiles"),
        ("Falconers", "leather gloves"),
        ("Beekeepers", "protective gauntlets"),
        ("Huggable", "soft toys"),
        ("Tarnishproof", "silver rings"),
        ("4B", "pencils"),
        ("VSOP", "brandy"),
        ("P240", "sandpaper"),
        ("XL", "sweatshirts"),
    ],
)
def test_what_is_said_of_such_goods_describes_them(name: str, goods: str) -> None:
    assert category(name, goods) in BARRED


@pytest.mark.parametrize(
    ("name", "goods"),
    [("Guanaco", "wooden toys"), ("Stingray", "hand soap"), ("Falconers", "jigsaw puzzles"), ("Octagon", "hand cream")],
)
def test_other_goods_are_told_nothing(name: str, goods: str) -> None:
    assert category(name, goods) not in BARRED


@pytest.mark.parametrize(("goods", "barred"), [("dog coats", True), ("herbal tea", False), ("raincoats", False)])
def test_goods_for_animals_are_those_that_name_one(goods: str, barred: bool) -> None:
    assert (category("Spaniel", goods) in BARRED) is barred


@pytest.mark.parametrize("word", ["beekeeper", "beekeepers"])
def test_a_broader_word_covers_the_goods(word: str) -> None:
    """A gauntlet is a glove (WordNet 3.0); the speech act of that name is no goods."""
    told = term_for(word, "protective gauntlets")
    assert told is not None
    assert told.weight > 0.5
    assert not told.names_goods


@pytest.mark.parametrize("name", ["Kwik Kutt Syzzers", "Shaarp Blaid Syzzers"])
def test_a_misspelt_phrase_is_read_by_ear(name: str) -> None:
    """TMEP 1209.03(j): every word of it as the one that it sounds like."""
    assert category(name, "scissors with sharp blades") in BARRED


@pytest.mark.parametrize("name", ["Velmora Syzzers", "Kleer Fox"])
def test_an_own_word_stays_one_beside_a_misspelling(name: str) -> None:
    assert category(name, "scissors") not in BARRED
