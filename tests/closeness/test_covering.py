"""How far names cover one another, by compiled code and in arrays: the same to the last bit, and what is worked out for
each pair of segmentations. Invented numbers."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from namescreen.closeness.covering import ArrayRows, covering
from namescreen.closeness.name_similarity import _covered, _left_over, _shared
from namescreen.native import is_compiled

NAMES = st.lists(st.lists(st.lists(st.integers(0, 6), min_size=1, max_size=12), min_size=1, max_size=3), max_size=8)
"""Of each name its rows, of each row its words."""


def laid_out(names: list[list[list[int]]]) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    rows = [row for name in names for row in name]
    words = [word for row in rows for word in row]
    start, first = (np.cumsum([0, *map(len, each)])[:-1].astype(np.int64) for each in (rows, names))
    return np.array(words, np.int64), start, first


@settings(max_examples=150, deadline=None)
@given(NAMES, st.integers(1, 4), st.integers(0, 1 << 32))
def test_names_are_covered_alike_by_compiled_code_in_arrays_and_one_by_one(
    names: list[list[list[int]]], count: int, seed: int
) -> None:
    words, start, first = laid_out(names)
    draw = np.random.default_rng(seed)
    table, shares, weights = draw.random((count, 7)).round(1), draw.random(count), draw.random(count)
    others, other_weights = draw.random((2, len(words)))
    compiled, arrays = covering(words, start, first), ArrayRows(words, start, first)
    ours = table, shares.tolist()
    covered = compiled.covered(*ours, others)
    elements = compiled.elements(*ours, others, weights.tolist(), other_weights)
    if names:
        assert covered.tolist() == arrays.covered(*ours, others).tolist()
        assert elements.tolist() == arrays.elements(*ours, others, weights.tolist(), other_weights).tolist()
        assert elements[:2].tolist() == covered.tolist()
    spans = list(pairwise([*start.tolist(), len(words)]))
    for at, (begin, end) in enumerate(pairwise([*first.tolist(), len(start)])):
        each = []
        for low, high in spans[begin:end]:
            grid = table[:, words[low:high]].tolist()
            less, better = _covered(grid, shares.tolist(), others[low:high].tolist())
            theirs = other_weights[low:high].tolist()
            left = min(_left_over(grid, weights.tolist()), _left_over(list(zip(*grid, strict=True)), theirs))
            each.append((less, better, _shared(grid, weights.tolist(), theirs), better * (1 - left)))
        assert elements[:, at] == pytest.approx(np.max(each, axis=0), abs=1e-12)


@pytest.mark.skipif(not is_compiled(), reason="no compiled code")
@pytest.mark.parametrize(
    ("words", "start", "first"),
    [
        ([0, 7], [0], [0]), ([0, -1], [0], [0]), ([0, 1], [0, 2], [0]), ([0, 1], [1], [0]), ([0, 1], [0, 1, 0], [0]),
        ([0, 1], [0, 1], [0, 2]), ([0, 1], [0, 1], [1]), ([0, 1], [0, 1], [0, 0]), ([0, 1], [0, 1 << 40], [0]),
        ([0, 1], [0, -1], [0]), ([0, 1], [0, 1], [0, -1]), ([], [0], [0]),
    ],
)  # fmt: skip
def test_rows_that_point_outside_themselves_are_an_error(words: list[int], start: list[int], first: list[int]) -> None:
    rows = covering(*(np.array(each, np.int64) for each in (words, start, first)))
    table, others = np.zeros((2, 7)), np.zeros(len(words))
    with pytest.raises(IndexError):
        rows.covered(table, [0.5, 0.5], others)
    with pytest.raises(IndexError):
        rows.elements(table, [0.5, 0.5], others, [0.5, 0.5], others)
    with pytest.raises(IndexError):
        rows.covered(np.zeros((0, 7)), [], others)


@pytest.mark.skipif(not is_compiled(), reason="no compiled code")
def test_words_without_a_share_are_an_error() -> None:
    rows = covering(*(np.array(each, np.int64) for each in ([0, 1], [0], [0])))
    with pytest.raises(IndexError):
        rows.covered(np.zeros((2, 7)), [0.5], np.zeros(2))
    with pytest.raises(IndexError):
        rows.elements(np.zeros((2, 7)), [0.5, 0.5], np.zeros(2), [0.5, 0.5], np.zeros(3))
