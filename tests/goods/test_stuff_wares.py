"""Collective nouns for wares by what they are made of, and which goods they hold; our own cases, graded as offices
grade a broader term (Meric, T-133/05, from memory)."""

from __future__ import annotations

import pytest

from namescreen.goods import relatedness


def _score(one: str, other: str) -> float:
    found = relatedness(one, other)
    return float(getattr(found, "score", 0.0))


@pytest.mark.parametrize(
    ("goods", "broad"),
    [
        ("lanterns of stoneware for tea lights", "pottery"),
        ("lanterns of stoneware for tea lights", "earthenware"),
        ("lanterns of stoneware for tea lights", "Tonwaren"),
        ("stoneware planters", "articles of ceramic"),
        ("candle holders of ceramic", "poterie"),
        ("oak bowls", "woodware"), ("willow baskets", "Korbwaren"), ("leather wallets", "goods made of leather"),
        ("glass vases", "verrerie"), ("linen napkins", "textiles"), ("wooden blocks for children", "toys"),
    ],
)  # fmt: skip
def test_a_collective_noun_holds_goods_of_its_stuff_or_use(goods: str, broad: str) -> None:
    assert _score(goods, broad) >= 0.75


@pytest.mark.parametrize(
    ("goods", "broad"),
    [
        ("paper bags", "earthenware"), ("wool blankets", "pottery"), ("glass cleaners", "glassware"),
        ("leather polish", "leather goods"), ("silver rings", "silverware"), ("wooden windows", "woodware"),
    ],
)  # fmt: skip
def test_it_holds_no_goods_of_another_stuff_and_none_that_work_on_it(goods: str, broad: str) -> None:
    assert _score(goods, broad) < 0.4


@pytest.mark.parametrize(
    ("one", "other", "alike"),
    [
        ("lanterns of stoneware for tea lights", "garden lanterns", True),
        ("decorative ceramic lanterns for tea lights", "lanterns of stoneware for tea lights", True),
        ("candlesticks", "candle holders", True),
        ("garden lights", "bicycle lights", False), ("garden gloves", "boxing gloves", False),
        ("kitchen shears", "garden shears", False),
    ],
)  # fmt: skip
def test_only_what_shuts_goods_out_tells_them_apart(one: str, other: str, alike: bool) -> None:
    assert (_score(one, other) >= 0.75) is alike
