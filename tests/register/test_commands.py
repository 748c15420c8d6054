"""`namescreen register` as a user runs it."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from subprocess import CompletedProcess

Run = Callable[..., "CompletedProcess[str]"]


def test_prepare_info_and_screen(run: Run, tmp_path: Path) -> None:
    (tmp_path / "marks.csv").write_text("mark,class,status,office\nHERBWICK,21,Registered,XX\nMOSS,99,dead,XX\n,21,,\n")
    done = run("register", "prepare", "marks.csv", "--output", "marks.nsr")
    assert (done.returncode, done.stdout) == (0, f"marks.nsr: 2 marks from 1 file, {_megabytes(tmp_path)} MB.\n")
    assert "not a Nice class" in done.stderr
    assert "1 of 3 marks have no words" in done.stderr
    about = run("register", "info", "marks.nsr", "--problems")
    assert about.returncode == 0
    for part in ("2  (", "1 live, 1 dead", "XX 2", "21: 1", "3 rows: 2 kept, 0 left out", "sha256", "not a Nice class"):
        assert part in about.stdout
    assert max(map(len, run("register", "info", "marks.nsr").stdout.splitlines())) <= 100
    found = run("screen", "--name", "Herbwik", "--register", "marks.nsr", "--format", "csv")
    assert "HERBWICK" in found.stdout


def test_newer_marks_are_added(run: Run, tmp_path: Path) -> None:
    (tmp_path / "marks.csv").write_text("mark,number\nHERBWICK,1\n")
    (tmp_path / "newer.csv").write_text("mark,number\nHERBWICKS,1\nMOSS,2\n")
    run("register", "prepare", "marks.csv", "-o", "marks.nsr")
    done = run("register", "prepare", "marks.nsr", "newer.csv", "-o", "marks.nsr")
    assert done.stdout.startswith("marks.nsr: 2 marks from 2 files")


def test_what_cannot_be_done_is_one_paragraph_and_code_2(run: Run, tmp_path: Path) -> None:
    (tmp_path / "bad.nsr").write_bytes(b"namescreen register\n" + b"\x01\0\0\0" * 20)
    for arguments in (
        ("prepare", "missing.csv", "-o", "m.nsr"),
        ("info", "missing.nsr"),
        ("info", "bad.nsr"),
        ("prepare", "bad.nsr", "-o", "m.nsr"),
    ):
        done = run("register", *arguments)
        assert done.returncode == 2, done.stderr
        assert arguments[1] in done.stderr
        assert "Traceback" not in done.stderr
        assert not (tmp_path / "m.nsr").exists()


def _megabytes(folder: Path) -> str:
    return f"{(folder / 'marks.nsr').stat().st_size / 1e6:,.1f}"
