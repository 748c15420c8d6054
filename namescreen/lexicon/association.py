"""Words that belong together in people's minds without being alike: denim and jeans, clay and kiln.

Drawn by wordlists/build/associations.py from which words WordNet's definitions mention. Word association of
this kind is symmetric; it says nothing about how the two are related."""

from __future__ import annotations

import math
from functools import lru_cache

from ..tables import open_table
from .wordnet import lexicon

__all__ = ["associated", "association"]

FULL = 50.0
"""A strength in the table at which two words count as fully associated: the strongest partner of a common
noun has between 40 and 60 (measured over the table: the 90th hundredth of the strongest partners is 53)."""


@lru_cache(maxsize=1 << 14)
def associated(word: str) -> dict[str, float]:
    """The words associated with `word` or its base form, in [0, 1], 1 = as strongly as any; the strongest
    first.

    Empty for a word that no definition mentions. Do not change the result.
    """
    word = word.lower()
    table = open_table("associations.tsv")
    for form in (word, *lexicon().bases(word)):
        value = table.get(form)
        if value:
            pairs = (entry.rpartition(":") for entry in value.split())
            return {other: min(int(strength) / FULL, 1.0) for other, _, strength in pairs}
    return {}


@lru_cache(maxsize=1 << 16)
def association(word_a: str, word_b: str) -> float:
    """How strongly two words are associated, in [0, 1]: directly, or by the company they share; symmetric.

    0.0 for unrelated words and for words nothing is known of.
    """
    a, b = associated(word_a), associated(word_b)
    if not a or not b:
        return 0.0
    bases_a, bases_b = _forms(word_a), _forms(word_b)
    direct = max([a.get(form, 0.0) for form in bases_b] + [b.get(form, 0.0) for form in bases_a])
    shared = sum(a[word] * b[word] for word in a.keys() & b.keys())
    if shared:
        shared /= math.sqrt(sum(x * x for x in a.values()) * sum(x * x for x in b.values()))
    return round(max(direct, min(2 * shared, 1.0)), 4)


def _forms(word: str) -> tuple[str, ...]:
    return (word.lower(), *lexicon().bases(word))
