"""Each construction proposes names by its own rule, from the material and nothing else."""

from __future__ import annotations

from itertools import islice

import numpy as np
import pytest

from namescreen.generation.constructions import CONSTRUCTIONS
from namescreen.generation.constructions.changed import (
    Slot,
    changed,
    codes,
    familiarity,
    heard,
    kept,
    slots,
    sound_keys,
    unmixed,
)  # fmt: skip
from namescreen.generation.constructions.pair import seam
from namescreen.generation.ideas import Idea, first_names
from namescreen.generation.material import Material, best_pairs, title
from namescreen.generation.word_sounds import sounds_of
from namescreen.pronunciation import rhyme
from namescreen.pronunciation.phones import code_of
from namescreen.tables import open_table
from namescreen.text import parse


@pytest.mark.parametrize("name", sorted(CONSTRUCTIONS.keys() - {"local"}))  # for other buyers: test_local_names
def test_every_construction_proposes(name: str, material: Material) -> None:
    proposals = list(islice(CONSTRUCTIONS[name](material), 200))
    assert len(proposals) > (10 if name == "saying" else 20)  # sayings must hold a word of the brief
    known = {idea.word for idea in material.ideas}
    for proposal in proposals:
        assert proposal.construction == name
        assert "".join(parse(proposal.text).words) == proposal.letters
        assert set(proposal.sources) <= known
        assert proposal.how
        assert 0 <= proposal.join <= 1
        assert 0 <= proposal.clear <= 1
        assert 0 <= proposal.heard <= 1


@pytest.mark.parametrize("name", sorted(CONSTRUCTIONS.keys() - {"local"}))  # for other buyers: test_local_names
def test_a_construction_says_the_same_twice(name: str, material: Material) -> None:
    assert list(islice(CONSTRUCTIONS[name](material), 50)) == list(islice(CONSTRUCTIONS[name](material), 50))


def test_clean_seams_beat_clashes() -> None:
    assert seam("clay", "nest") > seam("sill", "leaf") > seam("tea", "oak")
    assert seam("pot", "herb") < 1  # would read as th


def test_a_changed_name_keeps_the_rest_of_its_original(material: Material) -> None:
    garden = code_of(sounds_of("garden"))
    assert garden in codes(sound_keys(garden)[0])
    slot = next(slot for slot in slots(garden) if slot.original == "garden of eden" and slot.part == "garden")
    thyme = next(idea for idea in material.ideas if idea.word == "thyme")
    one = changed(thyme, slot)
    assert one.text == "Thyme of Eden"
    assert one.original == "garden of eden"


@pytest.mark.parametrize(
    ("name", "original", "worse"), [("buttercup", "buttercup", "thyme"), ("sloe motion", "slow motion", "oak chairs")]
)
def test_an_original_is_heard_as_far_as_the_sounds_are_alike(name: str, original: str, worse: str) -> None:
    def sounds(text: str) -> tuple[str, ...]:
        return tuple(sound for one in text.split() for sound in sounds_of(one))

    assert heard(sounds(name), original) == pytest.approx(familiarity(original))
    assert heard(sounds(worse), original) < 0.5 * heard(sounds(name), original)


def test_every_part_is_found_by_its_sounds_and_has_a_known_original() -> None:
    keys = [key for key, _ in open_table("familiar_sounds.tsv").items()]
    sounds = [key.removeprefix("=") for key in keys if key.startswith("=")]
    assert len(sounds) > 1000
    for code in sounds[::5]:
        assert all(code in codes(key) for key in sound_keys(code))
        assert all(open_table("familiar_phrases.tsv").get(slot.original) is not None for slot in slots(code))
        assert slots(code)


def test_figures_sound_alike_where_it_is_noticed(material: Material) -> None:
    names, titles = map(set, first_names())
    for one in islice(CONSTRUCTIONS["figure"](material), 100):
        first, *rest = one.text.split()
        if rest and first in names | titles:
            a, b = sounds_of(first.casefold()), sounds_of(one.words[-1])
            stressed = [next((s for s in sounds if s.endswith("1")), "") for sounds in (a, b)]
            assert a[0] == b[0] or stressed[0] == stressed[1] or rhyme(a, b)


def test_pairs_come_by_the_product_of_their_weights() -> None:
    def idea(word: str, weight: float) -> Idea:
        return Idea(word, "world", "", np.zeros(0, np.float32), "", weight)

    one = [idea("a", 1.0), idea("b", 0.9), idea("c", 0.2)]
    two = [idea("x", 0.8), idea("y", 0.7), idea("z", 0.1)]
    products = [a.weight * b.weight for a, b in best_pairs(one, two, lambda idea: idea.weight)]
    assert len(products) == 9
    assert products == sorted(products, reverse=True)


def test_titles_keep_small_words_small() -> None:
    assert title("garden", "of", "fern") == "Garden of Fern"
    assert title("a", "fern") == "A Fern"


def test_what_is_kept_of_an_original_is_more_the_less_is_changed() -> None:
    assert kept("through thyme and thin", "through thick and thin") > kept("thymes", "times") >= 0
    assert kept("herb and soul", "heart and soul") > kept("herb garden", "roof garden")


def test_what_is_left_of_a_saying_may_show_another_trade(material: Material) -> None:
    assert unmixed(material.brief_terms, "and honey") < unmixed(material.brief_terms, "through and")


def test_a_changed_saying_holds_a_word_of_the_brief_and_the_article_that_goes_with_it(material: Material) -> None:
    told = {term.word for term in material.brief_terms.terms}
    first = list(islice(CONSTRUCTIONS["changed"](material), 10))
    assert sum(one.sources[0] in told for one in first) >= 8
    slot = Slot("break a leg", "break a ", "leg", "", "", True, 0)
    egg = Idea("egg", "goods", "", np.ones(1, np.float32), "egg", 0.2)
    assert changed(egg, slot).text == "Break an Egg"
    slot = Slot("a leg up", "a ", "leg", " up", "", True, 0)  # at the beginning too
    assert changed(egg, slot).text == "An Egg Up"


def test_a_pair_holds_a_word_of_the_brief_and_joined_ones_mostly_begin_alike(material: Material) -> None:
    told = {term.word for term in material.brief_terms.terms}
    first = list(islice(CONSTRUCTIONS["pair"](material), 40))
    assert all(told & {*one.sources} for one in first)
    joined = [one for one in first if " & " in one.text][:10]
    assert sum(sounds_of(one.sources[0])[0] == sounds_of(one.sources[1])[0] for one in joined) > len(joined) / 2
