"""Association and closeness of words against people's judgement: WordSim-353 and SimLex-999 (a sample of each).

Goals, on the full sets: Spearman's rho 0.65 for association on WordSim-353 and 0.58 for closeness on SimLex-999."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest

from namescreen.lexicon import association, lexicon

PAIRS = [
    line.split("\t")
    for line in (Path(__file__).parent / "word_similarity.tsv").read_text(encoding="utf-8").splitlines()
    if not line.startswith("#")
]


def ranks(values: list[float]) -> list[float]:
    """The rank of each value, that of equal ones shared."""
    numbers = np.array(values)
    return [float(((numbers < value).sum() + (numbers <= value).sum()) / 2) for value in values]


@pytest.mark.parametrize(
    ("name", "measure", "least"),
    [("WordSim-353", association, 0.65), ("SimLex-999", lexicon().closeness, 0.58)],
)
def test_people_agree(name: str, measure: Callable[[str, str], float | None], least: float) -> None:
    pairs = [(one, other, float(rating)) for of, one, other, rating in PAIRS if of == name]
    assert len(pairs) > 100
    ours = ranks([measure(one, other) or 0.0 for one, other, _ in pairs])
    rho = float(np.corrcoef(ranks([rating for *_, rating in pairs]), ours)[0, 1])
    assert rho >= least
