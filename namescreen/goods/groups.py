"""Goods as they are made and sold: groups of goods for one purpose, markets of one trade or department, and groups that
are used together (wordlists/goods_groups.tsv, written from memory).

Offices ask of goods whether they share purpose, makers, shops and buyers, or are complementary (Canon, C-39/97)."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache, lru_cache
from itertools import islice

from ..lexicon import lexicon
from ..tables import open_table
from ..text.inflection import other_number
from .broader import layers_above, senses_of_goods
from .classification import chance_of_one_class, class_chances, worn_by_animals
from .mentions import is_aside
from .nice import is_service
from .phrases import Item
from .trade_table import goods_of

__all__ = ["groups_of", "is_listed", "ties"]

OF_MANY_KINDS = frozenset(
    "machine case light stand holder cover tool game set service bottle shop course class".split()
)
"""Words whose goods belong to the market of the word before them: an espresso machine, a guitar stand."""
LEAST_FITTING = 0.05
"""The chance of one class below which a group that only part of a name gives is another thing of that name; ours."""
PROBABLY = 0.5
"""The chance of one class from which two sorts of a thing, listed for two markets, are both held to be that thing; of
one market the lists tell its sorts apart. Ours, not fitted."""
ONE_NAME = 0.1
"""The chance of one class below which goods of one last word are other things of that name (bowling pins)."""
STEPS = 2
"""How many steps up WordNet's broader terms are looked for in the list."""


@lru_cache(maxsize=1 << 13)
def groups_of(item: Item) -> frozenset[str]:
    """The groups ("market|group") of what an item names: of its longest name that is listed; empty if none is, or if
    its words point to other classes."""
    if worn_by_animals(item.text):
        return _listed("pet clothing")
    words = (*item.modifiers, item.head)
    names = [" ".join(words[at:]) for at in range(len(words))]
    if item.modifiers and item.head in OF_MANY_KINDS:
        names.pop()
    names += [" ".join(item.modifiers)] if item.modifiers else []
    if not item.dealing:  # of what is dealt in no class tells a kind of goods from one that is called alike
        names += [area for name in names for area in goods_of(name)[:1]]
    said = (word for word in item.rest if not is_aside(word, item))
    joined = next((groups for word in said if (groups := _listed(f"{word} {item.head}"))), None)
    if joined or is_listed(item):  # bags for bicycles are bicycle bags
        return joined or _listed(" ".join(words))
    found = next((groups for name in names if (groups := _listed(name))), None)
    return _fitting(_by_broader_term(item.head) if found is None else found, item)


def _listed(name: str) -> frozenset[str]:
    row = open_table("goods_groups.tsv").get(name)
    if not row and name.endswith("s") and " " in name:  # the base form of glasses is glasses, but not of wine glasses
        before, _, last = name.rpartition(" ")
        rows = (open_table("goods_groups.tsv").get(f"{before} {form}") for form in sorted(other_number(last)))
        row = next(filter(None, rows), None)
    return frozenset(row.split(";")) if row else frozenset()


def _fitting(groups: frozenset[str], item: Item) -> frozenset[str]:
    """Of groups that part of a name gave those whose goods may be in the classes of the whole: a dish may be a plate, a
    pizza is none."""
    if item.dealing or not groups:
        return groups
    theirs = {guess.number: guess.score for guess in class_chances(item.text)}
    return frozenset(name for name in groups if not theirs or _one_class(name, theirs) >= LEAST_FITTING)


def _one_class(group: str, chances: Mapping[int, float]) -> float:
    """The chance that goods of a group and goods with these chances are in one class."""
    return sum(share * chances.get(number, 0.0) for number, share in _classes_of(group).items())


@cache
def _classes_of(group: str) -> Mapping[int, float]:
    """The share of a group's terms in each class."""
    row = open_table("goods_groups.tsv").get(f"~{group}") or ""
    pairs = (text.partition(":") for text in row.split())
    return {int(number): float(share) for number, _, share in pairs}


