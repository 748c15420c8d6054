"""Scripts and look-alike letters."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from namescreen.connotations import lookalikes
from namescreen.connotations.scripts import confusable, resolved_scripts, script, skeleton


@pytest.mark.parametrize(
    ("letter", "expected"),
    [("a", "Latin"), ("ß", "Latin"), ("ж", "Cyrillic"), ("α", "Greek"), ("日", "Han"), ("ひ", "Hiragana"),
     ("カ", "Katakana"), ("ｱ", "Katakana"),
      ("한", "Hangul"), ("א", "Hebrew"), ("7", "Common"), ("-", "Common"), ("ａ", "Latin")],
)  # fmt: skip
def test_script_of_a_letter(letter: str, expected: str) -> None:
    assert script(letter) == expected


def test_japanese_mixes_three_scripts_and_is_one() -> None:
    assert resolved_scripts("日本のカメラ") == frozenset({"Japanese"})
    assert resolved_scripts("abс") == frozenset()  # the last letter is Cyrillic
    assert resolved_scripts("123") is None


def test_mixed_scripts_are_flagged_with_what_they_pass_for() -> None:
    found = lookalikes("Bаsil")  # Cyrillic а
    assert found is not None
    assert found.mixed
    assert found.looks == "Basil"
    assert found.letters == (("а", "a"),)
    assert found.scripts == ("Cyrillic", "Latin")
    assert "U+0430" in str(found)


@pytest.mark.parametrize("name", ["Basil", "Straße", "кот дома", "日本のカメラ", "", "42", "naïve", "ж"])
def test_names_of_one_script_are_not_flagged(name: str) -> None:
    assert lookalikes(name) is None


@given(st.text(max_size=20))
def test_the_skeleton_is_stable_and_sets_equals_together(text: str) -> None:
    assert confusable(text, text)
    assert skeleton(skeleton(text)) == skeleton(text) or not text.isascii()
    lookalikes(text)
