"""Costs, questions, coverage and the CSV form, against values worked out by hand."""

from __future__ import annotations

import csv
import io
import re
from dataclasses import replace
from decimal import Decimal

import pytest

from namescreen.closeness.reason import About
from namescreen.marks.mark import Mark
from namescreen.outcome import NotChecked
from namescreen.plain_text import visible
from namescreen.policy import Level
from namescreen.report import Report, to_csv, to_markdown
from namescreen.report.costs import money, worksheet
from namescreen.report.coverage import partly_searched, unsearched_markets
from namescreen.report.csv import COLUMNS
from namescreen.report.findings import findings, mark_level, matters, words_read
from namescreen.report.glossary import GLOSSARY
from namescreen.report.layout import laid_out
from namescreen.report.mark_tables import REGISTER_HEADS, mark_cells, register_cells
from namescreen.report.model import (
    CloseMark,
    CostItem,
    Costs,
    Distinctiveness,
    Goods,
    LanguageSearched,
    NameEntry,
    ProtectedSign,
    Reading,
    SharedWord,
)
from namescreen.report.questions import MOST, general_questions, questions
from namescreen.report.record import law_page


def test_costs_are_summed_exactly(report: Report) -> None:
    sheet = worksheet(report)
    assert sheet.totals == (("EUR", Decimal("244") + Decimal("27") + 2 * Decimal("130.50")),)
    assert sheet.left == Decimal("600") - Decimal("532")
    assert [line.remark for line in sheet.lines] == [
        "",
        "more than a year old: look again",
        "no date and no source stated",
    ]


def test_tenths_do_not_drift(report: Report) -> None:
    costs = Costs(tuple(CostItem("x", "0.1") for _ in range(3)), "0.3", "EUR")
    assert worksheet(replace(report, costs=costs)).left == 0


def test_currencies_are_not_mixed(report: Report) -> None:
    costs = Costs((CostItem("a", "1", "1", "EUR"), CostItem("b", "2", "1", "GBP")), "9", "EUR")
    sheet = worksheet(replace(report, costs=costs))
    assert sheet.totals == (("EUR", Decimal(1)), ("GBP", Decimal(2)))
    assert sheet.left is None
    assert "another currency" in to_markdown(replace(report, costs=costs))


@pytest.mark.parametrize(("amount", "shown"), [("1234.5", "EUR 1,234.50"), ("600", "EUR 600"), ("0", ("EUR 0"))])
def test_money(amount: str, shown: str) -> None:
    assert money(Decimal(amount), "EUR") == shown


def entry(*marks: CloseMark, **more: object) -> NameEntry:
    skipped = NotChecked("x", "of a reason")
    whole = {
        "name": "Herbwell",
        "words": ("herb", "well"),
        "distinctiveness": skipped,
        "readings": skipped,
        "addresses": skipped,
        "marks": marks,
    }
    return NameEntry(**(whole | more))  # type: ignore[arg-type]


def close(
    text: str,
    overall: float,
    goods: float = 1.0,
    *,
    owner: str = "",
    status: str = "live",
    knockout: bool = False,
) -> CloseMark:
    mark = Mark(text, status=status, owner=owner)
    concern = 1.0 if knockout else overall * (0.5 + 0.5 * goods) / (2 if status == "dead" else 1)
    return CloseMark(mark, overall, overall, 0.1, overall, concern, Goods(goods), knockout)


@pytest.mark.parametrize(
    ("concern", "level"),
    [
        (1.0, Level.SERIOUS),
        (0.62, Level.SERIOUS),
        (0.61, Level.LOOK),
        (0.51, Level.LOOK),
        (0.5, Level.MINOR),
        (0.38, Level.MINOR),
        (0.37, Level.NOTHING),
        (0.0, Level.NOTHING),
    ],
)
def test_levels(concern: float, level: Level) -> None:
    assert mark_level(replace(close("x", 0.5), concern=concern)) is level


