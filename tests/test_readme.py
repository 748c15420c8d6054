"""The README's commands work as they stand, and print what it shows.

In its code blocks a line `$ namescreen ...` is run, in one folder from the first block to the last, and what
follows it, up to the next `$` or the end of the block, is compared with what the program prints, remarks
included. A line of three dots stands for any number of lines.
"""

from __future__ import annotations

import os
import re
import shlex
import subprocess
import sys
from pathlib import Path

import pytest

from tests.conftest import ROOT, clean_environment

README = (ROOT / "README.md").read_text("utf-8")
BLOCK = re.compile(r"^```[a-z]*\n(.*?)^```$", re.DOTALL | re.MULTILINE)


def commands() -> list[tuple[str, str]]:
    """Each command shown, with the output shown below it."""
    shown: list[tuple[str, str]] = []
    for block in BLOCK.findall(README):
        for part in re.split(r"^\$ ", block, flags=re.MULTILINE)[1:]:
            command, _, output = part.partition("\n")
            while command.endswith("\\"):
                more, _, output = output.partition("\n")
                command = command[:-1] + more.strip()
            if command.startswith("namescreen "):
                shown.append((command, output))
    return shown


def matches(shown: str, printed: str) -> bool:
    pieces = re.split(r"^\.\.\.$\n?", shown, flags=re.MULTILINE)
    return re.fullmatch(".*?".join(map(re.escape, pieces)), printed, re.DOTALL) is not None


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("readme")


@pytest.mark.parametrize(("command", "output"), commands())
def test_a_command_of_the_readme_prints_what_it_shows(command: str, output: str, folder: Path) -> None:
    program = os.environ.get("NAMESCREEN_PROGRAM")
    start = [program] if program else [sys.executable, "-m", "namescreen"]
    environment = clean_environment(folder)
    if program:
        del environment["PYTHONPATH"]  # the installed program must stand on its own
    done = subprocess.run(
        [*start, *shlex.split(command)[1:]],
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        cwd=folder,
        env=environment,
        timeout=120,
        check=False,
    )
    printed = done.stdout.decode("utf-8")
    assert done.returncode == 0, printed
    if output.strip():
        assert matches(output.strip() + "\n", printed.strip() + "\n"), printed


@pytest.mark.parametrize(
    ("shown", "printed", "same"),
    [
        ("a\nb\n", "a\nb\n", True),
        ("a\n...\nd\n", "a\nb\nc\nd\n", True),
        ("a\n...\n", "a\nb\n", True),
        ("a\n", "a\nb\n", False),
        ("a\n...\nd\n", "a\nb\n", False),
        ("a.b\n", "axb\n", False),
    ],
)
def test_three_dots_stand_for_lines_and_nothing_else_is_loose(shown: str, printed: str, same: bool) -> None:
    assert matches(shown, printed) is same


def test_the_readme_marks_the_test_command() -> None:
    assert re.search(r"^<!-- ci: test -->\n+```[a-z]*\n.*pytest.*\n```$", README, re.MULTILINE)
