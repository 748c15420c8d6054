"""Marks packed in columns: numbers for what a search filters on, compressed blocks of rows for the rest.

A million marks as Python objects cost most of a gigabyte; packed, they cost about what their text compresses
to, and a search decodes only the marks it shows.
"""

from __future__ import annotations

import zlib
from abc import abstractmethod
from array import array
from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from functools import lru_cache
from itertools import islice
from typing import TYPE_CHECKING, overload

from ..errors import DataError
from .identity import Event, combined, identity, runs
from .mark import Mark
from .status import STATUSES

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

__all__ = ["MarkColumns", "MarkWriter", "Selection"]

ROWS_A_BLOCK = 16
"""Rows in one compressed block: larger blocks take less space, but decoding one mark costs more. With 64 a register of
a million words alone is 0.6 per cent smaller, and a screening takes a fortieth longer, more where marks state goods."""
BLOCKS_HELD = 32
"""Blocks kept decompressed: the closest marks of a small list are in a few."""

_FIELD, _ROW = "\x1f", "\x1e"  # the ASCII separators, which cleaned text never holds
_STATUS_NUMBER = {status: number for number, status in enumerate(STATUSES)}
DEAD, _UNKNOWN = _STATUS_NUMBER["dead"], _STATUS_NUMBER["unknown"]
_BEFORE_LINE, _AFTER_LINE = 9 * _FIELD, 5 * _FIELD
"""The fields between the words of a mark and its line, and after that, where none is stated."""


class MarkWriter:
    """Packs records one after another; `columns()` returns the resulting marks.

    Of several records of one mark (see `identity`) the last counts; `events` says of each record what it is.
    """

    def __init__(self) -> None:
        self._rows: list[str] = []
        self._blob = bytearray()
        self._starts = array("Q", [0])
        self._classes = array("Q")
        self._status = array("B")
        self._date = array("I")
        self._office = array("H")
        self._offices: dict[str, int] = {"": 0}
        self._sources: dict[str, int] = {}
        self.identities = array("Q")
        self.registrations = array("Q")
        self.events = array("B")
        self.places = array("I")
        self.kept: dict[str, int] = {}
        self._taken = False

    def __len__(self) -> int:
        return len(self._classes)

    def add(self, mark: Mark, event: Event = Event.WHOLE) -> None:
        """Append one record, whose texts must be free of control characters."""
        row = _FIELD.join(
            (
                mark.text, mark.number, mark.office, mark.registration_number, mark.goods, mark.status_as_given,
                mark.owner, mark.filed, mark.registered, str(mark.line), mark.goods_language, mark.priority,
                mark.expires, mark.mark_type, " ".join(mark.territories),
            )
        )  # fmt: skip
        date = mark.filed or mark.registered
        self._append(
            row,
            sum([1 << number for number in mark.classes]) if mark.classes else 0,
            _STATUS_NUMBER[mark.status],
            int(date.replace("-", "")) if date else 0,
            self._office_number(mark.office.casefold()),
            self._sources.setdefault(mark.source, len(self._sources)),
        )
        self._identify(mark.office, mark.number, mark.registration_number, "" if self._taken else mark.source, event)

    def add_words(self, text: str, source: str, line: int, event: Event) -> None:
        """As `add`, a mark of which nothing but its words is stated."""
        number = self._sources.setdefault(source, len(self._sources))
        self._append(f"{text}{_BEFORE_LINE}{line}{_AFTER_LINE}", 0, _UNKNOWN, 0, 0, number)
        self._identify("", "", "", "", event)

    def take(self, columns: MarkColumns) -> None:
        """Append all marks of some columns, and their removals of earlier marks.

        Records added later update them; numbers without an office then count across sources.
        """
        self._taken = True
        for one in columns.arrays["removed"].tolist():
            self.add(Mark(""), Event.DELETE)
            self.identities[-1] = one
        for row, *values in self._packed_rows(columns):
            self._append(row, *values)
            _, number, office, registration, _ = row.split(_FIELD, 4)
            self._identify(office, number, registration, "", Event.WHOLE)

    def _packed_rows(self, columns: MarkColumns) -> Iterator[tuple[str, int, int, int, int, int]]:
        """The packed rows of some columns, with this writer's numbers for offices and sources."""
        offices = [self._office_number(office) for office in columns.offices]
        sources = [self._sources.setdefault(source, len(self._sources)) for source in columns.sources]
        arrays = [columns.arrays[name] for name in ("classes", "status", "date", "office", "source")]
        for block in range(len(columns.arrays["row_blocks"]) - 1):
            start = block * ROWS_A_BLOCK
            parts = [values[start : start + ROWS_A_BLOCK].tolist() for values in arrays]
            for row, classes, status, date, office, source in zip(columns._block(block), *parts, strict=True):
                yield row, classes, status, date, offices[office], sources[source]

    def _office_number(self, office: str) -> int:
        at = self._offices.get(office)
        if at is None:
            at = self._offices[office] = min(len(self._offices), 65535)
        return at

    def _append(self, row: str, classes: int, status: int, date: int, office: int, source: int) -> None:
        self._rows.append(row)
        if len(self._rows) == ROWS_A_BLOCK:
            self._flush()
        self._classes.append(classes)
        self._status.append(status)
        self._date.append(date)
        self._office.append(office)
        self.places.append(source)

    def _identify(self, office: str, number: str, registration: str, source: str, event: Event) -> None:
        self.identities.append(identity(office, number, source) if number and number != registration else 0)
        self.registrations.append(identity(office, registration, source) if registration else 0)
        self.events.append(event)

    def _flush(self) -> None:
        if self._rows:
            self._blob += zlib.compress(_ROW.join(self._rows).encode("utf-8", "replace"), 6)
            self._starts.append(len(self._blob))
            self._rows.clear()

    def columns(self) -> MarkColumns:
        """The marks that remain after the records so far, in the order of the records that count; `kept` then says how
        many of each source."""
        import numpy as np

        stand, into, removed = runs(self.identities, self.registrations, self.events, self.places)
        standing = np.array(self.places, np.int64) if stand is None else np.array(self.places, np.int64)[stand]
        counts = np.bincount(standing, minlength=len(self._sources))
        self.kept = dict(zip(self._sources, counts.tolist(), strict=False))
        columns = self._packed(removed)
        return columns if stand is None else _settled(columns, stand, into, self.events)

    def _packed(self, removed: NDArray[np.uint64]) -> MarkColumns:
        import numpy as np

        self._flush()
        return MarkColumns(
            {
                "rows": np.frombuffer(bytes(self._blob), np.uint8),
                "row_blocks": np.array(self._starts, np.uint64),
                "classes": np.array(self._classes, np.uint64),
                "status": np.array(self._status, np.uint8),
                "date": np.array(self._date, np.uint32),
                "office": np.array(self._office, np.uint16),
                "source": np.array(self.places, np.uint32),
                "removed": removed,
            },
            tuple(self._sources),
            tuple(self._offices)[:65536],
        )


