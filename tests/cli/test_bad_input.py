"""Bad input to the real program: a clear paragraph or a noted skip, no traceback, nothing half-written."""

from __future__ import annotations

import csv
import io
import json
import os
import signal
import subprocess
import sys
from pathlib import Path

import pytest

from tests.conftest import Run, clean_environment

SCREEN = ("screen", "--languages", "nl")  # one language: big dictionaries may be installed for others
MARKS = "mark,classes\nTIMELO,21\nFEMSILL,21\nQUENCHLING,36\n"


@pytest.fixture
def marks(tmp_path: Path) -> Path:
    path = tmp_path / "marks.csv"
    path.write_text(MARKS)
    return path


def screened(done: subprocess.CompletedProcess[str]) -> list[str]:
    assert "Traceback" not in done.stderr
    assert done.returncode == 0, done.stderr
    return [json.loads(line)["name"] for line in done.stdout.splitlines()]


def refused(done: subprocess.CompletedProcess[str]) -> str:
    assert "Traceback" not in done.stderr
    assert (done.returncode, done.stdout) == (2, "")
    return done.stderr


LISTS = {
    "binary": bytes(range(256)) * 40,
    "latin-1": "mark\nCAFÉ TIMELO\n".encode("latin-1"),
    "empty": b"",
    "blank lines": b"\n \n\t\n",
    "a header alone": b"mark,classes\n",
    "a table without a column of marks": b"colour,size\nred,3\nblue,4\n",
    "broken JSON": b'{"mark": "TIM\n{"mark"\n',
    "XML that stops": b'<?xml version="1.0"?>\n<Transaction><TradeMark>',
}


@pytest.mark.parametrize("contents", LISTS.values(), ids=LISTS.keys())
@pytest.mark.parametrize("suffix", [".csv", ".txt", ".jsonl", ".xml"])
def test_a_list_of_marks_that_cannot_be_used_is_named(run: Run, tmp_path: Path, contents: bytes, suffix: str) -> None:
    path = tmp_path / f"list{suffix}"
    path.write_bytes(contents)
    done = run(*SCREEN, "--name", "Loamlet", "--register", path, "--format", "jsonl")
    assert "Traceback" not in done.stderr
    if done.returncode == 0:  # what can be read after all is read, with a remark
        assert screened(done) == ["Loamlet"]
    else:
        assert str(path) in refused(done)


@pytest.mark.parametrize("kind", ["missing", "folder", "empty", "blank", "binary"])
@pytest.mark.parametrize("option", ["names", "register", "brief", "report"])
def test_a_file_that_is_not_one_is_named_with_its_path(
    run: Run, tmp_path: Path, marks: Path, option: str, kind: str
) -> None:
    path = tmp_path / "it.txt"
    if kind == "folder":
        path.mkdir()
    elif kind != "missing":
        path.write_bytes({"empty": b"", "blank": b"\n\n", "binary": bytes(range(256))}[kind])
    arguments: dict[str, tuple[str | Path, ...]] = {
        "names": (*SCREEN, path, "--register", marks),
        "register": (*SCREEN, "--name", "Loamlet", "--register", path),
        "brief": ("screen", "--brief", path),
        "report": ("report", path),
    }
    told = refused(run(*arguments[option]))
    if (option, kind) not in (
        ("brief", "empty"),
        ("brief", "blank"),
        ("report", "empty"),
        ("report", "blank"),
    ):
        assert str(path) in told
    assert told.startswith("namescreen: ")


def test_names_in_another_encoding_are_refused_with_the_line(run: Run, tmp_path: Path, marks: Path) -> None:
    path = tmp_path / "names.txt"
    path.write_bytes("Loamlet\nCafé Loam\n".encode("latin-1"))
    done = run(*SCREEN, path, "--register", marks, "--format", "jsonl")
    assert "Traceback" not in done.stderr
    assert "names.txt" in done.stderr
    assert "line 2" in done.stderr


