"""What the words of a name count: strength by itself, dominance beside the others."""

from __future__ import annotations

import pytest

from namescreen.closeness import compare, goods_words
from namescreen.closeness.weights import DOMINANCE, LEAST, evidence_of_dominance, word_weight

GOODS = goods_words("watering cans and garden hoses")


@pytest.mark.parametrize(
    ("more", "less"),
    [
        ("quorvel", "garden"),  # an invented word, one for the goods (TMEP 1207.01(b)(viii))
        ("quorvel", "the"),
        ("lighthouse", "watering"),
        ("lighthouse", "shop"),
        ("heron", "good"),
    ],
)
def test_words_that_tell_the_maker_are_stronger_and_more_dominant(more: str, less: str) -> None:
    assert word_weight(more, GOODS).strength > word_weight(less, GOODS).strength
    assert word_weight(more, GOODS).dominance > word_weight(less, GOODS).dominance


@pytest.mark.parametrize("word", ["quorvel", "the", "garden", "hose", "eu", "k", "ostrowski", "heron"])
def test_weights_and_their_evidence_stay_in_range(word: str) -> None:
    for goods in ((), GOODS):
        assert all(LEAST <= value <= 1 for value in word_weight(word, goods))
        evidence = evidence_of_dominance(word, goods)
        assert len(evidence) == len(DOMINANCE)
        assert all(0 <= value <= 1 for value in evidence)


def test_a_number_is_less_dominant_than_an_invented_word() -> None:
    assert word_weight("360", GOODS).dominance < word_weight("quorvel", GOODS).dominance


def test_a_word_describes_only_the_goods_it_belongs_to() -> None:
    other = goods_words("violin strings")
    assert word_weight("hose", GOODS).dominance < word_weight("hose", other).dominance


def test_sharing_the_dominant_word_is_closer_than_sharing_the_other() -> None:
    goods = "watering cans"
    dominant = compare("Quorvel Garden", "Quorvel Meadow", name_goods=goods, mark_goods=goods)
    other = compare("Quorvel Garden", "Bistrane Garden", name_goods=goods, mark_goods=goods)
    assert dominant.overall > other.overall
