"""Words for goods of languages without a dictionary here, and of English in some countries; places that are known for
goods, and small ones. The names are ours, common practice, no source."""

from __future__ import annotations

import pytest

from namescreen.goods.places import place_of
from namescreen.goods.shop_words import OF_SHOPS
from namescreen.lexicon import languages
from tests.goods.test_understood import BARRED, category


@pytest.mark.parametrize(
    ("name", "goods", "market"),
    [
        ("Uachtar", "cream", "EU"),
        ("Arán Donn", "bread", "IE"),
        ("Tinapay", "bread", "US"),
        ("Kejk", "cakes", "EU"),
        ("Cwrw", "beer", "GB"),
    ],
)
def test_the_name_of_the_goods_in_a_language_of_the_market(name: str, goods: str, market: str) -> None:
    """Irish and Maltese are official in the Union (EUTMR Article 7(2)); the US translates (TMEP 1209.03(g))."""
    assert category(name, goods, market) in BARRED


@pytest.mark.parametrize(
    ("name", "goods", "market"),
    [("Uachtar", "hammers", "EU"), ("Tinapay", "bread", "DE"), ("Cwrw", "beer", "AU")],
)
def test_other_goods_and_other_markets(name: str, goods: str, market: str) -> None:
    assert category(name, goods, market) not in BARRED


def test_such_languages_have_no_dictionary() -> None:
    """They never speak for a name: what they lack is not assessed."""
    assert OF_SHOPS.isdisjoint(languages())


@pytest.mark.parametrize(
    ("name", "goods", "barred"),
    [("Honiton", "lace collars", True), ("Swanage", "cheese", True), ("Swanage", "pencils", False)],
)
def test_small_places_tell_where_food_comes_from_or_what_they_are_known_for(
    name: str, goods: str, barred: bool
) -> None:
    """Windsurfing Chiemsee, C-108/97: what buyers connect with the place, or may come to."""
    assert place_of(name.lower()) is not None
    assert (category(name, goods, "GB") in BARRED) is barred
