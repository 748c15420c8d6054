"""Names in the language of buyers who do not read English: existing words and turns of phrase there, on short lists of
subjects (wordlists/curated/naming_local_*.txt, one for each language)."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from typing import NamedTuple

from ..lexicon.language_codes import language_name
from ..tables import open_table
from .brief_terms import BriefTerms
from .ideas import Idea
from .purpose import NAMED
from .short_lists import ShortLists, met_by_lists, on_short_lists, pleased

__all__ = ["languages_held", "local_ideas"]


class _Names(NamedTuple):
    """The names of one language: its short lists, and what each name means."""

    lists: ShortLists
    meanings: dict[str, str]


@cache
def languages_held() -> frozenset[str]:
    """The languages that have lists (BCP 47)."""
    return frozenset(key.split()[0] for key, _ in open_table("naming_local.tsv").items())


@cache
def _names(language: str) -> _Names:
    lists = []
    meanings: dict[str, str] = {}
    rows = (value.partition("|") for key, value in open_table("naming_local.tsv").items() if key.startswith(language))
    for about, _, names in rows:
        told = [name.split("=") for name in names.split("; ")]
        meanings.update((name, meaning) for name, _, meaning in told)
        lists.append((tuple(about.split()), tuple((name, pleased(rating)) for name, rating, _ in told)))
    return _Names(tuple(lists), meanings)


def local_ideas(brief_terms: BriefTerms, language: str) -> Iterator[Idea]:
    """The names of the short lists for what a brief speaks of, in a language; none in one that has no lists."""
    import numpy as np

    if not language or language not in languages_held():
        return
    names = _names(language)
    met = met_by_lists(brief_terms, names.lists)
    for name, (ties, chosen, liked) in on_short_lists(brief_terms, met, names.lists).items():
        chosen = chosen * np.minimum(1.0, brief_terms.weights / NAMED) ** 2
        meaning = f"{language_name(language)}: {names.meanings[name]}"
        term = brief_terms.terms[brief_terms.best_term(ties)].word
        yield Idea(
            name, "local", meaning, ties, term, brief_terms.relevance(ties), chosen=float(chosen.max(initial=0.0)),
            ties=ties, listed=brief_terms.relevance(liked),
        )  # fmt: skip
