"""Names of what goods are kept, sold or used in: the word for the goods and one for a holder, in one word or two.

Common practice, no source."""

from __future__ import annotations

import pytest

from namescreen.goods import Distinctiveness, distinctiveness

PAINTS = "watercolour paints for artists; paint brushes for artists"
BARRED = ("generic", "descriptive")


def _category(name: str, goods: str, *languages: str) -> str:
    found = distinctiveness(name, goods, languages=("en", *languages))
    assert isinstance(found, Distinctiveness), found
    return found.category


@pytest.mark.parametrize(
    ("name", "goods", "language"),
    [
        ("Paintbox", PAINTS, "en"),
        ("Paint Case", PAINTS, "en"),
        ("Brushcase", PAINTS, "en"),
        ("Jampot", "jam", "en"),
        ("Hatboxes", "hats", "en"),
        ("Malkasten", PAINTS, "de"),
        ("Farbkasten", PAINTS, "de"),
        ("Werkzeugkasten", "hand tools", "de"),
        ("Honigtopf", "honey", "de"),
        ("Scatola di Colori", PAINTS, "it"),
    ],
)
def test_the_holder_of_goods_describes_them(name: str, goods: str, language: str) -> None:
    assert _category(name, goods, language) in BARRED


@pytest.mark.parametrize(
    ("name", "goods"),
    [("Paintbox", "tea"), ("Sandbox", "soap"), ("Jackpot", "jackets"), ("Jukebox", "juice"), ("Honeypot", "hats")],
)
def test_a_holder_of_other_things_does_not(name: str, goods: str) -> None:
    assert _category(name, goods) not in BARRED
