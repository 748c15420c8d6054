"""A name or mark taken over whole: the common element and what is added, as TMEP 1207.01(b)(iii) tells them apart."""

from __future__ import annotations

from pathlib import Path

import pytest

from namescreen.marks.mark import Mark
from namescreen.policy import FREE_TO_ALL, OVER_WHOLE, Conflict, Level
from namescreen.register import read_register
from namescreen.screening import CloseMark, screen
from namescreen.screening.taken_over import taken_over
from namescreen.screening.translated import translated_in

GOODS = "bicycle panniers"


@pytest.mark.parametrize(
    ("name", "mark", "owner", "common", "by_mark", "plain", "house", "further"),
    [
        ("Duskfall", "OSTERLIN DUSKFALL", "Osterlin Works AB", "duskfall", True, (), ("osterlin",), ()),
        ("Duskfall", "DUSKFALL OSTERLIN", "Maison Osterlin SARL", "duskfall", True, (), ("osterlin",), ()),
        ("Duskfall", "DUSKFALL OSTERLIN", "Duskfall Osterlin AB", "duskfall", True, (), (), ("osterlin",)),
        ("Duskfall", "OSTERLIN DUSK FALL", "", "duskfall", True, (), (), ("osterlin",)),
        ("Duskfall Panniers", "DUSKFALL COMPANY", "", "duskfall", True, ("company",), (), ()),
        ("Thicketlamp", "THICKET", "", "thicket", False, (), (), ("lamp",)),
        ("Thicket Pannier", "THICKET", "", "thicket", False, ("pannier",), (), ()),
        ("Duskfall Pannier", "DUSKFALL PANNIER COMPANY", "", "duskfall pannier", True, ("company",), (), ()),
    ],
)
def test_what_is_common_and_what_is_added(
    name: str, mark: str, owner: str, common: str, by_mark: bool,
    plain: tuple[str, ...], house: tuple[str, ...], further: tuple[str, ...],
) -> None:  # fmt: skip
    found = taken_over(name, Mark(mark, owner=owner), GOODS)
    assert found is not None
    assert (found.common, found.by_mark) == (common, by_mark)
    assert (found.plain, found.house, found.further) == (plain, house, further)


@pytest.mark.parametrize(
    ("name", "mark", "added"),
    [
        ("Brandreth", "BRANDRETH & COLE", '"cole" (a second name)'),
        ("Oldershaw", "WINTERBOTTOM AND OLDERSHAW", '"winterbottom" (a second name)'),
        ("Quelvany", "QUELVANY & HOSKYN", '"hoskyn" (a second name)'),  # of words that no dictionary has
        ("Brandreth", "BRANDRETH WINTERBOTTOM", '"winterbottom" (a second name)'),
        ("Oldershaw", "OLDERSHAW & PIKE", '"pike" (a second name)'),  # a fish as well
        ("Brandreth", "BRANDRETH & LANTERN", '"lantern"'),
        ("Duskfall", "DUSKFALL & COMPANY", '"and" and "company" (common in names, or a word for the goods)'),
    ],
)
def test_a_name_of_equal_rank_is_told_as_a_second_name(name: str, mark: str, added: str) -> None:
    """Two surnames joined: neither is a house mark or a word that says little."""
    found = taken_over(name, Mark(mark), GOODS)
    assert found is not None
    assert found.added == added


def test_words_that_say_little_and_are_not_taken_over_are_told() -> None:
    found = taken_over("Duskfall Panniers", Mark("DUSKFALL COMPANY"), GOODS)
    assert str(found).startswith('Taken over but for "panniers": "duskfall"; the mark adds "company"')
    whole = taken_over("Duskfall Pannier", Mark("DUSKFALL PANNIER COMPANY"), GOODS)
    assert str(whole).startswith('Taken over whole: "duskfall pannier"')


@pytest.mark.parametrize(
    ("name", "mark"),
    [
        ("Duskfall", "DUSK FALL"),  # the same name
        ("Duskfall", "DUSKFALLS"),  # another word
        ("Duskfall", "DUSK HARBOUR"),  # a part only
        ("Pannier", "OSTERLIN PANNIER"),  # the goods
        ("Ring", "SPRING"),  # letters by chance
    ],
)
def test_what_is_no_element_of_its_own_is_not_taken_over(name: str, mark: str) -> None:
    assert taken_over(name, Mark(mark), GOODS) is None


