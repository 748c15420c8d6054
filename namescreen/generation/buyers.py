"""What the buyers of a brief read: which markets speak English, and whether names are understood in the others."""

from __future__ import annotations

from functools import lru_cache

from ..brief import Brief
from ..lexicon import lexicon, translations, zipf
from ..territories import UNIONS, languages_of, territory, understood_in

__all__ = ["english_share", "local_languages", "understood"]

_SAME_WORD = 0.75
"""How reliable a translation must be for an English word to be the same word there (salamander, panda). That texts have
it says little: many are surnames there (Miller, Fuller)."""
_LEARNT, _AT_SCHOOL = 4.3, 0.3
"""The Zipf value in English from which a word is learnt everywhere, and what that counts: it is read, seldom felt.
Of English words on first pages for Germany and France two readers gave nearly all 1 or 2."""
_IDIOM = 0.3
"""The most that a phrase counts of which each word may be understood, and the turn of phrase is not."""


def _countries(brief: Brief) -> tuple[str, ...]:
    """The markets that are countries; the unions, where there are no others."""
    markets = tuple(map(territory, brief.markets))
    return tuple(one for one in markets if one not in UNIONS) or markets


def english_share(brief: Brief) -> float:
    """The share of the markets in which most buyers understand English, in [0, 1]; 1 where none is stated."""
    markets = _countries(brief)
    return sum(understood_in(one, "en") for one in markets) / len(markets) if markets else 1.0


def local_languages(brief: Brief) -> tuple[str, ...]:
    """The languages of those countries in which most buyers do not understand English."""
    markets = [one for one in _countries(brief) if one not in UNIONS and not understood_in(one, "en")]
    return tuple(one for one in languages_of(markets, main=True) if one != "en") if markets else ()


@lru_cache(maxsize=1 << 14)
def understood(words: tuple[str, ...], languages: tuple[str, ...]) -> float:
    """How far readers of these languages understand a name of English words, in [0, 1]: of each language what its least
    understood word is, and the mean of them."""
    each = [min(_understood(word, language) for word in words) for language in languages]
    return min(sum(each) / len(each), _IDIOM if len(words) > 1 else 1.0)


@lru_cache(maxsize=1 << 14)
def _understood(word: str, language: str) -> float:
    own = {word, *lexicon().bases(word)}
    if any(one.english in own and one.score >= _SAME_WORD for one in translations(word, language)):
        return 1.0
    return _AT_SCHOOL if zipf(word) >= _LEARNT else 0.0
