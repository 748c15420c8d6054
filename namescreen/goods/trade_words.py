"""What a term of a trade says of goods: varieties, styles, materials, techniques, and the words that labels and shops
say of a ware.

The lists are written from memory and incomplete: a word that is not listed may still be a term of the trade."""

from __future__ import annotations

from functools import lru_cache
from itertools import islice
from typing import NamedTuple

from ..lexicon import kinds, lexicon
from ..tables import open_table
from .animals import is_animal
from .broader import layers_above, leading_senses, names_of
from .classification import likely_classes
from .context import context
from .groups import ties
from .phrases import Item, items
from .trade_table import LONGEST_TERM, Area, areas_of, areas_of_part, is_term, label_senses, meaning_of, said_of
from .words import base_form

__all__ = [
    "LONGEST_TERM", "TradeTerm", "called", "covered_names", "is_code", "is_of_trade", "is_term", "is_told_of",
    "is_unsaid", "label_term", "meaning_of", "term_for",
]  # fmt: skip

_SORT = "a sort"
"""How the description of terms begins that are sorts of goods."""
STEPS_UP = 2
"""How many steps up a dictionary a word for goods still stands for them: opener, hand tool, tool."""
_THINGS = frozenset(("noun.artifact", "noun.food", "noun.substance", "noun.plant"))
"""WordNet's fields of what goods are."""
_FOR_ANIMALS = frozenset(("animal", "pet"))
NAMED, NEAR = 0.95, 0.85
"""How plainly a term describes the goods it is told of, named as such or by a near word; as in `context`, ours."""
ORDINARY = 0.8
"""What is left of it for a word that has an everyday meaning too (galaxy, a hop): buyers may think of that first."""
SAID_AT_LARGE, _SAID = 0.6, "said of such goods"
"""The same where the list holds all that makers may say, acts and occasions as well: by how it describes such terms."""
SAME_CLASS = 0.55
"""The same for other goods of the class; an everyday word says nothing of them, unless labels of many wares have it."""
ELSEWHERE = 0.4
"""The same for a word of labels of few wares of the class."""
CODE = 0.75
"""The same of a code of the trade at large."""
SORT, ONE_KIND = 0.7, 0.5
"""The same for another sort of the goods, or goods of one group, and how likely the goods of that are in one class."""
PART = 0.7
"""The same for one of several words that labels of exactly such goods have together."""
FEW, MANY = 2, 3
"""Of so many wares labels say what says nothing of others; of so many of a class what may be said of others of it."""


class TradeTerm(NamedTuple):
    """A term of a trade as told of goods: `weight`, 0 to 1, how plainly it describes them (0: nothing ties it to them),
    `what` it is (a chilli pepper; said of cider on labels), and whether it is a very name of such goods; of a word of
    another language its `english` sense."""

    weight: float
    what: str
    names_goods: bool = False
    english: str = ""
    of_labels: bool = False
    """Whether labels say it of the goods, and it is no kind of them."""
    by_image: bool = False
    """Whether an everyday word stands for a sort of the goods: a word of another language that means it does not."""


@lru_cache(maxsize=1 << 14)
def term_for(words: str, goods: str) -> TradeTerm | None:
    """What the term says of `goods`, in the area where it says most; None if it is no term of any trade, nor part or
    another form of one that labels say of such goods."""
    ordinary = lexicon().known(words)
    single = areas_of(base_form(words)) if " " not in words else ()  # welders, of gloves for a welder
    areas = dict.fromkeys((*areas_of(words), *(one for one in single if one.is_narrow)))
    told = _told(words, tuple(areas), goods, ordinary=ordinary)
    if told is not None and told.weight >= PART:
        return told
    coded = is_code(words)
    strange = coded or (not ordinary and not kinds(words) and " " not in words) or words.count(" ") > 1
    near_by = (one for one in areas if strange and is_of_trade(one, goods, by_class=coded))
    if trade := next(near_by, None):
        return TradeTerm(CODE, trade.what)
    kept = PART * (ORDINARY if ordinary else 1.0)
    near = ((one, _nearness(one, goods)) for one in areas_of_part(words))
    parts = (TradeTerm(kept, one.what, of_labels=True) for one, how_near in near if how_near == NAMED)
    return max(filter(None, (told, next(parts, None))), key=lambda one: one.weight, default=None)


@lru_cache(maxsize=1 << 14)
def label_term(words: str, goods: str, language: str) -> TradeTerm | None:
    """What words of labels of another language say of `goods`, in the sense that says most; None if they are none."""
    told = (_told(one.english, one.areas, goods, english=one.english) for one in label_senses(words, language))
    return max(filter(None, told), key=lambda one: one.weight, default=None)


def _told(
    words: str, areas: tuple[Area, ...], goods: str, *, ordinary: bool = False, english: str = ""
) -> TradeTerm | None:
    """What a term of these areas says of the goods, in the one where it says most."""
    of_class = sum(_is_of_class(one, goods) for one in areas if one.is_ware)
    plain = ordinary or (not english and " " in words and all(map(lexicon().known, words.split())))  # a copper kettle
    told = []
    for one in areas:
        near = _nearness(one, goods)
        usual = SAID_AT_LARGE if one.what == _SAID else ORDINARY
        weight = near * (usual if ordinary else 1.0)
        if not near and _is_of_class(one, goods):
            general = SAME_CLASS if of_class >= MANY or not one.is_ware else ELSEWHERE
            weight = general if not plain else ORDINARY * general if of_class >= MANY else 0.0
        if one.is_ware:
            kind = near >= NEAR and _names(words, one)
        else:
            kind = near == NAMED and not ordinary and one.classes[0] in context(goods).classes[:1]
        what = _what(one, goods)
        what = what.replace("said of", "a name for goods like", 1) if kind and one.is_ware else what
        by_image = ordinary and one.what.startswith(_SORT)
        told.append(TradeTerm(weight, what, kind, english, one.is_ware and not kind, by_image))
    return max(told, key=lambda one: (one.weight, one.names_goods, not one.by_image), default=None)


