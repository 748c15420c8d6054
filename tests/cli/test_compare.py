from __future__ import annotations

import csv
import io
import json
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from namescreen.cli.compare import _aligned
from namescreen.closeness import compare, explain
from namescreen.goods import relatedness
from namescreen.outcome import NotChecked
from namescreen.plain_text import number
from namescreen.plain_text import width as columns
from tests.conftest import Run

places = st.lists(st.tuples(st.none() | st.sampled_from("abcé陶"), st.none() | st.sampled_from("abcé陶")), max_size=90)


@given(places)
def test_aligned_names_lose_no_letter_and_stay_in_line(pairs: list[tuple[str | None, str | None]]) -> None:
    lines = _aligned(pairs)
    assert all(columns(line.rstrip()) <= 72 for line in lines)
    blocks = [lines[at : at + 3] for at in range(0, len(lines), 4)]
    for place, side in ((0, 0), (2, 1)):
        shown = "".join(block[place] for block in blocks).replace(" ", "")
        assert shown == "".join(pair[side] or "·" for pair in pairs)
    signs = "".join(block[1] for block in blocks)
    assert signs.count("=") == sum(one == other for one, other in pairs)


def test_compare_shows_scores_evidence_and_what_they_are_not(run: Run) -> None:
    done = run("compare", "Thymelow", "Timelo")
    assert done.returncode == 0, done.stderr
    found, evidence = compare("Thymelow", "Timelo"), explain("Thymelow", "Timelo")
    for aspect in ("appearance", "sound", "overall"):
        assert f"{aspect:10} " in done.stdout
        assert f"{getattr(found, aspect):.2f}" in done.stdout
    for sentence in evidence.sentences:
        assert sentence in done.stdout
    assert "t h y m e l o w" in done.stdout
    assert all(reading in done.stdout for reading in evidence.readings)
    assert "not legal clearance" in done.stdout


@pytest.mark.parametrize(
    "pair",
    [("Loamlet", "Loamlet"), ("A", "Z"), ("Clay & Wick", "Klay and Wik"), ("陶器", "Глина"), ("4 U", "For You"),
     ("A very long name of many words indeed " * 3, "Another long name of as many words " * 3)],
)  # fmt: skip
@pytest.mark.parametrize("form", ["table", "csv", "jsonl", "markdown"])
def test_any_two_names_are_compared_in_every_form(run: Run, pair: tuple[str, str], form: str) -> None:
    done = run("compare", *pair, "--format", form)
    assert done.returncode == 0, done.stderr
    if form == "jsonl":
        row = json.loads(done.stdout)
        assert {"name", "mark", "overall", "appearance", "sound", "meaning", "letters", "sounds", "words"} <= set(row)
    elif form == "csv":
        rows = list(csv.reader(io.StringIO(done.stdout)))
        assert [row[0] for row in rows] == ["aspect", "appearance", "sound", "meaning", "overall"]
    elif form == "table":
        assert all(columns(line) <= 80 for line in done.stdout.splitlines() if ": " not in line)


def test_the_goods_make_describing_words_count_less(run: Run) -> None:
    names = ("Wickby Planter", "Torvo Planter", "--format", "jsonl")
    plain = json.loads(run("compare", *names).stdout)
    with_goods = json.loads(run("compare", *names, "--goods", "herb planters").stdout)
    assert with_goods["overall"] < plain["overall"]


@pytest.mark.parametrize(
    ("name", "mark"), [("Stillstep", "STIL STEP"), ("Thicketlamp", "THICKET"), ("Loamlet", "LUMELET")]
)
def test_compare_says_what_the_screen_says(run: Run, tmp_path: Path, name: str, mark: str) -> None:
    """Both divide a closed name where readers see words in it."""
    (tmp_path / "marks.txt").write_text(f"{mark}\n")
    screened = run("screen", "--name", name, "--register", "marks.txt", "--goods", "slippers", "--format", "jsonl")
    (near,) = json.loads(screened.stdout)["close_marks"]
    told = json.loads(run("compare", name, mark, "--goods", "slippers", "--format", "jsonl").stdout)
    for aspect in ("overall", "appearance", "sound"):
        assert told[aspect] == pytest.approx(near[aspect], abs=1e-3)
    assert isinstance(near["meaning"], float) == isinstance(told["meaning"], float)


@pytest.mark.parametrize(("goods", "other"), [("clay vases", "flower pots"), ("clay vases", "motor oil")])
def test_how_related_the_goods_are_is_told_where_both_are_stated(run: Run, goods: str, other: str) -> None:
    command = ("compare", "Thymelow", "Timelo", "--goods", goods, "--mark-goods", other)
    expected = relatedness(goods, other)
    assert not isinstance(expected, NotChecked)
    row = json.loads(run(*command, "--format", "jsonl").stdout)
    assert row["goods_relatedness"] == expected.score
    told = " ".join(run(*command).stdout.split())
    assert f"Goods: {number(expected.score)} related, from 0 to 1 ({expected.grade})" in told
    assert "Goods: " not in run(*command[:5]).stdout
    unread = run("compare", "Thymelow", "Timelo", "--goods", goods, "--mark-goods", "zzxq").stdout
    assert "Goods: not checked, because" in " ".join(unread.split())


def test_past_cases_are_told_for_close_goods_only(run: Run) -> None:
    """They are pairs for the same or close goods."""
    ours = ("--goods", "handlebar bags for bicycles")
    for theirs, told in (("tea towels", False), ("bicycle bags", True)):
        done = run("compare", "Pillion", "Pillion", *ours, "--mark-goods", theirs)
        words = " ".join(done.stdout.split())
        assert ("Of decided pairs this close" in words) == told
        assert ("says nothing of these" in words) != told


def test_goods_come_from_a_brief(run: Run, tmp_path: Path) -> None:
    brief = tmp_path / "brief.toml"
    brief.write_text('goods = "herb planters"\n', "utf-8")
    by_brief = run("compare", "Wickby Planter", "Torvo Planter", "--brief", str(brief)).stdout
    assert by_brief == run("compare", "Wickby Planter", "Torvo Planter", "--goods", "herb planters").stdout
