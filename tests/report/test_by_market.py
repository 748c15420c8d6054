"""What bites in each market is said and asked there, in the words of its law; every case is invented."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from namescreen.brief import Brief
from namescreen.marks import Mark
from namescreen.outcome import NotChecked, Unread
from namescreen.policy import Level
from namescreen.register import read_register
from namescreen.report import Report, assemble, from_json, to_json, to_markdown
from namescreen.report.findings import findings, mark_level
from namescreen.report.mark_choice import worth_a_word
from namescreen.report.model import Distinctiveness, MarketView, Reading
from namescreen.report.questions import questions
from namescreen.report.sensitivity import standings
from namescreen.report.upkeep import upkeep
from namescreen.screening import screen
from namescreen.screening.foreign_words import ForeignWord
from tests.report.test_worksheets import close, entry

GOODS = "wool blankets, cushions"
HEAD = "mark,number,class,goods,status,owner,office,filed,registered\n"
DAY = "2026-05-31"


def report_on(
    tmp_path: Path, name: str, rows: str, markets: tuple[str, ...], top: int = 10, head: str = HEAD
) -> Report:
    """The report on one name against a list of these rows."""
    path = tmp_path / "marks.csv"
    path.write_text(head + rows)
    register = read_register([path])
    brief = Brief(goods=GOODS, classes=(20, 24), markets=markets)
    found = screen([name], register, goods=GOODS, classes=(20, 24), markets=markets, languages=None, today=DAY, top=top)
    return assemble(brief, found, register, date=DAY, date_from="--date", version="1", command=())


def test_same_words_are_said_and_asked_in_every_market_where_they_bite(tmp_path: Path) -> None:
    """A registered mark of the Union, and an earlier application in the United States."""
    rows = (
        "QUENDRILL,018300111,24,wool blankets,live,Ostmar SARL,EM,2020-11-02,2021-03-04\n"
        "QUENDRILL,98765432,24,blankets of wool,pending,Ostmar SARL,US,2025-02-03,\n"
    )
    report = report_on(tmp_path, "Quendrill Meadow", rows, ("US", "FR", "DE"))
    (one,) = report.names
    assert findings(one)[0].evidence.startswith("QUENDRILL (")
    assert "in US, FR and DE" in findings(one)[0].evidence
    question = questions(one, report)[0]
    assert "would its owner have good grounds to oppose" in question
    assert "In US the same words are applied for, and rank from 2025-02-03, as 98765432 (US, Ostmar SARL" in question
    assert "would an examiner refuse Quendrill Meadow because of it" in question
    assert "Marks by market: serious in US, FR and DE (QUENDRILL)." in to_markdown(report)
    assert from_json(to_json(report)) == report


def test_a_market_where_no_mark_of_the_words_bites_is_told_apart(tmp_path: Path) -> None:
    rows = (
        "QUENDRILL,018300111,24,wool blankets,live,Ostmar SARL,EM,2020-11-02,2021-03-04\n"
        "QUENDRILL,98765432,7,pumps,live,Other Inc.,US,2019-02-03,2020-02-03\n"
    )
    report = report_on(tmp_path, "Quendrill Meadow", rows, ("US", "FR"))
    assert "Marks by market: serious in FR (QUENDRILL); no mark to look closer at in US." in to_markdown(report)
    assert "98765432" not in questions(report.names[0], report)[0]  # pumps are another class, and another market


def test_each_market_is_told_its_own_gravest_level(tmp_path: Path) -> None:
    """A mark that is only near bites in all of the Union, the same name in one state of it, and has lapsed there: what
    has probably lapsed asks for a closer look, and no more."""
    rows = (
        "QUENDRILLE MOOS,018300111,24,wool blankets,live,Ostmar SARL,EM,2020-11-02,2021-03-04,2030-11-02\n"
        "QUENDRILL,30521999,24,wool blankets,live,Moorweber,DE,2004-04-13,2004-09-01,2014-04-30\n"
    )
    head = HEAD.replace("\n", ",expires\n")
    report = report_on(tmp_path, "Quendrill", rows, ("FR", "DE"), head=head)
    assert "Marks by market: serious in FR and DE (QUENDRILLE MOOS)." in to_markdown(report)
    (lapsed,) = (one for one in report.names[0].marks if one.lapsed)  # type: ignore[union-attr]
    assert (mark_level(lapsed), lapsed.knockout) == (Level.LOOK, False)


def test_a_weak_registered_mark_taken_over_whole_for_identical_goods_has_a_question(tmp_path: Path) -> None:
    """Court of Justice, C-196/11 P, F1-Live: it is credited with some distinctiveness while it stands."""
    rows = "COZEE,UK00003000001,24,wool blankets,live,Snood Ltd,GB,2020-11-02,2021-03-04\n"
    report = report_on(tmp_path, "Cozee Hearthling Meadow", rows, ("GB",))
    (found,) = report.names[0].marks  # type: ignore[misc]
    assert mark_level(found) >= Level.LOOK
    assert questions(report.names[0], report)[0].startswith("COZEE (no. UK00003000001, GB, Snood Ltd) is close")
    weak = replace(found, weak=("cozee",))
    asked = questions(replace(report.names[0], marks=(weak,)), report)[0]
    assert "a registered mark counts for something (Court of Justice, C-196/11 P, F1-Live)" in asked
    pending = replace(weak, mark=replace(weak.mark, status="pending"))
    assert "F1-Live" not in questions(replace(report.names[0], marks=(pending,)), report)[0]


def test_five_years_of_an_eu_mark_run_from_registration_in_germany_too(report: Report) -> None:
    """EUTMR, articles 18(1) and 47(2); MarkenG 26(5): of a German mark they run from the end of the time to oppose."""
    asking = replace(report, markets=("DE", "FR"), date="2026-05-31")
    mark = Mark("DUSKFALL", "1", "EM", (21,), status="live", registered="2021-04-30", territories=("EU",))
    assert upkeep(mark, asking.markets, asking.date) == ("use to be shown (DE and FR)",)
    german = replace(mark, office="DE", territories=("DE",))
    assert upkeep(german, asking.markets, asking.date) == ()
    assert upkeep(replace(german, registered="2021-02-01"), asking.markets, asking.date) == ("use to be shown (DE)",)


@pytest.mark.parametrize(
    ("held", "told", "untold"),
    [
        (("US",), "doctrine of foreign equivalents: TMEP 1207.01(b)(vi); Palm Bay", "as far as buyers"),
        (("FR",), "In FR it counts as far as buyers there know these words both in French and in English", "TMEP"),
    ],
)
def test_a_translation_is_asked_about_in_the_words_of_its_market(
    report: Report, held: tuple[str, ...], told: str, untold: str
) -> None:
    found = replace(close("HIBOU FRILEUX", 0.5), translation="fr", concern=0.55, bites=True)
    found = replace(found, mark=replace(found.mark, territories=held, status="live"))
    (question, *_) = questions(entry(found, name="Chilly Owl"), replace(report, markets=("US", "FR")))
    assert told in question
    assert untold not in question


def test_marks_below_all_levels_are_named_by_concern_and_say_why(tmp_path: Path) -> None:
    """What shares the telling word: a far mark of the same word does not hide it, and where an international one holds
    is asked. What says it in the buyers' language for goods like ours has a row of its own."""
    rows = (
        "OWLS,1,7,tractors,live,A,US,2020-01-01,2020-06-01\n"
        "OWL & THISTLE,1500001,20,mirrors,live,B,WO,2020-01-01,2020-06-01\n"
        "EULE,302020000001,24,bath mats,live,C,DE,2020-01-01,2020-06-01\n"
    )
    report = report_on(tmp_path, "The Owl's Parlour", rows, ("US", "DE"))
    (one,) = report.names
    assert "OWL & THISTLE" in {found.mark.text for found in worth_a_word(one, GOODS)}
    text = to_markdown(report, as_tables=True)
    (row,) = (line for line in text.splitlines() if line.startswith("| EULE ("))
    assert 'In German "eule" says "owls"' in row
    assert "where it holds is not stated" in text
    (asked,) = (one for one in questions(one, report) if one.startswith("Where does OWL & THISTLE"))
    assert "WIPO" in asked


