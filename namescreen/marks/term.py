"""How long a mark is registered for, and how long one whose term ran out can still be renewed: the laws of the US (15
USC 1059(a)), the EU (Regulation 2017/1001, article 53(3)) and the UK (Trade Marks Act 1994, section 43(3)) all give six
months (from memory)."""

from __future__ import annotations

import calendar
import datetime

from .mark import Mark
from .status import ran_out
from .territory import office_code

__all__ = [
    "GRACE_MONTHS", "grace_ends", "months_after", "probably_lapsed", "renewable_until", "term_ended", "when_it_ended",
]  # fmt: skip

GRACE_MONTHS = 6
"""Months after its term in which a mark can be renewed: the least that the Paris Convention, article 5bis(1), asks of
its members."""

TERM_YEARS = 10
FROM_FILING = frozenset(("EM", "EU", "GB"))
"""Offices whose marks are registered for ten years from filing, to the day (Regulation 2017/1001, article 52; Trade
Marks Act 1994, sections 40(3) and 42; from memory). In the US it is ten years from registration (15 USC 1058(a))."""


def term_ended(mark: Mark, today: str) -> str:
    """The day (YYYY-MM-DD) on which the term of a mark ended that its list calls dead for that; where the list does not
    state it, the last end of ten years before `today`, by the law of its office. "" if neither is known."""
    if not (today and mark.is_dead and ran_out(mark.status_as_given, office_code(mark.office))):
        return ""
    if mark.expires:
        return mark.expires
    of = office_code(mark.office) or (mark.territories[0] if len(mark.territories) == 1 else "")
    begins = mark.filed if of in FROM_FILING else mark.registered if of == "US" else ""
    terms = (months_after(begins, 12 * TERM_YEARS * n) for n in range(1, 30)) if begins else ()
    return max((end for end in terms if end < today), default="")


def when_it_ended(mark: Mark, today: str) -> str:
    """The day on which the term of a mark ended, in words, and that it is reckoned where the list does not state it."""
    return term_ended(mark, today) + ("" if mark.expires else " (reckoned: ten years, by the law of its office)")


def renewable_until(mark: Mark, today: str) -> str:
    """Until when a mark that its list calls dead because its term ran out can be renewed (YYYY-MM-DD); "" if that day
    is past `today` (YYYY-MM-DD), no date is known, or something else ended the mark."""
    ended = term_ended(mark, today)
    until = grace_ends(ended) if ended else ""
    return until if until >= today else ""


def probably_lapsed(mark: Mark, today: str) -> bool:
    """Whether the list calls a mark live, and on the day `today` (YYYY-MM-DD) its term and the months for renewing it
    late are over."""
    return bool(today) and not mark.is_dead and mark.expired_by(today) and grace_ends(mark.expires) < today


def grace_ends(expires: str) -> str:
    """The last day (YYYY-MM-DD) on which a mark whose term ran out on the day `expires` can be renewed."""
    return months_after(expires, GRACE_MONTHS)


def months_after(day: str, months: int) -> str:
    """The day (YYYY-MM-DD) so many months after another, the last of its month where that is shorter."""
    first = datetime.date.fromisoformat(day)
    years, month = divmod(first.month - 1 + months, 12)
    last = calendar.monthrange(first.year + years, month + 1)[1]
    return datetime.date(first.year + years, month + 1, min(first.day, last)).isoformat()
