"""Messages that all makers put on goods, and praise of several words; the names are ours, common practice, no
source."""

from __future__ import annotations

import pytest

from namescreen.goods import Distinctiveness, distinctiveness
from namescreen.goods.slogans import message_in, slogan_in
from namescreen.goods.words import plain_words


def category(name: str, goods: str, market: str) -> str:
    found = distinctiveness(name, goods, markets=[market])
    assert isinstance(found, Distinctiveness)
    return found.category


@pytest.mark.parametrize(
    ("name", "goods", "market"),
    [
        ("World's Best Goalkeeper", "mugs", "GB"),
        ("Proud to Be a Pastry Chef", "aprons", "US"),
        ("Simply the Best", "socks", "GB"),
        ("Best of the Best", "tyres", "US"),
        ("Frohe Ostern", "Kerzen", "DE"),
        ("Nur das Beste", "Möbel", "DE"),
        ("Tylko najlepsze", "noże", "PL"),
    ],
)
def test_what_any_maker_may_say_is_no_name(name: str, goods: str, market: str) -> None:
    """TMEP 1202.04(b), 1209.03(k); EUTMR Article 7(1)(b)."""
    assert category(name, goods, market) in ("generic", "descriptive")


@pytest.mark.parametrize(
    ("name", "goods"),
    [("World's Best Velmura", "mugs"), ("Proud to Be a Baker", "tyres"), ("Baker", "mugs"), ("Quiet Otter", "mugs")],
)
def test_a_coined_word_and_other_goods_make_no_message(name: str, goods: str) -> None:
    assert message_in(plain_words(name), goods) == ()


@pytest.mark.parametrize(("name", "goods", "market"), [("Seit 1904", "knives", "DE"), ("Since 1877", "tea", "GB")])
def test_a_date_of_founding_is_what_any_house_may_say(name: str, goods: str, market: str) -> None:
    assert category(name, goods, market) in ("generic", "descriptive")


@pytest.mark.parametrize(("name", "market"), [("Morbidissimo", "IT"), ("Blandísimo", "ES")])
def test_a_superlative_says_what_its_adjective_says(name: str, market: str) -> None:
    """Very soft; a dictionary has the adjective alone."""
    assert category(name, "bath towels", market) in ("generic", "descriptive")


@pytest.mark.parametrize(
    ("name", "language"),
    [
        ("Fresh from the Oven", "en"), ("Melts in the Mouth", "en"), ("Frisch vom Hof", "de"),
        ("Nach altem Rezept", "de"), ("Fraîchement Moulu", "fr"), ("Recién Molido", "es"), ("Fresco dal Forno", "it"),
        ("Vers van de Boer", "nl"), ("Lagom Sött", "sv"), ("Świeżo Mielona", "pl"), ("Recém Colhido", "pt"),
        ("Fresh from the Comet", ""), ("Melt in the Moon", ""), ("Frisch vom Mars", ""), ("Nach alter Eule", ""),
        ("Fraîchement Loup", ""), ("Tout Droit Otter", ""), ("Recién Lobo", ""), ("Vive Raposa", ""),
        ("Fresco dal Vulcano", ""), ("Recht van de Maan", ""), ("Lagom Varg", ""), ("Świeżo Sowa", ""),
        ("Recém Raposa", ""), ("Acabado de Luar", ""), ("Descobre Lua", ""), ("Comme chez Corbeau", ""),
    ],
)  # fmt: skip
def test_a_formula_ends_in_a_quality_or_where_goods_come_from(name: str, language: str) -> None:
    assert slogan_in(plain_words(name)) == language
