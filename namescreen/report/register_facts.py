"""What a register says of a mark, in words: its standing, its dates, where it holds, and what these raise."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from ..marks import territory
from ..marks.mark import Mark
from ..marks.status import opposed_since
from ..marks.term import grace_ends, probably_lapsed, renewable_until, when_it_ended
from ..marks.territory import UK_LEFT, bites_in, lives_on_in_uk
from ..outcome import NotChecked
from ..plain_text import shorten, some
from .model import Report
from .upkeep import is_undesignated, months_between

__all__ = [
    *("can_claim_priority", "dates", "dead_words", "held_in", "in_force_notes", "never_stated"),
    *("lapsed_words", "remarks", "status", "uk_mark_of_its_own", "where"),
]

LACKS = "not stated"
_FACTS: dict[str, Callable[[Mark], object]] = {
    "number": lambda mark: mark.number,
    "owner": lambda mark: mark.owner,
    "classes": lambda mark: mark.classes,
    "goods": lambda mark: mark.goods,
    "status": lambda mark: mark.status_as_given or mark.stated_status,
    "dates": lambda mark: mark.filed or mark.registered or mark.expires or mark.priority,
    "where": lambda mark: mark.territories,
}
"""What a register says of a mark, by the heading under which it stands."""
SUPPLEMENTAL = "Supplemental Register"
_STATUS = {"live": "in force", "pending": "applied for", "opposed": "applied for, opposed"}
_SOON = 6  # months before the end of a term; common practice, no source
_PRIORITY_MONTHS = 6  # Paris Convention, article 4C(1)


def never_stated(report: Report) -> tuple[str, ...]:
    """What the lists state of no mark near any name: told once, and not beside each."""
    found = [found for entry in report.names if not isinstance(entry.marks, NotChecked) for found in entry.marks]
    every = [mark for one in found for mark in (one.mark, *one.others)]
    return tuple(what for what, fact in _FACTS.items() if every and not any(map(fact, every)))


def status(mark: Mark, today: str = "") -> str:
    """Where a mark stands: in force, applied for, opposed, or dead and how its list words it; and on the day `today`
    whether it is live by its list alone, its term being over."""
    if mark.is_dead:
        told = dead_words(mark)
        return told if told.startswith("dead") else f"dead ({told})"
    if mark.status == "live" and opposed_since(mark.status_as_given):
        return "registered, opposed"
    told = _STATUS.get(mark.status, "") + (f", {SUPPLEMENTAL}" if is_supplemental(mark) else "")
    if not told:
        given = shorten(mark.status_as_given, 30)
        return f"not understood ({given})" if given else LACKS
    if mark.status != "live" or not today or not mark.expired_by(today):
        return told
    return f"{told} by the list, but {'probably lapsed' if probably_lapsed(mark, today) else 'its term is over'}"


def is_supplemental(mark: Mark) -> bool:
    """Whether a mark is on the register of the United States for what does not yet tell a maker (15 USC 1091)."""
    return SUPPLEMENTAL.casefold() in mark.status_as_given.casefold()


def dead_words(mark: Mark) -> str:
    """How its list words that a mark has ended; a bare code says so first."""
    given = shorten(mark.status_as_given, 30).casefold()
    return f"dead (code {given})" if given.isdecimal() else given or "dead"


def dates(mark: Mark) -> str:
    """The dates that the list states, in the order of a mark's life."""
    told = (
        ("priority", mark.priority),
        ("filed", mark.filed),
        ("registered", mark.registered),
        ("expires", mark.expires),
    )
    return ", ".join(f"{what} {day}" for what, day in told if day) or LACKS


def where(mark: Mark, markets: Sequence[str] = ()) -> str:
    """Where a mark holds, as codes of countries, as far as the list states it; of an EU mark also that it does not hold
    in the United Kingdom, if that is one of `markets`."""
    apart = "GB" in markets and "EU" in mark.territories and bites_in(mark, ("GB",)) is False
    afar = bool(markets) and bites_in(mark, tuple(markets)) is False
    told = ", outside the markets" if afar else ", not GB" if apart else ""
    return (some(mark.territories) or LACKS) + told


