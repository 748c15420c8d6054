"""Nice classes, and how related two lists of goods are."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from namescreen.goods import CLASSES, Relatedness, classes_for, goods_words, relatedness
from namescreen.outcome import NotChecked

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
    ("text", "number"),
    [
        ("planters", 21),
        ("herb planters", 21),
        ("fresh herbs", 31),
        ("basil plants", 31),
        ("potting soil", 1),
        ("T-shirts", 25),
        ("wine", 33),
        ("craft beer", 32),
        ("computer software", 9),
        ("bakery products", 30),
        ("retail store services", 35),
        ("restaurant services", 43),
        ("legal services", 45),
    ],
)
def test_likely_classes(text: str, number: int) -> None:
    assert number in [guess.number for guess in classes_for(text)][:2]


def test_a_guess_says_what_it_rests_on() -> None:
    (guess,) = classes_for("thyme")[:1]
    assert guess.number in CLASSES
    assert guess.because.startswith("thyme, ")


def test_what_is_not_known_has_no_class() -> None:
    assert classes_for("") == classes_for("zzyzxq") == ()


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

    def test_one_class_alone_is_not_likeness(self) -> None:
        """Directive (EU) 2015/2436, Article 39(7): not similar because of a shared class, nor dissimilar."""
        shared = relatedness("fire extinguishers", "computer software", [9], [9])
        apart = relatedness("flower pots", "flower pots of clay", [21], [19])
        assert isinstance(shared, Relatedness)
        assert isinstance(apart, Relatedness)
        assert 0.0 < shared.score < apart.score

    @pytest.mark.parametrize(("a", "b"), [("", "beer"), ("beer", ""), ("", "")])
    def test_nothing_stated_is_not_checked(self, a: str, b: str) -> None:
        assert isinstance(relatedness(a, b), NotChecked)

    def test_classes_alone_are_enough(self) -> None:
        found = relatedness("", "", [21], [21])
        assert isinstance(found, Relatedness)
        assert found.reasons == ("class 21 on both sides",)
