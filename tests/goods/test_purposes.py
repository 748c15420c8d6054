"""What goods are for, who uses them and when, what set phrases promise, and what goods as stated rule out: TMEP
1209.03(i) and (g), 1203.02, EUTMR Article 7(1)(b), (c) and (g), from memory. The names are our own, written before the
first run."""

from __future__ import annotations

import pytest

from namescreen.goods import Distinctiveness, distinctiveness, protected_signs
from namescreen.goods.initials import initials_of
from namescreen.goods.word_lists import glossary, said_of_goods

BARRED = ("generic", "descriptive")


def _category(name: str, goods: str, market: str) -> str:
    found = distinctiveness(name, goods, markets=(market,))
    return found.category if isinstance(found, Distinctiveness) else "not checked"


@pytest.mark.parametrize(
    ("name", "goods", "market"),
    [
        ("After-Walk", "towels for dogs", "GB"), ("Vendangeur", "sécateurs à raisin", "FR"),
        ("Barista", "espresso cups", "IT"),
        ("Bedtime", "children's pyjamas", "GB"), ("Picnic Time", "hampers", "GB"),
        ("Night Rider", "bicycle lamps", "GB"),
        ("Dog Walker", "treat pouches", "GB"), ("Imker", "Smoker für Bienen", "DE"), ("Bricoleur", "tournevis", "FR"),
        ("Randonneur", "sacs à dos", "FR"), ("Wandelaar", "wandelstokken", "NL"), ("First Steps", "baby shoes", "GB"),
        ("Brautpaar", "Tortenfiguren", "DE"), ("Da Viaggio", "borse da toilette", "IT"),
        ("Poolside", "sun loungers", "US"),
    ],
)  # fmt: skip
def test_who_goods_are_for_and_when_or_where_describes_them(name: str, goods: str, market: str) -> None:
    assert _category(name, goods, market) in BARRED


@pytest.mark.parametrize(
    ("name", "goods", "market"),
    [
        ("Beekeeper", "leather wallets", "US"), ("Pescador", "velas perfumadas", "ES"), ("Ogrodnik", "gitary", "PL"),
        ("Lighthouse Keeper", "jam", "GB"), ("Locksmith's Daughter", "tea", "GB"), ("Falconer", "kitchen knives", "GB"),
    ],
)  # fmt: skip
def test_users_of_other_goods_say_nothing(name: str, goods: str, market: str) -> None:
    assert _category(name, goods, market) not in BARRED


@pytest.mark.parametrize(
    ("name", "goods"),
    [("Stays Put", "non-slip bath mats"), ("Peel & Stick", "wall hooks"), ("Simply Built to Last", "steel tool boxes"),
     ("Grow Your Own", "seed kits"), ("Made Simple", "flour")],
)  # fmt: skip
def test_set_phrases_of_use_and_promise_describe_any_goods(name: str, goods: str) -> None:
    assert _category(name, goods, "GB") in BARRED


@pytest.mark.parametrize(
    ("name", "goods", "market"),
    [
        ("Biohof Lindental", "eggs from conventional farming", "DE"),
        ("Pure Badger", "shaving brushes of synthetic hair", "GB"),
        ("Real Boar", "hairbrushes with nylon bristles", "US"), ("Lambswool Lane", "acrylic jumpers", "GB"),
        ("Feather Nest", "polyester duvets", "GB"), ("Echt Leder", "Gürtel aus Kunstleder", "DE"),
        ("Zero Waste", "single-use plastic cutlery", "GB"),
        ("Calfskin & Co", "dog leads of rope, no leather", "GB"), ("Pure Leather", "belts without leather", "DE"),
    ],
)  # fmt: skip
def test_what_goods_as_stated_rule_out_misleads(name: str, goods: str, market: str) -> None:
    signs = protected_signs(name, goods, markets=(market,))
    assert any(one.serious and one.kind in ("misleading", "material") for one in signs)


@pytest.mark.parametrize(
    ("name", "goods"),
    [("Honey Badger", "shaving brushes of synthetic hair"), ("Velvet Otter", "polyester scarves"),
     ("Badger's Parlour", "shaving soap"), ("Ecolumbra", "wool yarn")],
)  # fmt: skip
def test_images_promise_nothing(name: str, goods: str) -> None:
    assert not any(one.serious for one in protected_signs(name, goods, markets=("GB",)))


@pytest.mark.parametrize(
    ("name", "goods", "barred"),
    [
        ("Rustless", "garden tools", True), ("Rustless", "curtains", False), ("Lintless", "tea towels", True),
        ("Lintless", "axes", False), ("Happy Heart", "wooden toys", False), ("Hippo", "boot jacks", False),
        ("Farm to Table", "vegetables", True), ("Pure Nature", "wool yarn", True),
    ],
)  # fmt: skip
def test_what_only_other_goods_may_have_says_nothing_and_a_set_promise_describes(
    name: str, goods: str, barred: bool
) -> None:
    """Common practice, no source."""
    assert (_category(name, goods, "GB") in BARRED) == barred


@pytest.mark.parametrize(
    ("name", "goods", "market"),
    [("Van Eigen Bodem", "groenten", "NL"), ("Simplement Bon", "biscuits", "FR"), ("Wie Früher", "Brot", "DE"),
     ("Come Una Volta", "pasta", "IT"), ("Z Miłością", "pierniki", "PL")],
)  # fmt: skip
def test_set_promises_in_the_buyers_language(name: str, goods: str, market: str) -> None:
    """EUTMR Article 7(1)(b), from memory."""
    assert _category(name, goods, market) in BARRED


def test_initials_of_what_goods_lack_describe_them() -> None:
    """TMEP 1209.03(h), from memory."""
    assert initials_of("gfdf", "cakes without gluten or dairy").why == 'the initials of "gluten free dairy free"'
    assert initials_of("hpc", "hand poured candles").is_told
    assert not initials_of("qvx", "hand poured candles").is_told


def test_lists_of_words_are_read_as_they_are_written() -> None:
    assert glossary("und=and der= frei=free") == {"und": "and", "der": "", "frei": "free"}
    assert said_of_goods("a b\n  c_d\n: x, y z\na\n: w") == {
        "a": {"x", "y z", "w"}, "b": {"x", "y z"}, "c d": {"x", "y z"},
    }  # fmt: skip
