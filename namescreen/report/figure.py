"""The picture of a report, as SVG: names against checks, the worst finding of each name first.

It reads without colour: every level has its own shape, its own amount of ink and its own words. "Not
checked" is a broken outline in slanted type, "nothing found" a whole one, so that an empty place is never
taken for a good one. Type sizes and lengths suit A4; text is cut to fit by an estimate of its width, the
report's table has it whole.
"""

from __future__ import annotations

from collections.abc import Iterable
from html import escape
from itertools import accumulate

from ..outcome import DISCLAIMER
from ..plain_text import shorten, some, visible, width
from ..policy import LIKELY_REFUSED, Finding, Level
from .findings import UNASKED, findings, worst, worst_title
from .model import CHECKS, NameEntry, Report
from .own_findings import BORDERLINE
from .sensitivity import standings

__all__ = ["MOST_ROWS", "alternative", "description", "to_svg"]

MOST_ROWS = 20
"""Names in the picture: what fits on an A4 page. Further names stand in the table only, and the picture says
so."""

# An A4 page is 184 mm between its margins: 1 unit is 0.22 mm, and type of 11 units about 7 points.
_WIDE, _MARGIN, _HEAD = 820, 12, 60
_ROW, _LINE_HIGH = 34, 12
"""How high a row is without its evidence, and a line of that."""
_NAME, _WORST = 124, 120
_CHECKS = (176, 118, 138, 120)
"""How wide the column of each check is."""
_EVIDENCE, _NAME_SIZE = 11, 13.5
_LEGEND = {Level.SERIOUS: f"knockout, {LIKELY_REFUSED}, serious", Level.MINOR: f"minor, {BORDERLINE}",
           Level.NOT_CHECKED: f"not checked, {UNASKED}"}  # fmt: skip
_FEWEST_LINES, _MOST_LINES = 1, 3  # of evidence in a row
_INK, _SOFT, _LINE = "#1d1f21", "#55595e", "#b9bdc2"
_FILL = {Level.SERIOUS: "#dcc3bd", Level.LOOK: "#f0e6cd"}
_SHAPE_INK = {Level.SERIOUS: "#6d1510", Level.LOOK: "#7a5200"}
_STYLE = (
    f"text{{font-family:'Liberation Sans',Arial,'DejaVu Sans',sans-serif;fill:{_INK};font-size:12px}}"
    f".h{{font-size:12px;font-weight:bold}}.t{{font-size:15px;font-weight:bold}}.n{{font-size:{_NAME_SIZE}px}}"
    f".w{{font-weight:bold}}.e{{font-size:{_EVIDENCE}px;fill:{_SOFT}}}.x{{font-style:italic;fill:{_SOFT}}}"
)


def to_svg(report: Report) -> str:
    """The picture of `report`; equal reports give equal text."""
    entries = _ordered(report)
    shown = entries[:MOST_ROWS]
    tops = [*accumulate(map(_height, shown), initial=_HEAD)]
    legend_top = tops[-1] + 14
    high = legend_top + 58
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {_WIDE} {high}" '
        f'width="{_WIDE}" height="{high}" '
        'role="img" aria-labelledby="figure-title figure-description">',
        f'<title id="figure-title">{_safe(alternative(report))}</title>',
        f'<desc id="figure-description">{_safe(description(report))}</desc>',
        f"<style>{_STYLE}</style>",
        f'<rect width="{_WIDE}" height="{high}" fill="#ffffff"/>',
        *_heads(),
        *(line for entry, top in zip(shown, tops, strict=False) for line in _row(entry, top)),
        *_legend(legend_top, len(entries) - len(shown)),
        "</svg>",
    ]
    return "\n".join(parts) + "\n"


def alternative(report: Report) -> str:
    """A short text in place of the picture."""
    count = len(report.names)
    return f"{count} {'name' if count == 1 else 'names'} against {len(CHECKS)} checks, worst finding first"


