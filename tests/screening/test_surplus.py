"""What is left of two names without words that seldom keep marks apart: a house mark, praise, what a firm is (TMEP
1207.01(b)(iii); Court of Justice, C-120/04, Thomson Life; from memory). Names, marks and owners are invented."""

from __future__ import annotations

from pathlib import Path

import pytest

from namescreen.marks.mark import Mark
from namescreen.policy import Conflict, Level
from namescreen.register import read_register
from namescreen.screening import CloseMark, screen
from namescreen.screening.surplus import rest_of_both
from namescreen.screening.taken_over import taken_over

GOODS = "bicycle panniers"


def judged(tmp_path: Path, name: str, mark: str, owner: str = "Someone AB", goods: str = GOODS) -> CloseMark | None:
    path = tmp_path / "marks.csv"
    path.write_text(f'mark,goods,status,owner,office,classes\n"{mark}",{goods},live,{owner},DE,12\n')
    (found,) = screen([name], read_register([path]), goods=GOODS, classes=[12], markets=["DE"], today="2026-07-01")
    assert isinstance(found.close_marks, tuple)
    return next((one for one in found.close_marks if one.mark.text == mark), None)


@pytest.mark.parametrize("element", ["Heron", "Duskfall", "Quelvar"])
@pytest.mark.parametrize("added", ["{} Premium", "Super {}", "{} Deluxe", "{} & Sons", "House of {}", "Osterlin {}"])
@pytest.mark.parametrize("by_mark", [True, False])
@pytest.mark.parametrize("goods", [GOODS, "bicycle bags"])
def test_an_element_taken_over_whole_with_little_or_a_house_mark_added_is_serious(
    tmp_path: Path, element: str, added: str, by_mark: bool, goods: str
) -> None:
    whole = added.format(element)
    name, mark = (element, whole.upper()) if by_mark else (whole, element.upper())
    found = judged(tmp_path, name, mark, "Osterlin Works AB" if by_mark else "Someone AB", goods)
    assert found is not None
    assert found.level is Level.SERIOUS


@pytest.mark.parametrize(
    ("name", "mark"),
    [
        ("Brandreth", "BRANDRITH & SONS"),
        ("Heron", "HERRON PREMIUM"),
        ("Super Duskfall", "DUSKFAL"),
        ("Quelvar", "OSTERLIN KWELVAR"),
    ],
)
def test_the_other_element_need_not_have_the_very_letters(tmp_path: Path, name: str, mark: str) -> None:
    found = judged(tmp_path, name, mark, "Osterlin Works AB")
    assert found is not None
    assert found.level is Level.SERIOUS
    assert any(reason.startswith("Compared without") for reason in found.closeness.reasons)


@pytest.mark.parametrize(("name", "mark"), [("Heron Bike", "HERON"), ("Duskfall", "DUSKFALL CYCLING")])
def test_a_word_that_plainly_describes_keeps_no_marks_apart(tmp_path: Path, name: str, mark: str) -> None:
    """TMEP 1207.01(b)(viii): descriptive matter is less significant (from memory)."""
    found = judged(tmp_path, name, mark)
    assert found is not None
    assert found.level is Level.SERIOUS


@pytest.mark.parametrize(
    ("name", "mark"),
    [
        ("Heron Premium", "SPARROW PREMIUM"),
        ("Harbour & Sons", "PIKE & SONS"),
        ("Osterlin Pannier", "PANNIER"),
        ("Super Heron", "SUPER LANTERN"),
    ],
)
def test_what_is_left_out_makes_no_names_alike(tmp_path: Path, name: str, mark: str) -> None:
    found = judged(tmp_path, name, mark)
    assert found is None or found.level < Level.LOOK


def test_a_weak_element_is_not_recognised_beside_others() -> None:
    """EUIPO Guidelines, part C, section 2, chapter 5: weak elements have no independent role (from memory)."""
    for word, least, most in (("Edge", 0.0, 0.4), ("Heron", 0.7, 1.0)):
        name, mark, goods = f"Osterlin {word}", Mark(word.upper(), owner="Someone AB"), "kitchen knives"
        rest = rest_of_both(name, mark, goods, taken_over(name, mark, goods))
        counts = rest.counts if rest and rest.ours == rest.theirs else 0.0
        assert least <= counts <= most


@pytest.mark.parametrize(
    ("text", "mark"), [("Heron", "HERON LANTERN"), ("Soap Opera", "SOAP OPERA PREMIERE"), ("Heron", "BRANDRETH & COLE")]
)
def test_words_that_say_something_stay(text: str, mark: str) -> None:
    rest = rest_of_both(text, Mark(mark), GOODS, None)
    assert rest is None or "lantern" in rest.theirs or "cole" in rest.theirs or rest.ours == "soap opera"


def test_goods_and_markets_count_as_for_other_marks() -> None:
    same = Conflict(0.5, 0.5, 0.5, 1.0, rest=0.85)
    assert same.concern == pytest.approx(0.85)
    assert Conflict(0.5, 0.5, 0.5, 0.1, rest=0.85).concern <= 0.56  # no mark for other goods is serious
    assert Conflict(0.5, 0.5, 0.5, 1.0, bites=False, rest=0.85).concern == pytest.approx(0.425)
    assert Conflict(0.5, 0.5, 0.5, 1.0, crowded=True, rest=0.85).concern < 0.62
