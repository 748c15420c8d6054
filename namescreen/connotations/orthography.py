"""Spelling variants of a name: umlauts written out, a letter left out, syllable boundaries."""

from __future__ import annotations

import re
from functools import lru_cache

__all__ = ["single_deletions", "syllable_boundaries", "without_umlauts"]

_WRITTEN_OUT = {
    "de": {"ä": "ae", "ö": "oe", "ü": "ue"}, "da": {"ø": "oe", "å": "aa"}, "nb": {"ø": "oe", "å": "aa"},
    "sv": {"å": "aa", "ä": "ae", "ö": "oe"}, "fi": {"ä": "ae", "ö": "oe"},
}  # fmt: skip
# Consonant letters that begin a syllable together in most languages written in Latin letters.
_ONSETS = [
    "bl",
    "br",
    "ch",
    "ck",
    "cl",
    "cr",
    "dr",
    "fl",
    "fr",
    "gl",
    "gr",
    "kl",
    "kn",
    "kr",
    "ph",
    "pl",
    "pr",
    "qu",
    "sch",
    "sh",
    "sk",
    "sl",
    "sm",
    "sn",
    "sp",
    "st",
    "str",
    "th",
    "tr",
    "ts",
    "wr",
]
_VOWELS = "aeiouy"


def without_umlauts(word: str, language: str) -> str:
    """`word` as it is spelled without its marked letters: Käse -> Kaese in German."""
    letters = word.lower()
    for marked, plain in _WRITTEN_OUT.get(language, {}).items():
        letters = letters.replace(marked, plain)
    return letters


def single_deletions(letters: str) -> tuple[str, ...]:
    """`letters`, and every spelling with one letter left out. Two words that are one letter apart (changed,
    added, dropped, or two neighbours swapped) share one (the symmetric-delete scheme of W. Garbe, 2012)."""
    return tuple(dict.fromkeys((letters, *(letters[:at] + letters[at + 1 :] for at in range(len(letters))))))


@lru_cache(maxsize=1 << 12)
def syllable_boundaries(word: str) -> frozenset[int]:
    """The places in a folded word where a syllable may begin, and the word's two ends.

    Between two vowels the last consonant, or the last group that can begin a syllable, goes to the second;
    both that place and the one before a lone `s` are boundaries, since languages divide s and a stop differently.
    A word without Latin letters has boundaries everywhere.
    """
    if not word.isascii():
        return frozenset(range(len(word) + 1))
    found = {0, len(word)}
    for inner in re.finditer(f"(?<=[{_VOWELS}])[^{_VOWELS}]+(?=[{_VOWELS}])", word):
        group, end = inner[0], inner.end()
        for size in (3, 2):
            if group[-size:] in _ONSETS and len(group) >= size:
                found.add(end - size)
                break
        else:
            found.add(end - 1)
        if len(group) >= 2:
            found.add(end - 1)
    return frozenset(found)
