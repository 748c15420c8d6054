"""`namescreen brainstorm` as a user runs it: in a pipe, in every format, and steered in a terminal."""

from __future__ import annotations

import csv
import io
import json
import os
import re
import select
import signal
import subprocess
import sys
import time
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path

import pytest

from namescreen.generation.constructions import CONSTRUCTIONS
from namescreen.outcome import DISCLAIMER

Run = Callable[..., "subprocess.CompletedProcess[str]"]
ASKED = ("brainstorm", "--concept", "herb", "--concept", "clay", "--goods", "herb planters")


def test_the_table_fits_eighty_columns_and_says_what_it_is_not(run: Run) -> None:
    done = run(*ASKED, "--limit", "25")
    assert done.returncode == 0, done.stderr
    lines = done.stdout.splitlines()
    assert max(map(len, lines[:-1])) <= 80
    assert any(line.split()[:2] == ["name", "score"] for line in lines[:2])  # a long name wraps the heads beside it
    assert lines[-1] == DISCLAIMER
    assert "\x1b" not in done.stdout


def test_csv_and_json_lines_hold_the_same_names_with_the_disclaimer_apart(run: Run) -> None:
    as_csv = run(*ASKED, "--limit", "8", "--format", "csv")
    as_json = run(*ASKED, "--limit", "8", "--format", "jsonl")
    rows = list(csv.DictReader(io.StringIO(as_csv.stdout)))
    facts = [json.loads(line) for line in as_json.stdout.splitlines()]
    assert [row["name"] for row in rows] == [fact["name"] for fact in facts]
    assert len(rows) == 8
    assert DISCLAIMER in as_csv.stderr
    assert DISCLAIMER in as_json.stderr
    assert all(0 <= float(row["score"]) <= 1 for row in rows)


def test_output_is_the_same_to_the_byte_under_any_hash_seed(run: Run) -> None:
    outputs = {run(*ASKED, "--limit", "60", env={"PYTHONHASHSEED": seed}).stdout for seed in ("0", "1")}
    assert len(outputs) == 1


def test_all_names_that_are_counted_as_left_out_are_listed(run: Run, tmp_path: Path) -> None:
    names = [json.loads(line)["name"] for line in run(*ASKED, "--limit", "3", "--format", "jsonl").stdout.splitlines()]
    (tmp_path / "marks.txt").write_text("\n".join(names))
    asked = (*ASKED, "--limit", "4", "--register", "marks.txt", "--format", "jsonl")
    told = run(*asked).stderr
    rows = [json.loads(line) for line in run(*asked, "--all").stdout.splitlines()]
    out = [row["left_out"] for row in rows if "left_out" in row]
    assert {*names} <= {*out}
    counted = re.search(r"Left out on the way to these 4 names: (.*)\. --all lists them\.", told)
    assert counted
    assert sum(map(int, re.findall(r"\d+", counted[1]))) == len(out)


def test_the_words_that_names_are_made_from_come_before_the_meanings(run: Run) -> None:
    shown = run(*ASKED, "--ideas", "--limit", "5").stdout
    assert shown.splitlines()[0].startswith("word")
    assert shown.index("what it is, and what for") < shown.index("The meanings of each concept")
    assert shown.count("  herb: ") == 1
    assert "Not used" not in shown
    told = " ".join(run("brainstorm", "-c", "spring=season", "-c", "hum", "--ideas", "--limit", "5").stdout.split())
    assert "spring: season. Not used: to jump, leap;" in told
    meanings = told.partition("hum: ")[2].partition(". ")[0].split("; ")
    assert len(meanings) == len(set(meanings)) > 3  # each once
    assert not any("organization" in one for one in meanings)  # which is called so, and is no hum


@pytest.mark.parametrize("concept", ["植木", "no fuss", "²", "🌱"])
@pytest.mark.parametrize("more", [(), ("--ideas",), ("--steer",)])
def test_a_concept_that_brings_no_word_is_refused_alike(run: Run, concept: str, more: tuple[str, ...]) -> None:
    done = run("brainstorm", "--concept", concept, *more)
    assert (done.returncode, done.stdout) == (2, "")
    told = done.stderr.splitlines()[-1]
    assert told.startswith(f"namescreen: concept {concept!r} ")


def test_a_tone_in_other_words_is_told(run: Run) -> None:
    told = run(*ASKED, "--limit", "1", "--tone", "friendly", "--tone", "bold", "--tone", "zyx").stderr
    assert "friendly is taken as warm" in told
    assert "bold is" not in told
    assert "Not a tone known here, and passed over: zyx" in told


