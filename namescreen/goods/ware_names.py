"""The names of wares in shops of other languages (wordlists/foreign_wares.tsv), of one word or several, each with its
English name; written from memory and incomplete."""

from __future__ import annotations

from functools import lru_cache

from ..lexicon.foreign_forms import NOUN_FIRST, possible_bases
from ..tables import open_table
from ..text import tokenize
from .trade_table import RESPELT, label_senses

__all__ = ["LONGEST_NAME", "names_ware", "ware_names"]

LONGEST_NAME = 6
"""Words in the longest names."""


@lru_cache(maxsize=1 << 14)
def ware_names(words: str, language: str) -> tuple[str, ...]:
    """The English names of the ware that words name in a language (BCP 47), the best first; empty if they name none.

    The plural is found too: of a name of several words that of its noun alone (boudins de porte), or of all of them."""
    table = open_table("foreign_wares.tsv")
    folded = " ".join(tokenize(words))
    row = table.get(f"{language}:{folded}")
    if row is None:
        keys = table.present([f"{language}:{form}" for form in _singulars(folded.split(), language)])
        row = table.get(keys[0]) if keys else None
    return tuple(row.split(";")) if row else ()


def names_ware(said: str, language: str) -> bool:
    """Whether a word or phrase of a language names a ware first of all, as it is written, accents and all: thé is tea,
    the an article elsewhere."""
    senses = label_senses(said, language)[:1]
    return bool(ware_names(said, language)) or any(one.names_ware and one.sure > RESPELT for one in senses)


def _singulars(words: list[str], language: str) -> list[str]:
    """What words may be the plural of."""
    if len(words) < 2:
        return [*possible_bases(words[0], language)] if words else []
    forms = [(word, *possible_bases(word, language)) for word in words]
    first = [" ".join((form, *words[1:])) for form in forms[0][1:]] if language in NOUN_FIRST else []
    last = [" ".join((*words[:-1], form)) for form in forms[-1][1:]]
    agreeing = [" ".join((one, other, *words[2:])) for one in forms[0] for other in forms[1]]  # lampes murales
    return [*first, *last, *agreeing]
