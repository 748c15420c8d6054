"""What a statement of goods names but does not hold: what it leaves out (candles, other than tea lights), what the
goods are free of (dog leads, no leather), and a gloss in brackets that only says what is meant (chandeliers
[bougeoirs])."""

from __future__ import annotations

import re

from ..expressions import expression
from ..lexicon import translations
from ..text import fold

__all__ = ["as_stated"]

_UNTIL = r"[^,;()\n]*"
_EXCEPT = {
    "en": r"(?:other than|except(?:ing)?(?: for)?|excluding|not including|with the exception of|apart from|save for|"
    r"but not|not for)\b|non-?medicated(?=\s*(?:[,;\n]|$))",
    "fr": "autres? qu['’e]|à l['’]exception d|à l['’]exclusion d|excepté|sauf|hormis|non compris",
    "de": "ausgenommen|ausgeschlossen|mit ausnahme|unter ausschluss|ausser|außer|nicht für",
    "es": "excepto|salvo|distint[oa]s? (?:de|a)|que no sean?|con (?:exclusión|excepción)|a excepción",
    "it": "ad (?:eccezione|esclusione)|con (?:esclusione|eccezione)|eccetto|tranne|esclus[aoie]|divers[aoie] da",
    "nl": "met uitzondering|uitgezonderd|behalve|andere dan",
    "pt": "exceto|com (?:exceção|exclusão)|à exceção|que não seja[m]?",
    "pl": "z wyjątkiem|oprócz|z wyłączeniem|inne niż",
    "sv": "med undantag|förutom", "da": "undtagen|bortset fra", "nb": "unntatt|bortsett fra",
}  # fmt: skip
"""How a list leaves goods out, in the languages of the Union that are read here; from memory."""
_FREE_OF = {
    "en": r"(?:no\s|(?:without|free (?:of|from))\b){until}|[^\W\d_]+-free\b", "fr": r"sans\b{until}|exempt\w* d{until}",
    "de": r"(?:ohne|frei von)\b{until}|[^\W\d_]{{3,}}frei\b", "es": r"(?:sin|libres? de)\b{until}",
    "it": r"(?:senza|priv[oaie] di)\b{until}", "nl": r"(?:zonder|vrij van)\b{until}",
    "pt": r"(?:sem|livres? de)\b{until}", "pl": r"bez\b{until}",
    "sv": r"(?:utan|fri\w* från)\b{until}", "da": r"(?:uden|fri for)\b{until}", "nb": r"(?:uten|fri for)\b{until}",
}  # fmt: skip
"""An item of a list that says only what the goods before it do not hold; from memory."""
_NOT_SO = {
    "fr": "non", "de": "nicht", "it": "non", "nl": "niet", "pt": "não", "es": "no", "pl": "nie(?: z)?",
    "sv": "icke|inte", "da": "ikke", "nb": "ikke",
}  # fmt: skip
"""What stands before a word that says of goods what they are not: dalles non métalliques."""
_OF_THEIR_OWN = frozenset("alcoholic alcohol medicinal medicated medical medicine woven weave weaved".split())
"""What goods are not that are goods of their own for it: drinks without alcohol, cloth that is not woven."""


_LEFT_OUT = {
    code: expression(rf"[,\s]*\b(?:{said})\w*{_UNTIL}", re.IGNORECASE) for code, said in _EXCEPT.items()
}
"""What a list leaves out, up to the next comma."""
_SAID_FREE = {
    code: expression(rf"[,;]\s*(?:{said.format(until=_UNTIL)})\s*(?=[,;.\n]|$)", re.IGNORECASE)
    for code, said in _FREE_OF.items()
}
"""Such an item as a whole, with the sign that parts it from the goods."""
_SAID_NOT = {
    code: expression(
        rf"[,\s]*\b(?:{said})[ -](?:(?:en|aus|de|di|van|em|av|af|z) )?(?P<what>[^\W\d_]+)", re.IGNORECASE
    )
    for code, said in _NOT_SO.items()
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