def _settled(
    records: MarkColumns, stand: NDArray[np.bool_], into: Mapping[int, int], events: Sequence[int]
) -> MarkColumns:
    """The marks that remain after all records (see `identity.runs`). Only records that are merged are decoded."""
    import numpy as np

    writer = MarkWriter()
    earlier: dict[int, Mark] = {}
    together = {*into, *into.values()}
    for at, (row, *values) in enumerate(writer._packed_rows(records)):
        if at not in together:
            if stand[at]:
                writer._append(row, *values)
            continue
        place, mark = into.get(at, at), records[at]
        if place in earlier:
            mark = combined(earlier.pop(place), mark, Event(events[at]))
        if place != at:
            earlier[place] = mark
        else:
            writer.add(mark)
    return writer._packed(records.arrays["removed"].view(np.uint64))


class _Marks(Sequence[Mark]):
    """A sequence of marks that are decoded one by one, when they are asked for."""

    @abstractmethod
    def _at(self, at: int) -> Mark:
        """The mark at a place from 0 to the length less one."""

    @overload
    def __getitem__(self, at: int) -> Mark: ...
    @overload
    def __getitem__(self, at: slice) -> Sequence[Mark]: ...
    def __getitem__(self, at: int | slice) -> Mark | Sequence[Mark]:
        if isinstance(at, slice):
            return [self._at(place) for place in range(*at.indices(len(self)))]
        return self._at(range(len(self))[at])


