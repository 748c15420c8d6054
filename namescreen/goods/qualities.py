"""Qualities that the senses perceive, beyond the listed ones: tender, silky, delicate.

WordNet joins adjectives that are much alike around one that stands for all of them (similar to). A word of the cluster
of a quality that is felt or seen is one too."""

from __future__ import annotations

from functools import cache, lru_cache

from ..lexicon import kinds, lexicon
from ..tables import open_table

__all__ = ["is_praise", "is_quality", "languages_of_praise", "quality_like"]

_PERCEIVED = frozenset(
    """
    soft gentle smooth sturdy warm cool fresh pure natural clean shiny dry moist comfortable slim delicate
    tender supple sleek fine mild silky radiant crispy creamy salty juicy fruity buttery sugary
""".split()
)
"""Qualities that eyes, hands or tongue perceive, and that are mostly that; others (foreign, complete, hard, bright)
have clusters that say little of goods. Ours; common practice, no source."""
_LEADING = 2
"""How many of the leading senses of a word are looked at."""


def is_quality(word: str) -> bool:
    """Whether the folded English `word` is a quality that goods may have, listed or like one that is."""
    return bool(kinds(word) & {"quality", "taste"}) or bool(quality_like(word))


def is_praise(word: str, language: str) -> bool:
    """Whether the folded `word`, or words parted by spaces, are praise in `language` (BCP 47; "la" for Latin words that
    are understood everywhere)."""
    return language in languages_of_praise(word)


def languages_of_praise(word: str) -> tuple[str, ...]:
    """The languages in which the folded `word`, or words parted by spaces, are praise, as `is_praise` asks."""
    return tuple((open_table("praise.tsv").get(word) or "").split())


@lru_cache(maxsize=1 << 13)
def quality_like(word: str) -> str:
    """The perceived quality that the folded English `word` is much like, in one of its leading senses; "" if there is
    none, or the word is mostly no adjective."""
    if word in _PERCEIVED:
        return word
    senses = lexicon().senses(word, labelled=False)
    if not senses or kinds(word) & {"quality", "taste"} or max(senses, key=lambda one: one.count).pos != "a":
        return ""
    leading = [one.id for one in senses if one.pos == "a"][:_LEADING]
    return next((_clusters()[one] for one in leading if one in _clusters()), "")


@cache
def _clusters() -> dict[str, str]:
    """The senses around the leading sense of what is perceived, each with the quality that it is like."""
    found: dict[str, str] = {}
    for quality in sorted(_PERCEIVED):
        for sense in lexicon().senses(quality, "a", labelled=False)[:1]:
            found[sense.id] = quality
            for near in lexicon().related_ids(sense.id, "&"):
                found.setdefault(near, quality)
    return found
