"""Which translations buyers are taken to understand."""

from __future__ import annotations

import pytest

from namescreen.marks import Mark
from namescreen.screening.translated import known_to_buyers


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
        ("Anvil Thrush", "ENCLUME GRIVE", "fr", "FR", False),
        ("Thimble Moth", "FINGERHUT MOTTE", "de", "US", True),  # TMEP 1207.01(b)(vi): an examiner translates
    ],
)
def test_english_is_known_by_everyday_words_and_cognates(
    name: str, mark: str, language: str, place: str, known: bool
) -> None:
    """Common practice, no source, but where a line names one."""
    assert known_to_buyers(name, Mark(mark, territories=(place,)), language, (place,)) is known
