"""Each construction proposes names by its own rule, from the material and nothing else."""

from __future__ import annotations

from itertools import islice

import pytest

from namescreen.generation.constructions import CONSTRUCTIONS
from namescreen.generation.constructions.affixation import attach
from namescreen.generation.constructions.clipping import clip
from namescreen.generation.constructions.compound import seam
from namescreen.generation.constructions.respelling import respelled
from namescreen.generation.expansion import Idea
from namescreen.generation.material import Material, best_pairs, title
from namescreen.pronunciation import rhyme
from namescreen.tables import open_table
from namescreen.text import parse


@pytest.mark.parametrize("name", list(CONSTRUCTIONS))
def test_every_construction_proposes(name: str, material: Material) -> None:
    proposals = list(islice(CONSTRUCTIONS[name](material), 200))
    assert len(proposals) > 20
    known = {idea.word for idea in material.ideas}
    companions = {idea.word for place in ("after", "before", "verb", "of") for idea in material.companions(place)}
    for proposal in proposals:
        assert proposal.construction == name
        assert parse(proposal.text).words == proposal.words
        assert set(proposal.sources) <= known | companions
        assert set(proposal.sources) & known
        assert proposal.how
        assert 0 <= proposal.craft <= 1
        assert 0 <= proposal.clear <= 1


@pytest.mark.parametrize("name", list(CONSTRUCTIONS))
def test_a_construction_says_the_same_twice(name: str, material: Material) -> None:
    assert list(islice(CONSTRUCTIONS[name](material), 50)) == list(islice(CONSTRUCTIONS[name](material), 50))


@pytest.mark.parametrize(
    ("word", "suffix", "text"),
    [
        # Spelling rules as in The Cambridge Grammar of the English Language (2002), chapter 18.
        ("sip", "er", "sipper"),
        ("bake", "er", "baker"),
        ("clay", "let", "claylet"),
        ("berry", "let", "berrylet"),
        ("fern", "ery", "fernery"),
        ("pottery", "ful", "potteriful"),
        ("snow", "er", None),
        ("hill", "ling", None),
        ("moss", "some", None),
    ],
)
def test_suffixes_follow_the_rules_of_spelling(word: str, suffix: str, text: str | None) -> None:
    assert attach(word, suffix) == text


@pytest.mark.parametrize(("word", "short"), [("garden", "gard"), ("fountain", "foun"), ("cinnamon", "cin"),
                                             ("clay", ""), ("oasis", "")])  # fmt: skip
def test_clippings_end_with_a_consonant(word: str, short: str) -> None:
    assert clip(word)[0] in (short, short[:3])


def test_clean_seams_beat_clashes() -> None:
    assert seam("clay", "nest") > seam("sill", "leaf") > seam("tea", "oak")
    assert seam("pot", "herb") < 1  # would read as th


def test_respellings_are_not_words_and_say_what_changed() -> None:
    assert dict(respelled("clover"))["klover"] == "k for c"
    assert "two" not in dict(respelled("too"))


def test_echoes_rhyme(material: Material) -> None:
    from namescreen.generation.word_sounds import sounds_of

    rhymes = [one for one in islice(CONSTRUCTIONS["echo"](material), 300) if "rhymes" in one.how]
    assert rhymes
    assert all(rhyme(sounds_of(one.words[0]), sounds_of(one.words[1])) for one in rhymes)


def test_pairs_come_by_the_product_of_their_weights() -> None:
    def idea(word: str, weight: float) -> Idea:
        return Idea(word, "c", "a concept", 0, weight, "n")

    one = [idea("a", 1.0), idea("b", 0.9), idea("c", 0.2)]
    two = [idea("x", 0.8), idea("y", 0.7), idea("z", 0.1)]
    products = [a.weight * b.weight for a, b in best_pairs(one, two)]
    assert len(products) == 9
    assert products == sorted(products, reverse=True)


def test_titles_keep_small_words_small() -> None:
    assert title("house", "of", "fern") == "House of Fern"


def test_the_seed_stirs_companions_and_the_tone_chooses_them(material: Material) -> None:
    from dataclasses import replace

    warm = replace(material, tones=frozenset({"warm"}))
    first = [idea.word for idea in warm.companions("before")[:5]]
    table = open_table("companions.tsv")
    assert set(first) <= set((table.get("before warm") or "").split())
    assert [i.word for i in replace(material, seed=2).companions("after")] != [
        i.word for i in material.companions("after")
    ]
