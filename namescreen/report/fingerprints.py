"""Which marks a list held, short enough to keep in a report, so that a later one can tell what came and what went."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from hashlib import sha256

from ..marks.mark import Mark
from ..text import fold
from .model import ListSearched

__all__ = ["MOST", "came_and_went", "fingerprints", "was_held"]

MOST = 5_000
"""Marks of a list that is remembered mark by mark; of a longer one only the number of its rows is told."""

_LENGTH = 10  # hexadecimal digits: two of 5,000 marks share one about once in a hundred thousand lists


def fingerprints(marks: Sequence[Mark]) -> str:
    """The marks of a list as one text, the same for the same marks in any order; empty for too long a list."""
    return "" if len(marks) > MOST else "".join(sorted({_one(mark) for mark in marks}))


def _one(mark: Mark) -> str:
    """By office and number; without a number by words and owner."""
    parts = (mark.office, mark.number) if mark.number else ("", fold(mark.text), fold(mark.owner))
    return sha256("\0".join(parts).encode("utf-8", "surrogatepass")).hexdigest()[:_LENGTH]


def _split(text: str) -> set[str]:
    return {text[at : at + _LENGTH] for at in range(0, len(text), _LENGTH)}


def came_and_went(old: ListSearched, new: ListSearched) -> tuple[int, int] | None:
    """How many marks a list has now and had not before, and the other way; None where that is not known."""
    if not old.marks or not new.marks:
        return None
    before, after = _split(old.marks), _split(new.marks)
    return len(after - before), len(before - after)


def was_held(mark: Mark, lists: Iterable[ListSearched]) -> bool | None:
    """Whether one of `lists` held a mark; None where that is not known."""
    lists = tuple(lists)
    if any(_one(mark) in _split(one.marks) for one in lists):
        return True
    return False if lists and all(one.marks for one in lists) else None
