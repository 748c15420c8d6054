"""Terminals of 40 to 79 columns: what a wide one shows, nothing over the edge and no word broken."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from namescreen.plain_text import width
from tests.conftest import Run

MARKS = (
    "mark,number,office,classes,goods,status,owner,filed,registered\n"
    "SPRIGWICK,GB001,GB,21,flower pots,registered,Crumbe & Pike Ltd,2019-02-01,2019-07-01\n"
    "SPRIGWYKE,302019001,DE,21,Blumentöpfe,registered,Topfwerk Ottersbach GmbH,2019-02-01,2019-07-01\n"
    "SPRIGGAN WICK,GB003,GB,31,live plants,expired,Marl & Daw,2001-02-01,2001-07-01\n"
)
BRIEF = """product = "A planter"
goods = "planters of stoneware for herbs"
classes = [21]
markets = ["GB", "DE"]
languages = ["de"]
marks = ["marks.csv"]
shortlist = ["Sprigwick", "Mist Patch"]
"""


def told(run: Run, columns: int, *command: str) -> tuple[list[str], set[str]]:
    """The lines at some width, and the words in them, of a row's cells whatever their order."""
    made = run(*command, env={"COLUMNS": str(columns)})
    assert made.returncode == 0, made.stderr
    return made.stdout.splitlines(), {word for word in re.findall(r"\w+", made.stdout) if len(word) > 1}


@pytest.mark.parametrize(
    "command",
    [("screen", "--brief", "brief.toml"), ("compare", "Sprigwick", "SPRIGWYKE"), ("addresses", "Sprigwick")],
    ids=lambda command: command[0],
)
def test_narrow_terminals_lose_no_column_and_break_no_word(
    run: Run, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, command: tuple[str, ...]
) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "marks.csv").write_text(MARKS, encoding="utf-8")
    (tmp_path / "brief.toml").write_text(BRIEF, encoding="utf-8")
    _, whole = told(run, 200, *command)
    for columns in (40, 52, 66, 79):
        lines, words = told(run, columns, *command)
        assert max(map(width, lines)) <= columns
        assert not words - whole, "a word was broken"
        assert not whole - words - {"word"}, "a column was lost"  # a heading of a table that is stacked
