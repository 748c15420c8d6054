"""The filters of the search find what they promise, and its arithmetic is that of single pairs."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from rapidfuzz.distance import LCSseq, Levenshtein

from namescreen.closeness import letters
from namescreen.closeness.appearance import confusable_skeleton
from namescreen.closeness.features import Word
from namescreen.closeness.letters import letter_measures
from namescreen.closeness.sound import sound_measures
from namescreen.closeness.weights import Weight
from namescreen.native import is_compiled
from namescreen.pronunciation import alignment, closest_similarity, sound_similarity
from namescreen.pronunciation.articulatory_features import percent_differences
from namescreen.register.bigram_index import bigrams, bigrams_of, pack_bigrams
from namescreen.register.packing import pack_inverse, pack_lists, pack_strings
from namescreen.register.phoneme_index import Codes, code_arrays
from namescreen.register.string_index import Strings
from namescreen.register.word_search import word_search

needs_compiled = pytest.mark.skipif(not is_compiled(), reason="installed without a C compiler")
both_paths = pytest.mark.parametrize("compiled", [False, pytest.param(True, marks=needs_compiled)])
words = st.text("abcehilmnrsw1o0é𐐨", min_size=1, max_size=12)
codes = st.text("".join(percent_differences()), min_size=1, max_size=9)
long_codes = st.text("".join(percent_differences()), min_size=30, max_size=400)
longer_codes = st.text("".join(percent_differences()), min_size=1, max_size=24)
longer_words = st.text("abcehilmnrs", min_size=1, max_size=80)


def strings_of(texts: list[str], compiled: bool) -> Strings:
    ordered = sorted(set(texts), key=lambda text: (len(text), text))
    arrays: dict[str, np.ndarray] = {}
    pack_strings(arrays, "word", ordered)
    with pytest.MonkeyPatch.context() as patch:
        if not compiled:
            patch.setattr("namescreen.native.library", lambda: None)
        return Strings(arrays, "word")


def phoneme_codes_of(lists: Sequence[tuple[str, ...]], compiled: bool) -> Codes:
    arrays: dict[str, np.ndarray] = {}
    code_arrays(arrays, "code", lists)
    with pytest.MonkeyPatch.context() as patch:
        if not compiled:
            patch.setattr("namescreen.native.library", lambda: None)
        return Codes(arrays, "code")


@both_paths
@given(st.lists(words, min_size=1, max_size=30), words)
def test_measures_of_letters_are_those_of_single_pairs(compiled: bool, texts: list[str], text: str) -> None:
    strings = strings_of(texts, compiled)
    everything = strings.texts(np.arange(len(strings)))
    others = np.array([at for at, other in enumerate(everything) if other != text], np.int64)
    expected = [
        (*letter_measures(text, other), confusable_skeleton(text) == confusable_skeleton(other))
        for other in strings.texts(others)
    ]
    assert strings.measures(text, others).tolist() == list(map(list, expected))
    for other in everything:
        assert letters.spelled_alike(text, other) == letters._spelled_alike(text, other)
    for at, other in enumerate(everything):
        assert strings.find(other) == at
    if text not in everything:
        assert strings.find(text) is None


@both_paths
@settings(deadline=None)
@given(
    st.lists(st.lists(codes | longer_codes | long_codes, max_size=3), min_size=1, max_size=12),
    st.lists(codes | longer_codes | long_codes, min_size=1, max_size=3),
)
def test_both_measures_of_sounds_are_those_of_single_pairs(
    compiled: bool, words: list[list[str]], own: list[str]
) -> None:
    table = phoneme_codes_of([tuple(each) for each in words], compiled)
    assert sorted(table.texts(np.arange(len(table)))) == sorted({code for each in words for code in each})
    assert table.lists() == list(map(tuple, words))
    found = table.sound_measures(own, np.arange(len(words))).T
    for each, values in zip(words, found.tolist(), strict=True):
        if each:
            assert tuple(values) == sound_measures(tuple(own), tuple(each))
        else:
            assert np.isnan(values).all()


@both_paths
@given(st.lists(st.one_of(codes, long_codes), max_size=4), st.lists(codes, max_size=4), st.floats(0.0, 1.0))
def test_the_closest_of_two_lists_of_readings(compiled: bool, one: list[str], other: list[str], least: float) -> None:
    value = max((sound_similarity(mine, yours) for mine in one for yours in other), default=0.0)
    alignment._closest.cache_clear()
    with pytest.MonkeyPatch.context() as patch:
        if not compiled:
            patch.setattr("namescreen.native.library", lambda: None)
        assert closest_similarity(tuple(one), tuple(other), least) == (value if value >= least else 0.0)
    alignment._closest.cache_clear()


@both_paths
@given(st.lists(words, min_size=1, max_size=40), words, st.integers(1, 40), st.data())
def test_those_that_share_most_bigrams(
    compiled: bool, texts: list[str], text: str, count: int, data: st.DataObject
) -> None:
    texts *= 4  # the compiled code goes through them in blocks of 64
    arrays: dict[str, np.ndarray] = {}
    pack_strings(arrays, "word", texts, lengths=False)
    pack_bigrams(arrays, "word")
    left_out = np.array([data.draw(st.booleans()) for _ in texts])
    with pytest.MonkeyPatch.context() as patch:
        if not compiled:
            patch.setattr("namescreen.native.library", lambda: None)
        found = bigrams(arrays, "word").sharing_most(bigrams_of(text), count, left_out)

    def pairs(one: str) -> list[bytes]:
        spaced = f" {one} ".encode()
        return [spaced[at : at + 2] for at in range(len(spaced) - 1)]

    own = set(pairs(text))
    shared = [sum(pair in own for pair in pairs(other)) for other in texts]
    dice = [min(1000, 2000 * n // (len(pairs(other)) + len(own))) for n, other in zip(shared, texts, strict=True)]
    may = [at for at in range(len(texts)) if not left_out[at] and 8 * shared[at] >= len(own)]
    ranked = sorted(may, key=lambda at: -dice[at])
    if len(ranked) > count:
        ranked = [at for at in ranked if dice[at] > dice[ranked[count]]]
    assert found.tolist() == sorted(ranked)


@both_paths
@given(st.lists(st.tuples(longer_words, st.lists(longer_codes, max_size=3)), min_size=1, max_size=12), st.data())
def test_rough_measure_of_words(compiled: bool, held: list[tuple[str, list[str]]], data: st.DataObject) -> None:
    word = Word(data.draw(longer_words), tuple(data.draw(st.lists(longer_codes, max_size=5))), Weight(0.5, 0.5))
    arrays: dict[str, np.ndarray] = {}
    pack_strings(arrays, "word", [text for text, _ in held])
    code_arrays(arrays, "word_code", [readings for _, readings in held])
    pack_lists(arrays, "postings", [[] for _ in held])
    arrays["row_name"], arrays["name_rows"] = np.zeros(0, np.uint32), np.zeros(1, np.uint32)
    with pytest.MonkeyPatch.context() as patch:
        if not compiled:
            patch.setattr("namescreen.native.library", lambda: None)
        found = word_search(arrays).estimates(word, np.arange(len(held)))
    letters, codes = word.letters.encode()[:64], [code[:15] for code in word.phoneme_codes[:4]]
    for (text, readings), value in zip(held, found.tolist(), strict=True):
        other = text.encode()[:64]
        look = sound = 2000 * LCSseq.similarity(letters, other) // (len(letters) + len(other))
        if codes and readings:
            pairs = [(one, another[:15]) for one in codes for another in readings]
            apart = [Levenshtein.distance(*pair) / max(map(len, pair)) for pair in pairs]
            sound = 1000 - min(int(1000 * share + 1e-6) for share in apart)
        assert value == (442 * look + 558 * sound) // 1000


@both_paths
@given(st.lists(st.lists(st.integers(0, 5), min_size=1, max_size=4), min_size=1, max_size=20), st.data())
def test_rows_that_hold_most_of_some_words(compiled: bool, rows: list[list[int]], data: st.DataObject) -> None:
    arrays: dict[str, np.ndarray] = {}
    pack_strings(arrays, "word", list("abcdef"))
    code_arrays(arrays, "word_code", [[]] * 6)
    pack_lists(arrays, "row_words", rows)
    pack_inverse(arrays, "postings", arrays["row_words"], arrays["row_words_start"], 6)
    names = sorted(data.draw(st.integers(0, len(rows) - 1)) for _ in rows)
    arrays["row_name"], arrays["name_rows"] = np.array(names, np.uint32), np.zeros(len(rows) + 1, np.uint32)
    left_out = np.array([data.draw(st.booleans()) for _ in rows])
    adds = np.array([data.draw(st.sampled_from((0, 1, 2, 700, 65535))) for _ in range(6)], np.uint16)
    most = data.draw(st.integers(1, 20))
    with pytest.MonkeyPatch.context() as patch:
        if not compiled:
            patch.setattr("namescreen.native.library", lambda: None)
        found = word_search(arrays).holding(np.arange(6), adds, left_out, most)
    sums = [min(65535, sum(int(adds[word]) for word in row)) for row in rows]
    ranked = sorted((at for at in range(len(rows)) if sums[at] and not left_out[names[at]]), key=lambda at: -sums[at])
    if len(ranked) > most:
        ranked = [at for at in ranked if sums[at] > sums[ranked[most]]]
    assert found.tolist() == sorted(ranked)
