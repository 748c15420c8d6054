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
    assert journal.path.read_text().count("\n") == 1
    assert journal.other is not None  # what the other run had done is not lost
    journal.other.replace(journal.path)
    with Journal(tmp_path / "out", {"names": ["a"]}) as journal:
        assert journal.results == {"a": 1}


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
        assert (journal.results, journal.damaged) == ({"a": 1}, 1)


def test_a_result_of_another_form_is_not_taken_up_whatever_its_checksum(tmp_path: Path) -> None:
    with Journal(tmp_path / "out", {}) as journal:
        journal.add("a", 1)
        journal.add("b", {"overall": "high"})
        journal.add("c", None)
        journal.add("d", float("nan"))
    with Journal(tmp_path / "out", {}, lambda result: result != {"overall": "high"} and result is not None) as journal:
        assert (journal.results, journal.damaged) == ({"a": 1}, 3)


def test_a_changed_bit_costs_a_line_and_never_changes_a_result(tmp_path: Path) -> None:
    results = {name: {"overall": number / 8} for number, name in enumerate("abcd")}
    with Journal(tmp_path / "out", {}) as journal:
        for name, result in results.items():
            journal.add(name, result)
    whole = journal.path.read_bytes()
    first = whole.index(b"\n") + 1
    for place in range(first, len(whole)):
        for bit in range(8):
            journal.path.write_bytes(whole[:place] + bytes([whole[place] ^ 1 << bit]) + whole[place + 1 :])
            with Journal(tmp_path / "out", {}) as again:
                assert again.results.items() <= results.items()
                assert len(again.results) >= 2  # a line break that went may take the line after it along


def test_a_line_nested_without_end_is_damaged(tmp_path: Path) -> None:
    with Journal(tmp_path / "out", {}) as journal:
        journal.add("a", 1)
        text = b"[" * 100_000
        journal._write(f"{journal._checksum(text)} {text.decode()}\n")
    with Journal(tmp_path / "out", {}) as journal:
        assert (journal.results, journal.damaged) == ({"a": 1}, 1)


@pytest.mark.parametrize("kind", ["text", "pipe", "folder"])
def test_what_is_no_journal_stays(tmp_path: Path, kind: str) -> None:
    path = tmp_path / "out.journal"
    if kind == "text":
        path.write_text("Dear journal, ...\n")
    elif kind == "pipe":
        os.mkfifo(path)
    else:
        path.mkdir()
    with pytest.raises(InputError, match=r"out\.journal: is not a journal .*Move it away"):
        Journal(tmp_path / "out", {})
    assert list(tmp_path.iterdir()) == [path]


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