def test_limits_given_as_options_hold(run: Run) -> None:
    done = run(*ASKED, "--limit", "15", "--length", "5-7", "--avoid", "ay", "--starts", "s", "--format", "jsonl")
    for fact in map(json.loads, done.stdout.splitlines()):
        letters = "".join(filter(str.isalpha, fact["name"].lower()))
        assert 5 <= len(letters) <= 7
        assert letters.startswith("s")
        assert "ay" not in letters


def test_the_demo_brief_works_and_its_options_go_before_it(run: Run) -> None:
    brief = Path(__file__).parents[2] / "namescreen" / "demo" / "brief.toml"
    done = run("brainstorm", brief, "--limit", "5", "--concept", "moss", "--format", "jsonl")
    assert done.returncode == 0, done.stderr
    assert all(json.loads(line)["name"] for line in done.stdout.splitlines())


def test_ideas_show_meanings_and_distances(run: Run) -> None:
    done = run("brainstorm", "--concept", "spring=season", "--ideas", "--limit", "10")
    assert done.returncode == 0, done.stderr
    assert "  spring: season. Not used: " in done.stdout
    lines = run("brainstorm", "--concept", "spring=season", "--ideas", "--format", "jsonl").stdout.splitlines()
    rows = [json.loads(line) for line in lines]
    assert [row["why"] for row in rows if row["kind"] == "concept"] == ["a concept"]
    assert all(row["why"].rstrip(")").endswith("for spring") for row in rows if row["kind"] == "find")


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["brainstorm"], "--concept"),
        (["brainstorm", "--concept", "herb", "--length", "9-5"], "--length"),
        (["brainstorm", "--concept", "=season"], "--concept"),
        (["brainstorm", "--concept", "herb", "--like", "\N{COLLISION SYMBOL}"], "--like"),
        (["brainstorm", "--concept", "herb", "--starts", "9"], "--starts"),
        (["brainstorm", "--concept", "herb", "--construction", "pun"], "changed"),
        (["brainstorm", "missing.toml"], "no such file"),
    ],
)
def test_what_cannot_be_done_is_said_in_a_line(run: Run, arguments: list[str], said: str) -> None:
    done = run(*arguments)
    assert done.returncode == 2
    assert said in done.stderr
    assert "Traceback" not in done.stderr
    assert done.stdout == ""


def test_commands_from_a_pipe_are_shown_with_what_they_did(run: Run, tmp_path: Path) -> None:
    done = run(*ASKED, "--steer", input=b"keep 1 2\r\nmore 1\nback\nlist\n")
    assert (done.returncode, done.stderr) == (0, "")
    said = done.stdout.split("> ")
    assert [one.partition("\n")[0] for one in said[1:]] == ["keep 1 2", "more 1", "back", "list"]
    assert "On the shortlist: 2." in said[1]
    assert "Page 1 of 2." in said[3]
    names = [line for line in (tmp_path / "shortlist.txt").read_text("utf-8").splitlines() if line[:1] != "#"]
    assert len(names) == 2
    assert "Next: namescreen screen shortlist.txt" in said[4]  # the end of the lines is a stop
    nothing = run(*ASKED, "--steer", "--session", "other.session")
    assert nothing.returncode == 0
    assert "Taking up" not in nothing.stdout


def test_lines_of_a_pipe_that_ask_for_nothing_known_are_told_with_their_number(run: Run, tmp_path: Path) -> None:
    lines = b"keep 1\nsing\nkeep 99\n\xff\n" + b"x" * 30_000 + b"\nkeep 2\n"
    done = run(*ASKED, "--steer", input=lines)
    assert done.returncode == 2
    assert "standard input: 4 lines asked for nothing that could be done" in done.stderr
    said = done.stdout
    assert "Line 2: 'sing' is not understood here" in said
    assert "Line 3: This page has 1 to 12, and not 99." in said
    assert "Line 4: That line holds what is no text" in said
    assert "Line 5: " in said
    assert "Line 6" not in said
    assert "2 names kept" in said
    assert "\x1b" not in run(*ASKED, "--steer", "--session", "third.session", input=b"\x1b[31mkeep 1\n").stdout
    endless = run(*ASKED, "--steer", "--session", "other.session", input=b"y\n" * 500)
    assert endless.returncode == 2
    assert "Nothing was read further" in endless.stderr


