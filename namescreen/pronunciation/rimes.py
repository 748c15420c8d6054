"""The last syllable of a coined word, read as words that rhyme with it by spelling are read.

A model of letters and sounds weakens the vowel of a last syllable where most words do (a coined -ane like that of
membrane or like that of profane). Readers also go by analogy with whole rimes (R. Glushko, "The organization and
activation of orthographic knowledge in reading aloud", 1979): -ayne as in payne, -ite as in kite, in full. Only rimes
with a silent e or two vowel letters, whose spelling shows a full vowel. `wordlists/build/rimes.py` draws them from
words of one syllable.
"""

from __future__ import annotations

import re
from functools import lru_cache
from operator import itemgetter

from rapidfuzz.distance import Prefix

from ..tables import open_table
from .g2p import joint_model
from .phones import VOWEL_LETTERS, from_marked
from .pronouncing import Pronunciation, pronounce

__all__ = ["RIME", "reading_by_rime"]

RIME = re.compile(r"(?:(?<=q)u)?([aeiouy]+[^aeiouy]+e|[aeiouy]{2,}[^aeiouy]*)$")
"""The letters of a word's last syllable from its vowel on, with a silent e or at least two vowel letters."""
_SEARCHED = 24
"""Readings that are searched for one that ends in the rime."""


@lru_cache(maxsize=1 << 16)
def reading_by_rime(word: str) -> Pronunciation | None:
    """The likeliest reading of a coined word, beginning like its usual one, whose last syllable is read as words of one
    syllable with that rime are; None for a word of one syllable, or if no such words are known."""
    match = RIME.search(word)
    known = open_table("rimes.tsv").get(match[1]) if match and re.search("[aeiouy]", word[: match.start()]) else None
    usual = pronounce(word, 1)
    if not match or not known or not usual:
        return None
    sound, spelling = known.split(" ")
    for letters in (word, word[: match.start(1)] + spelling):
        ending = [
            (reading, probability)
            for reading, probability in joint_model().readings(letters, _SEARCHED)
            if (plain := _unstressed(reading)).endswith(sound)
            and not VOWEL_LETTERS.issuperset(plain[-len(sound) - 1 : -len(sound)])
        ]
        if ending:
            begun = (Prefix.similarity(_unstressed(reading), usual[0].code) for reading, _ in ending)
            reading, probability = max(zip(begun, ending, strict=True), key=itemgetter(0))[1]
            return Pronunciation(from_marked(reading), "spelling", probability)
    return None


def _unstressed(marked: str) -> str:
    return marked.replace("1", "").replace("2", "")
