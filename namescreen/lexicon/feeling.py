"""The pleasantness and the concreteness of a word."""

from __future__ import annotations

from functools import lru_cache

from ..tables import open_table
from .wordnet import lexicon

__all__ = ["concreteness", "feeling"]

PHYSICAL = "n1930"
"""WordNet's sense "physical entity"; its counterpart, "abstraction", is n2137."""
MOST_STEPS = 24  # no chain of broader senses of a noun in WordNet 3.0 is longer than 19


@lru_cache(maxsize=1 << 14)
def feeling(word: str) -> float | None:
    """How pleasant a word is, in [-1, 1]: -1 as unpleasant as any, 0 neutral, 1 as pleasant; None if unknown.

    Ratings by people (VADER, Hutto and Gilbert 2014) for some 7,000 words; for the rest an estimate from words with
    similar vectors, which has the right sign for 89 in 100 held-out rated words.
    """
    word = word.lower()
    table = open_table("feelings.tsv")
    forms = (word, *lexicon().bases(word))
    values = [table.get(form) for form in forms]
    found = next((value for value in values if value and value[0] != "~"), None) or next(filter(None, values), None)
    if found is not None:
        return int(found.removeprefix("~")) / 100
    return 0.0 if any(form in open_table("embedding_words.tsv") for form in forms) else None


@lru_cache(maxsize=1 << 14)
def concreteness(word: str) -> float | None:
    """How concrete a word is, in [0, 1]: 1 if it names something that can be touched or seen; None if it is not a noun.

    The share of its noun senses, by how leading each is for it, that WordNet 3.0 files under "physical entity" rather
    than "abstraction": 1 for kettle, 0 for freedom.
    """
    words = lexicon()
    total = physical = 0
    for base in words.bases_by_pos(word).get("n", ()):
        for sense_id, strength in words.sense_strengths(base):
            if sense_id[0] == "n":
                total += strength
                physical += strength * _is_physical(sense_id)
    return physical / total if total else None


@lru_cache(maxsize=1 << 14)
def _is_physical(sense_id: str) -> bool:
    layer = {sense_id}
    for _ in range(MOST_STEPS):
        if PHYSICAL in layer:
            return True
        layer = {above for one in layer for above in lexicon().related_ids(one, "@", "@i")}
    return False
