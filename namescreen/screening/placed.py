"""Words of other languages that are places: their meaning is known, though no dictionary of that language is asked."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from ..connotations import Reading
from ..text import fold

__all__ = ["with_places"]


def with_places(readings: Iterable[Reading]) -> list[Reading]:
    """The `readings`; an ordinary word without a meaning that is mostly a place, or who or what comes from one, says
    so."""
    from ..goods.places import place_of

    told = []
    for one in readings:
        place = place_of(fold(one.word)) if one.meaning is None else None
        if place is not None:
            itself = fold(place.name) == fold(one.word)
            one = replace(one, meaning="the name of a place" if itself else f"of {place.name}, a place")
        told.append(one)
    return told
