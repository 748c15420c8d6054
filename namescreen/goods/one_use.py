"""Whether two things do the same for the same: a lid for bowls and a bowl cover, a bread bag and a bread bin.

Goods that take each other's place are in competition (Canon, C-39/97), whatever they are made of and in whatever
class. What things do is read from their heads, by families of our own."""

from __future__ import annotations

from functools import lru_cache
from itertools import pairwise

from ..lexicon import lexicon
from .broader import leading_senses, names_above
from .mentions import is_aside
from .phrases import Item

__all__ = ["MUCH_ALIKE", "same_use"]

IN_PLACE, MUCH_ALIKE, AT_LARGE = 0.6, 0.5, 0.4
"""The least scores of goods of one family for the same thing, of families that serve one purpose or of one for things
of which one is a sort of the other, and of food and what is food of any kind; ours, not fitted."""
USED_UP = 0.54
"""The least score of what is burnt or used up in a thing, and that thing as called or said to be for it; ours."""
_USED_UP = frozenset("candle tealight incense refill cartridge pellet wick".split())
_USED_UP_TOGETHER = frozenset((("tea", "light"), ("wax", "melt"), ("lamp", "oil"), ("incense", "stick")))
"""What is burnt or used up in other goods, in one word or two; from memory."""
_FAMILIES = (
    frozenset("cover lid cap hood topper wrap film sleeve case tarpaulin".split()),
    frozenset("bag box bin container tin jar canister caddy pouch basket sack crate chest keeper storage".split()),
    frozenset("rack stand holder hook hanger shelf".split()),
    frozenset("cleaner polish shampoo detergent wash soap wipe".split()),
    frozenset("bed basket cushion mat blanket".split()),
    frozenset("trap repellent killer deterrent".split()),
    frozenset("guard excluder stopper shield protector".split()),
)
"""Heads of things that do much the same for what stands before them; from memory."""
_FOODS = frozenset("food foodstuff grocery comestible".split())
_KEEPS = _FAMILIES[0] | _FAMILIES[1]
"""What keeps or covers food: these take each other's place too."""
_SAID_OF_ALL = frozenset(
    "storage kitchen household home use reusable fabric textile plastic glass metal wooden silicone".split()
)


@lru_cache(maxsize=1 << 14)
def same_use(one: Item, other: Item) -> float:
    """The least score of two items by what they do, and for what; 0 where they neither do the same for the same nor is
    one used up in the other."""
    if _is_food_at_large(one, other) or _is_food_at_large(other, one):
        return AT_LARGE
    if one.dealing or other.dealing:
        return 0.0
    if _is_used_up_in(one, other) or _is_used_up_in(other, one):
        return USED_UP
    mine, theirs = _objects(one), _objects(other)
    if one.head == other.head or not mine or not theirs:
        return 0.0
    family = any(one.head in each and other.head in each for each in _FAMILIES)
    keeps = one.head in _KEEPS and other.head in _KEEPS
    if not (family or keeps):
        return 0.0
    if mine & theirs:
        return IN_PLACE if family else MUCH_ALIKE
    sorts = any(_is_sort_of(a, b) or _is_sort_of(b, a) for a in mine for b in theirs)
    return MUCH_ALIKE if sorts else 0.0


def _is_used_up_in(one: Item, other: Item) -> bool:
    """Whether the other is called after, or said to be for, what the one is: tea lights, lanterns for tea lights."""
    said = (*one.modifiers[-1:], one.head)
    pair = said in _USED_UP_TOGETHER and any(two == said for two in pairwise((*other.modifiers, *other.rest)))
    return pair or (one.head in _USED_UP and one.head != other.head and one.head in (*other.modifiers, *other.rest))


def _is_food_at_large(broad: Item, narrow: Item) -> bool:
    """Whether one is food of any kind, or the sale of it, and the other some food."""
    if broad.head not in _FOODS or broad.modifiers or broad.rest or narrow.head in _FOODS or narrow.dealing:
        return False
    leading = [sense for sense, _ in leading_senses(narrow.head, 1)]
    return any(not names_above(sense).isdisjoint(("food", "foodstuff")) for sense in leading)


def _objects(item: Item) -> frozenset[str]:
    """What a thing is for: the nouns before its head and after it, without what says where it is used or of what it
    is made."""
    said = (word for word in (*item.modifiers, *item.rest) if word not in _SAID_OF_ALL and not is_aside(word, item))
    return frozenset(filter(_is_object, said))


@lru_cache(maxsize=1 << 12)
def _is_object(word: str) -> bool:
    senses = lexicon().senses(word, "n", labelled=False)[:1]
    made_of = any(names_above(one.id) & {"fabric", "material", "wax", "animal skin"} for one in senses)
    return bool(senses) and not made_of


@lru_cache(maxsize=1 << 12)
def _is_sort_of(word: str, broader: str) -> bool:
    """Whether a leading sense of a word is a kind of what the other names (bread: food)."""
    return any(broader in names_above(sense) for sense, _ in leading_senses(word, 2))
