"""Words against morality or public policy, codes, initials, respellings, compounds, far places and signs without a
letter; the names are ours, common practice, no source unless one is named."""

from __future__ import annotations

import pytest

from namescreen.goods import Distinctiveness, distinctiveness, protected_signs
from namescreen.goods.respelt import compounds, respellings

BARRED = ("generic", "descriptive")


def judged(name: str, goods: str, *markets: str) -> Distinctiveness:
    found = distinctiveness(name, goods, markets=markets or ("US", "GB"))
    assert isinstance(found, Distinctiveness)
    return found


@pytest.mark.parametrize(
    ("name", "market", "serious"),
    [
        ("Bloody Hell", "GB", False), ("Arschgeige", "DE", True), ("Cabronazo Fox", "ES", False),
        ("Mafiosi", "IT", True), ("Kokain", "DE", True), ("Waffen SS", "PL", True), ("Otter Shitbox", "GB", True),
        ("Cono", "ES", False), ("Coño", "ES", True), ("Fick", "GB", False), ("Con Brio", "FR", False),
    ],
)  # fmt: skip
def test_what_offends_is_told_where_buyers_understand_it(name: str, market: str, serious: bool) -> None:
    """EUTMR Article 7(1)(f); TMA 1994 s. 3(3)(a), from memory; cono is a cone, Fick a surname."""
    found = [one for one in protected_signs(name, "bread", markets=[market]) if one.kind == "morality"]
    assert any(one.serious for one in found) is serious
    assert all(one.bars for one in found if one.serious)


def test_in_the_united_states_what_offends_is_told_and_no_bar() -> None:
    """Matal v. Tam (U.S. 2017); Iancu v. Brunetti (U.S. 2019), from memory."""
    (found,) = protected_signs("Bullshit", "bread", markets=["US"])
    assert (found.kind, found.serious, found.bars) == ("morality", False, ())
    assert "Brunetti" in found.reason


def test_each_state_of_the_union_has_its_own_law_on_it() -> None:
    (found,) = protected_signs("Arschloch", "bread", markets=["DE"])
    assert "MarkenG s. 8(2) no. 5" in found.reason


@pytest.mark.parametrize(("goods", "serious"), [("vodka", True), ("bread", False)])
def test_what_is_holy_is_refused_on_drink_and_asked_about_elsewhere(goods: str, serious: bool) -> None:
    (found,) = protected_signs("Shiva", goods, markets=["GB"])
    assert (found.kind, found.serious) == ("morality", serious)


@pytest.mark.parametrize(
    ("name", "goods"),
    [
        ("M12", "hexagon bolts"), ("GU10", "spotlights"), ("40W", "light bulbs"), ("Size 38", "sandals"),
        ("LCD", "screens"), ("NiMH", "batteries"), ("PMMA", "display stands"), ("Solar Powered", "garden lanterns"),
        ("Rust Guard", "tool oil"), ("Anti Fog", "goggles"), ("Clover Petal", "bath oils of clover"),
        ("Really Great", "kites"), ("Storm Tight", "raincoats"),
    ],
)  # fmt: skip
def test_codes_initials_and_what_words_say_together_describe(name: str, goods: str) -> None:
    assert all(one.category in BARRED for one in judged(name, goods).markets)


@pytest.mark.parametrize(
    ("word", "meant"),
    [("kleer", "clear"), ("skarf", "scarf"), ("trayz", "trays"), ("tyte", "tight"), ("velmora", ""), ("brask", "")],
)
def test_a_respelling_is_read_letter_by_letter(word: str, meant: str) -> None:
    assert (meant in respellings(word)) if meant else respellings(word) == ()


def test_a_closed_word_may_be_respelt_in_both_parts() -> None:
    """TMEP 1209.03(j), from memory."""
    assert ("water", "tight") in compounds("watertyte")
    assert judged("Rainprufe", "raincoats").category in BARRED
    assert judged("Velmtyren", "raincoats").category not in BARRED


@pytest.mark.parametrize(
    ("name", "goods"),
    [("Ropewhisper", "dog leads"), ("Breadlight", "bread"), ("Chairsong", "chairs"), ("Needleoak", "knitting needles")],
)
def test_a_compound_is_what_its_last_part_names(name: str, goods: str) -> None:
    """Marchand (1969): a kind of the last part, which is no lead, loaf or chair."""
    assert judged(name, goods).category not in BARRED


@pytest.mark.parametrize(("name", "goods", "barred"), [("Vanuatu", "hammers", False), ("Sheffield", "hammers", True)])
def test_from_far_places_buyers_expect_no_wares(name: str, goods: str, barred: bool) -> None:
    """TMEP 1210.04(d); Windsurfing Chiemsee, C-108/97, from memory."""
    assert (judged(name, goods).category in BARRED) is barred


def test_a_sign_without_a_letter_tells_no_maker() -> None:
    """T-191/08, Joop! (an exclamation mark alone), from memory."""
    found = judged("!?", "caps", "DE", "US")
    assert {one.ground for one in found.markets} == {"sign"}


@pytest.mark.parametrize(
    ("name", "surname"),
    [("Gustavsson", True), ("Van den Berg", True), ("Hérisson", False), ("Delgado & Daughters", True)],
)
def test_surnames_are_those_of_someone(name: str, surname: bool) -> None:
    """TMEP 1211.01: with particles and kin; a word of another language (a hedgehog) is none by its ending."""
    (found,) = judged(name, "soap", "US").markets
    assert (found.called == "surname") is surname


@pytest.mark.parametrize(("name", "serious"), [("Merino Dream", True), ("Velvet Otter", False)])
def test_a_stuff_beside_no_thing_is_taken_at_its_word(name: str, serious: bool) -> None:
    """TMEP 1203.02; MarkenG s. 8(2) no. 4, from memory."""
    (found,) = [one for one in protected_signs(name, "scarves of cotton", markets=["DE"]) if one.kind == "material"]
    assert found.serious is serious
    assert "MarkenG s. 8(2) no. 4" in found.reason


def test_a_word_written_with_letters_of_another_language_is_none_of_this_one() -> None:
    """Swedish räv, a fox, is no Danish rav, amber."""
    assert judged("Räv", "lamps", "SE", "DK").category not in BARRED
