"""The short lists of subjects: which words were chosen for what the terms of a brief name, and how they pleased a blind
reader there (wordlists/curated/naming_picks.txt)."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache
from typing import TYPE_CHECKING

from ..tables import open_table
from .brief_terms import BriefTerms
from .vocabulary import places

if TYPE_CHECKING:
    from .brief_terms import Associations

__all__ = ["NAMED_AS", "ShortLists", "english_lists", "met_by_lists", "on_short_lists", "pleased", "unlisted"]

NAMED_AS = 0.9
"""A tie from which a term names the subject of a list, as itself or a synonym does."""
_CONFIRMED, _HALF_SURE = 0.25, 0.5
"""What the rest of a brief has to do with a subject that a term only touches, so that it counts in full; the share of
that from which it counts at all."""
_DULL, _BEST = 2, 7  # ratings of a word for a subject at which it counts nothing, and in full, as chosen for it
_LISTED = 0.75  # how strongly a word is associated with what it stands on a short list for; the rest is its rating's
_CHOSEN = 0.5  # how strongly a term must bring a subject to mind for the words chosen for it to count
_CHANCE, _UNSURE = 0.2, 0.15
"""Of how much a subject has to do with the rest of a brief: what is chance, and what leaves it open which is meant."""


ShortLists = tuple[tuple[tuple[str, ...], tuple[tuple[str, float], ...]], ...]
"""Subjects, each with the words of its short list, and how each pleased for it, as a share."""


@cache
def english_lists() -> ShortLists:
    """The short lists of English words."""
    rows = (value.split("|") for _, value in open_table("naming_picks.tsv").items())
    rated = ((about.split(), (entry.rpartition(" ") for entry in words.split(", "))) for about, words in rows)
    return tuple((tuple(about), tuple((word, pleased(rating)) for word, _, rating in words)) for about, words in rated)


def pleased(rating: str) -> float:
    """A rating as a share: 0 = dull, 1 = the best."""
    return (float(rating) - _DULL) / (_BEST - _DULL)


def met_by_lists(brief_terms: BriefTerms, lists: ShortLists) -> list[Associations]:
    """How strongly each term is associated with each name of the subject of each short list."""
    return [_met(brief_terms, about) for about, _ in lists]


def unlisted(met: Iterable[Associations]) -> list[int]:
    """The places of the terms that no short list is for, by what `met_by_lists` gives."""
    import numpy as np

    best = np.max([of_list.max(axis=1, initial=0.0) for of_list in met], axis=0)
    return [int(place) for place in (best < _CHOSEN).nonzero()[0]]


def on_short_lists(
    brief_terms: BriefTerms, met_by_list: Iterable[Associations], lists: ShortLists
) -> dict[str, tuple[Associations, Associations]]:
    """The words of short lists for what the terms name, each with its association with each term, and that times
    how it pleased.

    Of several lists that one term names, those count in full whose subjects the rest of the brief is about (butter and
    cream, or skin and cream). How a word pleased counts once for each list, for the weightiest term that names it, so
    that puddle and rain do not make two of one idea.
    """
    import numpy as np

    rows = []
    for met_here, (_, words) in zip(met_by_list, lists, strict=True):
        with_each = np.sort(met_here, axis=1)
        met, second = with_each[:, -1], with_each[:, -min(2, with_each.shape[1])]
        named = np.where(met >= _CHOSEN, met, np.float32(0))
        if named.any():
            loose = (met - _CHANCE).clip(0) * brief_terms.weights
            others = loose.sum() - loose
            sure = np.where(met >= NAMED_AS, 1.0, np.minimum(1.0, others / _CONFIRMED))
            # in its chosen sense a term is near its synonyms
            rows.append((named * np.where(sure >= _HALF_SURE, sure, 0.0), others + second, words))
    best = np.max([others * (named > 0) for named, others, _ in rows], axis=0, initial=0.0)
    found: dict[str, tuple[Associations, Associations]] = {}
    for named, others, words in rows:
        agreed = np.asarray(named * np.minimum(1.0, (others + _UNSURE) / (best + _UNSURE)), np.float32)
        once = np.zeros_like(agreed)
        best_term = int((agreed * brief_terms.weights).argmax())
        once[best_term] = agreed[best_term]
        for one, share in words:
            both = agreed * np.float32(_LISTED + (1 - _LISTED) * share), once * np.float32(share)
            if one in found:
                both = np.maximum(both[0], found[one][0]), np.maximum(both[1], found[one][1])
            found[one] = both
    return found


def _met(brief_terms: BriefTerms, about: Iterable[str]) -> Associations:
    """How strongly each term is associated with each name of a subject. Of "bird+feeder", feeder names it, and only
    where another term of the brief is about birds."""
    import numpy as np

    columns = []
    for name in about:
        *beside, word = name.split("+")
        if word in places():
            column = brief_terms.associations[:, places()[word]]
            for other in beside:
                column = column * (brief_terms.associations[:, places()[other]].max(initial=0.0) >= _CHOSEN)
            columns.append(column)
    return np.array(columns, np.float32).reshape(len(columns), -1).T
