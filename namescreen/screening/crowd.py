"""Words of a name that many owners use for related goods: a crowded element is weak, and the rest of a mark decides
(TMEP 1207.01(d)(iii); EUIPO Guidelines, part C, section 2, chapter 5, on weak elements)."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, Any

from ..marks.mark import Mark
from ..policy import Conflict
from ..text import parse
from ..text.inflection import other_number

if TYPE_CHECKING:
    from ..register import Register

__all__ = [
    "CROWD", "SharedWord", "crowded_in", "divided", "past_cases_tell", "says_little", "shared_words", "shares_only",
]  # fmt: skip

CROWD = 3
"""Owners who share a word before the field is called crowded (common practice, no source)."""
RELATED = 0.4
"""Relatedness of goods from which a mark counts in the crowd, if it states none of the maker's classes: below "average"
(0.5), as buyers meet a word in a whole field. Ours, not fitted."""
MOST = 60
"""The most marks with one word whose goods are compared; of more, the count is the least that there are."""
SHORTEST, SURE = 3, 5
"""Letters of the shortest word that is counted; and from which it is seen at an end of any word: a shorter one only
where the word divides there (owl in mossowl; ring not in spring)."""

_EVERYWHERE = frozenset(("function word", "company form", "generic head", "domain ending"))


def divided(name: str) -> tuple[str, ...]:
    """The words of a name, as `closeness.spaced` divides it."""
    from ..closeness import spaced

    return spaced.divided(name)


@dataclass(frozen=True, slots=True)
class SharedWord:
    """A word of a name that live marks of the markets hold for related goods, whole or at an end of one of their words:
    how many `owners` they have, and how many `marks` they are; `at_least` where there are more than were looked at.
    `market` is the one where they are held; "" where no market is stated."""

    word: str
    owners: int
    marks: int
    at_least: bool = False
    market: str = ""

    def to_json(self) -> dict[str, Any]:
        """A plain dictionary."""
        return {name: getattr(self, name) for name in self.__slots__}


@lru_cache(maxsize=1 << 14)
def says_little(word: str, goods: str) -> bool:
    """Whether a word names the goods, or stands in names of every kind (the, company, club)."""
    from ..closeness.telling import words_for_goods
    from ..lexicon import kinds

    named = words_for_goods(goods)
    return word in named or not named.isdisjoint(other_number(word)) or bool(kinds(word) & _EVERYWHERE)


def past_cases_tell(
    conflict: Conflict, category: str, words: Iterable[str], mark: str, goods: str
) -> bool:
    """Whether past cases say anything of a mark: live, for the same or close goods, and the words that it shares with
    the `words` of the name are neither descriptive, nor the name of the goods, nor crowded. `category` is that of the
    name, "" if not known."""
    if not conflict.comparable:
        return False
    if category == "generic" or (category == "descriptive" and not conflict.near_identical):
        return False
    shared = {*parse(mark).words} & {*words}
    weak = conflict.crowded or (bool(shared) and all(says_little(word, goods) for word in shared))
    return conflict.near_identical or not weak


def shares_only(name: str, mark: str, crowded: Iterable[str], goods: str = "") -> bool:
    """Whether what `mark` has of the words of `name`, whole or at an end of its words, are `crowded` ones, beside
    words that say little of the goods."""
    common = set(crowded)
    shared = {word for word in divided(name) if _holds(mark, word)}
    return bool(shared & common) and all(word in common or says_little(word, goods) for word in shared)


def _holds(mark: str, word: str) -> bool:
    """Whether a word stands in a mark, whole or at an end of one of its words (see `SURE`)."""
    if len(word) >= SURE and any(one.startswith(word) or one.endswith(word) for one in parse(mark).words):
        return True
    return word in divided(mark)  # asked last: it costs most


def shared_words(
    name: str,
    register: Register,
    goods: str,
    classes: Iterable[int],
    counts: Callable[[Mark], bool],
    related: Callable[[Mark], float],
    held_in: Callable[[Mark], Iterable[str]] = lambda mark: ("",),
) -> tuple[SharedWord, ...]:
    """The words of `name` that `CROWD` owners or more use, in each market where they do; the most crowded first.

    `classes` are those of the maker's goods: marks in them are looked at first. `counts` says whether a mark is live
    and holds in the markets, `related` how related its goods are, in [0, 1]. A word that names the goods, or is very
    common, is left out: there it would tell nothing new. A word is weak in the market where many use it, so owners are
    counted in each that a mark is `held_in`.
    """
    words = dict.fromkeys(divided(name))
    telling = [word for word in words if len(word) >= SHORTEST and not says_little(word, goods)]
    own = frozenset(classes)

    def in_the_field(mark: Mark) -> bool:
        return counts(mark) and (not own.isdisjoint(mark.classes) or related(mark) >= RELATED)

    found = [
        one
        for word in telling
        for one in _shared(word, register.marks_with(word, MOST + 1, own), in_the_field, held_in)
        if one.owners >= CROWD
    ]
    return tuple(sorted(found, key=lambda one: (-one.owners, one.word, one.market)))


def crowded_in(shared: Iterable[SharedWord], markets: Iterable[str]) -> frozenset[str]:
    """The words that are crowded in one of `markets`, those of no stated market included."""
    asked = {*markets, ""}
    return frozenset(one.word for one in shared if one.market in asked)


def _shared(
    word: str,
    marks: Sequence[Mark],
    in_the_field: Callable[[Mark], bool],
    held_in: Callable[[Mark], Iterable[str]],
) -> list[SharedWord]:
    by_market: dict[str, list[Mark]] = {}
    for mark in marks[:MOST]:
        if _holds(mark.text, word) and in_the_field(mark):
            for market in held_in(mark):
                by_market.setdefault(market, []).append(mark)
    return [
        SharedWord(word, _owners(alike), len(alike), len(marks) > MOST, market) for market, alike in by_market.items()
    ]


def _owners(marks: Iterable[Mark]) -> int:
    return len({mark.owner_folded or mark.text.casefold() for mark in marks})
