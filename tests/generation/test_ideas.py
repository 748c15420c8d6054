"""Ideas: words with a meaning associated with the brief, by the chosen senses, each with why it is here."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from namescreen.brief import Brief, Concept
from namescreen.generation.brief_terms import BriefTerms, goods_words
from namescreen.generation.ideas import Idea, ideas_of, meaning_of
from namescreen.generation.purpose import NAMED
from namescreen.generation.senses import chosen_senses, doubt, meaning_found, unfit
from namescreen.generation.vocabulary import are_rivals, word
from namescreen.lexicon import lexicon, zipf


def ideas(brief: Brief, *without: str) -> tuple[Idea, ...]:
    return ideas_of(brief, BriefTerms.of(brief, without=without), without=without)


def test_ideas_stand_weightiest_first_and_each_says_why(studio: Brief) -> None:
    found = ideas(studio)
    weights = [idea.weight for idea in found]
    assert weights == sorted(weights, reverse=True)
    assert all(0 < weight <= 1 for weight in weights)
    assert {idea.word for idea in found if idea.kind == "concept"} == {"clay", "herb", "sip", "spring"}
    terms = {term.word for term in BriefTerms.of(studio).terms}
    assert all(idea.term in terms and idea.why for idea in found)
    assert all(idea.meaning or idea.term for idea in found if idea.kind in ("find", "foreign", "lore"))


@pytest.mark.parametrize(
    ("concept", "sense", "wanted", "other"),
    [("spring", "season", "crocus", "rill"), ("spring", "fountain", "rill", "crocus")],
)
def test_the_chosen_sense_decides(concept: str, sense: str, wanted: str, other: str) -> None:
    weights = {idea.word: idea.weight for idea in ideas(Brief(concepts=(Concept(concept, (sense,)),)))}
    assert weights.get(wanted, 0) > weights.get(other, 0)


def test_a_chosen_sense_keeps_many_ideas() -> None:
    assert len(ideas(Brief(concepts=(Concept("spring", ("season",)),)))) > 30


@pytest.mark.parametrize(
    ("concept", "everyday", "domain"),
    [("seal", "animal", "noun.animal"), ("gull", "bird", "noun.animal"), ("bank", "river", "noun.object"),
     ("jam", "fruit", "noun.food"), ("bark", "tree", "noun.plant")],
)  # fmt: skip
def test_everyday_words_choose_a_sense(concept: str, everyday: str, domain: str) -> None:
    # domains as WordNet 3.0 files the senses
    chosen = chosen_senses(Concept(concept, (everyday,)))
    assert chosen[0].domain == domain
    assert len(chosen) < len(lexicon().senses(concept))


def test_what_is_doubtful_of_a_concept_is_told_with_what_to_do() -> None:
    assert "Add a common word" in doubt(Concept("zorgle"))
    assert "all are used" in doubt(Concept("spring", ("dragon",)))
    assert doubt(Concept("spring", ("season",))) == ""
    for wanted in ("dragon", "banana"):
        told = doubt(Concept("grain", (wanted,)))
        assert f"'{wanted}'" in told
        assert "foodstuff; cereal" in told or "foodstuff; to ingrain" in told
    assert "The nearest is taken: foodstuff; cereal; others are atom;" in told
    assert doubt(Concept("spring")) == ""


def test_a_part_of_an_animal_is_chosen_by_that_word() -> None:
    # WordNet 3.0: a tail is a part of vertebrates; the other noun senses are of people, coins, aircraft and ends
    assert [sense.domain for sense in chosen_senses(Concept("tail", ("animal",)))] == ["noun.animal"]


def test_a_sense_that_fits_nothing_leaves_all_and_is_noticed() -> None:
    assert not meaning_found(Concept("spring", ("qwerty",)))
    assert meaning_found(Concept("spring", ("season",)))
    assert chosen_senses(Concept("spring", ("qwerty",))) == chosen_senses(Concept("spring"))
    assert all(sense.domain == "noun.time" for sense in chosen_senses(Concept("spring", ("season",))))


def test_avoided_and_dropped_words_are_no_ideas(studio: Brief) -> None:
    some = ideas(studio)[10].word
    assert some not in {idea.word for idea in ideas(studio, some)}
    assert some not in {idea.word for idea in ideas(replace(studio, avoid=(some,)))}


def test_an_unknown_concept_still_serves() -> None:
    assert [idea.word for idea in ideas(Brief(concepts=(Concept("zorbl"),)))] == ["zorbl"]


def test_a_word_of_the_goods_counts_less_than_a_concept_and_less_for_what_they_are_made_of() -> None:
    brief = Brief(goods="teapots of stoneware for gardeners", concepts=(Concept("steam"),))
    weights = {term.word: term.weight for term in BriefTerms.of(brief).terms}
    assert weights["steam"] == 1 > weights["teapot"] > weights["stoneware"]


def test_rivals_are_other_things_of_one_kind() -> None:
    # WordNet 3.0: cat and dog are carnivores, herring and cod food fish; a wren is a bird, a beehive no bee.
    assert are_rivals("cat", "dog")
    assert not are_rivals("bird", "wren")
    assert not are_rivals("bee", "beehive")


@pytest.mark.parametrize("one", ["corpse", "corpses", "dung", "tumour"])
def test_unfit_words_and_their_forms_are_kept_out(one: str) -> None:
    assert unfit(one)


@given(st.sampled_from(["kettle", "ember", "abacus", "lovage", "zorbl", "stolen"]))
def test_the_table_says_of_a_word_what_the_lexicon_says(text: str) -> None:
    facts = word(text)
    assert facts.zipf == pytest.approx(zipf(text), abs=0.006)
    assert facts.sense in {"", *(sense.id for base in lexicon().bases(text) for sense in lexicon().senses(base))}
    assert 0 <= facts.picture <= 1
    assert 0 <= facts.pleasant <= 1


def test_a_short_list_counts_where_the_rest_of_the_brief_is_about_its_subject() -> None:
    # cream is of the dairy or for the skin: the other terms of the brief say which
    def chosen(*concepts: str) -> dict[str, float]:
        return {idea.word: idea.chosen for idea in ideas(Brief(concepts=tuple(map(Concept, concepts))))}

    dairy, skin = chosen("cream", "butter"), chosen("cream", "skin")
    assert dairy["dollop"] > skin.get("dollop", 0)
    assert skin["calendula"] > dairy.get("calendula", 0)


def test_a_reason_names_the_term_that_the_meaning_shows() -> None:
    found = {idea.word: idea for idea in ideas(Brief(concepts=(Concept("tea"), Concept("warm"))))}
    assert found["inglenook"].term == "warm"
    assert found["pekoe"].term == "tea"


def test_a_word_with_a_hyphen_says_how_the_goods_are_not_what() -> None:
    said = goods_words(Brief(goods="hand-thrown teapots"))
    assert said["hand"] < said["teapots"] == NAMED


def test_the_last_noun_of_a_compound_names_the_goods() -> None:
    said = goods_words(Brief(goods="coat hooks and towel rails of oak, turned by hand"))
    assert said["hooks"] == said["rails"] == NAMED
    assert max(said["coat"], said["towel"], said["oak"], said["hand"]) < NAMED
    assert goods_words(Brief(goods="tea tins"))["tea"] == NAMED


def test_a_subject_of_two_words_needs_both() -> None:
    def chosen(*concepts: str) -> set[str]:
        return {idea.word for idea in ideas(Brief(concepts=tuple(map(Concept, concepts)))) if idea.chosen}

    assert "Jenny Wren" in chosen("feeder", "bird")
    assert "Jenny Wren" not in chosen("feeder", "soup")


def test_the_goods_choose_the_meaning_of_an_everyday_word() -> None:
    def weights(goods: str) -> dict[str, float]:
        brief = Brief(goods=goods, concepts=(Concept("light"), Concept("walk")))
        return {idea.word: idea.weight for idea in ideas(brief)}

    lamp, bag = weights("a lantern for the night"), weights("a bag to carry")
    assert lamp["glowworm"] > bag.get("glowworm", 0)
    assert bag["thistledown"] > lamp.get("thistledown", 0)


def test_a_word_within_a_term_is_not_that_term() -> None:
    brief_terms = BriefTerms.of(Brief(concepts=(Concept("evening"),)))
    assert brief_terms.of_word("even")[0] < 0.5
    assert brief_terms.of_word("evenings")[0] == 1


def test_a_meaning_that_says_what_the_brief_says_is_told() -> None:
    found = {idea.word: idea for idea in ideas(Brief(concepts=(Concept("fold"), Concept("paper"))))}
    assert found["origami"].defined
    assert not found["concertina"].defined


@pytest.mark.parametrize(
    ("term", "told"),
    [("tie", "simple tie knot (for tie)"), ("horse", "coach with four horses (for horse)"),
     ("wood", "simple tie knot; coach with four horses (for wood)")],
)  # fmt: skip
def test_a_word_of_several_meanings_is_told_by_that_it_is_here_for(term: str, told: str) -> None:
    idea = Idea("four in hand", "saying", "simple tie knot; coach with four horses", np.zeros(1, np.float32), term, 1.0)
    assert idea.why == told


def test_names_in_meanings_have_their_capitals() -> None:
    """The lists are written in small letters; a word that is a thing too (bath, china) keeps its own."""
    assert meaning_of("doctor foster") == "went to Gloucester in the rain"
    assert meaning_of("boreen") == "small Irish country road"
    assert meaning_of("aquae sulis") == "Roman name of bath"


def test_what_one_subject_sees_in_a_phrase_is_not_told() -> None:
    """After the Rain, of mushrooms, stood so beside umbrellas too."""
    assert meaning_of("after the rain") == "the fresh hour"


def test_ideas_are_compared_by_all_but_their_arrays() -> None:
    def tern(weight: float, shared: float) -> Idea:
        array = np.full(2, shared, np.float32)
        return Idea("tern", "find", "a bird", array, "sea", weight, ties=array)

    one, same, other = tern(0.5, 0.1), tern(0.5, 0.2), tern(0.6, 0.1)
    assert [one == same, one != same, one == other, one != other] == [True, False, False, True]
    assert [one in (other, same), one in (other,)] == [True, False]
    assert {one: 1}[same] == 1
    assert one != tuple(one)
