"""What goods serve: the things that they are called after, or are said to be for, to hold, to mend or to keep.

Goods are complementary if one is important for the use of the other, so that buyers may think that one firm answers
for both (Boston Scientific, T-325/06, from memory): a stand for umbrellas, and umbrellas. What is only mentioned as a
place, a time or a look is not.
"""

from __future__ import annotations

from functools import lru_cache

from ..lexicon import association, lexicon
from .broader import is_part_of, leading_senses, names_above, senses_of_goods
from .classification import chance_of_one_class
from .covering import comes_in_portions, covers, is_stuff
from .groups import ONE_NAME, ties
from .mentions import FITTED, GONE_TO, before_head, is_fixture, is_thing, said_for
from .phrases import Item
from .words import is_noun

__all__ = ["is_for", "serve_apart", "serve_one_thing", "serves", "things_served"]

SURELY, PART, TASTED = 1.0, 0.6, 0.4
"""How surely goods serve a thing, a part of it or the stuff that it is of, and what is eaten or drunk: a bread bin is
bought apart from the bread. Ours."""
COVERED, SYNONYM = 0.5, 0.85
"""How surely one must cover the other, and how close in meaning their heads are, to be one thing."""
NEAR = 0.25
"""The association from which two things are not held apart."""
ONE_SENSE = 0.6
"""The chance of one class from which a word is surely used of one thing (robes, bath robes). Ours."""
_CARE = frozenset(
    "wax oil cream balm polish cleaner conditioner dressing care soap spray shampoo restorer protector grease".split()
)
"""What keeps a stuff in order: wood oil, leather balm."""
_SERVING = frozenset(("container", "implement", "utensil", "device", "dish", "fixture", "support"))
"""What WordNet calls things that hold other goods or work on them."""
_EATEN = frozenset(("food", "foodstuff", "beverage"))


@lru_cache(maxsize=1 << 13)
def things_served(item: Item) -> tuple[Item, ...]:
    """The things that an item serves, as its words say it."""
    if item.dealing:
        return ()
    found = [_thing(phrase) for phrase in said_for(item)]
    named = _thing(before_head(item)) if item.modifiers and _serves_by_name(item.head) else None
    if named is not None and not is_stuff(named.head) and not _is_of_its_own(named.head, item.head) and (
        item.head in FITTED or not is_fixture(named.head)
    ):
        found.append(named)
    return tuple(dict.fromkeys(thing for thing in found if thing is not None and thing.head != item.head))


@lru_cache(maxsize=1 << 14)
def serves(one: Item, other: Item) -> float:
    """How surely one of two items serves the other, 0 to 1; nothing that covers it does."""
    return max(_serves(one, other), _serves(other, one))


def is_for(one: Item, other: Item) -> bool:
    """Whether one of two items is called after the other, or said to be for it."""
    return serves(one, other) in (SURELY, TASTED)


def _serves(one: Item, other: Item) -> float:
    things = things_served(one)
    meant = (thing for thing in things if not _is_another(thing, other, things))
    by_thing = max((_is_it(thing, other) for thing in meant), default=0.0)
    return by_thing or (PART if _cares_for_stuff(one, other) else 0.0)


def _is_another(thing: Item, other: Item, beside: tuple[Item, ...]) -> bool:
    """Whether goods are another thing of the same name than the one served, which is read with what is served `beside`
    it: laptops and tablets are no tablets of paracetamol."""
    told = [one for one in beside if one.head != thing.head and _associated(one, thing) >= NEAR]
    said = bool(other.modifiers or other.rest) and thing.head == other.head and bool(told)
    return said and max(chance_of_one_class(one.text, other.text) for one in (thing, *told)) < ONE_SENSE and all(
        chance_of_one_class(one.text, other.text) < ONE_NAME for one in told
    )