def description(report: Report) -> str:
    """All that the picture says, in words."""
    return " ".join(
        f"{visible(entry.name)}: worst finding {worst_title(entry)}; "
        + some(f"{CHECKS[found.check].lower()} {found.title}" for found in findings(entry))
        + "."
        for entry in _ordered(report)[:MOST_ROWS]
    )


def _ordered(report: Report) -> list[NameEntry]:
    entries = {entry.name: entry for entry in report.names}
    return [entries[row.name] for row in standings(report)]


def _heads() -> Iterable[str]:
    yield _text(_MARGIN, 24, "Names against checks", "t")
    y = _HEAD - 12
    yield _text(_MARGIN, y, "Name", "h")
    yield _text(_MARGIN + _NAME, y, "Worst finding", "h")
    for at, title in enumerate(CHECKS.values()):
        yield _text(_left(at), y, title, "h")
    yield f'<path d="M{_MARGIN} {_HEAD - 4}H{_WIDE - _MARGIN}" stroke="{_INK}" stroke-width="1.5"/>'


def _left(check: int) -> int:
    return _MARGIN + _NAME + _WORST + sum(_CHECKS[:check])


def _height(entry: NameEntry) -> int:
    """How high the row of a name is: as its longest evidence asks for."""
    lines = (len(_folded(found.evidence, _CHECKS[at] - 26)) for at, found in enumerate(findings(entry)))
    return _ROW + _LINE_HIGH * max(_FEWEST_LINES, *lines)


def _name_lines(name: str) -> list[str]:
    """A name on one line, or on two where it is longer; cut only where not even these hold it."""
    first, *rest = _fold(name, _NAME - 12, _NAME_SIZE)
    return [_fit(text, _NAME - 12, _NAME_SIZE) for text in (first, " ".join(rest)) if text]


def _row(entry: NameEntry, top: int) -> Iterable[str]:
    high = _height(entry)
    middle = top + high // 2
    level = worst(entry).level
    if level in _FILL:
        yield (
            f'<rect x="{_MARGIN + _NAME - 6}" y="{top - 1}" width="{_WORST - 6}" height="{high - 6}" '
            f'fill="{_FILL[level]}"/>'
        )
    name = _name_lines(entry.name)
    for line, text in enumerate(name):
        yield _text(_MARGIN, middle - 7 * (len(name) - 1) + 14 * line, text, "n")
    yield _shape(level, _MARGIN + _NAME + 6, middle - 4)
    yield _text(_MARGIN + _NAME + 19, middle, worst_title(entry), "x" if level is Level.NOT_CHECKED else "w")
    for at, found in enumerate(findings(entry)):
        left = _left(at)
        unasked = found.title == UNASKED
        yield _shape(Level.NOT_CHECKED if unasked else _drawn(found), left + 7, top + 10)
        skipped = unasked or found.level is Level.NOT_CHECKED
        yield _text(left + 20, top + 14, found.title, "x" if skipped else "w")
        for line, text in enumerate(_folded(found.evidence, _CHECKS[at] - 26)):
            yield _text(left + 20, top + 26 + _LINE_HIGH * line, text, "e")
    yield f'<path d="M{_MARGIN} {top + high - 4}H{_WIDE - _MARGIN}" stroke="{_LINE}" stroke-width="0.75"/>'


def _drawn(found: Finding) -> Level:
    """The level by whose shape a finding is drawn: one that is borderline is not drawn as nothing found."""
    return Level.MINOR if found.label == BORDERLINE else found.level


def _legend(top: int, left_out: int) -> Iterable[str]:
    x = _MARGIN
    for level in (Level.SERIOUS, Level.LOOK, Level.MINOR, Level.NOTHING, Level.NOT_CHECKED):
        yield _shape(level, x + 7, top + 5)
        words = _LEGEND.get(level, level.words)
        yield _text(x + 20, top + 9, words, "x" if level is Level.NOT_CHECKED else "")
        x += 50 + round(5.8 * len(words))
    more = f" {left_out} more names stand in the table." if left_out else ""
    yield _text(_MARGIN, top + 31, DISCLAIMER + more, "e")


