"""Protected and deceptive signs in names: what is listed from memory, and when it is serious."""

from __future__ import annotations

import pytest

from namescreen.goods import Distinctiveness, distinctiveness, protected_signs
from namescreen.goods.grounds import grounds_for, languages_of, laws_of
from namescreen.tables import open_table


@pytest.mark.parametrize(
    ("name", "goods", "kind"),
    [
        ("Darjeeling Dawn", "tea", "origin"), ("Rioja Nights", "wine", "origin"), ("Parmesan Pals", "cheese", "origin"),
        ("Harris Tweed Hounds", "coats", "craft"), ("Solingen Edge", "kitchen knives", "craft"),
        ("Solinger Glut", "kitchen knives", "craft"), ("Champenois Star", "sparkling wine", "origin"),
        ("Tequila Moon", "spirits", "origin"), ("Olympic", "kites", "olympic"), ("Paralympian", "shoes", "olympic"),
        ("Red Cross Balm", "soap", "red cross"), ("Royal Warrant Tea", "tea", "royal arms"),
        ("UNESCO Mug", "mugs", "emblem"), ("Zelmab", "medicines", "stem"),
        ("Cancer Cure", "herbal tea", "cure and illness"), ("Heal Arthritis", "supplements", "cure and illness"),
    ],
)  # fmt: skip
def test_a_serious_sign_comes_first_with_its_reason_and_whom_to_ask(name: str, goods: str, kind: str) -> None:
    first = protected_signs(name, goods)[0]
    assert (first.kind, first.serious) == (kind, True)
    assert "from memory" in first.reason
    assert first.ask
    assert {ground.market for ground in first.grounds} >= {"US", "EU", "GB"}
    found = distinctiveness(name, goods)
    assert isinstance(found, Distinctiveness)
    assert found.protected[0] == first
    assert first.reason in found.reasons[0]


@pytest.mark.parametrize(
    ("name", "goods", "kind"),
    [("Champagne Bubbles", "soap", "origin"), ("Royal Herb", "tea", "royal"), ("Healing Leaf", "tea blends", "cure"),
     ("Migraine Mist", "perfume", "illness"), ("Bank of Herbs", "banking", "controlled")],
)  # fmt: skip
def test_a_question_that_is_not_serious(name: str, goods: str, kind: str) -> None:
    assert [(one.kind, one.serious) for one in protected_signs(name, goods)] == [(kind, False)]


@pytest.mark.parametrize(
    ("name", "goods"),
    [("Quiet Forest", "planters"), ("Healing Bench", "furniture"), ("Kelbo", "medicines"), ("Crossing Red", "toys"),
     ("Protocol", "medicines"), ("Fever Pitch", "software")],
)  # fmt: skip
def test_nothing_where_nothing_is(name: str, goods: str) -> None:
    assert protected_signs(name, goods) == ()


def test_the_claim_of_a_cure_is_no_suggestion() -> None:
    found = distinctiveness("Cancer Cure", "herbal tea")
    assert isinstance(found, Distinctiveness)
    assert found.category == "descriptive"


def test_crafts_stand_under_a_law_of_their_own_and_raw_wool_under_that_of_the_land() -> None:
    """Regulation (EU) 2023/2411 (craft and industrial products) and 2024/1143 (wine, spirits, products of the land,
    which raw wool is); the United Kingdom registers no crafts (from memory)."""
    (cloth,) = protected_signs("Harris Tweed Hounds", "woven cloth of wool", markets=("IE", "GB"))
    laws = {ground.market: ground.law for ground in cloth.grounds}
    assert "2023/2411" in laws["EU"]
    assert "2024/1143" not in laws["EU"]
    assert "no register" in laws["GB"]
    assert "craft" in cloth.reason
    (wool,) = protected_signs("Native Shetland Wool Club", "raw wool", classes=(22,), markets=("IE", "GB"))
    assert wool.kind == "origin"
    assert "2024/1143" in wool.grounds[0].law
    (other,) = protected_signs("Solingen Socks", "socks", markets=("DE",))
    assert (other.kind, other.serious) == ("craft", False)


def test_enough_signs_are_listed() -> None:
    assert len(open_table("protected_signs.tsv")) >= 250


def test_markets_and_their_laws_and_languages() -> None:
    """27 member states (Treaty on European Union, as of 2020); languages from memory."""
    assert laws_of(["DE", "fr", "US", "UK", "BR"]) == ("EU", "US", "GB", "BR")
    assert languages_of(["BE", "US"]) == ("en", "nl", "fr", "de", "es")
    assert "not known here" in grounds_for("generic", ("BR",))[0].law


