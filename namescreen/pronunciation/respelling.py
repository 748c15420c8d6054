"""A reading written for people who do not know phonetic symbols: ZIL-oh.

The key is our own. Syllables are parted by hyphens, the one with primary stress is in capitals. Consonants sound
as their letters usually do; dh is the first sound of "this", zh the middle one of "measure". Vowels:

    a cat · ah spa · aw law · ay day · e, eh bed · ee see · er her · i, ih sit · igh high · oh go · oo too · ow cow
    oy boy · u, uh cut, and the weak vowel that begins "about" · uu book
"""

from __future__ import annotations

from functools import lru_cache
from itertools import pairwise

from .syllables import Syllable, syllabify

__all__ = ["say"]

_VOWELS = {
    "AA": "ah", "AE": "a", "AH": "u", "AO": "aw", "AW": "ow", "AY": "igh", "EH": "e", "ER": "er", "EY": "ay",
    "IH": "i", "IY": "ee", "OW": "oh", "OY": "oy", "UH": "uu", "UW": "oo",
}  # fmt: skip
_OPEN = {"AE": "aa", "AH": "uh", "EH": "eh", "IH": "ih"}
"""How a vowel is written at the end of a syllable, where its short letter would mislead."""
_SHORT = frozenset(("AE", "AH", "EH", "IH", "UH"))
_CONSONANTS = {"HH": "h", "JH": "j"}


@lru_cache(maxsize=1 << 10)
def say(phones: tuple[str, ...]) -> str:
    """The reading in plain letters, syllables parted by hyphens, the one with primary stress in capitals."""
    syllables = _closed(syllabify(phones))
    if not syllables:
        return "".join(_consonant(phone) for phone in phones)
    shown = []
    for syllable in syllables:
        vowel = _VOWELS[syllable.nucleus] if syllable.coda else _OPEN.get(syllable.nucleus, _VOWELS[syllable.nucleus])
        coda = "".join(_consonant(phone) for phone in syllable.coda)
        if syllable.coda == ("S",):
            coda = "ss"  # one s at the end reads as z
        text = "".join(_consonant(phone) for phone in syllable.onset) + vowel + coda
        shown.append(text.upper() if syllable.stress == 1 else text)
    return "-".join(shown)


def _closed(syllables: tuple[Syllable, ...]) -> tuple[Syllable, ...]:
    """The syllables as readers part them: a stressed short vowel keeps the consonant after it (ZIL-oh), which
    belongs to both syllables (Kahn 1976)."""
    closed = list(syllables)
    for at, (here, after) in enumerate(pairwise(syllables)):
        if here.stress and here.nucleus in _SHORT and not here.coda and len(after.onset) == 1:
            closed[at] = closed[at]._replace(coda=after.onset)
            closed[at + 1] = after._replace(onset=())
    return tuple(closed)


def _consonant(phone: str) -> str:
    return _CONSONANTS.get(phone, phone.lower())
