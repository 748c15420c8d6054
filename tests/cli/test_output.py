from __future__ import annotations

import contextlib
import csv
import io
import json
import os
import re
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from markdown_it import MarkdownIt
from rich.console import Console
from rich.padding import Padding
from rich.table import Table
from rich.text import Text

from namescreen.cli import output
from namescreen.cli.output import Column, Format, Row, json_line, show, show_table
from namescreen.outcome import DISCLAIMER
from namescreen.plain_text import visible, width
from tests.conftest import Run, clean_environment

COLUMNS = (Column("name", "name"), Column("score", "score", right=True), Column("why", "why"))
Capture = pytest.CaptureFixture[str]
HOSTILE = [
    "a|b",
    "`x`",
    "<b>",
    "[l](http://x)",
    "\u202eevil",
    "a\x1b[31mb",
    "a\nb",
    "=1+1",
    "*x*",
    "&amp;",
    "\ud800",
]

texts = st.text(st.characters(exclude_categories=["Cs"]), max_size=30)
rows = st.lists(st.fixed_dictionaries({"name": texts, "score": st.floats(0, 1), "why": st.lists(texts, max_size=2)}))
same_capture = settings(suppress_health_check=[HealthCheck.function_scoped_fixture], deadline=None)


@same_capture
@given(rows)
def test_json_lines_give_back_what_went_in(capsys: Capture, rows: list[Row]) -> None:
    show(rows, COLUMNS, Format.jsonl)
    lines = capsys.readouterr().out.split("\n")[:-1]
    assert [json.loads(line) for line in lines] == rows


@pytest.mark.parametrize("text", HOSTILE)
def test_a_json_line_holds_nothing_that_a_terminal_obeys(text: str) -> None:
    line = json_line({"name": text})
    assert json.loads(line) == {"name": text}
    assert not re.search("[\x00-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\ud800-\udfff]", line)


@same_capture
@given(rows)
def test_csv_has_a_row_a_row_whatever_the_text(capsys: Capture, rows: list[Row]) -> None:
    show(rows, COLUMNS, Format.csv)
    read = list(csv.reader(io.StringIO(capsys.readouterr().out)))
    assert read[0] == ["name", "score", "why"]
    assert [len(row) for row in read] == [3] * (len(rows) + 1)


@same_capture
@given(rows)
def test_markdown_is_one_table_whatever_the_text(capsys: Capture, rows: list[Row]) -> None:
    show(rows, COLUMNS, Format.markdown)
    tokens = MarkdownIt("commonmark").enable("table").parse(capsys.readouterr().out)
    assert [token.type for token in tokens if token.level == 0] == ["table_open", "table_close"]
    assert sum(token.type == "tr_open" for token in tokens) == len(rows) + 1
    kinds = {child.type for token in tokens for child in token.children or ()}
    assert kinds <= {"text", "text_special"}


@pytest.mark.parametrize("width", ["40", "80", "132"])
@pytest.mark.parametrize("text", [*HOSTILE, "word " * 60, "x" * 200, "陶器" * 60, "é" * 100])
def test_a_table_stays_within_its_width(
    capsys: Capture, monkeypatch: pytest.MonkeyPatch, width: str, text: str
) -> None:
    from namescreen.plain_text import width as columns

    monkeypatch.setenv("COLUMNS", width)
    show_table([{"name": text, "score": 0.5, "why": [text]}], COLUMNS)
    out = capsys.readouterr().out
    assert all(columns(line) <= int(width) for line in out.split("\n"))
    assert "\x1b" not in out


def laid_out_by_rich(rows: list[Row], columns: tuple[Column, ...], widths: list[int], indent: int) -> str:
    """The same table from a library that lays out tables (Rich, which the program has for progress bars)."""
    grid = Table(box=None, pad_edge=False, padding=(0, 1))
    for column, wide in zip(columns, widths, strict=True):
        grid.add_column(
            Text(column.title), width=wide, justify="right" if column.right else "left",
            no_wrap=column.right or not column.shrink, overflow="fold",
        )  # fmt: skip
    for row in rows:
        grid.add_row(*(Text(visible(column.cell(row))) for column in columns))
    console = Console(width=output.width(), highlight=False, color_system=None)
    with console.capture() as captured:
        console.print(Padding(grid, (0, 0, 0, indent), expand=False))
    return "".join(f"{line.rstrip()}\n" for line in captured.get().split("\n")[:-1])


