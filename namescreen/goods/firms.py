"""What firms call themselves, of any trade (workshop) or of one (a pantry, of food; a forge, of knives): words that
anyone in it may use (TMEP 1209.03(q), (r)). Written from memory and incomplete (wordlists/curated/firm_words.txt)."""

from __future__ import annotations

from functools import lru_cache

from ..lexicon import kinds
from ..tables import open_table
from .context import context

__all__ = ["is_firm_word"]

LIKELIEST = 2
"""So many of the likeliest classes of goods say of what trade they are."""


@lru_cache(maxsize=1 << 13)
def is_firm_word(word: str, goods: str) -> bool:
    """Whether firms that make or sell `goods` call themselves by the folded English `word`."""
    if "generic head" in kinds(word):
        return True
    of_trade = (open_table("word_kinds.tsv").get(f"*firm {word}") or "").split()
    return bool(of_trade) and any(str(one) in of_trade for one in context(goods).classes[:LIKELIEST])
