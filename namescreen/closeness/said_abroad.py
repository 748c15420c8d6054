"""How a word of another language is said by those who know it: with the letters' values of that language.

Buyers who know some French say a name in French letters as a French one (foutrelle: footrell), also one that is
coined. Those of the four languages of which English speakers know most; the sounds are those that an English ear
takes them for, as loan words have them (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from itertools import chain, groupby

from ..expressions import expression
from ..lexicon import lexicon, read_as_english, zipf
from ..lexicon.letter_patterns import all_bits_less, bits_less
from ..lexicon.native_words import MORE_THAN_IN_ENGLISH
from ..pronunciation import Pronunciation, pronounce
from ..pronunciation.phones import VOWELS
from ..tables import open_table
from ..text.segmentation import LONGEST
from .kept import kept_word

__all__ = ["expect", "expect_many", "language_read_in", "name_abroad", "reading_abroad"]

LANGUAGES = ("de", "es", "fr", "it")
IN_USE = 2.5
"""The Zipf value from which a word is one of a language, if it is more frequent there than in English."""
SHORTEST = 5
"""Letters of the shortest coined word that is judged by its letters."""
LOOKS_NATIVE = 6.0
"""The bits by which the letters of a coined word are likelier in a language than in English, from which it looks like
a word of it."""

_HEARD = {
    "tʃ": "CH", "dʒ": "JH", "aɪ": "AY", "aʊ": "AW", "ɔʏ": "OY", "œʁ": "ER", "øʁ": "ER", "əʁ": "ER", "ɛj": "EY",
    "ɑ̃": "AA N", "ɔ̃": "OW N", "ɛ̃": "AE N", "œ̃": "AH N", "ɲ": "N Y", "ʎ": "L Y", "eː": "EY", "e": "EY", "ɛ": "EH",
    "a": "AA", "ɑ": "AA", "ɐ": "AA", "ə": "AH0", "i": "IY", "ɪ": "IH", "o": "OW", "ɔ": "AO", "u": "UW", "ʊ": "UH",
    "y": "UW", "ʏ": "UH", "ø": "UH", "œ": "AH", "b": "B", "d": "D", "f": "F", "ɡ": "G", "h": "HH", "j": "Y",
    "k": "K", "l": "L", "m": "M", "n": "N", "ŋ": "NG", "p": "P", "r": "R", "ɾ": "R", "ʁ": "R", "s": "S", "ʃ": "SH",
    "t": "T", "θ": "S", "v": "V", "w": "W", "ɥ": "W", "x": "HH", "ç": "SH", "ʝ": "Y", "z": "Z", "ʒ": "ZH",
}  # fmt: skip
_VOWELS = "aeiouyøœɑɐɛəɪɔʊʏ"
_SHORT_E, _CLOSED_E = expression("e(?!ː)"), expression(f"e(?=[^{_VOWELS}ː]{{2}})")
_SOUNDS = expression("|".join(sorted(_HEARD, key=len, reverse=True)))
_FINAL = {"HH": "K", "AA": "AH0"}
"""What a sound is heard as at the end: of Bach, of casa."""


@lru_cache(maxsize=1 << 16)
def reading_abroad(word: str) -> Pronunciation | None:
    """The reading of a folded `word` by the rules of the language that it is of, or looks most like; None for an
    English word, and one that looks like none of them."""
    language = language_read_in(word)
    if not language:  # most words, so that the rules are loaded where a word is of such a language
        return None
    from ..connotations.g2p_rules import letter_sounds

    sounds = letter_sounds(word, language)
    # English speakers keep the v of Spanish apart from b.
    said = "".join("v" if letters == "v" and sound == "b" else sound for letters, sound in sounds)
    said = (_SHORT_E if language == "de" else _CLOSED_E).sub("ɛ", said)
    heard = chain.from_iterable(_HEARD[sound].split() for sound in _SOUNDS.findall(said))
    phones = [phone for phone, _ in groupby(heard)]  # a doubled letter is the same sound, held
    if len(phones) > 2:
        phones[-1] = _FINAL.get(phones[-1], phones[-1])
    vowels = [at for at, phone in enumerate(phones) if phone in VOWELS]
    if not vowels:
        return None
    for at in vowels:
        phones[at] += "1"
    return Pronunciation(tuple(phones), "language", 1.0)


def name_abroad(words: Sequence[str]) -> Pronunciation | None:
    """The reading of a name whose foreign words are said by the rules of their languages, the others as usual; None if
    no word is foreign."""
    abroad = [reading_abroad(word) for word in words]
    if not any(abroad):
        return None
    said = (one or next(iter(pronounce(word, 1)), None) for word, one in zip(words, abroad, strict=True))
    return Pronunciation(tuple(chain.from_iterable(one.phones for one in said if one)), "language", 1.0)


@lru_cache(maxsize=1 << 14)
def language_read_in(word: str) -> str:
    """The language (BCP 47) that a folded `word` is of or looks most like; "" for English and for none."""
    if (kept := kept_word(word)) is not None and not kept.is_abroad:
        return ""
    if not _is_plain(word) or len(word) > LONGEST or read_as_english(word):
        return ""
    common = zipf(word)
    there, language = max((zipf(word, language), language) for language in LANGUAGES)
    if there >= max(IN_USE, common + MORE_THAN_IN_ENGLISH):
        return language
    if common >= IN_USE or len(word) < SHORTEST or lexicon().known(word):
        return ""
    if (expected := _expected.get(word)) is not None:
        return expected
    bits, language = max((bits_less(word, language), language) for language in LANGUAGES)
    return language if bits >= LOOKS_NATIVE else ""


def _is_plain(word: str) -> bool:
    return word.isascii() and word.isalpha() and word.islower()


_many = False
_expected: dict[str, str] = {}
"""The language that each of many words looks most like by its letters, "" for none, where very many are asked about."""


def expect_many() -> None:
    """Make ready for a register's words: it takes some tenths of a second, and processes forked later share it."""
    global _many
    _many = True
    all_bits_less(["a"], LANGUAGES)
    for language in LANGUAGES:
        open_table(f"frequency/{language}.tsv").preload()


def expect(words: Sequence[str]) -> None:
    """Look at the letters of some words at once, if there are very many: a fiftieth of the time for one at a time. They
    take the place of those that were expected before."""
    _expected.clear()
    plain = [word for word in words if SHORTEST <= len(word) <= LONGEST and _is_plain(word)]
    if _many and plain:
        bits = all_bits_less(plain, LANGUAGES)
        last = len(LANGUAGES) - 1 - bits[::-1].argmax(axis=0)  # of equal ones, as `max` has it
        native = (bits.max(axis=0) >= LOOKS_NATIVE).tolist()
        _expected.update(
            (word, LANGUAGES[at] if looks else "") for word, at, looks in zip(plain, last.tolist(), native, strict=True)
        )
