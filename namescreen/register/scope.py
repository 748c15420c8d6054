"""What a search looks through: the marks that count, and the index of their names."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple

from ..marks.columns import DEAD, MarkColumns
from .store import damage_reported, open_store

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    from .index import Index

    Arrays = Mapping[str, NDArray[np.generic]]

__all__ = ["Filter", "Scope", "open_arrays"]


class Filter(NamedTuple):
    """Which marks of a register count. A filter leaves out only marks that state otherwise."""

    classes: frozenset[int] = frozenset()
    live_only: bool = False
    offices: frozenset[str] = frozenset()
    since: str = ""
    until: str = ""

    def places(self, marks: MarkColumns) -> NDArray[np.bool_] | None:
        """True for every mark that counts; None if all do."""
        import numpy as np

        if self == Filter():
            return None
        keep = np.ones(len(marks), bool)
        arrays = marks.arrays
        if self.classes:
            mask = np.uint64(sum(1 << number for number in self.classes))
            stated = arrays["classes"].astype(np.uint64, copy=False)
            keep &= (stated == 0) | ((stated & mask) != 0)
        if self.live_only:
            keep &= arrays["status"] != DEAD
        if self.offices:
            wanted = {office.casefold() for office in self.offices} | {""}
            numbers = [number for number, office in enumerate(marks.offices) if office in wanted]
            keep &= np.isin(arrays["office"], numbers)
        for limit, sign in ((self.since, 1), (self.until, -1)):
            if limit:
                date = arrays["date"].astype(np.int64)
                keep &= (date == 0) | (sign * (date - int(limit.replace("-", ""))) >= 0)
        return keep


@dataclass(frozen=True)
class Scope:
    """The marks of a register and their index. `kept` is True for every mark that counts (None: all do); `path` is
    that of the prepared file, if it is one."""

    columns: MarkColumns
    index: Index
    filter: Filter
    kept: NDArray[np.bool_] | None
    path: Path | None = None

    @property
    def count(self) -> int:
        """How many marks count."""
        return len(self.columns) if self.kept is None else int(self.kept.sum())

    @classmethod
    def of_file(cls, path: Path, chosen: Filter) -> Scope:
        """The marks of a prepared register that count by a filter."""
        from .index import Index

        columns, arrays, _ = open_arrays(path)
        with damage_reported(path):
            return cls(columns, Index(arrays), chosen, chosen.places(columns), path)

    def carriers(self, name: int) -> NDArray[np.uint32]:
        """The places of the marks that carry a name of the index and count, ascending."""
        marks = self.index.name_marks.one(name)
        return marks if self.kept is None else marks[self.kept[marks]]


def open_arrays(path: Path) -> tuple[MarkColumns, Arrays, Mapping[str, Any]]:
    """The marks and all arrays of the register prepared at `path`, mapped, and what it says of itself.

    Raises `DataError`, with the remedy, if it is missing, cut, damaged or of another version.
    """
    arrays, about = open_store(path, _check)
    with damage_reported(path):
        return MarkColumns(arrays, about["source_names"], about["offices"]), arrays, about


def _check(arrays: Mapping[str, Any], about: Mapping[str, Any]) -> None:
    from .integrity import check_arrays

    check_arrays(arrays, len(about["source_names"]), len(about["offices"]))
