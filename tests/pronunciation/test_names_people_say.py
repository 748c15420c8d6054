"""How natural, how predictable, and how a reading is shown to people."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from namescreen.pronunciation import (
    heard_as_spelled,
    pronounce,
    pronounceability,
    say,
    spelled_as_heard,
    spellings,
    syllable_count,
)
from namescreen.pronunciation.predictability import spelled_by_heart

LETTERS = st.text(alphabet="abcdefghijklmnopqrstuvwxyz", min_size=1, max_size=9)


@given(LETTERS)
@settings(deadline=None, max_examples=40)
def test_scores_are_within_range(word: str) -> None:
    for score in (pronounceability, heard_as_spelled, spelled_as_heard):
        assert 0.0 <= score(word) <= 1.0


@pytest.mark.parametrize("score", [pronounceability, heard_as_spelled, spelled_as_heard])
def test_what_cannot_be_read_scores_nothing(score: object) -> None:
    assert callable(score)
    assert score("") == score("42") == 0.0


def test_accidental_gaps_are_natural_and_forbidden_clusters_are_not() -> None:
    """brick is a word, blick might be one, bnick could not (N. Chomsky and M. Halle, "Some controversial questions in
    phonological theory", 1965)."""
    assert pronounceability("blick") > 0.5 > pronounceability("bnick")


def test_made_up_words_rank_as_speakers_rank_them() -> None:
    """Onsets from attested over marginal to unattested (M. Hammond, The Phonology of English, 1999, chapter 3)."""
    scores = [pronounceability(word) for word in ("planter", "bwick", "thlep", "bnick")]
    assert scores == sorted(scores, reverse=True)
    assert pronounceability(("B", "Z", "D")) == 0.0


def test_legal_invented_names_are_sayable() -> None:
    assert min(map(pronounceability, ("zilo", "terravo", "lumora", "klorax", "bronova"))) >= 0.4


@given(LETTERS)
@settings(deadline=None, max_examples=40)
def test_spellings_are_ranked_probabilities(word: str) -> None:
    found = spellings(pronounce(word, 1)[0].phones, 10)
    shares = [share for _, share in found]
    assert shares == sorted(shares, reverse=True)
    assert sum(shares) <= 1 + 1e-9
    assert len(spellings(pronounce(word, 1)[0].phones, 2)) <= 2


def test_a_listener_writes_the_word_they_know() -> None:
    assert spellings(("K", "W", "IH1", "K"))[0][0] == "quick"
    assert heard_as_spelled("quick") > 0.9 > 0.1 > heard_as_spelled("kwik")
    assert heard_as_spelled("night") > heard_as_spelled("knight") > heard_as_spelled("nite")


def test_invented_names_differ_in_how_surely_they_are_spelled_and_read() -> None:
    assert heard_as_spelled("blick") > heard_as_spelled("blikke")
    assert spelled_as_heard("ploofy") > spelled_as_heard("zilovane")
    assert spelled_as_heard("though") > 0.9  # known by heart, whatever its letters suggest


@pytest.mark.parametrize(
    ("word", "shown"),
    [
        ("zilo", "ZIL-oh"), ("planter", "PLAN-ter"), ("measure", "MEZH-er"), ("about", "uh-BOWT"),
        ("palace", "PAL-uss"), ("boy", "BOY"), ("high", "HIGH"), ("echo", "EK-oh"),
    ],
)  # fmt: skip
def test_respelling(word: str, shown: str) -> None:
    assert say(pronounce(word)[0].phones) == shown


@given(LETTERS)
@settings(deadline=None, max_examples=60)
def test_a_respelling_shows_every_syllable_in_plain_letters(word: str) -> None:
    phones = pronounce(word, 1)[0].phones
    shown = say(phones)
    assert shown.replace("-", "").isalpha()
    assert shown.isascii()
    assert shown.count("-") + 1 == max(1, syllable_count(phones))


def test_a_dictionary_word_is_spelled_as_it_is_known() -> None:
    """Whoever knows a word spells it as the dictionary does, unless a commoner one sounds the same."""
    assert min(map(spelled_by_heart, ("thimble", "sparrow", "lantern", "gable"))) > 0.8
    assert spelled_by_heart("knight") < 0.2 < spelled_by_heart("night")
    assert spelled_by_heart("kwik") == heard_as_spelled("kwik")
