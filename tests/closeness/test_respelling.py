"""Respelled words have the meaning and the weight of the word they are heard as.

Sources: words that the American office held to be only misspellings (TMEP 1209.03(j), cases cited from memory); the
other words are everyday eye spellings of our own choice.
"""

from __future__ import annotations

import random

import pytest

from namescreen import compare
from namescreen.closeness import respelling, vocabulary
from namescreen.closeness.features import features
from namescreen.closeness.respelling import heard_parts, heard_word
from namescreen.closeness.vocabulary import expect_many, meant, segmentations
from namescreen.closeness.word_meaning import meaning


@pytest.mark.parametrize(
    ("written", "heard"),
    [
        *[("quik", "quick"), ("fom", "foam"), ("thru", "through"), ("houzing", "housing")],  # TMEP 1209.03(j)
        *[("kwik", "quick"), ("glu", "glue"), ("supa", "super"), ("toze", "toes"), ("stytch", "stitch")],
        *[("frsh", "fresh"), ("xprss", "express"), ("wrmth", "warmth")],  # without vowels
        *[("zvrk", "zvrk"), ("html", "html")],  # that stand for no word; known as they are
        *[("quick", "quick"), ("zarvo", "zarvo"), ("quenza", "quenza"), ("loamlet", "loamlet")],  # known, or coined
    ],
)
def test_an_unknown_word_is_meant_as_the_everyday_word_it_is_heard_as(written: str, heard: str) -> None:
    assert meant(written) == heard


@pytest.mark.parametrize(("one", "other"), [("kwik", "quick"), ("toze", "toes"), ("glu", "gloo")])
def test_a_respelled_word_has_the_meaning_of_the_word(one: str, other: str) -> None:
    assert (meaning(one, other) or 0) >= 0.8
    assert meaning(one, other) == meaning(other, one)


@pytest.mark.parametrize(
    ("one", "other"),
    [("frsh", "fresh"), ("frsh linen", "fresh linen"), ("ez fold", "easy fold"), ("ezfold", "easyfold")],
)
def test_a_clipped_word_is_said_as_the_word_it_stands_for(one: str, other: str) -> None:
    assert set(features(one).phoneme_codes) & set(features(other).phoneme_codes)


def test_two_respelled_words_run_together_are_parted() -> None:
    assert heard_parts("supakup") == ("supa", "kup")
    assert heard_parts("kwikstytch") == ("kwik", "stytch")
    assert heard_parts("sprigwick") == ()


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("22 South", ["twenty", "two", "south"]),
        ("Gr8 Graters", ["great", "graters"]),
        ("4tified", ["fortified"]),
        ("5ive", ["five"]),
    ],
)
def test_digits_are_read_as_the_words_they_stand_for(name: str, words: list[str]) -> None:
    assert words in [[word.letters for word in way] for way in features(name).segmentations]


@pytest.mark.parametrize(
    ("one", "other"),
    [("Kwik Stytch", "Quick Stitch"), ("Gr8 Graters", "Great Grater"), ("Twenty-Two South", "22 South")],
)
def test_a_respelled_name_says_the_same(one: str, other: str) -> None:
    found = compare(one, other)
    assert found.meaning is not None
    assert found.meaning >= 0.8


@pytest.mark.parametrize(
    ("part", "means"),
    [("hydro", "water"), ("hydra", ""), ("litho", "stone"), ("thermo", "heat"), ("veli", ""), ("zarvo", "")],
)
def test_a_combining_form_means_what_dictionaries_say(part: str, means: str) -> None:
    assert (meant(part) if meant(part) != part else "") == means  # hydra is a word, velo has four letters


def test_coined_words_with_one_combining_form_share_its_meaning() -> None:
    assert [word.letters for word in features("Lithovane").segmentations[1]] == ["litho", "vane"]
    alike, apart = compare("Thermoquen", "Thermovaz"), compare("Thermoquen", "Hydrovaz")
    assert alike.meaning > apart.meaning


def test_words_are_heard_and_divided_alike_where_there_are_many(monkeypatch: pytest.MonkeyPatch) -> None:
    rng = random.Random(5)
    starts = [
        "super",
        "kup",
        "hydro",
        "zar",
        "ekettle",
        "supa",
        "tru",
        "home",
        "vo",
        "nite",
        "herb",
        "photo",
        "quiq",
        "sno",
    ]
    words = ["".join(rng.choices(starts, k=2)) for _ in range(150)] + starts

    def found() -> list[tuple[object, ...]]:
        return [tuple(work.__wrapped__(word) for work in (segmentations, heard_word, heard_parts)) for word in words]

    before = found()
    for module, name in ((respelling, "_heard"), (vocabulary, "_parts_seen")):
        monkeypatch.setattr(module, name, getattr(module, name))  # put back at the end
    expect_many()
    assert found() == before