LAID_OUT = (Column("name", "name of it"), Column("score", "score", right=True), Column("kind", "k", shrink=False),
            Column("why", "why"))  # fmt: skip
latin = st.text(st.sampled_from("abcdeé, -\u00a0"), max_size=40)
latin_rows = st.lists(
    st.fixed_dictionaries({"name": latin, "score": st.floats(0, 1), "kind": latin, "why": st.lists(latin, max_size=2)})
)


@same_capture
@given(latin_rows, st.sampled_from([40, 60, 80, 132]), st.sampled_from([0, 2]))
def test_a_table_is_laid_out_as_by_a_library(capsys: Capture, rows: list[Row], columns: int, indent: int) -> None:
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("COLUMNS", str(columns))
        widths = output._widths(rows, LAID_OUT, columns - indent)
        show_table(rows, LAID_OUT, indent=indent)
        found = capsys.readouterr().out
        assert widths is None or found == laid_out_by_rich(rows, LAID_OUT, widths, indent)


def test_a_remark_stands_below_its_row(capsys: Capture) -> None:
    show_table([{"name": "a", "below": "first"}, {"name": "b"}], [Column("name", "name")])
    assert capsys.readouterr().out == "name\na\n  first\nb\n"


@pytest.mark.parametrize(
    ("terminal", "variables", "shown"),
    [
        (False, {}, "name\nLoamlet\n"),
        (True, {"TERM": "xterm"}, "\x1b[1mname\x1b[0m\n\x1b[1;31mLoamlet\x1b[0m\n"),
        (True, {"TERM": "dumb"}, "name\nLoamlet\n"),
        (True, {"TERM": "xterm", "NO_COLOR": "1"}, "name\nLoamlet\n"),
    ],
)
def test_a_row_is_coloured_only_on_a_terminal(
    capsys: Capture, monkeypatch: pytest.MonkeyPatch, terminal: bool, variables: dict[str, str], shown: str
) -> None:
    monkeypatch.delenv("NO_COLOR", raising=False)
    for name, value in variables.items():
        monkeypatch.setenv(name, value)
    monkeypatch.setattr(sys.stdout, "isatty", lambda: terminal)
    show_table([{"name": "Loamlet"}], [Column("name", "name", style=lambda row: "bold red")])
    assert capsys.readouterr().out == shown


@pytest.mark.parametrize(
    ("value", "shown"),
    [(None, ""), (True, "yes"), (False, ""), (0.123, "0.12"), (0.999, "0.99"), (1.0, "1.00"), (0.001, "0.01"),
     (7, "7"), (["a", "b"], "a; b"), ("x", "x")],
)  # fmt: skip
def test_values_read_plainly(value: object, shown: str) -> None:
    assert Column("v", "v").cell({"v": value}) == shown


def test_rows_that_stream_are_written_as_they_come(capsys: Capture) -> None:
    seen: list[str] = []

    def slowly() -> object:
        for number in range(3):
            seen.append(capsys.readouterr().out)
            yield {"name": str(number)}

    source: Callable[[], object] = slowly
    show(source(), [Column("name", "name")], Format.jsonl)  # type: ignore[arg-type]
    assert seen == ["", '{"name": "0"}\n', '{"name": "1"}\n']


@pytest.mark.parametrize("name", ["泰山植物 " * 40, "泰" * 250, "9" * 300, "फूलदान " * 40])
def test_long_names_and_wide_letters_stay_within_the_width(run: Run, name: str) -> None:
    for command in (("screen", "--languages", "nl", "--name"), ("compare", "Loamlet")):
        done = run(*command, name.strip())
        assert done.returncode == 0, done.stderr
        assert max(map(width, done.stdout.replace(DISCLAIMER, "").splitlines())) <= 80
        assert "handle ;" not in done.stdout


@pytest.mark.parametrize(
    "command",
    [
        ("screen", "--name", "🌱🌿 " * 20),
        ("classes", "Kräutertöpfe aus Ton\x1b[31m; macetas"),
        ("classes", "pots", "--format", "csv"),
    ],
)
def test_remarks_are_visible_and_stay_within_a_narrow_width(run: Run, command: tuple[str, ...]) -> None:
    told = run(*command, env={"COLUMNS": "40"}).stderr
    assert "\x1b" not in told
    assert 0 < max(map(width, told.splitlines())) <= 40


