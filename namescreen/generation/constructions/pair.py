"""Pairs: two short vivid words associated with different terms of the brief, closed up (Fernsill) or joined (Fern &
Sill).

A compound names by its second word what its first narrows down (L. Bauer, English Word-Formation, 1983, ch. 7); joined
by "and", two words of like weight stand side by side, as partners' names do.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import lru_cache
from itertools import permutations, zip_longest

from ..candidate import Proposal
from ..ideas import Idea
from ..material import Material
from ..vocabulary import Word, word
from ..word_sounds import is_vowel

__all__ = ["closed", "joined", "places", "propose", "seam"]

NAME = "pair"
Form = Callable[[Idea, Idea], Proposal]
_WORDS = 110  # of the best short words are paired
_OWN = ("concept", "goods")
_CHARM, _CHOSEN = 0.3, 0.3  # what charm, and a place on our short lists, count beside relevance
_LOOSE = 0.7  # factor for a pair of which a word only belongs to the world of the brief
_LONGEST = 11  # letters of a closed pair
_SYLLABLES = 3
_CLEAN = 0.5  # a seam less clean than this is left open
_SAME_START = 0.15  # what the same first sound adds to a joined pair
_PLACES = 0.6, 0.7, 0.9, 1.0
"""What a closed pair is worth whose words stand ill in both places, well in front alone, behind alone, in both; pairs
are closed only with a word that stands well behind."""
_SURE = 0.55  # association with some term at which a word counts in full


def propose(material: Material) -> Iterator[Proposal]:
    """Closed and joined pairs, those with the widest association with the brief and the most charm first."""
    import numpy as np

    brief_terms = material.brief_terms
    words = sorted(material.short, key=lambda idea: (-_own_worth(idea) - idea.weight, idea.word))[:_WORDS]
    strength = [brief_terms.strongest(idea.associations) for idea in words]
    associations = np.array([idea.associations for idea in words])
    together = [brief_terms.relevances(np.maximum(associations, idea.associations)).tolist() for idea in words]
    shared = [np.minimum(associations, idea.associations).max(axis=1, initial=0.0).tolist() for idea in words]
    own, facts = list(map(_own_worth, words)), [idea.facts for idea in words]
    beats, apt = [one.beats for one in facts], list(map(_is_apt, words))
    ranked: dict[Form, list[tuple[float, Idea, Idea]]] = {closed: [], joined: []}
    for (i, a), (j, b) in permutations(enumerate(words), 2):
        if a.word[:4] == b.word[:4] or (a.kind in _OWN and b.kind in _OWN):
            continue
        weaker = min(strength[i], strength[j])
        apart = 1 - shared[i][j] / max(weaker, 1e-6)
        # two words for one thing say it twice, a loose association says nothing: such pairs come last
        sure = min(1.0, weaker / _SURE) * (0.3 + 0.7 * apart) * (1.0 if apt[i] and apt[j] else _LOOSE)
        worth = sure * (together[i][j] + own[i] + own[j])
        if (
            "2" in facts[j].places and b.pos == "n" and beats[i] + beats[j] <= _SYLLABLES
            and len(a.word) + len(b.word) <= min(_LONGEST, material.most_letters)
        ):  # fmt: skip
            clean = seam(a.word, b.word)
            if clean >= _CLEAN:
                ranked[closed].append((worth * clean * places(facts[i], facts[j]), a, b))
        if material.most_words > 2 and _shorter_first(facts[i], facts[j]):
            alike = facts[i].sounds[:1] == facts[j].sounds[:1]
            ranked[joined].append((worth - _SAME_START * (not alike), a, b))
    for entries in ranked.values():
        entries.sort(key=lambda entry: (-entry[0], entry[1].word, entry[2].word))
    # in turn, as the two forms do not compete: a shop sign may be joined, a word of its own is closed
    for entry, other in zip_longest(ranked[closed], ranked[joined]):
        if entry:
            yield closed(*entry[1:])
        if other:
            yield joined(*other[1:])


def _is_apt(idea: Idea) -> bool:
    """Whether a word says what the brief says, or stands on a short list for it."""
    return idea.kind in _OWN or idea.chosen > 0


def _own_worth(idea: Idea) -> float:
    return _CHARM * idea.facts.charm + _CHOSEN * idea.chosen


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


def _shorter_first(one: Word, other: Word) -> bool:
    """Fixed pairs put the shorter word first, and of like length the commoner (W. Cooper and J. Ross, "World order",
    1975); the other order is not offered."""
    return _size(one) < _size(other)


@lru_cache(maxsize=1 << 10)
def _size(one: Word) -> tuple[int, int, float, str]:
    return one.beats, len(one.text), -one.zipf, one.text


def places(first: Word, second: Word) -> float:
    """How well two words stand in their places when closed up, in [0, 1], by our own judgement of single words: a short
    noun behind, said with less stress."""
    return _PLACES[("1" in first.places or not first.places) + 2 * ("2" in second.places)]


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
