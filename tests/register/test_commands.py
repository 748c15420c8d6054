"""`namescreen register` as a user runs it."""

from __future__ import annotations

import json
import os
from collections.abc import Callable
from pathlib import Path
from subprocess import CompletedProcess

Run = Callable[..., "CompletedProcess[str]"]


def test_what_is_told_of_a_register_keeps_to_a_narrow_terminal(run: Run, tmp_path: Path) -> None:
    (tmp_path / "marks.csv").write_text("name,class,filed\nFERNSILL,21,31.02.2020\nFEMSILL,x,\n")
    made = run("register", "prepare", "marks.csv", "--output", "marks.nsr", env={"COLUMNS": "40"})
    told = run("register", "info", "marks.nsr", "--problems", env={"COLUMNS": "40"})
    for text in (made.stdout, made.stderr, told.stdout):
        assert 0 < max(map(len, text.splitlines())) <= 40


def test_of_a_plain_list_info_says_how_to_make_a_register_of_it(run: Run, tmp_path: Path) -> None:
    (tmp_path / "my marks.csv").write_text("name\nFERNSILL\n")
    told = run("register", "info", "my marks.csv")
    assert told.returncode == 2
    assert "namescreen register prepare 'my marks.csv' --output 'my marks.nsr'" in told.stderr
    (tmp_path / "m.nsr").write_text("name\nFERNSILL\n")
    assert "Make it again with" in run("register", "info", "m.nsr").stderr


def test_prepare_info_and_screen(run: Run, tmp_path: Path) -> None:
    (tmp_path / "marks.csv").write_text("mark,class,status,office\nHERBWICK,21,Registered,XX\nMOSS,99,dead,XX\n,21,,\n")
    done = run("register", "prepare", "marks.csv", "--output", "marks.nsr")
    assert (done.returncode, done.stdout) == (0, f"marks.nsr: 2 marks from 1 file, {_kilobytes(tmp_path)} kB.\n")
    assert "not a Nice class" in done.stderr
    assert "1 of 3 marks have no words" in done.stderr
    about = run("register", "info", "marks.nsr", "--problems")
    assert about.returncode == 0
    for part in ("2 (", "1 live, 1 dead", "XX 2", "21: 1", "3 rows: 2 kept, 0 left out", "sha256", "not a Nice class"):
        assert part in about.stdout
    found = run("screen", "--name", "Herbwik", "--register", "marks.nsr", "--format", "csv")
    assert "HERBWICK" in found.stdout


def test_a_prepared_register_says_how_its_lists_were_read(run: Run, tmp_path: Path) -> None:
    (tmp_path / "marks.csv").write_text("mark,owner\nHERBWICK,Sill\u00e9\n", "latin-1")
    options = ("--column", "mark=owner", "--encoding", "latin-1")
    run("register", "prepare", "marks.csv", "--output", "marks.nsr", *options)
    assert "read with --column mark=owner --encoding latin-1" in run("register", "info", "marks.nsr").stdout
    (tmp_path / "more.csv").write_text("mark\nMOSS\n")
    run("register", "prepare", "marks.nsr", "more.csv", "--output", "marks.nsr")
    assert run("register", "info", "marks.nsr").stdout.count("read with") == 1


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


def test_what_a_register_holds_fits_eighty_columns(run: Run, tmp_path: Path) -> None:
    rows = "".join(f"MARK {number},{number}\n" for number in range(1, 46))
    (tmp_path / "marks.csv").write_text(f"mark,class\n{rows}")
    run("register", "prepare", "marks.csv", "-o", "marks.nsr")
    told = run("register", "info", "marks.nsr").stdout
    assert "45: 1" in told
    assert max(map(len, told.splitlines())) <= 80


def test_a_file_whose_name_is_no_text_is_read_and_told(run: Run, tmp_path: Path) -> None:
    """A file name is bytes (POSIX): it need not be UTF-8, and may hold what a terminal would obey."""
    (tmp_path / "lists").mkdir()
    Path(os.fsdecode(os.fsencode(tmp_path / "lists") + b"/a\x1b[31m\xff.csv")).write_text("mark\nHERBWICK\n")
    shown = "a⟨U+001B⟩[31m⟨U+DCFF⟩.csv"
    prepared = os.fsdecode(b"m\xff.nsr")
    done = run("register", "prepare", "lists", "-o", prepared)
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout.startswith("m⟨U+DCFF⟩.nsr: 1 mark from 1 file")
    assert shown in run("register", "info", prepared).stdout
    for register in ("lists", prepared):
        for form in ("jsonl", "csv"):
            command = ("screen", "-n", "Herbwik", "-r", register, "--format", form)
            filed = run(*command, "-o", f"{form}.out")
            assert (filed.returncode, "Traceback" in filed.stderr) == (0, False)
            assert (tmp_path / f"{form}.out").read_text("utf-8") == run(*command).stdout


