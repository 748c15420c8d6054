"""`namescreen screen`: JSON Lines, equal bytes, exit codes, and the disclaimer wherever a score shows."""

from __future__ import annotations

import csv
import io
import json
from pathlib import Path

import jsonschema
import pytest

from namescreen.outcome import DISCLAIMER
from namescreen.screening import schema
from tests.conftest import Run
from tests.screening.conftest import GOODS, LIST


def test_json_lines_are_what_the_schema_says(run: Run, tmp_path: Path) -> None:
    (tmp_path / "marks.csv").write_text(LIST)
    done = run("screen", "--name", "Sprigwick", "--name", "Thymelow", "--register", "marks.csv", "--goods", GOODS,
               "--classes", "21", "--languages", "nl", "--format", "jsonl")  # fmt: skip
    assert done.returncode == 0, done.stderr
    rows = [json.loads(line) for line in done.stdout.splitlines()]
    for row in rows:
        jsonschema.validate(row, schema())
    assert [row["name"] for row in rows] == ["Sprigwick", "Thymelow"]
    assert "not legal clearance" in done.stderr


def test_equal_input_gives_equal_bytes_under_any_hash_seed(run: Run, tmp_path: Path) -> None:
    (tmp_path / "marks.csv").write_text(LIST)
    for form in ("table", "csv", "jsonl", "markdown"):
        outputs = {
            run("screen", "--name", "Sprigwick", "--name", "Thymelow", "--register", "marks.csv", "--goods", GOODS,
                "--languages", "nl", "--format", form, env={"PYTHONHASHSEED": seed}).stdout
            for seed in ("1", "77")
        }  # fmt: skip
        assert len(outputs) == 1


@pytest.mark.parametrize(
    ("arguments", "code"),
    [
        ((), 0),
        (("--fail-above", "0.9"), 1),
        (("--fail-above", "1.0"), 0),
        (("--strict",), 3),  # the goods are not stated
        (("--strict", "--fail-above", "0.9"), 1),
    ],
)
def test_exit_codes_are_those_of_the_help(run: Run, tmp_path: Path, arguments: tuple[str, ...], code: int) -> None:
    (tmp_path / "marks.csv").write_text(LIST)
    done = run("screen", "--name", "Sprigwick", "--register", "marks.csv", "--languages", "nl", *arguments)
    assert done.returncode == code, done.stderr
    assert "Sprigwick" in done.stdout


@pytest.mark.parametrize("form", ["table", "markdown"])
def test_a_score_never_stands_without_what_it_is_not(run: Run, tmp_path: Path, form: str) -> None:
    (tmp_path / "marks.csv").write_text(LIST)
    done = run("screen", "--name", "Sprigwick", "--register", "marks.csv", "--languages", "nl", "--format", form)
    assert "not legal clearance" in done.stdout


def test_marks_of_the_same_words_are_told_below_their_entry(run: Run, tmp_path: Path) -> None:
    """Those of the same owner; another's stands by itself."""
    path = tmp_path / "marks.csv"
    path.write_text(LIST.replace("insurance,registered,C", "insurance,registered,A"))
    command = (
        "screen",
        "--name",
        "Sprigwick",
        "--register",
        path,
        "--goods",
        GOODS,
        "--classes",
        "21",
        "--languages",
        "nl",
    )
    lines = run(*command).stdout.splitlines()
    at = next(at for at, line in enumerate(lines) if line.startswith("SPRIGWICK "))
    assert lines[at + 1] == "  A; and 1 more mark of these words: class 36"
    assert lines[at + 2].startswith("SPRIGWICK ")
    assert lines[at + 3].startswith("SPRIGWYCK ")
    assert lines[at + 4] == "  dead"
    assert lines[at + 5].startswith("  SPRIGWICK: ")  # what is one mark alone has no such line
    assert "- SPRIGWICK: and 1 more mark of these words: class 36\n" in run(*command, "--format", "markdown").stdout
    table = list(csv.DictReader(io.StringIO(run(*command, "--format", "csv").stdout)))
    told = [(row["mark"], row["marks"]) for row in table]
    assert told == [("SPRIGWICK", "2"), ("SPRIGWICK", "1"), ("SPRIGWYCK", "1")]

    rows = [f"SPRIGWICK,{n},{n % 45 + 1},,live,A" for n in range(200)]
    path.write_text("\n".join([LIST.splitlines()[0], *rows]))
    shown = run(*command).stdout
    assert "\n  and 199 more marks of these words, among them classes 1, 2, 3" in shown
    assert max(map(len, shown.replace(DISCLAIMER, "").splitlines())) <= 80


def test_what_was_not_checked_is_said_once_below_all_names(run: Run, tmp_path: Path) -> None:
    path = tmp_path / "marks.txt"
    path.write_text("Sprigwyck\n")
    shown = run(
        "screen", "--name", "Sprigwick", "--name", "Loamlet", "--register", path, "--goods", GOODS, "--languages", "tlh"
    ).stdout
    assert shown.count("goods relatedness") == 1
    assert shown.index("Loamlet\n") < shown.index("Not checked\n") < shown.index("At a glance")


def test_how_many_marks_of_how_many_lists_were_looked_through_is_said_aside(run: Run, tmp_path: Path) -> None:
    (tmp_path / "one.txt").write_text("Fernwick\nMossling\n")
    (tmp_path / "two.txt").write_text("Topfling\n")
    done = run("screen", "-n", "Zyq", "-r", "one.txt", "-r", "two.txt")
    assert "Looked through 3 marks of 2 lists (one.txt and two.txt)." in done.stderr
    assert "Looked through" not in done.stdout


