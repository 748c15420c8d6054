"""What a statement of goods leaves out, glosses in brackets, and services in several goods; our own cases, in the
wording of offices' lists (common practice, no source)."""

from __future__ import annotations

import pytest

from namescreen.goods import Relatedness, items, relatedness


@pytest.mark.parametrize(
    ("goods", "heads"),
    [
        ("toys, excluding dolls and balls; games", ["toy", "game"]),
        ("candles, other than tea lights", ["candle"]),
        ("Spielzeug, ausgenommen Puppen und Bälle", ["toy"]),
        ("juguetes, excepto muñecas", ["toy"]),
        ("diffuseurs de parfum autres que bâtonnets", ["diffuser"]),
        ("Kerzen (Beleuchtung)", ["candle"]),
        ("toys (dolls, balls)", ["toy", "doll", "ball"]),
        ("excluding dolls", []),
        ("dog leads, no leather; collars", ["lead", "collar"]),
        ("biscuits, gluten-free; tea", ["biscuit", "tea"]),
        ("Spielzeug, ohne Kunststoff; Kerzen", ["toy", "candle"]),
        ("juguetes, sin plástico", ["toy"]),
    ],
)
def test_what_is_left_out_and_a_gloss_are_no_goods(goods: str, heads: list[str]) -> None:
    assert [item.head for item in items(goods)] == heads


@pytest.mark.parametrize("goods", ["retail of candles and lanterns", "Einzelhandel mit Kerzen und Laternen"])
def test_a_service_deals_in_all_goods_named_after_it(goods: str) -> None:
    assert [(item.head, item.dealing) for item in items(goods)] == [("candle", "retail"), ("lantern", "retail")]


def test_goods_before_a_service_stay_goods() -> None:
    assert [item.dealing for item in items("tea and retail of tea")] == ["", "retail"]


@pytest.mark.parametrize(
    "service",
    [
        "retail of candles", "Einzelhandelsdienstleistungen in Bezug auf Kerzen", "vente de bougies",
        "servicios de venta minorista de velas", "vendita online di candele", "winkeldiensten voor kaarsen",
        "detaljhandelstjänster avseende ljus",
    ],
)  # fmt: skip
def test_dealing_in_goods_is_of_average_grade_in_every_language(service: str) -> None:
    found = relatedness("candles", service, (4,), (35,))
    assert isinstance(found, Relatedness)
    assert 0.4 <= found.score <= 0.65
