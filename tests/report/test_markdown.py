"""The Markdown form, parsed back and compared with the data it was drawn from."""

from __future__ import annotations

import itertools
import os
import re
from collections.abc import Iterator
from dataclasses import replace

import pytest
from markdown_it import MarkdownIt
from markdown_it.token import Token

from namescreen.marks.mark import Mark
from namescreen.outcome import DISCLAIMER, NotChecked
from namescreen.plain_text import shorten, visible
from namescreen.report import Report, changes, to_html, to_markdown
from namescreen.report.findings import findings, matters, worst_title
from namescreen.report.mark_choice import marks_shown
from namescreen.report.mark_tables import MARK_HEADS, REGISTER_HEADS, mark_cells, register_cells
from namescreen.report.model import CHECKS, Distinctiveness, MarketView
from namescreen.report.sensitivity import standings

READER = MarkdownIt("js-default", {"html": True, "linkify": False})
HARMLESS = {
    "text",
    "text_special",
    "strong_open",
    "strong_close",
    "em_open",
    "em_close",
    "code_inline",
    "image",
}


def tables(tokens: list[Token]) -> Iterator[list[list[str]]]:
    rows: list[list[str]] = []
    inside = False
    for token in tokens:
        if token.type == "table_open":
            rows, inside = [], True
        elif token.type == "table_close":
            inside = False
            yield rows
        elif inside and token.type == "tr_open":
            rows.append([])
        elif inside and token.type == "inline":
            rows[-1].append("".join(child.content for child in token.children or []))


def headings(tokens: list[Token]) -> list[tuple[str, str]]:
    return [
        (token.tag, "".join(child.content for child in following.children or []))
        for token, following in itertools.pairwise(tokens)
        if token.type == "heading_open"
    ]


@pytest.fixture(params=["report", "hostile"])
def either(request: pytest.FixtureRequest) -> Report:
    found: Report = request.getfixturevalue(request.param)
    return found


def test_sections_stand_in_their_order(either: Report) -> None:
    told = headings(READER.parse(to_markdown(either, figure="figure.svg")))
    assert told[0] == ("h1", f"Name screening: {visible(either.product)}")
    assert [text for tag, text in told if tag == "h2"] == [
        "In short",
        "Shortlist at a glance",
        "Next steps",
        "Questions on the whole list",
        "The names, one by one",
        "Side by side, for the decision",
        "Record of the search",
        "Costs worksheet",
        "The law on earlier marks, by market",
        "Terms used",
    ]
    assert [text for tag, text in told if tag == "h3"] == [shorten(row.name, 120) for row in standings(either)]


def test_cells_read_back_as_the_data(either: Report) -> None:
    found = list(tables(READER.parse(to_markdown(either, figure="figure.svg", full=True, as_tables=True))))
    entries = {entry.name: entry for entry in either.names}
    order = [entries[row.name] for row in standings(either)]
    glance = found[0]
    assert glance[0] == ["Name", "Worst finding", *CHECKS.values()]
    for cells, entry in zip(glance[1:], order, strict=True):
        assert cells == [
            shorten(entry.name, 60),
            worst_title(entry),
            *(visible(one.words) for one in findings(entry)),
        ]
    marks = [rows for rows in found if rows[0][0] == "Mark"]
    with_marks = [entry for entry in order if matters(entry)]
    assert len(marks) == len(with_marks)
    for rows, entry in zip(marks, with_marks, strict=True):
        whole = [mark_cells(one, either.date, either.markets) for one in marks_shown(entry)]
        assert rows[0] == list(MARK_HEADS[: len(rows[0])])
        own = [row for row in rows[1:] if "a further mark of" not in row[1]]
        assert own == [[*map(visible, cells[: len(rows[0])])] for cells in whole]
        further = [mark for one in marks_shown(entry) for mark in one.others[:3]]
        for row, mark in zip([row for row in rows[1:] if row not in own], further, strict=True):
            facts = dict(zip(REGISTER_HEADS, map(visible, register_cells(mark)), strict=True))
            assert row[0].startswith(facts["In the register"])
            assert facts["Owner"] == "not stated" or facts["Owner"] in row[0]
            assert len(rows[0]) < len(MARK_HEADS) or facts["Status"] in ("not stated", row[-1].split("; ")[0])
    lists = next(rows for rows in found if rows[0][0] == "List")
    assert [row[0] for row in lists[1:]] == [visible(item.name) for item in either.lists]
    assert [row[-1] for row in lists[1:]] == [item.sha256 for item in either.lists]


