"""Syllables, stress, rhyme and alliteration of a reading.

Division follows the maximal onset principle (D. Kahn, Syllable-based Generalizations in English Phonology,
1976): consonants between vowels join the second syllable as far as an English word may begin with them. Onsets obey
the sonority sequencing principle, rising towards the vowel, with /s/ before a voiceless stop as the one
exception (G. Clements, "The role of the sonority cycle in core syllabification", 1990; H. Giegerich, English
Phonology, 1992, chapter 6).
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from .phones import is_vowel

__all__ = ["Syllable", "alliterates", "rhyme", "sonority", "stress_pattern", "syllabify", "syllable_count"]

_STOPS, _FRICATIVES = ("P", "T", "K", "B", "D", "G"), ("F", "TH", "S", "SH", "V", "DH", "Z", "ZH", "HH")
_SONORITY = {
    **dict.fromkeys((*_STOPS, "CH", "JH"), 1),
    **dict.fromkeys(_FRICATIVES, 2),
    **dict.fromkeys(("M", "N", "NG"), 3),
    **dict.fromkeys(("L", "R"), 4),
    **dict.fromkeys(("W", "Y"), 5),
}
_PAIRS = frozenset(
    tuple(pair.split("+"))
    for pair in (
        "P+L P+R P+Y B+L B+R B+Y T+R T+W D+R D+W K+L K+R K+W K+Y G+L G+R G+W F+L F+R F+Y TH+R TH+W SH+R V+Y HH+Y "
        "S+L S+W S+M S+N S+P S+T S+K S+F M+Y N+Y"
    ).split()
)
"""Two consonants that may open an English syllable (Giegerich 1992, section 6.3; from memory)."""


class Syllable(NamedTuple):
    """Consonants before the vowel, the vowel without its stress digit, consonants after it, and the stress
    (1 primary, 2 secondary, 0 none)."""

    onset: tuple[str, ...]
    nucleus: str
    coda: tuple[str, ...]
    stress: int


def sonority(phone: str) -> int:
    """1 stop or affricate, 2 fricative, 3 nasal, 4 liquid, 5 glide, 6 vowel."""
    return _SONORITY.get(phone, 6)


def may_open(consonants: Sequence[str]) -> bool:
    """Whether an English syllable may begin with these consonants."""
    if len(consonants) <= 1:
        return tuple(consonants) != ("NG",)
    if len(consonants) == 2:
        return tuple(consonants) in _PAIRS
    return (
        len(consonants) == 3
        and consonants[0] == "S"
        and consonants[1] in ("P", "T", "K")
        and tuple(consonants[1:]) in _PAIRS
    )


def syllabify(phones: Sequence[str]) -> tuple[Syllable, ...]:
    """The syllables of a reading; empty if it has no vowel."""
    vowels = [at for at, phone in enumerate(phones) if is_vowel(phone)]
    if not vowels:
        return ()
    starts = [0]
    for before, after in pairwise(vowels):
        start = before + 1
        while not may_open(phones[start:after]):
            start += 1
        starts.append(start)
    ends = [*starts[1:], len(phones)]
    return tuple(
        Syllable(
            tuple(phones[start:vowel]),
            phones[vowel].rstrip("012"),
            tuple(phones[vowel + 1 : end]),
            int(phones[vowel][-1]) if phones[vowel][-1] in "012" else 0,
        )
        for start, vowel, end in zip(starts, vowels, ends, strict=True)
    )


def syllable_count(phones: Sequence[str]) -> int:
    """How many syllables a reading has: one for each vowel."""
    return sum(1 for phone in phones if is_vowel(phone))


def stress_pattern(phones: Sequence[str]) -> str:
    """One digit a syllable: 1 primary, 2 secondary, 0 none."""
    return "".join(phone[-1] for phone in phones if is_vowel(phone))


def rhyme(a: Sequence[str], b: Sequence[str]) -> bool:
    """Whether two readings rhyme: the same from the last stressed vowel on, and different before it (A. Preminger and
    T. Brogan, The New Princeton Encyclopedia of Poetry and Poetics, 1993, "rhyme"). Symmetric."""
    return _from_last_stress(a) == _from_last_stress(b) != () and _before_last_stress(a) != _before_last_stress(b)


def alliterates(a: Sequence[str], b: Sequence[str]) -> bool:
    """Whether two readings begin with the same consonant (consonant cluster s + stop included as a whole, since
    /st/ and /sp/ do not alliterate in English verse). Symmetric."""
    one, two = _opening(a), _opening(b)
    return one == two != ()


def _last_stress(phones: Sequence[str]) -> int:
    stressed = [at for at, phone in enumerate(phones) if is_vowel(phone) and phone[-1] in "12"]
    vowels = [at for at, phone in enumerate(phones) if is_vowel(phone)]
    return (stressed or vowels[:1] or [len(phones)])[-1]


def _from_last_stress(phones: Sequence[str]) -> tuple[str, ...]:
    return tuple(phone.rstrip("012") for phone in phones[_last_stress(phones) :])


def _before_last_stress(phones: Sequence[str]) -> tuple[str, ...]:
    at = _last_stress(phones)
    return tuple(phones[max(0, at - 1) : at])


def _opening(phones: Sequence[str]) -> tuple[str, ...]:
    if not phones or is_vowel(phones[0]):
        return ()
    return tuple(phones[:2]) if phones[0] == "S" and phones[1:2] and phones[1] in ("P", "T", "K") else (phones[0],)
