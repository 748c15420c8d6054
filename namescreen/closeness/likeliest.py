"""The likeliest ways to read a name, from the ways to read each of its words."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache
from itertools import chain, islice
from typing import TypeVar

__all__ = ["likeliest", "likeliest_places", "readings_tried"]

Part = TypeVar("Part")

MOST_READINGS, READINGS_TRIED = 24, (24, 12, 6)
"""The most readings of a name that are compared, and the most of one word that are tried in a name of one, two and
three words; in a longer one two."""


def likeliest(choices: Sequence[Sequence[tuple[Part, ...]]]) -> Iterator[tuple[Part, ...]]:
    """The ways to read the words of a name one after another, at most two dozen, from the readings of each, the
    likeliest first; the last is the word itself and always among those that are tried."""
    tried = readings_tried(len(choices))
    kept = [[*ways[:-1][:tried], ways[-1]] for ways in choices]
    return (
        tuple(chain.from_iterable([ways[place] for ways, place in zip(kept, places, strict=True)]))
        for places in likeliest_places(tuple(map(len, kept)))
    )


def readings_tried(words: int) -> int:
    """The most readings of one word that are tried in a name of so many, besides the word itself."""
    return READINGS_TRIED[words - 1] if words <= len(READINGS_TRIED) else 2


@lru_cache(maxsize=1 << 12)
def likeliest_places(sizes: tuple[int, ...]) -> tuple[tuple[int, ...], ...]:
    """Which of the readings of each word go together in the likeliest ways to read a name, the likeliest first, by how
    many readings each word has."""
    totals = range(sum(sizes) - len(sizes) + 1)
    return tuple(islice(chain.from_iterable(_with_sum(sizes, total) for total in totals), MOST_READINGS))


def _with_sum(sizes: tuple[int, ...], total: int) -> Iterator[tuple[int, ...]]:
    """The places below these sizes that add up to `total`, in order."""
    if not sizes:
        yield ()
        return
    most = sum(sizes[1:]) - len(sizes) + 1
    for place in range(max(0, total - most), min(total, sizes[0] - 1) + 1):
        for others in _with_sum(sizes[1:], total - place):
            yield (place, *others)