@lru_cache(maxsize=1 << 14)
def serve_one_thing(one: Item, other: Item) -> bool:
    """Whether both serve one thing: drip trays under umbrellas, umbrella stands."""
    return any(_is_one(mine, thing) for mine in things_served(one) for thing in things_served(other))


@lru_cache(maxsize=1 << 14)
def serve_apart(one: Item, other: Item) -> bool:
    """Whether both serve things, and these have nothing to do with each other: trays under umbrellas and for tea."""
    pairs = [(mine, thing) for mine in things_served(one) for thing in things_served(other)]
    return bool(pairs) and not any(
        _is_one(mine, thing) or ties(mine, thing) is not None or _associated(mine, thing) >= NEAR
        for mine, thing in pairs
    )


def _is_one(mine: Item, thing: Item) -> bool:
    return mine.head == thing.head or _is_it(mine, thing) in (SURELY, TASTED)


def _associated(one: Item, other: Item) -> float:
    return association(*sorted((one.head, other.head))) or 0.0


def _is_it(thing: Item, other: Item) -> float:
    """How surely what is served is what the other goods are, or a part of it (a wick, of candles)."""
    if other.dealing:
        return 0.0
    surely = TASTED if _is_eaten(other.head) else SURELY
    if max(covers(thing, other), covers(other, thing)) >= COVERED:
        return surely
    if thing.head == other.head and chance_of_one_class(thing.text, other.text) >= ONE_NAME:
        return surely  # worn scratching posts, scratching posts for cats
    if thing.head != other.head and (lexicon().closeness(thing.head, other.head) or 0.0) >= SYNONYM:
        return surely
    if len(thing.head) > 3 and other.head.endswith(thing.head) and not lexicon().known(other.head):
        return surely  # a smartphone, in no dictionary
    return PART if not thing.modifiers and is_part_of(thing.head, (other.head,)) else 0.0


def _cares_for_stuff(one: Item, other: Item) -> bool:
    """Whether one keeps the stuff in order that the other is said to be of: teak oil, chairs of teak."""
    if _CARE.isdisjoint((one.head, *one.modifiers)) or one.dealing or other.dealing:
        return False
    stuffs = {word for word in one.words if is_stuff(word)} - {one.head}
    return not stuffs.isdisjoint((*other.modifiers, *other.rest))


@lru_cache(maxsize=1 << 13)
def _thing(words: tuple[str, ...]) -> Item | None:
    """The thing that words name, as an item: the words to the last noun that has no verb before it; None if that is a
    person, an animal, a place, a time, a stuff."""
    end = len(words)
    while end and not is_noun(words[end - 1]):
        end -= 1
    head = words[end - 1] if end else ""
    if not head or (end == 1 and head in GONE_TO):
        return None
    if not is_thing(head) and not (end > 1 and is_thing(f"{words[end - 2]} {head}")):
        return _thing(words[: end - 2]) if end > 2 and not is_noun(words[end - 2]) else None
    return Item(" ".join(words[:end]), head, words[: end - 1])


@lru_cache(maxsize=1 << 12)
def _serves_by_name(head: str) -> bool:
    """Whether what stands before a head may be what it is for: not of food, stuff or clothes (tomato sauce, a pencil
    skirt)."""
    leading = senses_of_goods(head, 1)
    named = names_above(leading[0][0]) if leading else set()
    return _EATEN.isdisjoint(named) and "clothing" not in named and not comes_in_portions(head)


@lru_cache(maxsize=1 << 12)
def _is_of_its_own(named: str, head: str) -> bool:
    """Whether a thing called after another is an entry of its own that does not hold or work on it: a coffee table."""
    senses = leading_senses(f"{named} {head}", 1)
    return any(names_above(sense).isdisjoint(_SERVING) for sense, _ in senses)


@lru_cache(maxsize=1 << 12)
def _is_eaten(word: str) -> bool:
    leading = senses_of_goods(word, 1)
    return bool(leading) and not _EATEN.isdisjoint(names_above(leading[0][0]))
