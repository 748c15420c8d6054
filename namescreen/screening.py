"""One name through every check: the only place where the checks meet.

Nothing here reads a file or asks the network but the register that it is given.
"""

from __future__ import annotations

import dataclasses
import datetime
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from enum import Enum
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar

from .errors import DataError
from .marks.mark import Mark
from .outcome import NotChecked

if TYPE_CHECKING:
    from .addresses import Estimate
    from .closeness import Closeness
    from .connotations import Coverage, Reading
    from .goods import Distinctiveness, Relatedness
    from .register import Hit, Register

__all__ = ["CloseMark", "Screening", "is_knockout", "schema", "screen"]

NEAR_IN_APPEARANCE = 0.92
NEAR_IN_SOUND = 0.95
"""From here on two names are near-identical to the eye or the ear. Set by looking at one-letter changes in
names of six letters and more, not fitted."""

SAME_GOODS = 0.6
"""Relatedness from which goods count as the same or closely related: more than a shared class alone (0.5), so
a shared or related subject too. Ours, not fitted."""

SPARE = 2
"""So many times the names asked for are searched where the goods are known: with the goods, words that merely
describe them count less, and the order changes. The product's own goods decide that: to take in every mark's
goods too would cost more than the search."""

MOST_JUDGED = 50
"""Marks with the same words whose goods are compared; the rest are only counted. Status and class decide which come
first (`Selection.prioritized`)."""
NOT_JUDGED = NotChecked(
    "goods_relatedness", f"of many marks with the same words the goods of {MOST_JUDGED} at most are compared"
)

Found = TypeVar("Found")


@dataclass(frozen=True, slots=True)
class CloseMark:
    """An existing mark near a name: how close the names are, and how related the goods.

    `knockout`: an identical or near-identical mark for the same or closely related goods (see `is_knockout`).
    Of several marks with the same folded words, all equally close, it is the one of most concern; `others` are
    further ones, at most `MOST_JUDGED` with this one, in the order of concern; `marks` is how many there are in all.
    """

    mark: Mark
    closeness: Closeness
    goods_relatedness: Relatedness | NotChecked
    knockout: bool
    others: tuple[CloseMark, ...] = ()
    marks: int = 1

    @property
    def meaning(self) -> float | NotChecked:
        """Closeness in meaning, in [0, 1]; `NotChecked` where too few words are known."""
        missing = (one for one in self.closeness.not_checked if one.check == "meaning")
        return next(missing, self.closeness.meaning)

    @property
    def concern(self) -> float:
        """How much the mark asks for attention, in [0, 1], 1 = most: a sort key, not a likelihood.

        Overall closeness, halved where the goods are unrelated and in proportion between: the more alike the
        goods, the less alike the marks need be (interdependence: EUIPO Guidelines, part C, section 2, chapter
        1). Goods that were not compared count as related. A knockout is 1; a dead mark counts half.
        """
        related = self.goods_relatedness
        share = 1.0 if isinstance(related, NotChecked) else related.score
        value = 1.0 if self.knockout else self.closeness.overall * (0.5 + 0.5 * share)
        return value / 2 if self.mark.status == "dead" else value

    def to_json(self) -> dict[str, Any]:
        """The mark and its scores side by side, as in the published schema."""
        return {
            "mark": self.mark.text,
            "overall": _number(self.closeness.overall),
            "appearance": _number(self.closeness.appearance),
            "sound": _number(self.closeness.sound),
            "meaning": _plain(self.meaning),
            "goods_relatedness": _plain(
                related if isinstance(related := self.goods_relatedness, NotChecked) else related.score
            ),
            "knockout": self.knockout,
            "number": self.mark.number,
            "office": self.mark.office,
            "classes": list(self.mark.classes),
            "goods": self.mark.goods,
            "status": self.mark.status,
            "owner": self.mark.owner,
            "source": self.mark.source,
            "line": self.mark.line,
            "reasons": list(self.closeness.reasons),
            "marks": self.marks,
            "others": [
                {
                    "number": other.mark.number,
                    "office": other.mark.office,
                    "classes": list(other.mark.classes),
                    "status": other.mark.status,
                    "owner": other.mark.owner,
                }
                for other in self.others
            ],
        }