def test_a_dead_mark_of_the_very_words_for_such_goods_is_not_hidden_by_a_live_one_for_others(tmp_path: Path) -> None:
    rows = (
        "QUENDRILL,98765432,7,pumps,live,Other Inc.,US,2019-02-03,2020-02-03\n"
        "QUENDRILL,30521999,24,Wolldecken,expired,Moorweber,DE,2005-04-13,2005-09-01\n"
    )
    report = report_on(tmp_path, "Quendrill", rows, ("US", "DE"))
    live, dead = questions(report.names[0], report)[:2]
    assert "only a mark of repute" in live
    assert "The list calls QUENDRILL (no. 30521999, DE, Moorweber) expired: is it still in use" in dead
    assert "1125" not in dead  # that is US law


def test_foreign_equivalents_are_asked_about_for_a_foreign_name_too(report: Report) -> None:
    """TMEP 1207.01(b)(vi): the name is translated as well as the mark; what is not held in the US is not asked so."""
    found = replace(close("FROSTY OWL", 0.5), concern=0.42, bites=True, foreign=(ForeignWord("en", "owl", "hibou"),))
    asking = replace(report, markets=("US", "FR"))
    american = replace(found, mark=replace(found.mark, territories=("US",), status="live"))
    (question, *_) = questions(entry(american, name="Hibou Frileux"), asking)
    assert "TMEP 1207.01(b)(vi)" in question
    assert "would an examiner refuse Hibou Frileux" in question
    french = replace(found, mark=replace(found.mark, territories=("FR",), status="live"))
    assert not any("1207.01" in one for one in questions(entry(french, name="Hibou Frileux"), asking))


UNREAD = '"weidlingen" looks like a word of German whose meaning is not known here: ask someone who speaks it'


