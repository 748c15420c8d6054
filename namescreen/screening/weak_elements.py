"""What a name and a mark have in common, and how weak that is to the buyers of each market: words that describe the
goods, praise or a place keep nobody out (TMEP 1207.01(b)(viii); EUIPO Guidelines, part C, section 2, chapter 5). How
weak a word is, `goods.elements` alone says."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING

from ..lexicon import kinds
from ..plain_text import some
from ..policy import STEPS
from ..text import parse
from ..text.inflection import other_number
from .crowd import says_little

if TYPE_CHECKING:
    from ..closeness.features import Word
    from ..closeness.reason import Reason
    from ..goods import Element

__all__ = ["Common", "common_to_both", "told_of_weakness"]

LONGEST_ENDING, SHORTEST = 3, 3
"""Letters of an ending with which a word is the same word, and of the shortest word that has one; ours."""
LEAST_ALIKE = STEPS[-1][0]
"""Closeness of what two names have besides from which they share more than these words."""
SAYS_THE_SAME = 0.85
"""Closeness in meaning from which two words are one for what they say. Ours."""


@dataclass(frozen=True, slots=True)
class Common:
    """The words that a name and a mark have in common, as the name (`ours`) and as the mark has them (`theirs`), in any
    form, or in other words that say the same; and what each has `besides`."""

    ours: tuple[str, ...]
    theirs: tuple[str, ...]
    besides: tuple[tuple[str, ...], tuple[str, ...]]

    def weak_in(self, goods: str, market: str) -> Element | None:
        """Why all of it is weak for `goods` in a `market` ("": to readers of English); None if it is not. A place is
        the mark where nothing else is: it is weak beside a word of another strength."""
        from ..goods import Weak, weakest

        found = weakest(dict.fromkeys((*self.ours, *self.theirs)), goods, market)
        place = found is not None and found.weak is Weak.PLACE
        if place and all(_all_weak(one, goods, market) for one in self.besides):
            return None
        return found

    @property
    def is_all_of_one(self) -> bool:
        """Whether it is all that one of them says."""
        return not all(self.besides)

    def only_names(self, found: Element | None) -> bool:
        """Whether it only names the goods, and each of both has another word besides: whatever these other words say,
        what all of the trade must write is no reason to take one for the other."""
        from ..goods import Weak

        def has_own(side: tuple[str, ...]) -> bool:
            return any(len(word) >= SHORTEST and "function word" not in kinds(word) for word in side)

        return found is not None and found.weak is Weak.NAMES and all(map(has_own, self.besides))

    def mark_is_weak(self, goods: str, market: str) -> bool:
        """Whether what the mark has besides is weak in a market too, so that it is registered for its words as a
        whole."""
        return _all_weak(self.besides[1], goods, market)


def _all_weak(words: Iterable[str], goods: str, market: str) -> bool:
    from ..goods import element

    return all(says_little(word, goods) or element(word, goods, market) is not None for word in words)


@lru_cache(maxsize=1 << 12)
def common_to_both(name: str, mark: str) -> Common | None:
    """What a name and a mark have in common, if the rest of both is not alike; None if nothing is, or they are the
    same. A word that both hold is not divided, whatever words its letters hold."""
    from ..closeness import features, score
    from ..closeness.explanation import closest_divisions

    ours, theirs = closest_divisions(features(name), features(mark))
    whole = tuple(word for word in parse(name).words if word in parse(mark).words)
    pairs = [(one, other) for one in ours for other in theirs if _is_one_word(one, other)]
    mine = _as_written((one.letters for one, _ in pairs), whole)
    yours = _as_written((other.letters for _, other in pairs), whole)
    if not mine or parse(name).letters == parse(mark).letters:
        return None
    shared = {one.letters for one, _ in pairs}, {other.letters for _, other in pairs}
    besides = (
        tuple(one.letters for one in ours if one.letters not in shared[0]),
        tuple(one.letters for one in theirs if one.letters not in shared[1]),
    )
    rest = [" ".join(side) for side in besides]
    if all(rest) and score(*map(features, rest)).overall >= LEAST_ALIKE:
        return None
    return Common(mine, yours, besides)


def _as_written(words: Iterable[str], whole: tuple[str, ...]) -> tuple[str, ...]:
    """Words, parts of one that both names hold `whole` as that; a word that they hold itself stays."""
    from ..closeness.vocabulary import segmentations

    def written(word: str) -> str:
        divided = (one for one in whole if any(word in way for way in segmentations(one)))
        return word if word in whole else next(divided, word)

    return tuple(dict.fromkeys(map(written, words)))


def _is_one_word(one: Word, other: Word) -> bool:
    """Whether two words are the same in either number, one is the other with an ending (herbal, herbally), or both say
    the same in other letters."""
    from ..closeness.vocabulary import is_known
    from ..closeness.word_similarity import word_similarity

    shorter, longer = sorted((one.letters, other.letters), key=len)
    ends = len(shorter) > SHORTEST and longer.startswith(shorter) and len(longer) - len(shorter) <= LONGEST_ENDING
    if shorter == longer or longer in other_number(shorter) or ends:
        return True
    return is_known(shorter) and word_similarity(one, other).meaning >= SAYS_THE_SAME


def told_of_weakness(common: Common, goods: str, by_market: Mapping[str, Element | None]) -> Reason | None:
    """That all that both share is weak, and in which markets, as a sentence; None if it is so in none."""
    from ..closeness.reason import About, Reason
    from ..goods import element

    weak: dict[str, list[str]] = {}
    for market, found in by_market.items():
        if found is not None:
            each = ((word, element(word, goods, market)) for word in common.ours)
            told = some(f'"{word}" {one.told}' for word, one in each if one is not None)
            weak.setdefault(told, []).append(market)
    if not weak:
        return None
    strong = [market for market, found in by_market.items() if found is None]
    apart = len(weak) > 1 or strong
    each_told = [f"{told} (in {some(where)})" if apart else told for told, where in weak.items()]
    rest = f"; not so in {some(strong)}" if strong else ""
    return Reason(f"All that both share is weak: {'; '.join(each_told)}{rest}.", About.WEAK_ALONE, common.ours)
