"""The parts of a score: each a share with a meaning, weighed as the brief says."""

from __future__ import annotations

from dataclasses import replace
from itertools import islice

import pytest

from namescreen.brief import Brief, Concept
from namescreen.errors import InputError
from namescreen.generation.appraisal import GIVEN
from namescreen.generation.brief_terms import BriefTerms
from namescreen.generation.candidate import Proposal, form_of
from namescreen.generation.constructions import CONSTRUCTIONS
from namescreen.generation.ideas import ideas_of
from namescreen.generation.material import Material
from namescreen.generation.name_sounds import syllables
from namescreen.generation.ranking import PARTS, Judge, default_weights, levels, resemblance, weights_of
from namescreen.generation.word_sounds import sounds_of


def proposal(text: str, *sources: str, construction: str = "pair") -> Proposal:
    words = tuple(text.lower().split())
    sounds = tuple(sound for word in words for sound in sounds_of(word))
    return Proposal(text, words, construction, text, sources or words, words[0], sounds)


@pytest.fixture(scope="module")
def judge(studio: Brief, material: Material) -> Judge:
    return Judge(weights_of(studio), material.brief_terms, material.ideas, studio.goods)


def test_every_part_is_a_share_and_so_is_the_score(judge: Judge, material: Material) -> None:
    for propose in CONSTRUCTIONS.values():
        for one in islice(propose(material), 60):
            parts = judge.parts(one)
            assert list(parts) == list(PARTS)
            assert all(0 <= value <= 1 for value in parts.values()), (one, parts)
            assert 0 <= judge.score(parts, form_of(one)) <= 1


def test_a_batch_equals_singles(judge: Judge, material: Material) -> None:
    some = list(islice(CONSTRUCTIONS["blend"](material), 40))
    assert [judge.parts(one) for one in some] == [judge.parts(one) for one in reversed(some)][::-1]


def test_every_part_has_a_weight_and_a_meaning() -> None:
    ours = {form for form in default_weights() if not form.startswith(GIVEN)}
    assert ours == {*CONSTRUCTIONS, "pair joined", "figure named"}
    assert {GIVEN + form for form in ours} <= set(default_weights())
    assert set(levels()) == set(default_weights())  # a word that was read, such as spirit level, is no form
    for weights in default_weights().values():
        assert set(PARTS) == set(weights)
        assert sum(weights.values()) == pytest.approx(1, abs=0.001)
    assert all(PARTS.values())


def test_unknown_weights_are_refused_together(studio: Brief) -> None:
    with pytest.raises(InputError) as caught:
        weights_of(replace(studio, ranking_weights={"beauty": 1.0, "length": 2.0, "glamour": 3.0}))
    assert len(caught.value.problems) == 2
    assert "sense" in str(caught.value)


def test_weights_of_the_brief_decide(studio: Brief, material: Material) -> None:
    weights = weights_of(replace(studio, ranking_weights={name: float(name == "length") for name in PARTS}))
    only_length = Judge(weights, material.brief_terms, material.ideas, studio.goods)
    long, short = proposal("Understanding Clay", "clay"), proposal("Clayring", "clay", "ring")
    assert only_length.score(only_length.parts(short), "pair") == only_length.parts(short)["length"]
    assert only_length.score(only_length.parts(short), "pair") > only_length.score(only_length.parts(long), "pair")


@pytest.mark.parametrize(
    ("part", "better", "worse"),
    [
        ("sayable", "Clayring", "Clzyrngh"),
        ("length", "Clayring", "Claystoneherbfountain"),
        ("sense", "Clayherb", "Oakwolf"),
        ("true", "Clayherb", "Oakwolf"),
        ("indirect", "Oakwolf", "Herbplanter"),
        ("telling", "Herbplanter", "Oakwolf"),
    ],
)
def test_parts_point_the_right_way(judge: Judge, part: str, better: str, worse: str) -> None:
    cut = {"Clayring": ("clay", "ring"), "Clayherb": ("clay", "herb"), "Oakwolf": ("oak", "wolf"),
           "Herbplanter": ("herb", "planters")}  # fmt: skip
    one = judge.parts(proposal(better, *cut.get(better, ("clay",))))
    other = judge.parts(proposal(worse, *cut.get(worse, ("clay",))))
    assert one[part] > other[part]


def test_what_a_kind_of_word_promises_is_told_of_existing_words_alone(judge: Judge, material: Material) -> None:
    found = [judge.parts(one)["promise"] for one in islice(CONSTRUCTIONS["found"](material), 60)]
    made = [judge.parts(one)["promise"] for one in islice(CONSTRUCTIONS["pair"](material), 60)]
    assert len(set(found)) > 30
    assert set(made) == {0.5}


def test_what_is_said_in_passing_is_told_from_the_concepts_and_the_goods() -> None:
    brief = Brief(
        goods="a brush for hats", concepts=(Concept("dust"),), product="Nobody likes to wear a felt hat full of pollen."
    )
    terms = BriefTerms.of(brief)
    judge = Judge(weights_of(brief), terms, ideas_of(brief, terms), brief.goods)
    names = ("pollen", "dust", "brush")
    aside = {name: judge.parts(proposal(name, name, construction="found"))["aside"] for name in names}
    assert aside["pollen"] > 0.9
    assert max(aside["dust"], aside["brush"]) < 0.5


def test_syllables_are_counted_by_sound_or_by_letters() -> None:
    assert syllables(proposal("Slow Fern")) == 2
    assert syllables(Proposal("Solara", ("solara",), "blend", "", ("sol",), "sol")) == 3


def test_resemblance_is_greatest_for_the_model_itself_and_for_its_like() -> None:
    model = ("brookwell",)
    assert resemblance(proposal("Brookwell", "brook", "well"), model) == pytest.approx(1)
    near, far = proposal("Streamford", "stream", "ford"), proposal("Bold Otter", "bold", "otter")
    assert resemblance(near, model) > resemblance(far, model)
