"""One mark near a name, judged: where it holds, what is taken over, how weak what both share is to the buyers of each
market, and how they hear it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, TypeVar

from ..errors import DataError
from ..marks.mark import Mark
from ..marks.term import probably_lapsed, renewable_until
from ..marks.territory import bites_in, held_in
from ..outcome import NotChecked
from ..policy import CLOSE_AS_A_WHOLE, EVEN, most_concern
from ..territories import languages_of
from ..text import parse
from .foreign_words import ForeignWord
from .in_markets import as_heard_where
from .results import CloseMark, InMarket
from .same_words import COUNTS, same_words, told_of_forms
from .surplus import closer_rest
from .taken_over import TakenOver, is_credited, taken_over
from .weak_elements import Common, common_to_both, told_of_weakness

if TYPE_CHECKING:
    from ..closeness import Closeness
    from ..goods import Relatedness

__all__ = ["Near", "judged", "made", "told_first"]

Found = TypeVar("Found")


@dataclass(frozen=True, slots=True)
class Near:
    """A mark near a name: how close, for how related goods, and in which `language` it says all of `said`, or which
    words of the name (`foreign`); "" for none."""

    mark: Mark
    closeness: Closeness
    related: Relatedness | NotChecked
    language: str
    said: str
    foreign: tuple[ForeignWord, ...]


def judged(name: str, near: Near, goods: str, markets: tuple[str, ...], today: str) -> CloseMark:
    """A mark as it is where it asks for most attention, with how it is in each of the `markets` where it holds."""
    mark, closeness, language, said = near.mark, near.closeness, near.language, near.said
    bites = bites_in(mark, markets) if markets else None
    lapsed, held = probably_lapsed(mark, today), held_in(mark, markets)
    whole = taken_over(name, mark, goods)
    where = held if bites and held else ("",)
    rest, told = closer_rest(name, mark, goods, whole, closeness.overall, where)
    forms = same_words(name, mark.text, languages_of(held)) if max(rest, closeness.overall) < COUNTS else ""
    if forms:
        rest, told = COUNTS, told_of_forms(name, mark.text, forms)
    common = _common(name, mark, goods) if max(rest, most_concern(closeness.overall)) >= EVEN else None
    weak = {market: common.weak_in(goods, market) if common else None for market in where}
    if all(weak.values()):  # there is nothing else to compare
        rest, told = (0.0, "")
    closeness = told_first(told, closeness)
    closeness = told_first(told_of_weakness(common, goods, weak) if common else "", closeness)
    closeness = told_first("" if whole is None else str(whole), closeness)
    found = CloseMark(
        mark, closeness, near.related, False, bites=bites, translation=language if said == name else "",
        translated_rest=_said_in_part(name, said, mark.text, goods, where) if said != name else 0.0,
        renewable_until=renewable_until(mark, today), lapsed=lapsed,
        over_whole=whole is not None and not (whole.further or whole.second),
        held=held if len(held) < len(markets) else (), holds=held if bites else (),
        rest=rest, element=told if whole is None else str(whole), foreign=near.foreign,
    )  # fmt: skip

    def as_seen(one: InMarket) -> InMarket:
        alone = common if weak.get(one.market) is not None else None
        names = alone is not None and alone.only_names(weak.get(one.market))
        credited = not (lapsed or names) and _credited(whole, mark, closeness, alone, goods, one.market)
        beside = names or (alone is not None and not alone.mark_is_weak(goods, one.market))
        return replace(one, descriptive=alone is not None, credited=credited, beside=beside)

    return as_heard_where(found, name, said, language, markets, as_seen)


def _said_in_part(name: str, said: str, mark: str, goods: str, markets: tuple[str, ...]) -> float:
    """What a mark counts that says a part of a name in another language: no more than one of the very words of it, and
    more where the rest is weak to the buyers of one of the `markets`."""
    from ..closeness import compare
    from ..goods import weakest

    left = [word for word in parse(name).words if word not in parse(said).words]
    alone = goods and any(weakest(left, goods, market) is not None for market in markets)
    return compare(said, mark).meaning * (COUNTS if alone else most_concern(compare(name, said).overall))


def _common(name: str, mark: Mark, goods: str) -> Common | None:
    found = made("meaning", lambda: common_to_both(name, mark.text)) if goods else None
    return None if isinstance(found, NotChecked) else found


def _credited(
    whole: TakenOver | None, mark: Mark, closeness: Closeness, weak: Common | None, goods: str, market: str
) -> bool:
    """Whether a registered mark is credited with some distinctiveness (`policy.CREDITED`): the name takes over all of
    it, or is close to it as a whole; where both share only `weak` words, if all of the mark is as weak, and these are
    all that one of them says."""
    if whole is not None and is_credited(whole, mark):
        return True
    if mark.status != "live":
        return False
    if weak is None:
        return closeness.overall >= CLOSE_AS_A_WHOLE
    as_close = closeness.overall >= (EVEN if weak.is_all_of_one else CLOSE_AS_A_WHOLE)
    return as_close and weak.mark_is_weak(goods, market)


def told_first(sentence: str | None, closeness: Closeness) -> Closeness:
    """`closeness` with a sentence, if there is one, as its first reason."""
    if not sentence:
        return closeness
    from ..closeness import told_first as with_first

    return with_first(sentence, closeness)


def made(check: str, make: Callable[[], Found | NotChecked]) -> Found | NotChecked:
    """What a check finds; a table or package that it needs and cannot have makes it `NotChecked`."""
    try:
        return make()
    except DataError as error:
        return NotChecked(check, str(error))
    except ImportError as error:
        return NotChecked(check, f"this installation lacks a part that the check needs ({error})")