def uk_mark_of_its_own(mark: Mark, report: Report) -> str:
    """What is asked of the UK mark that came from an EU mark which has ended since, as a further sentence; "" if none
    did."""
    ended_before = "" < mark.expires < UK_LEFT
    if "GB" not in report.markets or not lives_on_in_uk(mark) or ended_before:
        return ""
    return " Registered in the EU before 2021, so a UK mark with a term of its own came from it: is that in force?"


def held_in(mark: Mark, report: Report) -> tuple[str, ...]:
    """The markets of the brief in which a mark holds; all of them where that is not known."""
    return territory.held_in(mark, report.markets)


def remarks(mark: Mark, report: Report) -> tuple[str, ...]:
    """What the dates of a mark raise on the day of the report, and what sort of mark it is; empty for most marks."""
    told = []
    if is_supplemental(mark) and not mark.is_dead:
        told.append(f"It is on the {SUPPLEMENTAL}, so it was held to describe: how little does it cover (15 USC 1094)?")
    if mark.mark_type == "figurative" and not mark.is_dead:
        told.append("It is figurative: do its words or its picture tell its maker?")
    if is_undesignated(mark) and not mark.is_dead:
        told.append(f"The list does not say where it holds: {some(report.markets, 'or') or 'in a market of ours'}?")
    if until := renewable_until(mark, report.date):
        told.append(f"Its term ran out on {when_it_ended(mark, report.date)}; it can be renewed until {until}.")
    if mark.expired_by(report.date) and not mark.is_dead:
        told.append(_overdue(mark, report.date))
    elif mark.expires and not mark.is_dead and months_between(report.date, mark.expires) < _SOON:
        told.append(f"Its term runs out on {mark.expires}: will it be renewed?")
    if can_claim_priority(mark, report.date):
        told.append(
            f"Filed on {mark.priority or mark.filed}: for six months its owner can claim that day in other countries "
            "too."
        )
    elif mark.priority and not mark.registered and not mark.is_dead:
        told.append(f"It claims priority, so it ranks from {mark.priority}.")
    return tuple(told)


def _overdue(mark: Mark, today: str) -> str:
    """What is asked of a mark that its list calls live though its term ran out."""
    if not probably_lapsed(mark, today):
        until = grace_ends(mark.expires)
        return f"Its term ran out on {mark.expires}, and it can be renewed until {until}: has it been?"
    return f"{lapsed_words(mark)} What does the register say today?"


def lapsed_words(mark: Mark) -> str:
    """What is said of a mark that probably lapsed though its list calls it live."""
    return (
        f"Its term ran out on {mark.expires}, and the six months for renewing it late are over: it has probably "
        "lapsed, unless the list is behind."
    )


def can_claim_priority(mark: Mark, today: str) -> bool:
    """Whether a mark's first filing is so young that its day can still be claimed elsewhere."""
    earliest = mark.priority or mark.filed
    recent = bool(earliest) and months_between(earliest, today) < _PRIORITY_MONTHS
    return recent and not mark.registered and not mark.is_dead


def in_force_notes(mark: Mark, report: Report) -> tuple[str, ...]:
    """What is to be asked beside the question that a mark raises, as sentences."""
    if "status" in never_stated(report):
        return ()
    if not mark.stated_status:
        given = shorten(mark.status_as_given, 30)
        doubt = f'calls it "{given}": is it in force?' if given else "does not say whether it is in force."
        return (f"The list {doubt}",)
    told = remarks(mark, report)
    if probably_lapsed(mark, report.date):
        told = tuple(one for one in told if one != _overdue(mark, report.date))  # which the question itself says
    if mark.status in ("pending", "opposed"):
        stands = "applied for" if mark.status == "pending" else "applied for, and opposed"
        told = (f"It is only {stands}: when will it be decided?", *told)
    elif mark.status == "live" and opposed_since(mark.status_as_given):
        told = ("It is registered, and opposed: how will that end?", *told)
    return told

