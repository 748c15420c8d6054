"""What a screening found: the records, with their scores, levels and JSON form."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property
from typing import TYPE_CHECKING, Any

from ..marks.mark import Mark
from ..outcome import NotChecked
from ..policy import Conflict, Level, level_of
from .foreign_words import ForeignWord
from .json import number, plain

if TYPE_CHECKING:
    from ..addresses import Estimate
    from ..closeness import Closeness
    from ..connotations import Coverage, Reading
    from ..goods import Distinctiveness, Relatedness
    from .crowd import SharedWord

__all__ = ["CloseMark", "Screening", "is_knockout"]


WORD_FOR_WORD = 0.8
"""The least closeness of a mark to a translation of the name, where it says the name word for word: meaning
weighs small words too (of, the), which translations add and leave out. Ours, not fitted."""


def _conflict(
    mark: Mark, closeness: Closeness, goods_relatedness: Relatedness | NotChecked, bites: bool | None, **further: Any
) -> Conflict:
    """A mark as the policy looks at it; `further` is the rest of it. A word for the goods keeps no name from being
    near-identical, though it makes it another than the mark; but of a name that is generic as a whole nothing else is
    left to compare."""
    free = bool(further.get("free"))
    written = closeness.as_written if free else None
    appearance, sound = map(min, (closeness.appearance, closeness.sound), written or (1.0, 1.0))
    seen, heard = (0.0, 0.0) if free else closeness.telling
    return Conflict(
        max(appearance, seen),
        max(sound, heard),
        closeness.overall,
        None if isinstance(goods_relatedness, NotChecked) else goods_relatedness.score,
        mark.is_dead,
        bites,
        **further,
    )


def is_knockout(
    mark: Mark, closeness: Closeness, goods_relatedness: Relatedness | NotChecked, bites: bool | None = None
) -> bool:
    """Whether a mark is identical or near-identical, for the same or closely related goods: see `policy.Conflict`."""
    return _conflict(mark, closeness, goods_relatedness, bites).knockout


_SEEN_AS = ("abroad", "free", "descriptive", "credited", "beside")
"""The fields of a mark that say what buyers make of what it shares with the name."""


@dataclass(frozen=True, slots=True)
class InMarket:
    """A mark in a `market` where it holds: its `closeness` as buyers there hear it, whether few of them know both its
    language and that of the name (`abroad`), whether anyone there may use what it shares with the name (`free`),
    whether that is weak there (`descriptive`), though the mark has something stronger `beside`, and whether it is
    `credited` all the same."""

    market: str
    closeness: Closeness
    abroad: bool
    free: bool = False
    descriptive: bool = False
    credited: bool = False
    beside: bool = False

    @property
    def alike(self) -> tuple[float | bool, ...]:
        """In what markets may differ."""
        return self.closeness.sound, *(getattr(self, name) for name in _SEEN_AS)


@dataclass(frozen=True, slots=True)
class Elsewhere:
    """A further mark of the same words, by its `place` among the `others` (0 the first), in `markets` where it asks for
    a closer look and those before it do not hold: its `concern` there, in [0, 1], 1 = most, and whether it is a
    `knockout` there."""

    place: int
    markets: tuple[str, ...]
    concern: float
    knockout: bool


@dataclass(frozen=True)
class CloseMark:
    """An existing mark near a name: how close the names are, and how related the goods.

    `knockout`: a live mark identical or near-identical to the name, for the same or closely related goods. `bites`:
    whether the mark holds in one of the markets; None where that is not known. Of several marks of one owner with the
    same folded words, all equally close, it is the one of most concern; `others` are further ones, at most
    `MOST_JUDGED` with this one, in the order of concern; `marks` is how many there are in all. `translation` is the
    language (BCP 47) in which the mark says the name; empty where it is no translation that is known. `translated_rest`
    is the closeness in meaning of the name without places and words for the goods, where it says only this in another
    language; else 0. `renewable_until` is the day until which a mark whose term ran out can be renewed; empty for
    others. `lapsed` says that the list calls the mark live though its term and the time for renewing it are over.
    `held` are the markets where it holds, if not all of them do. `crowded` says that it shares with the name only a
    word that many owners use, `over_whole` that one is taken over whole, and the other adds only what keeps nobody
    apart; `free` that anyone may use what both share, as the name is generic for the goods, or plainly describes them
    and the mark holds it whole; `credited` that the name takes over the whole of a registered mark, or is close to one
    as a whole, `descriptive` that they share only words which are weak there (see `weak_elements`), `beside` that the
    mark has something stronger besides, `rest` is how close they are without words that seldom keep marks apart, and
    `abroad` that few buyers where it holds know both languages (see `policy.Conflict`). `holds` are all the markets
    where it holds; () where that is not stated, or in none. `by_market` tells how it is heard, understood, weak and
    free in each of them. Closeness, `knockout` and what buyers make of it (`abroad` to `beside`) are those of the
    market where it asks for most attention. `element` tells in a sentence what is common to both where one takes it
    over from the other, or it is left without surplus words; "" for neither; `foreign` which words of the name the mark
    says in another language. Both are among the reasons too.
    """

    mark: Mark
    closeness: Closeness
    goods_relatedness: Relatedness | NotChecked
    knockout: bool
    others: tuple[CloseMark, ...] = ()
    marks: int = 1
    bites: bool | None = None
    translation: str = ""
    translated_rest: float = 0.0
    renewable_until: str = ""
    lapsed: bool = False
    held: tuple[str, ...] = ()
    crowded: bool = False
    over_whole: bool = False
    free: bool = False
    credited: bool = False
    abroad: bool = False
    descriptive: bool = False
    beside: bool = False
    rest: float = 0.0
    holds: tuple[str, ...] = ()
    by_market: tuple[InMarket, ...] = ()
    element: str = ""
    foreign: tuple[ForeignWord, ...] = ()

    @property
    def elsewhere(self) -> tuple[Elsewhere, ...]:
        """The live ones of the `others` that ask for a closer look in markets where neither this one holds nor one
        before them, each as often as it is of another concern in some of these."""
        met = set(self.holds)
        told = []
        for place, other in enumerate(self.others):
            if other.mark.is_dead:
                continue
            alike: dict[tuple[float, bool], list[str]] = {}
            for market, concern, knockout in other.each_market:
                if market not in met and level_of(concern) >= Level.LOOK:
                    alike.setdefault((concern, knockout), []).append(market)
            met.update(market for markets in alike.values() for market in markets)
            told += [Elsewhere(place, tuple(markets), *grade) for grade, markets in alike.items()]
        return tuple(told)

    @property
    def in_markets(self) -> tuple[tuple[str, float, bool], ...]:
        """Each market with the concern of the mark there, and whether it is a knockout there, where markets differ."""
        told = self.each_market
        return told if len({(concern, knockout) for _, concern, knockout in told}) > 1 else ()

    @property
    def each_market(self) -> tuple[tuple[str, float, bool], ...]:
        """Each market where the mark holds with its concern there, and whether it is a knockout there."""
        if len({one.alike for one in self.by_market}) < 2:
            return tuple((market, self.concern, self.knockout) for market in self.holds)
        there = ((one.market, self.there(one)) for one in self.by_market)
        return tuple((market, one.concern, one.knockout) for market, one in there)

    def there(self, one: InMarket) -> CloseMark:
        """This mark as it is in one of its markets."""
        found = self
        if self.closeness is not one.closeness or any(getattr(self, name) != getattr(one, name) for name in _SEEN_AS):
            found = replace(
                self, closeness=one.closeness, abroad=one.abroad, free=one.free, descriptive=one.descriptive,
                credited=one.credited, beside=one.beside,
            )  # fmt: skip
        return found if found.conflict.knockout is found.knockout else replace(found, knockout=not found.knockout)

    def where_gravest(self) -> CloseMark:
        """This mark as it is in the market where it asks for most attention; the first of equals."""
        apart = {one.alike: one for one in reversed(self.by_market)}  # the first of those that are alike
        each = [self.there(one) for one in self.by_market if apart[one.alike] is one]
        return max(each, key=lambda one: (one.knockout, one.concern), default=self)

    @property
    def conflict(self) -> Conflict:
        """The mark as the policy looks at it, where it asks for most attention."""
        meaning = self.closeness.meaning if self.translation else 0.0
        translated = max(meaning, WORD_FOR_WORD) if meaning else self.translated_rest
        return _conflict(
            self.mark, self.closeness, self.goods_relatedness, self.bites, translated=translated,
            renewable=bool(self.renewable_until), crowded=self.crowded, over_whole=self.over_whole, free=self.free,
            credited=self.credited, abroad=self.abroad, descriptive=self.descriptive,
            rest=0.0 if self.descriptive else self.rest, lapsed=self.lapsed, beside=self.beside,
        )  # fmt: skip

    @property
    def meaning(self) -> float | NotChecked:
        """Closeness in meaning, in [0, 1]; `NotChecked` where too few words are known."""
        missing = (one for one in self.closeness.not_checked if one.check == "meaning")
        return next(missing, self.closeness.meaning)

    @cached_property
    def concern(self) -> float:
        """How much the mark asks for attention, in [0, 1], 1 = most: see `policy.Conflict`."""
        return self.conflict.concern

    @property
    def level(self) -> Level:
        """How much attention the mark asks for, in four steps."""
        return level_of(self.concern)

    def to_json(self) -> dict[str, Any]:
        """The mark and its scores side by side, as in the published schema."""
        related = self.goods_relatedness
        return {
            "mark": self.mark.text,
            "overall": number(self.closeness.overall),
            "appearance": number(self.closeness.appearance),
            "sound": number(self.closeness.sound),
            "meaning": plain(self.meaning),
            "goods_relatedness": plain(related if isinstance(related, NotChecked) else related.score),
            "knockout": self.knockout,
            "concern": number(self.concern),
            "level": self.level.words,
            "translation": self.translation,
            **_register_facts(self),
            "goods": self.mark.goods,
            "filed": self.mark.filed,
            "registered": self.mark.registered,
            "priority": self.mark.priority,
            "expires": self.mark.expires,
            "renewable_until": self.renewable_until,
            "territories": list(self.mark.territories),
            "source": self.mark.source,
            "line": self.mark.line,
            "reasons": list(self.closeness.reasons),
            "marks": self.marks,
            "others": [_register_facts(other) for other in self.others],
        }


def _register_facts(close: CloseMark) -> dict[str, Any]:
    """What the register says of a mark, and whether it holds in the markets."""
    return {
        "number": close.mark.number,
        "office": close.mark.office,
        "classes": list(close.mark.classes),
        "status": close.mark.status,
        "owner": close.mark.owner,
        "in_markets": close.bites,
    }


@dataclass(frozen=True, slots=True)
class Screening:
    """What every check found for one name.

    A check that was not made is `NotChecked`, and listed in `not_checked`. `close_marks` stand closest first
    by overall closeness, marks of the same words together as one; `coverage` says what the readings were looked up in.
    `shared_words` are those of the name that many owners use for related goods, and `markets` those asked about, in
    their order.
    """

    name: str
    close_marks: tuple[CloseMark, ...] | NotChecked
    distinctiveness: Distinctiveness | NotChecked
    readings: tuple[Reading, ...] | NotChecked
    coverage: tuple[Coverage, ...]
    addresses: Estimate | NotChecked
    not_checked: tuple[NotChecked, ...]
    shared_words: tuple[SharedWord, ...] = ()
    markets: tuple[str, ...] = ()

    @property
    def knockouts(self) -> tuple[CloseMark, ...]:
        """The close marks that are knockouts, closest first."""
        return tuple(mark for mark in self._marks if mark.knockout)

    @property
    def concern(self) -> float:
        """The most that a close mark asks for attention (see `CloseMark.concern`); 0 if none was found."""
        return max((mark.concern for mark in self._marks), default=0.0)

    @property
    def closest(self) -> float:
        """The overall closeness of the closest mark, in [0, 1]; 0 if no mark was searched."""
        return max((mark.closeness.overall for mark in self._marks), default=0.0)

    @property
    def _marks(self) -> tuple[CloseMark, ...]:
        return () if isinstance(self.close_marks, NotChecked) else self.close_marks

    def to_json(self) -> dict[str, Any]:
        """The screening as JSON types, in the form that `schema` publishes."""
        return {
            "name": self.name,
            "close_marks": plain(self._marks),
            "distinctiveness": plain(self.distinctiveness),
            "readings": [] if isinstance(self.readings, NotChecked) else plain(self.readings),
            "coverage": plain(self.coverage),
            "addresses": plain(self.addresses),
            "not_checked": [{"check": one.check, "because": one.because} for one in self.not_checked],
            "shared_words": plain(self.shared_words),
        }
