"""Tokenization: the folded words of a name, split at spaces, punctuation, camel case and digits."""

from __future__ import annotations

import re
import unicodedata

from ..expressions import expression
from .folding import fold

__all__ = ["LEET_LETTERS", "MAX_LENGTH", "tokenize"]

MAX_LENGTH = 300
"""Longer names are cut to this length: no office registers word marks near this length (common
practice, no source), and every cost below is bounded by it."""

_PLAIN = expression(r"[A-Z]*[a-z]*(?: [A-Z]*[a-z]*)*")
"""Names that are split at their spaces alone, as most are; one space at a time, so that many of them can be met in one
way only."""

_SYMBOLS = {"&": " and ", "+": " plus ", "@": " at ", "%": " percent ", "#": " number ", "№": " number "}
LEET_LETTERS = {"!": "i", "$": "s", "@": "a", "0": "o", "1": "i", "3": "e", "5": "s", "7": "t"}
"""Digits and symbols that stand for a letter inside a word (sh0p)."""


_ELISION = (
    r"(?<![^\W_])(d|l|j|m|n|s|t|c|(?:jus|lors|puis)?qu|(?:d|n)ell|[ads]ull|d?all|quell|bell|sant|un)"
    r"['’‘`´](?=[aeiouyhœæà-öø-ÿ][^\W\d_])"
)
"""A French or Italian word that has lost its vowel before another word: d'hiver, l'étoile, dell'orto."""


def tokenize(text: str) -> tuple[str, ...]:
    """The folded words of `text`: split at spaces, hyphens, punctuation, camel case and digits.

    Initials with stops (B.V.D.) are one word; an apostrophe joins (women's -> womens), save after a French or
    Italian elision (rose d'hiver -> rose d hiver); & + @ % # are words.
    """
    text = unicodedata.normalize("NFKC", text)[:MAX_LENGTH]
    if _PLAIN.fullmatch(text):
        return tuple(text.lower().split())
    text = re.sub(r"(?<=\w)[!$@](?=\w)", lambda m: LEET_LETTERS[m[0]], text)
    text = re.sub(r"\b((?:[^\W\d_]\.\s?){2,}[^\W\d_]?)(?![^\W\d_])", lambda m: re.sub(r"[.\s]", "", m[1]) + " ", text)
    text = re.sub(_ELISION, r"\1 ", text, flags=re.IGNORECASE)
    text = re.sub(r"(?<=[^\W\d_])['’‘`´](?=[^\W\d_])", "", text)
    text = re.sub(r"(?<=[a-zß-ÿ])(?=[A-ZÀ-Þ])", " ", text)
    for symbol, word in _SYMBOLS.items():
        text = text.replace(symbol, word)
    folded = fold(text)
    folded = "".join(character if unicodedata.category(character)[0] in "LNM" else " " for character in folded)
    folded = re.sub(r"(?<=\d)(?=[^\W\d_]{2})(?!(?:st|nd|rd|th)\b)|(?<=[^\W\d_]{2})(?=\d)", " ", folded)
    return tuple(folded.split())
