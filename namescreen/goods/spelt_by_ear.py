"""Strange words that are a word for the goods as it is heard, in any language: xokolat for chocolate, kfé for café; and
words without their vowels: lthr for leather.

Two spellings are compared by a key of what readers of Europe's languages hear in letters, so that no list of ways is
walked. A misspelling is as descriptive as the word (TMEP 1209.03(j); EUTMR Article 7(1)(c)). From memory
of spelling."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import lru_cache

from rapidfuzz.distance import Levenshtein

from ..expressions import expression
from ..lexicon.translation import equivalents_in, translations
from ..text import fold
from .phrases import items, plain_words
from .wording import in_english

__all__ = ["is_nearly", "nearly_spelt_for", "skeleton", "spelt_for", "without_vowels"]

_LONG = (
    ("tsch", "C"), ("sch", "S"), ("tch", "C"), ("sh", "S"), ("cz", "C"), ("sz", "S"), ("ck", "k"), ("cq", "k"),
    ("ph", "f"), ("th", "t"), ("rh", "r"), ("dt", "t"), ("tz", "s"), ("kw", "kv"),
)  # fmt: skip
_HEARD = (
    ("gue", "ge"), ("gui", "gi"), ("aeu", "oi"), ("eau", "o"), ("qu", "k"), ("eu", "oi"), ("oy", "oi"), ("ei", "ai"),
    ("ay", "ai"), ("ey", "ai"), ("ie", "i"), ("ee", "i"), ("ea", "i"), ("oo", "u"), ("ou", "u"), ("ij", "ai"),
    ("ce", "se"), ("ci", "si"), ("c", "k"), ("q", "k"), ("z", "s"), ("w", "v"), ("y", "i"), ("j", "i"),
)  # fmt: skip
"""What is written, and what is heard in it in any language: `_LONG` before the letters of a language, the others after
them; the longer before what it begins or ends with."""
_LENGTHENED = (("ah", "a"), ("eh", "e"), ("ih", "i"), ("oh", "o"), ("uh", "u"))
_AT_THE_BACK, _LETTER_X = (("ch", "X"),), (("x", "ks"),)
_IN_LANGUAGE: Mapping[str, tuple[tuple[str, str], ...]] = {
    "de": (*_AT_THE_BACK, *_LENGTHENED, *_LETTER_X),
    **dict.fromkeys(("nl", "pl", "cs", "sk"), (*_AT_THE_BACK, *_LETTER_X)),
    "it": (("ch", "k"), ("h", ""), *_LETTER_X),
    "es": (("ch", "S"), ("x", "S"), ("j", "X"), ("h", "")),
    "pt": (("ch", "S"), ("x", "S"), ("j", "J"), ("h", "")),
    "fr": (("ch", "S"), ("j", "J"), ("h", ""), *_LETTER_X),
}
"""What is heard in ch, h, j and x in a language; in others as below."""
_ELSEWHERE = (("ch", "S"), *_LETTER_X)
_WEAK_E = frozenset(("da", "de", "fr", "nb", "nl"))
"""Languages whose e at the end is an ending, or is not heard."""
_VOWELS = expression(r"[aeiouy]+")
_DOUBLE = expression(r"(.)\1+")
_ALIKE = (("C", "S"), ("S", "C"), ("X", "k"))
SHORTEST, LEAST_HEARD, LEAST_BONES, LEAST_OWN = 4, 4, 4, 3
"""The fewest letters of a word that another is written for, and of what is heard in it; and the fewest consonants of
one written without vowels, of words that describe goods and of those that name them."""
SHORTEST_STEM, STEM_WITH_ERROR, STEM_WITH_VOWELS = 5, 8, 7
"""The fewest letters of a stem by which a word is known whatever its ending, of one that has a letter wrong, and of one
that has two vowels wrong, as they are heard: of shorter ones another ending or letter makes another word. Ours."""
_ENDING = expression(r"(?:[aeiou]s?|s)$")


@lru_cache(maxsize=1 << 13)
def key(word: str, language: str) -> str:
    """What readers of a language hear in the letters of a folded word, at first hand: one sign for a sound, none
    doubled, and no weak e at the end."""
    text = word
    for written, heard in (*_LONG, *_IN_LANGUAGE.get(language, _ELSEWHERE), *_HEARD):
        text = text.replace(written, heard)
    text = _DOUBLE.sub(r"\1", text)
    return text.removesuffix("e") if language in _WEAK_E else text


@lru_cache(maxsize=1 << 13)
def skeleton(word: str) -> str:
    """The consonants of a folded word, none doubled."""
    return _DOUBLE.sub(r"\1", _VOWELS.sub("", word))


@lru_cache(maxsize=512)
def _own_words(goods: str, language: str) -> Mapping[str, str]:
    """What a language calls goods, and what they are said to be of or for, each folded word with the English one; of
    goods that are stated in it their own words too."""
    stated = in_english(goods)
    listed = items(stated.english)
    english = dict.fromkeys(word for item in listed for word in (item.head, *item.modifiers))
    named = [(fold(one), word) for word in english for one in equivalents_in(word, language)]
    if stated.language == language:
        wholes = (" ".join((*item.modifiers, item.head)) for item in listed)
        meant = {**english, **dict.fromkeys(wholes)}
        for own in plain_words(goods):
            means = next((one.english for one in translations(own, language) if one.english in meant), "")
            named += [(own, means)] if means else []
    found: dict[str, str] = {}
    for one, word in named:
        if one.isascii() and one.isalpha() and len(one) >= SHORTEST:
            found.setdefault(one, word)
    return found


@lru_cache(maxsize=1 << 13)
def spelt_for(word: str, goods: str, language: str) -> tuple[str, str]:
    """The word of a language for goods that an unknown folded `word` is another spelling of, and the English one; empty
    words if of none."""
    if len(word) < LEAST_OWN or not word.isascii() or not word.isalpha():
        return "", ""
    own = _own_words(goods, language)
    mine = key(word, language)
    ways = {mine, *(mine.replace(one, other) for one, other in _ALIKE)}
    heard = ((one, key(one, language)) for one in own)
    found = next((one for one, sound in heard if len(sound) >= LEAST_HEARD and sound in ways), "")
    if not found and not _VOWELS.search(word[:-1]):  # kfe
        bones = skeleton(key(word[:-1], language))
        found = next((one for one in own if skeleton(key(one[:-1], language)) == bones and one[-1] == word[-1]), "")
    return (found, own[found]) if found and found != word else ("", "")


@lru_cache(maxsize=512)
def _own_stems(goods: str, language: str) -> Mapping[str, tuple[str, str]]:
    """The same words by their stems."""
    told = ((_stem(one, language), (one, word)) for one, word in _own_words(goods, language).items())
    return {stem: both for stem, both in reversed([*told]) if len(stem) >= SHORTEST_STEM}


def _stem(word: str, language: str) -> str:
    """What is heard of a folded word without its ending."""
    return key(_ENDING.sub("", word), language)


@lru_cache(maxsize=1 << 13)
def nearly_spelt_for(word: str, goods: str, language: str) -> tuple[str, str]:
    """The word of a language for goods that a strange folded `word` is one with another ending or a letter or two wrong
    of (aquarella, Aquarell), and the English one; empty words if of none. Of a short word all must be heard."""
    if not word.isascii() or not word.isalpha():
        return "", ""
    mine = _stem(word, language)
    near = ((_errors(mine, stem), stem) for stem in _own_stems(goods, language))
    _, best = min((one for one in near if one[0] <= 2), default=(0, ""))
    return _own_stems(goods, language).get(best, ("", ""))


def is_nearly(word: str, other: str) -> bool:
    """Whether two folded words are one as heard, but for the ending or a letter or two (aquarelle, acquerello)."""
    stems = _stem(word, ""), _stem(other, "")
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
    bones = skeleton(word)
    names = next((one for one in own if skeleton(one) == bones), "")
    if names or len(bones) < LEAST_BONES:
        return names
    return next((one for one in describing if skeleton(one) == bones and one[0] == word[0]), "")
