"""A plural or a possessive is the same word (Wilson v. Delaunay, 245 F.2d 877, CCPA 1957; from memory)."""

from __future__ import annotations

import pytest

from namescreen.closeness import compare, features
from namescreen.closeness.word_similarity import ONE_WORD, word_similarity
from namescreen.text.inflection import other_number

ONE = [("heron", "herons"), ("bakery", "bakeries"), ("box", "boxes"), ("zorvex", "zorvexes"), ("mirga", "mirgas"),
       ("potato", "potatoes"), ("henry", "henrys"), ("key", "keys"), ("latch", "latches")]  # fmt: skip
OTHER = [("princes", "princess"), ("new", "news"), ("heron", "hero"), ("go", "gos"), ("mirga", "mirgan"),
         ("pas", "pass")]  # fmt: skip


@pytest.mark.parametrize(("one", "other"), ONE)
def test_a_word_and_its_plural_are_one_word(one: str, other: str) -> None:
    assert other in other_number(one)
    assert one in other_number(other)
    (first,), (second,) = (features(word).segmentations[0] for word in (one, other))
    assert word_similarity(first, second).overall >= ONE_WORD
    assert word_similarity(first, second).meaning >= ONE_WORD


@pytest.mark.parametrize(("one", "other"), OTHER)
def test_words_that_differ_otherwise_are_not(one: str, other: str) -> None:
    (first,), (second,) = (features(word).segmentations[0] for word in (one, other))
    assert word_similarity(first, second).overall < ONE_WORD


def test_a_coined_name_and_its_plural_are_compared_in_meaning() -> None:
    assert compare("Zorvex", "Zorvexes").meaning > 0.9
    assert compare("Zorvex", "Zorvexen").not_checked
