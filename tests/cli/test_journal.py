from __future__ import annotations

import os
from pathlib import Path

import pytest

from namescreen.cli.journal import Journal
from namescreen.errors import InputError


def test_a_stopped_run_is_taken_up_where_it_was(tmp_path: Path) -> None:
    output = tmp_path / "result.jsonl"
    run = {"names": ["a", "b", "c"], "sources": ["abc"]}
    with Journal(output, run) as journal:
        journal.add("a", {"overall": 0.5})
        journal.add("b", ["é"])
    with journal.path.open("a") as file:
        file.write('["c", {"overa')  # stopped in the middle of a line
    with Journal(output, run) as journal:
        assert journal.results == {"a": {"overall": 0.5}, "b": ["é"]}
        journal.add("c", 1)
    with Journal(output, run) as journal:
        assert list(journal.results) == ["a", "b", "c"]
        journal.finish()
    assert not journal.path.exists()


def test_another_run_begins_anew(tmp_path: Path) -> None:
    with Journal(tmp_path / "out", {"names": ["a"]}) as journal:
        journal.add("a", 1)
    with Journal(tmp_path / "out", {"names": ["b"]}) as journal:
        assert journal.results == {}
        assert journal.other
    assert journal.path.read_text().count("\n") == 1


def test_whether_another_runs_journal_stood_there_is_said(tmp_path: Path) -> None:
    for _ in range(2):
        with Journal(tmp_path / "out", {}) as journal:
            assert not journal.other


def test_a_journal_that_cannot_be_written_says_so(tmp_path: Path) -> None:
    with pytest.raises(InputError, match=r"journal.*cannot be written"):
        Journal(tmp_path / "no folder" / "out", {})


@pytest.mark.parametrize("line", ["5", "null", "[1]", "[[1], 2]", '[{"a": 1}, 2]', '{"a": 1}', "[1, 2, 3]"])
def test_a_journal_is_taken_up_to_what_is_damaged(tmp_path: Path, line: str) -> None:
    with Journal(tmp_path / "out", {}) as journal:
        journal.add("a", 1)
    with journal.path.open("a") as file:
        file.write(line + "\n")
    with Journal(tmp_path / "out", {}) as journal:
        assert journal.results == {"a": 1}


def test_what_is_not_utf8_is_kept(tmp_path: Path) -> None:
    with Journal(tmp_path / "out", {"goods": "\udcff"}) as journal:
        journal.add("a", {"source": "marks\udcff.csv"})
    with Journal(tmp_path / "out", {"goods": "\udcff"}) as journal:
        assert journal.results == {"a": {"source": "marks\udcff.csv"}}


def test_an_empty_journal_is_no_other_run(tmp_path: Path) -> None:
    (tmp_path / "out.journal").touch()
    with Journal(tmp_path / "out", {}) as journal:
        assert not journal.other


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="needs a device that is always full")
def test_a_full_disk_is_told_with_the_journals_name_and_the_next_step(tmp_path: Path) -> None:
    with Journal(tmp_path / "out", {}) as journal:
        journal.add("a", 1)
        with Path("/dev/full").open("w") as full:
            os.dup2(full.fileno(), journal._file.fileno())
        with pytest.raises(InputError, match=r"out\.journal: .*Make room"):
            journal.add("b", 2)
    with Journal(tmp_path / "out", {}) as journal:
        assert journal.results == {"a": 1}
