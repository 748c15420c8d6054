"""Spoken forms: the ways a word or a numeral is read aloud, as ordinary words."""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import lru_cache
from itertools import pairwise, product

from .tokenization import LEET_LETTERS

__all__ = ["LETTER_NAMES", "MOST_WORDS", "number_words", "spoken_forms", "ways_to_say"]

LETTER_NAMES = {
    "a": "ay", "b": "bee", "c": "see", "d": "dee", "e": "ee", "f": "eff", "g": "gee", "h": "aitch", "i": "eye",
    "j": "jay", "k": "kay", "l": "el", "m": "em", "n": "en", "o": "oh", "p": "pee", "q": "cue", "r": "are",
    "s": "ess", "t": "tee", "u": "you", "v": "vee", "w": "double you", "x": "ex", "y": "why", "z": "zee",
}  # fmt: skip
"""English letter names, spelled as words that the pronunciation dictionary holds (w is two words)."""

MOST_WORDS = 12
"""The words of a name that are said; of a longer one the first."""
_DIGIT_SOUNDS = {"2": ("to", "two"), "4": ("for", "four"), "8": ("ate", "eight"), "1": ("one",), "0": ("oh",)}
_SOUND_SPELLINGS = {"u": "you", "r": "are", "n": "and", "y": "why", "c": "see", "b": "be", "thru": "through",
                    "ur": "your", "ez": "easy", "nite": "night", "lite": "light", "kwik": "quick",
                    "quik": "quick"}  # fmt: skip

_ONES = tuple(
    "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen "
    "seventeen eighteen nineteen".split(" ")
)
_TENS = tuple("zero ten twenty thirty forty fifty sixty seventy eighty ninety".split(" "))


def spoken_forms(words: tuple[str, ...], limit: int = 4) -> tuple[tuple[str, ...], ...]:
    """The ways to say `words`, at most `limit`: the plain reading first, then letters and numerals by name."""
    said: dict[tuple[str, ...], None] = {}
    words = _digits_within_words(words[:MOST_WORDS])
    for choice in product(*(ways_to_say(word) for word in words)):
        said.setdefault(tuple(part for way in choice for part in way))
        if len(said) >= limit:
            break
    return tuple(said) if words else ()


def _digits_within_words(words: tuple[str, ...]) -> tuple[str, ...]:
    """The words with a digit that stands for sounds of one word written out: one after consonants alone (gr8: greight),
    and one before the rest of its own name (5ive: five)."""
    for at, (first, second) in enumerate(pairwise(words)):
        if second in _DIGIT_SOUNDS and not re.search("[aeiouy0-9]", first):
            joined = first + _DIGIT_SOUNDS[second][-1]
        elif first.isdecimal() and first.isascii() and len(first) == 1 and _ONES[int(first)][1:] == second:
            joined = _ONES[int(first)]
        else:
            continue
        return (*words[:at], joined, *_digits_within_words(words[at + 2 :]))
    return words


@lru_cache(maxsize=1 << 16)
def ways_to_say(word: str, known: Callable[[str], bool] | None = None) -> tuple[tuple[str, ...], ...]:
    """The ways one folded word may be read aloud, each as ordinary words, most likely first; never empty.

    With `known` (is this a word people know?), a letter set before a known word is also read by its name
    (iglow: eye glow), and a short unknown word letter by letter (ba: bee ay).
    """
    if word.isdecimal() and word.isascii():
        sounds = tuple((sound,) for sound in _DIGIT_SOUNDS.get(word, ()))
        return tuple(dict.fromkeys((*reversed(sounds), *number_words(word))))
    if word in _SOUND_SPELLINGS:
        spelled_out = _by_letter(word) if len(word) == 1 else (word,)
        return ((_SOUND_SPELLINGS[word],), spelled_out)
    if not (word.isascii() and word.isalnum()):
        return ((word,),)
    if not word.isalpha():
        as_sounds = re.sub(r"\d", lambda m: f" {_DIGIT_SOUNDS.get(m[0], (_ONES[int(m[0])],))[0]} ", word).split()
        one_by_one = tuple(part for piece in as_sounds for part in (_by_letter(piece) if len(piece) == 1 else (piece,)))
        ways = [one_by_one, ("".join(LEET_LETTERS.get(c, c) for c in word),)]
        if len(as_sounds) == 2:
            ways.insert(0, ("".join(as_sounds),))
        return tuple(dict.fromkeys(ways))
    ways = [(word,)]
    if len(word) == 1 or not re.search("[aeiouy]", word):
        ways.insert(0, _by_letter(word))
    elif word[0] == "x" and word[1] not in "aeiouy":
        # No English syllable begins with an x and a consonant (H. Giegerich, English Phonology, 1992, section 6.3): the
        # x is said by its name, as in x-ray.
        ways.insert(0, (LETTER_NAMES["x"] + word[1:],))
    elif known is not None and not known(word):
        if len(word) <= 3:
            ways.append(_by_letter(word))
        elif known(word[1:]):
            ways.append((*_by_letter(word[0]), word[1:]))
    return tuple(ways)


def _by_letter(word: str) -> tuple[str, ...]:
    return tuple(part for letter in word for part in LETTER_NAMES[letter].split())


def number_words(digits: str) -> tuple[tuple[str, ...], ...]:
    """The usual ways to read a numeral aloud, most likely first: 360 is three sixty, or three hundred sixty."""
    value = int(digits)
    one_by_one = tuple(_ONES[int(d)] for d in digits)
    if len(digits) > 1 and digits[0] == "0":
        return (one_by_one,)
    if value < 100:
        return (_below_hundred(value),)
    if value < 1000:
        rest = _below_hundred(value % 100) if value % 100 else ()
        full = (_ONES[value // 100], "hundred", *rest)
        short = (_ONES[value // 100], *rest) if value % 100 >= 10 else ()
        return tuple(dict.fromkeys(way for way in (short, full, one_by_one) if way))
    if value < 10_000 and value % 100:
        pairs = (*_below_hundred(value // 100), *(("oh",) if value % 100 < 10 else ()), *_below_hundred(value % 100))
        return (pairs, one_by_one)
    if value < 1_000_000 and value % 1000 == 0:
        return ((*number_words(str(value // 1000))[-1 if value < 10_000 else 0], "thousand"), one_by_one)
    return (one_by_one,)


def _below_hundred(value: int) -> tuple[str, ...]:
    if value < 20:
        return (_ONES[value],)
    return (_TENS[value // 10], *((_ONES[value % 10],) if value % 10 else ()))
