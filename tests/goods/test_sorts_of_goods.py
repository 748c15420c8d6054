"""Goods beside their sorts, stuffs, parts and uses: what covers what, and what is other goods."""

from __future__ import annotations

import pytest

from namescreen.goods import GRADES, Relatedness, items, likely_classes, relatedness
from namescreen.policy import SAME_GOODS


def test_what_serves_goods_is_not_the_goods() -> None:
    """An accessory is sold with the goods; its own lists may not know it (common practice, no source)."""
    found, same = relatedness("honey dippers", "honey"), relatedness("heather honey", "honey")
    assert isinstance(found, Relatedness)
    assert isinstance(same, Relatedness)
    assert found.grade in ("low", "average")
    assert same.grade == "identical"


@pytest.mark.parametrize(
    ("goods", "texts"),
    [
        ("fruits, frozen or dried; jams", ["fruits", "frozen fruits", "dried fruits", "jams"]),
        ("bread, frozen and smoked fish", ["bread", "frozen fish", "smoked fish"]),
        ("preserved, dried and cooked beans and peas", ["preserved beans", "dried beans", "cooked beans", "peas"]),
        ("prepared", ["prepared"]),
        ("linen; knitted gloves", ["linen", "knitted gloves"]),
    ],
)
def test_a_participle_alone_belongs_to_the_goods_beside_it(goods: str, texts: list[str]) -> None:
    """The wording of offices' lists: what is only said of goods is no goods of its own."""
    assert [item.text for item in items(goods)] == texts


@pytest.mark.parametrize(("a", "b"), [("Obstkonserven", "canned fruit"), ("Fischkonserven", "canned fish")])
def test_a_compound_that_says_how_goods_are_kept_is_the_goods(a: str, b: str) -> None:
    found = relatedness(a, b)
    assert isinstance(found, Relatedness)
    assert found.grade == "identical"


@pytest.mark.parametrize(
    ("a", "b", "most"),
    [("jewellery", "jewellery boxes", "average"), ("tea sets", "tea", "low")],
)
def test_a_thing_for_goods_is_another_thing(a: str, b: str, most: str) -> None:
    """Common practice, no source."""
    found = relatedness(a, b)
    assert isinstance(found, Relatedness)
    assert GRADES.index(found.grade) <= GRADES.index(most)


def test_wine_glasses_are_tableware() -> None:
    """The base form of glasses is glasses, which one wears."""
    found = relatedness("wine glasses", "tumblers")
    assert isinstance(found, Relatedness)
    assert found.score > 0.5


@pytest.mark.parametrize(
    ("one", "other"),
    [("bathroom fittings", "taps"), ("bicycle parts", "pedals"), ("pet accessories", "dog leads")],
)
def test_what_belongs_to_goods_is_covered_by_its_own_term(one: str, other: str) -> None:
    """Terms of goods lists, from memory; what belongs to goods is not the goods."""
    found, goods = relatedness(one, other), relatedness(one, one.split()[0])
    assert isinstance(found, Relatedness)
    assert isinstance(goods, Relatedness)
    assert found.grade == "identical" != goods.grade


@pytest.mark.parametrize(
    ("narrow", "broad"),
    [
        ("benches of steam-bent larch", "benches"),
        ("ledgers bound in calfskin", "ledgers"),
        ("balms free of beeswax", "balms"),
        ("sundials of chased bronze for courtyards", "sundials"),
    ],
)
def test_what_goods_are_made_of_makes_them_no_others(narrow: str, broad: str) -> None:
    for stated in ((), (6,)):
        found = relatedness(narrow, broad, stated, stated)
        assert isinstance(found, Relatedness)
        assert found.grade == "identical"


def test_a_head_of_two_senses_is_taken_in_the_one_that_fits() -> None:
    """A poker for a fireplace is a fire iron; the game is another (WordNet 3.0 has both)."""
    fire, game = relatedness("fireplace pokers", "fire irons"), relatedness("fireplace pokers", "card games")
    assert isinstance(fire, Relatedness)
    assert isinstance(game, Relatedness)
    assert fire.grade == "identical"
    assert game.grade == "none"


@pytest.mark.parametrize(
    ("one", "other"),
    [("pewter tankards", "glass tankards"), ("linen aprons", "aprons of denim"), ("oak stools", "steel stools")],
)
def test_what_goods_are_made_of_makes_no_other_goods(one: str, other: str) -> None:
    """Goods of one purpose for the same buyers; common practice, no source."""
    found = relatedness(one, other)
    assert isinstance(found, Relatedness)
    assert found.grade == "high"


