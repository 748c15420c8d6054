"""What is left of a name and a mark without the words that seldom keep two apart, and how close that is.

Anyone may add what a firm is (& Sons), praise, or a word for the goods, and who adds a house mark to what another has
leaves it to be recognised (TMEP 1207.01(b)(iii); Court of Justice, C-120/04, Thomson Life; from memory). So a mark is
also compared by what is left without these, as it is spelled and as it is said: the other need not have the very
letters.
"""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from ..lexicon import kinds, lexicon
from ..marks.mark import Mark
from ..plain_text import some
from ..text import parse
from .crowd import says_little
from .taken_over import TakenOver, house_words

__all__ = ["Rest", "adds_surplus", "closer_rest", "rest_of_both"]

WEAK, HOUSE, ANOTHER_HOUSE = 0.92, 0.85, 0.8
"""What the closeness of what is left counts where praise and the like are left out, a house mark of the mark's owner,
or a word of the name that may be the maker's own house mark. Ours, not fitted: so that the same element for the same or
close goods is serious however much stands beside it, and the less so the more that says of the maker."""
SHORTEST = 3
"""Letters of the shortest rest that is compared."""
_LISTED = 0.75
"""The score of a translation, unless it is guessed, from which a word is one of a language."""
_UNTOLD = frozenset(("and", "the", "of", "by"))
"""Small words that are left out without a word about it."""


class Rest(NamedTuple):
    """What is left of a name and of a mark (`ours`, `theirs`) without the words that are `left_out` of either, and what
    its closeness `counts`, in [0, 1]."""

    ours: str
    theirs: str
    left_out: tuple[str, ...]
    counts: float

    def __str__(self) -> str:
        """Why the rest is compared, as a sentence."""
        return f"Compared {self.without}: {self.both}."

    @property
    def without(self) -> str:
        """What is left out, and why, as a clause."""
        quoted = some(f'"{word}"' for word in self.left_out)
        return f"without {quoted}, which seldom {'keeps' if len(self.left_out) == 1 else 'keep'} marks apart"

    @property
    def both(self) -> str:
        """What is left of both, in quotation marks."""
        return f'"{self.ours}" and "{self.theirs}"'


def rest_of_both(
    name: str, mark: Mark, goods: str, whole: TakenOver | None, markets: tuple[str, ...] = ("",)
) -> Rest | None:
    """What is left of `name` and `mark` to be compared; None where nothing is left out, or too little is left. `whole`
    is the element that one takes over from the other, `markets` where the mark holds ("": to readers of English)."""
    ours, theirs = _without_surplus(name, goods, markets), _without_surplus(mark.text, goods, markets)
    counts = WEAK
    if house := _house_in(mark, theirs, ours):
        theirs, counts = tuple(word for word in theirs if word not in house), HOUSE
    elif whole and not whole.by_mark and whole.further and all(map(_may_be_a_house_mark, whole.further)):
        ours, counts = tuple(word for word in ours if word not in whole.further), ANOTHER_HOUSE
    both = (*parse(name).words, *parse(mark.text).words)
    out = tuple(dict.fromkeys(word for word in both if word not in (*ours, *theirs) and word not in _UNTOLD))
    if not out or min(len("".join(ours)), len("".join(theirs))) < SHORTEST:
        return None
    return Rest(" ".join(ours), " ".join(theirs), out, counts * _strength(ours, goods))


def closer_rest(
    name: str, mark: Mark, goods: str, whole: TakenOver | None, overall: float, markets: tuple[str, ...] = ("",)
) -> tuple[float, str]:
    """How close what is left of `name` and `mark` is, as far as that counts, in [0, 1], and the sentence that tells it
    where no element taken over `whole` does; 0 and "" where they are no closer so than `overall`."""
    from ..closeness import features, score

    left = rest_of_both(name, mark, goods, whole, markets)
    close = left.counts * score(features(left.ours), features(left.theirs)).overall if left else 0.0
    return (close, "" if whole else str(left)) if close > overall else (0.0, "")


def _strength(words: tuple[str, ...], goods: str) -> float:
    """What the strongest of some words says of the maker rather than of the goods, in [0, 1]: a weak element is not
    recognised beside others. A place is, where all else is for the goods."""
    from ..goods import Weak, element, weakness

    def strength(word: str) -> float:
        found = element(word, goods)
        return 1.0 if found is not None and found.weak is Weak.PLACE else 1.0 - weakness(word, goods)

    return max(map(strength, words))


def adds_surplus(text: str, goods: str) -> bool:
    """Whether a name or mark holds words that seldom keep marks apart beside others."""
    return _without_surplus(text, goods, ("",)) != parse(text).words


@lru_cache(maxsize=1 << 14)
def _without_surplus(text: str, goods: str, markets: tuple[str, ...]) -> tuple[str, ...]:
    """The words of a name without those that say nothing of the maker, or plainly what the goods are; all of them where
    these are all, or it is a set phrase, which may say something else."""
    words = parse(text).words
    if len(words) < 2 or lexicon().is_lemma(" ".join(words)):
        return words
    kept = tuple(
        word for word in words if not (says_little(word, goods) or _praises(word) or _describes(word, goods, markets))
    )
    told = tuple(word for word in kept if not _is_place(word, goods, markets))  # a mark only where nothing else is
    return next((one for one in (told, kept) if any(len(word) >= SHORTEST for word in one)), words)


def _is_place(word: str, goods: str, markets: tuple[str, ...]) -> bool:
    """Whether a word is a place that buyers of each of some markets know."""
    from ..goods import Weak, element

    found = [element(word, goods, market) for market in markets] if goods else []
    return bool(found) and all(one is not None and one.weak is Weak.PLACE for one in found)


def _describes(word: str, goods: str, markets: tuple[str, ...]) -> bool:
    """Whether a word says what the goods are, or is said of them, in each of some markets, so that any maker may add
    it."""
    if not goods:  # nor is anything of goods imported
        return False
    from ..goods import Weak, element

    found = [element(word, goods, market) for market in markets]
    return bool(found) and all(one is not None and one.weak >= Weak.DESCRIBES for one in found)


@lru_cache(maxsize=1 << 13)
def _praises(word: str) -> bool:
    """Whether a word is praise in a language of any market."""
    from ..goods.qualities import languages_of_praise

    return "laudatory" in kinds(word) or bool(languages_of_praise(word))


def _house_in(mark: Mark, theirs: tuple[str, ...], ours: tuple[str, ...]) -> tuple[str, ...]:
    """The words of a mark that its owner is called by, and the name has not; () where these are all of it."""
    called = house_words(mark.owner, "".join(ours))
    found = tuple(word for word in called if word in theirs and word not in ours)
    return found if len(theirs) > len(found) else ()


@lru_cache(maxsize=1 << 13)
def _may_be_a_house_mark(word: str) -> bool:
    """Whether a word that a name adds says only whose it is: no dictionary has it, or people are called so."""
    from ..goods.proper_names import is_surname
    from ..lexicon import translations
    from ..lexicon.language_codes import LANGUAGES

    if lexicon().known(word) and not is_surname(word):
        return False
    return is_surname(word) or not any(
        one.score >= _LISTED and not one.guessed for code in LANGUAGES for one in translations(word, code)
    )
