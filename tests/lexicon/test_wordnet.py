"""Words, senses and relations: what the lexicon promises, on real words."""

from __future__ import annotations

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from namescreen.lexicon import lexicon
from namescreen.lexicon.wordnet import DOMAINS, RELATION_KINDS
from namescreen.tables import open_table

WORDS = [word for word, _ in open_table("wordnet-words.tsv").items()][::997]
EVERYDAY = (
    "basil bread clay coil cold cup dog fast fresh garden glasses goose grow herb hot kiln king leaf light mint "
    "planter pot pottery quick queen root seed shop spring stream studio sun thyme vase water well"
).split(" ")
words = st.sampled_from(WORDS + EVERYDAY)


@pytest.mark.parametrize(
    ("word", "bases"),
    [
        ("herbs", ("herb",)),
        ("geese", ("goose",)),
        ("glasses", ("glasses", "glass")),
        ("Watering", ("watering", "water")),
        ("finest", ("fine",)),
        ("zzyzx", ()),
        ("", ()),
    ],
)
def test_base_forms(word: str, bases: tuple[str, ...]) -> None:
    assert lexicon().bases(word) == bases
    assert lexicon().known(word) is bool(bases)


def test_senses_come_most_frequent_first_and_can_be_told_apart() -> None:
    senses = lexicon().senses("spring")
    assert [sense.count for sense in senses] == sorted((s.count for s in senses), reverse=True)
    labels = [sense.label for sense in senses]
    assert labels[0] == "spring (season)"
    assert "spring (elastic device)" in labels
    assert {sense.pos for sense in lexicon().senses("spring", "v")} == {"v"}


@settings(deadline=None)
@given(words)
def test_labels_of_one_word_differ(word: str) -> None:
    labels = [sense.label for sense in lexicon().senses(word) if sense.label.startswith(f"{word} (")]
    assert len(labels) == len(set(labels))


@settings(deadline=None)
@given(words)
def test_every_relation_leads_to_a_sense_that_leads_back(word: str) -> None:
    for sense in lexicon().senses(word)[:3]:
        assert sense.domain in DOMAINS
        assert lexicon().sense(sense.id).words == sense.words
        for relation in lexicon().relations(sense)[:20]:
            assert relation.kind in RELATION_KINDS.values()
            back = lexicon().relations(relation.sense_id)
            assert sense.id in {one.sense_id for one in back}


def test_an_unknown_sense_is_a_key_error() -> None:
    with pytest.raises(KeyError):
        lexicon().sense("n1")


class TestCloseness:
    @settings(deadline=None)
    @given(words, words)
    def test_symmetric_and_within_range(self, a: str, b: str) -> None:
        closeness = lexicon().closeness(a, b)
        assert closeness == lexicon().closeness(b, a)
        assert closeness is not None
        assert 0.0 <= closeness <= 1.0

    @settings(deadline=None)  # the first look at a word reads many rows
    @given(words)
    def test_a_word_is_closest_to_itself(self, word: str) -> None:
        assert lexicon().closeness(word, word) == 1.0

    @settings(deadline=None)
    @given(words, words, st.floats(0.0, 1.0))
    def test_what_is_below_the_least_asked_for_may_be_left_out(self, a: str, b: str, least: float) -> None:
        exact, found = lexicon().closeness(a, b), lexicon().closeness(a, b, least)
        assert found == exact or (found == 0.0 and exact is not None and exact < least)

    @settings(deadline=None)  # the first look at a word reads many rows
    @given(words)
    def test_neighbours_agree_with_closeness_both_ways(self, word: str) -> None:
        near = lexicon().neighbours(word)
        assert near[word] == 1.0
        for other in sorted(near)[:: max(len(near) // 15, 1)]:
            assert near[other] == lexicon().closeness(word, other) == lexicon().closeness(other, word)
            assert lexicon().neighbours(other)[word] == near[other]

    @pytest.mark.parametrize("pair", [("zzyzx", "herb"), ("herb", "zzyzx"), ("zzyzx", "zzyzx"), ("", "herb")])
    def test_unknown_words_have_none(self, pair: tuple[str, str]) -> None:
        assert lexicon().closeness(*pair) is None
        assert lexicon().neighbours("zzyzx") == {}

    def test_the_order_of_kinds_of_relation(self) -> None:
        """Same > inflected > synonym > derived > broader > part > distant: the order that `sense_similarity` states."""
        pairs = [("kids", "kid"), ("glasses", "glass"), ("car", "automobile"), ("garden", "gardener"),
                 ("vase", "jar"), ("clay", "pottery"), ("bank", "tree")]  # fmt: skip
        scores = [lexicon().closeness(*pair) or 0.0 for pair in pairs]
        assert scores == sorted(scores, reverse=True)
        assert len(set(scores)) == len(scores)

    def test_opposites_are_not_close(self) -> None:
        for a, b in (("hot", "cold"), ("king", "queen"), ("day", "night")):
            assert lexicon().closeness(a, b) == 0.35


def test_capitals_stay_in_senses_and_do_not_matter_in_questions() -> None:
    assert lexicon().senses("PARIS")[0].words[0] == "Paris"
    assert lexicon().senses("Paris") == lexicon().senses("paris")


def test_no_definition_is_shipped() -> None:
    """A gloss is prose; the longest run of words in any row is a name such as "Mary Queen of Scots"."""
    for _, value in list(open_table("wordnet-senses.tsv").items())[::101]:
        shown = value.split("|")[2]
        assert all(len(re.findall(r"\w+", word)) <= 12 for word in shown.split(","))
