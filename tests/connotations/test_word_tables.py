"""The shipped tables behind the readings: written as described, complete, and drawn afresh."""

from __future__ import annotations

import subprocess
import sys
import unicodedata
from pathlib import Path

import pytest

from namescreen.connotations import LANGUAGES
from namescreen.connotations.g2p_rules import TRANSCRIPTION, has_rules, inventory, sound_code
from namescreen.connotations.results import KINDS
from namescreen.connotations.scripts import script
from namescreen.connotations.unlucky_entries import COLUMNS, read_entries
from namescreen.errors import InputError
from namescreen.lexicon.language_codes import OTHER_SCRIPTS
from namescreen.tables import Table, wordlists_folder
from namescreen.text import parse

FOLDER = wordlists_folder()
SCRIPTS = {
    "el": {"Greek"}, "ru": {"Cyrillic"}, "uk": {"Cyrillic"}, "ar": {"Arabic"}, "he": {"Hebrew"},
    "hi": {"Devanagari"}, "ja": {"Han", "Hiragana", "Katakana"}, "zh": {"Han"}, "ko": {"Hangul"},
}  # fmt: skip
SPOKEN = "de fr es it pt nl sv da nb fi pl cs tr hu ro".split()
"""Languages that names are read aloud in, at the least."""


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_language_has_a_table_as_described(language: str) -> None:
    entries = read_entries(FOLDER / "unlucky" / f"{language}.tsv")
    assert len(entries) >= 150
    assert {entry.kind for entry in entries} == set(KINDS), "each kind is covered"
    for entry in entries:
        assert parse(entry.word).letters, entry
        assert entry.meaning.isprintable(), entry
        assert entry.meaning[0].isascii(), entry


@pytest.mark.parametrize("language", LANGUAGES)
def test_words_are_in_the_script_of_their_language(language: str) -> None:
    allowed = SCRIPTS.get(language, {"Latin"})
    for entry in read_entries(FOLDER / "unlucky" / f"{language}.tsv"):
        for form in (entry.word, *entry.forms):
            scripts = {script(letter) for letter in form if unicodedata.category(letter)[0] == "L"} - {"Common"}
            assert scripts <= allowed | ({"Latin"} if language in OTHER_SCRIPTS else set()), (form, scripts)
        if language in OTHER_SCRIPTS and {script(letter) for letter in entry.word} & allowed:
            assert entry.transcription, f"{entry.word} has no transcription"
        assert all(script(letter) in ("Latin", "Common") for letter in entry.transcription), entry


def test_a_bad_table_is_refused_with_every_fault_together(tmp_path: Path) -> None:
    path = tmp_path / "de.tsv"
    lines = ("#namescreen-unlucky 1 de", "\t".join(COLUMNS), "a\t\tmud\tdirt\t1\t", "a\t\tmud\tdirt\t1\t",
             "b\t\t\tdirt\t1\t", "c\t\tx\tsoil\t1\t", "d\t\tx\tdirt\t4\t", "e\tx")  # fmt: skip
    path.write_text("\n".join(lines), encoding="utf-8")
    with pytest.raises(InputError) as raised:
        read_entries(path)
    assert [problem.line for problem in raised.value.problems] == [4, 5, 6, 7, 8]
    path.write_text("word\n", encoding="utf-8")
    with pytest.raises(InputError, match="header"):
        read_entries(path)


def test_the_index_is_drawn_from_the_tables_as_they_are(tmp_path: Path) -> None:
    script_path = FOLDER / "build" / "unlucky.py"
    subprocess.run([sys.executable, script_path, "--to", tmp_path], check=True, capture_output=True)
    assert (tmp_path / "unlucky.tsv").read_bytes() == (FOLDER / "unlucky.tsv").read_bytes(), (
        "build it again: python wordlists/build/unlucky.py"
    )


@pytest.mark.parametrize(
    "name", ["unlucky.tsv", "confusables.tsv", *(f"letters/{tag}.tsv" for tag in (*SPOKEN, "el", "ru", "uk"))]
)
def test_drawn_tables_match_their_checksums(name: str) -> None:
    Table(FOLDER / name).verify()


@pytest.mark.parametrize("language", [*SPOKEN, "id", TRANSCRIPTION])
def test_sound_rules_read_every_latin_letter(language: str) -> None:
    assert has_rules(language)
    assert len(inventory(language)) >= 15
    silent = {letter for letter in "abcdefgijklmnopqrstuvwxyz" if not sound_code(f"a{letter}a", language)}
    assert not silent
    # A letter in the middle of a word is lost only where the language says so: h in most, ğ-like glides nowhere.
    lost = {letter for letter in "bdfgjklmnprstvz" if len(sound_code(f"a{letter}a", language)) < 3}
    assert lost <= {"g", "d"} if language == "da" else not lost
