"""The numbers a candidate is ranked by: each in [0, 1], 1 the better end, each with a stated meaning."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

from ..brief import Brief
from ..errors import InputError, Problem
from ..lexicon import kinds, lexicon, zipf
from ..lexicon.association import association
from ..pronunciation.phonotactics import pronounceability
from ..text import fold
from .blending.letter_statistics import surprise
from .blending.source_word import strain
from .candidate import Proposal
from .material import PLACES, Material
from .word_sounds import is_onset, is_vowel, sounds_of

__all__ = ["DEFAULT_WEIGHTS", "PARTS", "Judge", "similarity", "syllables"]

PARTS = {
    "evocation": "how near its sources stand to the concepts, and how readily they are seen in it",
    "sayable": "how usual its letters and sounds are in English: 1 = as the commonest words, 0 = as no word",
    "spelling": "how usually each of its sounds is spelled so: heard, it can be written; read, it can be said",
    "length": "letters and syllables: 1 at five to eight letters and two or three syllables",
    "rhythm": "strong and weak syllables taking turns, a strong one first",
    "memory": "signs of a name that sticks: a stop at the start, an echo, a picture, a short word",
    "own": "how far it is from describing the goods, and from being an ordinary word already",
    "craft": "how well its construction came off: overlap, clean seam, tone",
}
"""Every part and its meaning."""

DEFAULT_WEIGHTS = {
    "evocation": 3.0, "sayable": 2.0, "spelling": 1.0, "length": 1.5, "rhythm": 0.75, "memory": 1.0, "own": 1.5,
    "craft": 2.0,
}  # fmt: skip
"""Weights of the parts unless the brief sets others: chosen by reading what each brings to the top of four
invented briefs, not fitted."""

_USUAL, _UNUSUAL = 2.6, 5.2
"""Mean bits a letter at which a name reads like a common word, and like none: the 10th and 99.5th hundredths of
the words of frequency Zipf 3 and more are 2.5 and 5.2 (measured on the shipped lists)."""
_WORST = 9.5  # bits of one letter beyond which the whole is held back
_ALONE = 0.6  # what a name from one source evokes, beside one from two of the same worth
_STOPS = frozenset("P B T D K G".split())  # B. Vanden Bergh and others, J. of Advertising 13 (1984): stops are recalled
_SHAPE = {"1": 0.85, "10": 1.0, "12": 0.95, "01": 0.75, "11": 0.85, "21": 0.75, "20": 0.9, "100": 0.9, "102": 0.95,
          "120": 0.9, "010": 0.9, "101": 0.9, "110": 0.75, "210": 0.85, "1010": 0.9, "2010": 0.95,
          "1020": 0.95}  # fmt: skip


def weights_of(brief: Brief) -> dict[str, float]:
    """The brief's ranking weights over the defaults; raises `InputError` for a part that does not exist."""
    unknown = [name for name in brief.ranking_weights if name not in PARTS]
    if unknown:
        raise InputError(
            [
                Problem(f"{name!r} is not a part of the ranking", f"Known parts: {', '.join(PARTS)}",
                        str(brief.source or "brief"), None, f"weights.ranking.{name}")
                for name in unknown
            ]
        )  # fmt: skip
    return {**DEFAULT_WEIGHTS, **{name: float(value) for name, value in brief.ranking_weights.items()}}


def syllables(proposal: Proposal) -> int:
    """How many syllables it has: of its sounds, else of its groups of vowel letters."""
    if proposal.sounds:
        return sum(map(is_vowel, proposal.sounds))
    return max(1, sum(_groups(word) for word in proposal.words))


def _groups(word: str) -> int:
    shape = "".join("v" if letter in "aeiouy" else " " for letter in word.removesuffix("e") or word)
    return len(shape.split())


@dataclass(frozen=True)
class Judge:
    """Scores proposals for one brief. The parts follow from the proposal alone, so batches equal singles."""

    weights: Mapping[str, float]
    ideas: Mapping[str, float]
    goods: tuple[str, ...]

    @classmethod
    def of(cls, brief: Brief, material: Material) -> Judge:
        """The judge of a brief, knowing how near each word of the material is."""
        goods = tuple(word for word in dict.fromkeys(fold(brief.goods).replace("-", " ").split()) if len(word) > 2)
        nearness = {idea.word: idea.weight if idea.distance else max(idea.weight, 0.9) for idea in material.ideas}
        for place in PLACES:
            for idea in material.companions(place):  # off the brief's tone a companion weighs less than half
                nearness.setdefault(idea.word, idea.weight**1.5)
        return cls(weights_of(brief), nearness, goods)

    def parts(self, proposal: Proposal) -> dict[str, float]:
        """Every part of `PARTS` for a proposal."""
        return {
            "evocation": self._evocation(proposal),
            "sayable": _sayable_as(proposal),
            "spelling": _spelling(proposal),
            "length": _length(len(proposal.letters), syllables(proposal), len(proposal.words)),
            "rhythm": _rhythm(proposal),
            "memory": _memory(proposal),
            "own": self._own(proposal),
            "craft": proposal.craft,
        }

    def score(self, parts: Mapping[str, float]) -> float:
        """The weighted mean of the parts, in [0, 1]."""
        total = sum(self.weights[name] for name in parts)
        return sum(self.weights[name] * value for name, value in parts.items()) / total if total else 0.0

    def _evocation(self, proposal: Proposal) -> float:
        near = sorted((self.ideas.get(word, 0.0) for word in proposal.sources), reverse=True)
        second = near[1] if len(near) > 1 else _ALONE * near[0]
        return float((0.62 * near[0] + 0.38 * second) ** 0.75 * (0.35 + 0.65 * proposal.clear))

    def _own(self, proposal: Proposal) -> float:
        told = sorted((_describes(word, self.goods) for word in proposal.sources), reverse=True)
        if not told:
            return 1.0
        # the most distinctive word carries a name, the others take away a part (TMEP 1209.01; common practice)
        weight = 0.4 * told[0] + 0.6 * told[-1]
        if len(proposal.words) == 1 and proposal.construction != "compound":
            weight *= 0.45 + 0.45 * proposal.clear  # a coined form tells less than its sources do
        return max(0.0, 1 - weight)


