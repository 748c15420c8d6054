"""How a name is said: its syllables, how usual its letters and sounds are, its length, its rhythm and its echoes."""

from __future__ import annotations

from functools import lru_cache
from itertools import pairwise

from ..pronunciation.phonotactics import pronounceability
from .blending.letter_statistics import surprise
from .candidate import Proposal
from .vocabulary import word
from .word_sounds import is_vowel

__all__ = ["echo", "rhythm", "sayable", "size", "syllables"]

_USUAL, _UNUSUAL = 2.6, 5.2
"""Mean bits a letter at which a name reads like a common word, and like none: the 10th and 99.5th hundredths of
the words of frequency Zipf 3 and more are 2.5 and 5.2 (measured on the shipped lists)."""
_WORST = 9.5  # bits of one letter beyond which the whole is held back
_SHAPE = {"1": 0.85, "10": 1.0, "12": 0.95, "01": 0.75, "11": 0.85, "21": 0.75, "20": 0.9, "100": 0.9, "102": 0.95,
          "120": 0.9, "010": 0.9, "101": 0.9, "110": 0.75, "210": 0.85, "1010": 0.9, "2010": 0.95,
          "1020": 0.95}  # fmt: skip


def syllables(proposal: Proposal) -> int:
    """How many syllables it has: of its sounds, else of its groups of vowel letters."""
    if proposal.sounds:
        return sum(map(is_vowel, proposal.sounds))
    return max(1, sum(_groups(word) for word in proposal.words))


def _groups(word: str) -> int:
    shape = "".join("v" if letter in "aeiouy" else " " for letter in word.removesuffix("e") or word)
    return len(shape.split())


def sayable(proposal: Proposal) -> float:
    """By its letters, and where they are known by its sounds, in equal parts."""
    letters = min(_sayable(word) for word in proposal.words)
    return 0.5 * letters + 0.5 * _said(proposal.sounds) if proposal.sounds else letters


@lru_cache(maxsize=1 << 14)
def _said(sounds: tuple[str, ...]) -> float:
    return pronounceability(sounds)


@lru_cache(maxsize=1 << 15)
def _sayable(word: str) -> float:
    bits = surprise(word)
    if not bits:
        return 0.5
    mean = sum(bits) / len(bits)
    value = 1 - (mean - _USUAL) / (_UNUSUAL - _USUAL)
    return max(0.0, min(1.0, value) - 0.15 * max(0.0, max(bits) - _WORST))


def size(letters: int, sounded: int, words: int) -> float:
    """1 at four to nine letters and one to three syllables (`sounded`), less beyond."""
    gap = max(0, 4 - letters) * 0.15 + max(0, letters - (9 if words == 1 else 11)) * 0.1
    gap += max(0, sounded - 3) * 0.15 + (0.15 if words > 3 else 0.0)
    return max(0.0, 1 - gap)


def rhythm(proposal: Proposal) -> float:
    """How regularly strong and weak syllables take turns, a strong one first; 0.75 where its sounds are not known."""
    if not proposal.sounds:
        return 0.75
    stresses = "".join(sound[-1] for sound in proposal.sounds if is_vowel(sound))
    known = _SHAPE.get(stresses)
    if known is not None:
        return known
    turns = sum((a == "0") != (b == "0") for a, b in pairwise(stresses))
    return 0.5 + 0.4 * turns / max(1, len(stresses) - 1)


def echo(proposal: Proposal) -> float:
    """Sounds that its first and last word share: at the beginning, under stress, at the end."""
    parts = proposal.sources if len(proposal.words) == 1 else tuple(one for one in proposal.words if one != "and")
    if len(parts) < 2:
        return 0.0
    heard = [sounds for one in (parts[0], parts[-1]) if (sounds := word(one.casefold()).sounds)]
    if len(heard) < 2:
        return 0.0
    one, two = heard[0], heard[-1]
    stressed = [next((s[:-1] for s in sounds if s.endswith("1")), "") for sounds in (one, two)]
    return min(1.0, 0.5 * (one[0] == two[0]) + 0.3 * (stressed[0] == stressed[1]) + 0.4 * (one[-2:] == two[-2:]))