def test_marks_of_the_same_words_that_are_not_listed_are_counted(report: Report) -> None:
    text = to_markdown(report, full=True, as_tables=True)
    assert re.search(r"\| Herb Well \(NL 2002, Well 2 Ltd\) +\|[^|]+\|[^|]+\| class 32[^|]*\| in force", text)
    assert "NL 2003" not in text
    assert "Not listed here: 36 more marks like HERB WELL." in text  # 40, the one itself and three


def test_nothing_but_text_comes_of_the_data(either: Report) -> None:
    tokens = READER.parse(to_markdown(either, figure="figure.svg"))
    assert not [token for token in tokens if token.type in ("html_block", "fence", "blockquote_open", "hr")]
    inline = [child for token in tokens for child in token.children or []]
    assert {child.type for child in inline} <= {*HARMLESS, "softbreak"}
    images = [child for child in inline if child.type == "image"]
    assert [image.attrs["src"] for image in images] == ["figure.svg"]
    assert [child.content for child in inline if child.type == "code_inline"] <= [
        "--since",
        "[[costs.items]]",
    ]


def test_no_character_turns_the_reading_order(hostile: Report) -> None:
    text = to_markdown(hostile, figure="figure.svg")
    assert not re.search("[\u202a-\u202e\u2066-\u2069\u200b\u200e\u200f\ufeff\x00-\x09\x0b-\x1f\x7f-\x9f]", text)
    assert "⟨U+202E⟩" in text


def test_the_disclaimer_stands_before_the_first_score_and_at_the_foot(report: Report) -> None:
    text = to_markdown(report)
    assert text.index(DISCLAIMER) < re.search(r"0\.\d\d", text).start()  # type: ignore[union-attr]
    assert text.rstrip().endswith(f"**{DISCLAIMER}**")
    assert text.count(DISCLAIMER) == 2
    printed = to_html(report)
    assert f'@bottom-left {{ content: "{DISCLAIMER}"' in printed  # at the foot of every printed page


def test_in_short_names_all_that_is_serious_and_all_that_is_not(report: Report) -> None:
    short = to_markdown(report).split("## In short")[1].split("##")[0]
    order = standings(report)
    for row in order:
        assert row.name in short.replace("\\", ""), row
    assert "Mistel (de: Mist, dung; rubbish)" in short
    free = "2 have nothing graver than minor in that list (Verdanza and Thymekeeper)"
    assert free in short  # and not of what was not looked at


def test_the_share_of_decided_pairs_is_told_only_of_comparable_marks(report: Report) -> None:
    """It is about pairs for the same or close goods: not about a dead mark, other goods or other markets; and it is no
    news of a minor one."""
    told = "Of decided pairs as close as"
    sections = {part.splitlines()[0]: part for part in to_markdown(report, full=True).split("\n### ")[1:]}
    assert told in sections["Herbwell"]
    assert told not in sections["Mistel"]  # its mark is dead
    assert told not in sections["Thymekeeper"]  # TIMEKEEPER is for other goods, and Tyme minor


