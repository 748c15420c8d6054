"""What a name is: folded letters, words, and the ways it is read aloud.

Every part of the program takes names through `parse`, so that spacing, case, accents and punctuation mean
the same everywhere. Scripts other than Latin are kept as they are, not dropped.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache
from itertools import product

__all__ = ["LETTER_NAMES", "Name", "divide", "fold", "number_words", "parse", "split_compound", "ways_to_say"]

MAX_LENGTH = 300
"""Longer names are cut here before any work: no office registers word marks near this length (common
practice, no source), and every cost below is bounded by it."""

# Latin letters that Unicode does not decompose, as they are commonly transcribed in English.
_LIGATURES = str.maketrans(
    {"æ": "ae", "œ": "oe", "ø": "o", "đ": "d", "ð": "d", "þ": "th", "ł": "l", "ħ": "h", "ı": "i", "ŋ": "ng",
     "ƒ": "f", "ß": "ss", "ĸ": "k", "ŧ": "t"}
)  # fmt: skip
# Scripts whose combining marks are accents; elsewhere (Devanagari, Arabic, kana) marks carry the sound.
_ACCENTED_SCRIPTS = ("LATIN", "GREEK", "CYRILLIC")

LETTER_NAMES = {
    "a": "ay", "b": "bee", "c": "see", "d": "dee", "e": "ee", "f": "eff", "g": "gee", "h": "aitch", "i": "eye",
    "j": "jay", "k": "kay", "l": "el", "m": "em", "n": "en", "o": "oh", "p": "pee", "q": "cue", "r": "are",
    "s": "ess", "t": "tee", "u": "you", "v": "vee", "w": "double you", "x": "ex", "y": "why", "z": "zee",
}  # fmt: skip
"""English letter names, spelled as words that the pronunciation dictionary holds (w is two words)."""

_PLAIN = re.compile(r"[A-Z]*[a-z]*(?: +[A-Z]*[a-z]*)*")
"""Names that are divided at their spaces alone, as most are."""

_SYMBOLS = {"&": " and ", "+": " plus ", "@": " at ", "%": " percent ", "#": " number ", "№": " number "}
_INSIDE_A_WORD = {"!": "i", "$": "s", "@": "a", "0": "o", "1": "i", "3": "e", "5": "s", "7": "t"}
_DIGIT_SOUNDS = {"2": ("to", "two"), "4": ("for", "four"), "8": ("ate", "eight"), "1": ("one",), "0": ("oh",)}
_SOUND_SPELLINGS = {"u": "you", "r": "are", "n": "and", "y": "why", "c": "see", "b": "be", "thru": "through",
                    "ur": "your", "nite": "night", "lite": "light", "kwik": "quick", "quik": "quick"}  # fmt: skip

_ONES = tuple(
    "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen "
    "seventeen eighteen nineteen".split(" ")
)
_TENS = tuple("zero ten twenty thirty forty fifty sixty seventy eighty ninety".split(" "))


@dataclass(frozen=True, slots=True)
class Name:
    """A name, divided and folded once.

    `text` is the name as given, trimmed; `words` its folded words, in order; `spoken` the ways it may be read
    aloud, each a tuple of ordinary words, most likely first, never empty for a name with words.
    """

    text: str
    words: tuple[str, ...]
    spoken: tuple[tuple[str, ...], ...]

    @property
    def letters(self) -> str:
        """The folded letters and digits with all division removed."""
        return "".join(self.words)

    def __str__(self) -> str:
        return self.text


def fold(text: str) -> str:
    """`text` without what the ear and a hurried eye ignore: case, accents, ligatures, width, control characters.

    Idempotent. Accents go from Latin, Greek and Cyrillic letters; marks of other scripts stay.
    """
    if text.isascii() and text.isprintable():
        return text.lower()
    decomposed = unicodedata.normalize("NFKD", unicodedata.normalize("NFKC", text).casefold())
    kept: list[str] = []
    base_takes_accents = False
    for character in decomposed:
        kind = unicodedata.category(character)
        if kind in ("Mn", "Me"):
            if not base_takes_accents:
                kept.append(character)
        elif kind.startswith("C"):
            if character in "\t\n\r":
                kept.append(" ")
        else:
            base_takes_accents = unicodedata.name(character, "").startswith(_ACCENTED_SCRIPTS)
            kept.append(character)
    return unicodedata.normalize("NFC", "".join(kept).translate(_LIGATURES))


def divide(text: str) -> tuple[str, ...]:
    """The folded words of `text`: split at spaces, hyphens, punctuation, camel case and digits.

    Initials with stops (B.V.D.) are one word; an apostrophe joins (women's -> womens); & + @ % # are words.
    """
    text = unicodedata.normalize("NFKC", text)[:MAX_LENGTH]
    if _PLAIN.fullmatch(text):
        return tuple(text.lower().split())
    text = re.sub(r"(?<=\w)[!$@](?=\w)", lambda m: _INSIDE_A_WORD[m[0]], text)
    text = re.sub(r"\b((?:[^\W\d_]\.\s?){2,}[^\W\d_]?)(?![^\W\d_])", lambda m: re.sub(r"[.\s]", "", m[1]) + " ", text)
    text = re.sub(r"(?<=[^\W\d_])['’‘`´](?=[^\W\d_])", "", text)
    text = re.sub(r"(?<=[a-zß-ÿ])(?=[A-ZÀ-Þ])", " ", text)
    for symbol, word in _SYMBOLS.items():
        text = text.replace(symbol, word)
    folded = fold(text)
    folded = "".join(character if unicodedata.category(character)[0] in "LNM" else " " for character in folded)
    folded = re.sub(r"(?<=\d)(?=[^\W\d_]{2})(?!(?:st|nd|rd|th)\b)|(?<=[^\W\d_]{2})(?=\d)", " ", folded)
    return tuple(folded.split())


@lru_cache(maxsize=65536)
def parse(text: str) -> Name:
    """The one way in: `text` as a `Name`. Never fails; a text without letters or digits has no words."""
    words = divide(text)
    shown = text[:MAX_LENGTH]
    if not (shown.isascii() and shown.isprintable()):
        shown = "".join(c for c in shown if unicodedata.category(c) not in ("Cc", "Cf", "Cs") or c in "\t\n ")
    return Name(" ".join(shown.split()), words, _spoken(words))


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


def _spoken(words: tuple[str, ...], limit: int = 4) -> tuple[tuple[str, ...], ...]:
    """The ways to say `words`, at most `limit`: the plain reading first, then letters and numerals by name."""
    said: dict[tuple[str, ...], None] = {}
    for choice in product(*(ways_to_say(word) for word in words[:12])):
        said.setdefault(tuple(part for way in choice for part in way))
        if len(said) >= limit:
            break
    return tuple(said) if words else ()


@lru_cache(maxsize=1 << 16)
def ways_to_say(word: str, known: Callable[[str], bool] | None = None) -> tuple[tuple[str, ...], ...]:
    """The ways one folded word may be read aloud, each as ordinary words, most likely first; never empty.

    With `known` (is this a word people know?), a letter set before a known word is also read by its name
    (ishine: eye shine), and a short unknown word letter by letter (ba: bee ay).
    """
    if word.isdecimal() and word.isascii():
        sounds = tuple((sound,) for sound in _DIGIT_SOUNDS.get(word, ()))
        return tuple(dict.fromkeys((*reversed(sounds), *number_words(word))))
    if word in _SOUND_SPELLINGS:
        spelled_out = _by_letter(word) if len(word) == 1 else (word,)
        return ((_SOUND_SPELLINGS[word],), spelled_out)
    if not (word.isascii() and word.isalnum()):
        return ((word,),)
    if any(c.isdigit() for c in word):
        as_sounds = re.sub(r"\d", lambda m: f" {_DIGIT_SOUNDS.get(m[0], (_ONES[int(m[0])],))[0]} ", word).split()
        one_by_one = tuple(part for piece in as_sounds for part in (_by_letter(piece) if len(piece) == 1 else (piece,)))
        ways = [one_by_one, ("".join(_INSIDE_A_WORD.get(c, c) for c in word),)]
        if len(as_sounds) == 2:
            ways.insert(0, ("".join(as_sounds),))
        return tuple(dict.fromkeys(ways))
    ways = [(word,)]
    if len(word) == 1 or not re.search("[aeiouy]", word):
        ways.insert(0, _by_letter(word))
    elif word[0] == "x" and word[1] not in "aeiouy":
        ways.insert(0, ("e" + word,))  # XCEED, XTRA: the letter's own name begins with the vowel
    elif known is not None and not known(word):
        if len(word) <= 3:
            ways.append(_by_letter(word))
        elif len(word) >= 4 and known(word[1:]):
            ways.append((*_by_letter(word[0]), word[1:]))
        elif "j" in word:
            ways.append((word.replace("j", "y"),))  # j as in most languages of Europe (IPA: the letter is its sign)
    return tuple(ways)


def _by_letter(word: str) -> tuple[str, ...]:
    return tuple(part for letter in word for part in LETTER_NAMES[letter].split())


def split_compound(word: str, zipf: Callable[[str], float], least: int = 3) -> tuple[str, ...]:
    """`word` as two known words (herbwell -> herb well) where that reads better than one, else as it is.

    `zipf` gives a word's frequency on the Zipf scale (log10 of occurrences per thousand million words; 0 for
    unknown). A word that is itself known stays whole. Parts have at least `least` letters, and both must be
    common enough (Zipf 3, about once in a million words) for a reader to see them without help.
    """
    if len(word) < 2 * least or not word.isascii() or zipf(word) >= 2.0:
        return (word,)
    best: tuple[float, tuple[str, ...]] = (0.0, (word,))
    for cut in range(least, len(word) - least + 1):
        left, right = word[:cut], word[cut:]
        common = min(zipf(left), zipf(right))
        if common >= 3.0 and common + min(len(left), len(right)) / 4 > best[0]:
            best = (common + min(len(left), len(right)) / 4, (left, right))
    return best[1]
