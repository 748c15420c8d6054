"""Blends of two words, best first: a log-linear ranking of every way to cut and join them."""

from __future__ import annotations

import heapq
import math
from collections.abc import Collection
from functools import cache
from typing import NamedTuple

from ...tables import open_table
from ...text import MAX_LENGTH
from .cuts import KINDS, Cut, cuts
from .features import Similarity, features
from .source_word import Source, source

__all__ = ["Blend", "blends", "explain", "rank"]


class Blend(NamedTuple):
    """A blend of two words.

    `score` is the share of belief, in [0, 1], that the model gives to this blend among all candidates of its
    two words (they add up to 1); `how` shows what is kept of each word and, in brackets, what is lost.
    """

    text: str
    score: float
    how: str

    def __str__(self) -> str:
        return self.text


def blends(first: str, second: str, *, limit: int = 20) -> list[Blend]:
    """The `limit` best blends of two words, best first; fewer only if there are no more ways to join them.

    Candidates are the beginning of one with the ending of the other, the beginnings of both, the two with a
    linking vowel, and one inside the other. The ranking is a log-linear model of features of sound,
    spelling and recognition (`features.FEATURES`); its weights were fitted on attested blends, with the
    quality stated in wordlists/SOURCES.md (blend_weights.tsv). Case, accents, spaces and punctuation of the
    words are ignored.
    """
    one, other = source(first[:MAX_LENGTH]), source(second[:MAX_LENGTH])  # the work grows with the square
    if not one.letters or not other.letters or limit < 1:
        return []
    return [Blend(cut.text, belief, explain(cut)) for cut, belief in rank(one, other, limit=limit)]


def rank(first: Source, second: Source, *, limit: int, kinds: Collection[str] = KINDS) -> list[tuple[Cut, float]]:
    """The best cuts of two sources with their shares of belief among the candidates of these kinds, best first;
    equal ones by their letters."""
    weights = _weights()
    similarity = {(first, second): Similarity(first, second), (second, first): Similarity(second, first)}
    valued = [
        (
            sum(weights[name] * value for name, value in features(cut, similarity[cut.first, cut.second]).items()),
            cut,
        )
        for cut in cuts(first, second, kinds)
    ]
    if not valued:
        return []
    highest = max(value for value, _ in valued)
    total = sum(math.exp(value - highest) for value, _ in valued)
    best = heapq.nsmallest(limit, valued, key=lambda entry: (-entry[0], entry[1].text))
    return [(cut, math.exp(value - highest) / total) for value, cut in best]


@cache
def _weights() -> dict[str, float]:
    return {name: float(value) for name, value in open_table("blend_weights.tsv").items()}


def explain(cut: Cut) -> str:
    """What is kept of each word and, in brackets, what is lost: mot(or) + (h)otel."""
    a, b = cut.first.letters, cut.second.letters
    if cut.kind == "beginnings":
        return f"{_lost_after(a, cut.front)} + {_lost_after(b, cut.back)}"
    if cut.kind == "endings":
        return f"{_lost_before(a, cut.front)} + {_lost_before(b, cut.back)}"
    if cut.kind == "inside":
        gone = a[cut.front : len(a) - cut.back]
        return f"{b} in {a[: cut.front]}({gone}){a[len(a) - cut.back :]}"
    link = f" + {cut.link}" if cut.link else ""
    return f"{_lost_after(a, cut.front)}{link} + {_lost_before(b, cut.back)}"


def _lost_after(word: str, kept: int) -> str:
    return word[:kept] + (f"({word[kept:]})" if kept < len(word) else "")


def _lost_before(word: str, kept: int) -> str:
    return (f"({word[: len(word) - kept]})" if kept < len(word) else "") + word[len(word) - kept :]
