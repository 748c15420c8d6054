"""In which markets buyers know a place, a word of another language, and what deceives; every name is of our own making,
what is expected is common practice, no source, but where one is named."""

from __future__ import annotations

import pytest

from namescreen.goods import Distinctiveness, distinctiveness
from namescreen.goods.renown import known_in

SCARVES, SPOONS, SOAP, KITES = (
    "woollen scarves", "wooden spoons of beech", "hand soap with olive oil", "paper kites for children",
)  # fmt: skip


def judged(name: str, goods: str, *markets: str) -> Distinctiveness:
    found = distinctiveness(name, goods, markets=markets)
    assert isinstance(found, Distinctiveness)
    return found


@pytest.mark.parametrize(
    ("place", "known", "strange"),
    [
        ("harrogate", "GB", "US DE FR IT"),
        ("passau", "DE", "US GB FR ES"),
        ("honfleur", "FR", "US GB DE NL"),
        ("brooklyn", "US GB DE FR IT ES NL", ""),
        ("cornwall", "GB US DE FR", ""),
        ("provence", "FR DE GB US", ""),
        ("turku", "FI", "US ES"),
    ],
)
def test_a_place_is_known_at_home_and_where_texts_name_it(place: str, known: str, strange: str) -> None:
    """TMEP 1210.04(c): obscure or remote places; Windsurfing Chiemsee, C-108/97: the persons concerned."""
    assert [one for one in known.split() if not known_in(place, one, SCARVES)] == []
    assert [one for one in strange.split() if known_in(place, one, SCARVES)] == []


def test_a_place_that_is_known_for_the_goods_is_known_wherever_these_are_sold() -> None:
    assert known_in("solingen", "US", "kitchen knives")
    assert not known_in("solingen", "US", KITES)


@pytest.mark.parametrize(
    ("name", "goods", "home", "abroad"),
    [
        ("Harrogate", KITES, "GB", "FR"),
        ("Passau", SPOONS, "DE", "US"),
        ("Honfleur", SCARVES, "FR", "GB"),
        ("Turku", SOAP, "FI", "ES"),
    ],
)
def test_a_town_bars_a_name_where_buyers_know_it(name: str, goods: str, home: str, abroad: str) -> None:
    found = judged(name, goods, home, abroad)
    seen = {one.market: one for one in found.markets}
    assert seen[home].called == found.called == "geographic"
    assert (seen[abroad].called, seen[abroad].ground) == ("arbitrary", "little-known place")
    assert "if buyers know it" in seen[abroad].law
    assert abroad in found.strange_in
    assert home not in found.strange_in


def test_a_town_that_no_market_knows_bars_nothing() -> None:
    found = judged("Harrogate", KITES, "FR", "IT")
    assert found.category == "arbitrary"
    assert {"FR", "IT"} <= {*found.strange_in}


@pytest.mark.parametrize(
    ("name", "goods", "market", "language"),
    [
        ("Drachen", KITES, "DE", "de"),
        ("Cuchara", SPOONS, "ES", "es"),
        ("Sapone", SOAP, "IT", "it"),
        ("Latawiec", KITES, "PL", "pl"),
    ],
)
def test_the_language_of_a_market_is_named_first(name: str, goods: str, market: str, language: str) -> None:
    """The same form may be a word of several languages; buyers read their own (Matratzen Concord, C-421/04)."""
    found = judged(name, goods, market, "GB")
    seen = {one.market: one for one in found.markets}
    assert (seen[market].category, seen[market].language) == ("generic", language)
    assert seen["GB"].category not in ("generic", "descriptive")
    assert seen["GB"].language == ""


@pytest.mark.parametrize(
    ("name", "goods"),
    [
        ("Mohair Post", "scarves of acrylic, no wool"),
        ("Walnut", SPOONS),
        ("Real Silk", "kites of nylon"),
        ("Marble", "bowls of plastic"),
    ],
)
def test_what_says_of_the_goods_what_they_are_not_is_deceptive_apart_from_its_category(name: str, goods: str) -> None:
    """TMEP 1203.02; EUTMR Article 7(1)(g)."""
    found = judged(name, goods, "US", "DE")
    assert found.deceptive in ("likely", "perhaps")
    assert found.to_json()["deceptive"] == found.deceptive
    assert all("Lanham" not in one for one in found.reasons)  # the law is told once, by market


def test_a_name_that_says_what_is_so_deceives_nobody() -> None:
    assert judged("Beech Hollow", SPOONS, "US", "DE").deceptive == ""


def test_a_sort_of_another_sense_of_the_goods_word_is_none_of_them() -> None:
    """Red lead is a pigment and no leash."""
    found = judged("Red Plover", "dog leads", "GB", "US")
    assert not any("is a kind of them" in one for one in found.reasons)


@pytest.mark.parametrize(
    ("name", "goods"),
    [("Wool & Wander", "woollen scarves"), ("Oak Sparrow", "oaken spoons"), ("Silk Sail", "kites of silken cloth")],
)
def test_what_goods_state_in_another_form_is_stated(name: str, goods: str) -> None:
    assert judged(name, goods, "GB", "US").deceptive == ""


def test_what_a_name_means_weighs_more_than_that_its_words_are_borne() -> None:
    """Petit and Train are surnames in the United States; the office translates first (TMEP 1209.03(g))."""
    found = judged("Petit Train", "toy trains", "US", "FR")
    assert {one.market: one.called for one in found.markets}["US"] == "generic"


def test_a_region_is_known_where_it_lies() -> None:
    """Podhale is in Poland, the Allgäu in Germany (from memory)."""
    for place, home, abroad in (("podhale", "PL", "IT"), ("allgau", "DE", "ES"), ("masuria", "PL", "FR")):
        assert known_in(place, home, KITES)
        assert not known_in(place, abroad, KITES)


def test_a_word_that_any_firm_may_add_leaves_a_promise_as_it_is() -> None:
    assert judged("Copper Kettle Club", "kettles of enamelled steel", "US", "DE").deceptive == "likely"
