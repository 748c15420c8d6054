"""A mark as a row of the screen: its scores, its level, what makes it milder, and what is told under it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from namescreen.lexicon.language_codes import language_name
from namescreen.outcome import NotChecked
from namescreen.plain_text import plural, some
from namescreen.policy import OTHER_GOODS, SAME_GOODS, SOLD_TOGETHER, Level

from .output import BELOW, Row, width

if TYPE_CHECKING:
    from namescreen.screening import CloseMark

__all__ = ["below", "mark_row", "of_the_whole", "standing"]

_ROOM_FOR_REMARKS = 64
"""Columns from which remarks stand beside a mark; in a narrower terminal they stand below it."""


def mark_row(close: CloseMark) -> Row:
    """A mark as a row of the table of marks."""
    related = close.goods_relatedness
    narrow = width() < _ROOM_FOR_REMARKS
    return {
        "mark": close.mark.text,
        "overall": close.closeness.overall,
        "appearance": close.closeness.appearance,
        "sound": close.closeness.sound,
        "meaning": "coined" if isinstance(close.meaning, NotChecked) else close.meaning,
        "goods": "?" if isinstance(related, NotChecked) else related.score,
        "classes": ", ".join(map(str, close.mark.classes)),
        "remark": "" if narrow else _remark(close),
        "knockout": close.knockout,
        BELOW: "; ".join(filter(None, (_remark(close) if narrow else "", below(close)))),
    }


def _remark(close: CloseMark) -> str:
    """What the reader should know of a mark first: its level, if it has one, and what makes it milder."""
    level = "knockout" if close.knockout else close.level.words if close.level > Level.NOTHING else ""
    return ", ".join(filter(None, (level, standing(close))))


def standing(close: CloseMark) -> str:
    """What makes a mark milder than its closeness, or near though it is not close; "" if nothing does."""
    if close.knockout:
        return "probably lapsed" if close.lapsed else ""
    if close.renewable_until:
        return f"can be renewed until {close.renewable_until}"
    if close.mark.is_dead:
        return "dead"
    if close.lapsed:
        return "probably lapsed"
    if close.bites is False:
        return "other markets"
    if close.translation:
        return f"the name in {language_name(close.translation)}"
    related = close.goods_relatedness
    if isinstance(related, NotChecked) or related.score >= SAME_GOODS:
        return ""
    return SOLD_TOGETHER if related.together else "other goods" if related.score < OTHER_GOODS else ""


def below(close: CloseMark) -> str:
    """What is told under a mark: what it takes over or says in another language, and further marks of its words."""
    return " ".join(filter(None, (*of_the_whole(close), _of_these_words(close))))


def of_the_whole(close: CloseMark) -> tuple[str, ...]:
    """The reasons that say which element is common, beside those of each aspect."""
    told = ("Taken over ", "Compared without ", "In ")
    return tuple(reason for reason in close.closeness.reasons if reason.startswith(told))


def _of_these_words(close: CloseMark) -> str:
    """How many more marks there are of these words, how many of them dead, in which classes, and in which further
    markets they bite; "" if none."""
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
    alike = ((close.others[place], some(markets)) for place, markets in close.elsewhere)
    further = (("knockout" if one.knockout else one.level.words, markets) for one, markets in alike)
    biting = "".join(f"; {level} in {markets}" for level, markets in further)
    if not classes:
        return more + biting
    listed = f"{'class' if len(classes) == 1 else 'classes'} {', '.join(map(str, classes))}"
    return f"{more}{':' if close.marks == len(close.others) + 1 else ', among them'} {listed}{biting}"
