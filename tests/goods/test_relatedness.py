"""The words of goods, and how related two lists of goods are."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from namescreen.goods import Relatedness, goods_words, items, relatedness
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