@dataclass(frozen=True, slots=True)
class Screening:
    """What every check found for one name.

    A check that was not made is `NotChecked`, and listed in `not_checked`. `close_marks` stand closest first
    by overall closeness, marks of the same words together as one; `coverage` says what the readings were looked up in.
    """

    name: str
    close_marks: tuple[CloseMark, ...] | NotChecked
    distinctiveness: Distinctiveness | NotChecked
    readings: tuple[Reading, ...] | NotChecked
    coverage: tuple[Coverage, ...]
    addresses: Estimate | NotChecked
    not_checked: tuple[NotChecked, ...]

    @property
    def knockouts(self) -> tuple[CloseMark, ...]:
        """The close marks that are knockouts, closest first."""
        marks = () if isinstance(self.close_marks, NotChecked) else self.close_marks
        return tuple(mark for mark in marks if mark.knockout)

    @property
    def concern(self) -> float:
        """The most that a close mark asks for attention (see `CloseMark.concern`); 0 if none was found."""
        marks = () if isinstance(self.close_marks, NotChecked) else self.close_marks
        return max((mark.concern for mark in marks), default=0.0)

    @property
    def closest(self) -> float:
        """The overall closeness of the closest mark, in [0, 1]; 0 if no mark was searched."""
        marks = () if isinstance(self.close_marks, NotChecked) else self.close_marks
        return max((mark.closeness.overall for mark in marks), default=0.0)

    def to_json(self) -> dict[str, Any]:
        """The screening as JSON types, in the form that `schema` publishes."""
        return {
            "name": self.name,
            "close_marks": _list(self.close_marks),
            "distinctiveness": _plain(self.distinctiveness),
            "readings": _list(self.readings),
            "coverage": _plain(self.coverage),
            "addresses": _plain(self.addresses),
            "not_checked": [{"check": one.check, "because": one.because} for one in self.not_checked],
        }


def is_knockout(mark: Mark, closeness: Closeness, goods_relatedness: Relatedness | NotChecked) -> bool:
    """Whether a mark is identical or near-identical, for the same or closely related goods.

    Near-identical: alike to the eye (appearance at least 0.92) or to the ear (sound at least 0.95) as a
    whole. Goods that could not be compared count as the same: a list typed by hand is a list of competitors.
    A mark that its list calls dead is no knockout. Not a legal finding: it says which marks to look at first.
    """
    if mark.status == "dead":
        return False
    if not isinstance(goods_relatedness, NotChecked) and goods_relatedness.score < SAME_GOODS:
        return False
    return _near_identical(closeness)


def _near_identical(closeness: Closeness) -> bool:
    return closeness.appearance >= NEAR_IN_APPEARANCE or closeness.sound >= NEAR_IN_SOUND


def screen(
    names: Iterable[str],
    register: Register | None,
    *,
    goods: str = "",
    classes: Sequence[int] = (),
    languages: Sequence[str] | None = None,
    endings: Sequence[str] = (),
    handle_lengths: Sequence[int] = (),
    top: int = 10,
    progress: Callable[[int, int | None], None] | None = None,
) -> Iterator[Screening]:
    """Every check for each of `names`, in order, as the results come.

    `goods` (plain words) and `classes` (Nice) are those of the product; `languages` those of its buyers
    (BCP 47; None: all that are covered); `endings` and `handle_lengths` what domains and handles are
    estimated for. The `top` closest names among the marks are kept, each with the marks that carry it, and every
    knockout met. Without a register, and wherever else something is missing, the check is `NotChecked`.
    """
    wanted = list(names)
    checks = _Checks(goods, tuple(classes), languages, tuple(endings), tuple(handle_lengths))
    for name, marks in _searched(wanted, register, checks, top, progress):
        yield checks.screening(name, marks)


