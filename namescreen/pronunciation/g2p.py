"""Grapheme-to-phoneme and phoneme-to-grapheme conversion for words that are not in the dictionary.

A joint-sequence n-gram model (M. Bisani and H. Ney, "Joint-sequence models for grapheme-to-phoneme conversion",
Speech Communication 50, 2008): a word and its reading are one sequence of units, each one or two letters with
none to two phones, and each unit's probability depends on the units before it. Searched by letters it reads a
word; searched by phones it spells a sound. wordlists/build/g2p.py learns it. A row of the table:

    context (two characters a unit) TAB back-off cost, then for each unit that may follow:
    unit (two characters), cost (one), how many units the next context keeps (one digit)
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from functools import cache, cached_property, lru_cache, reduce
from operator import add, itemgetter
from typing import TYPE_CHECKING, Any, Protocol

from ..native import choose
from ..native.g2p import CompiledReadings
from ..tables import Table, open_table
from .phones import LETTER_OF, SCHWA, VOWEL_LETTERS

if TYPE_CHECKING:
    from ctypes import CDLL

__all__ = ["END", "NO_PHONES", "START", "JointModel", "PythonReadings", "cost_character", "joint_model"]

START, END = "!!", '!"'
NO_PHONES = "-"
_STRUT = LETTER_OF["AH1"]
_LEVELS, _LARGEST = 90, 16.0
_UNSTRESSED = -math.log(0.001)
"""The cost of a reading without primary stress: 134 of the dictionary's 130,505 readings have none. More than one
primary stress (1 % of them, mostly names of several words) is never tried. The same consonant twice running is
said once: English has long consonants only where two words meet (Giegerich, English Phonology, 1992)."""
_BEAM, _WITHIN = 24, 6.0
"""Hypotheses kept at a place, and how far behind the best (in natural logarithms of probability) one may be. On a
third of the held-out words, 40 and 7 had 26.6 % word error instead of 26.8 %, and took a third longer."""
_CHOICES, _CHOICES_WITHIN = 12, 7.0
"""The same for the units that may follow one context."""
_SHORT_ROW = 80
"""The longest row that is scanned each time; a longer one is parsed once and kept."""
_REMEMBERED = 50_000
"""Steps, and rows of the table, cached before the cache is cleared: some 30 megabytes."""
_WORDS_REMEMBERED = 1 << 10
"""Words whose readings are held: other parts of the program ask for those of a word again, soon after."""
_SILENT = 3
"""Units without a phone that may stand in a row when a sound is spelled: the g, h and t of a silent -ght."""


def cost_character(probability: float) -> str:
    """A probability as one printable character: its negative logarithm on a scale that is finest near 0."""
    cost = min(_LARGEST, max(0.0, -math.log(probability)))
    return chr(0x21 + round(math.sqrt(cost / _LARGEST) * (_LEVELS - 1)))


_COST = {chr(0x21 + level): _LARGEST * (level / (_LEVELS - 1)) ** 2 for level in range(_LEVELS)}

Arc = tuple[float, str, str, str, str]  # cost, next context, letters, phones, unit
Step = tuple[float, list[Arc]]  # a cost common to all arcs, and the arcs
Front = dict[tuple[str, str], float]  # (context, what has been written so far) -> cost
# A place in a word: the hypotheses kept there, cheapest first; and, for the place one letter on, the highest cost
# allowed and the hypotheses from earlier places.
Hypothesis = tuple[tuple[str, str], float]
Place = tuple[list[Hypothesis], float, Front]

# One context: the cost of leaving it for a shorter one, and the units that may follow, each as (unit, cost, units
# kept), under their letters or under their phones.
Node = tuple[float, dict[str, list[tuple[str, float, int]]]]


class JointModel:
    """The model over one pair of tables, with a cache of what was read."""

    def __init__(self, model: Table, units: Table) -> None:
        self._table = model
        self._units: dict[str, tuple[str, str]] = {END: ("", "")}
        for identity, value in units.items():
            letters, phones = value.split(" ")
            self._units[identity] = (letters, "" if phones == NO_PHONES else phones)
        self._found = lru_cache(maxsize=_WORDS_REMEMBERED)(self._readings)
        self._sought: dict[str, str | None] = {}
        self._by_letters: dict[str, Node] = {}
        self._by_phones: dict[str, Node] = {}
        self._reading_steps: dict[tuple[str, str], Step] = {}
        self._spelling_steps: dict[tuple[str, str, str], Step] = {}

    def readings(self, word: str, limit: int, beam: int = _BEAM, within: float = _WITHIN) -> list[tuple[str, float]]:
        """The `limit` most probable readings of `word` (letters a to z), as marked codes, each with its probability
        among all that the search kept, most probable first. Empty if no sequence of units spells the word. `beam` is at
        least 1."""
        return self._found(word, beam, within)[:limit]

    def _readings(self, word: str, beam: int, within: float) -> list[tuple[str, float]]:
        return self._search.readings(word, beam, within)

    def preload(self) -> None:
        """Make ready for many words."""
        self._search.preload()

    @cached_property
    def _search(self) -> ReadingSearch:
        return choose(self._compiled_search, lambda: PythonReadings(self))

    def _compiled_search(self, library: CDLL) -> ReadingSearch:
        return CompiledReadings(
            library,
            self._table.lines(),
            [(name, letters, phones) for name, (letters, phones) in self._units.items()],
            _COST,
            unstressed=_UNSTRESSED,
            choices=_CHOICES,
            choices_within=_CHOICES_WITHIN,
            start=START,
            vowels=VOWEL_LETTERS,
            schwa=SCHWA,
            strut=_STRUT,
        )

    def spellings(
        self,
        marked: str,
        limit: int,
        beam: int = _BEAM,
        within: float = _WITHIN,
        allowed: Callable[[str], bool] = lambda beginning: True,
    ) -> list[tuple[str, float]]:
        """The `limit` most probable spellings of a marked code, most probable first, each with the negative logarithm
        of its joint probability with the sound. Only beginnings that are `allowed` are followed."""
        self._forget()
        sounds = re.findall(r".[12]?", marked)
        length = len(sounds)
        fronts: list[Front] = [{} for _ in range(length + 2)]
        fronts[0][START, ""] = 0.0
        limits = [math.inf] * (length + 3)
        for at in range(length + 1):
            one, two = (sounds[at] if at < length else ""), "".join(sounds[at : at + 2])
            waiting: Front = fronts[at]
            for silent in range(_SILENT + 1):
                kept = sorted(waiting.items(), key=_by_cost)[:beam]
                waiting = {}
                for (context, letters), cost in kept:
                    if cost > limits[at]:
                        break
                    spent, arcs = self._spelling_on(context, one, two)
                    spent += cost
                    for step, following, more, sound, _ in arcs:
                        total = spent + step
                        place = at + (0 if not sound else 1 if sound == one else 2)
                        if total > limits[place]:
                            continue
                        written = letters + more
                        if not allowed(written):
                            continue
                        if not sound:
                            if silent == _SILENT or not letters:
                                continue
                            if waiting.get((following, written), math.inf) > total:
                                waiting[following, written] = total
                        limits[place] = min(limits[place], total + within)
                        target = fronts[place]
                        if target.get((following, written), math.inf) > total:
                            target[following, written] = total
        found: dict[str, float] = {}
        for (context, letters), cost in fronts[length].items():
            for step in self._ending(context):
                found[letters] = min(found.get(letters, math.inf), cost + step)
        return sorted(found.items(), key=lambda item: (item[1], item[0]))[:limit]

    def _reading_on(self, context: str, pair: str) -> Step:
        """The units that may follow `context` where the next letters are `pair` (one letter at a word's end)."""
        step = self._reading_steps.get((context, pair))
        if step is None:
            wanted = (pair[0], pair) if len(pair) == 2 else (pair,)
            backoff, own = self._own(context, wanted, self._by_letters, 0)
            shorter = self._reading_on(context[2:], pair) if context else (0.0, [])
            step = self._reading_steps[context, pair] = self._joined(context, own, backoff, shorter)
        return step

    def _spelling_on(self, context: str, one: str, two: str) -> Step:
        """The units that may follow `context` where the next phone is `one`, the next two `two`."""
        step = self._spelling_steps.get((context, one, two))
        if step is None:
            wanted = tuple(dict.fromkeys(("", one, two)))
            backoff, own = self._own(context, wanted, self._by_phones, 1)
            own = [arc for arc in own if arc[0] != END]
            shorter = self._spelling_on(context[2:], one, two) if context else (0.0, [])
            step = self._spelling_steps[context, one, two] = self._joined(context, own, backoff, shorter)
        return step

    def _ending(self, context: str) -> list[float]:
        """The cost of ending the word after `context`, or nothing if it cannot end."""
        spent, arcs = self._reading_on(context, "")
        return [spent + arcs[0][0]] if arcs else []

    def _joined(self, context: str, own: list[tuple[str, float, int]], backoff: float, shorter: Step) -> Step:
        """The units that may follow a context: those listed for it, and those of the shorter context at the back-off
        cost."""
        spent, others = shorter
        spent += backoff
        if not own:
            return spent, others
        units = self._units
        arcs = []
        seen = set()
        for identity, cost, keep in own:
            seen.add(identity)
            arcs.append((cost, (context + identity)[-2 * keep :] if keep else "", *units[identity], identity))
        worst = min(arcs)[0] + _CHOICES_WITHIN
        for cost, following, letters, phones, identity in others:
            if cost + spent > worst:
                break  # they are in order of cost
            if identity not in seen:
                arcs.append((cost + spent, following, letters, phones, identity))
        arcs.sort()
        return 0.0, arcs[:_CHOICES]

    def _own(
        self, context: str, wanted: tuple[str, ...], nodes: dict[str, Node], side: int
    ) -> tuple[float, list[tuple[str, float, int]]]:
        """The back-off cost of a context, and the units listed for it whose letters (or phones) are `wanted`."""
        node = nodes.get(context)
        if node is not None:
            return node[0], [arc for key in wanted for arc in node[1].get(key, ())]
        row = self._row(context)
        if row is None:
            return 0.0, []
        units = self._units
        if len(row) < _SHORT_ROW:
            return _COST[row[0]], [
                (identity, _COST[row[at + 2]], int(row[at + 3]))
                for at in range(1, len(row), 4)
                if units[identity := row[at : at + 2]][side] in wanted
            ]
        arcs: dict[str, list[tuple[str, float, int]]] = {}
        for at in range(1, len(row), 4):
            identity = row[at : at + 2]
            arcs.setdefault(units[identity][side], []).append((identity, _COST[row[at + 2]], int(row[at + 3])))
        nodes[context] = (_COST[row[0]], arcs)
        return self._own(context, wanted, nodes, side)

    def _row(self, context: str) -> str | None:
        """The table's row for a context."""
        if context in self._sought:
            return self._sought[context]
        row = self._sought[context] = self._table.get(context)
        return row

    def _forget(self) -> None:
        """Clear the caches once they are large: memory stays bounded over millions of words."""
        memories: list[dict[Any, Any]] = [
            self._by_letters, self._by_phones, self._reading_steps, self._spelling_steps, self._sought
        ]  # fmt: skip
        if sum(map(len, memories)) > _REMEMBERED:
            for memory in memories:
                memory.clear()


class ReadingSearch(Protocol):
    """The search of one model for the readings of words."""

    def readings(self, word: str, beam: int, within: float) -> list[tuple[str, float]]:
        """As `JointModel.readings`, all that were found."""

    def preload(self) -> None:
        """Make ready for many words."""


class PythonReadings:
    """The search in Python; `native/g2p.c` does the same."""

    def __init__(self, model: JointModel) -> None:
        self._model = model
        self._last: tuple[str, int, float, list[Place]] = ("", 0, 0.0, [])

    def preload(self) -> None:
        """Hold the whole table in memory."""
        self._model._table.preload()

    def readings(self, word: str, beam: int, within: float) -> list[tuple[str, float]]:
        """As `JointModel.readings`, all that were found."""
        self._model._forget()
        places = self._read_so_far(word, beam, within)
        for at in range(len(places) - 1, len(word)):
            kept, limit_one, begun = places[at]
            pair = word[at : at + 2]
            one: Front = begun.copy()
            two: Front = {}
            limit_two = math.inf
            for (context, phones), cost in kept:
                stressed, last = "1" in phones, phones[-1:]
                if last in VOWEL_LETTERS:
                    last = ""
                spent, arcs = self._model._reading_on(context, pair)
                spent += cost
                for step, following, letters, sound, _ in arcs:
                    if stressed and "1" in sound:
                        continue
                    total = spent + step
                    if len(letters) == 1:
                        if total > limit_one:
                            if total > limit_two:
                                break  # later arcs cost at least as much
                            continue
                        target = one
                        if total + within < limit_one:
                            limit_one = total + within
                    else:
                        if total > limit_two:
                            continue
                        target = two
                        if total + within < limit_two:
                            limit_two = total + within
                    if last and sound and sound[0] == last:
                        sound = sound[1:]
                    key = (following, phones + sound)
                    if target.get(key, math.inf) > total:
                        target[key] = total
            front = [item for item in one.items() if item[1] <= limit_one]
            front.sort(key=_by_cost)
            places.append((front[:beam], limit_two, two))
        self._last = word, beam, within, places
        return self._ended(places[len(word)][0])

    def _ended(self, kept: list[Hypothesis]) -> list[tuple[str, float]]:
        """The readings that these hypotheses end in, each with its probability, most probable first."""
        ended = [
            (phones, cost + step + (0.0 if "1" in phones else _UNSTRESSED))
            for (context, phones), cost in kept
            for step in self._model._ending(context)
        ]
        least = min((cost for _, cost in ended), default=0.0)
        found: dict[str, float] = {}
        for phones, cost in ended:
            found[phones] = found.get(phones, 0.0) + math.exp(least - cost)
        return _merged(found)

    def _read_so_far(self, word: str, beam: int, within: float) -> list[Place]:
        """The places shared with the previous word: a place depends on the letters up to it and one more. Words in
        alphabetical order take half the work."""
        last, last_beam, last_within, places = self._last
        if (last_beam, last_within) != (beam, within):
            return [([((START, ""), 0.0)], math.inf, {})]
        shared = 0
        for one, other in zip(last, word, strict=False):
            if one != other:
                break
            shared += 1
        return places[: max(1, shared)]


_by_cost = itemgetter(1)


def _merged(found: dict[str, float]) -> list[tuple[str, float]]:
    """Readings that differ only in stress, merged into the most probable of them; most probable first."""
    total = reduce(add, found.values(), 0.0)  # sum() itself rounds otherwise from Python 3.12 on
    merged: dict[str, tuple[str, float]] = {}
    for reading, probability in sorted(found.items(), key=lambda item: (-item[1], item[0])):
        stressed = _with_primary(reading)
        sounds = stressed.replace("1", "").replace("2", "")
        first, so_far = merged.get(sounds, (stressed, 0.0))
        merged[sounds] = (first, so_far + probability / total)
    return sorted(merged.values(), key=lambda item: (-item[1], item[0]))


def _with_primary(reading: str) -> str:
    """The reading with primary stress. If it has none, it goes to the first vowel with secondary stress, else to the
    first full vowel, else to the first vowel."""
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
    return JointModel(open_table("g2p.tsv"), open_table("joint_units.tsv"))
