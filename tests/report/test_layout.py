"""How a report is laid out: tables that fit a line, lists of their rows that do not, and the rules of the page."""

from __future__ import annotations

import re
from dataclasses import replace
from importlib.resources import files

import pytest
from hypothesis import given
from hypothesis import strategies as st
from markdown_it import MarkdownIt

from namescreen.plain_text import visible, width
from namescreen.report import Report, to_html, to_markdown
from namescreen.report.layout import WIDEST, Either, Table, laid_out

READER = MarkdownIt("js-default", {"html": True, "linkify": False})
STYLE = files("namescreen.report").joinpath("page.css").read_text("utf-8")
TEXT = st.text(st.characters(codec="utf-8"), max_size=40)


@pytest.fixture(params=["report", "hostile"])
def either(request: pytest.FixtureRequest) -> Report:
    found: Report = request.getfixturevalue(request.param)
    return found


def test_a_narrow_table_stays_one_and_a_wide_one_becomes_a_list() -> None:
    narrow = Table(("Market", "Rows"), (("NL", "12"),))
    assert laid_out([narrow], as_tables=False) == laid_out([narrow], as_tables=True)
    wide = Table(("Mark", "Why", "Goods", "Dates"), (("A", "x" * WIDEST, "pots", "2020-01-01"), ("B", "", "", "none")))
    assert laid_out([wide], as_tables=False).splitlines() == [
        "- **A.**",
        f"  *Why:* {'x' * WIDEST}.",
        "  *Goods:* pots. *Dates:* 2020-01-01.",
        "- **B.** *Dates:* none.",
    ]
    assert laid_out([wide], as_tables=True).startswith("| Mark | Why")


def test_what_a_page_shows_as_a_table_may_be_told_otherwise_in_text() -> None:
    part = Either(Table(("A",), (("whole",),)), ("in short", Table(("A",), (("brief",),))))
    assert "whole" in laid_out([part], as_tables=True)
    assert "brief" not in laid_out([part], as_tables=True)
    text = laid_out([part], as_tables=False)
    assert text.startswith("in short\n\n| A")
    assert "brief" in text


@given(st.lists(st.tuples(TEXT, TEXT, TEXT), min_size=1, max_size=3))
def test_cells_of_a_list_read_back_as_they_are(rows: list[tuple[str, str, str]]) -> None:
    table = Table(("First", "Second" + "d" * WIDEST, "Third"), tuple(rows))
    tokens = READER.parse(laid_out([table], as_tables=False))
    assert sum(token.type == "list_item_open" for token in tokens) == len(rows)
    assert not [token for token in tokens if token.type in ("html_block", "heading_open", "fence", "hr")]
    inline = [token for token in tokens if token.type == "inline"]
    for token, row in zip(inline, rows, strict=True):
        told = "".join(child.content if child.type != "softbreak" else " " for child in token.children or ())
        for text in row:
            assert visible(text) in told


def test_no_table_of_the_markdown_is_wider_than_a_screen(either: Report) -> None:
    """The table at a glance holds long names, and is no wider than these ask for."""
    wide = [line for line in to_markdown(either, full=True).splitlines() if line.startswith("|")]
    assert wide
    assert max(map(width, wide)) <= WIDEST + 40


def test_nothing_has_a_width_that_a_phone_lacks() -> None:
    """Widths are of rooms and letters; the picture alone has one of its own, in a frame that scrolls."""
    fixed = re.compile(r"(?<!max-)(?<!border-)width:\s*(?:[2-9]\d+(?:\.\d+)?r?em|\d{2,}px)")
    assert [rule.split(" {")[0] for rule in STYLE.splitlines() if fixed.search(rule)] == [".picture svg"]
    assert ".picture { display: block; overflow-x: auto; }" in STYLE


@pytest.mark.parametrize(
    "rule",
    [
        "p.lead { break-after: avoid; }",
        "h2 { font-size: 13pt; margin-top: 14pt; break-after: avoid; }",
        "h3 { font-size: 12pt; break-after: avoid; }",
        "tr, .picture, .table.small { break-inside: avoid; }",
        "thead { display: table-header-group; }",
    ],
)
def test_no_page_ends_with_a_heading_or_cuts_a_row(rule: str) -> None:
    assert rule in STYLE.split("@media print")[1]


def test_what_only_announces_stays_with_what_follows(report: Report) -> None:
    page = to_html(report, full=True)
    assert '<p class="lead"><strong>Closest marks</strong></p>' in page
    assert '<p class="lead">Not searched:</p>' in page
    assert re.search(r"<p><strong>Domain and handle\.</strong> Fit", page)  # says all by itself


def test_dates_and_numbers_of_marks_stay_whole(report: Report) -> None:
    page = to_html(report, full=True)
    body = re.sub(r"<svg.*?</svg>", "", page.split("<main>")[1], flags=re.DOTALL)
    assert '<span class="number">2026-11-25</span>' in body
    loose = re.findall(r"(?<![>\w/-])\d{4}-\d\d-\d\d(?![\w/-])", body)
    assert loose == []


def test_very_long_words_may_break(hostile: Report) -> None:
    page = to_html(replace(hostile, product="Brandschutzeinrichtungsgesellschaft"))
    assert "<h1>Name screening: Brandschutzein<wbr" in page


def test_the_page_has_a_dark_form() -> None:
    dark = STYLE.split("(prefers-color-scheme: dark)")[1].split("\n}\n")[0]
    for name in ("--ink", "--soft", "--line", "--band", "--paper"):
        assert f"{name}: #" in dark
    assert "print" not in dark


def test_what_was_found_comes_before_all_else(either: Report) -> None:
    before = to_markdown(either).split("## In short")[0]
    assert len(before.splitlines()) <= 12
