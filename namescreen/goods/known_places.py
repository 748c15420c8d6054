"""Places with what is made there: where a name of origin is protected for such goods, where a craft is at home, and
what a place is merely known for. Written from memory and incomplete (wordlists/curated/evocations.txt)."""

from __future__ import annotations

from functools import lru_cache

from ..records import dataclass
from ..tables import open_table
from ..text import fold
from .classification import likely_classes
from .places import place_of
from .trade_words import covered_names

__all__ = ["LONGEST_PLACE", "KnownPlace", "comes_from", "known_places"]

LONGEST_PLACE = 4
KNOWN = "known"
OF_THE_LAND = frozenset((29, 30, 31, 32, 33))
"""The Nice classes of food and drink. That small places are expected to bring forth no more is ours, after practice."""
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
    """Whether the folded `word` is a place that buyers of such goods know for them, be it wild or small; of food and
    drink any place that they know (Windsurfing Chiemsee, C-108/97: what they may come to connect with it)."""
    place = place_of(word)
    local = place is not None and place.small and bool(set(likely_classes(goods)[:1]) & OF_THE_LAND)
    return local or any(one.kind == KNOWN or place is not None for one in known_places(word, goods))
