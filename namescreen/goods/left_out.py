"""What a statement of goods names but does not hold: what it leaves out (candles, other than tea lights), what the
goods are free of (dog leads, no leather), and a gloss in brackets that only says what is meant (chandeliers
[bougeoirs])."""

from __future__ import annotations

import re

from ..expressions import expression
from ..lexicon import translations
from ..text import fold
from .absence import EXCEPT, FREE_ENDINGS, NOT_SO, WITHOUT_IN

__all__ = ["as_stated"]

_UNTIL, _NEVER = r"[^,;()\n]*", r"(?!)"
_OF_THEIR_OWN = frozenset("alcoholic alcohol medicinal medicated medical medicine woven weave weaved".split())
"""What goods are not that are goods of their own for it: drinks without alcohol, cloth that is not woven."""


_LEFT_OUT = {
    code: expression(rf"[,\s]*\b(?:{said})\w*{_UNTIL}", re.IGNORECASE) for code, said in EXCEPT.items()
}
"""What a list leaves out, up to the next comma."""
_SAID_FREE = {
    code: expression(
        rf"[,;]\s*(?:(?:{said})\b{_UNTIL}|(?:{FREE_ENDINGS.get(code, _NEVER)})\b)\s*(?=[,;.\n]|$)", re.IGNORECASE
    )
    for code, said in WITHOUT_IN.items()
}
"""Such an item as a whole, with the sign that parts it from the goods."""
_SAID_NOT = {
    code: expression(
        rf"[,\s]*\b(?:{said})[ -](?:(?:en|aus|de|di|van|em|av|af|z) )?(?P<what>[^\W\d_]+)", re.IGNORECASE
    )
    for code, said in NOT_SO.items()
}
"""One word with "not" before it."""
_GLOSS = expression(r"(?<=\w)\s*(?:\((?P<round>[^()\[\],;/\n]*)\)|\[(?P<square>[^()\[\],;/\n]*)\])")
_LISTED = expression(r"\b(?:and|or|und|oder|et|ou|y|e|o|en|of|oraz|lub|services?)\b", re.IGNORECASE)
_SERVED = expression(r"(?:services?|retail\w*|wholesale|\w+ing)\s*$", re.IGNORECASE)
"""What brackets after it say more of than of goods: team building (education)."""


def as_stated(text: str, language: str = "en") -> str:
    """A list of goods of a language without what it leaves out and without glosses; as it is, if nothing were left."""
    text = _without_glosses(text)
    kept = _LEFT_OUT[language].sub("", text) if language in _LEFT_OUT else text
    if language in _SAID_FREE:
        kept = _SAID_FREE[language].sub("", kept)
    if language in _SAID_NOT:
        kept = _SAID_NOT[language].sub(lambda found: found[0] if _is_of_its_own(found["what"], language) else "", kept)
    return kept or (text if language in _SAID_NOT else "")


def _is_of_its_own(word: str, language: str) -> bool:
    """Whether goods that are not what a word says are goods of their own for that."""
    return any(not _OF_THEIR_OWN.isdisjoint(one.english.split()) for one in translations(fold(word), language))


def _without_glosses(text: str) -> str:
    """A list without brackets that hold one term, after a word of goods; several terms there, and what stands after a
    service, are goods by themselves: toys (dolls, balls), retail services (candles)."""

    def kept(found: re.Match[str]) -> str:
        told = found["round"] or found["square"] or ""
        return found[0] if _LISTED.search(told) or _SERVED.search(text[: found.start()]) else ""

    return _GLOSS.sub(kept, text)
