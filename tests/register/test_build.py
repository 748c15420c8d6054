"""The arrays of a register are worked out all at once, and say of each string what is said of it alone."""

from __future__ import annotations

from itertools import pairwise
from typing import Any

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from namescreen.closeness import features
from namescreen.closeness.telling import telling_part
from namescreen.pronunciation.alignment import phone_weights, syllables_in
from namescreen.pronunciation.articulatory_features import percent_differences
from namescreen.register.build import build
from namescreen.register.index import Index
from namescreen.register.phoneme_index import code_arrays

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
    assert [packed[at] for at in arrays["code_ids"]] == [code for codes in lists for code in codes]


@given(marks)
def test_words_and_names_are_in_order_of_their_length(texts: list[str]) -> None:
    arrays: dict[str, Any] = build(texts)
    words = strings(arrays, "word")
    assert words == sorted(set(words), key=lambda word: (len(word), word))
    assert arrays["word_length"].tolist() == [len(word) for word in words]
    names = strings(arrays, "name")
    assert names == sorted(names, key=lambda name: (len(name), name))
    assert arrays["name_rows"][-1] == len(arrays["row_name"])


WORDS = ("read", "the", "live", "tomato", "either", "route", "vase", "zarvo", "kwikly", "minute", "xilo", "mall",
         "foutrelle", "brot", "frsh", "4")  # fmt: skip
"""Words with one reading or several, words that nobody knows, and words of other languages or not said as written."""


@settings(max_examples=40)
@given(st.lists(st.lists(st.sampled_from(WORDS), min_size=1, max_size=14).map(" ".join), min_size=1, max_size=4))
def test_an_index_keeps_the_readings_that_closeness_hears(names: list[str]) -> None:
    index = Index(build(names))
    kept = dict(zip(index.names.texts(np.arange(len(index.names))), index.name_codes.lists(), strict=True))
    told = {*names, *(telling_part(name, "") for name in names)}  # "read", of "read the"
    assert kept == {features(name).letters: features(name).phoneme_codes for name in told}
