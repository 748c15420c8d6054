"""Every column that a command writes as CSV is explained, in the order in which it stands."""

from __future__ import annotations

import csv
import io
from pathlib import Path

import pytest

from tests.conftest import Run

BRIEF = """
product = "lamps"
goods = "oil lamps"
concepts = ["glow"]
markets = ["DE"]
marks = "marks.csv"
shortlist = ["Glowsill"]
"""


@pytest.fixture
def brief(tmp_path: Path) -> Path:
    (tmp_path / "marks.csv").write_text("mark,goods\nGlowsell,lamps\n")
    path = tmp_path / "brief.toml"
    path.write_text(BRIEF)
    return path


@pytest.mark.parametrize(
    ("command", "arguments"),
    [
        ("brainstorm", ("BRIEF", "--limit", "1")),
        ("classes", ("oil lamps",)),
        ("screen", ("--brief", "BRIEF")),
        ("compare", ("Glowsill", "Glowsell")),
        ("readings", ("Glowsill", "--languages", "de")),
        ("addresses", ("Glowsill",)),
        ("report", ("BRIEF",)),
    ],
)
def test_every_column_is_explained(command: str, arguments: tuple[str, ...], brief: Path, run: Run) -> None:
    given = (str(brief) if one == "BRIEF" else one for one in arguments)
    written = next(csv.reader(io.StringIO(run(command, *given, "--format", "csv").stdout)))
    told = list(csv.DictReader(io.StringIO(run("columns", command, "--format", "csv").stdout)))
    assert [row["column"] for row in told] == written
    assert all(len(row["meaning"]) > 5 for row in told)


def test_what_writes_no_csv_is_refused_with_those_that_do(run: Run) -> None:
    done = run("columns", "demo")
    assert done.returncode == 2
    assert "Name brainstorm, classes, screen, compare, readings, addresses or report" in done.stderr
