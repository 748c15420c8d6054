"""Collective nouns for wares by what they are made of (pottery, glassware, leather goods), and which goods they hold:
those that are stated to be of that stuff. The nouns and stuffs are written from memory."""

from __future__ import annotations

import re
from functools import lru_cache

from ..expressions import expression
from ..lexicon import lexicon
from .broader import leading_senses, names_above
from .classification import likely_classes
from .phrases import AT_LARGE, Item
from .words import base_form

__all__ = ["holds_wares_of_stuff", "is_sort_of"]

_SORTS = {
    "ceramic": "ceramic clay stoneware earthenware porcelain china terracotta faience faïence majolica maiolica bisque "
    "raku creamware redware salt-glaze slipware delft pottery",
    "glass": "glass crystal borosilicate pyrex",
    "wood": "wood wooden timber bamboo plywood driftwood oak ash beech birch walnut maple cherry olivewood pine teak "
    "acacia",
    "wicker": "wicker willow rattan cane seagrass raffia rush straw rushwork bamboo jute reed osier",
    "leather": "leather suede nubuck calfskin cowhide sheepskin deerskin goatskin nappa",
    "metal": "metal iron steel brass copper tin pewter bronze aluminium aluminum silver gold zinc cast-iron",
    "iron": "iron steel cast-iron",
    "brass": "brass", "copper": "copper", "tin": "tin", "pewter": "pewter", "silver": "silver", "enamel": "enamel",
    "lacquer": "lacquer", "plastic": "plastic acrylic melamine silicone resin polypropylene", "rubber": "rubber latex",
    "felt": "felt", "paper": "paper cardboard paperboard papier-mache", "cork": "cork", "concrete": "concrete cement",
    "stone": "stone marble granite slate soapstone alabaster onyx",
    "textile": "textile fabric cloth cotton linen wool silk hemp felt velvet canvas muslin flax cashmere",
}  # fmt: skip
"""A stuff, and what is of it."""
_HOME = frozenset((8, 11, 16, 20, 21, 28, 34))
_OF_LEATHER = frozenset((16, 18, 21, 34))
"""The classes of small wares for a home, and of those of leather: no rings of silver, no leather sofas."""
_NOUNS = {
    "ceramic": "pottery earthenware stoneware ceramic chinaware porcelain terracotta faience majolica ceramicware",
    "glass": "glassware", "wood": "woodware woodenware treen woodwork woodcraft",
    "wicker": "wicker basketry basketwork basketware wickerwork wickerware canework strawwork",
    "leather": "leatherware leatherwork leathercraft", "metal": "metalware metalwork", "iron": "ironware ironwork",
    "brass": "brassware", "copper": "copperware", "tin": "tinware", "pewter": "pewterware", "silver": "silverware",
    "enamel": "enamelware", "lacquer": "lacquerware", "plastic": "plasticware", "stone": "stonework",
    "paper": "paperware papercraft",
}  # fmt: skip
_BY_NOUN = {noun: stuff for stuff, nouns in _NOUNS.items() for noun in nouns.split()}
"""Collective nouns, and the stuff of the wares that they name."""
_WARES = AT_LARGE - frozenset(("gear", "equipment", "accessory", "tackle", "supply")) | {"ware", "object", "craft"}
_SAID_OF_WARES = frozenset("household ornamental decorative kitchen home garden domestic art table handmade".split())
"""What lists say of wares at large that leaves hardly any out."""
_WORK_ON = frozenset(
    """
    cleaner polish polisher cutter glue adhesive varnish paint stain glaze wheel kiln saw drill chisel nail screw stove
    burner pellet filler repair punch needle conditioner care dye furnace oven cement primer sealant sealer wax oil tool
    machine chip sheet plate board panel scrap fibre fiber blank tile brick pipe wire fitting window door body
    """.split()
)
"""Heads that work on a stuff or are half-made goods of it, and no wares: a glass cutter."""
_OF_STUFF = expression(
    r"\b(?:of|in|from)\s+(.+?)(?=\s(?:for|with|to|by|on|that|which|used|being)\s|[,;()]|$)", re.IGNORECASE
)
_WARES_OF = expression(
    r"\b(?:goods|articles?|wares?|products?|items?|objects?)\s+(?:made\s+)?(?:of|in|from)\s", re.IGNORECASE
)


def holds_wares_of_stuff(broad: Item, narrow: Item) -> bool:
    """Whether `broad` names all wares of a stuff, and `narrow` goods that are stated to be of it: pottery, lanterns of
    stoneware. A collective noun holds small wares alone (no stoneware pipes); "goods of steel" holds all of steel."""
    stuff, at_large = _wares_named(broad)
    if not stuff or broad.dealing or narrow.dealing or narrow.head in _WORK_ON or narrow.head in _BY_NOUN:
        return False
    if not any(is_sort_of(stuff, word) for word in _stated(narrow)) or _is_stuff(narrow.head):
        return False
    held = _OF_LEATHER if stuff == "leather" else _HOME
    return at_large or not held.isdisjoint(likely_classes(narrow.text)[:2])


@lru_cache(maxsize=1 << 12)
def is_sort_of(stuff: str, word: str) -> bool:
    """Whether a word names a stuff, or a sort of it: ceramic, stoneware."""
    if word == stuff or word in _SORTS.get(stuff, "").split():
        return True
    above = (names_above(sense) for sense, _ in leading_senses(word, 1))
    return stuff in ("wood", "metal", "leather") and any(stuff in names and _is_stuff(word) for names in above)


@lru_cache(maxsize=1 << 12)
def _wares_named(item: Item) -> tuple[str, bool]:
    """The stuff of the wares that an item names as such, "" if none, and whether it names them at large."""
    before = [word for word in item.modifiers if word not in _SAID_OF_WARES]
    if item.rest and not _WARES_OF.search(item.text):
        return "", False
    if _WARES_OF.search(item.text) and not before:  # articles of ceramic
        return _stuff_of(item.head), True
    if item.head in _BY_NOUN and not before:
        return _BY_NOUN[item.head], False
    if item.head in _WARES and len(before) == 1:  # leather goods, wooden articles
        return _stuff_of(before[0]), False
    return "", False


def _stuff_of(word: str) -> str:
    """The stuff that a word names, as a noun; "" if it names none."""
    word = {"wooden": "wood", "woollen": "wool", "golden": "gold"}.get(word, word)
    return word if word in _SORTS or any(is_sort_of(stuff, word) for stuff in _SORTS) else ""


@lru_cache(maxsize=1 << 13)
def _stated(item: Item) -> frozenset[str]:
    """The words that may say what an item is made of: those before its head, and those after "of", "in" or "from"."""
    after = (word for said in _OF_STUFF.findall(item.text) for word in re.findall(r"[\w'-]+", said.lower()))
    return frozenset((*item.modifiers, *map(base_form, after)))


@lru_cache(maxsize=1 << 12)
def _is_stuff(word: str) -> bool:
    """Whether a word is first of all a stuff."""
    return any(lexicon().domain(sense) == "noun.substance" for sense, _ in leading_senses(word, 1))