@pytest.mark.parametrize(
    ("contents", "names"),
    [
        (b"\xef\xbb\xbfLoamlet\nThymelow\n", ["Loamlet", "Thymelow"]),  # a byte order mark
        (b"\xef\xbb\xbfname,note\nLoamlet,x\n", ["Loamlet"]),
        ("Loamlet\nThymelow\n".encode("utf-16"), ["Loamlet", "Thymelow"]),
        (b"Loamlet\r\nThymelow\r\n", ["Loamlet", "Thymelow"]),
        (b"Loamlet\rThymelow\r", ["Loamlet", "Thymelow"]),  # line ends of old Macs
        (b"Loamlet", ["Loamlet"]),
        (b"\n\nLoamlet\n\n", ["Loamlet"]),
        (b"note,name\nx,Loamlet\ny\nz,Thymelow,extra\nq,Fernsill\n", ["Loamlet", "Fernsill"]),  # ragged rows
        (b"name\nLoamlet\n", ["Loamlet"]),
        (b"name\tnote\nLoamlet\tx\n", ["Loamlet"]),
        (b"name;note\nLoamlet;x\n", ["Loamlet"]),
        (b'name\n"Loam, let"\n', ["Loam, let"]),
        (b"Loamlet\nLoamlet\nThymelow\n", ["Loamlet", "Thymelow"]),  # a duplicate
        ("Loam\u202elet\nThy\u0007melow\n".encode(), ["Loamlet", "Thymelow"]),  # an override, a bell
        ("🌱\n🌱 Loamlet\n".encode(), ["🌱 Loamlet"]),  # a picture alone is no name
        (b"---\nLoamlet\n", ["Loamlet"]),
        (b"Loamlet\n" + b"x" * 10_000 + b"\n", ["Loamlet"]),
        (b"Loamlet\n" + b"x" * 10_000_000 + b"\nThymelow\n", ["Loamlet", "Thymelow"]),  # a 10 MB line
        ("Глина\n陶器\nكوب\n".encode(), ["Глина", "陶器", "كوب"]),
    ],
)
@pytest.mark.parametrize("way", ["file", "pipe"])
def test_names_are_read_however_they_are_written(
    run: Run, tmp_path: Path, marks: Path, contents: bytes, names: list[str], way: str
) -> None:
    path = tmp_path / "names.txt"
    path.write_bytes(contents)
    source, given = (path, b"") if way == "file" else (Path("-"), contents)
    done = run(*SCREEN, source, "--register", marks, "--format", "jsonl", input=given)
    assert screened(done) == names


@pytest.mark.parametrize("entry", ["🌱", "x" * 10_000, "y\u0000", "Loamlet"])
def test_what_is_left_out_is_said(run: Run, tmp_path: Path, marks: Path, entry: str) -> None:
    path = tmp_path / "names.txt"
    path.write_text(f"Loamlet\n{entry}\n", "utf-8")
    done = run(*SCREEN, path, "--register", marks, "--format", "jsonl")
    assert "Traceback" not in done.stderr
    if entry != "y\u0000":
        assert screened(done) == ["Loamlet"]
    assert "line 2" in done.stderr or "names.txt" in done.stderr
    assert len(done.stderr) < 1000


@pytest.mark.parametrize(
    ("rows", "marks_read", "told"),
    [
        ("mark,classes\nTIMELO,21\nTIMELOW\n,21\n", {"TIMELO", "TIMELOW"}, ""),  # ragged, and without words
        ("mark,classes\nTIMELO,21,x,y\nTIMELOW,21\n", {"TIMELOW"}, "line 2"),
        ("mark,classes\nTIMELO,99\n", {"TIMELO"}, "99"),
        ("mark,status\nTIMELO,registered\nTIMELO,registered\n", {"TIMELO"}, ""),
        ("mark\nTIM\u202eELO\n", {"TIMELO"}, ""),
        ("mark\n" + "TIMELO " * 2_000 + "\nTIMELOW\n", {"TIMELOW"}, "characters"),
        ("mark\n" + "A" * 10_000_000 + "\nTIMELO\n", {"TIMELO"}, ""),
        ('mark\n"TIM\nELO"\nTIMELOW\n', {"TIMELOW"}, ""),
    ],
)
def test_good_rows_of_a_list_are_kept_beside_bad_ones(
    run: Run, tmp_path: Path, rows: str, marks_read: set[str], told: str
) -> None:
    path = tmp_path / "list.csv"
    path.write_text(rows, "utf-8")
    done = run(*SCREEN, "--name", "Thymelow", "--register", path, "--top", "9", "--format", "jsonl")
    assert screened(done) == ["Thymelow"]
    found = {mark["mark"] for mark in json.loads(done.stdout)["close_marks"]}
    assert marks_read <= found
    assert told in done.stderr


