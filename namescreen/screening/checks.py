"""Every check for one name."""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cache
from heapq import nlargest
from typing import TYPE_CHECKING, TypeVar

from ..marks.mark import Mark
from ..marks.territory import bites_in, held_in
from ..outcome import NotChecked
from ..policy import NEAR_IN_APPEARANCE, Level, is_close, level_of, most_concern
from ..territories import domain_endings, languages_of, spoken_in, understood_in
from ..text import parse
from .crowd import SharedWord, crowded_in, divided, shared_words, shares_only
from .foreign_words import ForeignWord, told_of
from .heard import SOME_SOUND
from .in_markets import freed
from .judging import Near, judged, made, told_first
from .owners import by_owner, gravest_first
from .results import CloseMark, Screening
from .surplus import adds_surplus
from .translated import foreign_words_held, other_forms, rest_of, translated_in

if TYPE_CHECKING:
    from ..addresses import Estimate
    from ..closeness import Closeness
    from ..connotations import Coverage, Reading
    from ..goods import Distinctiveness, Relatedness
    from ..register import Hit, Register

__all__ = ["MOST_JUDGED", "NOT_JUDGED", "Checks"]

SOME_MEANING = 0.45
"""Closeness in meaning from which a mark is looked at as a translation of the name, or of a word of it: to look at
every mark would cost more than all else. Ours, not fitted."""

SOME_APPEARANCE = 0.35
"""Closeness in appearance from which it is looked whether the name holds the whole mark: what is less is a small part
of a long name. Ours, not fitted."""

MOST_JUDGED = 50
"""Marks with the same words whose goods are compared; the rest are only counted. Status and class decide which come
first, and whether they hold in a market (`Selection.prioritized`)."""
NOT_JUDGED = NotChecked(
    "goods_relatedness", f"of many marks with the same words the goods of {MOST_JUDGED} at most are compared"
)

Found = TypeVar("Found")


