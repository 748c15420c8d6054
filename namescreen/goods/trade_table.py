"""The table of words of trades (wordlists/trade_words.tsv), as it stands: terms of art, and words that labels and shops
say of wares, in English and in other languages with their English sense.

A term is told of areas: goods of one sort. Written from memory and incomplete."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import lru_cache
from typing import NamedTuple

from ..lexicon import lexicon
from ..lexicon.foreign_forms import endings_of, possible_bases
from ..tables import open_table
from ..text import fold
from ..text.inflection import other_number
from .words import base_form

__all__ = [
    "LABEL_LANGUAGES", "LONGEST_TERM", "RESPELT", "Area", "LabelSense", "alike", "area_of", "areas_of", "areas_of_part",
    "goods_of", "is_said_in_english", "is_term", "label_senses", "meaning_of",
]  # fmt: skip

LONGEST_TERM = 4
"""Words in the longest terms that are looked for."""
LABEL_LANGUAGES = ("de", "fr", "es", "it", "nl", "pt", "sv", "pl")
"""The languages with words of labels, besides English."""
INFLECTED, RESPELT = 0.95, 0.9
"""How sure the sense of another form is, and that of a word with other accents: an ordering, ours."""
_TABLE = "trade_words.tsv"


class Area(NamedTuple):
    """Goods that terms are told of: the `number` of their row, their Nice `classes`, that of the thing itself first,
    their `names` in base form, and `what` such terms are (a chilli pepper). Of a ware the names are those of one thing,
    and its terms what labels say of it."""

    number: str
    classes: tuple[int, ...]
    names: tuple[str, ...]
    what: str
    is_ware: bool

    @property
    def is_narrow(self) -> bool:
        """Whether its terms name no goods, and are told of these goods alone."""
        return self.classes == (0,)


class LabelSense(NamedTuple):
    """What a word of labels of another language means in `english`, the wares it is so told of, and how surely, in
    [0, 1]: less for an inflected form, and for a word with accents that the one asked for lacks."""

    english: str
    areas: tuple[Area, ...]
    sure: float = 1.0

    @property
    def names_ware(self) -> bool:
        """Whether it is the name of such a ware, in the singular or plural (slippers)."""
        forms = {self.english, base_form(self.english)}
        return any(not forms.isdisjoint(area.names) for area in self.areas)


def is_term(words: str) -> bool:
    """Whether folded words, parted by spaces, are a term of some trade in English."""
    return not words.startswith(("*", "+", "=", "^")) and ":" not in words and words in open_table(_TABLE)


@lru_cache(maxsize=1 << 14)
def areas_of(words: str) -> tuple[Area, ...]:
    """The areas that a term is told of in English; none if it is no term."""
    return _areas(open_table(_TABLE).get(words) or "") if is_term(words) else ()


def is_said_in_english(word: str) -> bool:
    """Whether it is the English name of a ware, or an English word of labels, in the singular or plural (chutneys)."""
    forms = ((form, area) for form in {word, *other_number(word)} for area in areas_of(form) if area.is_ware)
    return any(form in area.names or lexicon().known(form) for form, area in forms)


@lru_cache(maxsize=1 << 14)
def areas_of_part(word: str) -> tuple[Area, ...]:
    """The wares of which labels say several words with this one among them (conditioned: bottle conditioned), or
    another form of it (whittle: whittled)."""
    return _areas(open_table(_TABLE).get(f"+{word}") or "")


def meaning_of(words: str) -> str:
    """What a term is, in the first area that has it; "" if it is none."""
    return next((area.what for area in areas_of(words)), "")


def goods_of(words: str) -> tuple[str, ...]:
    """The goods whose kind a term is, in the first area that has it so; empty if there is none."""
    return next((area.names for area in areas_of(words) if not area.is_ware), ())


@lru_cache(maxsize=1 << 14)
def label_senses(words: str, language: str) -> tuple[LabelSense, ...]:
    """What words of labels mean in a language (BCP 47), likeliest first: the names of wares, then what is said of most.

    Words with accents are looked up as they are written, then as they are folded: French poiré is perry, poire a pear.
    Words that are not listed are looked up in other forms."""
    folded = fold(words)
    found = _senses(f"{language}:{words.lower()}") or _senses(f"{language}:{folded}")
    if found:
        return found
    keys = open_table(_TABLE).present([f"{language}:{form}" for form in _other_forms(folded, language)])
    return next(filter(None, (_senses(key, INFLECTED) for key in keys)), ())


def _other_forms(folded: str, language: str) -> Iterator[str]:
    """What folded words may be an inflected form of, or of a few words be inflected: each word, then the last alone."""
    *before, last = folded.split() or [""]
    bases = possible_bases(last, language)
    yield from (" ".join((*before, base)) for base in bases)
    if before:  # saure Gurke, listed as saure Gurken
        yield from (" ".join((*before, f"{last}{ending}")) for ending in endings_of(language))
        first = before[0]
        rest = (*before[1:], last)
        yield from (" ".join((base, *rest)) for base in possible_bases(first, language))
        yield from (" ".join((f"{first}{ending}", *rest)) for ending in endings_of(language))


def _senses(key: str, sure: float = 1.0) -> tuple[LabelSense, ...]:
    row = open_table(_TABLE).get(key)
    parts = (entry.partition("|") for entry in row.split(";")) if row else ()
    found = [
        LabelSense(said.lstrip("~"), _areas(numbers), sure * (RESPELT if said.startswith("~") else 1.0))
        for said, _, numbers in parts
    ]
    return tuple(sorted(found, key=lambda one: (-one.sure, not one.names_ware, -len(one.areas))))


@lru_cache(maxsize=1 << 10)
def alike(ware: Area) -> Mapping[str, float]:
    """The wares of which labels say the same as of this one, by number, each with how much of it, (0, 1]: the cosine of
    the words said of the two, each weighed by how few wares share it."""
    row = open_table(_TABLE).get(f"={ware.number}") or ""
    return {number: float(share) for number, _, share in (one.partition(":") for one in row.split())}


def _areas(numbers: str) -> tuple[Area, ...]:
    return tuple(map(area_of, numbers.split()))


def said_of(ware: str) -> str:
    """How a word of labels of a ware is told."""
    return f'said of "{ware}" on labels'


@lru_cache(maxsize=1 << 11)
def area_of(number: str) -> Area:
    """The area of a number of the table."""
    classes, named, what = (open_table(_TABLE).get(f"*{number}") or "||").split("|")
    ware = what.removeprefix("=")
    told = what if ware == what else said_of(ware)
    return Area(number, tuple(map(int, classes.split())), tuple(named.split(",")), told, is_ware=ware != what)