def test_a_name_of_its_own_is_told_apart_by_its_stuff() -> None:
    found = relatedness("paper clips", "bone clips")
    assert isinstance(found, Relatedness)
    assert found.score < 0.8


@pytest.mark.parametrize("goods", ["waistcoats for spaniels", "dog cardigans", "scarves for cats"])
def test_clothing_for_animals_is_no_clothing(goods: str) -> None:
    """Nice Classification, heading of class 18: collars, leashes and clothing for animals."""
    assert likely_classes(goods)[0] == 18
    beside_clothing, beside_others = relatedness(goods, "clothing"), relatedness(goods, "dog coats")
    assert isinstance(beside_clothing, Relatedness)
    assert isinstance(beside_others, Relatedness)
    assert beside_clothing.score < 0.5 < beside_others.score


@pytest.mark.parametrize(
    ("goods", "number"), [("bowls for cats", 21), ("boots for horse riding", 25), ("hats for children", 25)]
)
def test_other_goods_for_animals_keep_their_class(goods: str, number: int) -> None:
    assert likely_classes(goods)[0] == number


@pytest.mark.parametrize(
    ("form", "sort"),
    [
        ("block cheeses", "goat's cheese"), ("loose teas", "fruit tea"), ("bar soaps", "soap for cleaning saddles"),
        ("stick deodorants", "deodorants for men"), ("powder paints", "paints for children"),
    ],
)  # fmt: skip
def test_a_stuff_in_some_form_covers_its_sorts(form: str, sort: str) -> None:
    """What is both is identical, and the form makes goods no others (Meric, T-133/05, from memory)."""
    found = relatedness(form, sort)
    assert isinstance(found, Relatedness)
    assert found.score >= SAME_GOODS + 0.3
    assert not found.together


@pytest.mark.parametrize(("one", "other"), [("bar stools", "piano stools"), ("tablet computers", "laptop computers")])
def test_a_word_of_form_before_a_thing_is_no_form(one: str, other: str) -> None:
    found = relatedness(one, other)
    assert isinstance(found, Relatedness)
    assert found.score < 0.9


@pytest.mark.parametrize(
    ("goods", "used_with"),
    [("honey", "honey dippers"), ("coffee", "coffee filters"), ("wine", "wine glasses"), ("butter", "butter dishes"),
     ("shampoos", "hair brushes"), ("yarn", "knitting needles")],
)  # fmt: skip
def test_complementary_goods_are_told_as_sold_together(goods: str, used_with: str) -> None:
    """Canon, C-39/97: complementary goods may be similar; the pairs are common practice, no source."""
    found = relatedness(goods, used_with)
    assert isinstance(found, Relatedness)
    assert found.together


@pytest.mark.parametrize(
    ("one", "other"),
    [("tomatoes", "tomato sauce"), ("honey", "insurance"), ("cheese", "goat's cheese"), ("tea", "tea")],
)
def test_stuffs_sorts_and_other_goods_are_not_sold_together(one: str, other: str) -> None:
    found = relatedness(one, other)
    assert isinstance(found, Relatedness)
    assert not found.together


@pytest.mark.parametrize(
    ("one", "other"),
    [("laundry soaps", "toilet soaps"), ("bicycle helmets", "motorcycle helmets"), ("bread knives", "table knives")],
)
def test_sorts_of_one_thing_that_are_listed_for_two_markets_are_still_that_thing(one: str, other: str) -> None:
    """As related as sorts that no list holds; common practice, no source."""
    found = relatedness(one, other)
    assert isinstance(found, Relatedness)
    assert found.grade in ("high", "identical")


@pytest.mark.parametrize(("one", "other"), [("wine glasses", "reading glasses"), ("board games", "video games")])
def test_sorts_of_other_classes_or_told_apart_in_one_market_are_less_related(one: str, other: str) -> None:
    found = relatedness(one, other)
    assert isinstance(found, Relatedness)
    assert found.grade not in ("high", "identical")


@pytest.mark.parametrize(
    ("narrow", "broad"),  # the last word has a sense that is no goods (a headland, people, a place)
    [("rain capes", "clothing"), ("capes of cotton", "outerwear"), ("loafers", "footwear"), ("jerseys", "clothing")],
)
def test_goods_are_taken_as_things_that_may_be_sold(narrow: str, broad: str) -> None:
    assert relatedness(narrow, broad).score >= 0.6  # type: ignore[union-attr]
