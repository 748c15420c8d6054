"""Nothing is written over what a command reads, over a file of another kind, or in place of a device."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from tests.conftest import Run

MARKS = "mark,classes\nTIMELO,21\n"
SCREEN = ("screen", "--languages", "nl", "--name", "Loamlet", "--format", "jsonl", "--register", "marks.csv")


@pytest.fixture(autouse=True)
def marks(tmp_path: Path) -> Path:
    path = tmp_path / "marks.csv"
    path.write_text(MARKS)
    (tmp_path / "names.txt").write_text("Loamlet\n")
    (tmp_path / "folder").mkdir()
    os.mkfifo(tmp_path / "pipe")
    (tmp_path / "loop").symlink_to("loop")
    return path


@pytest.mark.parametrize(
    ("output", "told"),
    [
        ("marks.csv", "is also read for this screening"),
        ("folder/../marks.csv", "is also read for this screening"),
        ("names.txt", "is there already, and is no screening"),
        ("folder", "is a folder"),
        ("nowhere/found.jsonl", "lies in a folder that does not exist"),
        ("pipe", "is no ordinary file"),
    ],
)
def test_a_screening_is_not_written_over_something_else(run: Run, marks: Path, output: str, told: str) -> None:
    before = sorted(marks.parent.iterdir())
    done = run(*SCREEN, "--output", output)
    assert (done.returncode, done.stderr.count("\n")) == (2, 1)
    assert f"namescreen: {output}: {told}" in done.stderr
    assert (marks.read_text(), sorted(marks.parent.iterdir())) == (MARKS, before)
    assert (marks.parent / "pipe").is_fifo()


@pytest.mark.parametrize("form", ["jsonl", "csv"])
def test_a_screening_may_take_the_place_of_an_earlier_one(run: Run, tmp_path: Path, form: str) -> None:
    for _ in range(2):
        done = run(*SCREEN, "--format", form, "--output", "found")
        assert done.returncode == 0, done.stderr
    assert (tmp_path / "found").stat().st_size > 0


@pytest.mark.parametrize(
    ("output", "told"),
    [("marks.csv", "is there already, and is no prepared register"), ("pipe", "is no ordinary file")],
)
def test_a_prepared_register_is_not_written_over_something_else(run: Run, marks: Path, output: str, told: str) -> None:
    done = run("register", "prepare", "marks.csv", "--output", output)
    assert done.returncode == 2
    assert told in done.stderr
    assert (marks.read_text(), (marks.parent / "pipe").is_fifo()) == (MARKS, True)


def test_a_text_that_begins_like_a_prepared_register_is_none(run: Run, tmp_path: Path) -> None:
    (tmp_path / "mine").write_text("namescreen register\nmy notes on it")
    done = run("register", "prepare", "marks.csv", "--output", "mine")
    assert (done.returncode, (tmp_path / "mine").read_text()) == (2, "namescreen register\nmy notes on it")


def test_a_link_that_leads_to_itself_is_named(run: Run) -> None:
    done = run("report", "--name", "Loamlet", "--since", "loop")
    assert "Traceback" not in done.stderr
    assert (done.returncode, done.stderr.startswith("namescreen: loop: cannot be read")) == (2, True)


def test_a_pipe_is_no_list_of_marks_and_is_not_waited_for(run: Run) -> None:
    done = run("screen", "--name", "Loamlet", "--register", "pipe")
    assert (done.returncode, "pipe: is no ordinary file" in done.stderr) == (2, True)


REPORT = ("report", "--name", "Loamlet", "--languages", "nl", "--date", "2026-03-02", "--output", "r.md")
MINE = {
    "r.md": "# Name screening: my own notes\n",
    "r-figure.svg": "<svg xmlns='http://www.w3.org/2000/svg'><text>my own drawing</text></svg>",
}


@pytest.mark.parametrize("name", MINE)
def test_what_begins_like_ours_and_is_not_is_kept_aside(run: Run, tmp_path: Path, name: str) -> None:
    (tmp_path / name).write_text(MINE[name])
    done = run(*REPORT)
    assert done.returncode == 0, done.stderr
    assert (tmp_path / f"{name}.old").read_text() == MINE[name]
    assert f"kept as {name}.old" in done.stderr.replace(str(tmp_path) + "/", "")
    assert "Loamlet" in (tmp_path / name).read_text()


def test_only_what_was_changed_since_is_kept_aside(run: Run, tmp_path: Path) -> None:
    assert run(*REPORT).returncode == 0
    assert run(*REPORT, "--goods", "herb planters").returncode == 0  # what was written here is replaced
    assert not list(tmp_path.glob("*.old"))
    written = (tmp_path / "r.md").read_text()
    for number, ending in enumerate(("old", "old-2")):
        (tmp_path / "r.md").write_text(written + f"\nMy remark {number}\n")
        assert run(*REPORT).returncode == 0
        assert f"My remark {number}" in (tmp_path / f"r.md.{ending}").read_text()
    assert sorted(path.name for path in tmp_path.glob("*.old*")) == ["r.md.old", "r.md.old-2"]


def test_a_report_is_as_private_as_the_umask_and_the_old_one_say(run: Run, tmp_path: Path) -> None:
    before = os.umask(0o077)
    try:
        assert run(*REPORT).returncode == 0
        assert run(*SCREEN, "--output", "found").returncode == 0
    finally:
        os.umask(before)
    modes = {path.name: path.stat().st_mode & 0o777 for path in tmp_path.iterdir() if path.is_file()}
    assert (modes["r.md"], modes["r-figure.svg"], modes["found"]) == (0o600, 0o600, 0o600)
    assert run(*REPORT, "--goods", "pots").returncode == 0
    assert (tmp_path / "r.md").stat().st_mode & 0o777 == 0o600
