"""Words of a name that many owners use: all of them in the list are counted, and they weigh a little less."""

from __future__ import annotations

from pathlib import Path

import pytest

from namescreen.policy import CROWDED, Conflict
from namescreen.register import read_register
from namescreen.screening import CloseMark, Screening, screen
from namescreen.screening.crowd import says_little, shares_only

GOODS = "bicycle panniers"
MARKS = (
    ("WOLFDRIFT", GOODS, "live", "A"),
    ("MAPLE DRIFT", GOODS, "live", "B"),
    ("DRIFTER", GOODS, "live", "C"),
    ("DRIFTWOOD", GOODS, "live", "C"),
    ("SLOW DRIFT", GOODS, "dead", "D"),  # dead
    ("GOLD DRIFT", "insurance", "live", "E"),  # other goods
    ("ADRIFTING", GOODS, "live", "F"),  # the word stands inside another
    ("HARBOUR LIGHTS", GOODS, "live", "G"),
)


def screened(tmp_path: Path, name: str, rows: tuple[tuple[str, ...], ...] = MARKS) -> Screening:
    path = tmp_path / "marks.csv"
    path.write_text("mark,goods,status,owner\n" + "".join(",".join(row) + "\n" for row in rows))
    (found,) = screen([name], read_register([path]), goods=GOODS, classes=[12])
    return found


def test_every_owner_in_the_list_is_counted(tmp_path: Path) -> None:
    (shared,) = screened(tmp_path, "Drift Harbour").shared_words
    assert (shared.word, shared.owners, shared.marks, shared.at_least) == ("drift", 3, 4, False)
    assert screened(tmp_path, "Drifthollow").shared_words[0].word == "drift"  # also in a closed compound


def test_a_name_of_one_word_has_its_crowd_and_no_mark_counts_less_for_it(tmp_path: Path) -> None:
    found = screened(tmp_path, "Drift")
    assert [(one.word, one.owners) for one in found.shared_words] == [("drift", 3)]
    assert not any(one.crowded for one in found.close_marks)  # type: ignore[union-attr]


def test_short_words_are_counted_where_a_mark_divides_there(tmp_path: Path) -> None:
    rows = [(text, GOODS, "live", text) for text in ("MOSSOWL", "NORTH OWL", "SLOW OWL", "BOWL", "OWLISH")]
    (shared,) = screened(tmp_path, "Owl Harbour", tuple(rows)).shared_words
    assert (shared.word, shared.owners) == ("owl", 3)


@pytest.mark.parametrize("name", ["Harbour Lights", "Pannier Loft"])
def test_a_word_with_few_owners_or_for_the_goods_is_no_crowd(tmp_path: Path, name: str) -> None:
    assert screened(tmp_path, name).shared_words == ()


def test_a_mark_that_shares_only_a_crowded_word_asks_for_a_little_less(tmp_path: Path) -> None:
    def marks(rows: tuple[tuple[str, ...], ...]) -> dict[str, CloseMark]:
        found = screened(tmp_path, "Drift Harbour", rows).close_marks
        return {one.mark.text: one for one in found}  # type: ignore[union-attr]

    crowded, alone = marks(MARKS)["MAPLE DRIFT"], marks(MARKS[1:2])["MAPLE DRIFT"]
    assert crowded.crowded
    assert crowded.concern == pytest.approx(CROWDED * alone.concern)
    assert not marks(MARKS)["HARBOUR LIGHTS"].crowded


def test_no_crowd_hides_a_mark_that_is_all_but_the_same() -> None:
    assert Conflict(1.0, 1.0, 1.0, 1.0, crowded=True).concern == 1.0
    assert not shares_only("Drift Harbour", "DRIFT HARBOUR LINE", ["drift"])
    assert shares_only("Drift Harbour", "DRIFTLINE", ["drift"])
    assert shares_only("Drift Panniers", "THE DRIFT PANNIERS", ["drift"], GOODS)


def test_of_many_marks_those_in_the_classes_of_the_goods_are_looked_at(tmp_path: Path) -> None:
    path = tmp_path / "marks.csv"
    rows = [f"{place} DRIFT,36,insurance,live,Owner {place}" for place in ("NORTH", "SOUTH", "EAST") for _ in range(30)]
    rows += [f"{place} DRIFT,12,bicycle panniers,live,Owner {place}" for place in ("UPPER", "LOWER", "OUTER")]
    path.write_text("mark,class,goods,status,owner\n" + "\n".join(rows) + "\n")
    register = read_register([path])
    assert [mark.classes for mark in register.marks_with("drift", 3, (12,))] == [(12,)] * 3
    (found,) = screen(["Drift Harbour"], register, goods=GOODS, classes=[12])
    (shared,) = found.shared_words
    assert (shared.owners, shared.at_least) == (3, True)


def test_a_word_is_found_wherever_it_stands_in_a_mark(tmp_path: Path) -> None:
    path = tmp_path / "marks.csv"
    held = ["DRIFT", "OLD DRIFT LAMP", "A SNOWDRIFT TALE", "THE DRIFTLINE", "SEA DRIFT"]
    path.write_text("\n".join(["mark", *held, "ADRIFTED", "DR IFT", "LAMP"]) + "\n")
    found = read_register([path]).marks_with("drift", 20)
    assert [mark.text for mark in found] == held


def test_a_word_is_crowded_in_one_market(tmp_path: Path) -> None:
    """A word is weak where many use it, market by market (common practice, no source)."""
    (tmp_path / "marks.csv").write_text(
        "mark,office,goods,owner\n" + "".join(f"THICKET {word},US,herb planters,{word} Ltd\n" for word in
        ("OAK", "ELM", "ASH")) + "".join(f"THICKET {word},GB,herb planters,{word} Ltd\n" for word in ("BAY", "FIR"))
    )  # fmt: skip
    register = read_register([tmp_path / "marks.csv"])
    (found,) = screen(["Thicket Lantern"], register, goods="herb planters", markets=("GB", "US"))
    assert [(one.word, one.owners, one.market) for one in found.shared_words] == [("thicket", 3, "US")]
    assert {one.mark.text: one.crowded for one in found.close_marks} == {  # type: ignore[union-attr]
        "THICKET OAK": True, "THICKET ELM": True, "THICKET ASH": True, "THICKET BAY": False, "THICKET FIR": False,
    }  # fmt: skip


def test_every_market_with_a_crowd_is_told(tmp_path: Path) -> None:
    (tmp_path / "marks.csv").write_text(
        "mark,office,goods,owner\n" + "".join(f"THICKET {word},{office},herb planters,{word} {office} Ltd\n"
        for office in ("GB", "US") for word in ("OAK", "ELM", "ASH", "BAY")[: 3 + (office == "GB")])
    )  # fmt: skip
    register = read_register([tmp_path / "marks.csv"])
    (found,) = screen(["Thicket Lantern"], register, goods="herb planters", markets=("GB", "US"))
    assert [(one.owners, one.market) for one in found.shared_words] == [(4, "GB"), (3, "US")]


@pytest.mark.parametrize(("word", "goods"), [("bakeries", "bakery"), ("box", "boxes"), ("dish", "dishes")])
def test_a_word_for_the_goods_says_little_in_either_number(word: str, goods: str) -> None:
    assert says_little(word, goods)
    assert not says_little("quorn", goods)
