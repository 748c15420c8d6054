"""Dates as files write them; which of two numbers is the day is never guessed, and what cannot be is not believed."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping
from functools import lru_cache

from ..expressions import expression

__all__ = ["believed", "order_of", "plain_date"]

FIRST_YEAR, LAST_YEAR = 1800, 2199
"""No register of marks is as old as the one (France's began in 1857, from memory), and no term ends after the other:
what lies beyond stands for something else, such as a day that never comes."""

_MONTHS = ("", "jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
_TWO_NUMBERS = expression(r"(\d{1,2})([-/. ])(\d{1,2})\2(\d{4})(?:[ T].*)?")


@lru_cache(maxsize=65536)
def plain_date(text: str, order: str = "") -> str:
    """`text` as YYYY-MM-DD, or "" if it is no day of a mark's life or an ambiguous one (03/04/2020 can be two).

    `order` says which number comes first where both could be the day: "day", "month" or "" for not known.
    """
    text = text.strip()
    if match := re.match(r"(\d{4})[-/.]?(\d{2})[-/.]?(\d{2})(?!\d)", text):
        year, month, day = (int(part) for part in match.groups())
    elif match := _TWO_NUMBERS.fullmatch(text):
        first, second, year = int(match[1]), int(match[3]), int(match[4])
        if first > 12 or first == second:
            day, month = first, second
        elif second > 12:
            day, month = second, first
        elif order == "day" or (not order and match[2] == "."):
            day, month = first, second
        elif order == "month":
            day, month = second, first
        else:
            return ""
    elif match := re.fullmatch(r"(\d{1,2})[- ]([A-Za-z]{3})[a-z]*[- ,]+(\d{4})", text):
        day, month, year = int(match[1]), _month(match[2]), int(match[3])
    elif match := re.fullmatch(r"([A-Za-z]{3})[a-z]* (\d{1,2}),? (\d{4})", text):
        month, day, year = _month(match[1]), int(match[2]), int(match[3])
    else:
        return ""
    if not (FIRST_YEAR <= year <= LAST_YEAR and 1 <= month <= 12 and 1 <= day <= _days(year, month)):
        return ""
    return f"{year:04}-{month:02}-{day:02}"


def order_of(dates: Iterable[str]) -> str:
    """Which number comes first in the dates of one column: "day" or "month", where some number above 12 shows it and no
    other contradicts; else ""."""
    shown = set()
    for text in dates:
        match = _TWO_NUMBERS.fullmatch(text.strip())
        if match:
            first, second = int(match[1]), int(match[3])
            if first > 12 >= second:
                shown.add("day")
            elif second > 12 >= first:
                shown.add("month")
    return shown.pop() if len(shown) == 1 else ""


_IN_ORDER = (("priority", "filed"), ("filed", "registered"), ("filed", "expires"))
"""Days of a mark's life of which the second is never the earlier one."""


def believed(
    dates: Mapping[str, str], latest: str, note: Callable[[str, str, str], None], *, extended: bool = False
) -> dict[str, str]:
    """The `dates` (YYYY-MM-DD or "", by field) without those that cannot be, which go to `note(what, remedy, field)`:
    what has happened after the day `latest`, and each pair in the wrong order. A mark that was `extended` from
    elsewhere may have been registered before it was filed for here."""
    kept = dict(dates)
    for field in ("filed", "priority", "registered"):
        if kept[field] > latest:
            note(f"{kept[field]} is yet to come", "The mark was kept without that date", field)
            kept[field] = ""
    for first, second in _IN_ORDER:
        if kept[first] > kept[second] > "" and not (extended and second == "registered"):
            note(
                f"{kept[second]} is before {first}, {kept[first]}",
                "One of them must be wrong: the mark was kept without both",
                second,
            )
            kept[first] = kept[second] = ""
    return kept


def _month(name: str) -> int:
    return _MONTHS.index(name.lower()) if name.lower() in _MONTHS else 0


def _days(year: int, month: int) -> int:
    if month == 2:
        return 29 if year % 4 == 0 and (year % 100 or year % 400 == 0) else 28
    return 30 if month in (4, 6, 9, 11) else 31
