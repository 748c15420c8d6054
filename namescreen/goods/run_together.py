"""Names in one word that are two of a language which does not write them so: Pimentdoux, on the French market.

An office reads what buyers see at a glance (Court of Justice, C-363/99, Postkantoor: words run together are their sum),
so the two words are judged as if they stood apart."""

from __future__ import annotations

from collections.abc import Iterator

from ..lexicon import lexicon, zipf
from ..lexicon.translation import listed_translations
from .phrases import plain_words

__all__ = ["APART", "written_apart"]

APART = frozenset(("es", "fr", "it", "pt", "ro"))
"""The Romance languages here, in which a noun and what is said of it are two words."""
SHORTEST, SHORTEST_PART = 7, 3
EVERYDAY, SURE = 3.0, 0.8
"""Zipf value from which one of the parts, at least, is a word that all readers see, and how sure the meaning of both is
that counts: the rare sense of a short word is met by chance. Ours, not fitted."""


def written_apart(name: str, language: str) -> Iterator[str]:
    """The two words of a language that a name in one unknown word may be, as one phrase each."""
    words = plain_words(name)
    if language not in APART or len(words) != 1 or len(words[0]) < SHORTEST or lexicon().known(words[0]):
        return
    word = words[0]
    if listed_translations(word, language, compounds=False):
        return
    for at in range(SHORTEST_PART, len(word) - SHORTEST_PART + 1):
        parts = word[:at], word[at:]
        everyday = max(zipf(part, language) for part in parts) >= EVERYDAY
        if everyday and all(_is_sure(part, language) for part in parts):
            yield " ".join(parts)


def _is_sure(part: str, language: str) -> bool:
    return any(sense.score >= SURE for sense in listed_translations(part, language, compounds=False))
