"""Blends of two ideas: the beginning of one word with the ending of the other (see `generation.blending`)."""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import islice

from ..blending.cuts import Cut
from ..blending.letter_statistics import doubt_of_beginning, doubt_of_ending
from ..blending.model import explain, rank
from ..blending.source_word import source
from ..candidate import Proposal
from ..ideas import Idea
from ..material import Material, best_pairs

__all__ = ["meeting", "propose"]

NAME = "blend"
_WORDS = 150  # of the best short words are paired
_EACH = 2  # blends taken of one pair
_BATCH = 500  # pairs among which those that meet come first
_DOUBT = 10.0  # bits at which a kept part no longer says which word it came from: one among a thousand


def propose(material: Material) -> Iterator[Proposal]:
    """The best blends of pairs of short words associated with different terms of the brief."""
    words = [idea for idea in material.short if material.is_firm(idea)][:_WORDS]
    pairs = (
        (a, b) for a, b in best_pairs(words, words, lambda idea: idea.weight) if a.word != b.word and a.term != b.term
    )
    while batch := list(islice(pairs, _BATCH)):
        batch.sort(key=lambda pair: -pair[0].weight * pair[1].weight * (1 + meeting(pair[0].word, pair[1].word)))
        for a, b in batch:
            yield from _of_pair(material, a, b)


def meeting(first: str, second: str) -> int:
    """How many letters, up to three, past the first of one word and in the first half of the other are the same:
    where two words share a stretch, a blend keeps more of both."""
    half = second[: len(second) // 2 + 2]
    for length in (3, 2):
        if any(first[at : at + length] in half for at in range(1, len(first) - length + 1)):
            return length
    return int(any(letter in half[:2] for letter in first[1:]))


def _of_pair(material: Material, a: Idea, b: Idea) -> Iterator[Proposal]:
    for cut, belief in rank(source(a.word), source(b.word), limit=_EACH, kinds=("joined",)):
        if 4 <= len(cut.text) <= material.most_letters:
            clear = _clear(cut)
            sounds = _sounds(cut)
            yield Proposal(
                cut.text.capitalize(), (cut.text,), NAME, explain(cut), (cut.first.letters, cut.second.letters),
                cut.first.letters[: min(4, cut.front)], sounds, _join(cut, belief), clear,
            )  # fmt: skip


def _clear(cut: Cut) -> float:
    """How readily both sources are seen: less for every bit of doubt, and for every share lost."""
    a, b = cut.first.letters, cut.second.letters
    one = doubt_of_beginning(cut.text[: cut.front], a) / _DOUBT
    two = doubt_of_ending(cut.text[len(cut.text) - cut.back :], b) / _DOUBT
    kept = (cut.front / len(a) + cut.back / len(b)) / 2
    return max(0.0, min(1.0, 0.3 + 0.7 * kept - 0.35 * (one + two)))


def _join(cut: Cut, belief: float) -> float:
    """What makes two words a good blend: they overlap, and this is the way to blend them."""
    return min(1.0, 0.25 + 0.2 * min(cut.overlap, 3) + 0.4 * math.sqrt(belief))


def _sounds(cut: Cut) -> tuple[str, ...]:
    a, b = cut.first, cut.second
    start = len(b.letters) - (len(cut.text) - cut.front)
    return a.sounds[: a.before[cut.front]] + b.sounds[b.before[max(0, start)] :]
