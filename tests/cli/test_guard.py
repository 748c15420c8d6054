from __future__ import annotations

import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

from namescreen import tables
from namescreen.cli import COMMANDS
from namescreen.cli.guard import EXIT_CODES, MOST_PROBLEMS, guarded
from namescreen.errors import DataError, InputError, Interrupted, Problem
from tests.conftest import Run, clean_environment


@pytest.mark.parametrize(
    ("error", "code", "text"),
    [
        (InputError(Problem("is empty", "Write a word", "brief.toml", 3, "avoid")), 2,
         "namescreen: brief.toml, line 3, avoid: is empty. Write a word\n"),
        (InputError("plain"), 2, "namescreen: plain\n"),
        (InputError("a\x1b[31mb\u202e"), 2, "namescreen: a⟨U+001B⟩[31mb⟨U+202E⟩\n"),
        (DataError("t.tsv", "is damaged", "Mend it"), 2, "namescreen: t.tsv: is damaged. Mend it\n"),
        (Interrupted("Stopped after 3 of 9 names."), 130, "namescreen: Stopped after 3 of 9 names.\n"),
        (KeyboardInterrupt(), 130, "namescreen: Stopped. Nothing was left half-written.\n"),
    ],
)  # fmt: skip
def test_what_goes_wrong_on_purpose_is_one_paragraph_and_a_code(
    capsys: pytest.CaptureFixture[str], error: BaseException, code: int, text: str
) -> None:
    with pytest.raises(SystemExit) as end, guarded():
        raise error
    assert (end.value.code, capsys.readouterr().err) == (code, text)


def test_a_mistake_of_the_program_is_not_hidden() -> None:
    with pytest.raises(ZeroDivisionError), guarded():
        raise ZeroDivisionError


def test_what_a_damaged_table_leads_to_is_told_as_its_damage(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "numbers.tsv"
    path.write_bytes(tables.table_bytes("numbers.tsv", [("weight", "0.4")]).replace(b"0.4", b"0x4"))
    monkeypatch.setattr(tables, "_opened", [tables.Table(path)])
    with pytest.raises(SystemExit) as ended, guarded():
        float(tables.Table(path).get("weight") or "")
    assert ended.value.code == 2
    assert "numbers.tsv" in (told := capsys.readouterr().err)
    assert "is damaged" in told


def test_ctrl_c_amid_the_making_of_a_class_has_the_code_of_any_other(tmp_path: Path) -> None:
    program = "from namescreen.cli.guard import guarded\nwith guarded(): exec('raise KeyboardInterrupt')\n"
    (tmp_path / "stopped.py").write_text(program)
    environment = clean_environment(tmp_path)
    environment["PYTHONPATH"] += os.pathsep + str(tmp_path)
    done = subprocess.run([sys.executable, "-m", "stopped"], env=environment, capture_output=True, check=False)
    assert done.returncode == 130  # it was ended by the signal


def test_many_problems_are_counted_not_poured_out(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit), guarded():
        raise InputError([Problem(f"problem {number}") for number in range(100)])
    lines = capsys.readouterr().err.splitlines()
    assert len(lines) == MOST_PROBLEMS + 1
    assert lines[-1] == f"... and {100 - MOST_PROBLEMS} more like these."


def test_help_names_every_command_with_an_example_and_every_exit_code(run: Run) -> None:
    help_text = run("--help").stdout
    for name, entry in COMMANDS.items():
        assert f"\n  {name} " in help_text
        assert f"namescreen {entry.example}\n" in help_text
        assert entry.example.split()[0] == name
    for code, meaning in EXIT_CODES.items():
        assert f"  {code} " in help_text
        assert meaning in help_text
    assert "not legal clearance" in help_text
    assert all(len(line) <= 80 for line in help_text.splitlines())


@pytest.mark.parametrize("arguments", [(name,) for name in COMMANDS] + [("brief", "new"), ("register", "prepare")])
def test_every_command_explains_itself_with_an_example(run: Run, arguments: tuple[str, ...]) -> None:
    done = run(*arguments, "--help")
    assert done.returncode == 0
    assert done.stdout.startswith(f"Usage: namescreen {' '.join(arguments)}")
    assert all(len(line) <= 80 for line in done.stdout.splitlines())
    if "Commands:" not in done.stdout:
        assert "Example" in done.stdout


@pytest.mark.parametrize("columns", [40, 51, 60])
@pytest.mark.parametrize("arguments", [(), ("screen",), ("brief", "new"), ("register", "prepare")])
def test_help_fits_a_narrow_terminal(run: Run, arguments: tuple[str, ...], columns: int) -> None:
    help_text = run(*arguments, "--help", env={"COLUMNS": str(columns)}).stdout
    assert [line for line in help_text.splitlines() if len(line) > columns] == []
    assert " ".join(help_text.split()).replace("- ", "-") == " ".join(
        run(*arguments, "--help").stdout.split()
    ).replace("- ", "-")  # nothing is lost; a word with hyphens may be divided there


INTERRUPTED = """
import sys
class Interrupting:
    def find_spec(self, name, path=None, target=None):
        if name == {module!r}:
            raise KeyboardInterrupt
sys.meta_path.insert(0, Interrupting())
from namescreen.__main__ import main
sys.argv = ["namescreen", "compare", "Loamlet", "Timelow"]
main()
"""


@pytest.mark.parametrize("module", ["typer", "namescreen.cli.guard", "namescreen.cli.compare", "namescreen.closeness"])
def test_ctrl_c_while_the_program_is_loaded_gives_no_traceback(tmp_path: Path, module: str) -> None:
    script = INTERRUPTED.format(module=module)
    done = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, env=clean_environment(tmp_path), check=False
    )
    assert done.returncode == 130
    assert re.fullmatch("namescreen: Stopped.*\n", done.stderr)


