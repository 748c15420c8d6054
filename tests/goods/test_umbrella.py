"""Terms at large hold the goods under them, alike in every language: Meric, T-133/05; retail of the goods themselves:
Oakley, T-116/06; from memory. The pairs are our own."""

from __future__ import annotations

import pytest

from namescreen.goods import GRADES, Relatedness, relatedness
from namescreen.goods.left_out import as_stated


def _score(one: str, other: str) -> float:
    found = relatedness(one, other)
    assert isinstance(found, Relatedness)
    return found.score


@pytest.mark.parametrize(
    ("goods", "terms"),
    [
        ("beard oil", ("Cosmetics", "Non-medicated toilet preparations", "Mittel zur Körper- und Schönheitspflege",
                       "Produits de toilette non médicamenteux", "Produits cosmétiques", "Bartpflegemittel")),
        ("shaving brushes", ("Toilet utensils", "Geräte für die Körper- und Schönheitspflege",
                             "Ustensiles de toilette")),
        ("stoneware mugs", ("Household or kitchen utensils and containers", "table wares", "Küchengeräte")),
        ("knitted scarves", ("Bekleidungsstücke", "Vêtements", "Prendas de vestir", "Abbigliamento", "Odzież")),
        ("gin", ("Alcoholic beverages", "Alkoholische Getränke", "Boissons alcoolisées")),
        ("rugs", ("Floor coverings", "Bodenbeläge", "Revêtements de sols")),
    ],
)  # fmt: skip
def test_a_term_at_large_holds_its_goods_in_every_language(goods: str, terms: tuple[str, ...]) -> None:
    assert all(_score(goods, term) >= 0.9 for term in terms)


@pytest.mark.parametrize(
    ("goods", "term"),
    [("laundry detergents", "Cosmetics"), ("shaving brushes", "Kitchen utensils"), ("jewellery boxes", "Jewellery"),
     ("leather boots", "Beauty care preparations"), ("nail varnish", "Cleaning preparations")],
)  # fmt: skip
def test_it_holds_nothing_else_of_its_class(goods: str, term: str) -> None:
    assert _score(goods, term) < 0.9


@pytest.mark.parametrize(
    "retail", ["retail of soap", "Vente au détail de savons", "Einzelhandelsdienstleistungen mit Seifen"]
)
def test_the_sale_of_goods_is_similar_to_them_in_every_language(retail: str) -> None:
    found = relatedness("soap", retail)
    assert isinstance(found, Relatedness)
    assert (found.score >= 0.5, found.grade) == (True, GRADES[2])


def test_what_is_near_and_what_only_serves_the_same_purpose() -> None:
    """Common practice, no source."""
    assert _score("beeswax wraps", "cling film") < 0.7
    assert _score("beeswax wraps", "food wraps") >= 0.9
    assert _score("lanterns for candles", "candles") > _score("lanterns for candles", "light bulbs")
    assert _score("boot scrapers", "doormats") > 0.3


@pytest.mark.parametrize(
    ("text", "language", "kept"),
    [
        ("candles, other than tea lights", "en", "candles"), ("dalles non métalliques", "fr", "dalles"),
        ("boissons non alcoolisées", "fr", "boissons non alcoolisées"), ("Möbel, ausgenommen Betten", "de", "Möbel"),
    ],
)  # fmt: skip
def test_what_a_list_leaves_out_by_language(text: str, language: str, kept: str) -> None:
    assert as_stated(text, language) == kept