class MarkColumns(_Marks):
    """A sequence of marks over packed columns, in memory or mapped from a file.

    `arrays` holds `rows` and `row_blocks` (compressed text), `classes` (bit n for Nice class n), `status` (its place in
    `status.STATUSES`), `date` (YYYYMMDD as a number, 0 not stated), `office` and `source` (indexes into `offices` and
    `sources`); `removed` are the identities of marks that were taken away, should an earlier list hold them."""

    def __init__(
        self, arrays: Mapping[str, NDArray[np.generic]], sources: Sequence[str], offices: Sequence[str]
    ) -> None:
        self.arrays = arrays
        self.sources = tuple(sources)
        self.offices = tuple(offices)
        self._held: dict[int, list[str]] = {}

    def __len__(self) -> int:
        return len(self.arrays["classes"])

    def _at(self, at: int) -> Mark:
        block, row = divmod(at, ROWS_A_BLOCK)
        if block not in self._held:
            if len(self._held) >= BLOCKS_HELD:
                del self._held[next(iter(self._held))]
            self._held[block] = self._block(block)
        return self._mark(self._held[block][row], at)

    def __iter__(self) -> Iterator[Mark]:
        at = 0
        for block in range(len(self.arrays["row_blocks"]) - 1):
            for row in self._block(block):
                yield self._mark(row, at)
                at += 1

    def texts(self) -> Iterator[str]:
        """The words of every mark, in order, without decoding the rest."""
        for block in range(len(self.arrays["row_blocks"]) - 1):
            for row in self._block(block):
                yield row.partition(_FIELD)[0]

    def _block(self, block: int) -> list[str]:
        start, end = (int(at) for at in self.arrays["row_blocks"][block : block + 2])
        try:
            rows = zlib.decompress(self.arrays["rows"][start:end].tobytes()).decode().split(_ROW)
        except (zlib.error, ValueError) as error:
            raise self._damaged(block) from error
        if len(rows) != min(ROWS_A_BLOCK, len(self) - ROWS_A_BLOCK * block):
            raise self._damaged(block)
        return rows

    def _damaged(self, block: int) -> DataError:
        what = f"is damaged: the marks from the {ROWS_A_BLOCK * block + 1:,}th on cannot be read"
        return DataError("the prepared register", what, "Make it again with: namescreen register prepare")

    def _mark(self, row: str, at: int) -> Mark:
        try:
            return self._decoded(row, at)
        except (ValueError, IndexError) as error:
            raise self._damaged(at // ROWS_A_BLOCK) from error

    def _decoded(self, row: str, at: int) -> Mark:
        (
            text, number, office, registration, goods, status, owner, filed, registered, line, language,
            priority, expires, kind, territories,
        ) = row.split(_FIELD)  # fmt: skip
        return Mark(
            text,
            number,
            office,
            _numbers(int(self.arrays["classes"][at])),
            goods,
            STATUSES[int(self.arrays["status"][at])],
            status,
            owner,
            filed,
            registered,
            self.sources[int(self.arrays["source"][at])],
            int(line),
            registration,
            language,
            priority,
            expires,
            kind,
            tuple(territories.split()),
        )


@lru_cache(maxsize=1 << 12)
def _numbers(classes: int) -> tuple[int, ...]:
    """The Nice classes that are the bits of a number."""
    return tuple(number for number in range(1, 46) if classes >> number & 1)


class Selection(_Marks):
    """Some of the marks of a sequence, by their places, which ascend."""

    def __init__(self, marks: MarkColumns, places: NDArray[np.integer]) -> None:
        self._marks, self._places = marks, places

    def __len__(self) -> int:
        return len(self._places)

    def _at(self, at: int) -> Mark:
        return self._marks[int(self._places[at])]

    def prioritized(
        self, classes: Collection[int], most: int, holds: Callable[[Mark], bool] | None = None
    ) -> list[Mark]:
        """At most `most` of the marks, in their order: those to look at first. Marks are decoded no further than that
        needs.

        Dead marks come last, and of the live ones those that do not hold in a market, as `holds` tells. Of the others
        the first of each list of Nice classes comes before those that repeat it, so that no class is hidden behind
        another; then those that share one of `classes`, or state none.
        """
        import numpy as np

        if len(self) <= most:
            return list(self)
        arrays = self._marks.arrays
        stated = arrays["classes"].view(np.uint64)[self._places]
        dead = arrays["status"].view(np.uint8)[self._places] == DEAD
        mask = np.uint64(sum(1 << number for number in classes))
        elsewhere = (stated != 0) & ((stated & mask) == 0) if classes else np.zeros(len(self), bool)
        repeats = np.ones(len(self), bool)
        repeats[np.unique(stated | dead, return_index=True)[1]] = False  # bit 0 stands for no class
        order = np.argsort(dead * np.uint8(4) + repeats * np.uint8(2) + elsewhere, kind="stable")
        chosen: dict[int, Mark] = {}
        for ended in (False, True):
            abroad: dict[int, Mark] = {}
            for at in map(int, order[dead[order] == ended]):
                if len(chosen) == most:
                    break
                mark = self[at]
                (chosen if holds is None or holds(mark) else abroad)[at] = mark
            chosen.update(islice(abroad.items(), most - len(chosen)))
        return [chosen[at] for at in sorted(chosen)]
