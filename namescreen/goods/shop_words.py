"""Words for goods of languages that have no dictionary here (Irish, Maltese, Tagalog), and of English in some
countries, as buyers meet them in shops and at home.

A few hundred words of each, from memory: they can bar a name, and never speak for one. What else such a language says
of it is not assessed."""

from __future__ import annotations

from functools import lru_cache

from ..lexicon import lexicon
from ..tables import open_table
from .evidence import judge_phrase, read
from .judged import Judged, Meaning
from .phrases import plain_words
from .words import runs

__all__ = ["OF_SHOPS", "read_in_shops", "read_under"]

LONGEST, PLAINLY = 4, 0.7
"""The most words of an entry, and how plainly a word that English has too must tell of the goods to be read so."""
_AMONG_MANY = "tl ja ko zh hi yi".split()
_READ = {
    "EU": ["ga", "mt"], "IE": ["ga", "en-IE"], "MT": ["mt"], "GB": ["cy", "en-GB"], "AU": ["en-AU"],
    "NZ": ["mi", "en-NZ"], "ZA": ["en-ZA"], "IN": ["hi", "en-IN"], "SG": ["zh", "en-SG"], "JM": ["en-JM"],
    "US": [*_AMONG_MANY, "ga", "mi", "en-US"], "CA": [*_AMONG_MANY, "ga", "en-CA"],
}  # fmt: skip
"""The languages in which such words count under a law: official ones, and those of many buyers; from memory."""
OF_SHOPS = frozenset(language for each in _READ.values() for language in each)
"""The languages of which no more than such words is known (BCP 47)."""


def read_under(law: str) -> frozenset[str]:
    """The languages (BCP 47) whose words for goods count under one law, by what is official or spoken by many there."""
    return frozenset(_READ.get(law, ()))


@lru_cache(maxsize=1 << 12)
def read_in_shops(name: str, goods: str, laws: tuple[str, ...]) -> dict[str, tuple[Judged, ...]]:
    """The content words of `name` as those read them who know such words, by language: of the languages that count
    under `laws`, those that have a word of the name which tells of the goods."""
    asked = frozenset(language for law in laws for language in read_under(law))
    words = plain_words(name)
    found: dict[str, dict[str, Meaning]] = {}
    taken: dict[str, set[int]] = {}
    for at, each in runs(words, LONGEST):
        run, places = " ".join(each), set(range(at, at + len(each)))
        row = open_table("shop_words.tsv").get(run)
        for language, _, english in (one.partition("=") for one in row.split("|")) if row else ():
            free = taken.setdefault(language, set()).isdisjoint(places)
            if language in asked and free and _is_read_so(run, english, goods, language):
                taken[language] |= places
                found.setdefault(language, {})[run] = Meaning(english, language)
    return {language: read(name, goods, meanings, surnames=False) for language, meanings in found.items()}


def _is_read_so(run: str, english: str, goods: str, language: str) -> bool:
    """Whether buyers take words for those of the language: English has no such word, or they plainly tell of the
    goods."""
    if not lexicon().known(run) and not language.startswith("en"):
        return True
    said = judge_phrase(english, goods)
    return said is not None and said.evidence.weight >= PLAINLY