def test_marks_that_matter_most_come_first() -> None:
    found = entry(close("far", 0.9, 0.0), close("knock", 0.7, 1.0, knockout=True), close("near", 0.85, 1.0))
    assert [one.mark.text for one in matters(found)] == ["knock", "near", "far"]


def test_questions_follow_the_findings(report: Report) -> None:
    def asked(one: NameEntry) -> str:
        return "\n".join(questions(one, report))

    assert asked(entry()) == ""
    assert asked(entry(close("far", 0.3))) == ""
    assert "is the same name, for goods that overlap" in asked(entry(close("HERB WELL", 1.0, knockout=True)))
    unknown = replace(close("HERB WELL", 1.0, knockout=True), goods=NotChecked("goods", "none are stated"))
    assert "is the same name, and its goods could not be compared:" in asked(entry(unknown))
    live = asked(entry(close("HERBELLE", 0.9)))
    assert "HERBELLE is close in appearance (0.90) and sound (0.90)" in live
    assert "does not say" not in live
    assert "does not say whether it is in force" in asked(entry(close("HERBELLE", 0.9, status="")))
    assert "still in use" in asked(entry(close("HERBELLE", 0.9, status="dead")))
    assert "disclaimer" in asked(entry(distinctiveness=Distinctiveness("descriptive", 0.3)))
    reasons = ('"wry": no tie to the goods was found', '"pot": a word for the goods')
    told = asked(entry(distinctiveness=Distinctiveness("descriptive", 0.3, reasons)))
    assert all(reason in told for reason in reasons)
    assert "protected at all" in asked(entry(distinctiveness=Distinctiveness("generic", 0.0)))
    assert asked(entry(distinctiveness=Distinctiveness("fanciful", 0.9))) == ""
    bad = asked(entry(readings=(Reading("de", "Mist", "dung", "dirt", 3, "inside"),)))
    assert "In German, Herbwell holds Mist, dung" in bad


def test_a_shared_word_is_asked_about_once_and_only_if_it_tells_something(report: Report) -> None:
    def asked(one: NameEntry, goods: str = "kitchen knives") -> str:
        return "\n".join(questions(one, replace(report, goods=goods)))

    crowd = replace(entry(close("HERB 1", 0.3)), shared_words=(SharedWord("herb", 3, 4),))
    assert "The lists have marks with herb for related goods of 3 owners: is the word weak there" in asked(crowd)
    many = replace(crowd, shared_words=(SharedWord("herb", 90, 200, True),))
    assert "of at least 90 owners" in asked(many)
    by_market = (SharedWord("herb", 5, 9, market=market) for market in ("DE", "FR", "GB"))
    wide = replace(crowd, shared_words=(*by_market, SharedWord("herb", 7, 9, market="US")))
    assert "of 5 owners in each of DE, FR and GB and of 7 owners in US: is" in asked(wide)
    family = [close(f"HERB {at}", 0.3, owner="One Owner") for at in range(3)]
    assert "One Owner holds 3 close marks with the word herb" in asked(entry(*family))
    again = tuple(Mark("HERB", status="live", owner="One Owner") for _ in range(3))
    assert "family" not in asked(entry(replace(close("HERB", 0.3, owner="One Owner"), others=again, marks=4)))
    assert asked(entry(*family), "pots for herbs") == ""  # it names the goods


