"""What could not be checked is said, never passed off as nothing found."""

from __future__ import annotations

import sys

import pytest

from namescreen.closeness import Closeness
from namescreen.errors import DataError
from namescreen.goods import Relatedness
from namescreen.marks import Mark
from namescreen.outcome import NotChecked
from namescreen.register import Register
from namescreen.screening import CloseMark, screen
from tests.screening.conftest import GOODS, marks_of, validate

# What could not be checked is said, never passed off as nothing found.


def test_without_a_list_marks_are_not_checked() -> None:
    (one,) = screen(["Loamlet"], None, languages=["nl"])
    assert one.close_marks == NotChecked("close_marks", "no list of existing marks was given")
    assert one.close_marks in one.not_checked
    assert (one.knockouts, one.concern, one.closest) == ((), 0.0, 0.0)


def test_without_goods_distinctiveness_and_relatedness_are_not_checked(register: Register) -> None:
    (one,) = screen(["Sprigwick"], register, languages=["nl"])
    assert isinstance(one.distinctiveness, NotChecked)
    assert all(isinstance(mark.goods_relatedness, NotChecked) for mark in marks_of(one))
    assert {reason.check for reason in one.not_checked} >= {"distinctiveness", "goods_relatedness"}


def test_a_language_without_words_is_not_checked() -> None:
    (one,) = screen(["Loamlet"], None, languages=["nl", "tlh"])
    assert [coverage.language for coverage in one.coverage] == ["en", "nl"]
    assert any("tlh" in reason.check or "Klingon" in reason.check for reason in one.not_checked)


@pytest.mark.parametrize("languages", [["en"], ["tlh", "en-GB"]])
def test_english_is_looked_through_whatever_languages_are_stated(languages: list[str]) -> None:
    """English is among the buyers' languages, and says where it was looked up."""
    clean, rude = screen(["Mist Patch", "Wanker"], None, languages=languages)
    assert clean.readings == ()
    assert [one.language for one in clean.coverage] == ["en"]
    assert rude.readings[0].language == "en"  # type: ignore[index]
    assert any("tlh" in one.check for one in clean.not_checked) == ("tlh" in languages)


@pytest.mark.parametrize("error", [DataError("words.tsv", "is damaged", "Install again"), ImportError("no room")])
def test_a_damaged_table_or_missing_part_leaves_the_other_checks_standing(
    monkeypatch: pytest.MonkeyPatch, register: Register, error: Exception
) -> None:
    def fail(*arguments: object, **options: object) -> None:
        raise error

    monkeypatch.setattr(sys.modules["namescreen.connotations"], "readings", fail)
    (one,) = screen(["Sprigwick"], register, goods=GOODS, languages=["nl"])
    assert isinstance(one.readings, NotChecked)
    assert str(error) in one.readings.because
    assert one.readings in one.not_checked
    assert one.knockouts
    validate(one)


def test_a_mistake_in_a_check_is_not_hidden(monkeypatch: pytest.MonkeyPatch) -> None:
    def fail(*arguments: object, **options: object) -> None:
        raise ZeroDivisionError

    monkeypatch.setattr(sys.modules["namescreen.connotations"], "readings", fail)
    with pytest.raises(ZeroDivisionError):
        list(screen(["Loamlet"], None, languages=["nl"]))


def test_meaning_that_could_not_be_judged_is_said() -> None:
    unknown = Closeness(0.0, 0.0, 0.0, 0.0, (), (NotChecked("meaning", "no word is known"),))
    mark = CloseMark(Mark("M"), unknown, Relatedness(1.0), False)
    assert mark.to_json()["meaning"] == {"not_checked": "no word is known"}
