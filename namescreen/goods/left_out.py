"""What a statement of goods names but does not hold: what it leaves out (candles, other than tea lights), and a gloss
in brackets that only says what is meant (chandeliers [bougeoirs])."""

from __future__ import annotations

import re

__all__ = ["as_stated", "as_stated_abroad"]

_UNTIL = r"[^,;()\n]*"
_EXCEPT = re.compile(
    r"[,\s]*\b(?:other than|except(?:ing)?(?: for)?|excluding|not including|with the exception of|apart from|"
    rf"save for|but not|not for)\b{_UNTIL}|[,\s]*\bnon-?medicated\b(?=\s*(?:[,;\n]|$))",
    re.IGNORECASE,
)
"""How an English list leaves goods out, with all that it so leaves out, up to the next comma."""
_EXCEPT_ABROAD = re.compile(
    r"[,\s]*\b(?:"
    r"autres? qu['’e]|à l['’]exception d|à l['’]exclusion d|excepté|sauf|hormis|non compris|"
    r"ausgenommen|ausgeschlossen|mit ausnahme|unter ausschluss|ausser|außer|nicht für|"
    r"excepto|salvo|distint[oa]s? (?:de|a)|que no sean?|con (?:exclusión|excepción)|a excepción|"
    r"ad (?:eccezione|esclusione)|con (?:esclusione|eccezione)|eccetto|tranne|esclus[aoie]|divers[aoie] da|"
    r"met uitzondering|uitgezonderd|behalve|andere dan|"
    r"exceto|com (?:exceção|exclusão)|à exceção|que não seja[m]?|"
    r"z wyjątkiem|oprócz|z wyłączeniem|inne niż|"
    rf"med undantag|förutom|undtagen|bortset fra|unntatt)\w*{_UNTIL}",
    re.IGNORECASE,
)
"""The same in the languages of the Union that are read here; from memory."""
_NOT_SO = re.compile(
    r"[,\s]*\b(?:non|nicht|niet|não|no|nie|nie z|icke|inte|ikke)\b[ -]"
    r"(?:(?:en|aus|de|di|van|em|av|af|z) )?(?!al[ck]|medi|tiss|tess|tejid)[^\W\d_]+",
    re.IGNORECASE,
)
"""One word, with "not" before it, that says of goods what they are not: dalles non métalliques; but drinks without
alcohol and cloth that is not woven are goods of their own."""
_GLOSS = re.compile(r"(?<=\w)\s*(?:\((?P<round>[^()\[\],;/\n]*)\)|\[(?P<square>[^()\[\],;/\n]*)\])")
_LISTED = re.compile(r"\b(?:and|or|und|oder|et|ou|y|e|o|en|of|oraz|lub|services?)\b", re.IGNORECASE)
_SERVED = re.compile(r"(?:services?|retail\w*|wholesale|\w+ing)\s*$", re.IGNORECASE)
"""What brackets after it say more of than of goods: team building (education)."""


def as_stated(text: str) -> str:
    """A list of goods in English without what it leaves out and without glosses."""
    return _EXCEPT.sub("", _without_glosses(text))


def as_stated_abroad(text: str) -> str:
    """The same of a list in another language."""
    return _NOT_SO.sub("", _EXCEPT_ABROAD.sub("", _without_glosses(text))) or text


def _without_glosses(text: str) -> str:
    """A list without brackets that hold one term, after a word of goods; several terms there, and what stands after a
    service, are goods by themselves: toys (dolls, balls), retail services (candles)."""

    def kept(found: re.Match[str]) -> str:
        told = found["round"] or found["square"] or ""
        return found[0] if _LISTED.search(told) or _SERVED.search(text[: found.start()]) else ""

    return _GLOSS.sub(kept, text)
