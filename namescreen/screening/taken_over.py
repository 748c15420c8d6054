"""A name taken over whole in a mark, or a mark in a name: which word is common, and what is added to it.

Adding a house mark, or a word that says little, seldom keeps marks apart where what is taken over is distinctive (TMEP
1207.01(b)(iii); of a later name that takes an earlier mark over Court of Justice, C-120/04, Thomson Life; from memory).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations

from ..lexicon import kinds
from ..marks.mark import Mark
from ..plain_text import some
from ..text import parse
from ..text.inflection import other_number
from .crowd import divided, says_little

__all__ = ["TakenOver", "holds_whole", "house_words", "is_credited", "taken_over"]

_JOINING = frozenset(("and", "und", "et", "y", "e", "en", "och", "og"))
"""What joins two names, & among them, which is read as "and"."""
SHORTEST, SHORTEST_WORD = 4, 2
"""Letters of the shortest element that is told: shorter ones stand in many words by chance. And of one that stands as
written, as initials do."""


@dataclass(frozen=True, slots=True)
class TakenOver:
    """The element `common` to both, which is all of one of them but for words that say little (`left_out`); the words
    that the other adds: `plain` ones that name the goods or say little, `places` that buyers know, `house` ones of the
    owner's name, `second` ones a second name beside it (Hart & Lowe), and `further` ones. `by_mark` says that the mark
    is the one that adds."""

    common: str
    by_mark: bool
    plain: tuple[str, ...] = ()
    house: tuple[str, ...] = ()
    further: tuple[str, ...] = ()
    left_out: tuple[str, ...] = ()
    second: tuple[str, ...] = ()
    places: tuple[str, ...] = ()

    @property
    def how_much(self) -> str:
        """How much of it is in the other: "whole", or all but words that say little."""
        return f"but for {_quoted(self.left_out)}" if self.left_out else "whole"

    @property
    def added(self) -> str:
        """What is added, each word with what it is; an "and" beside others is not told."""
        others = self.house or self.second or self.further
        plain = tuple(word for word in self.plain if not (others and word in _JOINING))
        told = [
            f"{_quoted(words)}{what}"
            for words, what in (
                (self.house, " (how its owner is called, so perhaps a house mark)"),
                (self.second, " (a second name)"),
                (self.further, ""),
                (self.places, " (where goods come from)"),
                (plain, " (common in names, or a word for the goods)"),
            )
            if words
        ]
        return some(told)

    def __str__(self) -> str:
        adds = "the mark" if self.by_mark else "the name"
        return f'Taken over {self.how_much}: "{self.common}"; {adds} adds {self.added}.'


def _quoted(words: Sequence[str]) -> str:
    return some(f'"{word}"' for word in words)


def taken_over(name: str, mark: Mark, goods: str) -> TakenOver | None:
    """What `name` and `mark` have in common where it is all that one of them says; None if it is not, or if both are
    the same. Words that name the `goods`, or say little, do not count as part of the whole."""
    from ..goods.places import place_of

    ours, theirs = parse(name).words, parse(mark.text).words
    if "".join(ours) == "".join(theirs):
        return None
    for whole, other, by_mark in ((ours, theirs, True), (theirs, ours, False)):
        letters = "".join(other)
        if not any(word in letters for word in whole):  # most marks: nothing of the one is in the other
            continue
        telling = tuple(word for word in whole if not says_little(word, goods))
        length = len("".join(telling))
        if length < SHORTEST_WORD or all(map(place_of, telling)):  # where goods come from is nobody's
            continue
        for common in dict.fromkeys((whole, telling)):  # with its words that say little, where the other has them too
            for words in dict.fromkeys((other, _divided(other) if length >= SHORTEST else other)):
                if added := _without_forms(_rest(words, "".join(common)), whole):
                    left_out = tuple(word for word in whole if word not in common)
                    return _told(" ".join(common), added, left_out, by_mark, mark, goods)
    return None


def is_credited(found: TakenOver, mark: Mark) -> bool:
    """Whether the name takes over all of a registered mark that says more than what its own goods are called. Such a
    mark is credited with some distinctiveness, however weak (see `policy.CREDITED`)."""
    if found.by_mark or found.left_out or mark.status != "live":
        return False
    return not all(says_little(word, mark.goods) for word in found.common.split())


def holds_whole(text: str, held: str) -> bool:
    """Whether words of `text` that follow each other, or parts of them, are together all of `held`, however both are
    spaced. Letters that only stand inside another word are no element of it."""
    words, whole = parse(text).words, "".join(parse(held).words)
    if not whole or whole not in "".join(words):
        return False
    return any(
        "".join(each[first:last]) == whole
        for each in dict.fromkeys((words, _divided(words)))
        for first, last in combinations(range(len(each) + 1), 2)
    )


def _without_forms(added: tuple[str, ...], whole: tuple[str, ...]) -> tuple[str, ...]:
    """The words that are added, without those that the whole has too, if only in the other number."""
    return tuple(word for word in added if word not in whole and other_number(word).isdisjoint(whole))


def _divided(words: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(part for word in words for part in divided(word))


def _rest(words: tuple[str, ...], common: str) -> tuple[str, ...]:
    """The words beside those that together are `common`; () if none are, or nothing is left."""
    for first, last in combinations(range(len(words) + 1), 2):
        if "".join(words[first:last]) == common:
            return (*words[:first], *words[last:])
    return ()


def _told(
    common: str, added: tuple[str, ...], left_out: tuple[str, ...], by_mark: bool, mark: Mark, goods: str
) -> TakenOver:
    markets = mark.territories
    plain = tuple(
        word
        for word in added
        if says_little(word, goods) or (by_mark and says_little(word, mark.goods)) or _names_goods(word, goods, markets)
    )
    places = tuple(word for word in added if word not in plain and _is_place(word, goods, mark.territories))
    called = house_words(mark.owner, common) if by_mark and _JOINING.isdisjoint(added) else ()  # two joined are equals
    house = tuple(word for word in called if word in added and word not in (*plain, *places))
    left = tuple(word for word in added if word not in (*plain, *places, *house))
    second = tuple(word for word in left if _is_second_name(word, common, joined=not _JOINING.isdisjoint(added)))
    further = tuple(word for word in left if word not in second)
    return TakenOver(common, by_mark, plain, house, further, left_out, second, places)


def _names_goods(word: str, goods: str, markets: Sequence[str]) -> bool:
    """Whether a word that is added names the goods to the buyers of each of some markets, in whatever language."""
    from ..goods import Weak, element

    found = [element(word, goods, market) for market in markets] if goods else []
    return bool(found) and all(one is not None and one.weak is Weak.NAMES for one in found)


def _is_place(word: str, goods: str, markets: Sequence[str]) -> bool:
    """Whether a word that is added is a place that buyers know: where goods come from tells no makers apart."""
    from ..goods import Weak, element

    found = [element(word, goods, market) for market in (markets or ("",))] if goods else []
    return any(one is not None and one.weak is Weak.PLACE for one in found)


def house_words(owner: str, common: str) -> tuple[str, ...]:
    """The words that an owner is called by, as a house mark has them: none that say what a firm is; () where the owner
    is called after what is `common` too, and so after all of the mark."""
    words = parse(owner).words
    if not words or common.replace(" ", "") in "".join(words):
        return ()
    said = (word for word in words if not kinds(word) & {"company form", "generic head", "function word"})
    return tuple(word for word in said if len(word) >= SHORTEST)


def _is_second_name(word: str, common: str, *, joined: bool) -> bool:
    """Whether a word that is added is a name of equal rank: a surname beside another, or, joined by "and", one that
    people bear or a word that no dictionary has, beside a surname or such a word."""
    from ..goods.proper_names import is_surname, listed_surname
    from ..lexicon import lexicon

    first = is_surname(common) or (joined and not lexicon().known(common))
    if not joined:
        return first and is_surname(word)
    return first and (listed_surname(word)[1] is not None or not lexicon().known(word))
