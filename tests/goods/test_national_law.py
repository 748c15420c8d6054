"""How a name stands in the states of the Union that the markets name, and what a name's own parts make it.

A national mark is judged by what buyers there understand (Court of Justice, C-421/04, Matratzen Concord), an EU mark in
every language of the Union (EUTMR Article 7(2)). The acts are from memory."""

from __future__ import annotations

import pytest

from namescreen.goods import Distinctiveness, distinctiveness
from namescreen.goods.grounds import law_on, views_of
from namescreen.goods.places import place_of


def judged(name: str, goods: str, *markets: str) -> Distinctiveness:
    found = distinctiveness(name, goods, markets=markets)
    assert isinstance(found, Distinctiveness)
    return found


def test_each_state_reads_a_name_in_its_own_languages() -> None:
    found = judged("Teekanne", "tea pots", "DE", "ES", "NL")
    views = {one.market: one for one in found.markets}
    assert list(views) == ["DE", "ES", "BX", "EU"]
    assert views["DE"].category == views["EU"].category == found.category == "generic"
    assert views["ES"].category not in ("generic", "descriptive")
    assert "MarkenG s. 8(2)" in views["DE"].law
    assert "C-421/04" in views["ES"].law
    assert "7(2)" in views["EU"].law


@pytest.mark.parametrize(
    ("kind", "law", "says"),
    [
        ("generic", "DE", "MarkenG s. 8(2) no. 1, no. 2 and no. 3"),
        ("descriptive", "ES", "Ley 17/2001, article 5(1)(c) and (b)"),
        ("laudatory", "FR", "CPI, article L711-2 no. 2"),
        ("place", "IT", "article 13(1)(b); Windsurfing Chiemsee, C-108/97"),
        ("descriptive", "BX", "article 2.2bis(1)(c) and (b)"),
        ("descriptive", "SE", "Directive (EU) 2015/2436, Article 4(1)(c) and (b)"),
        ("descriptive", "PL", "article 129(1) section 1 no. 3 and no. 2"),
        ("surname", "SE", "Nichols"),
        ("descriptive", "GB", "TMA 1994 s. 3(1)(c)"),
        ("descriptive", "CH", "MSchG, article 2(a)"),
        ("surname", "CA", "s. 12(1)(a)"),
        ("laudatory", "AU", "Trade Marks Act 1995 s. 41"),
        ("descriptive", "JP", "article 3(1)(iii)"),
        ("stem", "JP", "not known here"),
        ("descriptive", "BR", "not known here"),
    ],
)
def test_the_act_of_each_state(kind: str, law: str, says: str) -> None:
    assert says in law_on(kind, law)


def test_whose_laws_are_told() -> None:
    assert views_of(("BE", "NL", "UK")) == ("BX", "GB", "EU")
    assert views_of(("EM",)) == ("EU",)
    assert views_of(("CH",)) == ("CH",)


def test_a_kind_of_the_goods_is_described_and_their_very_name_is_generic() -> None:
    """TMEP 1209.03(d), 1209.01(c); misspelt: 1209.03(j)."""
    assert judged("Klangglocke", "bells", "DE").category == "descriptive"
    assert judged("Fahrradklingel", "bicycle bells", "DE").category == "generic"
    assert judged("Kwilt Kuvver", "quilt covers", "US").category == "generic"


def test_a_meaning_is_told_or_said_to_be_unknown_and_never_both() -> None:
    found = judged("Klangglocke", "bells", "DE")
    told = " ".join((*found.reasons, *(one.because for one in found.not_assessed)))
    assert 'means, by its parts, "' in told
    assert "not known here" not in told


@pytest.mark.parametrize(
    ("word", "place"),
    [
        ("zaragozana", "Zaragoza"),
        ("ferrarese", "Ferrara"),
        ("stuttgarter", "Stuttgart"),
        ("aachener", "Aachen"),
        ("marseillais", "Marseille"),
        ("russisches", "Russia"),
        ("philadelphian", "Philadelphia"),
    ],
)
def test_who_or_what_comes_from_a_place_is_called_after_it(word: str, place: str) -> None:
    found = place_of(word)
    assert found is not None
    assert found.name == place
    assert judged(word, "wooden toys", "DE", "US").called == "geographic"


@pytest.mark.parametrize(
    "seat",
    [
        "segovia", "tarragona", "catania", "ravenna", "montpellier", "rennes", "kiel", "magdeburg", "nottingham",
        "carlisle", "galway", "lublin", "zwolle", "gent", "vasteras", "bregenz", "coimbra", "bilbao",
    ],
)  # fmt: skip
def test_the_seat_of_a_province_is_a_place_though_it_is_a_surname_elsewhere(seat: str) -> None:
    """Chiemsee, C-108/97: a place that the public of the goods knows. The seats are general knowledge, from memory."""
    assert place_of(seat) is not None


@pytest.mark.parametrize("word", ["verdiana", "persianas", "anziano", "luciana", "velviner", "jaffer", "moonisch"])
def test_other_words_of_that_form_are_not(word: str) -> None:
    assert place_of(word) is None


def test_a_surname_is_a_bar_in_canada_as_in_the_united_states() -> None:
    """Trademarks Act s. 12(1)(a), Lanham Act s. 2(e)(4); not in the EU (Nichols, C-404/02); from memory."""
    views = {one.market: one.called for one in judged("Smith", "slippers", "CA", "US", "DE").markets}
    assert (views["CA"], views["US"]) == ("surname", "surname")
    assert views["DE"] != "surname"