def _searched(
    names: list[str],
    register: Register | None,
    checks: _Checks,
    top: int,
    progress: Callable[[int, int | None], None] | None,
) -> Iterator[tuple[str, tuple[CloseMark, ...] | NotChecked]]:
    if register is None:
        nothing = NotChecked("close_marks", "no list of existing marks was given")
        for done, name in enumerate(names, 1):
            yield name, nothing
            if progress:
                progress(done, len(names))
        return
    wide = top * SPARE if checks.goods else top
    for name, hits in register.search(names, wide, progress=progress):
        close = checks.close_marks(name, hits)
        yield name, (*close[:top], *(mark for mark in close[top:] if mark.knockout))


@dataclass(frozen=True, slots=True)
class _Checks:
    """What the product is, and each check for it."""

    goods: str
    classes: tuple[int, ...]
    languages: Sequence[str] | None
    endings: tuple[str, ...]
    handle_lengths: tuple[int, ...]

    def screening(self, name: str, marks: tuple[CloseMark, ...] | NotChecked) -> Screening:
        distinctiveness = _made("distinctiveness", lambda: self._distinctiveness(name))
        readings = _made("readings", lambda: self._readings(name))
        addresses = _made("addresses", lambda: self._addresses(name))
        coverage, missing = self._coverage()
        if not coverage and not isinstance(readings, NotChecked):
            # Nothing was met because nothing was looked through.
            readings = NotChecked("readings", f"no words are shipped of {' or '.join(self.languages or ())}")
        parts = (marks, distinctiveness, readings, addresses)
        close = () if isinstance(marks, NotChecked) else marks
        goods = [mark.goods_relatedness for one in close for mark in (one, *one.others)]
        unjudged = [NOT_JUDGED for one in close if _may_hide_a_knockout(one)]
        reasons = dict.fromkeys(one for one in (*parts, *goods, *unjudged, *missing) if isinstance(one, NotChecked))
        return Screening(name, marks, distinctiveness, readings, coverage, addresses, tuple(reasons))

    def close_marks(self, name: str, hits: Sequence[Hit]) -> tuple[CloseMark, ...]:
        return tuple(
            sorted(
                (self._close_mark(name, hit) for hit in hits),
                # Rounded: a last bit that differs is no difference.
                key=lambda one: (-round(one.closeness.overall, 9), -one.concern),
            )
        )

    def _close_mark(self, name: str, hit: Hit) -> CloseMark:
        """The mark of most concern among those of one name, the others with it."""
        from .closeness import compare

        marks = hit.marks.prioritized(self._own_classes(), MOST_JUDGED)
        closeness = compare(name, marks[0].text, name_goods=self.goods or None)
        first, *others = sorted((self._judged(mark, closeness) for mark in marks), key=_gravest_first)
        return dataclasses.replace(first, others=tuple(others), marks=len(hit.marks))

    def _judged(self, mark: Mark, closeness: Closeness) -> CloseMark:
        related = _made("goods_relatedness", lambda: self._relatedness(mark))
        return CloseMark(mark, closeness, related, is_knockout(mark, closeness, related))

    def _own_classes(self) -> tuple[int, ...]:
        """The classes of the product; those that its goods are likely in, where none are stated."""
        likely = _made("goods_relatedness", lambda: self.classes or _likely_classes(self.goods))
        return () if isinstance(likely, NotChecked) else likely

    def _relatedness(self, mark: Mark) -> Relatedness | NotChecked:
        if not self.goods and not self.classes:
            return NotChecked("goods_relatedness", "the goods of the product are not stated")
        if not mark.goods and not mark.classes:
            return NotChecked("goods_relatedness", "the list of marks does not state the goods of some marks")
        from .goods import relatedness

        return relatedness(self.goods, mark.goods, self.classes, mark.classes)

    def _distinctiveness(self, name: str) -> Distinctiveness | NotChecked:
        if not self.goods:
            return NotChecked("distinctiveness", "the goods of the product are not stated in words")
        from .goods import distinctiveness

        return distinctiveness(name, self.goods)

    def _readings(self, name: str) -> tuple[Reading, ...]:
        from .connotations import readings

        # Shipped tables only: what a user has installed must not change a dated, repeatable result.
        return tuple(readings(name, languages=self.languages, dictionaries=()))

    def _coverage(self) -> tuple[tuple[Coverage, ...], tuple[NotChecked, ...]]:
        found = _made("readings", lambda: _coverage(None if self.languages is None else tuple(self.languages)))
        return ((), (found,)) if isinstance(found, NotChecked) else found

    def _addresses(self, name: str) -> Estimate | NotChecked:
        from .addresses import estimate

        return estimate(name, endings=self.endings, handle_lengths=self.handle_lengths, goods=self.goods)


