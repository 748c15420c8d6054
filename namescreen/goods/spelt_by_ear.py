"""Strange words that are a word for the goods as it is heard, in any language: xokolat for chocolate, kfé for café; and
words without their vowels: lthr for leather.

Two spellings are compared by a key of what readers of Europe's languages hear in letters, so that no list of ways is
walked. A misspelling is as descriptive as the word (TMEP 1209.03(j); EUTMR Article 7(1)(c)). From memory of "
"spelling."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import lru_cache

from rapidfuzz.distance import Levenshtein

from ..expressions import expression
from ..lexicon.translation import equivalents_in
from ..text import fold
from .phrases import items, plain_words
from .wording import in_english

__all__ = ["is_nearly", "nearly_spelt_for", "skeleton", "spelt_for", "without_vowels"]

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
SHORTEST_STEM, STEM_WITH_ERROR, STEM_WITH_VOWELS = 5, 8, 7
"""The fewest letters of a stem by which a word is known whatever its ending, of one that has a letter wrong, and of one
that has two vowels wrong, as they are heard: of shorter ones another ending or letter makes another word. Ours."""
_ENDING = expression(r"(?:[aeiou]s?|s)$")


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


@lru_cache(maxsize=512)
def _own_stems(goods: str, language: str) -> Mapping[str, tuple[str, str]]:
    """What a language calls goods, and what they are said to be of or for, each with the English word, by its stem."""
    english = dict.fromkeys(word for item in items(in_english(goods).english) for word in (item.head, *item.modifiers))
    named = ((fold(one), word) for word in english for one in equivalents_in(word, language) if " " not in one)
    told = ((_stem(one), (one, word)) for one, word in named if one.isascii() and one.isalpha())
    return {stem: both for stem, both in reversed([*told]) if len(stem) >= SHORTEST_STEM}


def _stem(word: str) -> str:
    """What is heard of a folded word without its ending."""
    return key(_ENDING.sub("", word))


@lru_cache(maxsize=1 << 13)
def nearly_spelt_for(word: str, goods: str, language: str) -> tuple[str, str]:
    """The word of a language for goods that a strange folded `word` is one with another ending or a letter or two wrong
    of (aquarella, Aquarell), and the English one; empty words if of none. Of a short word all must be heard."""
    if not word.isascii() or not word.isalpha():
        return "", ""
    mine = _stem(word)
    near = ((_errors(mine, stem), stem) for stem in _own_stems(goods, language))
    _, best = min((one for one in near if one[0] <= 2), default=(0, ""))
    return _own_stems(goods, language).get(best, ("", ""))


def is_nearly(word: str, other: str) -> bool:
    """Whether two folded words are one as heard, but for the ending or a letter or two (aquarelle, acquerello)."""
    stems = _stem(word), _stem(other)
    return min(map(len, stems)) >= SHORTEST_STEM and _errors(*stems) <= 2


def _errors(one: str, other: str) -> int:
    """How many letters of a stem are wrong; 3 if more than its length allows, or not the same begins it."""
    if one == other:
        return 0
    most = min(len(one), len(other))
    vowels_alone = most + 1 >= STEM_WITH_VOWELS and skeleton(one) == skeleton(other)
    allowed = 2 if vowels_alone else int(most >= STEM_WITH_ERROR)
    errors = Levenshtein.distance(one, other, score_cutoff=2)
    return errors if errors <= allowed and one[:1] == other[:1] else 3


def without_vowels(word: str, describing: Iterable[str], own: Iterable[str]) -> str:
    """The word that describes goods, or names them (`own`), which a folded word is without its vowels; "" if none."""
    if _VOWELS.search(word) or len(word) < LEAST_OWN:
        return ""
    bones = _DOUBLE.sub(r"\1", word)
    names = next((one for one in own if skeleton(one) == bones), "")
    if names or len(bones) < LEAST_BONES:
        return names
    return next((one for one in describing if skeleton(one) == bones and one[0] == word[0]), "")
