"""Whether one item of goods covers another: a broader term of the trade or of a dictionary, the plain name of the
same goods, or the same goods in another wording.

What goods are made of, how, or for whom makes them no other goods, and a broader term covers them: such goods are
identical (Meric, T-133/05, from memory)."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from itertools import islice

from ..lexicon import association, lexicon
from ..tables import open_table
from ..text.inflection import other_number
from .broader import ancestors, layers_above, leading_senses, names_above, names_of, senses_of_goods
from .classification import worn_by_animals
from .fields import fields_of
from .groups import groups_of, is_listed
from .phrases import AT_LARGE, Item
from .stuff_wares import holds_wares_of_stuff, is_sort_of
from .umbrella import holds_at_large
from .words import base_form

__all__ = ["comes_in_portions", "covers", "is_stuff", "made_otherwise", "one_ware"]

SENSES = 4
"""The leading senses of a name among which the one of the goods is looked for."""
OF_OTHER_STUFF = 0.9
"""How surely a broader term covers goods that are, or may be, of another stuff than it says. Ours."""
APART = 0.5
"""What is left of a dictionary's broader term where both are listed in groups of goods, and in none together."""
WIDE = 1500
"""A broader term with more senses than this below it (device, food) covers nothing in particular."""
WIDE_SORT = 6000
"""The same for a word that says of which sort goods are, or for whom (animal, plant); ours."""
INSTEAD = frozenset(
    """
    vegetarian vegan imitation artificial toy mock fake faux dummy substitute plant-based alcohol-free non-alcoholic
    electronic model miniature inflatable
""".split()
)
"""Privative modifiers: goods of this kind are no such goods, but are bought instead of them. Ours; from memory."""
TOY, OF_TOYS = "toy", "toys|"
"""But toys for toys are no substitutes: toy building blocks."""
MADE_OF = {
    "wooden": "wood", "woollen": "wool", "woolen": "wool", "golden": "gold", "silken": "silk", "oaken": "oak",
    "earthen": "earth", "leathern": "leather", "flaxen": "flax", "hempen": "hemp", "waxen": "wax",
}  # fmt: skip
"""The English adjectives of materials, with the noun that a list may have after "of" instead."""
_STUFF = frozenset(("matter", "toiletry", "coating"))
"""WordNet's broader terms of what comes in portions."""
_IN_FORM = frozenset("bar stick powder liquid block brick tablet capsule cube flake solid loose pressed".split())
"""In which form a stuff comes, where that stands before it: block cheese. Ours."""

_OF_ALL = frozenset("household domestic ornamental decorative general various fitted hand manual natural".split())
"""What lists say of goods that leaves hardly any of them out: household bowls, natural honey. Ours; from the wording of
goods lists, from memory."""
_ABOUT_HOME = frozenset("garden outdoor indoor patio terrace balcony table home house tabletop".split())
"""Where about a home goods stand: so said, they may stand elsewhere too. Ours."""
STUFFS = frozenset(
    "fabric,yarn,fiber,plant fiber,leather,animal skin,wood,wickerwork,paper,plastic,rubber,wax,ceramic,ceramic ware,"
    "enamel,glass,metal,metallic element,alloy,rock,stone,gem,jewel,bone".split(",")
)
"""What WordNet calls the kinds of stuff that wares are made of; from memory."""


def _name(item: Item) -> str:
    return " ".join((*item.modifiers, item.head))


@lru_cache(maxsize=1 << 14)
def covers(broad: Item, narrow: Item) -> float:
    """How surely `broad` covers `narrow`: its words are among the other's, or it is a broader term for it. What only
    takes the place of a thing (vegetarian sausages, artificial flowers) is none; clothing for dogs is no clothing."""
    if worn_by_animals(narrow.text) and not worn_by_animals(broad.text):
        return 0.0
    broad = _in_any_form(broad, narrow)
    instead = INSTEAD.intersection(narrow.modifiers).difference(broad.modifiers)
    if instead and not (instead == {TOY} and any(name.startswith(OF_TOYS) for name in groups_of(broad))):
        return 0.0
    if _says_no_less(broad, narrow) or _is_kind(broad, narrow) or holds_wares_of_stuff(broad, narrow):
        return 1.0
    if holds_at_large(broad, narrow):
        return 1.0
    above = _terms_above(narrow)
    if _is_called(broad, above):
        return 1.0
    if broad.modifiers and not all(_is_met(word, {*narrow.modifiers, *narrow.rest}) for word in broad.modifiers):
        plain = broad._replace(modifiers=tuple(word for word in broad.modifiers if not is_stuff(word)))
        of_stuff = plain != broad and _is_called(plain, above)  # leather bike accessories, bags of canvas for bicycles
        return OF_OTHER_STUFF if of_stuff and not _is_called_of_another_stuff(broad, above) else 0.0
    if broad.modifiers and broad.head in above:  # cycling clothing, cycling caps
        return 1.0
    heads = dict(senses_of_goods(broad.head, 2))
    by_sense = (
        (strength * heads[up])
        for sense_id, strength in senses_of_goods(narrow.head, 2)
        for up in (ancestors(sense_id) - {sense_id}) & heads.keys()
        if lexicon().entry(up).below < WIDE and sense_id in _meant(narrow)
    )
    groups, others = groups_of(broad), groups_of(narrow)
    apart = groups and others and not groups & others  # footwear is clothing to a dictionary alone
    return max(by_sense, default=0.0) * (APART if apart else 1.0)


