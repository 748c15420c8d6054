"""The arrays of a register are worked out all at once, and say of each string what is said of it alone."""

from __future__ import annotations

import math
from itertools import pairwise, product
from typing import Any

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from namescreen.closeness.appearance import confusable_skeleton
from namescreen.closeness.sound import merge_double_phonemes
from namescreen.pronunciation.alignment import phone_weights, syllables_in
from namescreen.pronunciation.articulatory_features import percent_differences
from namescreen.register.build import MOST_CODES, _combined_codes, build
from namescreen.register.phoneme_index import code_arrays
from namescreen.register.string_search import first_letters

codes = st.text(alphabet="".join(percent_differences()), min_size=1, max_size=8)
marks = st.lists(st.text(alphabet="abcilmnorv 0158éłжひ", max_size=12), max_size=6)


def strings(arrays: dict[str, Any], name: str) -> list[str]:
    blob, starts = arrays[name].tobytes(), arrays[f"{name}_start"].tolist()
    return [blob[at:to].decode() for at, to in pairwise(starts)]


@given(st.lists(st.lists(codes, max_size=3).map(tuple), max_size=8))
def test_packed_codes_weigh_what_each_weighs(lists: list[tuple[str, ...]]) -> None:
    arrays: dict[str, Any] = {}
    code_arrays(arrays, "code", lists)
    packed = strings(arrays, "code")
    assert packed == sorted(set().union(*lists), key=lambda code: (sum(phone_weights(code)), code))
    assert arrays["code_whole"].tolist() == [sum(phone_weights(code)) for code in packed]
    assert arrays["code_syllables"].tolist() == [syllables_in(code) for code in packed]
    present = arrays["code_present"].reshape(-1, len(packed)) if packed else np.zeros((1, 0), np.uint16)
    bits = [sum(int(column[at]) << 16 * place for place, column in enumerate(present)) for at in range(len(packed))]
    letters = list(percent_differences())
    assert bits == [sum(1 << letters.index(letter) + 1 for letter in set(code)) for code in packed]
    assert [packed[at] for at in arrays["code_ids"]] == [code for codes in lists for code in codes]


@given(marks)
def test_packed_words_look_as_each_looks(texts: list[str]) -> None:
    arrays: dict[str, Any] = build(texts)
    words = strings(arrays, "word")
    assert words == sorted(set(words), key=lambda word: (len(word), word))
    assert strings(arrays, "word_shape") == [confusable_skeleton(word) for word in words]
    assert arrays["word_length"].tolist() == [len(word) for word in words]
    assert arrays["word_first"].tolist() == [int(first_letters(word)) for word in words]
    merging = [at for at, word in enumerate(words) if len(confusable_skeleton(word)) < len(word)]
    assert arrays["word_merging"].tolist() == merging
    names = strings(arrays, "name")
    assert names == sorted(names, key=lambda name: (len(name), name))
    assert arrays["name_shape_first"].tolist() == [int(first_letters(confusable_skeleton(name))) for name in names]
    assert arrays["name_rows"][-1] == len(arrays["row_name"])


phones = st.lists(st.sampled_from(["AH0 ", "AH1 ", "K ", "S "]), min_size=1, max_size=2).map("".join)
readings = st.tuples(codes.map(merge_double_phonemes), st.sampled_from([0.1, 0.2, 0.4, 0.5, 1.0]), phones)


@given(st.lists(st.lists(readings, min_size=1, max_size=3).map(tuple), min_size=1, max_size=6))
def test_the_most_probable_ways_to_say_a_name_come_first(words: list[tuple[Any, ...]]) -> None:
    """Equally probable ones in order of their phones; from the sixth word on, one reading each."""
    ways = list(product(*words[:5], *(word[:1] for word in words[5:])))
    ways.sort(key=lambda way: (-math.prod(one[1] for one in way), [phone for one in way for phone in one[2].split()]))
    said = [merge_double_phonemes("".join(one[0] for one in way)) for way in ways[:MOST_CODES]]
    assert _combined_codes(list(words)) == tuple(dict.fromkeys(said))
