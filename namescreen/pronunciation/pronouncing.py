"""How a word or a name may be read aloud: from the dictionary, from its parts, or from its spelling."""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache
from itertools import product
from operator import itemgetter
from typing import Literal, NamedTuple

from ..text import fold
from .dictionary import known_readings
from .g2p import joint_model
from .phones import VOWEL_LETTERS, code_of, from_marked
from .syllables import Syllable, syllabify
from .word_parts import readings_from_parts

__all__ = ["Pronunciation", "pronounce", "pronounce_many", "pronounce_words"]

Source = Literal["dictionary", "parts", "spelling", "letters", "language"]
_SEARCHED, _CONSIDERED = 12, 4
"""The readings that are searched for, and how many of them are kept."""
_STRAY_GLIDE = re.compile(f"[yw](?![{''.join(sorted(VOWEL_LETTERS))}])")
"""English has y and w before vowels only (Giegerich, English Phonology, 1992); 29 of the dictionary's 121,735 words,
foreign names, have them elsewhere."""

_SOURCES: tuple[Source, ...] = ("dictionary", "parts", "spelling")
"""Where readings come from, the most certain first."""
_WEIGHT_THEN_PHONES = itemgetter(0, 1)
_DOUBLED = re.compile(r"(.)\1+")
_NEVER_DOUBLED = "hjkqvwxy"
"""Letters that English spelling never doubles (E. Carney, A Survey of English Spelling, 1994): an invented name that
does, KWIKK or WIXXO, is read as with one. No letter stands three times running."""

_VOWEL_LEFT_OUT = re.compile(
    "(?<=[aeiouy])([^aeiouy]*(?:[bcdfgklmnpstvz]|[cpst]h))"
    "(?=r(?:[bcdfghjkmnpqstvwxz]|$)|(?<![lr])l(?:[bcdfghjkmnpqrstvwxz]|$)|(?<![glmnr])n[ds]?$|(?<=t)d$)"
)
"""Where no syllable of English can go on, and a trader has left out an e: timbr, buttrcup, wovn, knittd (as sonority
would rise in its coda: Giegerich 1992)."""


class Pronunciation(NamedTuple):
    """One reading.

    `phones` are ARPAbet symbols, vowels with a stress digit; `source` says where the reading comes from: the
    dictionary, known parts (an inflection or compound), the spelling alone, the letters one by one
    (`language_neutral_reading`), or the rules of another language; `weight` in (0, 1] is how probable it is among the
    readings of the same word.
    """

    phones: tuple[str, ...]
    source: Source
    weight: float

    @property
    def code(self) -> str:
        """One letter a phone, without stress (see `namescreen.pronunciation.phones`)."""
        return _code_of(self.phones)

    @property
    def stress(self) -> str:
        """One digit a syllable: 1 primary, 2 secondary, 0 none."""
        return "".join([phone[-1] for phone in self.phones if phone[-1] in "012"])

    @property
    def syllables(self) -> tuple[Syllable, ...]:
        """The syllables, each with onset, nucleus, coda and stress."""
        return syllabify(self.phones)


_code_of = lru_cache(maxsize=1 << 14)(code_of)


def pronounce(word: str, limit: int = 3) -> tuple[Pronunciation, ...]:
    """The likely readings of one word, most likely first; never empty if it has a letter a to z once folded.

    Other characters are ignored: `text.parse` puts numerals and symbols into words.
    """
    return _readings(word)[: max(1, limit)]


def pronounce_many(words: Iterable[str], limit: int = 1) -> list[tuple[Pronunciation, ...]]:
    """`pronounce(word, limit)` for every word, in order; equal words are read once."""
    found: dict[str, tuple[Pronunciation, ...]] = {}
    result = []
    for word in words:
        readings = found.get(word)
        if readings is None:
            readings = found[word] = pronounce(word, limit)
        result.append(readings)
    return result


def pronounce_words(words: Iterable[str], limit: int = 3) -> tuple[Pronunciation, ...]:
    """The likely readings of several words said together, most likely first; words without a letter are silent.

    `source` is the least certain among the words'; `weight` is the product over them, renormalised.
    """
    choices = [readings for readings in (pronounce(word, limit) for word in words) if readings]
    if not choices:
        return ()
    if len(choices) == 1:
        return choices[0]
    if len(choices) > 5:  # vary only the first five words: the product grows exponentially
        choices[5:] = [readings[:1] for readings in choices[5:]]
    joined = []
    for readings in product(*choices):
        weight = 1.0
        phones: tuple[str, ...] = ()
        for reading in readings:
            weight *= reading.weight
            phones += reading.phones
        joined.append((-weight, phones, readings))
    joined.sort(key=_WEIGHT_THEN_PHONES)
    best = joined[: max(1, limit)]
    total = sum(-weight for weight, _, _ in best)
    return tuple(
        Pronunciation(phones, max((one.source for one in readings), key=_SOURCES.index), -weight / total)
        for weight, phones, readings in best
    )


@lru_cache(maxsize=1 << 16)
def _readings(word: str) -> tuple[Pronunciation, ...]:
    letters = word if word.isascii() and word.isalpha() and word.islower() else _letters(word)
    if not letters:
        return ()
    source: Source = "dictionary"
    marked = known_readings(letters)
    if not marked:
        source, marked = "parts", readings_from_parts(letters)[1]
    if marked:
        # The dictionary orders readings without saying how far apart they are; the n-th is taken to be 1/n as
        # usual as the first (Zipf's law for ranks; common practice, no source for readings).
        total = sum(1 / rank for rank in range(1, len(marked) + 1))
        return tuple(
            Pronunciation(from_marked(reading), source, 1 / rank / total) for rank, reading in enumerate(marked, 1)
        )
    single = _DOUBLED.sub(lambda match: match[0][: 1 if match[1] in _NEVER_DOUBLED else 2], letters)
    if single != letters:
        return _readings(single)
    if (full := _VOWEL_LEFT_OUT.sub(r"\1e", letters)) != letters:
        return _readings(full)
    found = joint_model().readings(letters, _SEARCHED)
    kept = [one for one in found if not _STRAY_GLIDE.search(one[0])] or found
    said = ((reading.replace("dj", "j").replace("tC", "C"), weight) for reading, weight in kept[:_CONSIDERED])
    return tuple(Pronunciation(from_marked(reading), "spelling", weight) for reading, weight in said)


def _letters(word: str) -> str:
    return "".join(character for character in fold(word) if "a" <= character <= "z")
