"""Many names against one register, on all processors, results as they come."""

from __future__ import annotations

from collections import deque
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from ..lexicon import foreign_filter
from ..marks.columns import Selection
from ..processes import on_all_processors
from ..tables import open_table
from .hit import Hit, Wanted
from .rescoring import Found, best_of, fetched
from .scope import Filter, Scope
from .store import damage_reported

if TYPE_CHECKING:
    from numpy.typing import NDArray

__all__ = ["preload", "search"]

WORTH_A_POOL = 2_000_000
"""The product of names and marks from which further processes pay for their start."""
WORTH_PRELOADING = 100
"""The number of names from which it pays to preload the tables of the lexicon (0.3 s)."""
TABLES = (
    "wordnet-words.tsv", "wordnet-senses.tsv", "wordnet-exceptions.tsv", "frequency/en.tsv", "word_kinds.tsv",
)  # fmt: skip
NAMES_A_TASK = 4


def search(scope: Scope, names: Iterable[Wanted], expected: int = 0) -> Iterator[list[Hit]]:
    """For each name, the closest names of the register: see `Register.find`. How many names are `expected` decides
    whether further processes are worth starting."""
    asked: deque[Wanted] = deque()
    letters = scope.index.names.text

    def noted() -> Iterator[Wanted]:
        for one in names:
            asked.append(one)
            yield one

    for found in _found(scope, noted(), expected):
        one = asked.popleft()
        yield [
            Hit(
                Selection(scope.columns, scope.carriers(place)), overall, one.name, one.goods, scores, spaced,
                letters(place), as_bare,
            )
            for place, overall, scores, spaced, as_bare in found
        ]


def _found(scope: Scope, names: Iterable[Wanted], expected: int) -> Iterator[list[Found]]:
    finder = _Finder(scope)
    if expected < 2 * NAMES_A_TASK or expected * scope.count < WORTH_A_POOL:
        yield from map(finder.find, names)
        return
    preload(expected)
    anew = None if scope.path is None else (_finder_of_file, (scope.path, scope.filter))
    yield from on_all_processors(finder.find, names, at_once=NAMES_A_TASK, anew=anew)


def preload(names: int) -> None:
    """Preload the tables of the lexicon for so many names, if it pays, before workers start, so that they share
    them."""
    if names >= WORTH_PRELOADING:
        for table in TABLES:
            open_table(table).preload()
        foreign_filter.expect_many()


class _Finder:
    """Finds the closest names to one name after another."""

    def __init__(self, scope: Scope) -> None:
        self._scope, self._index = scope, scope.index
        self._left_out: NDArray[np.bool_] | None = None
        of_marks = self._index.name_marks
        if scope.kept is None:
            self._carried = of_marks.start[1:] > of_marks.start[:-1]
        else:
            counts = np.append(0, np.cumsum(scope.kept[of_marks.values]))[of_marks.start]
            self._carried = counts[1:] > counts[:-1]
            looked_at = self._carried.copy()
            looked_at[self._index.bare[self._carried]] = True  # to find those that say more
            self._left_out = ~looked_at

    def find(self, wanted: Wanted) -> list[Found]:
        """The closest names, equally close ones in the order of their first marks."""
        from ..closeness import features

        own = features(wanted.name)
        with damage_reported(self._scope.path):
            names = fetched(self._index, own, wanted.top, self._left_out, wanted.least)
            found = best_of(self._index, own, names, wanted, self._carried)
            return sorted(found, key=lambda one: (-one.overall, self._scope.carriers(one.place)[0]))


def _finder_of_file(path: Path, chosen: Filter) -> Callable[[Wanted], list[Found]]:
    return _Finder(Scope.of_file(path, chosen)).find
