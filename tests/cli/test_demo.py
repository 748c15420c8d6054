"""The demo shows the whole job, from the shipped package alone, and leaves a folder to go on with."""

from __future__ import annotations

import csv
import io
import re
from pathlib import Path

from namescreen.demo import demo_files
from namescreen.register import read_register
from tests.conftest import Run


def test_the_demo_shows_the_whole_job_and_leaves_it_to_try(run: Run, tmp_path: Path) -> None:
    done = run("demo")
    assert done.returncode == 0, done.stderr
    folder = tmp_path / "namescreen-demo"
    assert "Brainstormed from herb, clay, sip, sill and spring" in done.stdout
    assert "The shortlist, screened against 302 marks" in done.stdout
    assert re.search("Sprigwick +knockout +SPRIGWICK", done.stdout)
    assert "Report: namescreen-demo/report.md" in done.stdout
    assert "not legal clearance" in done.stdout
    assert all(len(line) <= 80 for line in done.stdout.splitlines() if "legal clearance" not in line)
    assert sorted(path.name for path in folder.iterdir()) == [
        "brief.toml", "marks.csv", "report-figure.svg", "report.md",
    ]  # fmt: skip
    report = (folder / "report.md").read_text("utf-8")
    assert "Sprigwick" in report
    assert "2026-03-02" in report

    again = run("demo")
    assert (again.returncode, again.stdout) == (0, done.stdout)
    assert (folder / "report.md").read_text("utf-8") == report

    followed = run("screen", "--brief", "brief.toml", "--top", "1", "--format", "csv", cwd=folder)
    assert followed.returncode == 0, followed.stderr
    rows = list(csv.DictReader(io.StringIO(followed.stdout)))
    assert len({row["name"] for row in rows}) == 8


def test_a_changed_brief_is_never_overwritten(run: Run, tmp_path: Path) -> None:
    folder = tmp_path / "mine"
    folder.mkdir()
    (folder / "brief.toml").write_text("product = 'my own'")
    done = run("demo", "--output", "mine")
    assert (done.returncode, done.stdout) == (2, "")
    assert "mine/brief.toml: is not the example's. Name another folder with --output" in done.stderr
    assert (folder / "brief.toml").read_text() == "product = 'my own'"


def test_a_file_in_the_way_is_named(run: Run, tmp_path: Path) -> None:
    (tmp_path / "namescreen-demo").write_text("")
    done = run("demo")
    assert done.returncode == 2
    assert "namescreen-demo: cannot be written" in done.stderr


def test_the_list_is_plainly_invented_and_read_without_a_remark(tmp_path: Path) -> None:
    register = read_register([str(demo_files()[1])])
    assert not register.problems
    assert len({mark.text for mark in register.marks}) == len(register.marks)
    classes = {number for mark in register.marks for number in mark.classes}
    assert len(classes) >= 12
    for mark in register.marks:
        assert "(invented)" in mark.owner
        assert "-DEMO-" in mark.number
        # XA to XZ are user-assigned in ISO 3166-1: no country has them.
        assert mark.office.upper() in ("XA", "XB", "XC")
