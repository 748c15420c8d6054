"""Pairs: a word of the brief and a short vivid word associated with it, closed up (Fernsill) or joined (Fern & Sill).

A compound names by its second word what its first narrows down (L. Bauer, English Word-Formation, 1983, ch. 7); joined
by "and", two words of like weight stand side by side, as partners' names do. What makes one please was read from 674 of
them for 36 briefs (wordlists/curated/read_made.csv): words whose tie to the brief needs no telling, one of them the
brief's own, a picture that pleases in any name; closed, a clean seam and a short second word; joined, the same first
sound.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from functools import lru_cache
from itertools import zip_longest
from typing import NamedTuple

from ..candidate import Proposal
from ..ideas import Idea
from ..material import Material
from ..senses import unfit
from ..vocabulary import Word, word
from ..word_sounds import is_vowel

__all__ = ["closed", "joined", "places", "propose", "seam"]

NAME = "pair"
Form = Callable[[Idea, Idea], Proposal]
_WORDS = 110  # of the best short words are paired
_SAYS = 0.4  # the weight from which a word of the brief is paired
_APART = 0.3  # how far two words must belong to different terms
_LONGEST = 11  # letters of a closed pair
_SYLLABLES = 3
_CLEAN = 0.5  # a seam less clean than this is left open
_PLACES = 0.6, 0.7, 0.9, 1.0
"""What a closed pair is worth whose words stand ill in both places, well in front alone, behind alone, in both."""
_STRONG, _PLAIN, _CHARM, _CREATURE, _SEAM, _PLACE, _ONE_BEAT = 0.8, 1.2, 1.1, -0.6, 1.0, 0.8, 0.3
"""What the weaker tie, words that need no telling, their pictures, creatures, a clean seam, their places and a second
word of one syllable are worth in a closed pair: points of seven, by least squares on the readings (each brief left out
in turn, the rank correlation is 0.39)."""
_JOINED_PLAIN, _JOINED_CHARM, _JOINED_CREATURE, _SAME_START, _OWN = 0.6, 0.5, -1.0, 1.0, 0.3
"""The same in a joined pair, with the same first sound, and with a word of the brief (of 143 the former had mean 4.2,
the others 3.4)."""


class _Half(NamedTuple):
    """A word to be paired: how strongly it is associated with the brief, and how strongly by itself, whether it is the
    brief's own, what its picture adds, whether it is a creature, its syllables, and its `size`: fixed pairs put the
    shorter word first, and of like length the commoner (W. Cooper and J. Ross, "World order", 1975)."""

    idea: Idea
    strong: float
    plain: float
    own: bool
    charm: float
    creature: bool
    beats: int
    size: tuple[int, int, float, str]


def propose(material: Material) -> Iterator[Proposal]:
    """Closed and joined pairs, those that, by the readings, are likeliest to please first."""
    ranked: dict[Form, list[tuple[float, Idea, Idea]]] = {closed: [], joined: []}
    halves = _halves(material)
    others = [half for half in halves if not half.own]
    for own in (half for half in halves if half.own):
        for other, apart in zip(others, _apart(own, others), strict=True):
            if apart < _APART or own.idea.word[:4] == other.idea.word[:4]:
                continue
            for a, b in ((own, other), (other, own)):
                if _may_close(a, b, material):
                    ranked[closed].append((_worth_closed(a, b), a.idea, b.idea))
                if material.most_words > 2 and a.size < b.size:
                    ranked[joined].append((_worth_joined(a, b), a.idea, b.idea))
    for entries in ranked.values():
        entries.sort(key=lambda entry: (-entry[0], entry[1].word, entry[2].word))
    # in turn, as the two forms do not compete: a shop sign may be joined, a word of its own is closed
    for entry, other_entry in zip_longest(ranked[closed], ranked[joined]):
        if entry:
            yield closed(*entry[1:])
        if other_entry:
            yield joined(*other_entry[1:])


def _halves(material: Material) -> list[_Half]:
    """The words to be paired: those of the brief that name something, and the short words closest to it."""
    terms = material.brief_terms.weight_of
    told = [idea for idea in material.of_kind("concept", "goods") if terms.get(idea.word, 0.0) >= _SAYS]
    own = [idea for idea in told if idea.word.isalpha() and 1 <= idea.facts.beats < _SYLLABLES and not unfit(idea.word)]
    others = [idea for idea in material.short if idea.kind not in ("concept", "goods") and idea.pos != "r"]
    found = [_half(material, idea, idea in own) for idea in (*own, *others)]
    found.sort(key=lambda half: (not half.own, -half.idea.weight * (1 + half.plain + half.charm), half.idea.word))
    return found[:_WORDS]


def _half(material: Material, idea: Idea, own: bool) -> _Half:
    facts = idea.facts
    brief_terms = material.brief_terms
    plain = 1.0 if own else brief_terms.strongest(brief_terms.of_word(idea.word))
    return _Half(idea, brief_terms.strongest(idea.associations), plain, own, facts.charm, facts.domain == "noun.animal",
                 facts.beats, (facts.beats, len(facts.text), -facts.zipf, facts.text))  # fmt: skip


def _apart(own: _Half, others: Sequence[_Half]) -> list[float]:
    """How far each of the others belongs to other terms than a word of the brief, 0 to 1; two words for one thing say
    it twice."""
    import numpy as np

    if not others:
        return []
    associations = np.array([other.idea.associations for other in others])
    shared = np.minimum(associations, own.idea.associations).max(axis=1)
    weaker = np.minimum(associations.max(axis=1), own.idea.associations.max())
    return [float(one) for one in 1 - shared / np.maximum(weaker, 1e-6)]


def _may_close(a: _Half, b: _Half, material: Material) -> bool:
    first, second = a.idea.word, b.idea.word
    if a.beats + b.beats > _SYLLABLES or len(first) + len(second) > min(_LONGEST, material.most_letters):
        return False
    return b.idea.pos == "n" and seam(first, second) >= _CLEAN


def _worth_closed(a: _Half, b: _Half) -> float:
    return (
        _STRONG * min(a.strong, b.strong) + _PLAIN * _mean(a.plain, b.plain) + _CHARM * _mean(a.charm, b.charm)
        + _CREATURE * _mean(a.creature, b.creature) + _SEAM * seam(a.idea.word, b.idea.word)
        + _PLACE * places(a.idea.facts, b.idea.facts) + _ONE_BEAT * (b.beats == 1)
    )  # fmt: skip


def _worth_joined(a: _Half, b: _Half) -> float:
    alike = a.idea.facts.sounds[:1] == b.idea.facts.sounds[:1]
    return (
        _JOINED_PLAIN * _mean(a.plain, b.plain) + _JOINED_CHARM * _mean(a.charm, b.charm)
        + _JOINED_CREATURE * _mean(a.creature, b.creature) + _SAME_START * alike + _OWN * (a.own or b.own)
    )  # fmt: skip


def _mean(one: float, other: float) -> float:
    return (one + other) / 2


def closed(a: Idea, b: Idea) -> Proposal:
    """Two words written as one; the second keeps secondary stress (Chomsky and Halle, The Sound Pattern of English,
    1968)."""
    text = a.word + b.word
    sounds = a.facts.sounds + tuple(s[:-1] + "2" if s.endswith("1") else s for s in b.facts.sounds)
    return Proposal(
        text.capitalize(), (text,), NAME, f"{a.named} + {b.named}", (a.word, b.word), a.word, sounds,
        seam(a.word, b.word) * places(a.facts, b.facts),
    )  # fmt: skip


def joined(a: Idea, b: Idea) -> Proposal:
    """Two words with an ampersand."""
    words = (a.word, "and", b.word)
    sounds = tuple(sound for one in words for sound in word(one).sounds)
    return Proposal(
        f"{a.word.capitalize()} & {b.word.capitalize()}", words, NAME, f"{a.named} and {b.named}", (a.word, b.word),
        a.word, sounds,
    )  # fmt: skip


def places(first: Word, second: Word) -> float:
    """How well two words stand in their places when closed up, in [0, 1], by our own judgement of single words: a short
    noun behind, said with less stress."""
    return _PLACES[("1" in first.places or not first.places) + 2 * ("2" in second.places)]


@lru_cache(maxsize=1 << 13)
def seam(first: str, second: str) -> float:
    """How cleanly two words join when closed up, 0 to 1: no doubled letter or sound, no heap of consonants or vowels,
    no two letters that read as one sound."""
    value = 1.0
    if first[-1] in "aeiou" and second[0] in "aeiou":
        value -= 0.6
    if first[-1] == "e" and second[0] in "aeiouy":
        value -= 0.2
    if first.endswith(("s", "p", "t", "c", "g")) and second[0] == "h":
        value -= 0.45  # reads as sh, ph, th, ch, gh
    one, two = word(first).sounds, word(second).sounds
    if first[-1] == second[0] or (one and two and one[-1] == two[0]):
        value -= 0.5
    heap = _edge(one[::-1]) + _edge(two)
    value -= 0.12 * max(0, heap - 2)
    return max(0.0, value)


@lru_cache(maxsize=1 << 12)
def _edge(sounds: tuple[str, ...]) -> int:
    return next((place for place, sound in enumerate(sounds) if is_vowel(sound)), len(sounds))
