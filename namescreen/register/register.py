"""A register: marks read from files or mapped from a prepared one, what they came from, and how to search
them."""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Collection, Iterable, Iterator, Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from ..errors import Problem
from ..marks.columns import DEAD, MarkColumns, Selection
from ..marks.mark import Mark
from ..team import team
from .hit import Hit, Wanted
from .scope import Filter, Scope
from .store import damage_reported

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    from ..marks.reader import Progress
    from ..marks.tally import Source
    from .index import Index

    Arrays = Mapping[str, NDArray[np.generic]]

__all__ = ["Register"]

WORTH_A_TEAM = 100
"""The number of marks from which a second process pays for its start where their words are read."""


class Register:
    """Existing marks, ready to be searched.

    `marks` are those that count, in the order of their sources; `sources` say what was read, and `problems`
    what was wrong with it. Marks of pictures alone are counted in `figurative`: they cannot be screened by
    words.
    """

    def __init__(
        self,
        columns: MarkColumns,
        sources: Sequence[Source],
        problems: Sequence[Problem] = (),
        *,
        keep: Filter | None = None,
        arrays: Arrays | None = None,
        base: Index | None = None,
        path: Path | None = None,
        save: Callable[[Register], Path | None] | None = None,
    ) -> None:
        self.columns = columns
        self.sources = tuple(sources)
        self.problems = tuple(problems)
        self.filter = keep or Filter()
        self.kept = self.filter.places(columns)
        self.path = path
        self._arrays, self._base, self._save = arrays, base, save
        self._index: Index | None = None

    def index(self, progress: Progress | None = None) -> Index:
        """What a search needs; made when first asked for, unless the register was prepared."""
        if self._index is None:
            from .index import Index

            if self._arrays is None:
                from .build import WORTH_A_POOL, build

                with team(2 if WORTH_A_TEAM <= len(self.columns) < WORTH_A_POOL else 1):
                    self._arrays = build(self.columns.texts(), progress, self._base)
                self._base = None
            with damage_reported(self.path):
                self._index = Index(self._arrays)
            if self._save:
                self.path, self._save = self._save(self), None
        return self._index

    @property
    def marks(self) -> Sequence[Mark]:
        """The marks that count."""
        if self.kept is None:
            return self.columns
        return Selection(self.columns, self.kept.nonzero()[0])

    def __len__(self) -> int:
        return len(self.columns) if self.kept is None else int(self.kept.sum())

    @property
    def figurative(self) -> int:
        """Marks without words among the sources: not screenable here."""
        return sum(source.figurative for source in self.sources)

    @property
    def left_out(self) -> int:
        """Rows of the sources that could not be read."""
        return sum(source.left_out for source in self.sources)

    def digest(self) -> str:
        """SHA-256 of the marks that count, with everything that was read of each: equal for equal marks from files of
        equal names, read in the same way."""
        found = hashlib.sha256(repr(self.columns.sources).encode(errors="surrogatepass"))
        parts = [self.columns.arrays[name] for name in ("rows", "classes", "status")]
        for array in parts if self.kept is None else [*parts, self.kept]:
            found.update(f"{array.nbytes} ".encode())
            found.update(array.data)
        return found.hexdigest()

    def only(
        self,
        *,
        classes: Iterable[int] | None = None,
        live_only: bool = False,
        office: str | Collection[str] | None = None,
        since: str | None = None,
        until: str | None = None,
    ) -> Register:
        """The same register with fewer marks: see `read_register` for the filters."""
        offices = {office} if isinstance(office, str) else set(office or ())
        keep = Filter(frozenset(classes or ()), live_only, frozenset(offices), since or "", until or "")
        return self.with_filter(keep)

    def with_filter(self, keep: Filter) -> Register:
        """The same register with another choice of marks."""
        chosen = Register(
            self.columns,
            self.sources,
            self.problems,
            keep=keep,
            arrays=self._arrays,
            base=self._base,
            path=self.path,
            save=self._save,
        )
        chosen._index = self._index
        return chosen

    def search(
        self,
        names: Iterable[str],
        top: int = 50,
        *,
        progress: Progress | None = None,
    ) -> Iterator[tuple[str, list[Hit]]]:
        """For each of `names`, the `top` closest names of the register by overall closeness, closest first, each with
        the marks that carry it; equally close ones in the order of the register.

        Marks whose folded words are the same carry one name, and take one place however many they are. Names with
        nothing in common with the one searched for (closeness 0) are left out. Results come one by one, as they are
        found.
        """
        from .search import search

        wanted = [Wanted(name, top) for name in names]
        found = search(self._scope(), wanted, len(wanted))
        for done, (one, hits) in enumerate(zip(wanted, found, strict=True), 1):
            if progress:
                progress(done, len(wanted))
            yield one.name, hits

    def marks_with(self, word: str, most: int, classes: Iterable[int] = ()) -> list[Mark]:
        """At most `most` of the marks with a word that is `word`, or begins or ends with it: live ones in one of the
        Nice `classes`, or that state none, before the others. `word` is folded."""
        import numpy as np

        index = self.index()
        with damage_reported(self.path):
            places = np.sort(index.name_marks.gather(index.names_with_part(word))[0].astype(np.int64))
            if self.kept is not None:
                places = places[self.kept[places]]
            arrays = self.columns.arrays
            stated = arrays["classes"].view(np.uint64)[places]
            mask = np.uint64(sum(1 << number for number in classes))
            elsewhere = (stated != 0) & ((stated & mask) == 0) if mask else np.zeros(len(places), bool)
            dead = arrays["status"].view(np.uint8)[places] == DEAD
            order = np.argsort(dead * np.uint8(2) + elsewhere, kind="stable")
            return [self.columns[int(place)] for place in places[order[:most]]]

    def find(self, names: Iterable[Wanted]) -> Iterator[list[Hit]]:
        """As `search`, where every name says for itself what is wanted; in this process."""
        from .search import search

        return search(self._scope(), names)

    def _scope(self) -> Scope:
        return Scope(self.columns, self.index(), self.filter, self.kept, self.path)
