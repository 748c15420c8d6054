"""Echoes: doubled words with a change of vowel (Chim Chime), rhymes (Clay Day) and alliteration (Fern & Flint).

Ablaut doubling goes from i to a or o, never back (tick-tock; O. Jespersen, A Modern English Grammar VI, 1942,
from memory). Rhyme is likeness from the last stressed vowel on.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator
from itertools import chain, zip_longest

from ...lexicon import zipf
from ...pronunciation import alliterates, rhyme
from ..candidate import Proposal
from ..expansion import Idea
from ..material import Material, best_pairs, title
from ..word_sounds import is_vowel, sounds_of

__all__ = ["alliteration", "reduplication"]

_VOWEL = {"i": "IH", "a": "AE", "o": "AA"}
_NEAREST = 120  # ideas that are heard for rhymes: the rest are far and often rare
_HEARD = 2.6  # Zipf frequency of the ideas heard for rhymes: nobody is sure how rarer words are said
_LONGEST = 11  # letters of two rhyming words together: longer ones hide the rhyme


def reduplication(material: Material) -> Iterator[Proposal]:
    """A word twice, once with another vowel; then words that rhyme."""
    yield from _interleave(_doubled(material), _rhymes(material))


def _interleave(*streams: Iterator[Proposal]) -> Iterator[Proposal]:
    for proposal in chain.from_iterable(zip_longest(*streams)):
        if proposal is not None:
            yield proposal


def _doubled(material: Material) -> Iterator[Proposal]:
    for idea in material.ideas:
        found = re.fullmatch(r"([^aeiouy]+)([aio])([^aeiouy]{1,3})(y|le|er)?", idea.word)
        if not found or len(idea.word) > 6:
            continue
        front, vowel, back, end = found.groups(default="")
        other = {"i": "ao", "a": "i", "o": "i"}[vowel]
        for new in other:
            twin = front + new + back + end
            first, second = (idea.word, twin) if vowel == "i" else (twin, idea.word)
            own = sounds_of(idea.word)
            other_sounds = tuple(_VOWEL[new] + sound[-1] if sound[-1] == "1" else sound for sound in own)
            sounds = own + other_sounds if vowel == "i" else other_sounds + own
            yield Proposal(
                title(first, second), (first, second), "echo", f"{idea.word} doubled, {vowel} to {new}", (idea.word,),
                idea.word, sounds, 0.75 * material.fits_tone("playful"), 0.95,
            )  # fmt: skip


def _rhymes(material: Material) -> Iterator[Proposal]:
    known = (idea for idea in material.ideas[:_NEAREST] if zipf(idea.word) >= _HEARD)
    words = (*known, *material.companions("after"), *material.companions("before"))
    kept: defaultdict[tuple[str, ...], list[Idea]] = defaultdict(list)
    for idea in words:
        kept[_ending(sounds_of(idea.word))].append(idea)
    groups = sorted(kept.values(), key=lambda group: -max(idea.weight for idea in group))
    for group in groups:
        for a, b in best_pairs(group, group):
            usable = (
                a.word != b.word
                and len(a.word) + len(b.word) <= _LONGEST
                and (a.role != "companion" or b.role != "companion")
            )
            if usable and a.concept != b.concept and rhyme(sounds_of(a.word), sounds_of(b.word)):
                words_of = (a.word, b.word)
                if (b.pos, a.pos) in (("a", "n"), ("v", "n")) or (len(b.word) < len(a.word) and a.pos == b.pos):
                    words_of = (b.word, a.word)
                yield Proposal(
                    title(*words_of), words_of, "echo", f"{words_of[0]} rhymes with {words_of[1]}", words_of,
                    words_of[1], sounds_of(words_of[0]) + sounds_of(words_of[1]), 0.9,
                )  # fmt: skip


def _ending(sounds: tuple[str, ...]) -> tuple[str, ...]:
    nuclei = [place for place, sound in enumerate(sounds) if is_vowel(sound)]
    stressed = [place for place in nuclei if sounds[place][-1] in "12"] or nuclei
    return tuple(sound.rstrip("012") for sound in sounds[stressed[-1] :]) if stressed else ()


def alliteration(material: Material) -> Iterator[Proposal]:
    """A describing word, an action or another idea before an idea that begins with the same sound."""
    if material.most_words < 2:
        return
    befores = (*material.companions("before"), *material.ideas)
    before = tuple(sorted(befores, key=lambda idea: -idea.weight))
    for a, b in best_pairs(before, material.nouns):
        if a.word != b.word and a.concept != b.concept and alliterates(sounds_of(a.word), sounds_of(b.word)):
            words = (a.word, b.word)
            yield Proposal(
                title(*words), words, "alliteration", f"{a.word} and {b.word} begin alike", words, b.word,
                sounds_of(a.word) + sounds_of(b.word), 0.9,
            )  # fmt: skip
