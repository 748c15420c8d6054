"""Unlucky words of fifteen languages, from the Open Multilingual Wordnet and its Wiktionary extension joined to
WordNet 3.0 by synset (foreign_words.csv beside the checkout): how many are noticed with a meaning, as shipped."""

from __future__ import annotations

import csv
import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from namescreen.connotations import readings
from namescreen.connotations.dictionaries import installed
from namescreen.connotations.unlucky_entries import read_entries
from namescreen.lexicon import zipf
from namescreen.lexicon.language_codes import LANGUAGES
from namescreen.tables import wordlists_folder
from namescreen.text import fold

ALL, COMMON = 0.55, 0.80
"""The shares to reach: of all words, and of those in the language's 30,000 most frequent."""


@pytest.mark.shared
def test_unlucky_words_are_noticed_with_a_meaning(
    shared_folder: Path, record_property: Callable[[str, object], None]
) -> None:
    with (shared_folder / "checks" / "foreign_words.csv").open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    noticed = {}
    for row in rows:
        found = readings(row["word"].upper(), languages=[row["language"]], dictionaries=())
        noticed[row["language"], row["word"]] = any(reading.meaning for reading in found)
    common = [seen for (language, word), seen in noticed.items() if zipf(fold(word), language)]
    record_property("noticed", f"{sum(noticed.values())} of {len(noticed)}; {sum(common)} of {len(common)} common")
    assert sum(noticed.values()) / len(noticed) >= ALL
    assert sum(common) / len(common) >= COMMON


AGREEMENT = 0.5
"""Share of shipped meanings that have an English word in common with the dictionary's first senses: 0.55 (Hungarian,
a dictionary of slang synonyms) to 0.90 (Finnish) when last measured. The rest, looked at one by one, are synonyms
(hen, chicken), other senses of one word, and other words that fold to the same letters."""
INVERTED = ("freedict-ara-eng",)
"""Made by turning an English dictionary round: names come first (Poole, Paul), so first senses say little."""


def _roots(text: str) -> set[str]:
    return {word[:5] for word in "".join(c if c.isalpha() else " " for c in text.lower()).split() if len(word) > 2}


def test_shipped_meanings_agree_with_installed_dictionaries(record_property: Callable[[str, object], None]) -> None:
    sources = [source for source in installed() if source.name.startswith("freedict-") and source.name not in INVERTED]
    if not sources:
        pytest.skip("needs a dictionary in dictd format, such as Debian's dict-freedict-* packages")
    for source in sources:
        for language in sorted(source.languages & LANGUAGES.keys()):
            both = agreed = 0
            for entry in read_entries(wordlists_folder() / "unlucky" / f"{language}.tsv"):
                told = source.meanings(fold(entry.word), language)
                both += bool(told)
                agreed += bool(_roots(entry.meaning) & _roots(" ".join(meaning.text for meaning in told)))
            record_property(source.name, f"{agreed} of {both}")
            assert both < 20 or agreed / both >= AGREEMENT


@pytest.mark.shared
def test_shipped_meanings_agree_with_the_open_multilingual_wordnet(shared_folder: Path) -> None:
    # In a process of its own: NLTK reads NLTK_DATA when it is imported.
    code = """
from test_readings_foreign_words import AGREEMENT, _roots
from namescreen.text import fold
from namescreen.connotations.unlucky_entries import read_entries
from namescreen.connotations.wordnets import wordnets
from namescreen.tables import wordlists_folder
nets = wordnets()
for language in ("it", "pt", "sv"):
    both = agreed = 0
    for entry in read_entries(wordlists_folder() / "unlucky" / f"{language}.tsv"):
        synsets = nets.synsets(entry.word, language)
        both += bool(synsets)
        agreed += bool(_roots(entry.meaning) & _roots(" ".join(n for s in synsets for n in s.lemma_names())))
    print(f"{language}: {agreed} of {both}")
    assert agreed / both >= AGREEMENT, (language, agreed, both)
"""
    env = {**os.environ, "NLTK_DATA": str(shared_folder / "nltk_data"), "PYTHONPATH": str(Path(__file__).parent)}
    done = subprocess.run([sys.executable, "-c", code], env=env, capture_output=True, text=True, timeout=300)
    assert done.returncode == 0, done.stdout + done.stderr
