"""Fields of use that have shops and makers of their own (cycling, fishing, pets): what is made for one is sold there
beside the rest, whatever it is. Written from memory (wordlists/curated/goods_fields.txt)."""

from __future__ import annotations

from functools import lru_cache
from itertools import pairwise

from ..tables import open_table
from .mentions import is_aside
from .phrases import Item

__all__ = ["fields_of"]


@lru_cache(maxsize=1 << 13)
def fields_of(item: Item) -> frozenset[str]:
    """The fields that any word of an item speaks of; empty for most items."""
    table = open_table("goods_groups.tsv")
    words = [word for word in item.words if not is_aside(word, item)]
    joined = (f"{one} {two}" for one, two in pairwise(words))
    rows = (table.get(f"@{said}") for said in (*words, *joined))
    return frozenset(field for row in rows if row for field in row.split(";"))
