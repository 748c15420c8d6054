"""What a word says of some goods to the buyers of a market: the one answer on how weak an element is there, which
levels, questions and texts about marks follow.

A word is read in the language of the market first: what buyers read as a word of their own they do not take for an
English one. A place counts where they know it, English where they understand it.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from enum import IntEnum
from functools import lru_cache

from ..lexicon import kinds, lexicon
from ..lexicon.language_codes import language_name
from ..territories import languages_of, law_of, understood_in
from .description import Evidence, EvidenceKind, describe_in_conflict
from .evidence import read
from .foreign import COMMON, SURE, reading_in
from .grounds import TRANSLATING
from .judged import Judged
from .name_kinds import is_praise
from .places import place_of
from .qualities import is_praise as is_praise_in
from .renown import known_in
from .trade_words import ORDINARY, SORT
from .understood import is_understood

__all__ = ["Element", "Weak", "element", "weakest"]

DESCRIBES = 0.5
"""How plainly a word describes goods from which it is called descriptive of them (`goods.description`). Ours."""


NEARBY = SORT * ORDINARY
"""The most that labels of another ware make a word say of the goods: a hint at these, which weakens no mark."""


class Weak(IntEnum):
    """Why a word says little of the maker; a higher one says more of the goods."""

    PLACE = 1
    PRAISE = 2
    DESCRIBES = 3
    NAMES = 4

    @property
    def words(self) -> str:
        """What the word does, as the reader sees it."""
        return {
            Weak.PLACE: "is a place that buyers know", Weak.PRAISE: "is praise", Weak.DESCRIBES: "describes the goods",
            Weak.NAMES: "names the goods",
        }[self]  # fmt: skip


@dataclass(frozen=True, slots=True)
class Element:
    """Why a word is `weak` for some goods in a market, and the `language` (BCP 47) in which buyers there read it so."""

    weak: Weak
    language: str = "en"

    @property
    def told(self) -> str:
        """What the word does there, as a clause."""
        return self.weak.words + ("" if self.language == "en" else f" in {language_name(self.language)}")


@lru_cache(maxsize=1 << 14)
def element(word: str, goods: str, market: str = "") -> Element | None:
    """Why the folded `word` is weak for `goods` in a `market` (ISO 3166-1); without one to readers of English. None if
    it is not, or nothing is known that makes it so."""
    own = [one for one in languages_of((market,), main=True) if one != "en"] if market else []
    if law_of(market) in TRANSLATING and not own and not lexicon().known(word):
        own = [*COMMON]  # an examiner translates what is no English word (TMEP 1207.01(b)(vi))
    strange = False
    for language in own:
        for one in reading_in(word, goods, language, surnames=False) or ():
            found = _in_own_words(one, language, market, goods)
            if found is not None:
                return found
            strange = strange or (one.meaning is not None and one.meaning.sure >= SURE and not one.meaning.guessed)
    if strange and not understood_in(market, "en"):
        return None  # a word of theirs that says something else
    return _in_english(word, goods, market)


def _in_own_words(one: Judged, language: str, market: str, goods: str) -> Element | None:
    if one.meaning is None or one.meaning.language != language:
        return None
    if is_praise(one) or is_praise_in(one.word, language):
        return Element(Weak.PRAISE, language)
    if one.evidence.kind is EvidenceKind.PLACE:
        known = place_of(one.meaning.english) is None or known_in(one.meaning.english, market, goods)
        return Element(Weak.PLACE, language) if known else None
    if _only_hints(one.evidence):
        return None
    return Element(Weak.NAMES if one.evidence.names_goods else Weak.DESCRIBES, language)


def _in_english(word: str, goods: str, market: str) -> Element | None:
    told = describe_in_conflict(word, goods)
    if told.kind is EvidenceKind.PLACE:
        return Element(Weak.PLACE) if not market or known_in(word, market, goods) else None
    if _only_hints(told) or (market and not is_understood(read(word, goods, {}, surnames=False), market)):
        return None
    if told.names_goods:
        return Element(Weak.NAMES)
    return Element(Weak.PRAISE if "laudatory" in kinds(word) else Weak.DESCRIBES)


def _only_hints(told: Evidence) -> bool:
    """Whether a word says no more of the goods than that it is said of a neighbouring ware (vinegar, for mustard)."""
    nearby = told.kind is EvidenceKind.TERM and told.weight <= NEARBY and not told.names_goods
    return told.weight < DESCRIBES or nearby


def weakest(words: Iterable[str], goods: str, market: str = "") -> Element | None:
    """Why all of some words together are weak in a market, by the one that says least of the goods; None if one of them
    is not."""
    found = [element(word, goods, market) for word in words]
    told = [one for one in found if one is not None]
    return min(told, key=lambda one: one.weak) if told and len(told) == len(found) else None