def test_an_identical_mark_has_a_question_of_its_own(report: Report) -> None:
    """By goods, by standing, and by where it holds; and never whether an examiner would hold the two apart."""

    def asked(goods: float = 0.0, bites: bool | None = None, **mark: str) -> str:
        found = close("HERB WELL", 1.0, goods, knockout=goods > 0.6 and bites is not False)
        whole = Mark("HERB WELL", **{"status": "live", **mark})  # type: ignore[arg-type]
        return "\n".join(questions(entry(replace(found, appearance=1.0, mark=whole, bites=bites)), report))

    question = asked()
    assert "the same name, for other goods: these have nothing in common with ours" in question
    question = asked(0.2)
    assert question.index("held similar") < question.index("known well enough to be protected beyond them")
    assert "the same name, for goods that overlap" in asked(1.0)
    assert "holds outside our markets: could it reach them" in asked(1.0, bites=False)
    assert "only applied for: when will it be decided?" in asked(1.0, status="pending")
    assert "or want of its use" in asked(1.0, filed="2015-01-01", registered="2015-06-01")
    assert "want of its use" not in asked(1.0, filed="2023-01-01", registered="2023-06-01")
    for goods in (0.0, 0.5, 1.0):
        for bites in (True, False, None):
            assert "examiner" not in asked(goods, bites)
    far = [close(f"HERB {at}", 0.9) for at in range(4)]
    same = replace(close("HERB WELL", 1.0, 0.0), appearance=1.0, concern=0.55)
    assert "is the same name" in "\n".join(questions(entry(*far, same), report))  # however many ask for more


@pytest.mark.parametrize(
    ("markets", "says"),
    [
        (("US",), "would an examiner refuse Herbwell because of it"),
        (("DE", "FR"), "would its owner have good grounds to oppose Herbwell"),
        (("DE", "GB"), "would its owner have good grounds to oppose Herbwell"),
        (("US", "DE"), "would an examiner refuse Herbwell because of it (US), or its owner have good grounds"),
        ((), "would it bar Herbwell where we sell"),
        (("ZZ",), "would it bar Herbwell in ZZ"),
    ],
)
def test_the_question_speaks_the_law_of_the_markets(report: Report, markets: tuple[str, ...], says: str) -> None:
    """US: 15 USC 1052(d), the examiner refuses; EU and UK: owners oppose (EU Regulation 2017/1001, article 46; Trade
    Marks Act 1994, section 38)."""
    assert says in questions(entry(close("HERBELLE", 0.9)), replace(report, markets=markets))[0]


def test_the_law_page_has_the_offices_of_the_markets_and_says_what_it_does_not_know(report: Report) -> None:
    page = laid_out(law_page(replace(report, markets=("US", "DE", "ZZ"))), as_tables=True)
    assert "from memory" in page
    assert all(office in page for office in ("European Union", "Germany", "United States", "Priority"))
    assert "United Kingdom" not in page
    assert re.search(r"\| ZZ +\| not described here: ask the office", page)


@pytest.mark.parametrize(
    ("appearance", "sound", "meaning", "says"),
    [
        (0.4, 0.9, 0.2, "close in sound (0.90) though spelled otherwise"),
        (0.9, 0.4, 0.2, "close in appearance (0.90) though it sounds otherwise"),
        (0.2, 0.1, 0.9, "says much the same in other words, by meaning (0.90)"),
        (
            0.9,
            0.9,
            0.9,
            "close in appearance (0.90), sound (0.90) and meaning (0.90): would its owner",
        ),
        (0.3, 0.3, 0.3, "is close taken as a whole (0.70): would its owner"),
    ],
)
def test_the_question_asks_what_the_likeness_raises(
    report: Report, appearance: float, sound: float, meaning: float, says: str
) -> None:
    found = replace(close("x", 0.7), appearance=appearance, sound=sound, meaning=meaning)
    assert says in questions(entry(found), report)[0]


def test_a_meaning_that_is_not_known_is_not_asked_about(report: Report) -> None:
    found = replace(close("x", 0.7), meaning=NotChecked("meaning", "no word is known"))
    assert "meaning" not in questions(entry(found), report)[0]


