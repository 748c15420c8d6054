"""The same goods in another wording, and goods apart that a wording makes look the same."""

from __future__ import annotations

import pytest

from namescreen.goods import Relatedness, items, relatedness


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("beds for household pets", "cat beds"),
        ("shampoos for domestic animals", "dog shampoos"),
        ("bowls for companion animals", "bowls for pets"),
    ],
)
def test_an_office_s_name_for_pets_is_met_by_each_of_them(one: str, other: str) -> None:
    """Beds for household pets are a term of the Nice alphabetical list (from memory)."""
    found = relatedness(one, other)
    assert isinstance(found, Relatedness)
    assert found.score >= 0.9


@pytest.mark.parametrize(
    ("goods", "heads"),
    [
        ("bags of waxed canvas and leather", ["bag"]),
        ("scarves in wool, silk and cashmere; hats", ["scarf", "hat"]),
        ("leather and imitations of leather", ["leather", "imitation"]),
        ("bags of canvas and belts", ["bag", "belt"]),
        ("bags of canvas; canvas", ["bag", "canvas"]),
        ("retail of paper and leather", ["paper", "leather"]),
    ],
)
def test_a_list_of_materials_is_no_list_of_goods(goods: str, heads: list[str]) -> None:
    assert [one.head for one in items(goods)] == heads


def test_goods_for_animals_stay_so_behind_a_material() -> None:
    """Nice class 25 is clothing for human beings; that for animals is in class 18 (13th edition)."""
    found = relatedness("coats of wool", "wool dog coats")
    assert isinstance(found, Relatedness)
    assert found.score < 0.9