def test_without_arguments_there_is_help(run: Run) -> None:
    done = run()
    assert "Usage: namescreen" in done.stdout + done.stderr


def test_the_version_is_the_package_s(run: Run) -> None:
    import namescreen

    assert run("--version").stdout == f"namescreen {namescreen.__version__}\n"


@pytest.mark.parametrize("arguments", [("scren",), ("screen", "--nmae", "x"), ("screen", "--top", "many")])
def test_a_command_that_is_not_understood_ends_with_2_and_no_traceback(run: Run, arguments: tuple[str, ...]) -> None:
    done = run(*arguments)
    assert done.returncode == 2
    assert done.stdout == ""
    assert "Traceback" not in done.stderr
    assert "namescreen" in done.stderr


@pytest.mark.parametrize("command", [("brief", "new"), ("readings", "Gift"), ("classes", "pots")])
def test_a_reader_that_goes_away_ends_the_program_quietly(tmp_path: Path, command: tuple[str, ...]) -> None:
    reader, writer = os.pipe()
    os.close(reader)
    done = subprocess.run(
        [sys.executable, "-m", "namescreen", *command],
        stdout=writer, stderr=subprocess.PIPE, env=clean_environment(tmp_path), check=False, timeout=60,
    )  # fmt: skip
    os.close(writer)
    assert (done.returncode, done.stderr) == (141, b"")


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="this system has no device that is always full")
def test_a_full_disk_is_told_in_one_line(tmp_path: Path) -> None:
    with Path("/dev/full").open("wb") as full:
        done = subprocess.run(
            [sys.executable, "-m", "namescreen", "brief", "new"],
            stdout=full, stderr=subprocess.PIPE, env=clean_environment(tmp_path), check=False, timeout=60,
        )  # fmt: skip
    assert done.returncode == 2
    assert done.stderr.decode() == (
        "namescreen: the output cannot be written (No space left on device). What is there is not whole. "
        "Check the place and the room there, then start again\n"
    )


@pytest.mark.parametrize("shell", ["bash", "zsh", "fish"])
def test_shell_completion_knows_commands_and_options(run: Run, shell: str) -> None:
    def completed(words: str) -> str:
        last = str(len(words.split()) - 1)
        bash = {"COMP_WORDS": words, "COMP_CWORD": last}
        others = {"_TYPER_COMPLETE_ARGS": words, "_TYPER_COMPLETE_FISH_ACTION": "get-args"}
        return run(env={"_NAMESCREEN_COMPLETE": f"complete_{shell}", **bash, **others}).stdout

    assert "screen" in completed("namescreen scr")
    assert "--register" in completed("namescreen screen --reg")


@pytest.mark.parametrize(
    ("closed", "command", "code", "told"),
    [
        ("<&-", "screen -", 2, "standard input: holds no names"),
        (">&-", "compare Loamlet Timelo", 2, "the output cannot be written (Bad file descriptor)"),
        (">&-", "brief new", 2, "the output cannot be written (Bad file descriptor)"),
        ("2>&-", "screen --name Loamlet", 0, ""),
        ("<&- >&- 2>&-", "compare Loamlet Timelo", 2, ""),
    ],
)
def test_a_standard_stream_may_be_closed(tmp_path: Path, closed: str, command: str, code: int, told: str) -> None:
    done = subprocess.run(
        ["sh", "-c", f"'{sys.executable}' -m namescreen {command} {closed}"],
        cwd=tmp_path, env=clean_environment(tmp_path), capture_output=True, timeout=60, check=False,
    )  # fmt: skip
    assert (done.returncode, told in done.stderr.decode()) == (code, True), done.stderr
    assert b"Traceback" not in done.stderr


@pytest.mark.skipif(sys.platform == "win32", reason="limits the size of files as POSIX systems do")
def test_no_part_of_a_brief_is_left_where_there_is_no_room(tmp_path: Path) -> None:
    done = subprocess.run(
        ["sh", "-c", f"trap '' XFSZ; ulimit -f 1; '{sys.executable}' -m namescreen brief new brief.toml"],
        cwd=tmp_path, env={**clean_environment(tmp_path), "PYTHONDONTWRITEBYTECODE": "1"},
        capture_output=True, timeout=60, check=False,
    )  # fmt: skip
    assert (done.returncode, b"cannot be written" in done.stderr) == (2, True), done.stderr
    assert not (tmp_path / "brief.toml").exists()
