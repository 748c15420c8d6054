"""A name that falls, in a few lines: by what, where, and what to ask if it is to be kept all the same."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from ..goods.verdicts import FREE
from ..plain_text import cell, clauses, number, plural, shorten, some
from ..policy import OWN_CHECK, Level
from .findings import finding_of, mark_level, matters, worst_words
from .mark_tables import briefly, by_market, mark_cells, told_in_short
from .model import CloseMark, Distinctiveness, NameEntry, Report
from .namesakes import USE_LASTS
from .own_questions import by_item
from .questions import grave_questions
from .register_facts import LACKS

__all__ = ["fallen"]

_MARKS, _FURTHER = 5, 4  # marks to look closer at that are told whole, and others that are named


def fallen(entry: NameEntry, report: Report) -> Iterable[str]:
    """A name with a knockout, or that an office is likely to refuse, as Markdown."""
    yield f"### {cell(shorten(entry.name, 120))}"
    yield " ".join(filter(None, (f"Falls: **{cell(worst_words(entry))}**.", by_market(entry, report))))
    ordered = matters(entry)
    told = [found for found in ordered if mark_level(found) >= Level.LOOK]
    own, marks = [*_of_its_own(entry)], [_mark(found, report) for found in told[:_MARKS]]
    barred = finding_of(entry, OWN_CHECK).bars
    lines = [*(own if barred else []), *marks, *_further(ordered, told[:_MARKS]), *([] if barred else own)]
    yield "\n".join(f"- {line}" for line in lines)
    if asked := grave_questions(entry, report):
        yield "If it is to be kept, ask:"
        yield "\n".join(f"{at}. {cell(question)}" for at, question in enumerate(asked, 1))


def _of_its_own(entry: NameEntry) -> Iterable[str]:
    """What the name itself is, why, and the law on it where that bars it."""
    found, part = finding_of(entry, OWN_CHECK), entry.distinctiveness
    if not isinstance(part, Distinctiveness):
        return
    if not found.bars:
        yield cell(f"The name itself: {found.words}.")
        return
    laws = [f"{one.market}: {one.law}" for one in part.markets if one.law and one.called not in FREE]
    if part.is_barred_as_such or not laws:
        laws = [*part.laws]
    why = clauses("; ".join(part.reasons[:3]), 260) + (f"; by goods: {by_item(part)}" if part.by_item else "")
    yield cell(f"{found.words}: {why}. From memory: {clauses('; '.join(laws), 420) or 'no law is known here'}")


def _mark(found: CloseMark, report: Report) -> str:
    told, finding, _, goods, standing = mark_cells(found, report.date, report.markets)
    live = [one for one in found.others if not one.is_dead]
    listed: dict[str, list[str]] = {}
    for one in live[:_FURTHER]:
        whose = "also of this owner" if one.is_of_the_owner_of(found.mark) else "further marks of these words"
        listed.setdefault(whose, []).append(told_in_short(one))
    also = "".join(f"; {whose}: {some(marks)}" for whose, marks in listed.items())
    stands = "" if standing == LACKS else f"; {standing}"
    return cell(f"{told}: {finding}. Closeness {number(found.overall)}, goods {goods}{stands}{also}")


def _further(ordered: Sequence[CloseMark], told: Sequence[CloseMark]) -> Iterable[str]:
    left = [found for found in ordered if found not in told and mark_level(found) > Level.NOTHING]
    if left:
        more = [plural(len(left) - _FURTHER, "more mark")] if len(left) > _FURTHER else []
        ended = any(found.mark.is_dead and "US" in found.mark.territories for found in left[:_FURTHER])
        yield cell(f"Further: {some([*map(briefly, left[:_FURTHER]), *more])}.{USE_LASTS if ended else ''}")
