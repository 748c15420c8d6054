"""The search for readings in C gives what the search in Python gives, to the last bit."""

from __future__ import annotations

import math
import multiprocessing
import random
import string
import sys

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from namescreen.native import is_compiled
from namescreen.native.g2p import CompiledReadings
from namescreen.pronunciation.g2p import JointModel, PythonReadings
from namescreen.tables import open_table

pytestmark = pytest.mark.skipif(not is_compiled(), reason="the kernel was not compiled, or NAMESCREEN_NATIVE is off")

TABLES = open_table("g2p.tsv"), open_table("joint_units.tsv")
COMPILED, PLAIN = JointModel(*TABLES), JointModel(*TABLES)
PLAIN._search = PythonReadings(PLAIN)
ALL = 1_000

invented = st.lists(st.text(alphabet=string.ascii_lowercase, max_size=14), min_size=1, max_size=12)
doubled = st.lists(st.text(alphabet="aelst", max_size=12), min_size=1, max_size=6)


def same(word: str, beam: int = 24, within: float = 6.0) -> None:
    assert COMPILED.readings(word, ALL, beam, within) == PLAIN.readings(word, ALL, beam, within), word


def test_the_compiled_search_is_what_is_tried() -> None:
    assert isinstance(COMPILED._search, CompiledReadings)


def test_words_of_the_dictionary() -> None:
    for word in [word for word, _ in open_table("pronunciations.tsv").items()][::120]:
        same(word)


@given(invented)
@settings(max_examples=150)
def test_invented_words_one_after_another(words: list[str]) -> None:
    for word in sorted(words) + words:
        same(word)


@given(doubled, st.integers(1, 60), st.sampled_from([0.0, 0.5, 3.0, 6.0, 9.0]))
@settings(max_examples=150)
def test_doubled_letters_in_any_beam(words: list[str], beam: int, within: float) -> None:
    for word in words:
        same(word, beam, within)


@given(st.text(max_size=20))
@settings(max_examples=300)
def test_any_text(text: str) -> None:
    same(text)


@pytest.mark.parametrize(
    "word", ["", "a", "brst", "zzz", "A", "it's", "naïve", "a\0b", "a b", "?", "\ud800", "x\n", "aaaaaaaaaaaaaaaaaaaa"]
)
def test_what_is_no_word(word: str) -> None:
    same(word)


def test_a_table_that_was_read_beforehand_gives_the_same() -> None:
    read = JointModel(*TABLES)
    read.preload()
    for word in [
        "",
        "a",
        "zorvex",
        "thymepot",
        "x\n",
        *[word for word, _ in open_table("pronunciations.tsv").items()][::997],
    ]:
        assert read.readings(word, ALL) == COMPILED.readings(word, ALL), word


def test_long_words() -> None:
    letters = random.Random(7)
    same("planter" * 40)
    same("x" * 300)
    same("".join(letters.choices(string.ascii_lowercase, k=700)))
    same("kettle", within=math.inf)
    longest = COMPILED.readings("thymepot" * 625, 3)  # 5,000 letters
    assert longest
    assert sum(share for _, share in longest) <= 1 + 1e-9
    same("thymepot")


@given(st.text(alphabet="aeilmnrst", max_size=8), st.integers(-2, 5))
def test_as_many_as_are_asked_for(word: str, limit: int) -> None:
    assert COMPILED.readings(word, limit) == PLAIN.readings(word, limit)


def test_more_words_than_are_remembered_change_nothing() -> None:
    letters = random.Random(3)
    words = ["".join(letters.choices(string.ascii_lowercase, k=9)) for _ in range(6_000)]
    first = [COMPILED.readings(word, 3) for word in words[:50]]
    for word in words:
        COMPILED.readings(word, 3)
    assert [COMPILED.readings(word, 3) for word in words[:50]] == first


@pytest.mark.skipif(sys.platform != "linux", reason="only Linux forks where it is safe")
def test_a_forked_process_reads_the_same() -> None:
    words = ["zilovane", "kwench", "plorabit", "thruxy"]
    here = [COMPILED.readings(word, 3) for word in words]
    with multiprocessing.get_context("fork").Pool(2) as pool:
        assert pool.map(_three, words) == here


def _three(word: str) -> list[tuple[str, float]]:
    return COMPILED.readings(word, 3)
