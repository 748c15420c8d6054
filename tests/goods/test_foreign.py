"""What a word of a name means in the languages of its buyers, and when it keeps its English reading.

The words are our own, the expectations written down before the first run, from general dictionaries and memory."""

from __future__ import annotations

import pytest

from namescreen.goods import Distinctiveness, distinctiveness
from namescreen.goods.foreign import meanings
from namescreen.goods.qualities import is_quality

BALM = "hand balms; hand creams; soap bars"


@pytest.mark.parametrize(
    ("word", "language"),
    [("velvet", "de"), ("ash", "fr"), ("hands", "de"), ("simply", "fr"), ("rose", "es"), ("rose", "de"),
     ("solingen", "de"), ("harbour", "es"), ("lantern", "es"), ("winter", "de"), ("cross", "fr"), ("copper", "nl"),
     ("grasse", "es")],
)  # fmt: skip
def test_a_word_keeps_its_english_reading(word: str, language: str) -> None:
    """The ordinary buyer does not stop and translate it (TMEP 1207.01(b)(vi)(A)); names and forms are no meaning."""
    assert not meanings(word, BALM, language, True)


@pytest.mark.parametrize(
    ("word", "language", "english"),
    [("Haut", "de", "skin"), ("Peau", "fr", "skin"), ("main", "fr", "hand"),
     ("mano", "it", "hand"), ("zarte", "de", "tender"), ("Bienenwachs", "de", "beeswax"), ("crema", "es", "cream"),
     ("Kronometer", "sv", "chronometer")],
)  # fmt: skip
def test_a_word_of_the_language_is_translated(word: str, language: str, english: str) -> None:
    assert [one.english for one in meanings(word, BALM, language, True).values()] == [english]


def test_an_english_reading_is_told_without_a_language() -> None:
    found = distinctiveness("Velvet Armour", BALM, languages=["de", "fr"], markets=["US", "DE"])
    assert isinstance(found, Distinctiveness)
    assert not any("means" in reason for reason in found.reasons)
    assert 'velvet": no tie' in found.reasons[0]


@pytest.mark.parametrize("word", ["soft", "tender", "silky", "delicate", "velvety", "fluffy", "supple"])
def test_what_is_felt_or_seen_is_a_quality(word: str) -> None:
    assert is_quality(word)


@pytest.mark.parametrize("word", ["velvet", "alien", "silent", "otter", "lantern", "golden", "epic"])
def test_pictures_are_no_qualities(word: str) -> None:
    assert not is_quality(word)


@pytest.mark.parametrize(
    ("name", "goods", "market"),
    [
        ("Zartes Haar", "shampoo; hair conditioner", "DE"),
        ("Feine Bürste", "hair brushes", "DE"),
        ("Geschmeidige Haut", "skin cream", "DE"),
        ("Peau Lisse", "body lotion", "FR"),
        ("Cire Naturelle", "candles", "FR"),
        ("Piel Suave", "body lotion", "ES"),
        ("Aceite Puro", "olive oil; cooking oil", "ES"),
        ("Lana Morbida", "knitted scarves", "IT"),
        ("Zachte Wol", "knitting yarn", "NL"),
        ("Bijenwas", "furniture polish; wood wax", "NL"),
        ("Mjuk Hud", "skin cream", "SE"),
        ("Äkta Läder", "wallets; leather belts", "SE"),
        ("Bienenwachs", BALM, "DE"),
        ("Sanfte Pflege", BALM, "DE"),
    ],
)
def test_a_quality_or_a_material_describes_in_any_language(name: str, goods: str, market: str) -> None:
    """A name that is a quality and what has it, or a material of the goods, describes (EUTMR Article 7(1)(c), 7(2))."""
    found = distinctiveness(name, goods, markets=[market])
    assert isinstance(found, Distinctiveness)
    assert found.category in ("generic", "descriptive")


@pytest.mark.parametrize(
    ("name", "goods", "market"),
    [
        ("Roter Fuchs", "candles", "DE"),
        ("Stille Brücke", "skin cream", "DE"),
        ("Nordwind", "chocolate", "DE"),
        ("Loup Bleu", "soap", "FR"),
        ("Petit Phare", "herbal tea", "FR"),
        ("Ancre Dorée", "hair brushes", "FR"),
        ("Luna Verde", "wallets", "ES"),
        ("Tres Puentes", "body lotion", "ES"),
        ("Volpe Gentile", "knitted scarves", "IT"),
        ("Gouden Anker", "skin cream", "NL"),
        ("Zilveren Maan", "shampoo", "NL"),
        ("Blå Räv", "furniture polish", "SE"),
        ("Tyst Skog", "wallets", "SE"),
        ("Velvet Lantern", BALM, "DE"),
    ],
)
def test_a_picture_of_another_language_does_not(name: str, goods: str, market: str) -> None:
    found = distinctiveness(name, goods, markets=[market])
    assert isinstance(found, Distinctiveness)
    assert found.category not in ("generic", "descriptive")


def test_the_laws_of_the_markets_may_differ() -> None:
    """All languages of the Union (EUTMR Article 7(2)) and foreign equivalents (TMEP 1209.03(g)); in the United Kingdom
    only what buyers understand (Matratzen Concord, C-421/04, from memory)."""
    found = distinctiveness("Zarte Hände", BALM, markets=["US", "GB", "DE"])
    assert isinstance(found, Distinctiveness)
    by_market = {one.market: one.category for one in found.markets}
    assert by_market["US"] == by_market["EU"] == found.category == "descriptive"
    assert by_market["GB"] not in ("generic", "descriptive")
    assert any(law.startswith("EU: descriptive in German; ") for law in found.laws)
    assert any("where buyers understand it" in law for law in found.laws)


def test_a_language_that_buyers_speak_counts_in_every_market() -> None:
    found = distinctiveness("Zarte Hände", BALM, languages=["de"], markets=["GB"])
    assert isinstance(found, Distinctiveness)
    assert found.category == "descriptive"


@pytest.mark.parametrize("name", ["Bienenwachs", "Beeswax", "Honig"])
def test_the_materials_of_the_product_are_read(name: str) -> None:
    product = "a small-batch beeswax and honey balm for dry hands"
    alone = distinctiveness(name, "hand balms", markets=["DE"])
    told = distinctiveness(name, "hand balms", markets=["DE"], product=product)
    assert isinstance(alone, Distinctiveness)
    assert isinstance(told, Distinctiveness)
    assert told.score < alone.score
    assert told.category == "descriptive"