def _shape(level: Level, x: int, y: int) -> str:
    """The shape of `level` around (x, y), some 14 units wide."""
    ink = _SHAPE_INK.get(level, _INK)
    if level is Level.SERIOUS:
        return (
            f'<path d="M{x - 7} {y - 7}h14v14h-14z" fill="{ink}"/>'
            f'<path d="M{x - 4} {y - 4}l8 8m0 -8l-8 8" stroke="#ffffff" stroke-width="2.2"/>'
        )
    if level is Level.LOOK:
        return (
            f'<path d="M{x} {y - 8}l8 8l-8 8l-8 -8z" fill="#ffffff" stroke="{ink}" stroke-width="1.4"/>'
            f'<path d="M{x - 5} {y + 2}l7 -7M{x - 3} {y + 4.5}l7.5 -7.5M{x - 1} {y + 6.5}l6 -6" '
            f'stroke="{ink}" stroke-width="1.3"/>'
        )
    if level is Level.MINOR:
        return (
            f'<circle cx="{x}" cy="{y}" r="6.3" fill="#ffffff" stroke="{ink}" stroke-width="1.3"/>'
            f'<circle cx="{x}" cy="{y}" r="2.4" fill="{ink}"/>'
        )
    if level is Level.NOTHING:
        return f'<circle cx="{x}" cy="{y}" r="6.3" fill="#ffffff" stroke="{ink}" stroke-width="1.3"/>'
    return (
        f'<rect x="{x - 6.5}" y="{y - 6.5}" width="13" height="13" fill="none" stroke="{_SOFT}" '
        'stroke-width="1.2" stroke-dasharray="2.6 2.4"/>'
    )


def _text(x: int, y: int, text: str, kind: str) -> str:
    style = f' class="{kind}"' if kind else ""
    return f'<text x="{x}" y="{y}"{style}>{_safe(text)}</text>'


def _em(one: str) -> float:
    """The width of a character as a share of its size, for the typefaces of the picture."""
    if one in "iljtfrI.,;:'()[]!| ":
        return 0.34
    if one in "mwMW@%":
        return 0.95
    return 0.58 * width(one) if not one.isupper() else 0.74


def _wide(text: str, size: float) -> float:
    """About how wide `text` is in the typeface, by kinds of letter; a little more than it is, so that it fits."""
    return size * sum(_em(one) for one in text)


def _fit(text: str, room: float, size: float) -> str:
    """`text` cut so that it fits `room`."""
    text = visible(text)
    while _wide(text, size) > room and len(text) > 1:
        text = shorten(text, len(text) - 1)
    return text


def _fold(text: str, room: float, size: float) -> list[str]:
    """Lines of `text`, folded between words."""
    lines = [""]
    for word in visible(text).split():
        longer = f"{lines[-1]} {word}".lstrip()
        if lines[-1] and _wide(longer, size) > room:
            lines.append(word)
        else:
            lines[-1] = longer
    return lines


def _folded(text: str, room: float) -> list[str]:
    """Evidence on a few lines; of what does not fit the last clauses are left out whole, so that no number loses its
    sense, and only a first clause that is longer is cut."""
    told = visible(text).split("; ")
    kept = ("; ".join([*told[:count], *(["…"] if count < len(told) else [])]) for count in range(len(told), 0, -1))
    folds = [_fold(one, room, _EVIDENCE) for one in kept]
    lines = next((fold for fold in folds if len(fold) <= _MOST_LINES), folds[-1])
    rest = " ".join(lines[_MOST_LINES - 1 :])
    return [_fit(line, room, _EVIDENCE) for line in (*lines[: _MOST_LINES - 1], *([rest] if rest else []))]


def _safe(text: str) -> str:
    return escape(visible(text), quote=False)