@lru_cache(maxsize=1 << 14)
def _describes(word: str, goods: tuple[str, ...]) -> float:
    """How plainly a word tells of the goods, 0 to 1."""
    if {"laudatory", "quality", "generic head"} & kinds(word):
        return 0.7
    bases = {word, *lexicon().bases(word)}
    for other in goods:
        if other in bases or bases & set(lexicon().bases(other)):
            return 1.0
    return 0.6 * max((association(word, other) or 0.0 for other in goods), default=0.0)


def _sayable_as(proposal: Proposal) -> float:
    """By its letters, and where they are known by its sounds, in equal parts."""
    letters = min(_sayable(word) for word in proposal.words)
    return 0.5 * letters + 0.5 * pronounceability(proposal.sounds) if proposal.sounds else letters


@lru_cache(maxsize=1 << 15)
def _sayable(word: str) -> float:
    bits = surprise(word)
    mean = sum(bits) / len(bits)
    value = 1 - (mean - _USUAL) / (_UNUSUAL - _USUAL)
    return max(0.0, min(1.0, value) - 0.15 * max(0.0, max(bits) - _WORST))


def _spelling(proposal: Proposal) -> float:
    """1 - the strain of tying its letters to its sounds; a middling 0.7 where only the spelling is known."""
    if not proposal.sounds:
        return 0.7
    whole = [word for word in proposal.sources if word in proposal.letters]
    if whole and sum(map(len, whole)) >= len(proposal.letters) - 3:  # words that stand in it whole keep their own
        return max(0.0, 1 - 1.5 * max(map(_own_strain, whole)))
    return max(0.0, 1 - 1.5 * strain(proposal.letters, proposal.sounds))


@lru_cache(maxsize=1 << 14)
def _own_strain(word: str) -> float:
    return strain(word, sounds_of(word))


def _length(letters: int, sounded: int, words: int) -> float:
    gap = max(0, 4 - letters) * 0.15 + max(0, letters - (8 if words == 1 else 10)) * 0.12
    gap += max(0, sounded - 3) * 0.2 + (0.08 if sounded == 1 else 0.0) + (0.15 if words > 2 else 0.0)
    return max(0.0, 1 - gap)


def _rhythm(proposal: Proposal) -> float:
    if not proposal.sounds:
        return 0.75
    stresses = "".join(sound[-1] for sound in proposal.sounds if is_vowel(sound))
    known = _SHAPE.get(stresses)
    if known is not None:
        return known
    turns = sum((a == "0") != (b == "0") for a, b in pairwise(stresses))
    return 0.5 + 0.4 * turns / max(1, len(stresses) - 1)


def _memory(proposal: Proposal) -> float:
    sounds = proposal.sounds
    letters = proposal.letters
    value = 0.35
    if (sounds and sounds[0] in _STOPS) or (not sounds and letters[0] in "pbtdkgc"):
        value += 0.2
    if len(proposal.words) == 2 and proposal.words[0][0] == proposal.words[1][0]:
        value += 0.2
    if sounds:
        vowels = [sound.rstrip("012") for sound in sounds if is_vowel(sound)]
        value += 0.1 * (len(vowels) > 1 and len(set(vowels)) < len(vowels))
        value -= 0.15 * (not is_onset([sound.rstrip("012") for sound in sounds]))
    if any(zipf(word) >= 3.0 for word in proposal.words):
        value += 0.15
    if len(letters) <= 7:
        value += 0.2
    return max(0.0, min(1.0, value))


def similarity(proposal: Proposal, model: Sequence[str]) -> float:
    """How much a proposal resembles a model name, in [0, 1]: shared letter pairs, ending, length, words."""
    other = "".join(model)
    pairs_a, pairs_b = set(pairwise(f"^{proposal.letters}$")), set(pairwise(f"^{other}$"))
    shared = 2 * len(pairs_a & pairs_b) / (len(pairs_a) + len(pairs_b))
    ending = proposal.letters[-2:] == other[-2:]
    size = 1 - min(1.0, abs(len(proposal.letters) - len(other)) / 6)
    return 0.45 * shared + 0.15 * ending + 0.25 * size + 0.15 * (len(proposal.words) == len(model))
