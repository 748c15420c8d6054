"""Letters to sound and sound to letters: words and readings that no dictionary holds.

A joint-sequence n-gram model (M. Bisani and H. Ney, "Joint-sequence models for grapheme-to-phoneme conversion",
Speech Communication 50, 2008): a word and its reading are one sequence of units, each one or two letters with
none to two phones, and each unit's probability depends on the units before it. Searched by letters it reads a
word; searched by phones it spells a sound. wordlists/draw/letter_to_sound.py learns it. A row of the table:

    context (two characters a unit) TAB back-off cost, then for each unit that may follow:
    unit (two characters), cost (one), how many units the next context keeps (one digit)
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from dataclasses import dataclass, field
from functools import cache

from ..tables import Table, open_table
from .phones import LETTER_OF, SCHWA, VOWEL_LETTERS

__all__ = ["END", "NO_PHONES", "START", "JointModel", "cost_character", "joint_model"]

START, END = "!!", '!"'
NO_PHONES = "-"
_STRUT = LETTER_OF["AH1"]
_LEVELS, _LARGEST = 90, 16.0
_UNSTRESSED = 0.001
"""How likely a reading without primary stress is: 134 of the dictionary's 130,505 readings have none. More than one
primary stress (1 % of them, mostly names of several words) is never tried."""
_BEAM, _WITHIN = 16, 6.0
"""Hypotheses kept at a place, and how far behind the best (in natural logarithms of probability) one may be. Twice
as many, and 1 more, lower the word error by 0.2 of a per cent and cost twice the time (bench_letter_to_sound)."""
_CHOICES, _CHOICES_WITHIN = 12, 9.0
"""The same for the units that may follow one context."""
_SILENT = 3
"""Units without a phone that may stand in a row when a sound is spelled: the g, h and t of a silent -ght."""


def cost_character(probability: float) -> str:
    """A probability as one printable character: its negative logarithm on a scale that is finest near 0."""
    cost = min(_LARGEST, max(0.0, -math.log(probability)))
    return chr(0x21 + round(math.sqrt(cost / _LARGEST) * (_LEVELS - 1)))


_COST = {chr(0x21 + level): _LARGEST * (level / (_LEVELS - 1)) ** 2 for level in range(_LEVELS)}

Arc = tuple[float, str, str, str]  # cost, next context, letters, phones
Front = dict[tuple[str, str], float]  # (context, what has been written so far) -> cost


@dataclass(frozen=True, slots=True)
class _Node:
    """One context: the cost of leaving it for a shorter one, and the units that may follow, by letters and by
    phones, each as (unit, cost, units kept)."""

    backoff: float = 0.0
    by_letters: dict[str, list[tuple[str, float, int]]] = field(default_factory=dict)
    by_phones: dict[str, list[tuple[str, float, int]]] = field(default_factory=dict)


class JointModel:
    """The model over one pair of tables; what is read from them is remembered."""

    def __init__(self, model: Table, units: Table) -> None:
        self._table = model
        self._units: dict[str, tuple[str, str]] = {END: ("", "")}
        for identity, value in units.items():
            letters, phones = value.split(" ")
            self._units[identity] = (letters, "" if phones == NO_PHONES else phones)
        self._nodes: dict[str, _Node] = {}
        self._reading_arcs: dict[tuple[str, str], list[Arc]] = {}
        self._spelling_arcs: dict[tuple[str, str, str], list[Arc]] = {}

    def readings(
        self, word: str, limit: int, beam: int = _BEAM, within: float = _WITHIN
    ) -> list[tuple[str, float]]:
        """The `limit` most probable readings of `word` (letters a to z), as marked codes, each with its probability
        among all that the search kept, most probable first. Empty if no sequence of units spells the word."""
        length = len(word)
        fronts: list[Front] = [{} for _ in range(length + 2)]
        fronts[0][START, ""] = 0.0
        for at in range(length):
            kept = sorted(fronts[at].items(), key=_by_cost)[:beam]
            if not kept:
                continue
            worst = kept[0][1] + within
            pair = word[at : at + 2]
            one, two = fronts[at + 1], fronts[at + 2]
            for (context, phones), cost in kept:
                if cost > worst:
                    break
                stressed = "1" in phones
                for step, following, letters, sound in self._reading_on(context, pair):
                    if stressed and "1" in sound:
                        continue
                    target = one if len(letters) == 1 else two
                    key = (following, phones + sound)
                    total = cost + step
                    if target.get(key, math.inf) > total:
                        target[key] = total
        found: dict[str, float] = {}
        for (context, phones), cost in fronts[length].items():
            for step, *_ in self._ending(context):
                probability = math.exp(-cost - step) * (1.0 if "1" in phones else _UNSTRESSED)
                found[phones] = found.get(phones, 0.0) + probability
        return _merged(found)[:limit]

    def spellings(
        self,
        marked: str,
        limit: int,
        beam: int = _BEAM,
        within: float = _WITHIN,
        allowed: Callable[[str], bool] = lambda beginning: True,
    ) -> list[tuple[str, float]]:
        """The `limit` most probable spellings of a marked code, most probable first, each with the joint probability
        of spelling and sound. Only beginnings that are `allowed` are followed."""
        sounds = re.findall(r".[12]?", marked)
        length = len(sounds)
        fronts: list[Front] = [{} for _ in range(length + 2)]
        fronts[0][START, ""] = 0.0
        for at in range(length + 1):
            one, two = (sounds[at] if at < length else ""), "".join(sounds[at : at + 2])
            waiting: Front = fronts[at]
            for silent in range(_SILENT + 1):
                kept = sorted(waiting.items(), key=_by_cost)[:beam]
                waiting = {}
                for (context, letters), cost in kept:
                    if cost > kept[0][1] + within:
                        break
                    for step, following, more, sound in self._spelling_on(context, one, two):
                        if not sound and (silent == _SILENT or not letters):
                            continue
                        written = letters + more
                        if not allowed(written):
                            continue
                        total = cost + step
                        key = (following, written)
                        targets = (
                            (waiting, fronts[at])
                            if not sound
                            else (fronts[at + (1 if sound == one else 2)],)
                        )
                        for target in targets:
                            if target.get(key, math.inf) > total:
                                target[key] = total
        found: dict[str, float] = {}
        for (context, letters), cost in fronts[length].items():
            for step, *_ in self._ending(context):
                found[letters] = found.get(letters, 0.0) + math.exp(-cost - step)
        return sorted(found.items(), key=lambda item: (-item[1], item[0]))[:limit]

    def _reading_on(self, context: str, pair: str) -> list[Arc]:
        """The units that may follow `context` where the next letters are `pair` (one letter at a word's end)."""
        arcs = self._reading_arcs.get((context, pair))
        if arcs is None:
            wanted = (pair[0], pair) if len(pair) == 2 else (pair,)
            arcs = self._reading_arcs[context, pair] = self._follow(context, wanted, by_letters=True)
        return arcs

    def _spelling_on(self, context: str, one: str, two: str) -> list[Arc]:
        """The units that may follow `context` where the next phone is `one`, the next two `two`."""
        arcs = self._spelling_arcs.get((context, one, two))
        if arcs is None:
            wanted = tuple(dict.fromkeys(("", one, two)))
            arcs = self._spelling_arcs[context, one, two] = self._follow(context, wanted, by_letters=False)
        return arcs

    def _ending(self, context: str) -> list[Arc]:
        """The end of the word after `context`."""
        return self._reading_on(context, "")

    def _follow(self, context: str, wanted: tuple[str, ...], *, by_letters: bool) -> list[Arc]:
        found: dict[str, Arc] = {}
        spent, shorter = 0.0, context
        while True:
            node = self._node(shorter)
            arcs = node.by_letters if by_letters else node.by_phones
            for side in wanted:
                for identity, cost, keep in arcs.get(side, ()):
                    if identity not in found and (by_letters or identity != END):
                        following = (shorter + identity)[-2 * keep :] if keep else ""
                        found[identity] = (spent + cost, following, *self._units[identity])
            if not shorter:
                break
            spent += node.backoff
            shorter = shorter[2:]
        best = sorted(found.values())[:_CHOICES]
        return [arc for arc in best if arc[0] <= best[0][0] + _CHOICES_WITHIN]

    def _node(self, context: str) -> _Node:
        node = self._nodes.get(context)
        if node is None:
            value = self._table.get(context) or cost_character(1.0)
            node = self._nodes[context] = _Node(_COST[value[0]])
            for at in range(1, len(value), 4):
                arc = (value[at : at + 2], _COST[value[at + 2]], int(value[at + 3]))
                letters, phones = self._units[arc[0]]
                node.by_letters.setdefault(letters, []).append(arc)
                node.by_phones.setdefault(phones, []).append(arc)
        return node


def _by_cost(item: tuple[tuple[str, str], float]) -> float:
    return item[1]


def _merged(found: dict[str, float]) -> list[tuple[str, float]]:
    """Readings that differ in stress alone as one, stressed as the most probable of them; most probable first."""
    total = sum(found.values())
    merged: dict[str, tuple[str, float]] = {}
    for reading, probability in sorted(found.items(), key=lambda item: (-item[1], item[0])):
        stressed = _with_primary(reading)
        sounds = stressed.replace("1", "").replace("2", "")
        first, so_far = merged.get(sounds, (stressed, 0.0))
        merged[sounds] = (first, so_far + probability / total)
    return sorted(merged.values(), key=lambda item: (-item[1], item[0]))


def _with_primary(reading: str) -> str:
    """A reading without primary stress with it on the first vowel that has secondary, or else is full, or any."""
    if "1" in reading:
        return reading
    if "2" in reading:
        return reading.replace("2", "1", 1)
    vowels = [at for at, sound in enumerate(reading) if sound in VOWEL_LETTERS]
    if not vowels:
        return reading
    at = next((at for at in vowels if reading[at] != SCHWA), vowels[0])
    return reading[:at] + (_STRUT if reading[at] == SCHWA else reading[at]) + "1" + reading[at + 1 :]


@cache
def joint_model() -> JointModel:
    """The shipped model."""
    return JointModel(open_table("letter_to_sound.tsv"), open_table("joint_units.tsv"))
