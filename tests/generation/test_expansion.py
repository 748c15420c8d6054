"""Concepts widened by their chosen senses, with how far each word stands and how fit it is for a name."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from namescreen.brief import Brief, Concept
from namescreen.generation.expansion import chosen_senses, fitness, meaning_found, unfit, widen


def test_ideas_stand_weightiest_first_with_the_concepts_whole(studio: Brief) -> None:
    ideas = widen(studio)
    weights = [idea.weight for idea in ideas]
    assert weights == sorted(weights, reverse=True)
    assert all(0 < weight <= 1 for weight in weights)
    assert [idea.word for idea in ideas if idea.distance == 0] == ["clay", "herb", "sip", "spring"]
    assert {idea.distance for idea in ideas} <= {0, 1, 2}
    assert len({idea.word for idea in ideas}) == len(ideas)


def test_every_idea_says_how_it_was_reached(studio: Brief) -> None:
    concepts = {concept.word for concept in studio.concepts}
    for idea in widen(studio):
        assert idea.via
        assert idea.concept in concepts or idea.role == "goods"


def test_the_chosen_sense_decides() -> None:
    fountain = {idea.word for idea in widen(Brief(concepts=(Concept("spring", ("fountain",)),)))}
    season = {idea.word for idea in widen(Brief(concepts=(Concept("spring", ("season",)),)))}
    assert {"geyser", "outflow", "cliff"} <= fountain - season
    assert {"springtime", "bud", "summer"} <= season - fountain
    assert all(sense.domain == "noun.time" for sense in chosen_senses(Concept("spring", ("season",))))


def test_a_sense_that_fits_nothing_leaves_all_and_is_noticed() -> None:
    assert not meaning_found(Concept("spring", ("qwerty",)))
    assert meaning_found(Concept("spring", ("season",)))
    assert chosen_senses(Concept("spring", ("qwerty",))) == chosen_senses(Concept("spring"))


def test_avoided_and_dropped_words_are_no_ideas(studio: Brief) -> None:
    some = widen(studio)[10].word
    assert some not in {idea.word for idea in widen(studio, without=[some])}
    assert some not in {idea.word for idea in widen(replace(studio, avoid=(some,)))}


def test_an_unknown_concept_still_serves() -> None:
    assert [idea.word for idea in widen(Brief(concepts=(Concept("zorbl"),)))] == ["zorbl"]


@pytest.mark.parametrize("word", ["corpse", "corpses", "dung", "stolen", "tumour"])
def test_unfit_words_and_their_forms_are_kept_out(word: str) -> None:
    base = "steal" if word == "stolen" else word
    assert fitness(base) < 0.5
    if word != "stolen":
        assert unfit(word)
        assert fitness(word) == 0


@pytest.mark.parametrize(
    ("better", "worse"),
    [
        ("fern", "osmundaceae"),  # a genus in a botanist's list
        ("brook", "intermittentness"),
        ("kettle", "thing"),
        ("drizzle", "precipitation"),
        ("ember", "combustion"),
    ],
)
def test_short_known_picturable_words_are_fitter(better: str, worse: str) -> None:
    assert fitness(better) > 2 * fitness(worse)


@given(st.text(max_size=15))
def test_fitness_is_a_share(word: str) -> None:
    assert 0 <= fitness(word) <= 1
