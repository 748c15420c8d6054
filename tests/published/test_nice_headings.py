"""Class numbers and what their headings are about: Nice Classification (WIPO), 13th edition (2026).

Each row has words of our own for goods that the class heading or its explanatory note names.
"""

from __future__ import annotations

import pytest

from namescreen.goods import CLASSES, classes

HEADINGS = {
    1: "fertilizers", 2: "paints and varnishes", 3: "soap", 4: "fuel and candles", 5: "medicines",
    6: "goods of steel", 7: "machine tools", 8: "razors", 9: "computers", 10: "surgical instruments",
    11: "lamps", 12: "vehicles", 13: "firearms", 14: "jewelry", 15: "musical instruments", 16: "paper",
    17: "rubber", 18: "leather and umbrellas", 19: "cement", 20: "furniture", 21: "glassware", 22: "ropes and nets",
    23: "yarn", 24: "textiles", 25: "clothing and footwear", 26: "lace and ribbons", 27: "carpets",
    28: "toys and games", 29: "meat and fish", 30: "coffee and bread", 31: "live plants and seeds", 32: "beer",
    33: "wine and spirits", 34: "tobacco", 35: "advertising", 36: "insurance", 37: "repair services",
    38: "telecommunications", 39: "transport", 40: "treatment of materials", 41: "education and training",
    42: "software development", 43: "restaurants and hotels", 44: "hairdressing", 45: "legal services",
}  # fmt: skip


def test_there_are_45_classes() -> None:
    assert list(CLASSES) == list(range(1, 46)) == list(HEADINGS)


@pytest.mark.parametrize(("number", "goods"), HEADINGS.items())
def test_goods_of_the_heading_lead_to_the_class(number: int, goods: str) -> None:
    assert number in [guess.number for guess in classes(goods, limit=2)]