def _is_called_of_another_stuff(broad: Item, names: frozenset[str]) -> bool:
    """Whether the other goods have a name that says of what they are, and it is not what `broad` is of: cling film is
    plastic wrap, and no beeswax wrap."""
    named = (name.split() for name in names)
    stuffs = {word for *before, last in named if last == broad.head for word in before if is_stuff(word)}
    return bool(stuffs) and stuffs.isdisjoint(broad.modifiers)


def _in_any_form(broad: Item, narrow: Item) -> Item:
    """A stuff without the form that it comes in: each sort of it may come so too (block cheese, goat cheese), and goods
    that are both are identical as far as they are. A form that is listed as goods of its own, or is said of both, tells
    them apart."""
    named = _IN_FORM.intersection(broad.modifiers)
    if not named or broad.head != narrow.head or is_listed(broad) or _IN_FORM.intersection(narrow.modifiers):
        return broad
    kept = tuple(word for word in broad.modifiers if word not in named)
    return broad._replace(modifiers=kept) if comes_in_portions(broad.head) else broad


@lru_cache(maxsize=1 << 12)
def comes_in_portions(word: str) -> bool:
    """Whether a word is first of all a stuff, such as a food: what comes in pieces or portions of any size."""
    return any(not _STUFF.isdisjoint(names_above(sense)) for sense, _ in leading_senses(word, 1))


def _says_no_less(broad: Item, narrow: Item) -> bool:
    """Whether `narrow` is called as `broad`, and each word that `broad` says of it is met: it may say more, such as
    what it is made of, how, or for whom."""
    theirs = {*narrow.modifiers, *narrow.rest}
    if broad.head != narrow.head or not all(_is_met(word, theirs) for word in broad.modifiers):
        return False
    return all(_is_met(word, theirs) for word in broad.rest) or _is_met(" ".join(broad.rest), theirs)


def one_ware(broad: Item, narrow: Item) -> bool:
    """Whether `broad` is a term of the trade or the plain name of `narrow`, so that a guess at classes tells them not
    apart: what goods are made of, how, or for whom makes them no other goods. A name of its own (hot dog, shoe tree) is
    another ware unless it is a kind of what its last word names, and so is one that the lists have in other groups."""
    broad = _in_any_form(broad, narrow)
    if _is_called(broad, _broader_terms(_name(narrow))) or holds_wares_of_stuff(broad, narrow):
        return True
    if holds_at_large(broad, narrow):
        return True
    if not _says_no_less(broad, narrow):
        return False
    if _listed_apart(broad, narrow):
        return False
    senses = _senses_of(_name(narrow)) if narrow.modifiers else ()
    return not senses or any(not _heads(broad.head).isdisjoint(ancestors(sense)) for sense in senses)


def made_otherwise(one: Item, other: Item) -> bool:
    """Whether two items differ only in what they are made of: mugs of enamel, stoneware mugs. A name of its own (paper
    clip) tells more than that."""
    if one.head != other.head or one.dealing != other.dealing:
        return False
    mine, theirs = ({*item.modifiers, *item.rest} for item in (one, other))
    apart = mine ^ theirs
    named = any(_senses_of(_name(item)) for item in (one, other) if item.modifiers)
    return bool(mine and theirs and apart) and not named and (all(map(is_stuff, apart)) or _overlap(one, other))


def _overlap(one: Item, other: Item) -> bool:
    """Whether nothing that is said of the one keeps it from being the other: of one of them only how it looks or where
    about a home it stands, of the other at most what it is made of and holds (garden lanterns, lanterns of stoneware
    for tea lights). Both in a place, or one for a field of its own, are told apart."""
    for item, its in ((one, other), (other, one)):
        told = {*item.modifiers, *item.rest}
        plain = bool(told) and all(word in _ABOUT_HOME or word in _OF_ALL or is_stuff(word) for word in told)
        before = all(is_stuff(word) or word in _OF_ALL for word in its.modifiers)
        placed = not told.isdisjoint(_ABOUT_HOME) and not _ABOUT_HOME.isdisjoint(its.words)
        apart = fields_of(its) and not fields_of(its) & fields_of(item)
        if plain and before and not placed and not apart:
            return True
    return False


@lru_cache(maxsize=1 << 12)
def is_stuff(word: str) -> bool:
    """Whether a word is first of all a stuff that wares are made of."""
    base = base_form(MADE_OF.get(word, word))
    return any(not STUFFS.isdisjoint(names_above(sense)) for sense, _ in leading_senses(base, 2))


def _listed_apart(one: Item, other: Item) -> bool:
    """Whether the lists hold both, by the longest part of their names that is listed, and in no group together: coats,
    and dog coats, whatever they are made of."""
    name, other_name = _listed_name(one), _listed_name(other)
    return bool(name and other_name) and name != other_name and not groups_of(one) & groups_of(other)


