"""Places with what is made there: where a name of origin is protected for such goods, where a craft is at home, and
what a place is merely known for. Written from memory and incomplete (wordlists/curated/evocations.txt)."""

from __future__ import annotations

from collections import defaultdict
from functools import cache, lru_cache
from typing import NamedTuple

from ..tables import open_table
from ..text import fold
from .classification import likely_classes
from .places import place_of
from .trade_words import covered_names

__all__ = ["LONGEST_PLACE", "KnownPlace", "comes_from", "known_places"]

LONGEST_PLACE = 4
KNOWN = "known"
STEM = 6
"""Letters by which a place is seen in the name of origin: Kulmbach in Kulmbacher, Norman in Normandie."""
OF_THE_LAND = frozenset((29, 30, 31, 32, 33))
"""The Nice classes of food and drink. That small places are expected to bring forth no more is ours, after practice."""
_TABLE = "protected_signs.tsv"


class KnownPlace(NamedTuple):
    """What a place, or a word that brings it to mind, has to do with some goods: `kind` is evocation, craft or known;
    `names` are the names of origin; `evokes` if these hold the place, or courts have found the word to evoke them."""

    kind: str
    territory: str
    names: str
    evokes: bool


@lru_cache(maxsize=1 << 13)
def known_places(words: str, goods: str) -> tuple[KnownPlace, ...]:
    """What the folded `words` have to do with `goods`, in the order of the list; none for other goods and words."""
    table = open_table(_TABLE)
    place = place_of(words)
    keys = dict.fromkeys(f"~{one}" for one in (words, fold(place.name).replace("-", " ") if place else ""))
    found = []
    for entry in dict.fromkeys(entry for key in keys for entry in (table.get(key) or "").split()):
        territory, known_for, names, kind = str(table.get(f"*{entry.rstrip('!')}")).split("|")
        if not covered_names(goods).isdisjoint(known_for.split(",")):
            own = _of_the_place(names, tuple(key[1:] for key in keys if key != "~"), entry.rstrip("!"))
            found.append(KnownPlace(kind, territory, own, entry.endswith("!")))
    return tuple(found)


def _of_the_place(names: str, place: tuple[str, ...], number: str) -> str:
    """Of the names of origin of an entry those that a place brings to mind: without such as hold another place of the
    entry and not this one; all of them if each does."""
    others = tuple(one for one in _places_of_entries()[number] if one not in place)
    each = _each(names, (*place, *others))
    kept = [one for one in each if _holds(one, place) or not _holds(one, others)]
    return ", ".join(kept) or names


def _each(names: str, places: tuple[str, ...]) -> list[str]:
    """The names of origin of an entry; mere places before one with "and" belong to it (Herefordshire, Worcestershire
    and Gloucestershire Cider)."""
    found: list[str] = []
    for one in reversed(names.split(", ")):
        if found and " and " in found[0] and (fold(one) in places or " of " in one):
            found[0] = f"{one}, {found[0]}"
        else:
            found.insert(0, one)
    return found


def _holds(name: str, places: tuple[str, ...]) -> bool:
    """Whether a word of a name of origin begins as one of some places, or adjectives of them, does."""
    words = fold(name).replace("-", " ")
    return any(f" {one[:STEM]}" in f" {words}" for one in places)


@cache
def _places_of_entries() -> dict[str, list[str]]:
    """The places, and words that bring them to mind, of each entry."""
    found: dict[str, list[str]] = defaultdict(list)
    for key, numbers in open_table(_TABLE).starting("~"):
        for number in numbers.split():
            found[number.rstrip("!")].append(key[1:])
    return found


def comes_from(word: str, goods: str) -> bool:
    """Whether the folded `word` is a place that buyers of such goods know for them, be it wild or small; of food and
    drink any place that they know (Windsurfing Chiemsee, C-108/97: what they may come to connect with it)."""
    place = place_of(word)
    local = place is not None and place.small and bool(set(likely_classes(goods)[:1]) & OF_THE_LAND)
    return local or any(one.kind == KNOWN or place is not None for one in known_places(word, goods))
