"""`namescreen readings` as it is run."""

from __future__ import annotations

import csv
import io
import json
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

Run = Callable[..., "subprocess.CompletedProcess[str]"]


def test_a_table_by_language_with_coverage_and_disclaimer(run: Run) -> None:
    done = run("readings", "Merdova", "Basil", "--languages", "fr,it,sw", "--shipped-only")
    assert done.returncode == 0
    for text in ("Merdova", "French", "Italian", "Looked through", "sw", "not checked, because", "not legal clearance",
                 "No unlucky word found", "likely read"):  # fmt: skip
        assert text in done.stdout
    assert "coarse" in done.stderr
    assert all(len(line) <= 90 for line in done.stdout.splitlines())


def test_mild_masks_severe_words_in_every_format(run: Run) -> None:
    for form in ("table", "csv", "jsonl", "markdown"):
        done = run("readings", "Mer de", "--languages", "fr", "--mild", "--format", form, "--shipped-only")
        assert "merde" not in done.stdout.lower()
        assert "m***" in done.stdout.replace("\\", "")
        assert "coarse" not in done.stderr


def test_json_lines_and_csv_hold_everything(run: Run) -> None:
    done = run("readings", "Merde", "Bаsil", "--languages", "fr,ru,sw", "--format", "jsonl", "--shipped-only")
    first, second = map(json.loads, done.stdout.splitlines())
    assert first["readings"][0]["severity"] == 3
    assert {one["language"] for one in first["coverage"]} >= {"fr"}
    assert any("sw" in one["check"] for one in first["not_checked"])
    assert first["ease"][0]["likely_reading"] == "mɛʁd"
    assert second["lookalikes"]["looks"] == "Basil"
    rows = list(csv.DictReader(io.StringIO(run("readings", "Merde", "--format", "csv", "--shipped-only").stdout)))
    assert rows[0]["language"] == "fr"
    assert rows[0]["word"] == "merde"


@pytest.mark.parametrize("form", ["table", "csv", "jsonl", "markdown"])
def test_equal_input_gives_equal_bytes(run: Run, form: str) -> None:
    one, two = (
        run("readings", "Pen Island", "--format", form, "--shipped-only", env={"PYTHONHASHSEED": seed})
        for seed in ("1", "2")
    )
    assert one.stdout == two.stdout


def test_strict_ends_with_three_where_a_language_was_not_checked(run: Run) -> None:
    assert run("readings", "Basil", "--languages", "sw", "--strict", "--shipped-only").returncode == 3
    assert run("readings", "Basil", "--languages", "de", "--strict", "--shipped-only").returncode == 0


def test_bad_input_is_said_plainly(run: Run) -> None:
    for arguments in (["!!!"], ["Basil", "--languages", "??"], ["Basil", "--dictionary", "nowhere.index"], []):
        done = run("readings", *arguments)
        assert done.returncode == 2
        assert "Traceback" not in done.stderr


def test_what_was_not_looked_at_is_said_before_what_was_not_found(run: Run) -> None:
    done = run("readings", "Mistpatch", "--languages", "en,sw,et", "--shipped-only")
    assert done.returncode == 0, done.stderr
    missed, found = done.stdout.index("Not looked at: sw and Estonian"), done.stdout.index("No unlucky word found")
    assert missed < found
    assert "No unlucky word found in English.\n" in done.stdout
    every = run("readings", "Basil", "--shipped-only").stdout
    assert "No unlucky word found in English and 25 other languages." in every
    assert "Not looked at" not in every


@pytest.mark.parametrize("languages", [("--languages", "de"), ("--languages", "en"), ()])
@pytest.mark.parametrize("name", ["Bollocks", "Wanker", "Arsenal Arse", "Puke"])
def test_english_is_read_as_the_screen_reads_it(run: Run, name: str, languages: tuple[str, ...]) -> None:
    shown = run("readings", name, *languages, "--shipped-only", "--format", "jsonl").stdout
    screened = run("screen", "--name", name, *languages, "--format", "jsonl").stdout
    told, said = (
        [one for one in json.loads(text)["readings"] if one["language"] == "en"] for text in (shown, screened)
    )
    assert told
    assert told == said
    assert "No unlucky word found" not in run("readings", name, *languages, "--shipped-only").stdout


def test_the_names_are_those_of_the_shortlist_where_none_is_given(run: Run, tmp_path: Path) -> None:
    (tmp_path / "names.txt").write_text("Wanker\nLoamlet\n")
    (tmp_path / "b.toml").write_text('markets = ["US"]\nlanguages = ["de"]\nshortlist = "names.txt"\n')
    rows = run("readings", "--brief", "b.toml", "--shipped-only", "--format", "jsonl").stdout.splitlines()
    assert [json.loads(row)["name"] for row in rows] == ["Wanker", "Loamlet"]
    (tmp_path / "empty.toml").write_text('languages = ["de"]\n')
    done = run("readings", "--brief", "empty.toml")
    assert done.returncode == 2
    assert "in a brief's shortlist" in done.stderr
