"""A mark as a row of the screen: its scores, its level, what makes it milder, and what is told under it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from namescreen.outcome import NotChecked
from namescreen.plain_text import number_beside, plural, some
from namescreen.policy import GOODS_LINES, Level, level_of
from namescreen.screening.foreign_words import told_of

from .output import BELOW, Row, width

if TYPE_CHECKING:
    from namescreen.report.model import CloseMark as Found
    from namescreen.screening import CloseMark

__all__ = ["below", "mark_row", "of_the_whole"]

_ROOM_FOR_GRADES, _ROOM_FOR_REMARKS = 64, 100
"""Columns from which the level of a mark stands beside it, and from which all remarks do; else they stand below it."""


def mark_row(close: CloseMark, found: Found, owner: str = "") -> Row:
    """A mark as a row of the table of marks, from what was `found` of it as the report words it. Its `owner` is told
    where another one has the same words."""
    related = close.goods_relatedness
    grade, why = _remark(found)
    room = width()
    whole = ", ".join(filter(None, (grade, why)))
    beside, left = (whole, "") if room >= _ROOM_FOR_REMARKS else (grade, why)
    if room < _ROOM_FOR_GRADES:
        beside, left = "", whole
    return {
        "mark": close.mark.text,
        "overall": close.closeness.overall,
        "appearance": close.closeness.appearance,
        "sound": close.closeness.sound,
        "meaning": "coined" if isinstance(close.meaning, NotChecked) else close.meaning,
        "goods": "?" if isinstance(related, NotChecked) else number_beside(related.score, GOODS_LINES),
        "classes": ", ".join(map(str, close.mark.classes)),
        "remark": beside,
        "knockout": close.knockout,
        BELOW: "; ".join(filter(None, (left, owner, below(close)))),
    }


def _remark(found: Found) -> tuple[str, str]:
    """What the reader should know of a mark first: its level, if it has one; what makes it milder, and where it
    bites."""
    from namescreen.report.findings import grade_words, in_markets, mark_level, milder

    level = mark_level(found)
    grade = grade_words(found.knockout, level) if level > Level.NOTHING else ""
    return grade, ", ".join(filter(None, (milder(found), in_markets(found) if grade else "")))


def below(close: CloseMark) -> str:
    """What is told under a mark: what it takes over or says in another language, and further marks of its words."""
    return " ".join(filter(None, (*of_the_whole(close), _of_these_words(close))))


def of_the_whole(close: CloseMark) -> tuple[str, ...]:
    """What is said under a mark of its whole, and not for each aspect: the common element, and words of the name that
    it says in another language."""
    return tuple(filter(None, (close.element, f"{told_of(close.foreign)}." if close.foreign else "")))


def _of_these_words(close: CloseMark) -> str:
    """How many more marks there are of these words, how many of them dead, in which classes, and in which further
    markets they bite; "" if none."""
    from namescreen.report.findings import grade_words

    if not close.others:
        return ""
    classes = sorted({number for other in close.others for number in other.mark.classes})
    ended = sum(other.mark.is_dead for other in close.others)
    afar = sum(other.bites is False and not other.mark.is_dead for other in close.others)
    told = [
        what if close.marks == 2 else f"{count} of them {what}"
        for count, what in ((ended, "dead"), (afar, "of other markets"))
        if count
    ]
    more = f"and {plural(close.marks - 1, 'more mark')} of these words{', ' if told else ''}{some(told)}"
    graded = ((grade_words(one.knockout, level_of(one.concern)), one.markets) for one in close.elsewhere)
    biting = "".join(f"; {grade} in {some(markets)}" for grade, markets in graded)
    if not classes:
        return more + biting
    listed = f"{'class' if len(classes) == 1 else 'classes'} {', '.join(map(str, classes))}"
    return f"{more}{':' if close.marks == len(close.others) + 1 else ', among them'} {listed}{biting}"