def _what(area: Area, goods: str) -> str:
    """What is told of an area: of wares that share their labels, the one that the goods are called as (golf clubs,
    beside rackets)."""
    own = called(goods) if area.is_ware and len(area.names) > 1 else frozenset()
    name = next((one for one in area.names if one in own), "")
    return said_of(name) if name else area.what


def is_code(words: str) -> bool:
    """Whether it is a size, grade or standard as it is coded: of letters and figures, or figures alone."""
    return any(one.isdecimal() for one in words)


@lru_cache(maxsize=1 << 14)
def is_of_trade(area: Area, goods: str, *, by_class: bool = True) -> bool:
    """Whether goods are said with those that a term is told of, or are of their class: codes are read in all of it."""
    said = {one.word for one in context(goods).words}
    if any(set(name.split()) <= said for name in area.names):
        return True
    own = set(context(goods).classes[:1]) if by_class else set()
    return any(own & set(likely_classes(name)[:1]) for name in area.names)


def is_unsaid(word: str, goods: str) -> bool:
    """Whether labels of the goods are known, and neither they nor those of other wares of the class have the word or
    its base form, nor those of more than a few others: then it hardly says anything of the goods."""
    if not _are_known_wares(goods):
        return False
    wares = {one for form in (word, base_form(word)) for one in (*areas_of(form), *areas_of_part(form)) if one.is_ware}
    return len(wares) <= FEW and not any(_is_of_class(one, goods) for one in wares)


@lru_cache(maxsize=256)
def _are_known_wares(goods: str) -> bool:
    """Whether an item of the goods is called as a ware is whose labels are known."""
    called = {one for item in items(goods) for one in _called(item)}
    return any(one.is_ware and name in one.names for name in called for one in areas_of(name))


@lru_cache(maxsize=256)
def called(goods: str) -> frozenset[str]:
    """What the items of a list are called, with all and with fewer of their modifiers."""
    return frozenset(one for item in items(goods) for one in _called(item))


def _called(item: Item) -> tuple[str, ...]:
    """What an item is called, with all and with fewer of its modifiers."""
    words = (*item.modifiers, item.head)
    return tuple(" ".join(words[at:]) for at in range(len(words)))


def _names(words: str, ware: Area) -> bool:
    """Whether words are a name of a ware, or of a sort of it (sour pickles)."""
    said = " ".join(map(base_form, words.split()))
    return any(said == name or said.endswith(f" {name}") for name in ware.names)


def _is_of_class(area: Area, goods: str) -> bool:
    return bool(set(area.classes) & set(context(goods).classes[:1]))


@lru_cache(maxsize=1 << 15)
def _nearness(area: Area, goods: str) -> float:
    """How near the goods are to those that a term is told of, 0 for others."""
    around = context(goods)
    if area.is_narrow:
        return NAMED if is_told_of(area, goods) else 0.0
    if not area.is_ware:
        if {one.word for one in around.words} & {*area.names}:
            return NAMED
    elif set(area.classes) & set(around.classes):
        if {one for item in items(goods) for one in _called(item)} & {*area.names}:
            return NAMED
        sorts = [item for item in items(goods) for name in area.names if name.endswith(f" {item.head}")]
        if sorts:
            return SORT if all(item.modifiers for item in sorts) else NEAR
        if any(_is_near(Item(name, name), item) for name in area.names for item in items(goods)):
            return SORT
    near = (around.near[one] for one in area.names if one in around.near)
    return NEAR if any(one.names_goods and one.weight >= NEAR for one in near) else 0.0


def is_told_of(area: Area, goods: str) -> bool:
    """Whether goods are called as those of an area, or by a word that these cover: a beanie is headgear; of goods for
    an animal also by their head (bedding for hamsters: animal bedding)."""
    heads = {item.head for item in items(goods)}
    if not (covered_names(goods) | _broader(frozenset(heads))).isdisjoint(area.names):
        return True
    parted = (name.partition(" ") for name in area.names)
    served = any(first in _FOR_ANIMALS and head in heads for first, _, head in parted)
    return served and any(is_animal(one.word) for one in context(goods).words)


@lru_cache(maxsize=256)
def _broader(heads: frozenset[str]) -> frozenset[str]:
    """The broader words of a dictionary for what goods are, a few steps up: a gauntlet is a glove."""
    things = ([one for one, _ in leading_senses(head, 3) if lexicon().domain(one) in _THINGS] for head in heads)
    leading = [one for each in things for one in each[:1]]
    return frozenset(names_of(one for layer in islice(layers_above(leading), STEPS_UP + 1) for one in layer))


@lru_cache(maxsize=256)
def covered_names(goods: str) -> frozenset[str]:
    """What the items of a list are called, the other names of these wares, and the terms that cover them at once (a
    mug: crockery)."""
    said = called(goods)
    wares = (area for name in said for area in areas_of(name) if area.is_ware and name in area.names)
    names = said.union(*(area.names for area in wares))
    above = (open_table("broader_goods.tsv").get(name) or "" for name in names)
    return names.union(up for row in above for up in row.split(",") if up)


def _is_near(ware: Item, item: Item) -> bool:
    """Whether lists hold a ware and an item for the same purpose and kind."""
    tied = ties(ware, item)
    return tied is not None and bool(tied["one group"]) and tied["of one kind"] >= ONE_KIND
