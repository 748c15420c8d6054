"""What firms call themselves, set phrases that begin with praise, claims, and compounds of the Romance languages.

The names are our own, expected beforehand after the sections named (TMEP, EUTMR Article 7(1), from memory)."""

from __future__ import annotations

import pytest

from namescreen.goods import Distinctiveness, distinctiveness
from namescreen.goods.firms import is_firm_word

BARRED = ("generic", "descriptive")


def _judged(name: str, goods: str, *markets: str) -> Distinctiveness:
    found = distinctiveness(name, goods, markets=markets)
    assert isinstance(found, Distinctiveness), found
    return found


@pytest.mark.parametrize(
    ("name", "goods", "market"),
    [
        ("Peerless Pantry", "jam and chutney", "US"), ("Whitby Larder", "pickled onions", "GB"),
        ("Superior Forge", "kitchen knives", "US"), ("Quality Tannery", "leather belts", "US"),
        ("Bristol Pottery", "mugs", "GB"), ("Premium Manufaktur", "leather belts", "DE"),
        ("Krakowska Pracownia", "pottery", "PL"), ("Utrechtse Glasblazerij", "vases", "NL"),
        ("Fina Ateljén", "candles", "SE"), ("Bottega Eccellente", "pasta", "IT"),
    ],
)  # fmt: skip
def test_praise_or_a_place_and_what_firms_call_themselves_bars(name: str, goods: str, market: str) -> None:
    """Such a whole is no more than its parts: TMEP 1209.03(k), (q); 1210.02(c) for places."""
    assert _judged(name, goods, market).category in BARRED


@pytest.mark.parametrize(("name", "goods"), [("Fox Pantry", "jam"), ("Otter & Forge", "kitchen knives")])
def test_an_own_word_beside_it_leaves_a_name(name: str, goods: str) -> None:
    """TMEP 1213: an own word carries the mark."""
    assert _judged(name, goods, "US", "GB").category not in BARRED


@pytest.mark.parametrize(
    ("word", "goods", "is_so"),
    [
        ("workshop", "lamps", True), ("workshop", "jam", True), ("forge", "kitchen knives", True),
        ("forge", "jam", False), ("larder", "jam", True), ("larder", "silver rings", False),
    ],
)  # fmt: skip
def test_firm_words_are_of_a_trade(word: str, goods: str, is_so: bool) -> None:
    """Common practice, no source."""
    assert is_firm_word(word, goods) == is_so


@pytest.mark.parametrize(
    ("name", "goods"),
    [("Royal Flush", "bowls"), ("Prime Suspect", "pet bowls"), ("China Shop", "catapults"), ("Dutch Uncle", "lamps")],
)
def test_a_set_phrase_is_neither_praise_nor_a_place(name: str, goods: str) -> None:
    """A phrase with a sense of its own is no sum of its parts: TMEP 1213.05(c)."""
    assert _judged(name, goods, "GB", "US").category not in BARRED


@pytest.mark.parametrize(
    ("name", "goods", "market"),
    [
        ("Öko Seife", "soap", "DE"), ("Ecolana", "wool yarn", "ES"), ("Végétal", "candles", "FR"),
        ("Handvävd", "table runners", "SE"), ("Schafwolle", "scarves", "DE"), ("Portabougie", "candle holders", "FR"),
    ],
)  # fmt: skip
def test_claims_and_what_goods_are_made_of_or_for_in_one_word(name: str, goods: str, market: str) -> None:
    """EUTMR Article 7(1)(c) with 7(2); Postkantoor, C-363/99, on words run together."""
    assert _judged(name, goods, market).category in BARRED


@pytest.mark.parametrize("name", ["Ulvstål", "Vargstål"])
def test_an_animal_before_a_stuff_that_comes_from_none_is_an_image(name: str) -> None:
    """Steel of a wolf there is none: it takes a thought (TMEP 1209.01(a))."""
    assert _judged(name, "knives", "SE").category not in BARRED