@dataclass(frozen=True, slots=True)
class Checks:
    """What the product is, and each check for it."""

    goods: str
    classes: tuple[int, ...]
    languages: Sequence[str] | None
    markets: tuple[str, ...]
    endings: tuple[str, ...]
    handle_lengths: tuple[int, ...]
    product: str = ""
    today: str = ""

    def screening(self, name: str, marks: tuple[CloseMark, ...] | NotChecked) -> Screening:
        """Every check for a name whose close marks are known."""
        distinctiveness = made("distinctiveness", lambda: self._distinctiveness(name))
        if not isinstance(marks, NotChecked):
            marks = freed(marks, name, distinctiveness, self.today)
        if _is_coined(distinctiveness) and not isinstance(marks, NotChecked):
            marks = tuple(map(_with_no_meaning, marks))
        readings = made("readings", lambda: self._readings(name))
        addresses = made("addresses", lambda: self._addresses(name))
        coverage, missing = self._coverage()
        parts = (marks, distinctiveness, readings, addresses)
        close = () if isinstance(marks, NotChecked) else marks
        goods = [mark.goods_relatedness for one in close for mark in (one, *one.others)]
        unjudged = [NOT_JUDGED for one in close if _may_hide_a_knockout(one)]
        unread = _goods_not_read(distinctiveness)
        told = (*parts, *unread, *goods, *unjudged, *missing)
        reasons = dict.fromkeys(one for one in told if isinstance(one, NotChecked))
        return Screening(
            name, marks, distinctiveness, readings, coverage, addresses, tuple(reasons), markets=self.markets
        )

    def other_forms(self, name: str) -> tuple[str, ...]:
        """The name in other words: as compounds of the buyers' languages, and in English."""
        found = made("close_marks", lambda: other_forms(name, self._buyers()))
        return () if isinstance(found, NotChecked) else found

    def shared_words(self, name: str, register: Register) -> tuple[SharedWord, ...]:
        """The words of a name that many owners use for related goods."""

        def counts(mark: Mark) -> bool:
            return not mark.is_dead and not (self.markets and bites_in(mark, self.markets) is False)

        def related(mark: Mark) -> float:
            found = self._relatedness(mark)
            return 1.0 if isinstance(found, NotChecked) else found.score

        def where(mark: Mark) -> tuple[str, ...]:
            return held_in(mark, self.markets) or ("",)

        own = self._own_classes()
        found = made("close_marks", lambda: shared_words(name, register, self.goods, own, counts, related, where))
        return () if isinstance(found, NotChecked) else found

    def close_marks(
        self, name: str, hits: Sequence[Hit], shared: Sequence[SharedWord] = (), top: int | None = None
    ) -> tuple[CloseMark, ...]:
        """What was found of a name in the register, the closest first; `shared` are its words that many owners use. If
        only the `top` closest are wanted, and the gravest, others that surely ask for no closer look may be missing."""
        several = len(divided(name)) > 1  # else all of the name is shared

        @cache
        def only(text: str, words: frozenset[str]) -> bool:
            return shares_only(name, text, words, self.goods)

        def crowded(close: CloseMark) -> CloseMark:
            words = crowded_in(shared, held_in(close.mark, self.markets))
            alone = bool(words) and only(close.mark.text, words)
            return dataclasses.replace(close, crowded=True) if alone else close  # most marks are not

        def all_crowded(close: CloseMark) -> CloseMark:
            found = crowded(close)
            return dataclasses.replace(found, others=tuple(map(crowded, close.others))) if close.others else found

        def judged(hit: Hit) -> tuple[CloseMark, ...]:
            found = self._close_marks(name, hit)
            return tuple(map(all_crowded, found)) if shared and several else found

        minor = _surely_minor(name, hits, top, self.goods)
        each = [() if at in minor else judged(hit) for at, hit in enumerate(hits)]
        gravest = max((one.concern for marks in each for one in marks), default=0.0)
        for at, concern in minor.items():
            if concern >= gravest:
                each[at] = judged(hits[at])
        found = {(one.mark.text, one.mark.owner_folded): one for marks in each for one in marks}
        return tuple(
            sorted(
                found.values(),
                # Rounded: a last bit that differs is no difference.
                key=lambda one: (-round(one.closeness.overall, 9), -one.concern, one.mark.seniority),
            )
        )

    def _close_marks(self, name: str, hit: Hit) -> tuple[CloseMark, ...]:
        """The marks of one name, one for each owner: that of most concern, with the others of this owner. () if they
        are not close, and do not say the name in another language."""
        from ..closeness import closeness_from, compare
        from ..closeness.spaced import as_readers_divide

        marks = hit.marks.prioritized(self._own_classes(), MOST_JUDGED, self._may_bite if self.markets else None)
        if hit.name == name and hit.scores is not None:
            closeness = closeness_from(name, marks[0].text, hit.scores, name_goods=self.goods)
        else:  # found by another form of the name
            closeness = compare(name, marks[0].text, name_goods=self.goods)
        spaced = hit.spaced if hit.name == name else None
        closeness = as_readers_divide(name, marks[0].text, closeness, name_goods=self.goods, spaced=spaced).closeness
        said = name
        held: tuple[ForeignWord, ...] = ()
        language = self._translated(name, marks[0], closeness)
        if not language and (rest := rest_of(name, self.goods)):
            language = self._translated(rest, marks[0], closeness)
            said = rest if language else name
        if said != name or not language:
            held = self._asked(name, marks[0], closeness, foreign_words_held) or ()
        if not is_close(closeness.overall, closeness.meaning) and not language:
            return ()
        closeness = told_first(f"{told_of(held)}." if held else "", closeness)
        judged = (self._judged(name, mark, closeness, language, said, held) for mark in marks)
        return by_owner(sorted(judged, key=lambda one: gravest_first(one, self.today)), len(hit.marks))

    def _translated(self, said: str, mark: Mark, closeness: Closeness) -> str:
        """The language in which `mark` says all of `said`; "" for none."""
        return self._asked(said, mark, closeness, translated_in) or ""

    def _asked(
        self, said: str, mark: Mark, closeness: Closeness, how: Callable[[str, str, Sequence[str]], Found]
    ) -> Found | None:
        """What is found by `how` of `said` in `mark`, in the languages of the buyers, those of the market where it
        holds first; None where it is not close enough in meaning to be looked at."""
        if closeness.meaning < SOME_MEANING or closeness.appearance >= 1:
            return None
        buyers, local = self._buyers(), languages_of(mark.territories) if mark.territories else ()
        asked = sorted(buyers, key=lambda language: language not in local)
        found = made("meaning", lambda: how(said, mark.text, asked))
        return None if isinstance(found, NotChecked) else found

    def _judged(
        self, name: str, mark: Mark, closeness: Closeness, language: str, said: str, foreign: tuple[ForeignWord, ...]
    ) -> CloseMark:
        related = made("goods_relatedness", lambda: self._relatedness(mark))
        near = Near(mark, closeness, related, language, said, foreign)
        return judged(name, near, self.goods, self.markets, self.today)

    def _may_bite(self, mark: Mark) -> bool:
        return bites_in(mark, self.markets) is not False

    def _buyers(self) -> tuple[str, ...]:
        """The languages besides English into which buyers may translate: those stated, then those of the markets."""
        found = dict.fromkeys((*(self.languages or ()), *languages_of(self.markets)))
        return tuple(one for one in found if one != "en")

    def _own_classes(self) -> tuple[int, ...]:
        """The classes of the product; those that its goods are likely in, where none are stated."""
        likely = made("goods_relatedness", lambda: self.classes or (_likely_classes(self.goods) if self.goods else ()))
        return () if isinstance(likely, NotChecked) else likely

    def _relatedness(self, mark: Mark) -> Relatedness | NotChecked:
        if not self.goods and not self.classes:
            return NotChecked("goods_relatedness", "the goods of the product are not stated")
        if not mark.goods and not mark.classes:
            return NotChecked("goods_relatedness", "the list of marks does not state the goods of some marks")
        from ..goods import relatedness

        english = any(understood_in(place, "en") for place in mark.territories)
        worded = () if english else languages_of(mark.territories)
        return relatedness(self.goods, mark.goods, self.classes, mark.classes, languages_b=worded)

    def _distinctiveness(self, name: str) -> Distinctiveness | NotChecked:
        if not self.goods:
            return NotChecked("distinctiveness", "the goods of the product are not stated in words")
        from ..goods import distinctiveness_by_item

        return distinctiveness_by_item(
            name,
            self.goods,
            languages=self.languages,
            markets=self.markets,
            classes=self.classes,
            product=self.product,
        )

    def _readings(self, name: str) -> tuple[Reading, ...]:
        """What a name says in the buyers' languages, and always in English."""
        from ..connotations import english_readings, readings
        from .placed import as_in_english, with_places

        # Shipped tables only: what a user has installed must not change a dated, repeatable result.
        found = readings(name, languages=self._read_in(), dictionaries=()) if self._read_in() != () else []
        if self.languages is None and self.markets:
            spoken = languages_of(self.markets)
            weighed = [one if one.language in spoken else one.elsewhere() for one in found]
            found = [one for one in weighed if one.severity or one.abroad or one.kind == "ordinary"]
        told = (*english_readings(name, self.markets), *as_in_english(with_places(found)))
        return tuple(sorted(told, key=_worst_first))

    def _read_in(self) -> tuple[str, ...] | None:
        """The languages besides English in which names are read; None for all."""
        if self.languages is None:
            return None
        return tuple(one for one in self.languages if one.split("-")[0] != "en")

    def _coverage(self) -> tuple[tuple[Coverage, ...], tuple[NotChecked, ...]]:
        found = made("readings", lambda: _coverage(self._read_in(), self.markets))
        return ((), (found,)) if isinstance(found, NotChecked) else found

    def _addresses(self, name: str) -> Estimate | NotChecked:
        from ..addresses import estimate

        endings = self.endings or domain_endings(self.markets)
        return estimate(name, endings=endings, handle_lengths=self.handle_lengths, goods=self.goods)


