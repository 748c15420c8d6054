"""What goods serve, and what they only mention."""

from __future__ import annotations

import pytest

from namescreen.goods import Relatedness, items, relatedness
from namescreen.goods.mentions import is_aside, without_likeness
from namescreen.goods.serving import serve_apart, serve_one_thing, serves, things_served


@pytest.mark.parametrize(
    ("goods", "served"),
    [
        ("folding drip trays that hang under a wet umbrella in the hall", {"umbrella"}),
        ("umbrella stands", {"umbrella"}),
        ("reading lamps that clip to a book in bed", {"book"}),
        ("oil for looking after chopping boards", {"board"}),
        ("straps for wearing a guitar while playing", {"guitar"}),
        ("bags for carrying yarn to the park", {"yarn"}),
        ("sleeves that protect playing cards", {"card"}),
        ("bowls that stop a ball of wool rolling off", {"wool"}),
        ("felt sleeves for laptops and tablets", {"laptop", "tablet"}),
        ("hooks for renewing worn scratching posts", {"post"}),
        ("spectacles for watching television", set()),
        ("travel cups for drinking in the car", set()),
        ("reading lamps for bed", set()),
        ("lavender bags for the wardrobe", set()),
        ("apron for gardeners", set()),
        ("desks with a groove for pens", set()),
        ("cushions with a pattern of prams", set()),
        ("soap shaped like a fish", set()),
        ("mugs in the shape of a camera", set()),
        ("fish-shaped cushions", set()),
        ("scented sachets for drawers and wardrobes", {"drawer", "wardrobe"}),
        ("tomato sauce", set()),
        ("coffee tables", set()),
        ("bath toys", set()),
        ("leather bags", set()),
    ],
)
def test_what_goods_serve(goods: str, served: set[str]) -> None:
    (item,) = items(goods)
    assert {thing.head for thing in things_served(item)} == served


@pytest.mark.parametrize(
    ("goods", "head"),
    [("keyrings shaped like an electric guitar", "keyring"),
     ("doorstops stuffed with sand and shaped like hens", "doorstop"), ("tidies resembling a crab", "tidy"),
     ("re-waxing of outdoor garments", "garment"), ("hire of garden tools", "tool")],
)  # fmt: skip
def test_what_goods_look_like_and_what_is_done_with_them_is_not_what_they_are(goods: str, head: str) -> None:
    (item,) = items(goods)
    assert item.head == head


def test_a_place_is_only_mentioned() -> None:
    (item,) = items("folding drip trays that hang under a wet umbrella in the hall")
    assert is_aside("hall", item)
    assert not is_aside("umbrella", item)


@pytest.mark.parametrize(
    ("goods", "plain"),
    [("keyrings shaped like a guitar", "keyrings"), ("mugs with a print of cats", "mugs"),
     ("pouches the size of a telephone", "pouches"), ("lemon scented candles", "candles"),
     ("paintings of ships", "paintings of ships"), ("scented candles", "scented candles")],
)  # fmt: skip
def test_goods_without_what_they_look_like(goods: str, plain: str) -> None:
    assert without_likeness(goods) == plain


def test_goods_for_one_thing_and_for_unlike_ones() -> None:
    (tray,), (stand,), (tea,) = map(items, ("trays under umbrellas", "umbrella stands", "trays for serving tea"))
    assert serve_one_thing(tray, stand)
    assert serve_apart(tray, tea)
    assert not serve_apart(tray, stand)


@pytest.mark.parametrize(
    ("one", "other", "least"),
    [
        ("folding drip trays that hang under a wet umbrella in the hall", "umbrellas", 0.3),
        ("folding drip trays that hang under a wet umbrella in the hall", "umbrella stands", 0.3),
        ("Ständer für nasse Regenschirme", "Regenschirme", 0.3),
        ("housses pour vélos", "vélos", 0.3),
        ("bread bins", "bread", 0.2),
    ],
)
def test_what_serves_goods_is_related_to_them(one: str, other: str, least: float) -> None:
    found = relatedness(one, other)
    assert isinstance(found, Relatedness)
    assert least <= found.score < 0.65


@pytest.mark.parametrize(
    ("one", "other"),
    [("dog biscuits shaped like cars", "motor cars"), ("fish-shaped cushions", "fish"),
     ("jumpers for walks on the beach", "beach huts"), ("soap with a smell of honey", "honey")],
)  # fmt: skip
def test_what_is_only_mentioned_relates_nothing(one: str, other: str) -> None:
    found = relatedness(one, other)
    assert isinstance(found, Relatedness)
    assert found.score < 0.2


@pytest.mark.parametrize(
    ("goods", "others", "served"),
    [
        ("rucksacks for laptops and tablets", "tablets of paracetamol", False),
        ("sleeves for laptops and tablets", "headache tablets", False),
        ("sleeves for laptops and tablets", "tablet computers", True),
        ("sleeves for laptops and tablets", "tablets", True),
        ("racks for knives and forks", "garden forks", True),
    ],
)
def test_a_thing_is_read_with_what_is_served_beside_it(goods: str, others: str, served: bool) -> None:
    (other,) = items(others)
    assert any(serves(one, other) for one in items(goods)) is served