class Terminal:
    """The program on a pseudo-terminal of 80 columns."""

    def __init__(self, folder: Path) -> None:
        import pty

        root = str(Path(__file__).parents[2])
        environment = {"PATH": os.environ["PATH"], "HOME": str(folder), "PYTHONPATH": root, "COLUMNS": "80",
                       "TERM": "dumb", "LANG": "C.UTF-8"}  # fmt: skip
        self.pid, self.file = pty.fork()
        if self.pid == 0:
            os.chdir(folder)
            os.execve(sys.executable, [sys.executable, "-m", "namescreen", *ASKED, "--steer"], environment)

    def read(self, until: str = "> ", seconds: float = 60) -> str:
        """What the program writes until it asks, or ends."""
        text, end = "", time.monotonic() + seconds
        while not text.endswith(until) and time.monotonic() < end:
            if select.select([self.file], [], [], 0.5)[0]:
                try:
                    chunk = os.read(self.file, 65536)
                except OSError:
                    break
                if not chunk:
                    break
                text += chunk.decode()
        return text.replace("\r\n", "\n")

    def say(self, line: str) -> str:
        """Write a line, and read the answer."""
        os.write(self.file, (line + "\n").encode())
        return self.read()

    def end(self, press: str = "") -> int:
        """The exit code; `press` is pressed until the program ends, with time for it to do so in between."""
        until = time.monotonic() + 60
        while time.monotonic() < until:
            ended, status = os.waitpid(self.pid, os.WNOHANG)
            if ended:
                return os.waitstatus_to_exitcode(status)
            if press:
                with suppress(OSError):  # it is ending
                    os.write(self.file, press.encode())
            self.read(until="\0", seconds=15 if press else 1)
        os.kill(self.pid, signal.SIGKILL)
        os.waitpid(self.pid, 0)
        pytest.fail("the program did not end")


@pytest.fixture
def terminal(tmp_path: Path) -> Callable[[], Terminal]:
    pytest.importorskip("pty")
    return lambda: Terminal(tmp_path)


def test_on_a_terminal_back_keep_and_next_stay_in_their_row(terminal: Callable[[], Terminal]) -> None:
    desk = terminal()
    desk.read()
    second = desk.say("next")
    assert "Page 1 of 2." in desk.say("back")
    assert "Kept: " in desk.say("keep 2")
    again = desk.say("next")
    assert "Page 2 of 2." in again
    rows = [line for line in second.splitlines() if line[:3].strip().isdecimal()]
    assert rows
    assert all(row in again for row in rows)


def test_a_session_steers_saves_and_is_taken_up_again(
    terminal: Callable[[], Terminal], tmp_path: Path, run: Run
) -> None:
    desk = terminal()
    page = desk.read()
    assert DISCLAIMER in " ".join(page.split())
    assert max(map(len, page.splitlines())) <= 80
    assert "Kept: " in desk.say("keep 1 2")
    assert "Dropped" in desk.say("drop 3")
    assert "Taken back: drop" in desk.say("undo")
    assert "1 to 12" in desk.say("keep 99")
    assert "not understood" in desk.say("sing")
    assert "evokes" in desk.say("why 1")
    assert "name" in desk.say("more 1")
    os.kill(desk.pid, signal.SIGKILL)  # as a closed terminal may: every step so far must be on the disc
    desk.end()

    again = terminal()
    assert "2 names kept so far" in again.read()
    assert len(again.say("list").splitlines()) >= 3
    assert "2 names kept, in shortlist.txt" in again.say("save")
    assert again.end(press="\x03") == 130

    last = terminal()
    last.read()
    assert "name" in last.say("more 1")
    assert "12  " in last.say("undo")  # the page has changed back: its numbers are shown
    assert "Next: namescreen screen shortlist.txt\n" in last.say("stop")
    assert last.end() == 0

    shortlist = tmp_path / "shortlist.txt"
    names = [line for line in shortlist.read_text("utf-8").splitlines() if not line.startswith("#")]
    assert len(names) == 2
    marks = tmp_path / "marks.txt"
    marks.write_text("Oakwolf\n", "utf-8")
    screened = run("screen", shortlist, "--register", marks, "--format", "jsonl")
    assert [json.loads(line)["name"] for line in screened.stdout.splitlines()] == names


def test_a_broken_session_file_is_refused(terminal: Callable[[], Terminal], tmp_path: Path) -> None:
    (tmp_path / "brainstorm.session").write_text("not a session\n", "utf-8")
    desk = terminal()
    assert "is not a session" in desk.read(until="\0")
    assert desk.end() == 2


def test_in_a_narrow_terminal_a_name_takes_two_lines_or_three(run: Run) -> None:
    shown = run(*ASKED, "--limit", "25", env={"COLUMNS": "60"}).stdout.splitlines()
    assert max(map(len, shown)) <= 60
    assert shown[0].split() == ["name", "score", "evokes", "says", "indirect"]
    assert len(shown) < 25 * 3


def test_the_help_says_what_each_construction_is(run: Run) -> None:
    told = " ".join(run("brainstorm", "--help", env={"COLUMNS": "200"}).stdout.split())
    for made in CONSTRUCTIONS:
        assert f"{made} (" in told
