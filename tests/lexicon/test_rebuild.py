"""The shipped tables are what their scripts draw, to the byte."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from namescreen.tables import open_table, wordlists_folder

ROOT = Path(__file__).parents[2]


def draw(script: str, to: Path, **env: str) -> None:
    command = [sys.executable, str(ROOT / "wordlists" / "build" / script), "--to", str(to)]
    subprocess.run(command, check=True, capture_output=True, env={**os.environ, **env}, timeout=300)


@pytest.mark.shared
def test_wordnet_rebuilds_to_the_same_bytes(tmp_path: Path, shared_folder: Path) -> None:
    draw("wordnet.py", tmp_path, NLTK_DATA=str(shared_folder / "nltk_data"))
    for name in ("wordnet-words.tsv", "wordnet-senses.tsv", "wordnet-exceptions.tsv"):
        assert (tmp_path / name).read_bytes() == (wordlists_folder() / name).read_bytes()


def test_word_kinds_rebuild_to_the_same_bytes(tmp_path: Path) -> None:
    pytest.importorskip("names", reason="needs the package `names`, which only the draw scripts use")
    draw("word_kinds.py", tmp_path)
    assert (tmp_path / "word_kinds.tsv").read_bytes() == (wordlists_folder() / "word_kinds.tsv").read_bytes()


@pytest.mark.parametrize(
    "name",
    ["wordnet-words.tsv", "wordnet-senses.tsv", "wordnet-exceptions.tsv", "word_kinds.tsv", "associations.tsv",
     "class_weights.tsv"],
)  # fmt: skip
def test_tables_match_their_checksums(name: str) -> None:
    open_table(name).verify()