def _surely_minor(name: str, hits: Sequence[Hit], top: int | None, goods: str) -> dict[int, float]:
    """Which hits are neither among the `top` closest nor ask for a closer look, whatever else is found of them, each
    with the most concern that it can be of."""
    from ..closeness.telling import telling_part, words_for_goods

    own = {at: hit.scores for at, hit in enumerate(hits) if hit.name == name and hit.scores is not None}
    if not top or len(own) < top:
        return {}
    if telling_part(name, goods) != name:  # and so may one without the words for the goods
        return {}
    if adds_surplus(name, goods):
        return {}
    letters = "".join(parse(name).words)
    seen = divided(name) if divided(name) != parse(name).words else ()  # a mark that has a part of it may be closer
    telling = {*words_for_goods(goods), *seen}
    least = nlargest(top, (round(scores.overall, 9) for scores in own.values()))[-1]
    return {
        at: concern
        for at, scores in own.items()
        if round(scores.overall, 9) < least
        and level_of(concern := most_concern(scores.overall)) < Level.LOOK
        and scores.appearance < NEAR_IN_APPEARANCE
        and ((scores.sound or 0.0) < SOME_SOUND and (scores.meaning or 0.0) < SOME_MEANING)
        and not (scores.appearance >= SOME_APPEARANCE and hits[at].letters in letters)  # a whole mark in it is graver
        and hits[at].as_bare <= scores.overall
        and not any(part in hits[at].letters for part in (*telling, letters))
    }


