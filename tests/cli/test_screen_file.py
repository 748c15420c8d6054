"""`screen --output`: a file written whole, and a run that can be stopped and taken up again."""

from __future__ import annotations

import json
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from tests.conftest import Run, clean_environment

NAMES = [f"Loamlet {number}" for number in range(400)]
SCREEN = ("screen", "names.txt", "--register", "marks.csv", "--languages", "nl", "--top", "2")


@pytest.fixture(autouse=True)
def lists(tmp_path: Path) -> None:
    (tmp_path / "marks.csv").write_text("mark\nTIMELO\nLOAMLETTE\nFEMSILL\n")
    (tmp_path / "names.txt").write_text("\n".join(NAMES[:4]))


@pytest.mark.parametrize("form", ["jsonl", "csv"])
def test_a_file_holds_what_standard_output_would(run: Run, tmp_path: Path, form: str) -> None:
    done = run(*SCREEN, "--format", form, "--output", "out")
    assert (done.returncode, done.stdout) == (0, "")
    assert "not legal clearance" in done.stderr
    assert (tmp_path / "out").read_text("utf-8") == run(*SCREEN, "--format", form).stdout
    assert not (tmp_path / "out.journal").exists()


def test_a_stopped_run_is_taken_up_where_it_stopped(run: Run, tmp_path: Path) -> None:
    (tmp_path / "names.txt").write_text("\n".join(NAMES))
    command = [*SCREEN, "--format", "jsonl", "--output", "out"]
    process = subprocess.Popen(
        [sys.executable, "-m", "namescreen", *command],
        stdout=subprocess.PIPE, stderr=subprocess.PIPE, cwd=tmp_path, env=clean_environment(tmp_path),
    )  # fmt: skip
    journal = tmp_path / "out.journal"
    until = time.monotonic() + 60
    while time.monotonic() < until and (not journal.exists() or journal.read_bytes().count(b"\n") < 20):
        time.sleep(0.01)
    process.send_signal(signal.SIGINT)
    _, err = process.communicate(timeout=60)
    assert process.returncode == 130
    done = len(journal.read_bytes().splitlines()) - 1
    assert f"Stopped after {done:,} of 400 names".encode() in err
    assert not (tmp_path / "out").exists()

    again = run(*command)
    assert again.returncode == 0, again.stderr
    assert f"Resuming an earlier run: {done:,} of 400 names are done." in again.stderr
    rows = [json.loads(line) for line in (tmp_path / "out").read_text("utf-8").splitlines()]
    assert [row["name"] for row in rows] == NAMES
    assert not journal.exists()


def test_another_run_does_not_resume_the_journal(run: Run, tmp_path: Path) -> None:
    command = [*SCREEN, "--format", "jsonl", "--output", "out"]
    before = 'namescreen journal 1 0\n["Loamlet 0", {"name": "wrong"}]\n'
    (tmp_path / "out.journal").write_text(before)
    done = run(*command)
    assert "Resuming" not in done.stderr
    assert "out.journal is of another run, or of another version of the program" in done.stderr
    assert "starts from the beginning" in done.stderr
    assert (tmp_path / "out.journal.old").read_text() == before
    assert "wrong" not in (tmp_path / "out").read_text("utf-8")


def test_results_kept_in_another_form_are_not_taken_up(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The same run by a program whose results had another shape: it begins anew, and says so."""
    from typer.testing import CliRunner

    from namescreen import screening
    from namescreen.cli.journal import Journal
    from namescreen.cli.screen import app

    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    command = [*SCREEN[1:], "--format", "csv", "--output", "out"]
    kept: list[dict[str, object]] = []

    class Kept(Journal):
        def finish(self) -> None:  # as if stopped before the output stood
            kept.append(dict(self.results))

    monkeypatch.setattr("namescreen.cli.journal.Journal", Kept)
    older = screening.schema()
    del older["$defs"]["close_mark"]["properties"]["others"]
    now = screening.schema
    monkeypatch.setattr(screening, "schema", lambda: older)
    assert "starts from the beginning" not in CliRunner().invoke(app, command).stderr
    monkeypatch.setattr(screening, "schema", now)
    assert "starts from the beginning" in CliRunner().invoke(app, command).stderr
    again = CliRunner().invoke(app, command)
    assert "Resuming an earlier run: 4 of 4 names are done." in again.stderr
    assert "starts from the beginning" not in again.stderr
    assert [list(one) for one in kept] == [NAMES[:4]] * 3


@pytest.mark.parametrize("option", [("--column", "owner"), ("--encoding", "latin-1"), ("--live",)])
def test_a_run_is_not_taken_up_with_the_list_read_in_another_way(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, option: tuple[str, ...]
) -> None:
    from typer.testing import CliRunner

    from namescreen.cli.journal import Journal
    from namescreen.cli.screen import app

    rows = ("mark,owner,status", "TIMELO,Loamlette,dead", "SILLW\u00c9LL,Fernsill,registered")
    (tmp_path / "marks.csv").write_text("\n".join(rows), "utf-8")
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    monkeypatch.setattr(Journal, "finish", lambda journal: journal._file.close())  # as if stopped at the very end
    command = [*SCREEN[1:], "--format", "jsonl", "--output", "out"]
    assert CliRunner().invoke(app, command).exit_code == 0
    other = CliRunner().invoke(app, [*command, *option])
    assert other.exit_code == 0
    assert "starts from the beginning" in other.stderr
    again = CliRunner().invoke(app, [*command, *option])
    assert "4 of 4 names are done" in again.stderr


def test_a_table_is_not_written_to_a_file(run: Run, tmp_path: Path) -> None:
    done = run(*SCREEN, "--output", "out")
    assert done.returncode == 2
    assert "--format jsonl or csv" in done.stderr
    assert not (tmp_path / "out").exists()


def test_a_place_that_cannot_be_written_is_named(run: Run) -> None:
    done = run(*SCREEN, "--format", "jsonl", "--output", "no/such/out")
    assert done.returncode == 2
    assert "no/such/out" in done.stderr
    assert "Traceback" not in done.stderr