def test_goods_that_cannot_be_read_are_quoted_in_part(run: Run) -> None:
    assert len(run("classes", "x" * 20_000).stderr) < 400


def test_a_name_that_would_be_cut_is_not_compared(run: Run) -> None:
    done = run("compare", "a" * 301, "a" * 302)
    assert (done.returncode, done.stdout) == (2, "")
    assert "at most 300" in done.stderr.lower()


def test_no_command_writes_a_formula_as_csv(run: Run, tmp_path: Path) -> None:
    (tmp_path / "marks.csv").write_text("mark,owner\n=Timelo()+1,@cmd\n-Timelow,+1-1\n")
    name = "=Timelo()"
    for command in (
        ("screen", "--languages", "nl", "--register", "marks.csv", "--name", name),
        ("addresses", name),
        ("readings", "--languages", "nl", name),
        ("report", "--languages", "nl", "--register", "marks.csv", "--name", name, "--output", "-"),
    ):
        done = run(*command, "--format", "csv")
        assert done.returncode == 0, done.stderr
        cells = [cell for row in csv.reader(io.StringIO(done.stdout)) for cell in row]
        assert not [cell for cell in cells if cell.startswith(("=", "+", "-", "@"))]


@settings(max_examples=60)
@given(
    st.lists(st.lists(st.text("abcdefgh", min_size=1, max_size=9), min_size=4, max_size=4), min_size=1, max_size=4),
    st.integers(40, 79),
)
def test_a_narrow_terminal_loses_no_column_and_breaks_no_word(cells: list[list[str]], wide: int) -> None:
    heads = ("name", "a long title", "how it was made", "remarks")
    columns = [Column(head, head, shrink=at > 0) for at, head in enumerate(heads)]
    rows: list[Row] = [dict(zip(heads, row, strict=True)) for row in cells]
    with pytest.MonkeyPatch.context() as patch, contextlib.redirect_stdout(io.StringIO()) as shown:
        patch.setenv("COLUMNS", str(wide))
        show_table(rows, columns)
    words = shown.getvalue().replace(";", " ").replace(":", " ").split()
    assert max(map(len, shown.getvalue().splitlines())) <= wide
    for row in cells:
        assert set(row) <= set(words)
    for head in heads[1:]:
        assert set(head.split()) <= set(words)


def beside_a_terminal(code: str, folder: Path) -> tuple[bytes, bytes]:
    """What `code` sends to stdout, and what it shows on the terminal that its stderr is."""
    import pty

    terminal, side = pty.openpty()
    done = subprocess.run(
        [sys.executable, "-c", code], stdout=subprocess.PIPE, stderr=side, check=True, env=clean_environment(folder)
    )
    os.close(side)
    os.set_blocking(terminal, False)
    try:
        shown = os.read(terminal, 4096)
    except OSError:  # nothing is there
        shown = b""
    os.close(terminal)
    return done.stdout, shown


@pytest.mark.skipif(sys.platform == "win32", reason="needs a pseudo-terminal")
def test_data_goes_where_it_is_sent_while_a_bar_is_shown(tmp_path: Path) -> None:
    code = (
        "from namescreen.cli import talk\ntalk.PATIENCE = 0.0\nwith talk.progress('Work') as advance:\n"
        "    for at in (1, 2):\n        advance(at, 2)\n        print('row', at)\n"
    )
    sent, _ = beside_a_terminal(code, tmp_path)
    assert sent == b"row 1\nrow 2\n"


def test_the_head_of_addresses_stays_within_a_narrow_width(run: Run) -> None:
    told = run("addresses", "Forêt Tranquille", "--ending", "com", env={"COLUMNS": "40"}).stdout
    assert 0 < max(map(width, told.splitlines())) <= 40


@pytest.mark.skipif(sys.platform == "win32", reason="needs a pseudo-terminal")
def test_a_bar_is_shown_before_the_first_item_is_done(tmp_path: Path) -> None:
    code = (
        "import time\nfrom namescreen.cli import talk\ntalk.PATIENCE = 0.1\n"
        "with talk.progress('Working hard'):\n    time.sleep(1.5)\n"
    )
    sent, shown = beside_a_terminal(code, tmp_path)
    assert b"Working hard" in shown
    assert sent == b""
