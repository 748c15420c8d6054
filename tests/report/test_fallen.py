"""What is told in short of a name that falls; every mark is invented."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from namescreen.report.fallen import fallen
from tests.report.test_by_market import report_on

HEAD = "mark,number,class,goods,status,owner,office,filed,registered\n"


def told(tmp_path: Path, rows: str) -> str:
    report = report_on(tmp_path, "Florbin", rows, ("US", "DE", "GB"), head=HEAD)
    return "\n".join(fallen(report.names[0], report))


def florbin(number: int, office: str, owner: str = "", status: str = "live") -> str:
    return f"FLORBIN,{number},24,wool blankets,{status},{owner},{office},2019-03-01,2019-08-01\n"


def test_marks_whose_owner_is_not_stated_are_not_said_to_be_of_one(tmp_path: Path) -> None:
    text = told(tmp_path, "".join(florbin(at, office) for at, office in enumerate(("DE", "GB", "US"), 1)))
    assert "of this owner" not in text
    assert "further marks of these words: " in text


def test_a_live_mark_behind_four_dead_ones_is_named(tmp_path: Path) -> None:
    report = report_on(tmp_path, "Florbin", florbin(1, "DE", "Osk AG") + florbin(7, "GB", "Osk AG"), ("DE", "GB"))
    (one,) = report.names
    (found,) = one.marks  # type: ignore[misc]
    dead = replace(found.others[0], number="9", status="dead")
    behind = replace(found, others=(*[dead] * 4, *found.others))
    text = "\n".join(fallen(replace(one, marks=(behind,)), report))
    assert "also of this owner: 7 (GB, class 24)" in text
