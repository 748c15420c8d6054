"""The similarity of two words: in look, in sound, in meaning, and overall."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from ..text.inflection import other_number
from .appearance import Numbers, positive_part
from .features import Word
from .kept import kept_similarity
from .letters import look
from .sound import sound
from .vocabulary import is_familiar, is_known
from .word_meaning import meanings

__all__ = ["ONE_WORD", "SAME_MEANING", "WordSimilarity", "recalled_meaning", "word_similarity"]

ONE_WORD = 0.95
"""The least similarity of a word to its plural or possessive: offices see no difference that matters (Wilson v.
Delaunay, 245 F.2d 877, CCPA 1957; from memory)."""
SAME_MEANING = 0.5
"""Closeness in meaning from which a reason says that two words have a similar meaning; below it their meanings
differ."""

RECALLED_FROM, RECALLED_AT_MOST = 0.7, 0.8
"""Similarity in sound from which an invented word recalls the meaning of a known word (jassmin: jasmine), and the
highest closeness in meaning that follows. Two invented words recall nothing."""

STRONGER = 0.2
"""Share of form from the stronger of look and sound, the rest from their mean: similarity in one can be enough
(TMEP 1207.01(b)). This and the next two are reasoned, not fitted."""
SEEN, SEEN_IF_GUESSED = 0.5, 0.6
"""Share of look in their mean, and where a word is not in the lexicon, so that how it is said is a guess. Names
really confused are found best with 0.75 for the second, which costs decided pairs a little (0.848 to 0.839)."""
CHANCE = 0.38
"""Form at or below which two words share no more than chance gives any two."""
DIFFERENT = 0.4
"""Share of form that is lost if two known words say nothing of the same, one of which readers know
(conceptual difference counteracts if one has a clear meaning: EUIPO Guidelines, part C, section 2, chapter 4). Of 0.15
to 0.6 the value that serves ratings and decisions together (held out: rated overall 0.695, with 0.25 0.693; US, clear:
0.774, 0.771)."""
SAID_OTHERWISE = 0.85
"""The similarity of two different words that say the same."""


class WordSimilarity(NamedTuple):
    """Similarity of two words, each in [0, 1], 1 = the same.

    `sound` is that of the letters if one cannot be read aloud; `meaning` is 0 if nothing is known.
    """

    look: float
    sound: float
    meaning: float
    overall: float


_SAME = WordSimilarity(1.0, 1.0, 1.0, 1.0)


def word_similarity(one: Word, other: Word) -> WordSimilarity:
    """The similarity of two words; symmetric; words with the same letters are the same in every aspect."""
    if one.letters == other.letters:
        return _SAME
    if other.letters < one.letters:
        one, other = other, one
    return _similarity(one.letters, one.phoneme_codes, other.letters, other.phoneme_codes)


@lru_cache(maxsize=1 << 17)
def _similarity(
    letters: str, codes: tuple[str, ...], other_letters: str, other_codes: tuple[str, ...]
) -> WordSimilarity:
    if (kept := kept_similarity(letters, other_letters)) is not None:
        return WordSimilarity(*kept)
    seen = look(letters, other_letters)
    heard = sound(letters, codes, other_letters, other_codes)
    if heard is None:
        heard = seen
    said = meanings(letters, other_letters)
    known, other_known = is_known(letters), is_known(other_letters)
    share = SEEN if known and other_known else SEEN_IF_GUESSED
    form = STRONGER * max(seen, heard) + (1 - STRONGER) * (share * seen + (1 - share) * heard)
    form = max(0.0, (form - CHANCE) / (1 - CHANCE))
    one_word = other_letters in other_number(letters) and (said is None or said.idea >= ONE_WORD)
    least = ONE_WORD if one_word else 0.0
    if said is None:
        recalled = max(least, recalled_meaning(heard) if known != other_known else 0.0)
        return WordSimilarity(seen, heard, recalled, max(form, SAID_OTHERWISE * recalled, least))
    if is_familiar(letters) or is_familiar(other_letters):
        form *= 1 - DIFFERENT * (1 - said.same)
    return WordSimilarity(seen, heard, said.idea, max(form, SAID_OTHERWISE * said.same, least))


def recalled_meaning(sound: Numbers) -> Numbers:
    """The closeness in meaning, in [0, 1], of an invented word to a known one that it sounds like, by their similarity
    in sound."""
    return RECALLED_AT_MOST * positive_part((sound - RECALLED_FROM) / (1 - RECALLED_FROM))
