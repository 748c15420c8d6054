"""Readers for the values of a brief: each refuses an invalid value and says what to write instead.

A reader takes the checker, the TOML value and its place; it raises `WrongError`.
"""

from __future__ import annotations

import datetime
import json
import re
from collections.abc import Callable, Mapping
from decimal import Decimal
from typing import Any

from ..expressions import expression
from .checker import Checker, Read, WrongError, shown
from .toml_lines import Place

__all__ = ["list_of", "matching", "read_amount", "read_day", "read_text", "read_weight", "read_word", "table_of",
           "whole_number"]  # fmt: skip

_SEVERAL = expression(r"[,;\n]")
MOST_SHOWN = 80
"""The longest list that a message writes out."""
MOST_WEIGHT = 1000
MOST_AMOUNT = 10**9
"""The largest cost or number of times: beyond any budget, and summed without rounding."""


def read_text(_: Checker, value: Any, place: Place) -> str:
    """A text on one line."""
    if not isinstance(value, str):
        raise WrongError(f"must be a text, not {shown(value)}", f'Write it in quotes: {place[-1]} = "..."')
    return " ".join(value.split())


def read_word(checker: Checker, value: Any, place: Place) -> str:
    """A text that is not empty."""
    if not isinstance(value, str):
        raise WrongError(f"must be a text, not {shown(value)}", "Write it in quotes")
    text = " ".join(value.split())
    if not text:
        raise WrongError("is empty", "Write a word, or take the item out")
    return text


def whole_number(least: int, most: int) -> Read:
    """Reads a whole number from `least` to `most`."""

    def read(_: Checker, value: Any, place: Place) -> int:
        if not isinstance(value, int) or isinstance(value, bool):
            raise WrongError(f"must be a whole number, not {shown(value)}", "Write it without quotes")
        if not least <= value <= most:
            raise WrongError(f"must be from {least} to {most}, not {shown(value)}", "Correct the number")
        return value

    return read


def read_amount(_: Checker, value: Any, place: Place) -> Decimal:
    """A number of money, or of times: 0 to `MOST_AMOUNT`, exact."""
    if isinstance(value, bool) or not isinstance(value, int | Decimal):
        raise WrongError(f"must be a number, not {shown(value)}", "Write it without quotes and without a currency sign")
    if not (Decimal(value).is_finite() and value >= 0):
        raise WrongError(f"must be 0 or more, not {shown(value)}", "Correct the number")
    if value > MOST_AMOUNT:
        raise WrongError(f"must be at most {MOST_AMOUNT:,}, not {shown(value)}", "Correct the number")
    return Decimal(value)


def read_weight(checker: Checker, value: Any, place: Place) -> float:
    """A weight, from 0 to `MOST_WEIGHT`."""
    weight = read_amount(checker, value, place)
    if weight > MOST_WEIGHT:
        raise WrongError(f"must be at most {MOST_WEIGHT}, not {value}", "Only the ratios of weights matter")
    return float(weight)


def read_day(_: Checker, value: Any, place: Place) -> datetime.date:
    """A date, of TOML or as a text in ISO 8601."""
    if isinstance(value, datetime.datetime):
        return value.date()
    if isinstance(value, datetime.date):
        return value
    try:
        return datetime.date.fromisoformat(value)
    except (TypeError, ValueError):
        raise WrongError(f"must be a date, not {shown(value)}", "Write it as year-month-day: 2026-05-31") from None


def list_of(one: Read) -> Read:
    """Reads a list whose items `one` reads; each item once. A single text or whole number is a list of that one, and an
    empty text one of none; a text with commas is refused, as several may be meant."""

    def read(checker: Checker, value: Any, place: Place) -> tuple[Any, ...]:
        if isinstance(value, str) and not value.strip():
            return ()
        if isinstance(value, int) and not isinstance(value, bool):
            return (one(checker, value, place),)
        if isinstance(value, str) and not _SEVERAL.search(value):
            return (one(checker, value, place),)
        if not isinstance(value, list):
            raise WrongError(f"must be a list, not {shown(value)}", _in_brackets(str(place[-1]), value))
        values = []
        for number, item in enumerate(value):
            try:
                values.append(one(checker, item, (*place, number)))
            except WrongError as wrong:
                checker.wrong((*place, number), wrong.what, wrong.remedy)
        return tuple(dict.fromkeys(values))

    return read


def _in_brackets(key: str, value: Any) -> str:
    """How a list is written, with the items that a text seems to hold."""
    meant = [part.strip() for part in _SEVERAL.split(value)] if isinstance(value, str) else []
    listed = ", ".join(part if part.isdecimal() else json.dumps(part, ensure_ascii=False) for part in meant if part)
    return f"Write it in brackets: {key} = [{listed if 0 < len(listed) <= MOST_SHOWN else '...'}]"


def matching(pattern: str, what: str, remedy: str, change: Callable[[str], str] = str) -> Read:
    """Reads a text that, after `change`, matches `pattern` as a whole; it is `what`."""
    compiled = re.compile(pattern)

    def read(checker: Checker, value: Any, place: Place) -> str:
        text = change(read_word(checker, value, place))
        if not compiled.fullmatch(text):
            raise WrongError(f"{shown(value)} is not {what}", remedy)
        return text

    return read


def table_of(known: Mapping[str, Read], name: str) -> Read:
    """Reads the table `name` with these keys."""

    def read(checker: Checker, value: Any, place: Place) -> dict[str, Any]:
        if not isinstance(value, dict):
            raise WrongError(f"must be a table, not {shown(value)}", f"Write its keys below a line [{name}]")
        return checker.table(value, known, place)

    return read