def test_a_name_that_the_markets_see_differently_has_a_table(report: Report) -> None:
    views = (MarketView("US", "surname", 0.23, "Lanham Act s. 2(e)(4)"), MarketView("EU", "arbitrary", 0.76))
    found = Distinctiveness("descriptive", 0.23, ("a surname",), "", (), "surname", (), views)
    entry = replace(report.names[0], distinctiveness=found)
    text = to_markdown(replace(report, names=(entry,)), as_tables=True)
    assert re.search(r"\| EU +\| a new compound +\| 0.76 +\| no bar found", text)
    assert "serious: surname (0.23) in US; no bar found in EU" in text
    assert "every language of the Union" not in text
    states = replace(entry, distinctiveness=replace(found, markets=(*views, MarketView("BX", "surname", 0.23))))
    text = to_markdown(replace(report, names=(states,)))
    assert "Benelux (BX)" in text
    assert text.count("An EU mark is judged in every language of the Union") == 1
    free = replace(found, markets=(MarketView("DE", "suggestive", 0.5), MarketView("FR", "arbitrary", 0.6)))
    text = to_markdown(replace(report, names=(replace(entry, distinctiveness=free),)))
    assert "By market: suggestive in DE and a new compound in FR; no bar found in any." in text
    assert "Under the law of" not in text
    alike = replace(found, markets=views[:1])
    assert "Under the law of" not in to_markdown(replace(report, names=(replace(entry, distinctiveness=alike),)))


def test_the_glance_says_level_and_evidence(report: Report) -> None:
    rows = {row[0]: row[1:] for row in next(tables(READER.parse(to_markdown(report, as_tables=True))))}
    assert rows["Herbwell"] == [
        "knockout",
        "knockout: HERB WELL (0.99); serious: Herbelle (0.79)",
        "look closer: descriptive (0.31)",
        "nothing found: no bad word, in 3 languages",
        "not looked up: fit 0.82",
    ]
    assert rows["Mistel"][3] == "serious: de: Mist, dung; rubbish"
    assert rows["Rootlark"][4] == "minor: fit 0.90; 1 of 2 taken"
    assert rows["Thymekeeper"][1] == "minor: Tyme (0.52)"
    assert rows["Sprig & Sip"] == ["not checked"] * 5


def test_columns_that_no_mark_states_are_left_out_and_named(report: Report) -> None:
    typed = tuple(
        replace(entry, marks=tuple(replace(one, mark=Mark(one.mark.text), others=()) for one in entry.marks))
        if not isinstance(entry.marks, NotChecked)
        else entry
        for entry in report.names
    )
    text = to_markdown(replace(report, names=typed), full=True, as_tables=True)
    section = text.split("### Herbwell")[1].split("\n### ")[0]
    heads = next(tables(READER.parse(section)))[0]
    assert heads == list(MARK_HEADS[:-1])
    assert text.count("Your lists state nothing of number, owner, classes, goods, status, dates or where") == 1
    assert "not stated in the list" not in section
    assert "whether it is in force" not in section
    assert "*In the register:* " in to_markdown(report)


def test_in_short_says_of_a_knockout_whether_goods_were_compared(report: Report) -> None:
    assert "(knockout: HERB WELL; serious" not in to_markdown(report)
    assert "Herbwell (knockout: HERB WELL)" in to_markdown(report)
    unknown = NotChecked("goods", "none are stated")
    names = tuple(
        replace(entry, marks=tuple(replace(found, goods=unknown) for found in entry.marks))
        if not isinstance(entry.marks, NotChecked)
        else entry
        for entry in report.names
    )
    text = to_markdown(replace(report, names=names))
    assert "(knockout: HERB WELL, the goods could not be compared)" in text


def test_not_checked_never_reads_as_nothing_found(report: Report) -> None:
    section = to_markdown(report).split("### Sprig & Sip")[1].split("\n### ")[0]
    assert section.count("Not checked, because") == 4
    assert "Nothing found" not in section


def test_without_a_file_the_picture_is_left_out_and_the_report_says_so(report: Report) -> None:
    text = to_markdown(report)
    assert "![" not in text
    assert "picture of the names against the checks is left out" in text


@pytest.mark.parametrize(
    ("path", "destination"),
    [
        ("my (best) [r].svg", "my%20%28best%29%20%5Br%5D.svg"),
        (os.fsdecode(b"r\xff.svg"), "r%FF.svg"),  # a file name need not be UTF-8
    ],
)
def test_picture_path_that_is_no_plain_link(report: Report, path: str, destination: str) -> None:
    tokens = READER.parse(to_markdown(report, figure=path))
    sources = [child.attrs["src"] for token in tokens for child in token.children or [] if child.type == "image"]
    assert sources == [destination]


