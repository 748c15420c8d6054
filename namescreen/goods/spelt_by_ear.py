"""Strange words that are a word for the goods as it is heard, in any language: xokolat for chocolate, kfé for café; and
words without their vowels: lthr for leather.

Two spellings are compared by a key of what readers of Europe's languages hear in letters, so that no list of ways is
walked. A misspelling is as descriptive as the word (TMEP 1209.03(j); EUTMR Article 7(1)(c)). From memory of "
"spelling."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import lru_cache

from ..expressions import expression
from ..lexicon.translation import equivalents_in
from ..text import fold
from .phrases import items, plain_words
from .wording import in_english

__all__ = ["skeleton", "spelt_for", "without_vowels"]

_HEARD = (
    ("sch", "S"), ("sh", "S"), ("tsch", "C"), ("tch", "C"), ("cz", "C"), ("sz", "S"), ("ch", "S"), ("ck",
    "k"), ("cq", "k"),
    ("ph", "f"), ("th", "t"), ("rh", "r"), ("dt", "t"), ("tz", "s"), ("kw", "kv"), ("qu", "k"), ("gu", "g"),
    ("aeu", "oi"), ("eau", "o"), ("au", "au"), ("eu", "oi"), ("oy", "oi"), ("ei", "ai"), ("ay", "ai"), ("ey", "ai"),
    ("ie", "i"), ("ee", "i"), ("ea", "i"), ("oo", "u"), ("ou", "u"), ("ij", "ai"), ("ah", "a"), ("eh", "e"), ("oh",
    "o"),
    ("uh", "u"), ("ih", "i"), ("ce", "se"), ("ci", "si"), ("c", "k"), ("q", "k"), ("x", "S"), ("z", "s"), ("w", "v"),
    ("y", "i"), ("j", "i"), ("h", ""),
)  # fmt: skip
"""What is written, and what is heard in it, the longest first."""
_VOWELS = expression(r"[aeiouy]+")
_DOUBLE = expression(r"(.)\1+")
_ALIKE = (("S", "k"), ("S", "s"), ("C", "S"))
SHORTEST, LEAST_BONES, LEAST_OWN = 4, 4, 3
"""The fewest letters of a word that another is written for; and the fewest consonants of one written without vowels, of
words that describe goods and of those that name them."""


@lru_cache(maxsize=1 << 13)
def key(word: str) -> str:
    """What readers hear in the letters of a folded word, at first hand: one sign for a sound, none doubled, and no e or
    o at the end."""
    text = word
    for written, heard in _HEARD:
        text = text.replace(written, heard)
    return _DOUBLE.sub(r"\1", text).rstrip("eo") or text


@lru_cache(maxsize=1 << 13)
def skeleton(word: str) -> str:
    """The consonants of a folded word, none doubled."""
    return _DOUBLE.sub(r"\1", _VOWELS.sub("", word))


@lru_cache(maxsize=512)
def _own_keys(goods: str, language: str) -> Mapping[str, str]:
    """The words for goods by their keys: as stated, and as a language calls their heads."""
    stated = [word for word in plain_words(goods) if len(word) >= SHORTEST]
    heads = (item.head for item in items(in_english(goods).english))
    named = (name for head in heads for name in equivalents_in(head, language)) if language else ()
    words = dict.fromkeys((*stated, *(fold(one) for one in named if " " not in one and len(one) >= SHORTEST)))
    return {key(word): word for word in reversed([*words])}


def spelt_for(word: str, goods: str, language: str) -> str:
    """The word for the goods, of a language, that an unknown folded `word` is another spelling of; "" if of none."""
    if len(word) < LEAST_OWN or not word.isascii() or not word.isalpha():
        return ""
    own = _own_keys(goods, language)
    mine = key(word)
    ways = {mine, *(mine.replace(one, other) for one, other in _ALIKE)}
    found = next((own[way] for way in sorted(ways) if way in own), "")
    if not found and not _VOWELS.search(word[:-1]):  # kfe
        alike = (one for one in own.values() if skeleton(key(one)) == skeleton(mine) and one[-1] == word[-1])
        found = next(alike, "")
    return found if found != word else ""


def without_vowels(word: str, describing: Iterable[str], own: Iterable[str]) -> str:
    """The word that describes goods, or names them (`own`), which a folded word is without its vowels; "" if none."""
    if _VOWELS.search(word) or len(word) < LEAST_OWN:
        return ""
    bones = _DOUBLE.sub(r"\1", word)
    names = next((one for one in own if skeleton(one) == bones), "")
    if names or len(bones) < LEAST_BONES:
        return names
    return next((one for one in describing if skeleton(one) == bones and one[0] == word[0]), "")
