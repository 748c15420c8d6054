"""Kinds of word that trade mark practice distinguishes: laudatory words, places, surnames, company forms ..."""

from __future__ import annotations

from functools import lru_cache

from ..tables import open_table
from ..text import fold

__all__ = ["KINDS", "kinds", "name_rank", "one_name", "proper_name", "words_of_kind"]

KINDS = (
    "laudatory", "quality", "function word", "company form", "domain ending", "place", "surname",
    "given name", "number", "colour", "generic head", "people", "taste", "set phrase",
)  # fmt: skip
"""Every kind there is. laudatory: praise (best, super; TMEP 1209.03(k)); quality: a grade, size or property
any goods may have (mini, light); generic head: names the kind of business (shop, house, club); people: for
whom goods are (men, kids); taste: a quality of food and drink (creamy); set phrase: words with a
sense of their own (royal flush)."""


@lru_cache(maxsize=1 << 16)
def kinds(word: str) -> frozenset[str]:
    """The kinds, of `KINDS`, to which the folded `word` belongs; empty for most words.

    Built from WordNet 3.0 and the US Census of 1990 (surnames and given names), and for the small closed
    kinds from lists of our own (wordlists/curated/)."""
    value = open_table("word_kinds.tsv").get(word)
    return frozenset(entry.partition(":")[0] for entry in value.split(",")) if value else frozenset()


@lru_cache(maxsize=32)
def words_of_kind(kind: str) -> tuple[str, ...]:
    """The words of one of the small closed kinds, sorted; empty for places and names, which are many."""
    return tuple((open_table("word_kinds.tsv").get(f"*{kind}") or "").split())


@lru_cache(maxsize=1 << 14)
def name_rank(word: str, kind: str = "surname") -> int | None:
    """The rank of `word` among US surnames or given names (1 = the most frequent, 1990), None if not
    listed."""
    if kind not in kinds(word):
        return None
    for entry in (open_table("word_kinds.tsv").get(word) or "").split(","):
        name, _, rank = entry.partition(":")
        if name == kind and rank:
            return int(rank)
    return None


@lru_cache(maxsize=1 << 14)
def one_name(word: str) -> tuple[str, ...]:
    """Of the folded `word`, if it is a given name that other languages have in other forms (Mary, Maria), or the
    genitive of one (Mary's), the keys that all its forms have; empty for any other word."""
    table = open_table("given_names.tsv")
    return tuple((table.get(word) or (table.get(word[:-1]) if word.endswith("s") else "") or "").split())


_PROPER = {"surname": "surname", "given name": "first name", "place": "place"}


def proper_name(word: str) -> frozenset[str]:
    """Which proper names `word` is, of "surname", "first name" and "place"; empty for none, or none known.

    Surnames and first names by the US Census of 1990 (`name_rank` says how frequent), places by WordNet 3.0 and, by
    the names that other languages give them (München), the Open Multilingual Wordnet. Many are ordinary words as well
    (baker, rose, reading).
    """
    folded = fold(word)
    found = {_PROPER[kind] for kind in kinds(folded) if kind in _PROPER}
    return frozenset(found | {"place"}) if folded in open_table("foreign_places.tsv") else frozenset(found)
