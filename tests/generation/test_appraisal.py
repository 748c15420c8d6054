"""Names made elsewhere: how they seem to be made, and what they are worth on the scale of ours."""

from __future__ import annotations

import pytest

from namescreen.brief import Brief
from namescreen.errors import InputError
from namescreen.generation.appeal import appeal
from namescreen.generation.appraisal import appraise
from namescreen.generation.parsing import parse


@pytest.mark.parametrize(
    ("name", "kind", "words"),
    [
        ("Sheepfold", "found", "sheepfold"),
        ("Fern & Kiln", "pair", "fern;kiln"),
        ("Old Hannah", "figure", "old;hannah"),
        ("Fernling", "affix", "fern;-ling"),
        ("Unkiln", "affix", "un-;kiln"),
        ("Mossbench", "pair", "moss;bench"),
        ("Copper Tray", "pair", "copper;tray"),
        ("Home Sweet Loam", "changed", "home sweet home;loam"),
        ("Thyme & Tide", "changed", "time and tide;thyme"),
        ("Glazonary", "blend", "glazonary"),
        ("Kilner's Yard", "pair", "kilner's;yard"),
        ("Potty", "found", "potty"),
        ("Kilnish", "affix", "kiln;-ish"),
        ("Urnament", "changed", "ornament;urn"),
        ("Bowlevard", "changed", "boulevard;bowl"),
        ("Quivora", "blend", "quivora"),
    ],
)
def test_how_a_name_is_made_is_read_from_its_text(name: str, kind: str, words: str) -> None:
    assert parse(name) == (kind, words)


def test_a_name_of_somebody_else_is_judged_on_the_scale_of_ours(studio: Brief) -> None:
    good, poor = appraise("Sheepfold", studio), appraise("Tax Gasket", studio)
    assert 0 <= poor.score < good.score <= 1
    assert good.construction == "found"


def test_what_is_no_name_is_refused(studio: Brief) -> None:
    with pytest.raises(InputError, match="no letters a to z"):
        appraise("???", studio)


def test_words_for_stuffs_and_articles_appeal_less_than_seldom_and_lively_ones() -> None:
    dull, lively = ("button", "cheese", "foam", "denim"), ("gallivant", "burgeon", "far afield", "lollop")
    assert max(map(appeal, dull)) < min(map(appeal, lively))
    assert appeal("qqxzv") == 0.5
