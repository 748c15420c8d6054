"""The meanings of a word as they are listed and picked, and concepts of several words."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from namescreen.brief import Brief, Concept
from namescreen.cli.steer_words import sense_lines
from namescreen.generation.brief_terms import BriefTerms
from namescreen.generation.senses import chosen_senses, doubt, guide_words, is_coarse, key_of, newer_word
from namescreen.generation.ties import known_words, sources_of
from namescreen.lexicon import lexicon
from tests.conftest import Run

WORDS = ("mount", "spring", "bolt", "bar", "draw", "light", "run", "seal", "cover", "pipe", "be", "glow")


@pytest.mark.parametrize("word", WORDS)
def test_each_meaning_is_picked_by_a_word_of_its_own_as_far_as_there_is_one(word: str) -> None:
    senses = lexicon().senses(word)
    keys = {sense.id: key_of(sense, word) for sense in senses}
    for sense in senses:
        key, picked = keys[sense.id]
        assert sense in picked
        assert not key or set(chosen_senses(Concept(word, (key,)))) == set(picked)
    assert sum(1 for key, picked in keys.values() if key and len(picked) == 1) >= 0.8 * len(senses)


@pytest.mark.parametrize("word", WORDS)
def test_listed_meanings_stand_once_and_can_be_typed(word: str) -> None:
    for asked in (word, f"{word} all"):
        lines = sense_lines(asked, Brief(goods="oak shelves"))
        typed = [line.split("  ")[0] for line in lines if line.startswith(f"{word}=")]
        assert typed
        assert len(typed) == len(set(typed))
        assert all(re.fullmatch(rf"{word}=\w+", one) for one in typed)


@pytest.mark.parametrize(
    ("word", "label", "coarse"),
    [
        ("mount", "to ride", True),  # WordNet: copulate with
        ("ball", "gonad", True),
        ("screw", "sexual intercourse", True),
        ("hump", "to sleep together, roll in the hay", True),
        ("screw", "fastener", False),
        ("bed", "bedroom furniture", False),
        ("mount", "horse", False),
        ("cock", "faucet", False),
    ],
)
def test_coarse_meanings_are_known_by_what_they_are_a_kind_of(word: str, label: str, coarse: bool) -> None:
    (sense,) = (one for one in lexicon().senses(word) if one.tag == label)
    assert is_coarse(sense, word) is coarse


def test_coarse_meanings_stand_last_and_not_among_the_chief_ones() -> None:
    every = sense_lines("screw all", Brief(goods="brass hinges"))
    assert "sexual" in every[-2]
    assert not any("sexual" in line for line in sense_lines("screw", Brief(goods="brass hinges")))


def test_a_word_of_the_goods_is_a_thing_first() -> None:
    for word, goods in (("felt", "felt hats"), ("paper", "paper lanterns"), ("cork", "cork mats")):
        key = sense_lines(word, Brief(goods=goods))[0].partition("=")[2].split()[0]
        assert {sense.pos for sense in chosen_senses(Concept(word, (key,)))} <= {"n", "a"}


def test_a_concept_of_several_words_is_told_and_takes_no_meaning(run: Run) -> None:
    done = run("brainstorm", "-c", "deep water", "-c", "rope", "--limit", "3")
    assert done.returncode == 0, done.stderr
    assert "'deep water' is taken as deep and water, each less than a concept of one word." in done.stderr
    done = run("brainstorm", "-c", "deep water=sea", "--limit", "3")
    assert done.returncode == 2
    assert "deep=sea, water" in done.stderr
    again = run("brainstorm", "-c", "deep=sea", "-c", "water", "--limit", "3")  # as the message says
    assert again.returncode == 0, again.stderr


@pytest.mark.parametrize("concept", ['"deep water=sea"', '{ word = "deep water", senses = ["sea"] }'])
def test_a_brief_gives_no_meaning_to_several_words(concept: str, run: Run, tmp_path: Path) -> None:
    (tmp_path / "b.toml").write_text(f"concepts = [{concept}]\n")
    done = run("brainstorm", "b.toml")
    assert done.returncode == 2
    assert "line 1, concepts, item 1: " in done.stderr
    assert '"deep=sea", "water"' in done.stderr


def test_what_no_name_is_about_is_answered_with_what_can_be_typed(run: Run) -> None:
    done = run("brainstorm", "-c", "grommet hole", "-c", "rope", "--limit", "12")
    assert "--concept grommet hole=" not in done.stderr


@pytest.mark.parametrize(
    ("newer", "said"), [("umami", "savoury"), ("thock", "knock"), ("hillwalking", "hill"), ("dawnlight", "dawn")]
)
def test_a_word_that_the_lexicon_lacks_is_said_in_everyday_words(newer: str, said: str) -> None:
    assert said in newer_word(newer)
    brief = BriefTerms.of(Brief(goods="wooden box", concepts=(Concept(newer),)))
    plain = BriefTerms.of(Brief(goods="wooden box", concepts=(Concept(said),)))
    best = brief.terms[0].associations.argsort()[::-1][:300]
    assert (plain.terms[0].associations[best] > 0).sum() > 30
    assert "is taken as" in doubt(Concept(newer))


def test_an_everyday_word_that_names_no_meaning_says_which_is_meant() -> None:
    assert guide_words(Concept("turning", ("lathe",))) == ("lathe",)
    assert not doubt(Concept("turning", ("lathe",)))
    assert "No meaning" in doubt(Concept("lane", ("banana",)))
    assert not doubt(Concept("crunchy"))  # in no dictionary here, and yet known by its company


def test_a_meaning_that_is_given_keeps_the_names_of_the_others_out() -> None:
    def listed(*senses: str) -> float:
        brief = Brief(goods="stoneware birdbaths", concepts=(Concept("bird"), Concept("spring", senses)))
        terms = BriefTerms.of(brief)
        at = [term.word for term in terms.terms].index("spring")
        snowdrop = next(place for place, one in enumerate(known_words()) if one.word == "snowdrop")
        return float(sources_of(terms).listed[snowdrop, at])

    assert listed("source") < 0.1 < listed("season")
