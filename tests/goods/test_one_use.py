"""Goods that do the same for the same, are sold whole or part, or are food of any kind: how related they are at least.

By the factors of Canon (C-39/97: in competition, complementary); the grades are common practice, no source."""

from __future__ import annotations

import pytest

from namescreen.goods import Relatedness, relatedness

GRADES = ("none", "low", "average", "high", "identical")


def _grade(a: str, b: str) -> int:
    found = relatedness(a, b)
    assert isinstance(found, Relatedness)
    return GRADES.index(found.grade)


@pytest.mark.parametrize(
    ("a", "b", "least", "most"),
    [
        ("bowl covers", "lids for bowls", 2, 4), ("bread bags", "bread bins", 2, 4), ("bowl covers", "bowls", 1, 3),
        ("bread bags", "food storage containers", 2, 4), ("bread bags", "Brotbeutel aus Stoff", 4, 4),
        ("shoe racks", "shoe cleaner", 0, 2), ("kitchen towels", "kitchen scales", 0, 2), ("rugs", "throws", 1, 3),
        ("jam", "retail of groceries", 1, 3), ("tea", "retail of tea", 2, 3), ("tea", "online shop for tea", 2, 3),
        ("dog leads", "retail services connected with dog leads", 2, 3), ("candles", "repair of shoes", 0, 1),
        ("leather wallets", "repair of leather goods, namely purses and wallets", 0, 2),
        ("honey", "retail services in relation to foodstuffs, namely honey and syrups", 1, 3),
        ("freshly roasted coffee beans", "coffee", 4, 4), ("roasted coffee", "coffee tables", 0, 1),
        ("muslin baby bibs", "infants' clothing", 3, 4),
        ("fitted fabric bowl covers coated with beeswax", "clothing", 0, 1),
        ("lanterns for tea lights", "tea lights", 2, 3), ("candle holders", "scented candles", 2, 3),
    ],
)  # fmt: skip
def test_goods_that_do_the_same_are_related_and_others_are_not(a: str, b: str, least: int, most: int) -> None:
    assert least <= _grade(a, b) <= most
    assert _grade(a, b) == _grade(b, a)


def test_what_goods_do_for_the_same_thing_is_told() -> None:
    found = relatedness("bowl covers", "lids for bowls")
    assert isinstance(found, Relatedness)
    assert "they do much the same for the same thing" in found.reasons
