"""Letters to sound: the likely readings of a word that no dictionary holds.

A joint-sequence n-gram model (M. Bisani and H. Ney, Speech Communication 50, 2008): a word and its reading are
one sequence of units, each one or two letters with none to two phones, and each unit's probability depends on
the units before it. wordlists/draw/letter_to_sound.py learns it. One row of the table is one context:

    context (two characters a unit) TAB back-off cost, then for each unit that may follow:
    unit (two characters), cost (one), how many units the next context keeps (one digit)
"""

from __future__ import annotations

import math
from functools import cache

from ..tables import Table, open_table
from .phones import LETTER_OF

__all__ = ["END", "NO_PHONES", "START", "JointModel", "cost_character", "joint_model"]

START, END = "!!", '!"'
NO_PHONES = "-"
_LEVELS, _LARGEST = 90, 16.0


def cost_character(probability: float) -> str:
    """A probability as one printable character: its negative logarithm on a scale that is finest near 0."""
    cost = min(_LARGEST, max(0.0, -math.log(probability)))
    return chr(0x21 + round(math.sqrt(cost / _LARGEST) * (_LEVELS - 1)))


_COST = {chr(0x21 + level): _LARGEST * (level / (_LEVELS - 1)) ** 2 for level in range(_LEVELS)}

Arc = tuple[float, str, str, str]  # cost, next context, letters, phones


class JointModel:
    """The model over one pair of tables; contexts are read from the table once and then remembered."""

    def __init__(self, model: Table, units: Table) -> None:
        self._table = model
        self._units: dict[str, tuple[str, str]] = {END: ("", "")}
        for identity, value in units.items():
            letters, phones = value.split(" ")
            self._units[identity] = (letters, "" if phones == NO_PHONES else phones)
        self._nodes: dict[str, tuple[float, dict[str, list[tuple[str, float, int]]]]] = {}
        self._arcs: dict[tuple[str, str], list[Arc]] = {}

    def readings(self, word: str, limit: int, beam: int = 8) -> list[tuple[str, float]]:
        """The `limit` most probable readings of `word` (letters a to z), as marked codes with their probabilities
        among all that the search kept, most probable first. Empty if no sequence of units spells the word."""
        length = len(word)
        # For each letter position: (context, reading so far) -> cost.
        fronts: list[dict[tuple[str, str], float]] = [{} for _ in range(length + 1)]
        fronts[0][START, ""] = 0.0
        for at in range(length):
            front = fronts[at]
            if len(front) > beam:
                kept = sorted(front.items(), key=lambda item: item[1])[:beam]
            else:
                kept = list(front.items())
            pair = word[at : at + 2]
            one, two = fronts[at + 1], fronts[at + 2] if at + 2 <= length else None
            for (context, phones), cost in kept:
                for step, following, letters, sound in self._following(context, pair):
                    target = one if len(letters) == 1 else two
                    if target is not None:
                        key = (following, phones + sound)
                        total = cost + step
                        if target.get(key, math.inf) > total:
                            target[key] = total
        found: dict[str, float] = {}
        for (context, phones), cost in fronts[length].items():
            for step, *_ in self._following(context, ""):
                found[phones] = found.get(phones, 0.0) + math.exp(-cost - step)
        total = sum(found.values())
        best = sorted(found.items(), key=lambda item: (-item[1], item[0]))[:limit]
        return [(phones, probability / total) for phones, probability in best]

    def _following(self, context: str, pair: str) -> list[Arc]:
        """What may come after `context` where the next letters are `pair`; "" asks for the end of the word."""
        arcs = self._arcs.get((context, pair))
        if arcs is None:
            arcs = self._arcs[context, pair] = self._expand(context, pair)
        return arcs

    def _expand(self, context: str, pair: str, most: int = 12, within: float = 9.0) -> list[Arc]:
        found: dict[str, Arc] = {}
        spent, shorter = 0.0, context
        while True:
            backoff, arcs = self._node(shorter)
            for letters in (pair[:1], pair) if len(pair) == 2 else (pair,):
                for identity, cost, keep in arcs.get(letters, ()):
                    if identity not in found:
                        following = (shorter + identity)[-2 * keep :] if keep else ""
                        found[identity] = (spent + cost, following, *self._units[identity])
            if not shorter:
                break
            spent += backoff
            shorter = shorter[2:]
        best = sorted(found.values())[:most]
        return [arc for arc in best if arc[0] <= best[0][0] + within]

    def _node(self, context: str) -> tuple[float, dict[str, list[tuple[str, float, int]]]]:
        node = self._nodes.get(context)
        if node is None:
            value = self._table.get(context)
            arcs: dict[str, list[tuple[str, float, int]]] = {}
            if value is None:
                node = (0.0, arcs)
            else:
                for at in range(1, len(value), 4):
                    identity = value[at : at + 2]
                    arcs.setdefault(self._units[identity][0], []).append(
                        (identity, _COST[value[at + 2]], int(value[at + 3]))
                    )
                node = (_COST[value[0]], arcs)
            self._nodes[context] = node
        return node


@cache
def joint_model() -> JointModel:
    """The shipped model."""
    return JointModel(open_table("letter_to_sound.tsv"), open_table("joint_units.tsv"))
