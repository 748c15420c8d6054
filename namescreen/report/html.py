"""The report as one self-contained HTML page, from its Markdown, through markdown-it-py.

Nothing is loaded from anywhere: the style is inside, the picture is inlined, raw HTML is off and a content
security policy forbids the rest. It prints on A4, with the disclaimer at the foot of each page; on a narrow screen each
row of a table becomes a block.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, MutableMapping, Sequence
from html import escape
from importlib.resources import files
from typing import Any

from ..expressions import expression
from ..outcome import DISCLAIMER
from .comparison import Changes
from .figure import to_svg
from .mark_tables import MARK_HEADS
from .markdown import to_markdown
from .model import Report
from .record import title_of

__all__ = ["to_html"]

_PICTURE = "figure.svg"
_NUMBER = expression(r"(?<![\w/-])((?=[\w/-]{3,24}(?![\w/-]))(?=[\w/-]*\d)\w+(?:[-/]\w+)+)(?![\w/-])")
"""A date, or the number of a mark with its parts."""
_LONG, _PIECE = re.compile(r"\w{19,}"), re.compile(r"\w{1,14}")
"""A word too long for a column, and the pieces in which it may stand; shorter ones are never broken."""
_SMALL = 4  # rows of a table that is kept on one page


def to_html(report: Report, *, changes: Changes | None = None, full: bool = False) -> str:
    """The report as one HTML page; equal input gives equal text. `full` is that of `to_markdown`."""
    from markdown_it import MarkdownIt

    parser = MarkdownIt("commonmark", {"html": False}).enable("table")
    picture = to_svg(report)
    env: dict[str, Any] = {}
    tokens = parser.parse(to_markdown(report, figure=_PICTURE, changes=changes, full=full, as_tables=True), env)
    _label_cells(tokens)
    _link_names(tokens)
    _mark_leads(tokens)
    _break_well(tokens)

    def image(renderer: Any, tokens: Sequence[Any], at: int, options: Any, env: MutableMapping[str, Any]) -> str:
        """The one picture of a report, in place."""
        return f'<span class="picture" tabindex="0">{picture.strip()}</span>'

    def code(renderer: Any, tokens: Sequence[Any], at: int, options: Any, env: MutableMapping[str, Any]) -> str:
        """A command, folded between its words only."""
        words = (f'<span class="number">{escape(word)}</span>' for word in tokens[at].content.split())
        return f"<pre><code>{' '.join(words)}</code></pre>\n"

    parser.add_render_rule("image", image)
    parser.add_render_rule("code_block", code)
    body = parser.renderer.render(tokens, parser.options, env)
    body = re.sub(r"<table.*?</table>", _framed, body, flags=re.DOTALL)
    title = escape(title_of(report))
    style = files(__package__).joinpath("page.css").read_text("utf-8").replace("DISCLAIMER", DISCLAIMER)
    return (
        '<!DOCTYPE html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        '<meta http-equiv="Content-Security-Policy" content="default-src \'none\'; style-src '
        "'unsafe-inline'\">\n"
        f"<title>{title}</title>\n<style>\n{style}</style>\n</head>\n<body>\n<main>\n{body}</main>\n</body>\n</html>\n"
    )


def _framed(found: re.Match[str]) -> str:
    """A table in its own frame; a table that fits on a page is kept on one."""
    small = " small" if found[0].count("<tr") <= _SMALL else ""
    return f'<div class="table{small}">{found[0]}</div>'


def _label_cells(tokens: Sequence[Any]) -> None:
    """Give every cell its column's heading, shown where a table is too wide for the screen, and its table a
    kind."""
    from markdown_it.token import Token

    heads: list[str] = []
    column, table = 0, None
    for at, token in enumerate(tokens):
        if token.type == "table_open":
            heads, table = [], token
        elif token.type == "tr_open":
            column = 0
        elif token.type == "th_open":
            heads.append(_plain(tokens[at + 1]))
            token.attrSet("scope", "col")
        elif token.type == "thead_close" and table is not None:
            if tuple(heads[:2]) == MARK_HEADS[:2]:
                table.attrSet("class", "marks")
        elif token.type == "td_open":
            token.attrSet("data-label", heads[column])
            if tokens[at + 1].children:  # one box beside its heading, whatever it holds
                told = tokens[at + 1].children
                tokens[at + 1].children = [
                    Token("span_open", "span", 1, attrs={"class": "cell"}), *told, Token("span_close", "span", -1)
                ]  # fmt: skip
            column += 1


def _link_names(tokens: Sequence[Any]) -> None:
    """Number the names' headings, and link the first table's names to them."""
    from markdown_it.token import Token

    headings = [token for token in tokens if token.type == "heading_open" and token.tag == "h3"]
    for at, heading in enumerate(headings, 1):
        heading.attrSet("class", "name")
        heading.attrSet("id", f"name-{at}")
    if headings:
        before = [token for token in tokens[: tokens.index(headings[0])] if token.type == "heading_open"]
        before[-1].attrSet("class", "names")
    rows = [at for at, token in enumerate(tokens) if token.type == "tr_open"][1 : len(headings) + 1]
    for at, row in enumerate(rows, 1):
        inline = tokens[row + 2]
        inline.children = [
            Token("link_open", "a", 1, attrs={"href": f"#name-{at}"}),
            *(inline.children or ()),
            Token("link_close", "a", -1),
        ]


def _mark_leads(tokens: Sequence[Any]) -> None:
    """Tell the paragraphs that only announce what follows, so that no page ends with one."""
    for at, token in enumerate(tokens[:-1]):
        if token.type == "paragraph_open" and not token.hidden:
            told = [child.type for child in tokens[at + 1].children if child.type != "text" or child.content]
            if told == ["strong_open", "text", "strong_close"] or _plain(tokens[at + 1]).endswith(":"):
                token.attrSet("class", "lead")


def _break_well(tokens: Sequence[Any]) -> None:
    """Set dates and the numbers of marks so that no line breaks inside one, and let very long words break at all."""
    for token in tokens:
        if token.children:
            token.children = [piece for child in token.children for piece in _pieces(child)]


def _pieces(child: Any) -> Iterable[Any]:
    from markdown_it.token import Token

    if child.type != "text":
        yield child
        return
    for at, piece in enumerate(_NUMBER.split(child.content)):
        if at % 2:
            yield Token("span_open", "span", 1, attrs={"class": "number"})
            yield Token("text", "", 0, content=piece)
            yield Token("span_close", "span", -1)
            continue
        end = 0
        for word in _LONG.finditer(piece):
            for part in _PIECE.finditer(piece, word.start(), word.end()):
                yield Token("text", "", 0, content=piece[end : part.end()])
                end = part.end()
                if end < word.end():
                    yield Token("wbr", "wbr", 0)
        if piece[end:]:
            yield Token("text", "", 0, content=piece[end:])


def _plain(inline: Any) -> str:
    """The text of an inline token without its markup."""
    return "".join(child.content for child in inline.children or () if child.type in ("text", "text_special"))
