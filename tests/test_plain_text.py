"""Escaping: whatever a text holds, the Markdown made of it shows exactly that text and nothing more."""

from __future__ import annotations

import csv
import unicodedata

import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from markdown_it import MarkdownIt
from markdown_it.token import Token

from namescreen.plain_text import (
    cell,
    clauses,
    csv_line,
    in_one_sentence,
    number,
    number_beside,
    plural,
    shorten,
    some,
    table,
    visible,
    width,
)

# The most that a reader's program may understand: raw HTML, tables, strikethrough.
READER = MarkdownIt("js-default", {"html": True, "linkify": False})
TEXT = st.text(st.one_of(st.sampled_from("\\`*_{}[]()<>#+-.!|~&$@:/=\"'^ \n\t1a"), st.characters()), max_size=40)


def shown(tokens: list[Token]) -> str:
    """The text of inline tokens, failing if any of them is anything but text."""
    kinds = {token.type for token in tokens}
    assert kinds <= {"text", "text_special"}, kinds
    return "".join(token.content for token in tokens)


def rows_of(markdown: str) -> list[list[str]]:
    tokens = READER.parse(markdown)
    rows: list[list[str]] = []
    for token in tokens:
        if token.type == "tr_open":
            rows.append([])
        elif token.type == "inline":
            rows[-1].append(shown(token.children or []))
    return rows


@given(st.lists(st.lists(TEXT, min_size=3, max_size=3), max_size=4))
@example([["a|b", "\\|", "\\"], ["`x`", "<b>", "[a](b)"], ["&amp;", "---", "~~x~~"]])
def test_table_reads_back_as_its_cells(rows: list[list[str]]) -> None:
    assert rows_of(table(("One", "Two", "Three"), rows)) == [
        ["One", "Two", "Three"],
        *[[visible(text) for text in row] for row in rows],
    ]


@given(TEXT)
@example("1. one")
@example("---")
@example("- a")
@example("# a")
@example("=")
def test_line_reads_back_as_one_paragraph_of_text(text: str) -> None:
    tokens = READER.parse(cell(text))
    if not visible(text):
        assert not tokens
        return
    assert [token.type for token in tokens] == ["paragraph_open", "inline", "paragraph_close"]
    assert shown(tokens[1].children or []) == visible(text)


@given(TEXT)
def test_visible_text_is_one_line_without_controls(text: str) -> None:
    seen = visible(text)
    assert visible(seen) == seen
    for at, character in enumerate(seen):
        kind = unicodedata.category(character)
        assert kind not in ("Cc", "Cs", "Co", "Cn", "Zl", "Zp")
        if kind == "Cf":
            assert character in "\u200c\u200d"
            assert 0 < at < len(seen) - 1


# Unicode Standard Annex 9, table 4: the explicit directional formatting characters, and the implicit marks.
@pytest.mark.parametrize(
    "code", [0x202A, 0x202B, 0x202C, 0x202D, 0x202E, 0x2066, 0x2067, 0x2068, 0x2069, 0x200E, 0x200F, 0x061C]
)
def test_direction_controls_are_shown_by_their_numbers(code: int) -> None:
    assert visible(f"a{chr(code)}b") == f"a⟨U+{code:04X}⟩b"


def test_joiners_stay_where_words_need_them() -> None:
    assert visible("زیبا\u200cسازی") == "زیبا\u200cسازی"
    assert visible("pay\u200dpal") == "pay⟨U+200D⟩pal"


@pytest.mark.parametrize(
    ("text", "plain"),
    [
        ("Tom & Jerry", "Tom & Jerry"),
        ("a_b", "a_b"),
        ("C-THRU", "C-THRU"),
        ("3.5 (live)", "3.5 (live)"),
        ("--date", "--date"),
    ],
)
def test_ordinary_text_stays_as_it_is(text: str, plain: str) -> None:
    assert cell(text) == plain


# GFM section 6.9 makes links of these; the backslash keeps them text there.
@pytest.mark.parametrize("text", ["http://a.example", "https://a.example", "ftp://a.example", "www.a.example"])
def test_bare_addresses_are_not_links(text: str) -> None:
    assert "\\" in cell(text)


@given(TEXT, st.integers(2, 20))
def test_shorten_keeps_the_limit(text: str, most: int) -> None:
    assert len(shorten(text, most)) <= most
    if len(visible(text)) <= most:
        assert shorten(text, most) == visible(text)


def test_what_is_shortened_ends_with_a_word_or_a_clause() -> None:
    assert shorten("a gull over the harbour", 16) == "a gull over the…"
    assert shorten("a gull over the harbour", 17) == "a gull over the…"
    assert shorten("gull overtheharbourwall", 16) == "gull overthehar…"  # a long word would leave too little
    reasons = "Sound: close (RAYN-sip / RAYN-zip); goods: both name plant pots; holds outside the markets"
    assert clauses(reasons, 70) == "Sound: close (RAYN-sip / RAYN-zip); goods: both name plant pots"
    assert clauses(reasons, 200) == reasons
    assert clauses(reasons, 24) == "Sound: close (RAYN-sip…"


@pytest.mark.parametrize(
    ("value", "text"), [(0.0, "0.00"), (1.0, "1.00"), (0.999, "0.99"), (0.001, "0.01"), (0.5, "0.50")]
)
def test_number_never_rounds_to_identical_or_to_nothing(value: float, text: str) -> None:
    assert number(value) == text


def test_words() -> None:
    assert plural(1, "mark") == "1 mark"
    assert plural(1200, "mark") == "1,200 marks"
    assert some(["a"]) == "a"
    assert some(["a", "b", "c"]) == "a, b and c"
    assert some([]) == ""
    assert width("日本a\u0301") == 5


def test_table_is_aligned_for_reading_as_text() -> None:
    lines = table(("Name", "Score"), [("日本", "1"), ("b", "20")], numeric=(1,)).splitlines()
    assert len({width(line) for line in lines}) == 1


@pytest.mark.parametrize(
    ("sentences", "one"), [((), ""), (("One.",), "One"), (("One.", "Two: 0.5.", "three"), "One; Two: 0.5; three")]
)
def test_sentences_become_one(sentences: tuple[str, ...], one: str) -> None:
    assert in_one_sentence(sentences) == one


@given(st.lists(TEXT, min_size=1, max_size=4))
@example(["=1+1", "@SUM(A1)", "+1-1", "-cmd|' /C calc'!A0", "\t=1", "\r=1", " =1", "＝1+1", '=1,"2', "-0.5", "1e-3"])
def test_csv_reads_back_as_its_cells_and_none_is_a_formula(cells: list[str]) -> None:
    """OWASP, "CSV Injection" (from memory): what begins with = + - @, or with these after a tab or line break."""
    [read] = csv.reader([csv_line(cells)])
    assert [text.removeprefix("'") for text in read] == [visible(text).removeprefix("'") for text in cells]
    for text in read:
        assert not text.startswith(("=", "@", "＝", "\t", "\r"))
        if text.startswith(("+", "-")):
            float(text)


def test_a_number_never_shows_a_line_as_reached_that_is_not() -> None:
    assert number_beside(0.5477, (0.55, 0.3)) == "0.54"
    assert number_beside(0.55, (0.55, 0.3)) == "0.55"
    assert number_beside(0.2999, (0.55, 0.3)) == "0.29"
    assert number_beside(0.62, (0.55, 0.3)) == "0.62"
