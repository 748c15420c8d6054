"""Spellings by ear of the goods' own words, and words without their vowels: TMEP 1209.03(j), EUTMR Article 7(1)(c);
from memory. The names are our own."""

from __future__ import annotations

import pytest

from namescreen.goods import Distinctiveness, distinctiveness, protected_signs
from namescreen.goods.spelt_by_ear import is_nearly, key, nearly_spelt_for, spelt_for, without_vowels


@pytest.mark.parametrize(
    ("word", "other", "language"),
    [("kafi", "kaffie", "nl"), ("zeife", "seife", "de"), ("fryschkase", "frischkase", "de"), ("kertz", "kerze", "de"),
     ("tschau", "chau", "pt"), ("ilo", "hilo", "es"), ("kiesa", "chiesa", "it"), ("wase", "vase", "de")],
)  # fmt: skip
def test_two_spellings_of_one_sound_have_one_key(word: str, other: str, language: str) -> None:
    ways = {key(word, language), key(word, language).replace("C", "S")}
    assert key(other, language) in ways


@pytest.mark.parametrize(
    ("word", "other", "language"),
    [("ose", "hose", "de"), ("naturo", "natur", "de"), ("vila", "villo", "it"), ("sox", "soch", "de"),
     ("buch", "busch", "de"), ("kaso", "kase", "es")],
)  # fmt: skip
def test_what_a_language_tells_apart_has_two(word: str, other: str, language: str) -> None:
    assert key(word, language) != key(other, language)


def test_other_words_have_other_keys() -> None:
    assert len({key(word, "") for word in ("leather", "lantern", "candle", "kettle", "towel", "table")}) == 6


def test_a_strange_word_is_one_for_the_goods_as_they_are_stated_or_called() -> None:
    assert spelt_for("kfe", "café en grains", "fr") == ("cafe", "coffee")
    assert nearly_spelt_for("xokolat", "chocolate", "es") == ("chocolate", "chocolate")
    assert spelt_for("zelkova", "chocolate", "es") == ("", "")
    assert spelt_for("lahna", "wool blankets", "es") == ("lana", "wool")


@pytest.mark.parametrize(
    ("word", "goods"),
    [("myt", "candles with wax"), ("vitt", "lamps with shades"), ("wor", "mats for dogs"), ("huzo", "hats"),
     ("vull", "wool scarves"), ("osso", "hose"), ("mako", "mugs"), ("rozo", "rose jam")],
)  # fmt: skip
def test_small_words_short_ones_and_another_vowel_are_none(word: str, goods: str) -> None:
    languages = ("de", "es", "fr", "it", "nl", "pl", "sv")
    assert {spelt_for(word, goods, language) for language in languages} == {("", "")}


def test_vowels_left_out() -> None:
    assert without_vowels("lthr", ("large", "leather"), ()) == "leather"
    assert without_vowels("tlb", ("table",), ()) == without_vowels("lather", ("leather",), ()) == ""


@pytest.mark.parametrize(
    ("name", "goods", "market"),
    [("Kfé", "café en grains", "FR"), ("Fryschkäse", "Frischkäse", "DE"), ("Lthr", "leather wallets", "US"),
     ("Xokolat", "chocolate", "ES")],
)  # fmt: skip
def test_such_a_name_is_as_descriptive_as_the_word(name: str, goods: str, market: str) -> None:
    found = distinctiveness(name, goods, markets=(market,))
    assert isinstance(found, Distinctiveness)
    assert found.category in ("generic", "descriptive")


@pytest.mark.parametrize(
    ("name", "goods", "market"),
    [("Alcohol-Free Albert", "light ale, 2.5 % alcohol by volume", "GB"), ("Solid Oak Sam", "shelves of chipboard",
    "GB"),
     ("Sin Azúcar Mirela", "mermeladas con azúcar de caña", "ES"), ("No Sugar Nora", "boiled sugar sweets", "GB")],
)  # fmt: skip
def test_a_promise_in_so_many_words_misleads_whatever_name_is_beside_it(name: str, goods: str, market: str) -> None:
    """TMEP 1203.02; EUTMR Article 7(1)(g); from memory."""
    assert any(one.serious and one.kind == "misleading" for one in protected_signs(name, goods, markets=(market,)))


@pytest.mark.parametrize(
    ("name", "goods"),
    [("Alcohol Free Alma", "non-alcoholic beer"), ("Sugar Free Sonia", "sugar-free sweets"),
     ("No Sugar Nora", "sweets without sugar")],
)  # fmt: skip
def test_a_promise_that_the_goods_keep_does_not(name: str, goods: str) -> None:
    assert not any(one.serious and one.kind == "misleading" for one in protected_signs(name, goods, markets=("GB",)))


@pytest.mark.parametrize(
    ("word", "language", "meant"),
    [("aquarella", "de", "aquarell"), ("aquarellis", "de", "aquarell"), ("aquarello", "it", "acquerello"),
     ("penella", "it", "pennello"), ("sapona", "it", "sapone"), ("schokolado", "de", "schokolade")],
)  # fmt: skip
def test_a_strange_word_is_one_for_the_goods_with_another_ending_or_a_letter_wrong(
    word: str, language: str, meant: str
) -> None:
    goods = "watercolour paints; paint brushes; soap; chocolate"
    assert nearly_spelt_for(word, goods, language)[0] == meant


@pytest.mark.parametrize("word", ["quarella", "aquila", "sapiro", "sopa", "kerza", "tovali", "pinella", "schakal"])
def test_of_a_short_word_all_must_be_heard(word: str) -> None:
    goods = "watercolour paints; paint; soap; chocolate; candles; towels"
    assert [nearly_spelt_for(word, goods, code)[0] for code in ("de", "it", "fr")] == ["", "", ""]


def test_such_a_name_is_told_before_what_its_letters_look_like() -> None:
    found = distinctiveness("Aquarella", "watercolour paints for artists", markets=("AT", "IT"))
    assert isinstance(found, Distinctiveness)
    assert {one.market for one in found.markets if one.category == "descriptive"} >= {"AT", "IT"}


def test_a_word_of_many_languages_is_known_to_each_in_its_own_spelling() -> None:
    """Aquarelle, acquerello; English dictionaries have aquarelle as well (from memory)."""
    assert is_nearly("aquarelle", "acquerello")
    assert not is_nearly("aquila", "acquerello")
    found = distinctiveness("Aquarelle", "watercolour paints for artists", markets=("GB", "AT", "IT"))
    assert isinstance(found, Distinctiveness)
    told = {one.market: one.category for one in found.markets}
    assert all(told[market] in ("generic", "descriptive") for market in ("GB", "AT", "IT"))
