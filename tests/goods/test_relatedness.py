"""The words of goods, and how related two lists of goods are."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from namescreen.goods import GRADES, Relatedness, goods_words, items, likely_classes, relatedness
from namescreen.goods.labels import said_alike
from namescreen.goods.phrases import base_form
from namescreen.outcome import NotChecked
from namescreen.policy import SAME_GOODS

GOODS = (
    "self-watering herb planters",
    "flower pots of clay",
    "retail store services featuring garden pots",
    "computer software",
    "beer and ale",
    "garden tools, namely trowels",
    "restaurant services",
    "clothing; shoes",
    "insurance",
    "nothing that any list knows: zzyzxq",
    "",
)
goods = st.sampled_from(GOODS)
classes = st.lists(st.integers(1, 45), max_size=3)


@pytest.mark.parametrize(
    ("text", "heads"),
    [
        ("hydraulic hose", {"hose"}),
        ("bicycle racks for carrying bikes", {"rack", "bicycle rack"}),
        ("retail store services featuring herbs", {"store", "herb"}),
        ("women's magazine", {"magazine"}),
        ("soft drinks", {"drink", "soft drink"}),
    ],
)
def test_heads_of_a_goods_text(text: str, heads: set[str]) -> None:
    assert {one.word for one in goods_words(text) if one.head} == heads


@pytest.mark.parametrize(
    ("text", "head", "modifiers", "dealing"),
    [
        ("self-watering planters of glazed stoneware for kitchen herbs", "planter", ("watering",), ""),
        ("tea blends", "tea", (), ""),
        ("sets of cutlery", "cutlery", (), ""),
        ("kite lines", "line", ("kite",), ""),
        ("musical instruments", "instrument", ("musical",), ""),
        ("cafe services", "cafe", (), ""),
        ("retail of tea", "tea", (), "retail"),
        ("online retail services featuring herbs", "herb", (), "retail"),
        ("repair of bicycles", "bicycle", (), "repair"),
        ("software as a service", "software", (), "service"),
        ("fine goods of steel", "steel", ("fine",), ""),
    ],
)
def test_an_item_says_what_it_is(text: str, head: str, modifiers: tuple[str, ...], dealing: str) -> None:
    (item,) = items(text)
    assert (item.text, item.head, item.modifiers, item.dealing) == (text, head, modifiers, dealing)


@pytest.mark.parametrize(
    ("plural", "singular"),
    [("kites", "kite"), ("shoes", "shoe"), ("glasses", "glasses"), ("dresses", "dress"), ("apps", "app"),
     ("lenses", "lens"), ("scissors", "scissors"), ("knives", "knife")],
)  # fmt: skip
def test_base_forms_of_goods(plural: str, singular: str) -> None:
    assert base_form(plural) == singular


class TestRelatedness:
    @settings(deadline=None)
    @given(goods, goods, classes, classes)
    def test_symmetric_and_within_range(self, a: str, b: str, in_a: list[int], in_b: list[int]) -> None:
        found = relatedness(a, b, in_a, in_b)
        assert found == relatedness(b, a, in_b, in_a)
        if isinstance(found, Relatedness):
            assert 0.0 <= found.score <= 1.0
            assert bool(found.score) == bool(found.reasons)

    @given(goods.filter(bool))
    def test_the_same_goods_are_fully_related(self, text: str) -> None:
        found = relatedness(text, text)
        assert isinstance(found, Relatedness)
        assert found.score == 1.0

    def test_closer_goods_score_higher(self) -> None:
        """Identical goods, then near ones, a shop for them, a class often searched with, unrelated ones."""
        others = ("herb planters", "flower pots", "watering apparatus", "motor oil")
        scores = []
        for other in others:
            found = relatedness("herb planters", other)
            assert isinstance(found, Relatedness)
            scores.append(found.score)
        assert scores == sorted(scores, reverse=True)
        assert scores[0] == 1.0
        assert scores[-1] == 0.0

    def test_the_wording_of_both_sides_is_told(self) -> None:
        found = relatedness("hand-made kites; soap", "toys for children", [28], [28])
        assert isinstance(found, Relatedness)
        assert found.reasons[0] == '"hand-made kites" and "toys for children"'
        assert found.grade == "identical"

    def test_one_class_alone_is_not_likeness(self) -> None:
        """Directive (EU) 2015/2436, Article 39(7): not similar because of a shared class, nor dissimilar."""
        shared = relatedness("fire extinguishers", "computer software", [9], [9])
        apart = relatedness("flower pots", "flower pots of clay", [21], [19])
        assert isinstance(shared, Relatedness)
        assert isinstance(apart, Relatedness)
        assert shared.score == 0.0 < apart.score

    @pytest.mark.parametrize(("a", "b"), [("", "beer"), ("beer", ""), ("", "")])
    def test_nothing_stated_is_not_checked(self, a: str, b: str) -> None:
        assert isinstance(relatedness(a, b), NotChecked)

    @pytest.mark.parametrize("number", range(1, 46))
    def test_classes_alone_are_enough_and_make_no_knockout(self, number: int) -> None:
        found = relatedness("", "", [number], [number])
        assert isinstance(found, Relatedness)
        assert found.reasons == ("by class alone, which says little", f"both probably in class {number}")
        assert 0.25 <= found.score < SAME_GOODS


ITEMS = st.lists(st.sampled_from([item for item in GOODS if item] + [
    "bicycle bags", "carry-on bags", "dry bags", "bags adapted for bicycles", "tyres", "wine", "bicycle tail lights",
    "clip-on lights", "tea", "retail of tea", "app for budgets", "insurance", "candles", "wax",
]), min_size=1, max_size=4)  # fmt: skip


@given(ITEMS, ITEMS, ITEMS)
@settings(max_examples=60, deadline=None)
def test_an_added_item_never_lowers_it(ours: list[str], theirs: list[str], more: list[str]) -> None:
    """The closest two items decide (each item of a list is claimed by itself)."""
    fewer, all_of_them = (relatedness("; ".join(ours), "; ".join(listed)) for listed in (theirs, theirs + more))
    assert isinstance(fewer, Relatedness)
    assert isinstance(all_of_them, Relatedness)
    assert all_of_them.score >= fewer.score


@pytest.mark.parametrize(
    ("text", "head"),
    [
        ("carry-on bags", "bag"), ("clip-on lights for bicycles", "light"), ("bags adapted for bicycles", "bag"),
        ("ready-to-wear clothing", "clothing"), ("stands designed for guitars", "stand"),
    ],
)  # fmt: skip
def test_what_goods_are_stands_before_what_they_are_for(text: str, head: str) -> None:
    assert [item.head for item in items(text)] == [head]


@pytest.mark.parametrize(
    ("a", "b", "grade"),
    [
        ("bags for bicycles", "bicycle panniers", "identical"), ("pizza", "plates", "none"),
        ("soap bars", "soap", "identical"), ("soap bars", "Seifen", "identical"),
        ("skin creams", "hand creams", "identical"), ("Handcremes", "hand creams", "identical"),
        ("balms other than for medical purposes", "hand balms", "identical"),
        ("wooden toys", "toys of wood", "identical"), ("woollen hats", "hats of wool", "identical"),
        ("building blocks", "toy building blocks of wood", "identical"), ("cars", "toy cars", "none"),
        ("Löffel aus Holz", "wooden spoons", "identical"),
        ("crèmes pour les mains", "hand creams", "identical"), ("soap bars", "bars; cocktail lounges", "none"),
    ],
)  # fmt: skip
def test_portions_kinds_and_what_goods_are_not(a: str, b: str, grade: str) -> None:
    """A broader term covers the narrower (Meric, T-133/05, from memory); a bar of soap is soap, no place to drink;
    toys are unlike what they show (practice of the EUIPO, from memory)."""
    found = relatedness(a, b)
    assert isinstance(found, Relatedness)
    assert found.grade == grade


@pytest.mark.parametrize(
    ("one", "other"),
    [("coffee grinders", "coffee mills"), ("hand-operated coffee grinders", "hand-operated coffee mills")],
)
def test_the_same_goods_by_another_word_are_the_same(one: str, other: str) -> None:
    """A pair of synonyms of WordNet 3.0 (mill, grinder), the sense chosen by what stands before both."""
    found = relatedness(one, other)
    assert isinstance(found, Relatedness)
    assert found.grade == "identical"


def test_stating_classes_does_not_tell_covered_goods_apart() -> None:
    """Classes are for administration (15 USC 1112; EUTMR Article 33(7))."""
    goods = "hand-operated coffee grinders", "electric coffee grinders"
    with_classes, without = relatedness(*goods, (21,), (7,)), relatedness(*goods)
    assert isinstance(with_classes, Relatedness)
    assert isinstance(without, Relatedness)
    assert with_classes.score >= without.score


@pytest.mark.parametrize(
    ("goods", "for_all"),
    [
        ("bags, satchels adapted for horses", ["horse", "horse"]),
        ("hats; caps, all for babies", ["baby", "baby"]),
        ("tea; filters adapted for cafes", ["", "cafe"]),
        ("filters for kettles, lids adapted for jars", ["kettle", "jar"]),
    ],
)
def test_a_last_qualifier_holds_for_what_it_ends(goods: str, for_all: list[str]) -> None:
    assert ["".join(item.rest) for item in items(goods)] == for_all


def test_what_goods_are_besides_makes_them_no_others() -> None:
    """The wording of offices: aprons being clothing."""
    found = relatedness("aprons being clothing", "aprons")
    assert isinstance(found, Relatedness)
    assert found.grade == "identical"


def test_a_kind_for_one_use_covers_what_is_for_that_use() -> None:
    found = relatedness("hiking clothing", "hiking hats")
    other = relatedness("hiking clothing", "bathing caps")
    assert isinstance(found, Relatedness)
    assert isinstance(other, Relatedness)
    assert found.grade == "identical" != other.grade


@given(ITEMS, ITEMS, st.lists(st.integers(1, 45), max_size=3), st.integers(1, 45))
@settings(max_examples=40, deadline=None)
def test_stating_classes_lowers_nothing_for_a_mark_without_them(
    ours: list[str], theirs: list[str], stated: list[int], further: int
) -> None:
    """A list of marks need not state classes: what we claim tells nothing of them."""
    plain = relatedness("; ".join(ours), "; ".join(theirs))
    told = relatedness("; ".join(ours), "; ".join(theirs), [*stated, further])
    assert isinstance(plain, Relatedness)
    assert isinstance(told, Relatedness)
    assert told.score >= plain.score


def test_the_same_goods_stay_the_same_with_classes_on_one_side() -> None:
    found = relatedness("oilcloth aprons", "oilcloth aprons", [16, 21])
    assert isinstance(found, Relatedness)
    assert found.grade == "identical"


def test_bags_and_rolls_of_all_uses_are_of_one_market() -> None:
    for goods in ("knife rolls", "saddlebags", "satchels"):
        found = relatedness(goods, "camera bags")
        assert isinstance(found, Relatedness)
        assert found.grade in ("average", "high")


@pytest.mark.parametrize(
    ("narrow", "broad"),
    [
        ("bicycle baskets", "baskets for bikes"),  # only worded otherwise
        ("sofa cushions", "cushions for couches"),
        ("canary cages", "cages for pets"),
        ("horse brushes", "brushes for animals"),
        ("cotton towels for dogs", "towels for pets"),
    ],
)
def test_goods_are_covered_by_a_broader_sort_in_any_wording(narrow: str, broad: str) -> None:
    """Goods that a broader term covers are identical (Meric, T-133/05, from memory)."""
    for one, other in ((narrow, broad), (broad, narrow)):
        found = relatedness(one, other)
        assert isinstance(found, Relatedness)
        assert found.score >= 0.9


@pytest.mark.parametrize(("one", "other"), [("canary cages", "cages for dogs"), ("horse brushes", "dog brushes")])
def test_goods_of_two_sorts_do_not_cover_each_other(one: str, other: str) -> None:
    found = relatedness(one, other)
    assert isinstance(found, Relatedness)
    assert found.score < 0.9


@given(goods.filter(bool), goods.filter(bool))
def test_how_alike_labels_speak_is_symmetric_and_within_range(a: str, b: str) -> None:
    (one, *_), (other, *_) = items(a), items(b)
    assert said_alike(one, other) == pytest.approx(said_alike(other, one))
    assert 0.0 <= said_alike(one, other) <= 1.0


@pytest.mark.parametrize(
    ("goods", "near", "far"),
    [("honey", "mead", "guitars"), ("candles", "incense", "cheese"), ("guitars", "plectrums", "candles")],
)
def test_labels_say_the_same_of_near_goods(goods: str, near: str, far: str) -> None:
    """Common practice, no source: what is made of one thing or used with it shares words."""
    (one,), (other,), (third,) = items(goods), items(near), items(far)
    assert said_alike(one, one) == 1.0 > said_alike(one, other) > said_alike(one, third)


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
