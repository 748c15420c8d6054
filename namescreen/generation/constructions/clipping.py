"""Clippings: a long word cut to its beginning, alone with a light ending (Terro), or two of them (Jasfern).

Back-clipping keeps the first syllable with the consonant that follows, the usual shape of English clippings
(L. Bauer, English Word-Formation, 1983, 7.2).
"""

from __future__ import annotations

from collections.abc import Iterator

from ..blending.letter_statistics import doubt_of_beginning
from ..blending.source_word import source
from ..candidate import Proposal
from ..expansion import Idea
from ..material import Material, best_pairs
from ..word_sounds import is_vowel

__all__ = ["clip", "propose"]

NAME = "clipping"
_ENDINGS = (("o", "OW0", "bold playful"), ("y", "IY0", "playful warm"), ("a", "AH0", "elegant warm"))


def propose(material: Material) -> Iterator[Proposal]:
    """A clipped idea with a light ending, then clipped before a whole companion or another clipped idea."""
    long = tuple(idea for idea in material.nouns if len(idea.word) >= 5)
    for idea in long:
        short, sounds = clip(idea.word)
        if not short:
            continue
        clear = max(0.0, 0.9 - 0.09 * doubt_of_beginning(short, idea.word))
        if len(short) > 3:
            yield Proposal(
                short.capitalize(), (short,), NAME, f"{short}({idea.word[len(short) :]})", (idea.word,), short, sounds,
                0.6, clear,
            )  # fmt: skip
        for ending, sound, tones in _ENDINGS:
            text = short + ending
            if not idea.word.startswith(text):
                yield Proposal(
                    text.capitalize(), (text,), NAME, f"{short}({idea.word[len(short) :]}) + -{ending}", (idea.word,),
                    short, (*sounds, sound), 0.75 * material.fits_tone(tones), clear,
                )  # fmt: skip
    for a, b in best_pairs(long, material.nouns):
        if a.concept != b.concept:
            yield from _two(a, b)


def _two(a: Idea, b: Idea) -> Iterator[Proposal]:
    one, sounds = clip(a.word)
    two, after = clip(b.word) if len(b.word) > 5 else ("", ())
    kept, heard = (two, after) if two else (b.word, source(b.word).sounds)
    if one and kept and one[-1] != kept[0]:
        text = one + kept
        lost = f"({b.word[len(kept) :]})" if len(kept) < len(b.word) else ""
        yield Proposal(
            text.capitalize(), (text,), NAME, f"{one}({a.word[len(one) :]}) + {kept}{lost}", (a.word, b.word), one,
            (*sounds, *heard), 0.6, 0.7 if two else 0.8,
        )  # fmt: skip


def clip(word: str) -> tuple[str, tuple[str, ...]]:
    """The first syllable of `word` with the single consonant after it, and its sounds; nothing if it has one
    syllable."""
    tied = source(word)
    if len(tied.nuclei) < 2:
        return "", ()
    at = tied.nuclei[0] + 1
    if at >= len(tied.sounds) or is_vowel(tied.sounds[at]):
        return "", ()
    at += 1
    letters = next((k for k, before in enumerate(tied.before) if before >= at), 0)
    if letters < 3 or letters >= len(word) - 1:
        return "", ()
    return word[:letters], tied.sounds[:at]
