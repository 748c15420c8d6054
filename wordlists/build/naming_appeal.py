"""Fit how words of a kind please as names: naming_appeal.npy.

    python wordlists/build/naming_appeal.py [--to FOLDER]

The evidence is how each existing word that readers were asked about pleased for all that it suits (naming_delight.txt).
The model is a ridge regression on what generation/appeal.py knows of any word; each of these facts is taken in its own
standard deviations. Quality is told where a fifth of the words in turn takes no part.
"""

from __future__ import annotations

from io import BytesIO

import numpy as np
from naming_words import FOLDER
from numpy.typing import NDArray
from sources import folder_to_write, write_table

from namescreen.generation.appeal import facts
from namescreen.generation.ties import known_words

RIDGE, FOLDS, SEED = 1000.0, 5, 0
UNRATED = 0.5

Numbers = NDArray[np.float64]


def readings() -> tuple[Numbers, Numbers]:
    """The facts of each word that was rated, and how it pleased, from 0 to 1."""
    rated = (one for one in known_words() if one.kind == "find" and one.delight != UNRATED)
    found = [(known, one.delight) for one in rated if (known := facts(one.word)) is not None]
    return np.array([known for known, _ in found], float), np.array([delight for _, delight in found])


def fit(known: Numbers, delight: Numbers) -> Numbers:
    """The weight of each fact, and what is added to all."""
    mean, spread = known.mean(0), known.std(0)
    scaled = (known - mean) / spread
    weights = np.linalg.solve(
        scaled.T @ scaled + RIDGE * np.eye(scaled.shape[1]), scaled.T @ (delight - delight.mean())
    ) / spread  # fmt: skip
    return np.append(weights, delight.mean() - weights @ mean)


def main() -> None:
    """Fit, cross-validate, and write the table."""
    folder = folder_to_write(__doc__, FOLDER)
    known, delight = readings()
    turn = np.random.default_rng(SEED).integers(0, FOLDS, len(delight))
    expected = np.zeros(len(delight))
    for fold in range(FOLDS):
        weights = fit(known[turn != fold], delight[turn != fold])
        expected[turn == fold] = known[turn == fold] @ weights[:-1] + weights[-1]
    quality = f"correlation with the rating of {len(delight):,} words, a fifth in turn left out, " \
              f"{np.corrcoef(expected, delight)[0, 1]:.2f}"  # fmt: skip
    print(quality, np.quantile(expected, (0.01, 0.5, 0.99)))
    file = BytesIO()
    np.save(file, fit(known, delight).astype(np.float32))
    write_table(
        folder, "naming_appeal.npy", file.getvalue(),
        source=f"fitted on how readers rated words in naming_delight.txt, with the vectors of embedding.npy: {quality}",
        version="1", licence="MIT, as namescreen; of the vectors, that of embedding.npy",
        build="python wordlists/build/naming_appeal.py",
    )  # fmt: skip


if __name__ == "__main__":
    main()
