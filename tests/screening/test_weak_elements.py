"""What a shared element is worth in each market: one answer, which levels, reasons and questions follow. Every name and
mark is invented; what is expected is common practice, no source, but where one is named."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from namescreen.closeness.reason import About, about
from namescreen.goods import Weak, element
from namescreen.policy import Conflict, Level, level_of
from namescreen.register import read_register
from namescreen.screening import CloseMark, screen
from namescreen.screening.weak_elements import common_to_both

CANDLES, SOAP, MUGS, BELLS = "beeswax candles", "hand soap", "ceramic mugs", "bicycle bells"
HEAD = "mark,number,office,owner,class,goods,status,filed,registered\n"
MARKETS = ("US", "GB", "DE", "IT")


@pytest.mark.parametrize(
    ("word", "goods", "weak", "strong"),
    [
        ("kerze", CANDLES, {"DE": Weak.NAMES, "AT": Weak.NAMES}, ("GB", "FR")),
        ("sapone", SOAP, {"IT": Weak.NAMES, "US": Weak.NAMES}, ("GB", "PL")),
        ("rad", BELLS, {"DE": Weak.DESCRIBES}, ("GB", "US", "FR")),
        ("campanello", BELLS, {"IT": Weak.NAMES}, ("DE", "GB")),
        ("superb", MUGS, {"GB": Weak.PRAISE, "US": Weak.PRAISE}, ()),
        ("cornwall", MUGS, {"GB": Weak.PLACE, "DE": Weak.PLACE}, ()),
        ("harrogate", MUGS, {"GB": Weak.PLACE}, ("US", "DE", "IT")),
        ("plover", MUGS, {}, MARKETS),
    ],
)
def test_how_weak_a_word_is_is_asked_in_each_market(
    word: str, goods: str, weak: dict[str, Weak], strong: tuple[str, ...]
) -> None:
    """By what buyers there understand (Court of Justice, C-421/04, Matratzen Concord); in the United States an examiner
    translates (TMEP 1207.01(b)(vi))."""
    found = {market: element(word, goods, market) for market in (*weak, *strong)}
    assert {market: one.weak for market, one in found.items() if one is not None} == weak


def near(tmp_path: Path, name: str, mark: str, office: str, goods: str, theirs: str = "") -> CloseMark:
    path = tmp_path / "marks.csv"
    path.write_text(f"{HEAD}{mark},1,{office},A,21,{theirs or goods},live,2021-01-01,2021-06-01\n", "utf-8")
    (one,) = screen([name], read_register([path]), goods=goods, classes=[21], markets=MARKETS, today="2026-12-01")
    (found,) = one.close_marks  # type: ignore[misc]
    return found


@pytest.mark.parametrize(
    ("name", "mark", "office", "goods", "weak", "level"),
    [
        ("Kerzenständer Amsel", "KERZENSTÄNDER UHU", "DE", "candlesticks", True, Level.MINOR),
        ("Sapone Merlo", "SAPONE GUFO", "IT", SOAP, True, Level.MINOR),
        ("Northumberland Ox", "NORTHUMBERLAND YEW", "GB", MUGS, True, Level.MINOR),
        ("Magnificent Ox", "MAGNIFICENT YEW", "US", BELLS, True, Level.MINOR),
        ("Amsel", "AMSEL KERZEN", "DE", CANDLES, False, Level.SERIOUS),
        ("Merlo Sapone", "MERLO", "IT", SOAP, False, Level.SERIOUS),
        ("Harrogate", "HARROGATE MUG CO", "GB", MUGS, False, Level.SERIOUS),
        ("Plover", "PLOVER BELLS", "US", BELLS, False, Level.SERIOUS),
    ],
)
def test_a_level_follows_from_what_the_shared_element_is_worth_there(
    tmp_path: Path, name: str, mark: str, office: str, goods: str, weak: bool, level: Level
) -> None:
    """TMEP 1207.01(b)(viii): what describes is weak; 1207.01(b)(iii): what is left of both decides."""
    found = near(tmp_path, name, mark, office, goods)
    told = [one for one in found.closeness.reasons if about(one) is About.WEAK_ALONE]
    assert (found.descriptive, bool(told)) == (weak, weak)
    assert found.level <= level if weak else found.level >= level


def test_what_is_weak_in_one_market_may_be_strong_in_another(tmp_path: Path) -> None:
    path = tmp_path / "marks.csv"
    head, goods = HEAD.replace("\n", ",territories\n"), "candlesticks"
    path.write_text(f"{head}KERZENSTÄNDER UHU,1,WO,A,21,{goods},live,2021-01-01,2021-06-01,DE GB\n", "utf-8")
    (one,) = screen(["Kerzenständer Amsel"], read_register([path]), goods=goods, classes=[21], markets=("DE", "GB"))
    (found,) = one.close_marks  # type: ignore[misc]
    assert {each.market: each.descriptive for each in found.by_market} == {"DE": True, "GB": False}
    there = {market: concern for market, concern, _ in found.in_markets}
    assert there["GB"] > there["DE"]
    (told,) = (reason for reason in found.closeness.reasons if about(reason) is About.WEAK_ALONE)
    assert "in DE" in told
    assert "not so in GB" in told


def test_a_generic_word_beside_a_strong_one_makes_no_mark_near(tmp_path: Path) -> None:
    """A name that is the German word for the goods meets every mark that has it, and each has more of its own."""
    found = near(tmp_path, "Seife", "SEIFE KOBOLD", "DE", SOAP, "Seifen")
    assert found.descriptive
    assert found.level is Level.MINOR


def test_a_mark_that_is_weak_as_a_whole_counts_for_something_while_it_is_registered(tmp_path: Path) -> None:
    """Court of Justice, C-196/11 P, F1-Live."""
    assert near(tmp_path, "Superb Soaps", "SUPERB SOAP", "GB", SOAP).level >= Level.LOOK


def test_a_word_that_both_hold_whole_is_not_divided() -> None:
    common = common_to_both("Harrogate", "HARROGATE PLOVER")
    assert common is not None
    assert common.ours == ("harrogate",)


def test_a_word_that_both_hold_is_told_itself_and_never_one_whose_letters_hold_it() -> None:
    common = common_to_both("Art Cart Plover", "ART CART YEW")
    assert common is not None
    assert common.ours == common.theirs == ("art", "cart")


def test_what_is_shared_is_the_same_whatever_the_order_of_sets() -> None:
    """Python orders sets of words anew in each run, by PYTHONHASHSEED."""
    asked = (
        "from namescreen.screening.weak_elements import common_to_both as c; "
        "print(c('Fresh Refresh Moon', 'FRESH REFRESH LAMP'), c('Mint Minted Spearmint Ox', 'MINTED SPEARMINT YEW'))"
    )
    told = {
        subprocess.run(
            [sys.executable, "-c", asked], env=os.environ | {"PYTHONHASHSEED": seed}, capture_output=True, check=True
        ).stdout
        for seed in "1234"
    }
    (one,) = told
    assert b"'fresh', 'refresh'" in one


def test_weak_words_that_are_hardly_told_apart_are_looked_at_unless_the_mark_has_more() -> None:
    weak = Conflict(0.8, 0.75, 0.7, 0.68, descriptive=True)
    assert level_of(weak.concern) is Level.LOOK
    assert level_of(Conflict(0.8, 0.75, 0.7, 0.68, descriptive=True, beside=True).concern) is Level.MINOR


def test_the_translation_of_a_word_counts_no_more_than_the_word(tmp_path: Path) -> None:
    """A mark that is the other word of a name counts as far as that is all that both say, in whatever language."""
    said = near(tmp_path, "Vienna Cloud", "WOLKE", "DE", MUGS)
    word = near(tmp_path, "Vienna Cloud", "CLOUD", "GB", MUGS)
    assert 0 < said.concern <= word.concern
    assert word.level is Level.SERIOUS  # the place is nothing added


@pytest.mark.parametrize(
    ("name", "mark", "office", "told"),
    [
        ("Bel Gufo", "GUFI BELLI", "IT", True),
        ("Stiller Mond", "MONDE STILLE", "DE", True),
        ("Bel Gufo", "LUPI BELLI", "IT", False),
        ("Stiller Mond", "STILLE POST", "DE", False),
        ("Quiet Moon", "MOON QUIET", "GB", False),
    ],
)
def test_the_same_words_in_other_forms_or_turned_round_are_near(
    tmp_path: Path, name: str, mark: str, office: str, told: bool
) -> None:
    """A German Mond is plural in Monde, an Italian gufo in gufi (from memory)."""
    found = near(tmp_path, name, mark, office, MUGS)
    assert ("the same words of" in found.element) is told
    assert not told or found.level is Level.SERIOUS


def test_a_mark_that_is_the_name_without_the_goods_is_graver_than_one_that_shares_the_goods(tmp_path: Path) -> None:
    """A word that labels of vinegar have hints at mustard, and does not describe it; the word for the goods, in the
    buyers' language, adds nothing (Thomson Life, C-120/04; from memory)."""
    said = element("viva", "mustard", "ES")
    assert said is None
    own = near(tmp_path, "Senf Hecht", "HECHT", "DE", "mustard")
    shared = near(tmp_path, "Senf Hecht", "SENF WERK", "DE", "mustard")
    assert level_of(own.concern) is Level.SERIOUS
    assert level_of(shared.concern) <= Level.MINOR
