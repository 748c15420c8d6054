"""The marks of the same words owner by owner: each owner's is a matter of its own, and one owner's further
registrations of the words stand with it."""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence

from ..outcome import NotChecked
from .results import CloseMark

__all__ = ["MOST_OWNERS", "by_owner", "gravest_first"]

MOST_OWNERS = 8
"""Owners of the same words whose marks stand by themselves, those of most concern first; the marks of the rest are told
with the first. Ours: what an adviser can take up."""


def by_owner(judged: Sequence[CloseMark], marks: int) -> tuple[CloseMark, ...]:
    """Of marks of the same words, the gravest first, one for each owner, with the others of this owner: marks whose
    owner is not stated count as of one. `marks` is how many there are in all, those that were not judged included."""
    owned: dict[str, list[CloseMark]] = {}
    for one in judged:
        owned.setdefault(one.mark.owner_folded, []).append(one)
    first, *rest = owned.values()
    kept, left = rest[: MOST_OWNERS - 1], rest[MOST_OWNERS - 1 :]
    first += [one for alike in left for one in alike]
    unjudged = marks - len(judged)
    each = (_together(alike, len(alike) + (0 if at else unjudged)) for at, alike in enumerate((first, *kept)))
    return tuple(each)


def _together(alike: Sequence[CloseMark], marks: int) -> CloseMark:
    """The first of some marks, of `marks` in all, with the others: most stand alone, and are what they were."""
    first, *others = alike
    if not others and marks == first.marks:
        return first
    return dataclasses.replace(first, others=tuple(others), marks=marks)


def gravest_first(close: CloseMark, today: str) -> tuple[bool, int, bool, float, bool, float, tuple[int, str]]:
    """Sort key of the marks of one name: knockouts first, then by level, of one level live marks before dead ones, then
    by concern, those whose term has not run out, goods that are known to be related, and seniority; equal ones stay in
    the order of the register."""
    related = close.goods_relatedness
    score = 0.0 if isinstance(related, NotChecked) else related.score
    ended, overdue = close.mark.is_dead, bool(today) and close.mark.expired_by(today)
    return not close.knockout, -close.level, ended, -close.concern, overdue, -score, close.mark.seniority