def test_hostile_text_is_shown_as_text_in_every_form(run: Run, tmp_path: Path) -> None:
    path = tmp_path / "list.csv"
    path.write_text('mark,owner\n"TIM|ELO <b> `x` \x1b[31m",=cmd\n', "utf-8")
    for form in ("table", "csv", "jsonl", "markdown"):
        done = run(*SCREEN, "--name", "Thymelow", "--register", path, "--format", form)
        assert done.returncode == 0, done.stderr
        assert "\x1b" not in done.stdout
        if form == "csv":
            assert len({len(row) for row in csv.reader(io.StringIO(done.stdout))}) == 1


@pytest.mark.parametrize(
    "arguments",
    [
        ("screen",),
        ("screen", "--name", "..."),
        ("screen", "--name", ""),
        ("screen", "names.txt", "--name", "x"),
        ("screen", "--name", "x", "--classes", "99"),
        ("screen", "--name", "x", "--languages", "Klingon!"),
        ("screen", "--name", "x", "--top", "0"),
        ("screen", "--name", "x", "--fail-above", "7"),
        ("screen", "--name", "x", "--format", "yaml"),
        ("compare", "x"),
        ("compare", "...", "x"),
        ("brief", "new", "."),
    ],
)
def test_arguments_that_mean_nothing_are_refused(run: Run, arguments: tuple[str, ...]) -> None:
    assert refused(run(*arguments))


@pytest.mark.parametrize(
    "arguments",
    [
        ("screen", "--languages", "nl", "--name", b"Loam\xe9let"),
        ("screen", "--name", "Loamlet", b"--goods=caf\xe9"),
        ("addresses", b"Loam\xe9let"),
        ("compare", b"Loam\xe9let", "Loamlet"),
        ("readings", b"Loam\xe9let"),
        ("brainstorm", "--concept", b"caf\xe9"),
    ],
)
def test_a_byte_that_is_not_text_is_not_left_out_in_silence(run: Run, arguments: tuple[str | bytes, ...]) -> None:
    told = refused(run(*(os.fsdecode(one) for one in arguments)))
    assert "holds a byte that is not text" in told


def test_a_list_of_marks_may_have_a_name_that_is_not_text(run: Run, tmp_path: Path) -> None:
    path = tmp_path / os.fsdecode(b"m\xe9.csv")
    try:
        path.write_text(MARKS)
    except OSError:
        pytest.skip("names of files are text here")
    assert screened(run(*SCREEN, "--name", "Loamlet", "--register", path, "--format", "jsonl")) == ["Loamlet"]


@pytest.mark.parametrize("columns", ["²", "0", "-5", "x", "9" * 30, "４０"])
def test_a_width_that_is_none_is_no_hindrance(run: Run, columns: str) -> None:
    env = {"COLUMNS": columns, "LINES": columns}
    for command in (("compare", "Loamlet", "Timelo"), ("--help",), ("screen", "--languages", "nl", "-n", "Loamlet")):
        done = run(*command, env=env)
        assert (done.returncode, "Traceback" in done.stderr) == (0, False)
        assert done.stdout == run(*command).stdout


@pytest.mark.skipif(not Path("/dev/zero").exists(), reason="no device without end here")
@pytest.mark.parametrize("arguments", [("report", "--name", "x", "--since"), ("screen", "--brief"), ("report",)])
def test_a_device_without_end_is_not_read_for_ever(run: Run, arguments: tuple[str, ...]) -> None:
    assert "/dev/zero: has more than" in refused(run(*arguments, "/dev/zero"))


