"""Words derived from one another by a suffix: the pairs are ordinary English, from memory of grammars and
dictionaries."""

from __future__ import annotations

import pytest

from namescreen.lexicon.derivation import derived_words, is_derived, nouns_of
from namescreen.lexicon.embedding import embedded_words


@pytest.mark.parametrize(
    ("one", "other"),
    [("dust", "dusty"), ("gold", "golden"), ("bake", "bakery"), ("spice", "spicy"), ("healthy", "health")],
)
def test_derived_words(one: str, other: str) -> None:
    assert other in derived_words(one)
    assert is_derived(one, other)
    assert is_derived(other, one)


@pytest.mark.parametrize(
    ("one", "other"), [("corn", "corner"), ("moth", "mother"), ("plan", "planet"), ("bat", "battery"), ("zzy", "zz")]
)
def test_words_that_are_only_spelled_so_are_not_derived(one: str, other: str) -> None:
    assert other not in derived_words(one)
    assert not is_derived(one, other)


def test_derivation_is_symmetric_and_the_list_agrees_with_the_question() -> None:
    for word in embedded_words()[1000:4000:60]:
        for other in derived_words(word):
            assert word in derived_words(other)
            assert is_derived(word, other)


@pytest.mark.parametrize(
    ("adjective", "noun"), [("nocturnal", "night"), ("solar", "sun"), ("wooden", "wood"), ("icy", "ice")]
)
def test_the_noun_that_an_adjective_is_made_from_or_pertains_to(adjective: str, noun: str) -> None:
    assert noun in nouns_of(adjective)


@pytest.mark.parametrize("word", ["red", "little", "night", "zzq"])
def test_other_words_have_no_such_noun(word: str) -> None:
    assert nouns_of(word) == ()