def screened(tmp_path: Path, name: str, rows: str, markets: tuple[str, ...] = ()) -> tuple[CloseMark, ...]:
    path = tmp_path / "marks.csv"
    path.write_text("mark,goods,status,owner,office,classes,expires\n" + rows)
    (found,) = screen([name], read_register([path]), goods=GOODS, classes=[12], markets=markets, today="2026-07-01")
    assert isinstance(found.close_marks, tuple)
    return found.close_marks


def test_a_mark_seen_as_a_word_of_a_closed_name_is_as_close_as_beside_a_space(tmp_path: Path) -> None:
    row = f"THICKET,{GOODS},live,Own,DE,12,\n"
    closed, spaced = (screened(tmp_path, name, row)[0] for name in ("Thicketlamp", "Thicket Lamp"))
    assert closed.closeness.overall == pytest.approx(spaced.closeness.overall, abs=0.01)
    assert closed.closeness.reasons[0].startswith('Taken over whole: "thicket"; the name adds "lamp"')


def test_of_marks_with_the_same_words_the_live_one_of_the_markets_is_shown(tmp_path: Path) -> None:
    dead, abroad = f"DUSKFALL,{GOODS},dead,A,DE,12,\n", f"DUSKFALL,{GOODS},live,B,JP,12,\n"
    lapsed, valid = f"DUSKFALL,{GOODS},live,C,DE,12,2020-01-01\n", f"DUSKFALL,{GOODS},live,D,FR,12,2030-01-01\n"
    for rows, owner in (((dead, abroad), "B"), ((dead, abroad, lapsed), "C"), ((dead, lapsed, valid, abroad), "D")):
        shown = screened(tmp_path, "Duskfall", "".join(rows), ("DE", "FR"))[0]
        assert shown.mark.owner == owner


def test_a_mark_that_adds_only_a_house_mark_stands_before_one_that_shares_a_part(tmp_path: Path) -> None:
    """TMEP 1207.01(b)(iii): a house mark added to the same words seldom avoids confusion."""
    rows = f"OSTERLIN DUSKFALL,{GOODS},live,Osterlin AB,DE,12,\nDUSK HARBOUR,{GOODS},live,Own,DE,12,\n"
    found = screened(tmp_path, "Duskfall", rows, ("DE",))
    assert max(found, key=lambda one: one.concern).mark.text == "OSTERLIN DUSKFALL"
    whole = Conflict(0.6, 0.6, 0.6, 1.0)
    assert whole._replace(over_whole=True).concern == pytest.approx(OVER_WHOLE * whole.concern)
    assert whole._replace(over_whole=True, crowded=True).concern < whole.concern


def test_what_a_generic_name_shares_is_free_to_all(tmp_path: Path) -> None:
    """A generic term can serve nobody as a mark (TMEP 1209.01(c)), so it is no dominant element."""
    rows = f"PANNIER HARBOUR,{GOODS},live,Own,GB,12,\nPANNIER,{GOODS},live,Other,GB,12,\n"
    beside, same = sorted(screened(tmp_path, "Pannier", rows, ("GB",)), key=lambda one: one.concern)
    assert beside.free
    assert beside.level < Level.SERIOUS
    assert same.knockout
    assert Conflict(0.6, 0.6, 0.8, 1.0)._replace(free=True).concern == pytest.approx(0.8 * FREE_TO_ALL)


def test_a_place_or_a_plural_is_not_taken_over_or_added() -> None:
    """A place is nobody's (TMEP 1210): a sign that shares it takes nothing over."""
    assert taken_over("Sheffield Pannier", Mark("SHEFFIELD SADDLE WORKS"), GOODS) is None
    assert taken_over("Duskfall Pannier", Mark("DUSKFALL PANNIERS"), GOODS) is None
    assert taken_over("Larkspur Bakery", Mark("LARKSPUR BAKERIES"), "bread") is None


def test_a_compound_of_which_only_a_part_is_meant_is_no_translation() -> None:
    """klingelmann is a bell man (dictionaries), not bells."""
    assert translated_in("With Bells on", "KLINGELMANN", ["de"]) == ""
    assert translated_in("Quiet Forest", "STILLER WALD", ["de"]) == "de"
