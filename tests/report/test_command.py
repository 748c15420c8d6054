"""`namescreen report` as a user runs it."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from pathlib import Path
from subprocess import CompletedProcess

import pytest

from namescreen.outcome import DISCLAIMER
from namescreen.report import from_json

Run = Callable[..., "CompletedProcess[str]"]

BRIEF = """
product = "Self-watering herb planter"
goods = "self-watering planters for herbs"
classes = [21]
languages = ["sv"]
markets = ["NL"]
marks = ["marks.csv"]
shortlist = ["Herbwell", "Sprig | Sip"]
"""
MARKS = """mark,number,office,classes,goods,status,owner,filed
HERB WELL,100,NL,21,planters,live,Delta Pots,2020-01-31
"<b>SPRIG</b> | [sip](javascript:x)",101,NL,21,planters,live,Sip & Co,2021-02-28
Turnip Lantern,102,NL,9,lamps,dead,Lamp Works,2019-12-01
"""


@pytest.fixture
def home(tmp_path: Path) -> Path:
    (tmp_path / "brief.toml").write_text(BRIEF, "utf-8")
    (tmp_path / "marks.csv").write_text(MARKS, "utf-8")
    return tmp_path


def test_every_form_in_one_run_and_what_changed_in_the_next(run: Run, home: Path) -> None:
    outputs = ("-o", "r.md", "-o", "r.html", "-o", "r.json", "-o", "r.csv")
    first = run("report", "brief.toml", *outputs, "--date", "2026-11-25", env={"PYTHONHASHSEED": "0"})
    assert (first.returncode, first.stdout) == (0, "")
    assert first.stderr.splitlines()[-2:] == [
        "Wrote r.md, r-figure.svg, r.html, r.json, r.csv.", DISCLAIMER
    ]  # fmt: skip
    text = (home / "r.md").read_text("utf-8")
    assert "](r-figure.svg)" in text
    assert r"Sprig \| Sip" in text
    assert "HERB WELL" in text
    drawn = from_json((home / "r.json").read_text("utf-8"))
    assert [entry.name for entry in drawn.names] == ["Herbwell", "Sprig | Sip"]
    searched = drawn.lists[0]
    assert (searched.name, searched.rows_read, searched.classes) == ("marks.csv", 3, (9, 21))
    assert (searched.offices, searched.latest) == (("NL",), "2021-02-28")

    kept = {path: path.read_bytes() for path in home.glob("r*.*")}
    assert len(kept) == 5
    again = run(*drawn.command[1:], env={"PYTHONHASHSEED": "99"})
    assert again.returncode == 0, again.stderr
    assert {path: path.read_bytes() for path in home.glob("r*.*")} == kept

    with (home / "marks.csv").open("a", encoding="utf-8") as marks:
        marks.write("Herbwelle,103,NL,21,planters,live,New Pots,2026-12-01\n")
        marks.write("Herb Well,104,NL,36,insurance,live,Well Insured,2026-12-01\n")
    later = run("report", "brief.toml", "--since", "r.json", "--date", "2026-12-25", "--format", "json")
    assert later.returncode == 0, later.stderr
    changes = json.loads(later.stdout)["drawn"]["changes"]
    assert changes["since"] == "2026-11-25"
    told = [(one["about"], one["kind"]) for one in changes["found"]]
    assert ("marks.csv", "list grew") in told
    assert ("Herbwell", "new close mark") in told
    assert told.count(("Herbwell", "new close mark")) == 2  # each owner's mark of the same words by itself
    further = run("report", "brief.toml", "--full").stdout
    goods = r"\*Goods:\* 0\.[0-9]+, class 36.*\s+\*In the register:\* in force"
    row = rf"- \*\*Herb Well \(NL 104, Well Insured\)\.\*\*[^-]+{goods}"
    assert re.search(row, further)


def test_standard_output_without_a_brief(run: Run) -> None:
    done = run("report", "--name", "Herbwell", "--languages", "sv", "--date", "2026-11-25")
    assert done.returncode == 0, done.stderr
    assert done.stdout.startswith("# Name screening: product not stated\n")
    assert "picture of the names against the checks is left out" in done.stdout
    assert "No list of marks was searched." in done.stdout


@pytest.mark.parametrize(
    ("file", "holds"),
    [
        ("short.csv", "name,construction,how\nHerbwell,compound,herb + well | <b>\n"),
        ("short.txt", "# Shortlist\n# compound: herb + well | <b>\nHerbwell\n\n# ask my aunt\nSprig\n"),
    ],
)
def test_a_shortlist_from_brainstorming_tells_how_names_were_made(run: Run, home: Path, file: str, holds: str) -> None:
    (home / file).write_text(holds, "utf-8")
    brief = BRIEF.replace('["Herbwell", "Sprig | Sip"]', f'"{file}"')
    (home / "brief.toml").write_text(brief, "utf-8")
    done = run("report", "brief.toml", "--date", "2026-11-25", "--mild", "--full")
    assert done.returncode == 0, done.stderr
    assert re.search(r"Made as: (compound: )?herb \+ well \\\| \\<b\\>\.", done.stdout)
    assert "my aunt" not in done.stdout
    assert "--date 2026-11-25" in done.stdout
    assert "--mild --full" in done.stdout


def test_strict_says_what_was_not_checked(run: Run) -> None:
    done = run("report", "--name", "Herbwell", "--languages", "sv", "--strict", "--format", "csv", "-o", "-")
    assert done.returncode == 3
    assert "not checked, because" in done.stderr
    assert done.stdout.startswith("name,place,worst_finding")


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (("nothing.toml",), "nothing.toml: no such file"),
        (("brief.toml", "-o", "brief.toml"), "brief.toml: is also read for this report"),
        (("brief.toml", "-o", "marks.csv"), "marks.csv: is also read for this report"),
        (("brief.toml", "-o", "notes.md"), "notes.md: is there already, and is no report"),
        (("brief.toml", "-o", "fresh.md"), "fresh-figure.svg: is there already, and is no report"),
        (("brief.toml", "-o", "."), "is a folder"),
        (("brief.toml", "-o", "report.pdf"), "report.pdf: is no form that a report has. Write .html"),
        (("brief.toml", "-o", "/dev/null"), "/dev/null: is no ordinary file"),
        (("brief.toml", "-o", "nowhere/r.md"), "lies in a folder that does not exist"),
        (("brief.toml", "-o", "a.md", "-o", "b.html", "--format", "json"), "--format: one form is given"),
        (("brief.toml", "--since", "none.json"), "none.json: no such file"),
        (("brief.toml", "--since", "notes.md"), "notes.md: is not JSON"),
        (("brief.toml", "--since", "marks.csv", "--format", "csv"), "--since: the CSV form"),
        (("brief.toml", "--date", "yesterday"), "--date: 'yesterday' is no date"),
        (("brief.toml", "--register", "none.csv"), "none.csv: there is no such file"),
        ((), "no names are given"),
    ],
)  # fmt: skip
def test_bad_input_is_refused_before_anything_is_written(
    run: Run, home: Path, arguments: tuple[str, ...], says: str
) -> None:
    (home / "notes.md").write_text("my notes", "utf-8")
    (home / "fresh-figure.svg").write_text("<svg>mine</svg>", "utf-8")
    before = {path.name: path.read_bytes() for path in home.iterdir() if path.is_file()}
    done = run("report", *(arguments or ("--languages", "sv")))
    assert done.returncode == 2, done.stderr
    assert says in done.stderr
    assert "Traceback" not in done.stderr
    assert done.stdout == ""
    assert {path.name: path.read_bytes() for path in home.iterdir() if path.is_file()} == before
