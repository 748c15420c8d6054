"""Every check for each of many names: on all processors, results in order as they come."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import islice
from operator import attrgetter
from typing import TYPE_CHECKING, Any, TypeVar

from ..outcome import NotChecked
from ..policy import EVEN, Level
from ..processes import on_all_processors
from ..team import shared_out, team
from ..text import parse
from .checks import Checks
from .results import CloseMark, Screening

if TYPE_CHECKING:
    from pathlib import Path

    from ..register import Register
    from ..register.scope import Filter
    from .crowd import SharedWord

__all__ = ["screen", "screen_rows"]

Result = TypeVar("Result")

WORTH_A_POOL = 4
"""The number of names from which further processes pay for their start (40 ms)."""

MOST_BY_TEAM, MOST_MARKS_BY_TEAM = 50, 2_000
"""The most names, and marks of their register, that are left to the processes which read its words together. For more
it pays to fork further ones afterwards, which share what was loaded. Ours, measured with some hundred marks."""

OVER_FETCH = 2
"""Over-fetch factor. Words that merely describe the goods count less, which changes the order; the search itself does
not know the goods."""

LEAST_JUDGED = 60
"""This many of the closest names are judged, however few are shown: the verdict on a name must not depend on the length
of the list. Ours, not fitted."""

FURTHER = 3
"""Marks that are kept beyond the closest ones for being of more concern than any of these: what is close by its letters
for other goods must not hide what is less close for the same. Ours, not fitted."""

NEAR_A_TRANSLATION = 0.8
"""Closeness of a mark to a translation of the name from which the mark is held against the name. Ours, not fitted."""

MOST_TRANSLATIONS = 10
"""The most marks that are held against a name for one of its translations: the closest to that translation."""


def screen(
    names: Iterable[str],
    register: Register | None,
    *,
    goods: str = "",
    product: str = "",
    classes: Sequence[int] = (),
    languages: Sequence[str] | None = None,
    markets: Sequence[str] = (),
    endings: Sequence[str] = (),
    handle_lengths: Sequence[int] = (),
    top: int = 10,
    today: str = "",
    with_reasons: bool = True,
    progress: Callable[[int, int | None], None] | None = None,
) -> Iterator[Screening]:
    """Every check for each of `names`, in order, as the results come.

    `goods` (plain words) and `classes` (Nice) are those of the `product`, which is told in the seller's
    words; `languages` those of its buyers (BCP 47; None: all that are covered); `markets` the territories where it will
    be sold (see `namescreen.territories`); `endings` and `handle_lengths` what domains and handles are estimated for.
    On the day `today` (YYYY-MM-DD) a mark may be renewable though its term ran out. The reasons of closeness are worked
    out beside the rest, on all processors; not `with_reasons` each is when it is asked for, for who reads few.

    The `top` closest names among the marks are kept, each with the marks that carry it, and every further one met that
    asks for a closer look, with up to `FURTHER` that are of more concern than any of these; those that ask for most
    attention come first, and among those of one level the closest. Marks that are not close (`policy.is_close`) are
    left out, save translations of the name into the buyers' languages. Without a register, and wherever else something
    is missing, the check is `NotChecked`.
    """
    checks = _checks(
        goods=goods, product=product, classes=classes, languages=languages, markets=markets, endings=endings,
        handle_lengths=handle_lengths, today=today,
    )  # fmt: skip
    screener = _Screener(register, checks, top, with_reasons)
    return _told(list(names), screener, screener.screening, "shared", progress)


def screen_rows(
    names: Iterable[str],
    register: Register | None,
    *,
    top: int = 10,
    progress: Callable[[int, int | None], None] | None = None,
    **asked: Any,
) -> Iterator[dict[str, object]]:
    """As `screen`, which says what may be `asked`, each as the JSON types of `Screening.to_json`: to send these from
    one process to another takes a fifth of the time."""
    screener = _Screener(register, _checks(**asked), top)
    return _told(list(names), screener, screener.row, "row", progress)


def _checks(
    *,
    goods: str = "",
    product: str = "",
    classes: Sequence[int] = (),
    languages: Sequence[str] | None = None,
    markets: Sequence[str] = (),
    endings: Sequence[str] = (),
    handle_lengths: Sequence[int] = (),
    today: str = "",
) -> Checks:
    addressed = tuple(endings), tuple(handle_lengths)
    return Checks(goods, tuple(classes), languages, tuple(markets), *addressed, product, today)


def _told(
    names: list[str],
    screener: _Screener,
    alone: Callable[[str], Result],
    shared: str,
    progress: Callable[[int, int | None], None] | None,
) -> Iterator[Result]:
    """What a screener makes of each name, and how many are done."""
    if progress:
        progress(0, len(names))
    for done, found in enumerate(_screened(names, screener, alone, shared), 1):
        yield found
        if progress:
            progress(done, len(names))


def _screened(
    names: list[str], screener: _Screener, alone: Callable[[str], Result], shared: str
) -> Iterator[Result]:
    register = screener.register
    if len(names) < WORTH_A_POOL:
        yield from map(alone, names)
        return
    work: Callable[[str], Result] = getattr(screener, shared)
    small = register is None or len(register.columns) <= MOST_MARKS_BY_TEAM
    with team(len(names) if small and len(names) <= MOST_BY_TEAM else 1) as members:
        if register is not None:
            register.index()  # made before workers start, so that they share it
        if members and screener.can_be_sent:
            yield from shared_out(work, names)
            return
    if register is not None:
        from ..register.search import preload

        preload(len(names))
    anew = (attrgetter(shared), (screener,)) if screener.can_be_sent else None
    yield from on_all_processors(work, names, most=len(names), anew=anew)


@dataclass(frozen=True, slots=True)
class _Screener:
    """Where names are looked for, what they are checked for, how many close marks are kept of each, and whether a name
    that is `shared` out comes with the reasons of its marks."""

    register: Register | None
    checks: Checks
    top: int
    with_reasons: bool = True

    def __reduce__(self) -> tuple[Callable[..., _Screener], tuple[object, ...]]:
        """Sent to another process, it opens the prepared register anew."""
        register = self.register
        if register is None:
            return _Screener, (None, self.checks, self.top, self.with_reasons)
        return _screener_by, (register.path, register.filter, self.checks, self.top, self.with_reasons)

    @property
    def can_be_sent(self) -> bool:
        """Whether another process can have it, as the register is none, or stands in a file."""
        return self.register is None or self.register.path is not None

    def screening(self, name: str) -> Screening:
        """Every check for one name."""
        if self.register is None:
            return self.checks.screening(name, NotChecked("close_marks", "no list of existing marks was given"))
        marks, shared = self._marks(name, self.register)
        return replace(self.checks.screening(name, marks), shared_words=shared)

    def shared(self, name: str) -> Screening:
        """As `screening`, with the reasons worked out if they are wanted: else they would be left for one process."""
        found = self.screening(name)
        if self.with_reasons and not isinstance(found.close_marks, NotChecked):
            for mark in found.close_marks:
                for one in (mark, *mark.others):
                    _ = one.closeness.reasons
        return found

    def row(self, name: str) -> dict[str, object]:
        """As `shared`, as JSON types."""
        return self.shared(name).to_json()

    def _marks(self, name: str, register: Register) -> tuple[tuple[CloseMark, ...], tuple[SharedWord, ...]]:
        from ..closeness.spaced import forms
        from ..closeness.telling import telling_part
        from ..register import Wanted
        from .translated import rest_of

        spaced = forms(name)[-1]
        judged = max(self.top * OVER_FETCH, LEAST_JUDGED)
        wanted = [Wanted(name, judged, goods=self.checks.goods, spaced=spaced if spaced != name else None)]
        other_forms = self.checks.other_forms(name)
        wanted += [Wanted(text, MOST_TRANSLATIONS, NEAR_A_TRANSLATION) for text in other_forms]
        rest, telling = rest_of(name, self.checks.goods), telling_part(name, self.checks.goods)
        if rest and rest != telling:  # nor does a place hide what the rest is in another language
            wanted.append(Wanted(rest, MOST_TRANSLATIONS, NEAR_A_TRANSLATION))
        if telling != name:  # a word for the goods keeps no marks apart
            wanted.append(Wanted(telling, MOST_TRANSLATIONS, EVEN))
        hits = [hit for found in register.find(wanted) for hit in found]
        shared = self.checks.shared_words(name, register)
        close = self.checks.close_marks(name, hits, shared, self.top)
        words = dict.fromkeys(parse(mark.mark.text).words for mark in close)
        kept_words = {*islice(words, self.top)}
        closest = [mark for mark in close if parse(mark.mark.text).words in kept_words]
        further = [mark for mark in close if parse(mark.mark.text).words not in kept_words]
        further.sort(key=lambda mark: -mark.concern)
        gravest = max((mark.concern for mark in closest), default=0.0)
        graver = sum(mark.concern > gravest for mark in further)
        looked_at = sum(mark.level >= Level.LOOK for mark in further)
        kept = (*closest, *further[: max(looked_at, min(FURTHER, graver))])
        return tuple(sorted(kept, key=lambda mark: (not mark.knockout, -mark.level))), shared


def _screener_by(path: Path, chosen: Filter, checks: Checks, top: int, with_reasons: bool) -> _Screener:
    from ..register import open_prepared

    return _Screener(open_prepared(path).with_filter(chosen), checks, top, with_reasons)
