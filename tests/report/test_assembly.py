"""From the records of other rooms to the report's own."""

from __future__ import annotations

import datetime
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

from namescreen.addresses import Domain, Estimate, Handle
from namescreen.brief import Brief, Concept, CostItem, Costs
from namescreen.closeness import compare
from namescreen.connotations import Reading
from namescreen.goods import Distinctiveness, Relatedness
from namescreen.marks import Mark
from namescreen.outcome import NotChecked
from namescreen.register import read_register
from namescreen.report import Report, assemble
from namescreen.report.mark_tables import mark_cells
from namescreen.report.model import Weights
from namescreen.screening import CloseMark, Screening, screen

MARKS = """mark,number,office,classes,status,filed
Herb Well,1,NL,21,live,2020-01-31
,2,NL,21,live,2020-01-31
Turnip,3,DE,"7, 9",dead,2024-05-06
"""


def screening(name: str = "Fernsill") -> Screening:
    near = compare(name, "Femsill")
    mark = CloseMark(Mark("Femsill", number="9"), near, Relatedness(1 / 3, ("both pots",)), False)
    return Screening(
        name,
        (mark,),
        Distinctiveness("arbitrary", 2 / 3, ("because",), "hint"),
        (Reading("de", "Mist", None, "dirt", 3, "inside", "the word mist", 4.0, "table", 3),),
        (),
        Estimate(
            0.5,
            (Domain("fernsill.nl", "fernsill.nl", "joined"), Domain("xn--frnsill-cxa.nl", "férnsill.nl", "accented")),
            (Handle("fernsill", 15, ""), Handle("fernsill", 30, ""), Handle("ferns", 5, "ill")),
            "fernsill",
            0.9,
            8,
            ("fernsil", "ferncill"),
            ("Short.",),
        ),
        (NotChecked("readings", "x"),),
    )


def assembled(brief: Brief, *found: Screening, mild: bool = False) -> Report:
    return assemble(brief, found, None, date="2026-11-25", date_from="--date", version="1", command=("x",), mild=mild)


def test_scores_are_kept_to_four_places() -> None:
    entry = assembled(Brief(), screening()).names[0]
    assert not isinstance(entry.distinctiveness, NotChecked)
    assert entry.distinctiveness.score == 0.6667
    assert not isinstance(entry.marks, NotChecked)
    found = entry.marks[0]
    assert [round(value, 4) for value in (found.overall, found.concern)] == [found.overall, found.concern]
    assert found.concern == round(compare("Fernsill", "Femsill").overall * (0.5 + 0.5 / 3), 4)


def test_a_meaning_that_is_not_known_is_not_checked() -> None:
    entry = assembled(Brief(), screening("Xyzzqua")).names[0]
    assert not isinstance(entry.marks, NotChecked)
    assert isinstance(entry.marks[0].meaning, NotChecked)
    assert any("meaning not checked: coined" in cell for cell in mark_cells(entry.marks[0]))


def test_readings_are_masked_when_asked() -> None:
    plain = assembled(Brief(), screening()).names[0]
    mild = assembled(Brief(), screening(), mild=True).names[0]
    assert not isinstance(plain.readings, NotChecked)
    assert not isinstance(mild.readings, NotChecked)
    assert plain.readings[0].word == "Mist"
    assert plain.readings[0].match == "inside, the word mist"
    assert mild.readings[0].word == "M***"


def test_a_word_has_one_meaning_wherever_it_is_told() -> None:
    """What distinctiveness reads by is told among the words of other languages, too."""
    naming = replace(Brief(), goods="backpacks", languages=("es",))
    (found,) = screen(["Mochila"], None, goods=naming.goods, languages=naming.languages)
    entry = assembled(naming, found).names[0]
    assert not isinstance(entry.readings, NotChecked)
    assert [one.language for one in entry.readings if "pack" in one.meaning] == ["es"]


def test_a_place_is_not_said_to_be_unknown() -> None:
    (found,) = screen(["Trieste"], None, goods="coffee", languages=["it"])
    assert assembled(Brief(), found).names[0].construction in ("one word, a place", "one English word")


def test_addresses_say_how_they_are_made_and_what_they_are_for() -> None:
    entry = assembled(Brief(), screening()).names[0]
    assert not isinstance(entry.addresses, NotChecked)
    assert [(one.kind, one.text, one.how) for one in entry.addresses.items] == [
        ("domain", "fernsill.nl", "joined"),
        ("domain", "férnsill.nl", "accented; registered as xn--frnsill-cxa.nl"),
        ("handle", "fernsill", "within 15 or 30 characters"),
        ("handle", "ferns", "within 5 characters; loses ill"),
    ]
    assert {one.taken for one in entry.addresses.items} == {None}
    assert entry.addresses.reasons == ("Short.",)
    assert entry.addresses.slips == ("fernsil", "ferncill")


def test_the_construction_comes_from_the_lexicon() -> None:
    joined, apart, coined, small = (
        assembled(Brief(), screening(name)).names[0]
        for name in ("Fernsill", "Morning Fountain", "Xyzzqua", "The Xyzzqua Fountain")
    )
    assert joined.construction == "fern and sill joined"
    assert joined.meaning == ""
    assert apart.construction == "morning and fountain side by side"
    assert coined.construction == "one word, in no English dictionary at hand"
    assert small.construction.endswith("side by side; in no English dictionary at hand: xyzzqua")
    assert coined.meaning == ""


def test_the_brief_is_taken_over_whole() -> None:
    day = datetime.date(2026, 5, 31)
    costs = Costs("EUR", Decimal("600.00"), (CostItem("fee", Decimal("27.50"), Decimal("2"), "", day, "page"),))
    brief = Brief(
        product="Planter", goods="pots", classes=(21,), concepts=(Concept("herb"),), markets=("NL",), costs=costs,
        comparison_weights={"marks": 4, "readings": 0}, seed=7,
    )  # fmt: skip
    report = assembled(brief, screening())
    assert (report.product, report.goods, report.classes, report.concepts) == ("Planter", "pots", (21,), ("herb",))
    assert report.weights == Weights(4.0, 1.0, 0.0, 1.0)
    assert report.costs.budget == "600"
    assert (report.costs.items[0].figure, report.costs.items[0].dated) == ("27.5", "2026-05-31")
    assert report.seed == 7


def test_lists_say_what_was_read_and_what_they_cover(tmp_path: Path) -> None:
    for name in ("one.csv", "two.csv"):
        (tmp_path / name).write_text(MARKS if name == "one.csv" else "mark\nPlain\n", "utf-8")
    register = read_register([tmp_path / "one.csv", tmp_path / "two.csv"])
    brief = Brief(source=tmp_path / "brief.toml")
    report = assemble(brief, [], register, date="2026-11-25", date_from="--date", version="1", command=("x",))
    one, two = report.lists
    assert (one.name, two.name) == ("one.csv", "two.csv")
    assert (one.classes, one.offices, one.latest) == ((7, 9, 21), ("DE", "NL"), "2024-05-06")
    assert (two.classes, two.offices, two.latest) == ((), (), "")
    assert one.rows_read == 3
    assert one.rows_left_out + one.without_words == 1
    assert len(one.sha256) == 64


def test_a_meaning_is_told_only_where_it_explains_the_whole_name() -> None:
    """A nearby word of the lexicon (ember, a fragment) explains nothing; a definition of the whole does."""
    from namescreen.report.assembly import entry_of

    assert entry_of(screening("Slack Water")).meaning == "slack water (still time between the tides)"
    for name in ("Copper Harbour", "Ember", "Heron", "Otter"):
        assert entry_of(screening(name)).meaning == ""
