"""The HTML form: well formed, self-contained, and deaf to whatever markup the data holds."""

from __future__ import annotations

import re
from html.parser import HTMLParser

import pytest

from namescreen.report import Report, to_html

VOID = {"meta", "br", "hr", "img", "link", "input", "wbr"}
ALLOWED = {
    "html",
    "head",
    "meta",
    "title",
    "style",
    "body",
    "main",
    "h1",
    "h2",
    "h3",
    "p",
    "ul",
    "ol",
    "li",
    "strong",
    "em",
    "code",
    "pre",
    "div",
    "span",
    "table",
    "thead",
    "tbody",
    "tr",
    "wbr",
    "th",
    "td",
    "a",
    "svg",
    "desc",
    "rect",
    "path",
    "circle",
    "text",
}
ATTRIBUTES = {"href", "src", "action", "srcset", "data", "formaction", "xlink:href"}


class Strict(HTMLParser):
    """Fails on an element that is not closed, closed out of turn, or not one of ours."""

    def __init__(self) -> None:
        super().__init__()
        self.open: list[str] = []
        self.words: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        assert tag in ALLOWED, tag
        for name, value in attrs:
            assert name not in ATTRIBUTES or (value or "").startswith("#name-"), (tag, name, value)
            assert not name.startswith("on"), (tag, name)
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.handle_starttag(tag, attrs)
        if tag not in VOID:
            self.open.pop()

    def handle_endtag(self, tag: str) -> None:
        assert self.open
        assert self.open.pop() == tag

    def handle_data(self, data: str) -> None:
        self.words.append(data)

    def handle_comment(self, data: str) -> None:
        raise AssertionError(f"a comment came through: {data}")


@pytest.fixture(params=["report", "hostile"])
def page(request: pytest.FixtureRequest) -> str:
    found: Report = request.getfixturevalue(request.param)
    return to_html(found)


def test_every_element_is_ours_and_closed_in_turn(page: str) -> None:
    parser = Strict()
    parser.feed(page)
    parser.close()
    assert parser.open == []


def test_the_page_passes_a_strict_html5_parser(page: str) -> None:
    html5lib = pytest.importorskip("html5lib", reason="html5lib is not installed: pip install html5lib")
    html5lib.HTMLParser(strict=True).parse(page)


def test_the_page_loads_nothing(page: str) -> None:
    assert not re.search(r"<(?:script|link|img|iframe|object|embed|base|form)\b", page)
    assert "default-src 'none'" in page
    style = re.findall(r"<style>(.*?)</style>", page, re.DOTALL)
    assert not any("url(" in one or "@import" in one for one in style)


def test_hostile_text_stands_as_text(hostile: Report) -> None:
    parser = Strict()
    parser.feed(to_html(hostile))
    words = "".join(parser.words)
    for text in (
        "<script>alert(1)</script>",
        "[here](javascript:alert(1))",
        "</td></tr></table>",
        "<!-- c -->",
        "&lt;b&gt; &amp; &#124; &copy;",
        "⟨U+202E⟩",
    ):
        assert text in words, text


def test_raw_html_stays_off_even_if_some_came_through(report: Report, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("namescreen.report.html.to_markdown", lambda *_, **__: "<script>x</script>\n\na <b>c</b>")
    page = to_html(report)
    assert "<script>" not in page
    assert "<b>" not in page
    assert "a &lt;b&gt;c" in page


def test_names_at_a_glance_lead_to_their_pages(report: Report) -> None:
    page = to_html(report)
    led = re.findall(r'<td[^>]*><a href="#(name-\d+)"><span class="cell">(.*?)</span></a></td>', page)
    assert led == re.findall(r'<h3 class="name" id="(name-\d+)">(.*?)</h3>', page)
    assert len(led) == len(report.names)


def test_cells_carry_their_headings_for_narrow_screens(report: Report) -> None:
    page = to_html(report)
    assert page.count("<td") == len(re.findall(r'<td[^>]* data-label="', page))
