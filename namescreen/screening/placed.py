"""What is known of words of other languages beside the tables of unlucky ones: places, and words that say there what
they say in English."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from ..connotations import Reading
from ..text import fold

__all__ = ["as_in_english", "with_places"]


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


def as_in_english(readings: Iterable[Reading]) -> list[Reading]:
    """The `readings`; a word that is mild at worst and means in its language just what the same word means in English
    (wolf) is ordinary: the maker has read it already."""
    return [
        replace(one, kind="ordinary", severity=0)
        if one.severity == 1 and one.stands and one.meaning and fold(one.meaning) == fold(one.word)
        else one
        for one in readings
    ]
