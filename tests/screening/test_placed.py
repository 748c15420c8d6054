"""Places among the words of other languages."""

from __future__ import annotations

import pytest

from namescreen.connotations import readings
from namescreen.screening.placed import as_in_english, with_places


@pytest.mark.parametrize(
    ("name", "language", "says"),
    [
        ("Zaragoza", "es", "the name of a place"),
        ("Leipziger", "de", "of Leipzig, a place"),
        ("Valenciana", "es", "of Valencia, a place"),
        ("Persianas", "es", None),
    ],
)
def test_a_place_is_told_where_no_meaning_is_known(name: str, language: str, says: str | None) -> None:
    found = with_places(readings(name, languages=[language], dictionaries=()))
    assert [one.meaning for one in found if one.kind == "ordinary" and one.match == "exact"] == [says]


def test_a_mild_word_that_says_what_it_says_in_english_is_ordinary() -> None:
    """wolf is the same animal in German and Dutch; bat and vleermuis are not one word (dictionaries)."""
    for name, language, severities in (("Silent Wolf", "de", {0}), ("Silent Fledermaus", "de", {1})):
        found = as_in_english(readings(name, languages=[language], dictionaries=()))
        assert {one.severity for one in found if one.word in ("wolf", "fledermaus")} == severities
