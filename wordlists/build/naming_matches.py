"""Fit how well an existing word would do for a term that no list names: naming_matches.npy.

    python wordlists/build/naming_matches.py [--to FOLDER]

The evidence are the short lists (naming_picks.tsv) with their readings: of every word on any list it is known how it
pleased for a subject, as a share of the best; a word that is not on the list of a subject counts as 0 there. The model
is bilinear: the mean vector of the subject's names, times a matrix, times the vectors of the word and of its meaning
(the mean of its words'). The matrix is fitted by ridge regression in two steps, first from subjects to each word, then
from words to their vectors. Quality is told where a fifth of the subjects in turn takes no part.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from io import BytesIO

import numpy as np
from naming_ties import area
from naming_words import FOLDER
from numpy.typing import NDArray
from sources import folder_to_write, write_table

from namescreen.generation.matching import means, terms_of, together
from namescreen.generation.ties import keys_of_meanings, known_words, words_of_names
from namescreen.generation.vocabulary import places, vectors
from namescreen.tables import open_table

FOLDS = 5
OF_SUBJECTS, OF_WORDS = 1.0, 5.0
"""Ridge of the two steps, of a handful tried the best on subjects held out."""
GOOD, PAGE = (4 - 2) / (7 - 2), 20

Numbers = NDArray[np.float64]


def readings(without: Collection[str] = ()) -> tuple[list[tuple[str, ...]], Numbers]:
    """The names of the subjects, none of which has one of these names, and how each existing word pleased."""
    at: dict[str, int] = {}
    for number, one in enumerate(known_words()):
        if one.kind not in ("first", "title"):
            at.setdefault(one.word.casefold(), number)
    names, rows = [], []
    for _, value in open_table("naming_picks.tsv").items():
        about, _, words = value.partition("|")
        if not set(about.split()).isdisjoint(without):
            continue
        row = np.zeros(len(known_words()))
        for word, _, rating in (entry.rpartition(" ") for entry in words.split(", ")):
            if word in at:
                row[at[word]] = (float(rating) - 2) / 5
        names.append(tuple(about.split()))
        rows.append(row)
    return names, np.array(rows)


def subject(names: Sequence[str]) -> Numbers:
    """The vector of a subject, with a 1 behind it: what its names say together, and of "~dry/dryer+boot/glove" what
    both parts do."""
    said = [[part.split("/")[0] for part in name.removeprefix("~").split("+")] for name in names]
    parts = [together(terms_of(words), np.ones(len(words), np.float32)) for words in said]
    return np.asarray(together(np.array(parts), np.ones(len(parts), np.float32)), float)


def facts() -> Numbers:
    """The vectors of each existing word and of its meaning."""
    known, at = vectors()
    whole = np.zeros((len(places()), known.shape[1]), np.float32)
    whole[at] = known
    count = len(known_words())
    return np.concatenate([means(whole, lists, count) for lists in (words_of_names(), keys_of_meanings())], axis=1)


def fit(terms: Numbers, pleased: Numbers, words: Numbers) -> Numbers:
    """The matrix from terms to words."""
    each = np.linalg.solve(terms.T @ terms + OF_SUBJECTS * np.eye(terms.shape[1]), terms.T @ pleased)
    return np.asarray(np.linalg.solve(words.T @ words + OF_WORDS * np.eye(words.shape[1]), words.T @ each.T).T)


def held_out(names: Sequence[tuple[str, ...]], terms: Numbers, pleased: Numbers, words: Numbers) -> str:
    """How well the words of a subject are found that took no part in the fit, nor did another one of its name."""
    found = np.zeros_like(pleased)
    turn = {name: number % FOLDS for number, name in enumerate(dict.fromkeys(first for first, *_ in names))}
    for fold in range(FOLDS):
        inside = np.array([turn[first] == fold for first, *_ in names])
        found[inside] = terms[inside] @ fit(terms[~inside], pleased[~inside], words) @ words.T
    ones = np.ones(pleased.shape[1])
    areas = [area(row, (told >= GOOD).astype(float), ones) for row, told in zip(found, pleased, strict=True)
             if (told >= GOOD).sum() > 4]  # fmt: skip
    best = np.argsort(-found, axis=1)[:, :PAGE]
    of_best = (np.take_along_axis(pleased, best, 1) >= GOOD).mean(axis=1)
    plain = np.array([all("+" not in name for name in one) for one in names])  # the others have shorter lists
    return (
        f"of {len(terms)} subjects, a fifth in turn left out: ROC-AUC of the words rated 4 or more for them among all "
        f"{np.mean(areas):.3f}; of the best {PAGE} for one of {plain.sum()} that single words name "
        f"{of_best[plain].mean():.3f} are such words"
    )


def coarsely(matrix: Numbers) -> NDArray[np.float16]:
    """A matrix with four binary digits to each number, so that the file is small: r = 0.9999 with the exact one."""
    bits = matrix.astype(np.float16).view(np.uint16)
    return ((bits + np.uint16(32)) & np.uint16(0xFFC0)).view(np.float16)


def main() -> None:
    """Fit, cross-validate, and write the table."""
    folder = folder_to_write(__doc__, FOLDER)
    names, pleased = readings()
    listed = np.flatnonzero(pleased.any(axis=0))
    terms, words = np.array([subject(one) for one in names]), facts()[listed].astype(float)
    quality = held_out(names, terms, pleased[:, listed], words)
    print(quality)
    file = BytesIO()
    np.save(file, coarsely(fit(terms, pleased[:, listed], words)))
    write_table(
        folder, "naming_matches.npy", file.getvalue(),
        source="fitted on the readings of the short lists in naming_picks.tsv, with the vectors of embedding.npy: "
        f"{quality}",
        version="2", licence="MIT, as namescreen; of the vectors, that of embedding.npy",
        build="python wordlists/build/naming_matches.py",
    )  # fmt: skip


if __name__ == "__main__":
    main()