def test_ctrl_c_keeps_what_was_screened(tmp_path: Path, marks: Path) -> None:
    names = tmp_path / "names.txt"
    names.write_text("".join(f"Loamlet {number}\n" for number in range(2_000)))
    process = subprocess.Popen(
        [sys.executable, "-m", "namescreen", *SCREEN, names, "--register", marks, "--format", "jsonl"],
        stdout=subprocess.PIPE, stderr=subprocess.PIPE, cwd=tmp_path, env=clean_environment(tmp_path),
        bufsize=0,  # what readline would read ahead is lost to communicate
    )  # fmt: skip
    assert process.stdout is not None
    first = process.stdout.readline()
    process.send_signal(signal.SIGINT)
    out, err = process.communicate(timeout=60)
    assert process.returncode == 130
    lines = (first + out).decode().splitlines()
    assert [json.loads(line)["name"] for line in lines] == [f"Loamlet {number}" for number in range(len(lines))]
    assert b"Traceback" not in err
    assert f"Stopped after {len(lines)} of 2,000 names".encode() in err


def test_ctrl_c_before_any_result_leaves_nothing_behind(tmp_path: Path, marks: Path) -> None:
    names = tmp_path / "names.fifo"
    os.mkfifo(names)
    process = subprocess.Popen(
        [sys.executable, "-m", "namescreen", *SCREEN, names, "--register", marks],
        stdout=subprocess.PIPE, stderr=subprocess.PIPE, cwd=tmp_path, env=clean_environment(tmp_path),
    )  # fmt: skip
    with names.open("wb"):  # opened as soon as it waits for names
        process.send_signal(signal.SIGINT)
        out, err = process.communicate(timeout=60)
    assert (process.returncode, out) == (130, b"")
    assert b"Traceback" not in err


@pytest.mark.skipif(os.geteuid() == 0, reason="the administrator may write anywhere")
def test_a_folder_that_may_not_be_written_is_named(run: Run, tmp_path: Path) -> None:
    folder = tmp_path / "closed"
    folder.mkdir(mode=0o500)
    assert "closed" in refused(run("brief", "new", folder / "brief.toml"))
    assert "closed" in refused(run("demo", "--output", folder / "demo"))


def test_what_only_bears_the_name_of_a_prepared_register_is_no_list(run: Run, tmp_path: Path) -> None:
    (tmp_path / "marks.nsr").write_bytes(b"garbage\nmore of it\n")
    assert "marks.nsr: " in refused(run(*SCREEN, "--name", "Timelow", "--register", "marks.nsr"))


def test_a_limit_beyond_all_names_is_refused(run: Run) -> None:
    assert "--limit" in refused(run("brainstorm", "--concept", "warm", "--limit", "9" * 20))


def test_territories_that_are_not_understood_are_told(run: Run, tmp_path: Path) -> None:
    (tmp_path / "marks.csv").write_text("mark,office,territories\nTIMELO,WO,XX; Mars\n")
    done = run(*SCREEN, "--name", "Timelow", "--register", "marks.csv")
    assert "line 2, territories: 'XX; Mars' holds what is not a country" in done.stderr


LONG = "x" * 5_000


@pytest.mark.parametrize(
    "command",
    [
        (LONG,),
        ("classes", f"--{LONG}"),
        ("classes", "pots", "--limit", LONG),
        ("brainstorm", "--concept", "漢" * 5_000),
        ("brainstorm", "--concept", f"herb={LONG}", "--ideas"),
        ("brainstorm", "--concept", "漢 " * 2_500),
        ("brainstorm", LONG),
        ("screen", "--name", "Fern", "--languages", LONG),
        ("screen", "--name", "Fern", "--classes", LONG),
        ("report", LONG),
        ("addresses", "Fern", "--ending", LONG),
        ("register", "info", LONG),
    ],
)
def test_no_message_quotes_more_than_anyone_reads(run: Run, command: tuple[str, ...]) -> None:
    told = run(*command).stderr
    assert "Traceback" not in told
    assert max(map(len, told.splitlines())) < 1_300
    assert "…" in told


def test_a_name_in_other_capitals_is_the_same_name(run: Run, tmp_path: Path, marks: Path) -> None:
    (tmp_path / "names.txt").write_text("Loamlet\nLOAMLET\nCafé\nCafe\nloamlet\n")
    command = (*SCREEN, "--register", marks, "--format", "jsonl")
    done = run(*command, "names.txt")
    assert screened(done) == ["Loamlet", "Café", "Cafe"]  # another letter makes another name
    assert "line 2: 'LOAMLET' stands twice" in done.stderr
    assert screened(run(*command, "--name", "Loamlet", "--name", "LOAMLET")) == ["Loamlet"]
