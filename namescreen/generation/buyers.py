"""What the buyers of a brief read, and whether they understand English words."""

from __future__ import annotations

from functools import lru_cache

from ..brief import Brief
from ..lexicon import lexicon, translations, zipf
from ..territories import UNIONS, languages_of, territory, understood_in

__all__ = ["local_language", "understood"]

_SAME_WORD = 0.75
"""How reliable a translation must be for an English word to be the same word there (salamander, panda). That texts have
it says little: many are surnames there (Miller, Fuller)."""
_LEARNT, _AT_SCHOOL = 4.3, 0.3
"""The Zipf value in English from which a word is learnt everywhere, and what that counts: it is read, seldom felt.
Of English words on first pages for Germany and France two readers gave nearly all 1 or 2."""
_IDIOM = 0.3
"""The most that a phrase counts of which each word may be understood, and the turn of phrase is not."""


def local_language(brief: Brief) -> str:
    """The language in which names should be, where it is not English: the one that buyers of all markets read, if in
    none of them most understand English. Else "": English is what buyers of several languages have in common."""
    markets = tuple(map(territory, brief.markets))
    countries = [one for one in markets if one not in UNIONS]  # a union beside a country says how far a mark reaches
    if not countries or any(understood_in(one, "en") for one in countries):
        return ""
    common = set.intersection(*({*languages_of((one,), main=True)} for one in countries)) - {"en"}
    return common.pop() if len(common) == 1 else ""


def understood(words: tuple[str, ...], language: str) -> float:
    """How far readers of a language understand a name of English words, in [0, 1]: as its least understood word."""
    return min((_IDIOM if len(words) > 1 else 1.0), *(_understood(word, language) for word in words))


@lru_cache(maxsize=1 << 14)
def _understood(word: str, language: str) -> float:
    own = {word, *lexicon().bases(word)}
    if any(one.english in own and one.score >= _SAME_WORD for one in translations(word, language)):
        return 1.0
    return _AT_SCHOOL if zipf(word) >= _LEARNT else 0.0
