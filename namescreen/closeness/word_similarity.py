"""How alike two words are: in look, in sound, in meaning, and taken together."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from .appearance import Numbers, positive_part
from .features import Word
from .letters import look
from .sound import sound
from .vocabulary import is_known, meaning

__all__ = ["SAME_MEANING", "WordSimilarity", "evoked", "word_similarity"]

SAME_MEANING = 0.5
"""Closeness in meaning from which two words say something alike, in words; below it they say different things."""

EVOKED, EVOKES_LESS = 0.75, 0.8
"""Sound from which an invented word brings to mind what a word that sounds so says (dimond: diamond), and what that
counts at most. Two invented words bring nothing to mind."""

STRONGER = 0.2
"""Share of form from the stronger of look and sound, the rest from their mean: similarity in one can be enough
(TMEP 1207.01(b)). This and the next three are reasoned, not fitted."""
CHANCE = 0.25
"""Form at or below which two words share no more than chance gives any two."""
DIFFERENT = 0.25
"""Share of form that is lost where two known words say nothing alike (conceptual difference counteracts: EUIPO
Guidelines, part C, section 2, chapter 4)."""
SAID_OTHERWISE = 0.85
"""What saying the same in other words counts, as a share of being the same word."""


class WordSimilarity(NamedTuple):
    """Similarity of two words, each in [0, 1], 1 = the same.

    `sound` is that of the letters where one cannot be read aloud; `meaning` is 0 where nothing is known.
    """

    look: float
    sound: float
    meaning: float
    together: float


_SAME = WordSimilarity(1.0, 1.0, 1.0, 1.0)


def word_similarity(one: Word, other: Word) -> WordSimilarity:
    """The similarity of two words; symmetric; the same letters are alike in everything."""
    if one.letters == other.letters:
        return _SAME
    if other.letters < one.letters:
        one, other = other, one
    return _similarity(one.letters, one.phoneme_codes, other.letters, other.phoneme_codes)


@lru_cache(maxsize=1 << 17)
def _similarity(
    letters: str, codes: tuple[str, ...], other_letters: str, other_codes: tuple[str, ...]
) -> WordSimilarity:
    seen = look(letters, other_letters)
    heard = sound(letters, codes, other_letters, other_codes)
    if heard is None:
        heard = seen
    said = meaning(letters, other_letters)
    form = STRONGER * max(seen, heard) + (1 - STRONGER) * (seen + heard) / 2
    form = max(0.0, (form - CHANCE) / (1 - CHANCE))
    if said is None:
        said = evoked(heard) if is_known(letters) != is_known(other_letters) else 0.0
    else:
        form *= 1 - DIFFERENT * (1 - said)
    return WordSimilarity(seen, heard, said, max(form, SAID_OTHERWISE * said))


def evoked(sound: Numbers) -> Numbers:
    """What an invented word that sounds so much like a known one says of what that says, in [0, 1]."""
    return EVOKES_LESS * positive_part((sound - EVOKED) / (1 - EVOKED))
