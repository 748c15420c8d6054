"""What the words of a brief are wanted for. The sentences are our own."""

from __future__ import annotations

import pytest

from namescreen.brief import Brief, Concept
from namescreen.errors import InputError
from namescreen.generation import candidates
from namescreen.generation.brief_terms import BriefTerms
from namescreen.generation.short_lists import english_lists, met_by_lists, on_short_lists
from namescreen.generation.wanted import unwanted, words_of_concept


def weights(goods: str = "", product: str = "", *concepts: str) -> dict[str, float]:
    """The weight of each term of a brief."""
    terms = BriefTerms.of(Brief(goods=goods, product=product, concepts=tuple(map(Concept, concepts)))).terms
    return {term.word: term.weight for term in terms}


def test_a_concept_of_one_word_counts_in_full_and_one_of_several_by_what_each_says() -> None:
    assert words_of_concept("harbour") == {"harbour": 1.0}
    note = words_of_concept("first note")
    assert note["first"] < note["note"] / 2 < note["note"] == 1
    assert set(words_of_concept("a bit of mischief")) == {"mischief"}
    goat = words_of_concept("mountain goat")  # a term of its own in WordNet
    assert goat["mountain"] < 0.7 * goat["goat"]
    tools = words_of_concept("needle and thread")
    assert set(tools) == {"needle", "thread"}
    assert min(tools.values()) > max(tools.values()) / 2


@pytest.mark.parametrize("concept", ["no fuss", "without fuss", "never fuss", "anti-fuss"])
def test_what_is_not_wanted_is_no_idea(concept: str) -> None:
    assert words_of_concept(concept) == {}
    assert weights("tents", "", concept, "camp").keys() == {"tent", "camp"}
    with pytest.raises(InputError, match="not wanted"):
        candidates(Brief(concepts=(Concept(concept),)))


@pytest.mark.parametrize(
    ("text", "against"),
    [
        ("a steel gate that keeps mice out of the larder", {"mice"}),
        ("benches wedged without glue or screws", {"glue", "screws"}),
        ("slug traps of clay", {"slug"}),
        ("a spray that deters foxes and cats", {"foxes", "cats"}),
        ("sachets that protect wool against moths", {"moths"}),
        ("a clip that holds a bicycle against railings", set()),
        ("a basket that keeps bread fresh", set()),
        ("soap with no perfume", {"perfume"}),
    ],
)  # fmt: skip
def test_what_goods_are_against_is_told_from_what_they_are_about(text: str, against: set[str]) -> None:
    assert unwanted(text.split()) == against


def test_a_sentence_about_the_product_names_it_only_where_it_begins_so() -> None:
    found = weights("bottled coffee", "A strong concentrate you keep in the fridge", "dark")
    assert found["concentrate"] > 0.9
    assert found["keep"] < 0.3
    assert weights("clips for cables", "You drop the clip behind a desk", "neat").get("drop", 0.0) < 0.3
    assert weights("mouse gates", "", "safe")["mouse"] < 0.3  # goods against it


@pytest.mark.parametrize(
    ("goods", "form", "tells"),
    [
        ("rings for freeing trapped boots", "ring", "boot"),
        ("a board that fits under a kennel", "board", "kennel"),
        ("clips that hold a scarf against a collar", "clip", "scarf"),
        ("hooks for picking up ropes from a boat", "hook", "rope"),
        ("stamps for marking the shells of eggs", "stamp", "eggs"),
    ],
)  # fmt: skip
def test_a_word_of_form_gives_way_to_what_the_goods_are_for(goods: str, form: str, tells: str) -> None:
    found = weights(goods)
    assert found[form] < 0.5 < found[tells]


def test_a_word_of_form_stands_for_goods_where_no_purpose_is_told() -> None:
    assert weights("silver rings")["ring"] > 0.9
    assert weights("rings for men")["ring"] > 0.9


def test_of_a_list_for_several_creatures_those_of_another_one_are_left_out() -> None:
    lists = ((("otter", "hedgehog"), (("holt", 1.0), ("hedgepig", 1.0))),)
    meanings = {"holt": "home of an otter", "hedgepig": "hedgehog"}
    terms = BriefTerms.of(Brief(goods="towels", concepts=(Concept("otter"),)))
    assert set(on_short_lists(terms, met_by_lists(terms, lists), lists, meanings.__getitem__)) == {"holt"}


def test_a_subject_of_several_words_is_met_by_all_of_them_and_then_tells_of_the_goods() -> None:
    lists = ((("~dry/dryer+boot/glove",), (("sun dog", 1.0),)), (("cup",), (("acorn", 1.0),)))
    goods = BriefTerms.of(Brief(goods="a basket that dries boots", concepts=(Concept("oak"),)))
    told = on_short_lists(goods, met_by_lists(goods, lists), lists)
    words = [term.word for term in goods.terms]
    assert told["sun dog"][0][words.index("basket")] == 1.0
    other = BriefTerms.of(Brief(goods="a basket for boots", concepts=(Concept("oak"),)))
    assert not on_short_lists(other, met_by_lists(other, lists), lists)


def test_a_concept_of_several_words_meets_the_list_of_the_whole_phrase_and_two_concepts_do_not() -> None:
    lists = ((("~slow+burn",), (("yule log", 1.0),)), (("cup",), (("acorn", 1.0),)))
    phrase = BriefTerms.of(Brief(goods="chilli sauce", concepts=(Concept("slow burn"), Concept("bold"))))
    assert "yule log" in on_short_lists(phrase, met_by_lists(phrase, lists), lists)
    apart = BriefTerms.of(Brief(goods="chilli sauce", concepts=(Concept("slow"), Concept("burn"))))
    assert not on_short_lists(apart, met_by_lists(apart, lists), lists)


@pytest.mark.parametrize(("goods", "named"), [("tealights", "tealight"), ("hoodies", "hoodie"), ("earbuds", "earbud")])
def test_a_plural_that_wordnet_does_not_know_is_of_the_word_that_is_known_here(goods: str, named: str) -> None:
    assert set(weights(goods)) == {named}


@pytest.mark.parametrize(
    ("goods", "term", "name"),
    [("hoof pick with a stiff brush", "pick", "bower bird"), ("cocktail pick", "pick", "woolgather")],
)  # fmt: skip
def test_a_word_of_many_senses_brings_little_where_nothing_else_speaks_of_its_subject(
    goods: str, term: str, name: str
) -> None:
    def listed(brief: Brief) -> float:
        brief_terms = BriefTerms.of(brief)
        at = [one.word for one in brief_terms.terms].index(term)
        met = met_by_lists(brief_terms, english_lists())
        return float(on_short_lists(brief_terms, met, english_lists())[name][1][at])

    alone = listed(Brief(goods=goods, concepts=(Concept("steady"),)))
    chosen = listed(Brief(goods=goods, concepts=(Concept(term),)))
    assert alone < 0.7 * chosen
