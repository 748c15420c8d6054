"""Which translations buyers are taken to understand."""

from __future__ import annotations

import pytest

from namescreen.marks import Mark
from namescreen.screening.translated import known_to_buyers, said_from


@pytest.mark.parametrize(
    ("name", "mark", "language", "place", "known"),
    [
        ("Silver Lantern", "SILBERLATERNE", "de", "DE", True),  # spelled much alike: Germanic and Latin cognates
        ("Red House", "MAISON ROUGE", "fr", "FR", True),  # everyday words, which schools teach
        ("Thimble Moth", "FINGERHUT MOTTE", "de", "DE", False),
        ("Winter Swan", "WINTERSCHWAN", "de", "DE", True),  # what schools name early
        ("Grey Owl", "GRAUE EULE", "de", "AT", True),
        ("Wooden Spoon", "HOLZLÖFFEL", "de", "DE", True),
        ("Grey Heron", "GRAUREIHER", "de", "DE", False),  # a rarer bird, and not spelled alike
        ("Lapwing", "VANNEAU", "fr", "FR", False),  # it only looks like a lap and a wing, which schools teach
        ("Moonlight", "MONDLICHT", "de", "DE", True),
        ("Anvil Thrush", "ENCLUME GRIVE", "fr", "FR", False),
        ("Lontra", "UTTERN", "sv", "SE", False),  # an Italian name: few there know both
        ("Loutre", "OTTER", "de", "DE", False),
        ("Loutre", "OTTER", "de", "LU", True),  # both are languages of the place
        ("Loutre", "NUTRIA", "es", "US", False),  # one foreign language against another: neither is translated
        ("Thimble Moth", "FINGERHUT MOTTE", "de", "US", True),  # TMEP 1207.01(b)(vi): an examiner translates
    ],
)
def test_english_is_known_by_everyday_words_and_cognates(
    name: str, mark: str, language: str, place: str, known: bool
) -> None:
    """Common practice, no source, but where a line names one."""
    assert known_to_buyers(name, Mark(mark, territories=(place,)), language, (place,)) is known


@pytest.mark.parametrize(
    ("name", "mark", "language", "own"),
    [
        ("Quiet Forest", "FORÊT TRANQUILLE", "fr", "en"),
        ("Lontra", "UTTERN", "sv", "it"),
        ("Lontra", "OTTER", "en", "it"),
        ("Loutre", "LONTRA", "it", "fr"),
        ("Otter", "UTTERN", "sv", "en"),
    ],
)
def test_the_language_of_a_name_is_told_beside_that_of_its_translation(
    name: str, mark: str, language: str, own: str
) -> None:
    assert said_from(name, mark, language, ("it", "fr", "sv")) == own
