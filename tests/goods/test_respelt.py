"""Respellings: the compiled search against the plain one, and words that traders write so."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from namescreen.goods import respelt
from namescreen.goods.respelt import further_forms, respellings
from namescreen.native.library import library
from namescreen.native.respelling import compiled_layer


@pytest.mark.parametrize(
    ("written", "meant"), [("kwality", "quality"), ("tyte", "tight"), ("fone", "phone"), ("eezee", "easy")]
)
def test_a_respelling_is_read_as_the_word_that_is_meant(written: str, meant: str) -> None:
    """Examples of our own of what traders write."""
    assert meant in respellings(written)


def test_known_words_are_no_respellings() -> None:
    assert respellings("kite") == ()


@settings(max_examples=60)
@given(
    words=st.lists(st.text("aekrtyiz", max_size=12), max_size=4, unique=True),
    seen=st.sets(st.text("aekrtyiz", max_size=6), max_size=20),
    most=st.integers(0, 300),
)
def test_the_compiled_search_gives_equal_forms_in_equal_order(words: list[str], seen: set[str], most: int) -> None:
    loaded = library()
    if loaded is None:
        pytest.skip("there is no compiled library")
    compiled = compiled_layer(loaded, respelt._WAYS)
    for _ in range(2):
        forms = compiled(words, seen, most)
        assert forms == further_forms(words, seen, most)
        assert seen.isdisjoint(forms)
        words, seen = forms[:5], {*seen, *forms}