@pytest.mark.parametrize(
    "found", [NotChecked("distinctiveness", UNREAD), Distinctiveness("fanciful", 0.8, (UNREAD,))], ids=["not", "unsure"]
)
def test_what_was_not_judged_is_asked_about_and_stands_behind_what_was(
    report: Report, found: NotChecked | Distinctiveness
) -> None:
    fanciful = Distinctiveness("fanciful", 0.6)
    judged = entry(replace(close("DUSKFALLS", 0.6), concern=0.55), name="Duskfall", distinctiveness=fanciful)
    unread = (Unread("weidlingen", UNREAD),)
    unjudged = replace(entry(name="Weidlingen", distinctiveness=found), unread=unread)
    whole = replace(report, names=(unjudged, judged))
    missing = isinstance(found, NotChecked)  # else a word that only may be one is checked by a speaker, and no more
    assert "could not be judged" in questions(unjudged, whole)[0]
    short = to_markdown(whole).split("## In short")[1].split("##")[0]
    assert "Weidlingen" in short
    assert ("could not be judged" in short) is missing
    assert ("Ask a speaker" in short) is not missing
    beside = replace(judged, marks=())
    assert [row.name for row in standings(replace(report, names=(unjudged, beside)))] == ["Duskfall", "Weidlingen"]


def test_what_bars_only_an_eu_mark_is_minor_and_asked_about_as_that(report: Report) -> None:
    """EUTMR, article 7(2): an EU mark is judged in every language of the Union; a national one by its own buyers."""
    views = (MarketView("IE", "arbitrary", 0.8), MarketView("EU", "descriptive", 0.3, "EUTMR Article 7(1)(c)"))
    one = entry(name="Torvale", distinctiveness=Distinctiveness("descriptive", 0.3, markets=views))
    own = next(found for found in findings(one) if found.check == "distinctiveness")
    assert own.level is Level.MINOR
    assert "as an EU mark only" in own.evidence
    assert "is a national mark in each market the better way?" in questions(one, report)[0]
    assert "Descriptive as an EU mark only" in to_markdown(replace(report, names=(one,)))
    union = replace(one, distinctiveness=Distinctiveness("descriptive", 0.3, markets=views[1:]))  # it is the market
    assert next(found for found in findings(union) if found.check == "distinctiveness").level is Level.LOOK


def test_a_bad_word_of_a_language_of_no_market_weighs_nothing_and_is_told_of_the_first_name(report: Report) -> None:
    far = Reading("sv", "torval", "a coarse word", "vulgar", 0, "exact, the whole name", abroad=True)
    coined = Distinctiveness("fanciful", 0.9)
    one = entry(name="Torvale", distinctiveness=coined, readings=(far,))
    two = entry(name="Duskfall", distinctiveness=replace(coined, score=0.1), readings=())
    told = next(found for found in findings(one) if found.check == "readings")
    assert (told.level, told.value) == (Level.NOTHING, 1.0)
    short = to_markdown(replace(report, names=(one, two))).split("## In short")[1].split("##")[0]
    assert "Torvale stands first" in short
    assert "But in a language of no market of yours it reads as Swedish torval, a coarse word." in short
    unknown = replace(one, readings=(replace(far, meaning=""),))
    assert "it reads as Swedish torval, vulgar." in to_markdown(replace(report, names=(unknown, two)))


def test_what_is_minor_for_a_name_keeps_it_from_no_first_place(report: Report) -> None:
    """Only where each name may be refused, or has something serious against it, can none be put first."""
    views = (MarketView("IE", "arbitrary", 0.8), MarketView("EU", "descriptive", 0.3, "EUTMR Article 7(1)(c)"))
    union = entry(name="Torvale", distinctiveness=Distinctiveness("descriptive", 0.3, markets=views), readings=())
    read = Reading("sv", "torval", "a coarse word", "vulgar", 2, "exact, the whole name")
    look = entry(name="Duskfall", distinctiveness=Distinctiveness("fanciful", 0.9), readings=(read,))
    short = to_markdown(replace(report, names=(look, union))).split("## In short")[1].split("##")[0]
    assert "Torvale stands first" in short
    assert "No name can be put first" not in short


def test_markets_stand_in_the_order_of_the_brief_whichever_mark_holds_there(tmp_path: Path) -> None:
    rows = (
        "QUENDRILL,1,24,wool blankets,live,Ostmar SARL,US,2020-11-02,2021-03-04\n"
        "QUENDRILL,2,24,wool blankets,live,Ostmar SARL,DE,2021-11-02,2022-03-04\n"
        "QUENDRILL,3,24,wool blankets,live,Ostmar SARL,GB,2022-11-02,2023-03-04\n"
    )
    report = report_on(tmp_path, "Quendrill", rows, ("US", "DE", "GB"))
    text = to_markdown(report)
    assert "knockout: QUENDRILL in US, DE and GB" in text
    assert "knockout in US, DE and GB (QUENDRILL)" in text
    swapped = report_on(tmp_path, "Quendrill", rows, ("GB", "DE", "US"))
    assert "knockout: QUENDRILL in GB, DE and US" in to_markdown(swapped)