def test_an_empty_report_says_what_is_missing() -> None:
    bare = Report("", "", (), (), (), (), (), "2026-11-25", "--date", "0.1.0", ("namescreen", "report"))
    text = to_markdown(bare)
    assert "0 names were compared with no list of marks" in text
    assert "Costs worksheet" not in text
    assert "product not stated" in text


def test_every_check_missing(report: Report) -> None:
    skipped = NotChecked("marks", "of a reason")
    names = tuple(
        replace(entry, marks=skipped, distinctiveness=skipped, readings=skipped, addresses=skipped)
        for entry in report.names
    )
    text = to_markdown(replace(report, names=names))
    assert "Not checked for every name" in text


def test_changes_are_told(report: Report) -> None:
    text = to_markdown(report, changes=changes(report, replace(report, date="2026-12-25")))
    assert "## Changes since 2026-11-25" in text
    assert "None." in text
    assert "{" not in text
    assert "- Since the report of 2026-11-25: no change." in text
    first = changes(replace(report, names=report.names[2:], version="0.0.9"), report)
    text = to_markdown(report, changes=first)
    assert "- Since the report of 2026-11-25: basis changed (1) and name added (2)." in text
    assert "{" not in text
    rows = next(rows for rows in tables(READER.parse(text)) if rows[0] == ["About", "Kind", "Change"])
    assert rows[1:] == [
        ["the report", "basis changed", "program version: 0.0.9 before, 0.1.0 now"],
        ["Herbwell", "name added", "was not in the earlier report"],
        ["Thymekeeper", "name added", "was not in the earlier report"],
    ]


def test_a_long_product_is_cut_in_the_title_and_told_below(report: Report) -> None:
    product = "A planter of glazed stoneware that waters herbs for two weeks, " * 3
    first, *rest = to_markdown(replace(report, product=product)).splitlines()
    assert first.startswith("# Name screening: A planter of glazed stoneware")
    assert len(first) < 120
    assert any(line.startswith("- Product: A planter") and line.endswith("two weeks,") for line in rest)
    assert "- Product:" not in to_markdown(replace(report, product="A planter"))


def test_the_first_lines_give_no_comfort_where_marks_were_not_looked_at(report: Report) -> None:
    unlooked = NotChecked("close_marks", "no list of marks was given")
    names = tuple(replace(entry, marks=unlooked) for entry in report.names)
    short = to_markdown(replace(report, names=names, lists=())).split("## In short")[1].split("##")[0]
    assert "nothing graver" not in short
    assert "nothing is known, as existing marks were not checked" in short
    assert "No name can be put first: existing marks were not checked." in short
    assert "stands first" not in short


def test_the_first_three_sentences_say_what_was_found_what_falls_and_what_is_open(report: Report) -> None:
    lines = to_markdown(report).split("## In short\n\n")[1].splitlines()
    assert [line.split("**")[1] for line in lines[:3]] == ["Found.", "Falls.", "Open."]
    assert "Herbwell (knockout: HERB WELL)" in lines[1]
    assert "Sprig & Sip" in lines[2].replace("\\", "")  # of which nothing was checked
    assert "Not checked for" in lines[2]


def test_a_name_that_falls_takes_a_few_lines_unless_its_page_is_asked_for(report: Report) -> None:
    """Why it falls, by what and whose, what else is near, and what to ask; the rest stands in its full page."""
    short, full = (
        {part.splitlines()[0]: part for part in to_markdown(report, full=full).split("\n## ")[5].split("\n### ")}
        for full in (False, True)
    )
    section = short["Herbwell"]
    assert section.startswith("Herbwell\n\nFalls: **knockout")
    assert "HERB WELL (NL 1004211, Delta Pots B.V.): knockout" in section
    assert "If it is to be kept, ask:" in section
    assert len(section.splitlines()) < 15 < len(full["Herbwell"].splitlines())
    assert short["Mistel"] == full["Mistel"]  # which does not fall
    alone = to_markdown(replace(report, names=report.names[:1]))
    assert "**Closest marks**" in alone  # one name is what the report is about
    assert "--full" not in alone
