"""What keeps a registered mark alive, and what time has put in doubt about it, as facts of a few words for its row: use
that its owner may have to show, declarations, renewals, and the UK mark that came from an EU one."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Sequence

from ..marks import territory
from ..marks.mark import Mark
from ..marks.term import GRACE_MONTHS, months_after, probably_lapsed
from ..marks.territory import INTERNATIONAL, could_be_filed_again_in_uk, lives_on_in_uk, office_code
from ..plain_text import some
from .law import unused_years

__all__ = ["explained", "is_international", "is_undesignated", "months_between", "upkeep", "use_is_due"]

_DECLARED_FROM, _DECLARED_BY, _RENEWED_EVERY = 5, 6, 10
"""Years after registration from which and by which use is to be declared (15 USC 1058(a)(1)), and after how many that
is done again, to renew (1058(a)(2), 1059; from memory)."""
_AFTER_OPPOSITION = {"DE": 3, "AT": 3, "CH": 3}
"""Months after registration in which it can still be opposed, where time without use counts from their end (MarkenG
26(5) and 42(1); Austrian MSchG 29a and 33a; Swiss MSchG, articles 12(1) and 31(2); from memory)."""


def upkeep(mark: Mark, markets: Sequence[str], today: str) -> tuple[str, ...]:
    """What time has put in doubt about a mark in `markets` on the day `today` (ISO 8601), each in a few words; () for
    one that has ended or probably lapsed, of which it is first to be known whether it lives."""
    if mark.is_dead or is_undesignated(mark) or probably_lapsed(mark, today):
        return ()
    return (*_use(mark, markets, today), *_declared(mark, markets, today), *_in_uk(mark, markets))


def explained(markets: Iterable[str]) -> str:
    """What the facts of `upkeep` mean, as sentences, for `markets`; all of it where none is stated."""
    stated = tuple(markets)
    asked = set(unused_years(stated)) if stated else {(3, False), (5, True)}
    told = []
    if any(owner_shows for _, owner_shows in asked):
        told.append("*use to be shown*: registered for so long that its owner must prove use when asked to")
    if any(not owner_shows for _, owner_shows in asked):
        told.append("*use in question*: for so long that want of use can be held against it, by who attacks it")
    if not stated or "US" in stated:
        told.append(
            "*declaration* and *renewal* (US): of use between the fifth and the sixth year, and every ten years, six "
            "months later for a fee; else it lapses (15 USC 1058, 1059)"
        )
    return f"In the register: {'; '.join(told)}." if told else ""


def use_is_due(mark: Mark, markets: Sequence[str], today: str) -> bool:
    """Whether a mark is registered for so long that in one of `markets` want of use can be held against it."""
    return not is_international(mark) and not probably_lapsed(mark, today) and bool(_due(mark, markets, today))


def is_international(mark: Mark) -> bool:
    """Whether a mark is an international registration, whose times run from dates in each country."""
    return office_code(mark.office) in INTERNATIONAL


def is_undesignated(mark: Mark) -> bool:
    """Whether a mark holds only where it was extended to, and the list does not say where that is."""
    return bool(mark.office) and not mark.territories


def months_between(earlier: str, later: str) -> int:
    """Whole months from one day to another (ISO 8601); 0 where one of them is no date."""
    try:
        one, two = datetime.date.fromisoformat(earlier), datetime.date.fromisoformat(later)
    except ValueError:
        return 0
    return (two.year - one.year) * 12 + two.month - one.month - (two.day < one.day)


def _due(mark: Mark, markets: Sequence[str], today: str) -> list[tuple[bool, list[str]]]:
    """Whether the owner of a mark has to show its use, and in which markets it is so old that this counts."""
    months = months_between(mark.registered, today) if mark.registered else 0
    found = []
    for (years, owner_shows), where in sorted(unused_years(territory.held_in(mark, markets)).items()):
        old = [one for one in where if months >= 12 * years + _opposed_for(mark, one)]
        if old:
            found.append((owner_shows, old))
    return found


def _opposed_for(mark: Mark, market: str) -> int:
    """Months after registration from which time without use counts in a market: none for an EU mark, whose five years
    run from registration in every state (EUTMR, articles 18(1) and 47(2)), else those of the mark's own law."""
    if "EU" in mark.territories:
        return 0
    return max((_AFTER_OPPOSITION.get(one, 0) for one in (mark.territories or (market,))), default=0)


def _use(mark: Mark, markets: Sequence[str], today: str) -> list[str]:
    due = _due(mark, markets, today)
    if due and is_international(mark):  # see `law`: from when time counts stands in no list
        return ["use to be shown or in question only from a later date in each country"]
    return [f"use {'to be shown' if owner_shows else 'in question'} ({some(where)})" for owner_shows, where in due]


def _declared(mark: Mark, markets: Sequence[str], today: str) -> list[str]:
    """The declaration of use in the sixth year after registration in the United States, or the last renewal: when it
    was or is due, until when it can be made late, or that the mark has lapsed without it."""
    if is_international(mark) or "US" not in territory.held_in(mark, markets) or not mark.registered:
        return []
    months = months_between(mark.registered, today)
    if 12 * _DECLARED_FROM <= months < 12 * _RENEWED_EVERY:
        what, due = "declaration", months_after(mark.registered, 12 * _DECLARED_BY)
    elif months >= 12 * _RENEWED_EVERY and not mark.expires:  # a date of expiry to come says that it was renewed
        periods = months // (12 * _RENEWED_EVERY)
        what, due = "renewal", months_after(mark.registered, 12 * _RENEWED_EVERY * periods)
    else:
        return []
    last = months_after(due, GRACE_MONTHS)
    if today <= due:
        return [f"{what} due by {due} (US)"]
    if today <= last:
        return [f"{what} was due by {due}, late until {last} (US)"]
    return [f"lapsed unless its {what} was made by {last} (US)"]


def _in_uk(mark: Mark, markets: Sequence[str]) -> list[str]:
    """What became in the United Kingdom of a mark of the European Union from before 2021."""
    if "GB" not in markets:
        return []
    if lives_on_in_uk(mark):
        return ["a UK mark of its own came from it in 2021"]
    if could_be_filed_again_in_uk(mark):
        return ["in GB only if filed there by 2021-09-30 (Withdrawal Agreement, article 59)"]
    return []
