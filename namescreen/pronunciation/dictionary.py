"""Words the CMU Pronouncing Dictionary holds, and their readings."""

from __future__ import annotations

from functools import cache, lru_cache

from ..tables import Table, open_table

__all__ = ["known_readings"]


@cache
def _table() -> Table:
    return open_table("pronunciations.tsv")


@lru_cache(maxsize=1 << 16)
def known_readings(word: str) -> tuple[str, ...]:
    """The readings of a folded word as marked codes, most usual first; empty if the dictionary lacks it."""
    value = _table().get(word)
    return tuple(value.split(" ")) if value else ()