def _listed_name(item: Item) -> str:
    """The longest end of the name of an item that a list of groups holds; "" if none."""
    ends = (item._replace(modifiers=item.modifiers[at:]) for at in range(len(item.modifiers) + 1))
    return next((_name(end) for end in ends if is_listed(end)), "")


def _is_kind(broad: Item, narrow: Item) -> bool:
    """Whether a dictionary has the whole name of `broad` above that of `narrow`, or above its last word (musical
    instruments, dulcimers); what is said besides of `broad` is met."""
    if not broad.modifiers or not all(_is_met(word, {*narrow.modifiers, *narrow.rest}) for word in broad.rest):
        return False
    wide = {sense for sense in _senses_of(_name(broad)) if lexicon().entry(sense).below < WIDE}
    if not wide:
        return False
    named = _senses_of(_name(narrow))
    kinds = named or tuple(sense for sense, _ in senses_of_goods(narrow.head, 2))
    return any(not wide.isdisjoint(ancestors(sense)) and (bool(named) or sense in _meant(narrow)) for sense in kinds)


@lru_cache(maxsize=1 << 13)
def _meant(item: Item) -> tuple[str, ...]:
    """The leading senses of what an item is, those alone that what is said of it brings to mind, if that tells them
    apart: a fireplace poker is no card game."""
    senses = [sense for sense, _ in senses_of_goods(item.head, 2)]
    fit = {sense: _brought_to_mind(item, sense) for sense in senses}
    best = max(fit.values(), default=0.0)
    return tuple(sense for sense in senses if fit[sense] >= best / 2)


def _brought_to_mind(item: Item, sense: str) -> float:
    """How much what is said of an item brings to mind what a sense of it, or the kind above, is called."""
    near = (one for layer in islice(layers_above([sense]), 2) for one in layer)
    names = [name.replace("_", " ") for name in sorted(names_of(near) - {item.head})]
    said = item.modifiers or item.rest
    return max((association(*sorted((word, name))) or 0.0 for word in said for name in names), default=0.0)


@lru_cache(maxsize=1 << 13)
def _senses_of(name: str) -> tuple[str, ...]:
    """The senses of a name of several words that the lexicon holds; none for others."""
    return tuple(sense for sense, _ in leading_senses(name, SENSES)) if " " in name else ()


@lru_cache(maxsize=1 << 13)
def _heads(word: str) -> frozenset[str]:
    return frozenset(sense for sense, _ in leading_senses(word, SENSES))


@lru_cache(maxsize=1 << 14)
def _is_broader(word: str, narrow: str) -> bool:
    """Whether what is told by `word` holds of `narrow` too: another name of it (bike, bicycle), or a broader one."""
    if word in _broader_terms(narrow):
        return True
    broad = {sense for sense, _ in leading_senses(word, 2) if lexicon().entry(sense).below < WIDE_SORT}
    return any(broad & ancestors(sense) for sense, _ in leading_senses(narrow, 2))


def _is_met(word: str, said: Iterable[str]) -> bool:
    """Whether one of the words `said` of goods says as much as `word`, which may be several words: a collar for a dog
    is one for an animal, and for household pets."""
    word = MADE_OF.get(word, word)
    told = (MADE_OF.get(one, one) for one in said)
    return word in _OF_ALL or any(is_sort_of(word, one) or _is_broader(word, one) for one in told)


def _is_called(item: Item, terms: frozenset[str]) -> bool:
    """Whether the name of an item is among terms of the trade: in either number, as irons (shackles) has no singular to
    a dictionary and a fire iron has; by any word for whatever a trade has (fishing articles, fishing tackle)."""
    name = _name(item)
    if name in terms or (name.endswith("s") and not terms.isdisjoint(_in_other_number(name))):
        return True
    at_large = item.head in AT_LARGE and item.modifiers
    return bool(at_large) and any(_name(item._replace(head=one)) in terms for one in AT_LARGE)


@lru_cache(maxsize=1 << 13)
def _in_other_number(name: str) -> frozenset[str]:
    before, _, last = name.rpartition(" ")
    return frozenset(f"{before} {form}".strip() for form in other_number(last))


@lru_cache(maxsize=1 << 13)
def _terms_above(item: Item) -> frozenset[str]:
    """The terms of the trade that cover an item, by its name or an ending of it."""
    words = (*item.modifiers, item.head)
    return frozenset().union(*(_broader_terms(" ".join(words[at:])) for at in range(len(words))))


@lru_cache(maxsize=1 << 12)
def _broader_terms(name: str) -> frozenset[str]:
    """The terms of the trade that cover goods of this name, at all levels."""
    found: set[str] = set()
    layer = {name, *(_in_other_number(name) if name.endswith("s") else ())}
    while layer:
        above = (open_table("broader_goods.tsv").get(one) or "" for one in layer)
        layer = {up for row in above for up in row.split(",") if up} - found
        found |= layer
    return frozenset(found - {name})  # by way of another name for it