def is_listed(item: Item) -> bool:
    """Whether a list of groups holds the very name of an item."""
    return " ".join((*item.modifiers, item.head)) in open_table("goods_groups.tsv")


def _by_broader_term(word: str) -> frozenset[str]:
    """The groups of the nearest broader term that is listed: a poncho is a garment."""
    layers = layers_above(sense_id for sense_id, _ in senses_of_goods(word, 1))
    for layer in islice(layers, 1, STEPS + 1):
        for up in layer:
            for name in lexicon().entry(up).words:
                if groups := _listed(name.lower()):
                    return groups
    return frozenset()


@lru_cache(maxsize=1 << 14)
def ties(one: Item, other: Item) -> Mapping[str, float] | None:
    """What the groups of two items say, each 0 or 1: the first that holds of one group, of one market that firms offer
    as a range, of another one market, of groups used together, or of markets side by side; None where nothing
    of these holds, or one of them is not listed. "of one kind" says how alike the goods of a shared group are, 0 to 1.
    Goods and a service of one market serve different purposes, but in markets where the service is the same thing by
    another channel."""
    mine, theirs = groups_of(one), groups_of(other)
    if not mine or not theirs:
        return None
    if one.head == other.head and one.modifiers and other.modifiers and not mine & theirs:
        by_name = any(_listed(" ".join((*item.modifiers, item.head))) for item in (one, other))
        parted = not _markets(mine).isdisjoint(_markets(theirs))
        likely = chance_of_one_class(one.text, other.text)
        unparted = not parted and likely >= PROBABLY
        apart = likely < ONE_NAME or (by_name and not unparted)  # a table knife is a knife, a garden hose no hosiery
        held = frozenset() if apart else _listed(one.head)  # pipes of steel and of plastic, whatever else a pipe is
        mine, theirs = mine | (held & theirs), theirs | (held & mine)
    markets, others = _markets(mine), _markets(theirs)
    shared = markets & others
    alike = bool(shared) and (  # asked of few: it needs the classes of both
        _is_service(one) == _is_service(other) or any(_has("=channel", name) for name in shared)
    )
    alike = alike and _is_accessory(one) == _is_accessory(other)
    asked = (
        ("one group", alike and bool(mine & theirs)),
        ("one range", alike and any(_has("=range", name) for name in shared)),
        ("one market", bool(shared)),
        ("used together", any(_has(f"*{name}", of) for name in mine for of in theirs)),
        ("side by side", any(_has(f"={name}", of) for name in markets for of in others)),
    )
    first = next((name for name, holds in asked if holds), None)
    if first is None:
        return None
    found = {name: float(name == first) for name, _ in asked}
    return found | {"of one kind": found["one group"] * max(map(_likeness, mine & theirs), default=0.0)}


@cache
def _likeness(group: str) -> float:
    """How alike the goods of a group are, 0 to 1: the chance that two of them are in one class. What is for camping
    serves one purpose, and is tents and lamps; jams take each other's place."""
    return sum(share**2 for share in _classes_of(group).values())


@lru_cache(maxsize=1 << 13)
def _is_accessory(item: Item) -> bool:
    """Whether an item is only sold with what its name speaks of: an umbrella stand is no umbrella, a honey dipper no
    honey."""
    if not item.modifiers or is_listed(item):
        return False
    words = (*item.modifiers, item.head)
    if any(_listed(" ".join(words[at:])) for at in range(len(words) - 1)):  # printed board games
        return False
    return item.head in OF_MANY_KINDS or (not _listed(item.head) and bool(_listed(" ".join(item.modifiers))))


@lru_cache(maxsize=1 << 13)
def _is_service(item: Item) -> bool:
    """Whether an item is rather a service; of a service that deals in goods, whether they are."""
    known = (guess for guess in class_chances(item.text) if not item.dealing)
    return sum(guess.score for guess in known if is_service(guess.number)) > 0.5


def _markets(groups: frozenset[str]) -> frozenset[str]:
    return frozenset(name.partition("|")[0] for name in groups)


def _has(key: str, name: str) -> bool:
    return name in (open_table("goods_groups.tsv").get(key) or "").split(";")
