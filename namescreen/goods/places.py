"""Names of places and the words made from them: does a name tell where goods come from (TMEP 1210; EUTMR Article
7(1)(c); TMA 1994 s. 3(1)(c))?

WordNet's places and their adjectives, a list of our own and towns of GeoNames (wordlists/places.tsv)."""

from __future__ import annotations

import re
from functools import lru_cache
from typing import NamedTuple

from ..lexicon import kinds, languages, lexicon, translations, zipf
from ..tables import open_table
from .broader import names_above

__all__ = ["Place", "is_settled_place", "place_meant", "place_of"]

WILD = frozenset(("island", "body of water", "geological formation", "desert", "natural elevation", "celestial body",
                  "constellation"))  # fmt: skip
"""What an uninhabited place is, in WordNet; inhabited islands, mountains and rivers are in our own list."""
OBSCURE = 1.9
"""Zipf value below which few buyers know a place: about one in ten million words (TMEP 1210.04(c)). Ours."""


_INHABITANTS = {
    ("ana", "ano", "anas", "anos"): ("a", "o", "", "ia"),
    ("ense", "ese", "esa", "esi", "eses", "enses"): ("a", "o", "e", ""),
    ("er",): ("", "en", "e"),
    ("isch", "ische", "ischer", "isches"): ("", "en", "e", "a"),
    ("ais", "aise", "ois", "oise", "ien", "ienne"): ("", "e", "s"),
    ("ian", "ians"): ("", "ia", "y"),
    ("ner",): ("en", "n"),
    ("se",): ("", "en"),
    ("ski", "ska", "skie"): ("", "a", "o", "sk"),
    ("sk", "ske"): ("",),
    ("ino", "ina", "ini"): ("e", "ia"),
    ("eno", "ena", "enos", "enas"): ("a", "o", ""),
}
"""Endings of words for what comes from a place, or lives there, in Spanish, Italian, Portuguese, German, French,
English, Dutch, Polish and Swedish, and in what the place's own name may end instead; from memory of their grammars."""
_ENDINGS = tuple(ending for endings in _INHABITANTS for ending in endings)
LEAST_NAME, LEAST_STEM = 5, 4
"""The fewest letters of a place's name, and of what is left of it, by which readers know it again."""

IN_A_DICTIONARY = 0.8
"""How sure a translation is that a dictionary gives; what a word is only guessed to be made of is less."""


class Place(NamedTuple):
    """A place that a word names or is made from; `home` if people live and make things there, and buyers know of it;
    `small` if they know it and expect no more than food and drink to come from it."""

    name: str
    home: bool
    small: bool = False


@lru_cache(maxsize=1 << 14)
def place_of(word: str) -> Place | None:
    """The place that the folded `word` (or words) mostly stands for, None if it is something else first; for a word
    that no table has, the place whose inhabitant or adjective it is by its form (dresdener)."""
    return _named(word) or _from_its_name(word) or _spelt_out(word)


def _spelt_out(word: str) -> Place | None:
    """The place whose umlaut is written with an e (allgaeu)."""
    plain = re.sub("(?<=[aou])e", "", word)
    return _named(plain) if plain != word and len(plain) >= LEAST_NAME and not lexicon().known(word) else None


def place_meant(word: str, english: str) -> Place | None:
    """The place that the `english` sense of a foreign `word` names; None if it is a common noun too and the word no
    name of the place (a Romanian tyre is of rubber)."""
    common = any(form == english for one in lexicon().senses(english, labelled=False) for form in one.words)
    return None if common and word not in open_table("foreign_places.tsv") else place_of(english)


@lru_cache(maxsize=1 << 14)
def _from_its_name(word: str) -> Place | None:
    if not word.endswith(_ENDINGS):
        return None
    if kinds(word) or lexicon().known(word) or f"find {word}" in open_table("naming_ideas.tsv"):
        return None
    for endings, instead in _INHABITANTS.items():
        for ending in endings:
            stem = word.removesuffix(ending)
            names = (stem + last for last in instead if stem != word and len(stem) >= LEAST_STEM)
            for name in names:
                place = _named(name) if len(name) >= LEAST_NAME else None
                if place is not None and place.home:
                    return None if _says_something_else(word) else place
    return None


def _says_something_else(word: str) -> bool:
    """Whether a language has the word for what is not called after the place: persianas, blinds."""
    senses = (translations(word, language) for language in languages())
    leading = (found[0] for found in senses if found)
    return any(one.score >= IN_A_DICTIONARY and one.english[:LEAST_STEM] != word[:LEAST_STEM] for one in leading)


def _named(word: str) -> Place | None:
    listed = open_table("places.tsv").get(word)
    if listed:
        kind, _, name = listed.partition("|")
        return Place(name, kind == "home", kind == "small")
    if len(word) < 3 or "place" not in kinds(word):  # va and ca are states only on envelopes
        return None
    senses = lexicon().senses(word, labelled=False)
    if not senses:
        return None
    leading = senses[0]
    if not leading.count and any(word in other.words and _is_clipped(word, other.words) for other in senses[1:]):
        return None  # no text has the place rather than the beast that is so called for short: a hippo
    written = next((form for form in leading.words if form.lower() == word), word)
    if leading.domain == "adj.pert" and written[:1].isupper():
        return Place(written, True)
    if leading.domain not in ("noun.location", "noun.object") or not written[:1].isupper():
        return None
    return Place(written, not names_above(leading.id) & WILD and min(map(zipf, word.split())) >= OBSCURE)


def _is_clipped(word: str, names: tuple[str, ...]) -> bool:
    return any(name != word and name.startswith(word) for name in names)


def is_settled_place(word: str) -> bool:
    """Whether `word` is mostly a place where people live and trade, and that buyers know (TMEP 1210.02)."""
    place = place_of(word)
    return place is not None and place.home
