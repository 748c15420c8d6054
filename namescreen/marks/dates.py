"""Dates as files write them; which of two numbers is the day is never guessed."""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache

__all__ = ["order_of", "plain_date"]

_MONTHS = ("", "jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
_TWO_NUMBERS = re.compile(r"(\d{1,2})([-/. ])(\d{1,2})\2(\d{4})(?:[ T].*)?")


@lru_cache(maxsize=65536)
def plain_date(text: str, order: str = "") -> str:
    """`text` as YYYY-MM-DD, or "" if it is no date or an ambiguous one (03/04/2020 can be two days).

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
    if not (1 <= month <= 12 and 1 <= day <= _days(year, month)):
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


def _month(name: str) -> int:
    return _MONTHS.index(name.lower()) if name.lower() in _MONTHS else 0


def _days(year: int, month: int) -> int:
    if month == 2:
        return 29 if year % 4 == 0 and (year % 100 or year % 400 == 0) else 28
    return 30 if month in (4, 6, 9, 11) else 31
