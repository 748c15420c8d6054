"""The Open Multilingual Wordnet through NLTK, where it is there and where it is not."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from namescreen.connotations.wordnets import Wordnets, wordnets
from namescreen.outcome import NotChecked


@pytest.fixture
def no_data(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.setenv("NLTK_DATA", str(tmp_path))
    wordnets.cache_clear()
    return tmp_path


def test_without_the_corpus_it_is_not_checked(no_data: Path) -> None:
    if any((Path(root) / "nltk_data" / "corpora").is_dir() for root in ("/usr/share", "/usr/local/share", "/usr/lib")):
        pytest.skip("NLTK's corpora are installed for everybody here")
    found = wordnets()
    assert isinstance(found, NotChecked)
    assert "nltk.download" in found.because
    corpora = no_data / "corpora"
    corpora.mkdir()
    (corpora / "omw-2.0.zip").write_bytes(b"")
    wordnets.cache_clear()
    zipped = wordnets()
    assert isinstance(zipped, NotChecked)
    assert "unzip" in zipped.because
    wordnets.cache_clear()


def test_nltk_is_not_imported_to_know_that() -> None:
    code = "import namescreen, sys; namescreen.readings('Kona', dictionaries=()); sys.exit('nltk' in sys.modules)"
    subprocess.run([sys.executable, "-c", code], check=True, env={**os.environ, "NLTK_DATA": ""})


@pytest.mark.shared
def test_meanings_come_from_the_wordnets(shared_folder: Path) -> None:
    code = """
from namescreen.connotations import readings, coverage
found = readings("CHAT", languages=["fr"])
assert any("cat" in (r.meaning or "") and "Wordnet" in r.source for r in found), found
assert any("Wordnet" in str(c) for c in coverage(["fr", "sv"])), coverage(["fr"])
worst = readings("SALAUD", languages=["fr"])
print(worst[0])
"""
    env = {**os.environ, "NLTK_DATA": str(shared_folder / "nltk_data")}
    subprocess.run([sys.executable, "-c", code], check=True, env=env, timeout=120)


@pytest.mark.shared
def test_languages_are_those_of_the_folders(shared_folder: Path) -> None:
    nets = Wordnets(shared_folder / "nltk_data" / "corpora" / "omw-2.0")
    assert nets.languages == {"da", "fr", "it", "nl", "pl", "pt", "sv"}
    assert "omw-2.0" in nets.name
