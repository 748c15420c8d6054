"""A mark as each market hears and understands it; every mark is invented.

The sounds of a mark count as the buyers of the territory say it (EUIPO Guidelines, part C, section 2, chapter 4).
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from namescreen.closeness import compare
from namescreen.goods.verdicts import FREE
from namescreen.policy import NEAR_IN_SOUND, Level
from namescreen.register import read_register
from namescreen.report.assembly import entry_of
from namescreen.report.findings import finding_of, grades
from namescreen.screening import CloseMark, Screening, screen
from namescreen.screening.heard import as_heard
from namescreen.screening.taken_over import holds_whole

HEAD = "mark,number,office,owner,class,goods,status,filed,registered,territories\n"
MARKETS = ("US", "GB", "DE", "FR")


def found_for(tmp_path: Path, name: str, rows: str, goods: str = "felt slippers") -> tuple[CloseMark, ...]:
    path = tmp_path / "marks.csv"
    path.write_text(HEAD + rows, "utf-8")
    (one,) = screen([name], read_register([path]), goods=goods, classes=[25], markets=MARKETS, today="2026-12-01")
    return one.close_marks  # type: ignore[return-value]


def test_a_german_ear_decides_in_germany_alone(tmp_path: Path) -> None:
    """A short ä is said as e in German (Duden, from memory); one registration holds in two markets."""
    rows = "BRANDSTÄTTER,1,WO,A,25,felt slippers,live,2022-01-01,2022-06-01,US DE\n"
    (found,) = found_for(tmp_path, "Brandstetter", rows)
    there = {market: knockout for market, _, knockout in found.in_markets}
    assert there == {"US": False, "DE": True}
    assert found.knockout  # as a whole it goes by the market where it asks for most attention
    assert "Sound: sounds the same, read in German." in found.closeness.reasons


def test_the_report_tells_each_market_its_own_level(tmp_path: Path) -> None:
    path = tmp_path / "marks.csv"
    path.write_text(HEAD + "BRANDSTÄTTER,1,WO,A,25,felt slippers,live,2022-01-01,2022-06-01,US DE\n", "utf-8")
    register = read_register([path])
    (one,) = screen(["Brandstetter"], register, goods="felt slippers", classes=[25], markets=MARKETS)
    entry = entry_of(one)
    (found,) = entry.marks  # type: ignore[misc]
    told = grades(found, ("US", "DE"))
    assert told["DE"][0]
    assert not told["US"][0]
    evidence = finding_of(entry, "marks").evidence
    assert "in DE" in evidence
    assert "serious in US" in evidence


def test_what_only_a_reader_of_german_hears_as_the_same_is_no_knockout_in_english(tmp_path: Path) -> None:
    """Of Juwel, whose letters are German, an English reader says the j otherwise."""
    rows = "YOOVEL,1,US,A,25,felt slippers,live,2022-01-01,2022-06-01,US\n"
    (found,) = found_for(tmp_path, "Juwel", rows)
    assert not found.knockout
    assert any("only if read in German" in reason for reason in found.closeness.reasons)


def test_each_owner_has_a_mark_of_its_own_with_its_level(tmp_path: Path) -> None:
    rows = (
        "MISTLE,1,EM,Mistle ApS,25,slippers,live,2019-03-01,2019-08-01,EU\n"
        "MISTLE,2,GB,MISTLE APS,25,slippers,live,2019-03-01,2019-08-01,GB\n"
        "MISTLE,3,US,Brack LLC,8,garden shears,live,2017-03-01,2018-02-01,US\n"
    )
    first, second = found_for(tmp_path, "Mistle", rows)
    assert (first.knockout, [other.mark.number for other in first.others]) == (True, ["2"])
    assert (second.mark.owner, second.knockout, second.holds) == ("Brack LLC", False, ("US",))


@pytest.mark.parametrize(("goods", "level"), [("leather bags", "look closer"), ("garden shears", "minor")])
def test_what_sounds_the_same_is_never_minor_for_goods_that_are_not_others(
    tmp_path: Path, goods: str, level: str
) -> None:
    rows = f"VORRELLEAU,1,US,A,18,{goods},live,2022-01-01,2022-06-01,US\n"
    (found,) = found_for(tmp_path, "Vorello", rows)
    assert found.conflict.near_identical
    assert found.level.words == level


def test_what_describes_the_goods_where_the_mark_holds_is_free_there(tmp_path: Path) -> None:
    """Judged by the words of that market: Schlafplatz, a sleeping place, says what a dog bed is to Germans alone."""
    rows = "SCHLAFPLATZ TRAUMTIER,1,DE,Traumtier GmbH,20,dog beds,live,2021-04-12,2021-09-20,DE\n"
    (found,) = found_for(tmp_path, "Schlafplatz", rows, goods="dog beds")
    assert found.free
    assert found.level < Level.SERIOUS
    british = rows.replace(",DE,", ",GB,").replace(",DE\n", ",GB\n")
    (elsewhere,) = found_for(tmp_path, "Schlafplatz", british, goods="dog beds")
    assert not elsewhere.free


def test_a_spanish_ll_is_no_l() -> None:
    """Real Academia Española, Ortografía (from memory): ll is a consonant of its own, in llama as in cabello."""
    read = compare("Kavello", "CAVELO")
    assert as_heard(read, "Kavello", "CAVELO", ["en", "es"], english=False).sound < NEAR_IN_SOUND
    assert as_heard(read, "Kavello", "CAVELO", ["en", "de"], english=False).sound >= NEAR_IN_SOUND


GENERIC_IN_SOME = "BROTBEUTEL TALVIK,1,WO,Talvik AB,21,bread bags,live,2021-01-01,2021-06-01,US DE GB\n"


def brotbeutel(tmp_path: Path, rows: str = GENERIC_IN_SOME) -> Screening:
    path = tmp_path / "marks.csv"
    path.write_text(HEAD + rows, "utf-8")
    register = read_register([path])
    (one,) = screen(["Brotbeutel"], register, goods="bread bags", classes=[21], markets=("US", "DE", "GB"))
    return one


def test_a_mark_is_free_only_where_the_name_is_generic(tmp_path: Path) -> None:
    """Brotbeutel is a bread bag to Germans, and by foreign equivalents in US (TMEP 1209.03(g)); in GB few know it."""
    one = brotbeutel(tmp_path)
    called = {view.market: view.called for view in one.distinctiveness.markets}  # type: ignore[union-attr]
    assert (called["DE"], called["GB"] in FREE) == ("generic", True)
    (found,) = one.close_marks  # type: ignore[misc]
    there = {market: concern for market, concern, _ in found.in_markets}
    assert there["GB"] > there["DE"]
    assert there["GB"] == found.concern  # as a whole it goes by the market where it asks for most attention
    assert {near.market: near.free for near in found.by_market}["DE"]
    evidence = finding_of(entry_of(one), "marks").evidence
    assert "serious in US, DE and GB" not in evidence
    assert "in GB, minor in US and DE" in evidence


def test_of_one_owner_s_marks_the_gravest_stands_first_when_it_is_known_where_they_are_free(tmp_path: Path) -> None:
    rows = (
        "BROTBEUTEL TALVIK,1,DE,Talvik AB,21,bread bags,live,2020-01-01,2020-06-01,DE\n"
        "BROTBEUTEL TALVIK,2,GB,Talvik AB,21,bread bags,live,2021-01-01,2021-06-01,GB\n"
    )
    (found,) = brotbeutel(tmp_path, rows).close_marks  # type: ignore[misc]
    assert (found.mark.number, found.marks, [other.mark.number for other in found.others]) == ("2", 2, ["1"])
    assert found.elsewhere == ()  # what is generic in DE asks for nothing there
    assert found.level > found.others[0].level


def test_a_further_mark_is_told_in_each_market_at_its_level_there(tmp_path: Path) -> None:
    """A German ear hears ä as e; the further mark of the owner holds in two markets where the first does not."""
    rows = (
        "BRANDSTÄTTER,1,FR,A,25,felt slippers,live,2020-01-01,2020-06-01,FR\n"
        "BRANDSTÄTTER,2,WO,A,25,felt slippers,live,2022-01-01,2022-06-01,US DE\n"
    )
    (found,) = found_for(tmp_path, "Brandstetter", rows)
    french = replace(found.others[0], others=(replace(found, others=()),))
    assert [(one.markets, one.knockout) for one in french.elsewhere] == [(("US",), False), (("DE",), True)]


@pytest.mark.parametrize(
    ("text", "held", "whole"),
    [
        ("SCHLAFPLATZ TRAUMTIER", "Schlafplatz", True),
        ("BROT BEUTEL TALVIK", "Brotbeutel", True),
        ("Harbourlamp", "Lamp", True),  # a part of a closed compound
        ("STEAMER", "Tea", False),
        ("CARPETRY HALL", "Pet", False),
        ("TALVIK", "Brotbeutel", False),
    ],
)
def test_a_mark_holds_a_name_whole_by_words_and_not_by_letters(text: str, held: str, whole: bool) -> None:
    assert holds_whole(text, held) is whole
