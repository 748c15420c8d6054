"""What the register's facts of a mark, its law and the lists it stands in are told as."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

import pytest

from namescreen.marks.mark import Mark
from namescreen.register import read_register
from namescreen.report import Report, to_markdown
from namescreen.report.assembly import entry_of
from namescreen.report.coverage import market_cover, unsearched_markets
from namescreen.report.law import everywhere, objection
from namescreen.report.mark_tables import REGISTER_HEADS, register_cells
from namescreen.report.model import OfficeRows
from namescreen.report.questions import questions
from namescreen.report.register_facts import held_in, in_force_notes, remarks, status, where
from namescreen.report.upkeep import upkeep, use_is_due
from namescreen.screening import screen


def due(mark: Mark, report: Report) -> bool:
    return use_is_due(mark, report.markets, report.date)


def kept(mark: Mark, report: Report) -> tuple[str, ...]:
    return upkeep(mark, report.markets, report.date)


def test_the_register_s_facts_are_told_in_words(report: Report) -> None:
    """EU marks hold in every member state (EU Regulation 2017/1001, article 1(2)); priority runs for six months (Paris
    Convention, article 4C(1)); an owner proves use after five years in the EU and the UK (EU Regulation 2017/1001,
    article 47(2)); in the US whoever attacks the mark shows three years without (15 USC 1127)."""
    mark = Mark(
        "M", "1", "EM", status="live", filed="2014-01-01", registered="2014-06-01", expires="2024-01-01",
        priority="2013-09-01", territories=("EU",),
    )  # fmt: skip
    cells = dict(zip(REGISTER_HEADS, register_cells(mark), strict=True))
    assert cells["Status"] == "in force"
    assert cells["Dates"] == "priority 2013-09-01, filed 2014-01-01, registered 2014-06-01, expires 2024-01-01"
    assert cells["Where"] == "EU"
    of_us = replace(report, markets=("DE", "US"))
    assert held_in(mark, of_us) == ("DE",)
    assert held_in(replace(mark, territories=()), of_us) == ("DE", "US")
    assert remarks(mark, of_us) == (
        "Its term ran out on 2024-01-01, and the six months for renewing it late are over: it has probably lapsed, "
        "unless the list is behind. What does the register say today?",
    )
    assert not due(mark, of_us)
    assert kept(mark, of_us) == ()
    assert kept(replace(mark, expires="2034-01-01"), of_us) == ("use to be shown (DE)",)
    american = replace(mark, territories=("US",), registered="2023-01-01", expires="")
    assert kept(american, of_us) == ("use in question (US)",)
    unstated = replace(american, office="WO", territories=())  # an international registration: where it holds is open
    assert kept(unstated, of_us) == ()
    old = replace(american, registered="2019-01-01")  # 15 USC 1058(a)(1): use is declared by the sixth year
    assert kept(old, of_us)[-1] == "lapsed unless its declaration was made by 2025-07-01 (US)"
    fresh = Mark("M", status="pending", filed="2026-09-01")
    assert "for six months its owner can claim that day" in remarks(fresh, report)[0]
    assert status(replace(fresh, status="opposed")) == "applied for, opposed"
    assert status(Mark("M", status="dead", status_as_given="Expired")) == "dead (expired)"
    assert remarks(replace(mark, status="dead"), of_us) == ()


def test_what_weakens_a_mark_is_told_and_asked_about(report: Report) -> None:
    """15 USC 1091 and 1094 (from memory): the Supplemental Register is for what does not yet tell a maker."""
    given = "Registered - Supplemental Register"
    mark = Mark("M", "1", "US", status="live", status_as_given=given, territories=("US",))
    assert status(mark) == "in force, Supplemental Register"
    assert any("Supplemental Register" in one for one in remarks(mark, replace(report, markets=("US",))))
    pictured = replace(mark, status_as_given="Registered", mark_type="figurative")
    cells = dict(zip(REGISTER_HEADS, register_cells(pictured), strict=True))
    assert cells["Status"] == "in force, figurative"
    assert any("figurative" in one for one in remarks(pictured, report))
    for plain in (replace(pictured, mark_type="word"), replace(mark, status="dead")):
        assert not any("figurative" in one or "Supplemental" in one for one in remarks(plain, report))


def test_an_international_registration_s_times_are_not_counted_from_its_date(report: Report) -> None:
    """EU Regulation 2017/1001, article 203; 15 USC 1141k (from memory)."""
    today = replace(report, date="2026-07-01", markets=("US", "DE"))
    mark = Mark("M", status="live", office="WO", registered="2019-01-01", territories=("US", "EU"))
    assert kept(mark, today) == ("use to be shown or in question only from a later date in each country",)
    assert not due(mark, today)
    assert kept(replace(mark, registered="2025-01-01"), today) == ()
    law = dict(everywhere(("US", "DE")))["International registrations"]
    assert "EUTMR, article 203" in law
    assert "1141k" in law
    assert "in the UK" not in law
    national = replace(mark, office="US", territories=("US",))
    assert any("declaration" in told for told in kept(national, today))


def test_german_time_without_use_counts_from_the_end_of_opposition(report: Report) -> None:
    """MarkenG 26(5), 42(1) (from memory): three months after registration; elsewhere from registration."""
    mark = Mark("M", status="live", office="DE", registered="2021-05-20", territories=("DE",))
    assert not due(mark, replace(report, date="2026-07-01", markets=("DE",)))
    assert due(mark, replace(report, date="2026-08-20", markets=("DE",)))
    swiss = replace(mark, office="CH", territories=("CH",))  # Swiss MSchG, article 12(1)
    assert not due(swiss, replace(report, date="2026-07-01", markets=("CH",)))
    french = replace(mark, office="FR", territories=("FR",))
    assert due(french, replace(report, date="2026-07-01", markets=("FR",)))


def test_a_term_that_ran_out_is_told_with_its_six_months(report: Report) -> None:
    """Paris Convention, article 5bis(1); 15 USC 1059(a); EU Regulation 2017/1001, article 53(3)."""
    today = replace(report, date="2026-07-01", markets=("US", "GB"))
    late = Mark("M", status="live", office="US", expires="2026-01-15", territories=("US",))
    assert remarks(late, today) == (
        "Its term ran out on 2026-01-15, and it can be renewed until 2026-07-15: has it been?",
    )
    assert remarks(replace(late, expires="2026-12-15"), today) == (
        "Its term runs out on 2026-12-15: will it be renewed?",
    )
    assert remarks(replace(late, expires="2027-12-15"), today) == ()
    assert "probably lapsed" in remarks(replace(late, expires="2025-12-31"), today)[0]


def test_priority_is_told_by_its_day(report: Report) -> None:
    """The right of priority runs for six months from the first filing (Paris Convention, article 4C(1)), and the later
    application ranks from that day (article 4B)."""
    today = replace(report, date="2026-07-01", markets=("US",))
    claimed = Mark("M", status="pending", priority="2025-10-01", filed="2026-03-20", territories=("US",))
    assert remarks(claimed, today) == ("It claims priority, so it ranks from 2025-10-01.",)
    assert "for six months" in remarks(replace(claimed, priority=""), today)[0]
    assert remarks(replace(claimed, registered="2026-06-20", status="live"), today) == ()


def test_a_european_mark_is_followed_into_the_united_kingdom(report: Report) -> None:
    """Withdrawal Agreement, articles 54 (registered before 2021) and 59 (applied for, and registered later)."""
    today = replace(report, date="2026-07-01", markets=("GB",))
    mark = Mark("M", status="live", office="EM", filed="2020-10-01", registered="2021-03-01", territories=("EU",))
    assert "2021-09-30" in kept(mark, today)[-1]
    assert "a UK mark of its own came from it" in kept(replace(mark, registered="2020-12-01"), today)[-1]
    assert kept(replace(mark, filed="2021-02-01"), today) == ()
    assert not any("UK" in told for told in kept(mark, replace(today, markets=("DE",))))


def test_a_number_is_cited_with_its_office_once() -> None:
    """Numbers of the UK office begin with UK000, those of marks that came from the EU with UK009 (UK IPO)."""
    told = dict(zip(REGISTER_HEADS, register_cells(Mark("M", "UK00901234567", "GB")), strict=True))
    assert told["Number"] == "UK00901234567"
    assert register_cells(Mark("M", "1234567", "US"))[1] == "US 1234567"


def test_the_record_says_which_registers_cover_a_market(report: Report) -> None:
    searched = replace(report, markets=("DE", "GB"), lists=(replace(report.lists[0], offices=("EM",)),))
    german, british = market_cover(searched)
    assert german.searched == ("EU marks (EM)",)
    assert german.missing == ("national marks (DE)", "international registrations (WO)")
    assert british.searched == ()
    assert re.search(r"\| DE +\| EU marks \(EM\) +\| national marks \(DE\)", to_markdown(searched))


def test_the_record_says_how_many_rows_are_said_to_be_of_an_office(report: Report) -> None:
    """A list typed by hand is no register, whatever office its rows name."""
    typed = replace(
        report.lists[0], offices=("DE", "US", "EM"), rows_of=(OfficeRows("DE", 4), OfficeRows("US", 17)), layout=""
    )
    own = replace(report.lists[0], name="bulk.xml", offices=("US",), rows_of=(OfficeRows("US", 11),), layout="a form")
    searched = replace(report, markets=("US", "EU"), lists=(typed, own))
    american, union = market_cover(searched)
    assert american.searched == ("national marks (US): 28 rows, 11 in the office's own form",)
    assert union.searched == ("EU marks (EM)", "national marks of member states (DE): 4 rows")
    assert union.own
    assert union.missing[0].startswith("national marks of member states (AT, BG, BX, CY")
    assert unsearched_markets(searched) == ()
    drawn = to_markdown(searched)
    assert "nothing left out" not in drawn
    assert "No register itself was asked, and whether a list holds the whole of one is not known" in drawn


def test_the_union_is_a_market_of_its_own(report: Report) -> None:
    """Its marks can be opposed and their use asked for by one regulation, and so do marks of a state (EU Regulation
    2017/1001, articles 8(2), 46 and 47)."""
    union = replace(report, markets=("US", "EU"))
    german = Mark("M", registered="2018-05-01", status="live", territories=("DE",), office="DE")
    assert held_in(german, union) == ("EU",)
    assert kept(german, union) == ("use to be shown (EU)",)
    assert objection("N", ("EU",)) == "would its owner have good grounds to oppose N"
    assert "not described here" not in to_markdown(union)


def test_a_mark_in_its_time_of_renewal_is_asked_about(report: Report, tmp_path: Path) -> None:
    """Paris Convention, article 5bis: a list that calls it dead is not the last word."""
    path = tmp_path / "marks.csv"
    path.write_text(
        "mark,number,office,class,goods,status,registered,expires\n"
        "SILVER OTTER,1,GB,21,flower pots,Expired,2016-11-01,2026-08-01\n"
        "SILENT OTTERS,2,GB,21,flower pots,Expired,2012-11-01,2022-08-01\n"
    )
    told = {"goods": "flower pots", "classes": [21], "markets": ["GB"]}
    (found,) = screen(["Silent Otter"], read_register([path]), today="2026-11-25", **told)  # type: ignore[arg-type]
    close = {mark.mark.text: mark for mark in found.close_marks}  # type: ignore[union-attr]
    assert (close["SILVER OTTER"].renewable_until, close["SILENT OTTERS"].renewable_until) == ("2027-02-01", "")
    assert close["SILVER OTTER"].concern > close["SILENT OTTERS"].concern
    assert not close["SILVER OTTER"].knockout
    asked = questions(entry_of(found), replace(report, markets=("GB",)))
    assert "ran out on 2026-08-01, and it can be renewed until 2027-02-01" in " ".join(asked)
    (later,) = screen(["Silent Otter"], read_register([path]), today="2027-02-02", **told)  # type: ignore[arg-type]
    assert not any(mark.renewable_until for mark in later.close_marks)  # type: ignore[union-attr]


def test_a_registered_mark_that_is_opposed_is_not_only_applied_for(report: Report) -> None:
    opposed = Mark("M", "1", "DE", status="live", status_as_given="Registered; opposed", registered="2026-07-01")
    assert status(opposed) == "registered, opposed"
    assert in_force_notes(opposed, report)[0] == "It is registered, and opposed: how will that end?"


def test_a_live_namesake_is_not_hidden_behind_a_dead_mark(report: Report, tmp_path: Path) -> None:
    path = tmp_path / "marks.csv"
    path.write_text(
        "mark,number,office,class,goods,status,expires,owner\n"
        "WRENMOOR,1,GB,21,flower pots,Expired,2026-08-01,Old Pots Ltd\n"
        "WRENMOOR,2,GB,20,chairs,Registered,2035-08-01,Chairs Ltd\n"
    )
    (found,) = screen(
        ["Wrenmoor"], read_register([path]), goods="flower pots", classes=[21], markets=["GB"], today="2026-11-25"
    )
    asked = " ".join(questions(entry_of(found), replace(report, markets=("GB",))))
    assert "can be renewed until 2027-02-01" in asked
    assert "WRENMOOR (no. 2, GB, Chairs Ltd) is the same name, for" in asked


def test_a_term_that_is_over_is_told_in_one_way(report: Report) -> None:
    mark = Mark("M", "1", "EM", status="live", expires="2026-01-31", territories=("EU",))
    assert status(mark, "2026-01-31") == "in force"
    assert status(mark, "2026-07-31") == "in force by the list, but its term is over"
    assert "it can be renewed until 2026-07-31" in remarks(mark, replace(report, date="2026-07-31"))[0]
    assert status(mark, "2026-08-01") == "in force by the list, but probably lapsed"
    assert "it has probably lapsed" in remarks(mark, replace(report, date="2026-08-01"))[0]


def test_a_later_eu_mark_is_said_not_to_hold_in_the_united_kingdom() -> None:
    """Withdrawal Agreement, article 54(1)(a): only marks registered before 2021 live on there."""
    later = Mark("M", "1", "EM", status="live", registered="2022-05-01", territories=("EU",))
    assert where(later, ("GB", "DE")) == "EU, not GB"
    assert where(later, ("DE",)) == where(replace(later, registered="2019-05-01"), ("GB",)) == "EU"


def test_international_registrations_are_counted_wherever_they_hold(report: Report) -> None:
    held = replace(report.lists[0], offices=("WO",), rows_of=(OfficeRows("WO", 2),), layout="")
    (us,) = market_cover(replace(report, markets=("US",), lists=(held,)))
    assert us.searched == ("international registrations (WO): 2 rows, wherever they hold",)


def test_a_standing_that_is_not_understood_is_shown_as_the_list_words_it(report: Report) -> None:
    mark = Mark("M", status="unknown", status_as_given="Purple")
    assert status(mark) == "not understood (Purple)"
    assert in_force_notes(mark, report) == ('The list calls it "Purple": is it in force?',)
    assert status(Mark("M")) == "not stated"


def test_what_holds_in_most_countries_cites_the_acts_of_the_markets() -> None:
    """Acts from memory; what the Paris Convention says holds everywhere."""
    told = dict(everywhere(("CH", "JP")))
    assert "Swiss MSchG, article 15; Japan's Trademark Act, article 4(1)" in told["Known marks"]
    assert "Paris Convention, article 6bis" in told["Known marks"]
    assert not any("UK" in text or "EU" in text or "USC" in text for text in told.values())
    assert "MarkenG, section 5" in dict(everywhere(("DE",)))["Company names and unregistered use"]
    assert "EU Regulation 2017/1001, article 8(4)" in dict(everywhere(("DE",)))["Company names and unregistered use"]
    assert "struck from the register." in dict(everywhere(("US",)))["Bad faith"]
    assert all("{" not in text for _, text in everywhere(()))


@pytest.mark.parametrize(
    ("registered", "says"),
    [
        ("2021-08-01", ""),  # not yet five years old
        ("2021-06-30", "declaration due by 2027-06-30 (US)"),
        ("2020-07-01", "declaration due by 2026-07-01 (US)"),
        ("2020-03-01", "declaration was due by 2026-03-01, late until 2026-09-01 (US)"),
        ("2019-08-31", "lapsed unless its declaration was made by 2026-02-28 (US)"),
        ("2016-06-01", "renewal was due by 2026-06-01, late until 2026-12-01 (US)"),
        ("2014-06-01", "lapsed unless its renewal was made by 2024-12-01 (US)"),
    ],
)
def test_a_declaration_of_use_is_asked_for_by_its_days(report: Report, registered: str, says: str) -> None:
    """15 USC 1058(a), 1059(a): within the year before the end of six years, and of every ten, or with a fee in the six
    months after; a term that runs on says that it was done."""
    of_us = replace(report, date="2026-07-01", markets=("US",))
    mark = Mark("M", status="live", territories=("US",), registered=registered)
    assert [one for one in kept(mark, of_us) if "use" not in one] == ([says] if says else [])
    renewed = kept(replace(mark, expires="2034-06-01"), of_us)
    assert not any("renewal" in one for one in renewed)