def test_a_word_of_several_meanings_is_asked_about_once(report: Report) -> None:
    meanings = [("rubbish", "dirt", 2), ("dung", "excrement", 3)]
    found = tuple(Reading("de", "Mist", meaning, kind, severity, "exact") for meaning, kind, severity in meanings)
    asked = questions(entry(readings=found), report)
    assert len(asked) == 1
    assert "Mist, dung: do native speakers notice it, and could an office object" in asked[0]
    assert [(one.meaning, one.severity) for one in words_read(entry(readings=found))] == [(("dung; rubbish"), 3)]


def test_only_offensive_readings_raise_public_morality(report: Report) -> None:
    for kind, says in (("vulgar", "public morality"), ("failure", "put it off")):
        reading = Reading("de", "x", "y", kind, 3, "exact")
        assert says.replace("it off", "them off") in questions(entry(readings=(reading,)), report)[0]


@pytest.mark.parametrize(
    ("match", "language", "says"),
    [
        ("exact, the word x", "de", "reads as"),
        ("heard as, the whole name, read in the language", "de", "reads as"),
        ("inside, letters 2 to 6, in the middle", "de", "holds"),
        ("heard as, the word x, read in the language", "de", "recalls"),
        ("one letter away, the whole name", "de", "recalls"),
        ("exact, the whole name", "tr", "reads as"),  # no language of the markets
    ],
)
def test_morality_is_asked_of_words_that_buyers_of_the_markets_meet_as_words(
    report: Report, match: str, language: str, says: str
) -> None:
    """What is contrary to morality is judged by the public of the territory, with what it understands (EU Regulation
    2017/1001, article 7(1)(f) and (2); EUIPO Guidelines, part B, section 4, chapter 7; from memory)."""
    found = (Reading(language, "x", "y", "vulgar", 3, match),)
    (asked,) = questions(entry(readings=found), replace(report, markets=("DE",), languages=()))
    assert says in asked
    assert ("public morality" in asked) == (says == "reads as" and language == "de")


def test_questions_are_few(hostile: Report) -> None:
    for one in hostile.names:
        assert len(questions(one, hostile)) <= MOST


def test_questions_on_the_whole_list(report: Report) -> None:
    asked = general_questions(report)
    assert asked[0].startswith("Is class 21 right")
    assert asked[1].startswith("DE and GB are markets of the brief")
    unclassed = general_questions(replace(report, classes=()))[0]
    assert unclassed.startswith("Which classes")
    assert "; likely 21, from the goods, and the office decides." in unclassed


@pytest.mark.parametrize(
    ("offices", "missing", "partly"),
    [
        ((), ("NL", "DE", "GB"), ()),
        (("BX",), ("DE", "GB"), ()),
        (("EM",), ("NL", "DE", "GB"), ("NL", "DE")),
        (("DE", "UK"), ("NL",), ()),
        (("bx", "de", "gb"), (), ()),
    ],
)
def test_markets_searched(
    report: Report, offices: tuple[str, ...], missing: tuple[str, ...], partly: tuple[str, ...]
) -> None:
    searched = replace(report, lists=(replace(report.lists[0], offices=offices),))
    assert unsearched_markets(searched) == missing
    assert partly_searched(searched) == partly


def test_a_mark_says_only_what_is_known_of_it() -> None:
    assert register_cells(Mark("Rootmark")) == ("Rootmark", *["not stated"] * 7, "")
    assert mark_cells(close("Rootmark", 0.6))[1] == "look closer: no reason given"
    far = replace(close("x", 0.1), reasons=("Appearance: little alike", "Sound: little alike"))
    far = replace(far, about=(About.APPEARANCE, About.SOUND))
    assert mark_cells(far)[1] == "nothing found: little alike"
    near = replace(close("x", 0.9, knockout=True), reasons=("Sound: close", "Meaning: little alike"))
    near = replace(near, about=(About.SOUND, About.MEANING))
    assert mark_cells(near)[1] == "knockout: Sound: close"