def _kilobytes(folder: Path) -> str:
    return f"{(folder / 'marks.nsr').stat().st_size / 1e3:,.0f}"


def test_columns_are_named_in_the_command_or_the_brief(run: Run, tmp_path: Path) -> None:
    (tmp_path / "liste.csv").write_text(
        "Marke;Nummer;Klassen;Waren\nHERBWICK;1;21;Vasen\nMOSSLING;2;31;Samen\nTERRAVEIL;3;9;\n"
    )
    columns = ("mark=Marke", "number=Nummer", "classes=Klassen")
    asked = [part for column in columns for part in ("--column", column)]
    found = run("screen", "-n", "Herbwik", "-r", "liste.csv", *asked, "--format", "jsonl")
    assert found.returncode == 0
    [close, *_] = json.loads(found.stdout)["close_marks"]
    assert (close["mark"], close["number"], close["classes"]) == ("HERBWICK", "1", [21])
    assert "columns not used: Waren" in found.stderr
    table = 'marks = ["liste.csv"]\n[columns]\nmark = "Marke"\nnumber = "Nummer"\nclasses = "Klassen"\n'
    (tmp_path / "brief.toml").write_text(table)
    assert run("screen", "-n", "Herbwik", "-b", "brief.toml", "--format", "jsonl").stdout == found.stdout
    (tmp_path / "wrong.toml").write_text(table.replace("number", "nummer"))
    wrong = run("screen", "-n", "Herbwik", "-b", "wrong.toml")
    assert wrong.returncode == 2
    assert "Did you mean `number`?" in wrong.stderr
    assert run("screen", "-n", "Herbwik", "-r", "liste.csv", "--column", "colour=Waren").returncode == 2


def test_an_office_s_format_is_named(run: Run, tmp_path: Path) -> None:
    header = "Trade Mark|Mark Text|Name|Status|Mark Type|" + "|".join(f"Class{n}" for n in range(1, 46))
    flags = "|".join(str(int(n == 21)) for n in range(1, 46))
    rows = f"UK1|HERBWICK|Pots Ltd|Registered|Word|{flags}\nUK2|MOSS|Pots Ltd|Dead|Word|{flags}\n"
    (tmp_path / "OpenData.txt").write_bytes(f"{header}\n{rows}".encode("utf-16"))
    run("register", "prepare", "OpenData.txt", "-o", "marks.nsr")
    told = run("register", "info", "marks.nsr").stdout
    for part in ("UK text release", "1 live, 1 dead", "GB 2", "21: 2"):
        assert part in told
    report = run("report", "-n", "Herbwik", "-r", "marks.nsr", "--date", "2026-05-31").stdout
    assert "UK text release" in report


def test_an_update_of_a_prepared_register_takes_away_and_changes(run: Run, tmp_path: Path) -> None:
    def record(number: int, name: str, operation: str = "Insert", status: str = "Registered") -> str:
        return (
            f'<TradeMark operationCode="{operation}"><RegistrationOfficeCode>XX</RegistrationOfficeCode>'
            f"<ApplicationNumber>{number}</ApplicationNumber><MarkCurrentStatusCode>{status}</MarkCurrentStatusCode>"
            f"<MarkVerbalElementText>{name}</MarkVerbalElementText></TradeMark>"
        )

    (tmp_path / "whole.xml").write_text(f"<T>{record(1, 'HERBWICK')}{record(2, 'MOSS')}{record(3, 'FERN')}</T>")
    (tmp_path / "day.xml").write_text(f"<T>{record(2, '', 'Delete')}{record(3, 'FERNS', 'Update', 'Ended')}</T>")
    run("register", "prepare", "whole.xml", "-o", "marks.nsr")
    done = run("register", "prepare", "marks.nsr", "day.xml", "-o", "marks.nsr")
    assert done.stdout.startswith("marks.nsr: 2 marks")
    assert "1 live, 1 dead" in run("register", "info", "marks.nsr").stdout
    (tmp_path / "gone.xml").write_text(f"<T>{record(1, '', 'Delete')}{record(3, '', 'Delete')}</T>")
    gone = run("register", "prepare", "marks.nsr", "gone.xml", "-o", "other.nsr")
    assert gone.returncode == 2
    assert not (tmp_path / "other.nsr").exists()
