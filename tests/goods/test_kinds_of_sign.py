"""Kinds of sign that offices refuse or take, whole kinds at a time; the cases are ours (common practice, no source)."""

from __future__ import annotations

import pytest

from namescreen.goods import Distinctiveness, distinctiveness
from namescreen.goods.animals import is_other_animal

BARRED = frozenset(("generic", "descriptive", "geographic", "surname"))


def called(name: str, goods: str) -> str:
    found = distinctiveness(name, goods, markets=("US", "GB", "DE"))
    assert isinstance(found, Distinctiveness)
    return found.called


@pytest.mark.parametrize(
    ("name", "goods"),
    [
        ("Made in Scotland", "wool blankets"),  # origin and manufacture
        ("Handcrafted in Vermont", "cutting boards"),
        ("Second to None", "soap"),  # praise as a whole
        ("Cream of the Crop", "coffee"),
        ("Scarlet", "ceramic mugs"),  # a colour
        ("Gr8", "ceramic mugs"),  # said aloud
        ("Bathsope", "bath soap"),  # respelt inside a closed word
        ("Müller", "soap"),  # an umlaut spelled out
    ],
)
def test_what_an_office_may_refuse(name: str, goods: str) -> None:
    assert called(name, goods) in BARRED


@pytest.mark.parametrize(
    ("name", "goods"),
    [("Fox", "dog beds"), ("Tiger", "cat collars"), ("Zebra", "horse saddles"), ("Petal", "bicycle pedals")],
)
def test_what_only_resembles_the_goods_is_no_description(name: str, goods: str) -> None:
    assert called(name, goods) not in BARRED


@pytest.mark.parametrize(
    ("word", "goods", "other"),
    [
        ("puppy", "dog collars", False), ("terrier", "dog collars", False), ("canine", "dog collars", False),
        ("pet", "dog collars", False), ("dog", "pet beds", False), ("colt", "horse saddles", False),
        ("jackal", "dog collars", True), ("mule", "horse saddles", True), ("candle", "dog collars", False),
    ],
)  # fmt: skip
def test_another_animal(word: str, goods: str, other: bool) -> None:
    assert is_other_animal(word, goods) is other