@pytest.mark.parametrize(
    ("office", "number", "shown"),
    [("NL", "12", "NL 12"), ("NL", "NL-12", "NL-12"), ("", "12", "12"), ("NL", "", "not stated")],
)
def test_numbers_are_cited_with_their_office_once(office: str, number: str, shown: str) -> None:
    found = close("x", 0.9)
    cited = replace(found, mark=replace(found.mark, office=office, number=number))
    assert register_cells(cited.mark)[REGISTER_HEADS.index("Number")] == shown


def test_csv_has_a_row_for_every_name_and_mark(report: Report, hostile: Report) -> None:
    for one in (report, hostile):
        rows = list(csv.reader(io.StringIO(to_csv(one), newline="")))
        assert tuple(rows[0]) == COLUMNS
        assert {len(row) for row in rows} == {len(COLUMNS)}
        counts = [row[COLUMNS.index("marks_of_these_words")] for row in rows[1:]]
        assert sum(int(count or 0) for count in counts) == sum(
            found.marks for entry in one.names for found in matters(entry)
        )
        assert len(rows) == 1 + sum(max(1, len(matters(entry))) for entry in one.names)
        shown = [visible(entry.name) for entry in one.names]
        names = {f"'{name}" if name[0] in "=+-@" else name for name in shown}
        assert {row[0] for row in rows[1:]} == names
        assert not [text for row in rows for text in row if text.startswith(("=", "+", "-", "@"))]


def test_every_term_names_its_source() -> None:
    assert all(term.meaning and term.source for term in GLOSSARY)
    assert [term.term for term in GLOSSARY] == sorted((term.term for term in GLOSSARY), key=str.casefold)


def test_a_protected_sign_is_serious_and_asked_about_whatever_the_score(report: Report) -> None:
    sign = ProtectedSign("olympic", True, "a word kept for the Olympic movement", "the national Olympic committee")
    held = Distinctiveness("fanciful", 0.9, (), "A coined word is usually the strongest kind", (sign,))
    one = replace(report.names[0], distinctiveness=held)
    found = next(each for each in findings(one) if each.check == "distinctiveness")
    assert (found.level, "olympic" in found.evidence) == (Level.SERIOUS, True)
    asked = " ".join(questions(one, report))
    assert "a word kept for the Olympic movement" in asked
    assert "Ask also the national Olympic committee." in asked


def test_a_name_that_holds_a_kept_sign_stands_with_the_knockouts() -> None:
    sign = ProtectedSign("red cross", True, "words of an emblem", "the office")
    finding = findings(entry(distinctiveness=Distinctiveness("descriptive", 0.4, protected=(sign,))))[1]
    assert finding.bars
    assert finding.level is Level.SERIOUS


def test_a_shared_word_is_asked_about_before_a_shared_idea(report: Report) -> None:
    near = replace(close("J. HARGREAVES", 0.67), appearance=0.5, sound=0.5, meaning=0.94)
    (question,) = questions(entry(near, name="Hargreaves", words=("hargreaves",)), report)
    assert "J. HARGREAVES holds Hargreaves whole" in question
    assert "shared idea" not in question


def test_languages_read_in_one_way_stand_together(report: Report) -> None:
    """26 languages once took a paragraph that said the same of each."""
    by_rules, heard = "read aloud by its spelling rules", "heard by its transcription only"
    languages = tuple(
        LanguageSearched(code, how, words, unlucky, ("word tables",))
        for code, how, words, unlucky in (
            ("de", by_rules, 30_000, 974), ("ja", heard, 30_000, 385), ("da", by_rules, 28_931, 767),
        )
    )  # fmt: skip
    text = to_markdown(replace(report, languages_searched=languages))
    told = " ".join(text.partition("Languages looked at, and with what:")[2].partition("Not searched")[0].split())
    assert told.count(by_rules[1:]) == told.count(heard[1:]) == 1
    assert "German and Danish" in told
    assert "28,931 to 30,000" in told
    assert "767 to 974" in told
    assert "Japanese" in told
