"""Names of places and the words made from them: does a name tell where goods come from (TMEP 1210; EUTMR Article
7(1)(c); TMA 1994 s. 3(1)(c))?

WordNet's places and their adjectives, a list of our own and towns of GeoNames (wordlists/places.tsv)."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from ..lexicon import kinds, lexicon, zipf
from ..tables import open_table
from .context import ancestors

__all__ = ["Place", "is_settled_place", "place_of"]

WILD = frozenset(("island", "body of water", "geological formation", "desert", "natural elevation", "celestial body",
                  "constellation"))  # fmt: skip
"""What an uninhabited place is, in WordNet; inhabited islands, mountains and rivers are in our own list."""
OBSCURE = 1.9
"""Zipf value below which few buyers know a place: about one in ten million words (TMEP 1210.04(c)). Ours."""


@dataclass(frozen=True, slots=True)
class Place:
    """A place that a word names or is made from; `home` if people live and make things there, and buyers know of it."""

    name: str
    home: bool


@lru_cache(maxsize=1 << 14)
def place_of(word: str) -> Place | None:
    """The place that the folded `word` (or words) mostly stands for, None if it is something else first."""
    listed = open_table("places.tsv").get(word)
    if listed:
        kind, _, name = listed.partition("|")
        return Place(name, kind == "home")
    if len(word) < 3 or "place" not in kinds(word):  # va and ca are states only on envelopes
        return None
    senses = lexicon().senses(word, labelled=False)
    if not senses:
        return None
    leading = senses[0]
    written = next((form for form in leading.words if form.lower() == word), word)
    if leading.domain == "adj.pert" and written[:1].isupper():
        return Place(written, True)
    if leading.domain not in ("noun.location", "noun.object") or not written[:1].isupper():
        return None
    above = {name for up in ancestors(leading.id) for name in lexicon().entry(up).words}
    return Place(written, not above & WILD and min(map(zipf, word.split())) >= OBSCURE)


def is_settled_place(word: str) -> bool:
    """Whether `word` is mostly a place where people live and trade, and that buyers know (TMEP 1210.02)."""
    place = place_of(word)
    return place is not None and place.home
