"""The names of wares in shops of other languages (wordlists/foreign_wares.tsv), of one word or several, each with its
English name; written from memory and incomplete."""

from __future__ import annotations

from functools import lru_cache

from ..lexicon.foreign_forms import possible_bases
from ..tables import open_table
from ..text import tokenize

__all__ = ["LONGEST_NAME", "ware_names"]

LONGEST_NAME = 6
"""Words in the longest names."""
_NOUN_FIRST = frozenset(("fr", "es", "it", "pt", "pl"))


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


def _singulars(words: list[str], language: str) -> list[str]:
    """What words may be the plural of."""
    if len(words) < 2:
        return [*possible_bases(words[0], language)] if words else []
    forms = [(word, *possible_bases(word, language)) for word in words]
    first = [" ".join((form, *words[1:])) for form in forms[0][1:]] if language in _NOUN_FIRST else []
    last = [" ".join((*words[:-1], form)) for form in forms[-1][1:]]
    agreeing = [" ".join((one, other, *words[2:])) for one in forms[0] for other in forms[1]]  # lampes murales
    return [*first, *last, *agreeing]