def _is_coined(found: Distinctiveness | NotChecked) -> bool:
    return not isinstance(found, NotChecked) and found.category == "fanciful"


def _with_no_meaning(close: CloseMark) -> CloseMark:
    """A mark near a coined name: their meanings are not compared, unless it says the name in another language."""
    from ..closeness import without_meaning

    if close.translation or close.translated_rest:
        return close
    closeness, others = without_meaning(close.closeness), tuple(map(_with_no_meaning, close.others))
    each = (dataclasses.replace(one, closeness=without_meaning(one.closeness)) for one in close.by_market)
    return dataclasses.replace(close, closeness=closeness, others=others, by_market=tuple(each))


def _worst_first(reading: Reading) -> tuple[object, ...]:
    return reading.order


def _may_hide_a_knockout(close: CloseMark) -> bool:
    """Whether a mark of the same words whose goods were not compared might be a knockout where none that was is."""
    seen = (close, *close.others)
    live_unseen = close.marks > len(seen) and not any(one.mark.is_dead for one in seen)  # the dead come last
    return live_unseen and not close.knockout and close.conflict.near_identical


def _goods_not_read(found: Distinctiveness | NotChecked) -> tuple[NotChecked, ...]:
    """What is to be said where the classes stood in for goods that could not be read."""
    if isinstance(found, NotChecked):
        return ()
    from ..goods import GOODS_AS_WORDED

    return tuple(one for one in found.not_assessed if one.check == GOODS_AS_WORDED)


@cache
def _likely_classes(goods: str) -> tuple[int, ...]:
    from ..goods import likely_classes

    return likely_classes(goods)


@cache
def _coverage(
    languages: tuple[str, ...] | None, markets: tuple[str, ...]
) -> tuple[tuple[Coverage, ...], tuple[NotChecked, ...]]:
    """What is known of each language, and which of them and of those of the markets are not covered."""
    from ..connotations import coverage, english_coverage, not_read

    found = tuple(coverage(languages, ())) if languages != () else ()
    covered = (english_coverage(), *(one for one in found if not isinstance(one, NotChecked)))
    # A missing dictionary leaves no language unchecked: the coverage says what was searched.
    missing = (one for one in found if isinstance(one, NotChecked) and one.check.startswith("readings"))
    return covered, (*missing, *not_read(spoken_in(markets), languages))
