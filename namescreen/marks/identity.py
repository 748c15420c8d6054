"""Which records belong to one mark, and how they are merged. A mark is identified by its office and the number of its
application. A registration number leads to the same mark where some record gives both. A number of zeros alone is no
number.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from enum import IntEnum
from hashlib import blake2b
from typing import TYPE_CHECKING

from ..expressions import expression
from .mark import Mark
from .territory import office_code

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

__all__ = ["Event", "combined", "identity", "real_number", "runs"]


_SEPARATORS = expression(r"[\W_]+")


class Event(IntEnum):
    """How a record affects the earlier records of its mark."""

    WHOLE = 0
    """It replaces them."""
    ROW = 1
    """A row of a table: as WHOLE, but rows of one table with the same words are one mark, as where there is a row for
    each class."""
    PART = 2
    """It replaces the fields that it states; the other fields stay."""
    DELETE = 3
    """It removes the mark."""
    WORDLESS = 4
    """It replaces them, and has no words to compare."""


def real_number(number: str) -> str:
    """The number unchanged; "" if it is only zeros."""
    return number if number.strip("0 .-/") else ""


def identity(office: str, number: str, source: str = "") -> int:
    """The identity of a mark, as a number below 2**64; 0 if it has no number.

    Without an office a number counts within its `source`: two lists typed by hand may both begin at 1.

    Spaces, separators, case and leading zeros do not count. Two of ten million marks collide with a probability of
    three in a million.
    """
    if not number:
        return 0
    plain = (number if number.isdigit() else _SEPARATORS.sub("", number).casefold()).lstrip("0")
    if not plain:
        return 0
    known = office_code(office) or office.casefold() or f"\0{source}"
    return int.from_bytes(blake2b(f"{known}\0{plain}".encode("utf-8", "replace"), digest_size=8).digest(), "little")


def combined(old: Mark, new: Mark, event: Event) -> Mark:
    """Two records merged into one mark: `new` is a part, or another row of the same mark in one table."""
    if event == Event.ROW and old.text.casefold() != new.text.casefold():
        return new
    stated = {
        name: value
        for name in Mark.__dataclass_fields__
        if (value := getattr(new, name)) and not (name == "status" and value == "unknown")
    }
    if event == Event.ROW:
        stated["classes"] = tuple(sorted({*old.classes, *new.classes}))
        if old.goods and new.goods and new.goods not in old.goods:
            stated["goods"] = f"{old.goods}; {new.goods}"
    for own in ("text", "source", "line"):
        stated.pop(own, None)
    return replace(old, **stated)


def runs(
    identities: Sequence[int], registrations: Sequence[int], events: Sequence[int], places: Sequence[int]
) -> tuple[NDArray[np.bool_] | None, dict[int, int], NDArray[np.uint64]]:
    """The outcome of all records: which of them stand, which are merged into a later one, and which marks are removed.
    The first is None if all records stand unchanged; the last holds identities. `places` gives the source of each
    record.
    """
    import numpy as np

    event = np.array(events, np.uint8)
    known = _linked(np.array(identities, np.uint64), np.array(registrations, np.uint64))
    none = np.zeros(0, np.uint64)
    numbered = known[known != 0]
    numbered.sort()  # np.unique would load numpy's masked arrays, 50 ms at every start
    if (event <= Event.ROW).all() and not (numbered[1:] == numbered[:-1]).any():
        return None, {}, none
    # A record without a number belongs to no other: whole ones stay, parts and deletions have no effect.
    stand = (known == 0) & (event <= Event.ROW)
    order = np.argsort(known, kind="stable")
    order = order[known[order] != 0]
    ids, kinds, source = known[order], event[order], np.array(places, np.uint32)[order]
    same = np.r_[False, ids[1:] == ids[:-1]]
    rows = np.r_[False, (source[1:] == source[:-1]) & (kinds[1:] == Event.ROW) & (kinds[:-1] == Event.ROW)]
    starts = (~(same & ((kinds == Event.PART) | rows))).nonzero()[0]  # where a group of records begins
    last = np.r_[ids[starts][1:] != ids[starts][:-1], np.ones(min(len(starts), 1), bool)]
    first, end = starts[last], np.r_[starts[1:], len(ids)][last] - 1
    counts = kinds[first] <= Event.ROW
    stand[order[end[counts]]] = True
    into = {
        int(order[at]): int(order[to])
        for start, to in zip(first[counts & (end > first)].tolist(), end[counts & (end > first)].tolist(), strict=True)
        for at in range(start, to)
    }
    return stand, into, ids[first[(kinds[first] == Event.DELETE) | (kinds[first] == Event.WORDLESS)]]


def _linked(identities: NDArray[np.uint64], registrations: NDArray[np.uint64]) -> NDArray[np.uint64]:
    """Identities, where a record that has only a registration number gets that of the application it belongs to."""
    import numpy as np

    only = (identities == 0) & (registrations != 0)
    if not only.any():
        return identities
    both = ((identities != 0) & (registrations != 0)).nonzero()[0]
    linked = identities.copy()
    linked[only] = registrations[only] ^ np.uint64(1)  # a separate space for registration numbers
    if len(both):
        order = both[np.argsort(registrations[both], kind="stable")]
        found = np.searchsorted(registrations[order], registrations[only])
        found = np.minimum(found, len(order) - 1)
        match = registrations[order][found] == registrations[only]
        linked[only.nonzero()[0][match]] = identities[order][found[match]]
    return linked