def _may_hide_a_knockout(close: CloseMark) -> bool:
    """Whether a mark of the same words whose goods were not compared might be a knockout where none that was is."""
    seen = (close, *close.others)
    live_unseen = close.marks > len(seen) and all(one.mark.status != "dead" for one in seen)  # the dead come last
    return live_unseen and not close.knockout and _near_identical(close.closeness)


def _gravest_first(close: CloseMark) -> tuple[bool, float, float, bool]:
    """Sorts marks of one name: knockouts, then by concern, goods that are known to be related before others, and live
    marks before dead ones; equal ones stay in the order of the register."""
    related = close.goods_relatedness
    score = 0.0 if isinstance(related, NotChecked) else related.score
    return not close.knockout, -close.concern, -score, close.mark.status == "dead"


def _made(check: str, make: Callable[[], Found | NotChecked]) -> Found | NotChecked:
    """What a check finds; a table or package that it needs and cannot have makes it `NotChecked`."""
    try:
        return make()
    except DataError as error:
        return NotChecked(check, str(error))
    except ImportError as error:
        return NotChecked(check, f"this installation lacks a part that the check needs ({error})")


@cache
def _likely_classes(goods: str) -> tuple[int, ...]:
    from .goods import classes_for

    return tuple(guess.number for guess in classes_for(goods))


@cache
def _coverage(languages: tuple[str, ...] | None) -> tuple[tuple[Coverage, ...], tuple[NotChecked, ...]]:
    """What is known of each language, and which of them are not covered."""
    from .connotations import coverage

    found = tuple(coverage(languages, ()))
    covered = tuple(one for one in found if not isinstance(one, NotChecked))
    # A dictionary that is not installed leaves no language unchecked: coverage says what was looked through.
    missing = (one for one in found if isinstance(one, NotChecked) and one.check.startswith("readings"))
    return covered, tuple(missing)


def schema() -> dict[str, Any]:
    """The JSON Schema (draft 2020-12) of one screening as `Screening.to_json` gives it."""
    import json

    path = Path(__file__).with_name("screening.schema.json")
    published: dict[str, Any] = json.loads(path.read_text("utf-8"))
    return published


def _list(found: tuple[Any, ...] | NotChecked) -> list[Any]:
    return [] if isinstance(found, NotChecked) else [_plain(one) for one in found]


def _number(value: float) -> float:
    """Four places: more would say more than is known, and differ between machines."""
    return round(float(value), 4)


def _plain(value: Any) -> Any:
    """`value` as JSON types; a check that was not made as an object that says why."""
    if isinstance(value, NotChecked):
        return {"not_checked": value.because}
    if hasattr(value, "to_json"):
        return _plain(value.to_json())
    if dataclasses.is_dataclass(value) and not isinstance(value, type):
        return {field.name: _plain(getattr(value, field.name)) for field in dataclasses.fields(value)}
    if isinstance(value, Enum):
        return _plain(value.value)
    if isinstance(value, Mapping):
        return {str(key): _plain(item) for key, item in value.items()}
    if isinstance(value, list | tuple):
        return [_plain(item) for item in value]
    if isinstance(value, set | frozenset):
        return sorted(_plain(item) for item in value)
    if isinstance(value, float):
        return _number(value)
    if isinstance(value, datetime.date | Decimal | Path):
        return str(value)
    return value
