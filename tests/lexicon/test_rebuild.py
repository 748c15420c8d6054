"""The shipped tables are what their scripts draw, to the byte."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import numpy as np
import pytest

from namescreen.tables import Table, open_table, wordlists_folder

ROOT = Path(__file__).parents[2]


def draw(script: str, to: Path, **env: str) -> None:
    command = [sys.executable, str(ROOT / "wordlists" / "build" / script), "--to", str(to)]
    subprocess.run(command, check=True, capture_output=True, env={**os.environ, **env}, timeout=300)


@pytest.mark.shared
def test_wordnet_rebuilds_to_the_same_bytes(tmp_path: Path, shared_folder: Path) -> None:
    draw("wordnet.py", tmp_path, NLTK_DATA=str(shared_folder / "nltk_data"))
    for name in ("wordnet-words.tsv", "wordnet-senses.tsv", "wordnet-hierarchy.npy", "wordnet-exceptions.tsv"):
        assert (tmp_path / name).read_bytes() == (wordlists_folder() / name).read_bytes()


def test_word_kinds_rebuild_to_the_same_bytes(tmp_path: Path) -> None:
    pytest.importorskip("names", reason="needs the package `names`, which only the build scripts use")
    draw("word_kinds.py", tmp_path)
    assert (tmp_path / "word_kinds.tsv").read_bytes() == (wordlists_folder() / "word_kinds.tsv").read_bytes()


@pytest.mark.parametrize(
    "name",
    ["wordnet-words.tsv", "wordnet-senses.tsv", "wordnet-exceptions.tsv", "word_kinds.tsv", "associations.tsv",
     "class_weights.tsv"],
)  # fmt: skip
def test_tables_match_their_checksums(name: str) -> None:
    open_table(name).verify()


@pytest.mark.shared
def test_foreign_words_rebuild_to_the_same_bytes(tmp_path: Path, shared_folder: Path) -> None:
    command = [sys.executable, str(ROOT / "wordlists" / "build" / "foreign_words.py"), "--to", str(tmp_path)]
    command += ["--omw", str(shared_folder / "omw"), "--goods", str(shared_folder / "checks" / "foreign_goods.csv")]
    env = {**os.environ, "NLTK_DATA": str(shared_folder / "nltk_data")}
    subprocess.run(command, check=True, capture_output=True, env=env, timeout=900)
    tables = ("foreign_words", "foreign_of", "foreign_parts", "foreign_places", "international_words")
    for name in (f"{table}.tsv" for table in tables):
        assert (tmp_path / name).read_bytes() == (wordlists_folder() / name).read_bytes()


@pytest.mark.shared
def test_foreign_phrases_rebuild_to_the_same_bytes(tmp_path: Path, shared_folder: Path) -> None:
    command = [sys.executable, str(ROOT / "wordlists" / "build" / "foreign_phrases.py"), "--to", str(tmp_path)]
    env = {**os.environ, "NLTK_DATA": str(shared_folder / "nltk_data")}
    subprocess.run([*command, "--omw", str(shared_folder / "omw")], check=True, capture_output=True, env=env)
    name = "foreign_phrases.tsv"
    assert (tmp_path / name).read_bytes() == (wordlists_folder() / name).read_bytes()


def test_feelings_rebuild_to_the_same_words(tmp_path: Path) -> None:
    pytest.importorskip("vaderSentiment", reason="needs the package vaderSentiment, which only the build scripts use")
    draw("feelings.py", tmp_path)
    drawn = dict(Table(tmp_path / "feelings.tsv").items())
    shipped = dict(open_table("feelings.tsv").items())
    assert {word for word, value in drawn.items() if value[0] != "~"} <= shipped.keys()
    values = [(int(drawn[word].strip("~")), int(shipped[word].strip("~"))) for word in drawn.keys() & shipped.keys()]
    assert all(abs(one - other) <= 1 for one, other in values)  # the last digit may round otherwise elsewhere
    assert len(values) > 0.99 * len(shipped)


def test_word_vectors_rebuild_to_the_same_neighbours(tmp_path: Path) -> None:
    glove, moby = os.environ.get("NAMESCREEN_GLOVE"), os.environ.get("NAMESCREEN_MOBY")
    if not glove or not moby:
        pytest.skip("needs the two npm packages: set NAMESCREEN_GLOVE and NAMESCREEN_MOBY to their files")
    command = [sys.executable, str(ROOT / "wordlists" / "build" / "embedding.py"), "--to", str(tmp_path)]
    subprocess.run([*command, "--glove", glove, "--moby", moby], check=True, capture_output=True, timeout=900)
    assert (tmp_path / "embedding_words.tsv").read_bytes() == (wordlists_folder() / "embedding_words.tsv").read_bytes()
    both = (np.load(folder / "embedding.npy").astype(float)[::17] for folder in (tmp_path, wordlists_folder()))
    one, other = (rows / np.linalg.norm(rows, axis=1, keepdims=True) for rows in both)
    assert np.abs(one @ one[:200].T - other @ other[:200].T).max() < 0.02  # signs and rotations do not matter