@pytest.mark.parametrize("name", ["Drake", "Marsh", "Reed", "Moss"])
def test_a_surname_with_a_readily_recognised_meaning_is_not_primarily_one(name: str) -> None:
    """TMEP 1211.01(a)(ii)."""
    assert _judged(name, "leather wallets", "US").category not in BARRED


def test_a_loose_relation_alone_only_suggests() -> None:
    """TMEP 1209.01(a); a part of the goods describes them."""
    assert _judged("Perch", "garden poles", "US").category not in BARRED
    assert _judged("Clapper", "bells", "US").category in BARRED


@pytest.mark.parametrize(
    ("name", "goods", "market", "for_word"),
    [
        ("Holtz Ring", "finger rings turned from wood", "DE", "holz"), ("Kuero", "leather belts", "ES", "cuero"),
        ("Zeife", "soap", "DE", "seife"), ("Karamell Krem", "caramels", "DE", ""),
    ],
)  # fmt: skip
def test_a_respelling_in_a_language_of_the_market_is_read(name: str, goods: str, market: str, for_word: str) -> None:
    """EUTMR Article 7(1)(c); TMEP 1209.03(j), on misspellings."""
    found = _judged(name, goods, market)
    assert found.category in BARRED
    assert for_word in " ".join(found.reasons)


@pytest.mark.parametrize("name", ["Zubrava", "Kestrane", "Torvel", "Holtzmann", "Forlento", "Bamlanivo"])
def test_a_coined_name_is_no_respelling(name: str) -> None:
    """Coined by us; common practice, no source."""
    assert _judged(name, "wooden spoons", "DE", "FR", "ES").category not in BARRED


@pytest.mark.parametrize(
    ("name", "goods", "market"),
    [("Cuero Noble", "belts of synthetic material", "ES"), ("Noble Leather", "belts of synthetic material", "US")],
)
def test_a_stuff_that_goods_are_not_of_misleads_in_the_buyers_language(name: str, goods: str, market: str) -> None:
    """TMEP 1203.02; EUTMR Article 7(1)(g)."""
    assert any(one.serious and one.kind in ("material", "misleading") for one in _judged(name, goods, market).protected)


def test_what_is_stated_by_its_adjective_misleads_nobody() -> None:
    """Woollen goods are of wool: generic (TMEP 1209.01(c)) and no false stuff (1203.02)."""
    found = _judged("Wolldecke", "woollen throws and picnic blankets", "DE")
    assert found.category == "generic"
    assert not found.protected


@pytest.mark.parametrize(
    ("name", "goods", "is_free"),
    [
        ("Compass Knives", "kitchen knives", True), ("Parable Jam", "jam", True), ("Alibi Gloves", "gloves", True),
        ("Bagpipe Candles", "candles", True), ("Quarrel Wallets", "leather wallets", True),
        ("Guitar Straps", "leather straps", False), ("Cheese Knives", "knives", False),
        ("Library Lamps", "lamps", False), ("Travel Kettle", "kettles", False),
    ],
)  # fmt: skip
def test_an_own_word_beside_the_goods_is_no_description(name: str, goods: str, is_free: bool) -> None:
    """TMEP 1209.01(a): a word that tells nothing of the goods; 1213 for the word for them. Use and users describe:
    1209.03(g), (i); common practice, no source, which is which."""
    assert (_judged(name, goods, "US", "GB").category not in BARRED) == is_free


def test_a_word_of_the_market_before_the_english_word_for_the_goods() -> None:
    """Postkantoor, C-363/99: the sum of its parts, whatever their languages."""
    assert _judged("Velobag", "handlebar bags for bicycles", "DE").category in BARRED


def test_a_known_word_or_place_is_no_misspelling() -> None:
    """TMEP 1209.03(j) is of misspellings."""
    assert _judged("Matins", "coir door mats", "GB").category not in BARRED
    assert "marble" not in " ".join(_judged("Marbella", "marble lamps", "GB").reasons)
