"""Places with what is made there: where a name of origin is protected for such goods, where a craft is at home, and
what a place is merely known for. Written from memory and incomplete (wordlists/curated/evocations.txt)."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from ..tables import open_table
from ..text import fold
from .places import place_of
from .trade_words import covered_names

__all__ = ["LONGEST_PLACE", "KnownPlace", "comes_from", "known_places"]

LONGEST_PLACE = 4
KNOWN = "known"
_TABLE = "protected_signs.tsv"


@dataclass(frozen=True, slots=True)
class KnownPlace:
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
            found.append(KnownPlace(kind, territory, names, entry.endswith("!")))
    return tuple(found)


def comes_from(word: str, goods: str) -> bool:
    """Whether the folded `word` is a place that buyers of such goods know for them, be it wild or small."""
    return any(one.kind == KNOWN or place_of(word) is not None for one in known_places(word, goods))
