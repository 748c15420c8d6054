"""Readings in English: words that offend or repel English-speaking buyers, slurs for groups of people among them.

The other languages are looked through for words that a maker does not know. English is looked through because a maker
may not know what a word means elsewhere in English, or to the people it is said of.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from ..lexicon import zipf
from ..tables import open_table
from ..text import parse, split_closed_compound
from .results import Coverage, Reading
from .spelled_matches import SHIPPED, spans

__all__ = ["ENGLISH", "english_coverage", "english_readings", "kind_of"]

ENGLISH = "en"
_TABLE = "english_ill_words.tsv"
_EVERYWHERE = "*"


class _IllWord(NamedTuple):
    kind: str
    severity: int
    markets: frozenset[str]
    meaning: str


def _listed(word: str) -> _IllWord | None:
    entry = open_table(_TABLE).get(word)
    if entry is None:
        return None
    kind, severity, markets, meaning = entry.split("|")
    return _IllWord(kind, int(severity), frozenset(markets.split()), meaning)


def kind_of(word: str) -> str:
    """The kind of an English word that offends or repels (sex, vulgar, insult ...); "" for any other."""
    found = _listed(word)
    return found.kind if found else ""


def english_readings(name: str, markets: Iterable[str] = ()) -> list[Reading]:
    """What a name says to English-speaking buyers that offends or repels, worst first; empty if nothing was found.

    Read are the whole name, its words, and the words of a closed compound, which weigh a step less. A word that is
    meant so in none of the `markets` (codes; none stated: all) weighs a step less too.
    """
    found = {(one.word, one.where): one for one in _found(name, frozenset(markets))}
    return sorted(found.values(), key=lambda one: one.order)


def _found(name: str, markets: frozenset[str]) -> Iterator[Reading]:
    parsed = parse(name)
    for part in spans(parsed):
        yield from _reading(part.letters, "exact", part.where, 0, markets)
    for word in parsed.words:
        halves = split_closed_compound(word, zipf)
        for half in halves if len(halves) > 1 else ():
            yield from _reading(half, "inside", f"a word of {word}", 1, markets)


def _reading(word: str, match: str, where: str, less: int, markets: frozenset[str]) -> Iterator[Reading]:
    found = _listed(word)
    if found is None:
        return
    elsewhere = bool(markets) and _EVERYWHERE not in found.markets and found.markets.isdisjoint(markets)
    severity = max(0, found.severity - less - elsewhere)
    of = "" if _EVERYWHERE in found.markets else f" ({', '.join(sorted(found.markets))})"
    if severity:
        yield Reading(
            ENGLISH, word, f"{found.meaning}{of}", found.kind, severity, match, where, zipf(word) or None, SHIPPED,
            found.severity,
        )  # fmt: skip


def english_coverage() -> Coverage:
    """What English readings are looked up in."""
    return Coverage(ENGLISH, len(open_table("frequency/en.tsv")), len(open_table(_TABLE)), False, (SHIPPED,))
