"""Two words of a Romance language in one: judged as the two (Court of Justice, C-363/99, Postkantoor; from memory)."""

from __future__ import annotations

import pytest

from namescreen.goods import Distinctiveness, distinctiveness
from namescreen.goods.run_together import written_apart


def judged(name: str, goods: str) -> Distinctiveness:
    found = distinctiveness(name, goods, markets=["FR", "IT", "ES"])
    assert isinstance(found, Distinctiveness)
    return found


@pytest.mark.parametrize(
    ("name", "goods"),
    [("Pimentdoux", "chilli sauces"), ("Savondoux", "soap bars"), ("Oliofino", "olive oil"), ("Mielpur", "honey")],
)
def test_words_run_together_say_what_they_say_apart(name: str, goods: str) -> None:
    found = judged(name, goods)
    assert found.category in ("generic", "descriptive")
    assert not any("not among the words" in reason for reason in found.reasons)


@pytest.mark.parametrize(
    ("name", "goods"), [("Tranchant", "songbooks"), ("Quenchling", "herb planters"), ("Bonbonnel", "lamps")]
)
def test_words_that_only_seem_to_be_two_are_left_alone(name: str, goods: str) -> None:
    assert judged(name, goods).category not in ("generic", "descriptive")


def test_a_word_is_divided_only_where_the_language_writes_two() -> None:
    assert list(written_apart("Pimentdoux", "fr")) == ["piment doux"]
    assert not list(written_apart("Pimentdoux", "de"))
    assert not list(written_apart("Tranchant", "fr"))  # a word of its own
