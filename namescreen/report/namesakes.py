"""Questions on further marks with the same words as one that is asked about: where they bite, and whose they are."""

from __future__ import annotations

from ..marks.mark import Mark
from ..plain_text import shorten, some
from .findings import conflict_of
from .law import objection
from .model import CloseMark, Elsewhere, Report
from .register_facts import held_in, in_force_notes

__all__ = ["USE_LASTS", "on_dead_namesakes", "on_namesakes"]

USE_LASTS = " In US use alone gives rights, which outlast a registration (15 USC 1125(a))."
"""What is said of a dead mark of the United States."""
_MARKS = 4  # named in one question
_ALL_BUT_THE_SAME = 0.85  # overall closeness from which a dead mark's words are those of the name; ours, not fitted


def on_namesakes(found: CloseMark, name: str, report: Report) -> str:
    """What is asked of further marks with the words of one that is asked about, as sentences; "" where nothing is."""
    elsewhere = (_on_elsewhere(found, one, name, report) for one in found.elsewhere)
    return " ".join(filter(None, (*elsewhere, _on_live_namesakes(found, report), on_dead_namesakes(found, report))))


def _on_elsewhere(found: CloseMark, one: Elsewhere, name: str, report: Report) -> str:
    """A further mark of the same words, which bites in markets where the one asked about does not hold."""
    mark = found.others[one.place]
    stand = {"live": "are registered", "pending": "are applied for", "opposed": "are applied for, and opposed"}
    words, day = stand.get(mark.status, "stand in the list"), mark.priority or mark.filed
    ranks = f", and rank from {day}" if mark.status in ("pending", "opposed") and day else ""
    asked = f"In {some(one.markets)} the same words {words}{ranks}, as {_cited(mark)}: {objection(name, one.markets)}?"
    return " ".join((asked, *in_force_notes(mark, report)))


def _on_live_namesakes(found: CloseMark, report: Report) -> str:
    """Further live marks of other owners with the same words: those in markets where the one asked about is not in
    force, and those in a class of ours; without those that bite elsewhere, which are asked about by themselves."""
    told_of = {one.place for one in found.elsewhere}
    first = () if found.mark.is_dead or found.bites is False else held_in(found.mark, report)
    told = []
    for mark in (mark for place, mark in enumerate(found.others) if place not in told_of):
        held = held_in(mark, report)
        further = [market for market in held if market not in first]
        ours = not report.classes or not mark.classes or not {*mark.classes}.isdisjoint(report.classes)
        if held and not mark.is_dead and mark.owner != found.mark.owner and (further or ours):
            told.append(f"{_cited(mark)}, in {some(held)}")
    return f"The same words are live for others: {'; '.join(told[:_MARKS])}. What of these?" if told else ""


def on_dead_namesakes(found: CloseMark, report: Report) -> str:
    """Whether the owners of dead US marks with all but the same name, in a class of ours, still use it; "" if there are
    none."""
    if "US" not in report.markets or not (conflict_of(found).identical or found.overall >= _ALL_BUT_THE_SAME):
        return ""
    dead = [mark for mark in found.others if mark.is_dead and "US" in mark.territories]
    ours = [_cited(mark) for mark in dead if not {*mark.classes}.isdisjoint(report.classes)]
    if not ours:
        return ""
    what = "the same name" if conflict_of(found).identical else shorten(found.mark.text, 40)
    return f"Dead in US, in a class of ours, is {what}: {'; '.join(ours[:_MARKS])}. Still in use?{USE_LASTS}"


def _cited(mark: Mark) -> str:
    """A further mark of the same words, as briefly as it can be found by."""
    classes = f"class {' '.join(map(str, mark.classes))}" if mark.classes else ""
    about = ", ".join(filter(None, (mark.office, shorten(mark.owner, 40), classes)))
    return shorten(mark.number or mark.text, 24) + (f" ({about})" if about else "")
