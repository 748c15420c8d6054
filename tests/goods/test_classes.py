"""The Nice classes of goods in plain words."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from namescreen.errors import InputError
from namescreen.goods import CLASSES, EXPLAINED, classes, likely_classes, list_of_classes
from tests.conftest import Run

words = st.sampled_from(
    ("planters", "of", "glazed", "clay", "herb", "seeds", "retail", "services", "for", "app", ",", "and", ";", "zq")
)


def numbers(goods: str, limit: int = 3) -> list[int]:
    return [guess.number for guess in classes(goods, limit=limit)]


@pytest.mark.parametrize(
    ("goods", "number"),
    [
        ("planters", 21), ("herb planters", 21), ("fresh herbs", 31), ("basil plants", 31), ("potting soil", 1),
        ("T-shirts", 25), ("wine", 33), ("craft beer", 32), ("computer software", 9), ("bakery products", 30),
        ("retail store services", 35), ("restaurant services", 43), ("legal services", 45),
        ("hand-poured soya candles", 4), ("leather dog collars", 18), ("beeswax food wraps", 21),
        ("knitting yarn dyed by hand", 23), ("enamel pins", 14), ("board games", 28), ("sourdough bread", 30),
        ("mobile app for gardeners", 9), ("wooden shelves", 20), ("yoga mats", 27), ("bicycle bells", 12),
        ("kombucha", 30), ("sunglasses", 10),
    ],
)  # fmt: skip
def test_goods_of_small_makers(goods: str, number: int) -> None:
    """Where the note of the class, its heading or the alphabetical list (kombucha) places them; common practice, no
    source, for the rest."""
    assert number in numbers(goods)


def test_the_whole_is_heard_and_not_only_its_words() -> None:
    assert numbers("retail services in relation to soap")[0] == 35
    assert numbers("repair of bicycles")[0] == 37
    assert numbers("clay")[0] != numbers("clay vases")[0] == 21


@pytest.mark.parametrize(
    ("goods", "number"),
    [
        ("downloadable knitting patterns", 9), ("downloadable music", 9), ("downloadable recipes", 9),
        ("knitting patterns", 16), ("saddle bags for bicycles", 12), ("bottle cages for bicycles", 12),
        ("baskets for bicycles", 12), ("seat covers for cars", 12), ("cases for guitars", 15),
        ("cases for smartphones", 9), ("bags for golf clubs", 28), ("bags for umbrellas", 18),
    ],
)  # fmt: skip
def test_what_is_downloaded_or_adapted_for_one_thing(goods: str, number: int) -> None:
    """Notes to classes 9, 12, 15 and 28: data are in 9, and what is adapted for one thing goes with it."""
    assert numbers(goods)[0] == number


@pytest.mark.parametrize(
    ("goods", "number"),
    [
        ("pickled onions", 29), ("sun-dried tomatoes", 29), ("frozen peas", 29), ("fermented cabbage", 29),
        ("candied fruit", 29), ("salted peanuts", 29), ("fruits, preserved, frozen, dried and cooked", 29),
        ("fresh onions", 31), ("tomato plants", 31), ("dried flowers", 31), ("puffed rice", 30), ("roasted coffee", 30),
    ],
)  # fmt: skip
def test_a_preparation_decides_for_fruits_and_vegetables(goods: str, number: int) -> None:
    """Headings of classes 29 and 31: preserved, frozen, dried and cooked ones are in 29, fresh ones in 31."""
    assert numbers(goods)[0] == number


@pytest.mark.parametrize(
    ("goods", "number"),
    [
        ("cycling gloves", 25), ("ski gloves", 25), ("protective work gloves", 9), ("boxing gloves", 28),
        ("gloves for protection against accidents", 9), ("golf gloves", 28), ("gardening gloves", 21),
        ("oven gloves", 21), ("gloves for medical purposes", 10),
    ],
)  # fmt: skip
def test_gloves_go_by_their_purpose(goods: str, number: int) -> None:
    """Pointers of the Classification: gloves as clothing 25, for protection 9, for games 28, for the household 21."""
    assert numbers(goods)[0] == number


@pytest.mark.parametrize(
    ("goods", "expected"),
    [
        ("gift sets of hot sauce and mugs", {30, 21}), ("kits of seeds and planters", {31, 21}),
        ("hampers of cheese and wine", {29, 33}), ("sets of soap and towels", {3, 24}),
        ("gift box with candles and chocolate", {4, 30}),
    ],
)  # fmt: skip
def test_a_set_of_several_goods_is_in_the_class_of_each(goods: str, expected: set[int]) -> None:
    assert set(numbers(goods)[:2]) == expected


@pytest.mark.parametrize(
    ("goods", "number"),
    [
        ("gochujang", 30),
        ("genmaicha", 30),
        ("kettlebells", 28),
        ("kalimbas", 15),
        ("santoku knives", 8),
        ("kokedama", 31),
    ],
)
def test_terms_of_a_trade_are_known(goods: str, number: int) -> None:
    assert numbers(goods)[0] == number


def test_goods_of_several_kinds_have_several_classes() -> None:
    assert set(numbers("herb planters; seeds; gardening courses")) == {21, 31, 41}
    assert set(numbers("handbags and shirts")) >= {18, 25}


@pytest.mark.parametrize("goods", ["", "   ", "zzyzxq", "...", "!;!"])
def test_what_is_not_known_has_no_class(goods: str) -> None:
    assert classes(goods) == []
    assert likely_classes(goods) == ()


@settings(deadline=None)
@given(st.lists(words, max_size=9).map(" ".join), st.integers(1, 45))
def test_scores_are_chances_in_order_each_with_its_reason(goods: str, limit: int) -> None:
    found = classes(goods, limit=limit)
    assert len(found) <= limit
    assert [one.score for one in found] == sorted((one.score for one in found), reverse=True)
    assert len({one.number for one in found}) == len(found)
    for one in found:
        assert one.number in CLASSES
        assert 0.0 <= one.score <= 1.0
        assert one.reason
    if found:
        assert found[0].number in likely_classes(goods)


def test_every_class_is_explained_and_listed() -> None:
    assert list(CLASSES) == list(EXPLAINED) == list(range(1, 46))
    assert all(f"{number} " in list_of_classes() for number in CLASSES)


def test_the_command_explains_and_defers_to_the_office(run: Run) -> None:
    done = run("classes", "herb planters of clay; herb seeds")
    assert done.returncode == 0, done.stderr
    for part in (" 21 ", " 31 ", "The trade mark office decides", "not legal clearance"):
        assert part in done.stdout
    listed = run("classes", "--all", "--format", "csv")
    assert listed.stdout.count("\n") == 46


def test_the_command_refuses_what_it_cannot_read(run: Run) -> None:
    done = run("classes", "zzyzxq")
    assert (done.returncode, done.stdout) == (2, "")
    assert "namescreen classes --all" in done.stderr


def test_the_command_says_so_where_no_class_is_likely(run: Run) -> None:
    done = run("classes", "kitchen zorvex")
    assert (done.returncode, done.stdout) == (2, "")
    assert "not known" in done.stderr


def test_a_class_that_is_none_is_refused_with_the_list() -> None:
    from namescreen.cli.options import nice_classes

    with pytest.raises(InputError, match=r"1 chemicals.*45 legal.*namescreen classes"):
        nice_classes("46")


def test_each_item_of_a_list_has_its_class() -> None:
    """Classes by the office's alphabetical list, from memory; what follows a frame is part of it."""
    found = {guess.number for guess in classes("peelers, trivets and fireplace pokers of hand-forged steel")}
    assert {8, 21} <= found
    assert classes("retail services featuring hats, shoes and bags")[0].number == 35


@pytest.mark.parametrize(
    ("goods", "number"),
    [
        ("couplings, not of metal, for garden hoses", 17), ("coffee grinders, electric, for household purposes", 7),
        ("hooks, not of metal, for curtains and clothes", 20),
    ],
)  # fmt: skip
def test_what_is_said_of_goods_after_a_comma_is_no_item_of_a_list(goods: str, number: int) -> None:
    """Headings of classes 17 and 20 (not of metal), note to class 7 (electric kitchen appliances)."""
    assert numbers(goods)[0] == number
