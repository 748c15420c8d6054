"""Invented words: drawn letter by letter from the patterns of the ideas, so that they sound akin to them.

A chain over letter triples (C. E. Shannon, "A Mathematical Theory of Communication", 1948, section 3), learned
from the ideas by their weights and from English at large, in proportion.
"""

from __future__ import annotations

import random
from collections import defaultdict
from collections.abc import Iterator

from ...tables import open_table
from ..candidate import Proposal
from ..material import Material

__all__ = ["propose"]

NAME = "invented"
_OWN = 0.8  # share of the ideas in every letter's chance; the rest is English at large
_INFLECTED = (
    "ing",
    "ed",
    "es",
    "ers",
    "ings",
    "s",
    "ly",
    "tion",
    "sion",
    "ment",
    "ness",
)  # looks like a form of another word
_LEAST, _MOST = 4, 8


def propose(material: Material) -> Iterator[Proposal]:
    """Endlessly: words of four to eight letters that no idea holds. It may repeat itself in time."""
    ideas = [idea for idea in material.ideas[:60] if idea.word.isascii()]
    if not ideas:
        return
    chain: defaultdict[str, defaultdict[str, float]] = defaultdict(lambda: defaultdict(float))
    for idea in ideas:
        marked = f"^^{idea.word}$"
        for place in range(2, len(marked)):
            chain[marked[place - 2 : place]][marked[place]] += idea.weight
    english = open_table("trigrams.tsv")
    rng = material.rng("invented")
    mixed: dict[str, tuple[list[str], list[float]]] = {}
    own = {idea.word for idea in material.ideas}
    names = [idea.word for idea in ideas]
    while True:
        word = _draw(chain, english, mixed, rng)
        if word and word not in own and not word.endswith(_INFLECTED):
            kin = _kin(word, names)
            yield Proposal(
                word.capitalize(), (word,), NAME, f"invented, after the letters of {', '.join(kin)}", tuple(kin),
                word[:4], (), 0.55, 0.3,
            )  # fmt: skip


def _draw(
    chain: defaultdict[str, defaultdict[str, float]],
    english: object,
    mixed: dict[str, tuple[list[str], list[float]]],
    rng: random.Random,
) -> str | None:
    word, pair = "", "^^"
    while len(word) <= _MOST:
        if pair not in mixed:
            mixed[pair] = _mix(chain.get(pair, {}), open_table("trigrams.tsv").get(pair) or "")
        letters, weights = mixed[pair]
        if not letters:
            return None
        letter = rng.choices(letters, weights)[0]
        if letter == "$":
            return word if len(word) >= _LEAST else None
        word, pair = word + letter, pair[1] + letter
    return None


def _mix(own: dict[str, float], row: str) -> tuple[list[str], list[float]]:
    english = {entry[0]: float(entry[1:]) for entry in row.split()}
    total, all_english = sum(own.values()), sum(english.values())
    letters = sorted({*own, *english})
    share = _OWN if total else 0.0
    return letters, [
        share * own.get(letter, 0.0) / (total or 1) + (1 - share) * english.get(letter, 0.0) / (all_english or 1)
        for letter in letters
    ]


def _kin(word: str, names: list[str]) -> list[str]:
    """The two ideas that share the longest stretches with `word`."""
    pieces = [word[i : i + 3] for i in range(len(word) - 2)]
    scored = sorted(names, key=lambda name: (-sum(piece in name for piece in pieces), name))
    return sorted(scored[:2])