def test_a_royal_warrant_and_the_red_cross_stand_under_laws_of_their_own() -> None:
    """TMA 1994 s. 4 and 99; Geneva Conventions Act 1957 s. 6; 18 U.S.C. 706 (from memory)."""
    (warrant,) = protected_signs("Royal Warrant", "tea")
    laws = {ground.market: ground.law for ground in warrant.grounds}
    assert "4(1) and 99" in laws["GB"]
    assert not any("Geneva" in law or "706" in law for law in laws.values())
    cross = protected_signs("Red Cross", "soap")[0]
    assert "706" in cross.grounds[0].law


@pytest.mark.parametrize("name", ["Bikelympics", "Lampolympix", "Velolympia", "Redcrossia", "Paralympico"])
def test_a_sign_with_its_own_law_is_found_in_a_closed_name(name: str) -> None:
    """36 U.S.C. 220506 keeps what falsely suggests the Olympic words too; the Olympic Symbol etc. (Protection) Act 1995
    what is so similar that it brings them to mind (both from memory)."""
    found = protected_signs(name, "bicycle lamps")
    assert [one.serious for one in found] == [True]


@pytest.mark.parametrize("name", ["Interplanta", "Limpico", "Polymera"])
def test_letters_by_chance_are_no_sign(name: str) -> None:
    assert not [one for one in protected_signs(name, "bicycle lamps") if one.serious]


@pytest.mark.parametrize(
    ("name", "goods", "markets", "laws"),
    [
        ("Solinger Glut", "kitchen knives", ("US", "GB", "DE"), ["DE", "EU", "US", "GB"]),
        ("Harris Tweed Hounds", "coats", ("US", "FR", "GB"), ["GB", "US", "EU"]),
        ("Rioja Nights", "wine", ("US", "GB", "FR"), ["EU", "US", "GB"]),
        ("Glen Ardroch", "whisky", ("US", "IE", "GB"), ["GB", "EU"]),
    ],
)
def test_the_law_of_the_state_that_protects_a_sign_comes_first(
    name: str, goods: str, markets: tuple[str, ...], laws: list[str]
) -> None:
    """MarkenG s. 126 to 139 and the ordinance on Solingen; the Harris Tweed Act 1993; from memory."""
    assert [ground.market for ground in protected_signs(name, goods, markets=markets)[0].grounds] == laws


@pytest.mark.parametrize(
    ("name", "goods"), [("Solinger Knives", "kitchen knives"), ("Harris Tweed Moth Coats", "coats"),
                        ("Rioja Larkspur Wine", "wine")]
)  # fmt: skip
def test_no_word_is_merely_to_be_disclaimed_beside_a_bar(name: str, goods: str) -> None:
    found = distinctiveness(name, goods, markets=("US", "GB", "DE"))
    assert isinstance(found, Distinctiveness)
    assert not any("disclaim" in one or "by itself" in one for one in found.reasons)


@pytest.mark.parametrize(
    ("name", "markets", "bars"),
    [
        ("Olympic Kettle", ["IE", "EU", "DE", "GB", "US"], ("GB", "US", "DE", "FR", "IT", "AT", "ES", "PL", "PT")),
        ("Olympic Kettle", ["IE", "GB"], ("GB",)), ("Olympic Kettle", ["IE"], ()),
        ("Kettle Olympia", ["DE"], ("DE",)), ("Kettle Olympia", ["EU"], ("DE",)),
    ],
)  # fmt: skip
def test_an_olympic_word_bars_where_a_law_keeps_it(name: str, markets: list[str], bars: tuple[str, ...]) -> None:
    """OlympSchG s. 1(3) (read) names Olympia; GB and US have acts on other words, the Union and Ireland none (from
    memory)."""
    (found,) = [one for one in protected_signs(name, "tea kettles", markets=markets) if one.kind == "olympic"]
    assert (found.bars, found.serious) == (bars, bool(bars))
    assert {*bars, *markets} <= {ground.market for ground in found.grounds}


@pytest.mark.parametrize("markets", [["GB"], ["US", "IE"]])
def test_the_place_is_no_olympic_word_where_no_law_names_it(markets: list[str]) -> None:
    assert not protected_signs("Kettle Olympia", "tea kettles", markets=markets)


@pytest.mark.parametrize(("name", "is_kept"), [("The Fish Who Reads", False), ("WHO Approved", True)])
def test_an_emblem_in_letters_is_no_small_word(name: str, is_kept: bool) -> None:
    """Paris Convention, Article 6ter; from memory."""
    assert any(one.kind == "emblem" for one in protected_signs(name, "cork handbags", markets=("GB",))) is is_kept