def test_marks_without_a_level_take_a_line_and_what_lapsed_is_said(run: Run, tmp_path: Path) -> None:
    """A term can be renewed for six months (Paris Convention, article 5bis(1))."""
    (tmp_path / "marks.csv").write_text(
        "mark,classes,goods,status,expires\nDUSKFALL,21,herb planters,registered,2015-01-01\n"
        "DUSTFALK,9,software,registered,2035-01-01\nDUSKY,36,banking,registered,2035-01-01\n"
    )
    done = run("screen", "--name", "Duskfall", "--register", "marks.csv", "--goods", "herb planters")
    assert done.returncode == 0, done.stderr
    rows = [line for line in done.stdout.splitlines() if "0." in line or "1.00" in line]
    assert any(line.startswith("DUSKFALL") and line.endswith("look closer") for line in rows)
    assert "\n  probably lapsed\n" in done.stdout
    (further,) = (line for line in done.stdout.splitlines() if "further off, below minor: " in line)
    assert "DUSTFALK (0." in further
    assert not any(line.startswith("DUSTFALK") for line in rows)
    nothing = run("screen", "--name", "Quarrel", "--register", "marks.csv", "--goods", "herb planters").stdout
    assert "Of decided pairs" not in nothing


def test_a_limit_that_is_no_number_is_refused_as_nothing_would_exceed_it(run: Run, tmp_path: Path) -> None:
    (tmp_path / "marks.csv").write_text(LIST)
    done = run("screen", "--name", "Sprigwick", "--register", "marks.csv", "--fail-above", "nan")
    assert done.returncode == 2
    assert "--fail-above" in done.stderr


def test_a_knockout_in_a_further_market_is_called_so(run: Run, tmp_path: Path) -> None:
    (tmp_path / "marks.csv").write_text(
        "mark,number,office,territory,classes,goods,status\nDUSKFALL,1,GB,GB,21,herb planters,registered\n"
        "DUSKFALL,2,DE,DE,21,herb planters,registered\n"
    )
    (tmp_path / "b.toml").write_text(
        'goods = "herb planters"\nclasses = [21]\nmarkets = ["GB", "DE"]\nmarks = ["marks.csv"]\n'
    )
    done = run("screen", "--brief", "b.toml", "--name", "Duskfall")
    assert done.returncode == 0, done.stderr
    assert "1 more mark of these words: class 21; knockout in " in done.stdout


def test_every_mark_near_a_name_is_shown_with_its_own_level(run: Run, tmp_path: Path) -> None:
    """Those for which the table has no room stand in a line that says their level: a serious one is never minor."""
    wares = "mugs,cups,bowls,plates,teapots,teacups,saucers,dishes,jugs,vases,spoons,sunglasses,motor oils".split(",")
    rows = [f"Quorvane {letter},{ware}" for letter, ware in zip("ABCDEFGHIJKLM", wares, strict=True)]
    rows += ["Morvane,bowls", "Torvine,jugs", "Zelkip,mugs"]
    (tmp_path / "marks.csv").write_text("\n".join(["name,goods", *rows]))
    command = ("screen", "--name", "Quorvane", "--register", "marks.csv", "--goods", "ceramic mugs", "--top", "40")
    marks = json.loads(run(*command, "--format", "jsonl").stdout)["close_marks"]
    shown = run(*command, env={"COLUMNS": "200"}).stdout
    levels = {mark["mark"]: "knockout" if mark["knockout"] else mark["level"] for mark in marks}
    assert {"serious", "nothing found"} < set(levels.values())
    tail = [line for line in shown.splitlines() if line.startswith(("  also ", "  further"))]
    below = {line.split(": ")[0].strip(): line for line in tail}
    assert "also serious" in below  # more of them than the table has room for
    for mark, level in levels.items():
        row = next((line for line in shown.splitlines() if line.startswith(f"{mark} ")), "")
        if row:
            assert level in row or level == "nothing found"
        else:
            head = "further off, below minor" if level == "nothing found" else f"also {level}"
            assert f" {mark} (" in below[head] or " more" in below[head]
    assert "levels, gravest first: knockout, serious, look closer, minor" in shown


def test_a_column_that_no_mark_fills_is_left_out(run: Run, tmp_path: Path) -> None:
    (tmp_path / "typed.csv").write_text("name,goods\nFernholt,mugs\n")
    (tmp_path / "classed.csv").write_text("name,goods,classes\nFernholt,mugs,21\n")
    for listed, there in (("typed.csv", False), ("classed.csv", True)):
        shown = run("screen", "--name", "Fernhold", "--register", listed, "--goods", "mugs").stdout
        assert ("  class" in next(line for line in shown.splitlines() if line.startswith("mark "))) is there


def test_the_table_of_marks_is_a_table_in_markdown(run: Run, tmp_path: Path) -> None:
    from markdown_it import MarkdownIt

    (tmp_path / "marks.csv").write_text("mark,goods\nTorvale,wool blankets\n", "utf-8")
    given = ["--name", "Torvale", "--goods", "wool blankets", "--register", str(tmp_path / "marks.csv")]
    done = run("screen", *given, "--format", "markdown")
    found = [one.type for one in MarkdownIt("commonmark").enable("table").parse(done.stdout)]
    assert "table_open" in found
    at = found.index("table_open")
    assert found[:at].count("bullet_list_open") == found[:at].count("bullet_list_close")
