"""Blends: letters tied to sounds, every way to cut and join, and the order in which they are offered."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from namescreen import blends
from namescreen.generation.blending.cuts import cuts, shared
from namescreen.generation.blending.features import FEATURES, Similarity, features
from namescreen.generation.blending.letter_statistics import doubt_of_beginning, doubt_of_ending, surprise
from namescreen.generation.blending.source_word import align, source
from namescreen.tables import open_table

WORDS = st.sampled_from(
    "breakfast lunch motor hotel herb clay fountain window sip thyme knowledge queue rhythm a oxygen straw".split()
)
LETTERS = st.text("abcdefghijklmnopqrstuvwxyz", min_size=1, max_size=9)


@pytest.mark.parametrize(
    ("word", "tied"),
    [
        # Each letter or digraph with its sounds, as the CMU Pronouncing Dictionary reads the word.
        ("lunch", "l:L u:AH n:N c:CH h:"),
        ("knowledge", "k:N n: o:AA w: l:L e:AH d:JH g: e:"),
        ("oxygen", "o:AA x:K,S y:AH g:JH e:AH n:N"),
        ("mouse", "m:M o:AW u: s:S e:"),
        ("delicious", "d:D e:IH l:L i:IH c:SH i: o:AH u: s:S"),
    ],
)
def test_letters_are_tied_to_their_sounds(word: str, tied: str) -> None:
    one = source(word)
    found = " ".join(
        f"{letter}:{','.join(one.bare[one.before[at] : one.before[at + 1]])}" for at, letter in enumerate(word)
    )
    assert found == tied


@given(LETTERS, st.lists(st.sampled_from(["AH0", "K", "S", "IY1", "NG", "ZH", "OY2", "TH"]), max_size=9))
def test_any_letters_can_be_tied_to_any_sounds(letters: str, sounds: list[str]) -> None:
    before = align(letters, sounds)
    assert len(before) == len(letters) + 1
    assert before[0] == 0
    assert before[-1] == len(sounds)
    assert all(one <= two for one, two in pairwise(before))


@given(WORDS, WORDS)
def test_every_candidate_holds_letters_of_its_sources_and_stands_once(first: str, second: str) -> None:
    found = cuts(source(first), source(second))
    texts = [cut.text for cut in found]
    assert len(set(texts)) == len(texts)
    assert not {first, second} & set(texts)
    for cut in found:
        if cut.kind == "joined":
            assert cut.text.startswith(first[: cut.front])
            assert cut.text.endswith(second[len(second) - cut.back :])
            assert cut.front + cut.back >= len(cut.text)
        assert set(cut.text) <= set(first + second + "oai")


@given(WORDS, WORDS)
def test_features_are_known_and_finite(first: str, second: str) -> None:
    one, two = source(first), source(second)
    weights = dict(open_table("blend_weights.tsv").items())
    assert set(weights) == set(FEATURES)
    for cut in cuts(one, two):
        found = features(cut, Similarity(cut.first, cut.second))
        assert set(found) <= set(FEATURES)
        assert all(abs(value) < 100 for value in found.values())


@settings(max_examples=30)
@given(WORDS, WORDS)
def test_offers_are_best_first_and_add_up_to_one(first: str, second: str) -> None:
    offered = blends(first, second, limit=100_000)
    assert all(one.score >= two.score for one, two in pairwise(offered))
    if offered:
        assert sum(blend.score for blend in offered) == pytest.approx(1)
    assert len({blend.text for blend in offered}) == len(offered)


@settings(max_examples=20)
@given(WORDS, WORDS, st.integers(1, 40), st.integers(0, 40))
def test_a_larger_limit_only_adds(first: str, second: str, limit: int, more: int) -> None:
    assert blends(first, second, limit=limit + more)[:limit] == blends(first, second, limit=limit)


@settings(max_examples=30)
@given(st.text(max_size=12), st.text(max_size=12))
def test_any_text_is_taken(first: str, second: str) -> None:
    assert len(blends(first, second, limit=5)) <= 5


def test_case_accents_and_spaces_do_not_matter() -> None:
    assert blends("Café", "New York") == blends("cafe", "newyork")


def test_how_shows_what_is_kept_and_lost() -> None:
    assert blends("motor", "hotel")[0].how == "mot(or) + (h)otel"
    assert all(blend.how for blend in blends("clay", "fountain"))


def test_nothing_comes_of_nothing() -> None:
    assert blends("", "clay") == []
    assert blends("clay", "!?") == []
    assert blends("clay", "herb", limit=0) == []


def test_doubt_falls_as_more_is_kept() -> None:
    kept = [doubt_of_beginning("fountain"[:length], "fountain") for length in range(1, 9)]
    assert kept == sorted(kept, reverse=True)
    assert kept[-1] == 0
    assert doubt_of_ending("n", "fountain") > doubt_of_ending("ntain", "fountain") >= 0


def test_unusual_letters_surprise_more() -> None:
    assert sum(surprise("spring")) / 7 < sum(surprise("sqxing")) / 7
    assert len(surprise("fern")) == 5


def test_shared_is_a_common_start() -> None:
    assert shared("motel", "motor") == 3
    assert shared("", "motor") == 0
