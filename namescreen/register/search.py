"""Many names against one register, on all processors, results as they come."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from contextlib import nullcontext
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from ..marks.columns import Selection
from ..marks.reader import Progress
from ..tables import open_table
from .hit import Hit
from .processes import in_workers, process_context, processors
from .rescoring import best_of, fetched
from .scope import Filter, Scope
from .store import damage_reported

if TYPE_CHECKING:
    from numpy.typing import NDArray

__all__ = ["search"]

WORTH_A_POOL = 2_000_000
"""The product of names and marks from which further processes pay for their start."""
WORTH_PRELOADING = 100
"""The number of names from which it pays to preload the tables of the lexicon (0.3 s), before the workers start, so
that they share them."""
TABLES = (
    "wordnet-words.tsv", "wordnet-senses.tsv", "wordnet-exceptions.tsv",
)  # fmt: skip
NAMES_A_TASK = 4

Found = list[tuple[int, float]]
"""Names of the index, and how close they are."""


def search(
    scope: Scope, names: Iterable[str], top: int, progress: Progress | None = None
) -> Iterator[tuple[str, list[Hit]]]:
    """For each name, the closest names of the register: see `Register.search`."""
    wanted = list(names)
    for done, (name, found) in enumerate(zip(wanted, _found(scope, wanted, top), strict=True), 1):
        hits = [Hit(Selection(scope.columns, scope.carriers(place)), value, name) for place, value in found]
        if progress:
            progress(done, len(wanted))
        yield name, hits


def _found(scope: Scope, names: Sequence[str], top: int) -> Iterator[Found]:
    finder = _Finder(scope, top)
    if len(names) < 2 * NAMES_A_TASK or len(names) * scope.count < WORTH_A_POOL or processors() == 1:
        yield from map(finder.find, names)
        return
    if len(names) >= WORTH_PRELOADING:
        for table in TABLES:
            open_table(table).preload()
    context = process_context()
    if context.get_start_method() == "fork":
        _inherit(finder)
        yield from in_workers(_find, names, at_once=NAMES_A_TASK, context=context)
    elif scope.path is not None:
        given = scope.path, scope.filter, top
        yield from in_workers(_find, names, at_once=NAMES_A_TASK, context=context, start=_open, given=given)
    else:
        yield from map(finder.find, names)


class _Finder:
    """Finds the closest names to one name after another."""

    def __init__(self, scope: Scope, top: int) -> None:
        self._scope, self._index, self._top = scope, scope.index, top
        self._left_out: NDArray[np.bool_] | None = None
        if scope.kept is not None:
            of_marks = self._index.name_marks
            counts = np.add.reduceat(np.r_[scope.kept[of_marks.values], False].astype(np.int64), of_marks.start[:-1])
            self._left_out = counts == 0

    def find(self, name: str) -> Found:
        """The closest names, equally close ones in the order of their first marks."""
        from ..closeness import features

        own = features(name)
        with damage_reported(self._scope.path) if self._scope.path else nullcontext():
            names = fetched(self._index, own, self._top, self._left_out)
            found = best_of(self._index, own, names, self._top)
        return sorted(found, key=lambda one: (-one[1], self._scope.carriers(one[0])[0]))


_finder: _Finder | None = None


def _inherit(finder: _Finder) -> None:
    global _finder
    _finder = finder


def _open(path: Path, chosen: Filter, top: int) -> None:
    _inherit(_Finder(Scope.of_file(path, chosen), top))


def _find(name: str) -> Found:
    assert _finder is not None
    return _finder.find(name)
