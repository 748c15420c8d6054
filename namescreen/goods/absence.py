"""Words of absence by language: what says that something is not there (without, frei von, sin), that something is not
so (non, nicht), and that goods are left out (except, außer). One list for all that ask; from memory of each
language."""

from __future__ import annotations

from itertools import pairwise

from ..text import fold

__all__ = ["EXCEPT", "FALSE", "FREE_ENDINGS", "LACKING", "NOT_SO", "WITHOUT", "WITHOUT_IN", "said_to_lack", "states"]

EXCEPT = {
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
"""How a list leaves goods out, as patterns, in the languages of the Union that are read here."""
WITHOUT_IN = {
    "en": r"no|without|free (?:of|from)|zero|minus", "fr": r"sans|exempt\w* de?", "de": "ohne|frei von",
    "es": "sin|libres? de", "it": "senza|priv[oaie] di", "nl": "zonder|vrij van", "pt": "sem|livres? de", "pl": "bez",
    "sv": r"utan|fri\w* från", "da": "uden|fri for", "nb": "uten|fri for", "sl": "brez", "hr": "bez", "cs": "bez",
    "is": "án", "ro": "fără",
}  # fmt: skip
"""What stands before something that is not there, as patterns."""
FREE_ENDINGS = {"en": r"[^\W\d_]+-free", "de": r"[^\W\d_]{3,}frei"}
"""Words that say so by their ending, as patterns."""
NOT_SO = {
    "fr": "non", "de": "nicht", "it": "non", "nl": "niet", "pt": "não", "es": "no", "pl": "nie(?: z)?",
    "sv": "icke|inte", "da": "ikke", "nb": "ikke",
}  # fmt: skip
"""What stands before a word that says of goods what they are not: dalles non métalliques."""
LACKING = frozenset(("less", "free"))
"""What says in English after a word that there is none of it."""
WITHOUT = frozenset(
    fold(word) for ways in WITHOUT_IN.values() for word in ways.split("|") if word.isalpha()
) | {"not", "non"}
"""The single words that say so before something, folded, of all languages."""
FALSE = (*sorted(WITHOUT & {"no", "not", "non", "without"}), "imitation", "faux", "fake", "artificial", "mock",
         "simulated", "synthetic")  # fmt: skip
"""What goods state before a word if they do not have what it says, or only look so."""


def said_to_lack(words: tuple[str, ...]) -> set[str]:
    """The words of a name that say what goods do not hold: sugar free and sans sucre promise no sugar."""
    pairs = [*pairwise(words)]
    return {what for what, after in pairs if after in LACKING} | {what for no, what in pairs if no in WITHOUT}


def states(word: str, text: str) -> bool:
    """Whether goods (folded words with a space at both ends) state that they are or hold something, and not that they
    lack it (beeswax free, 0 percent alcohol)."""
    forms = (f" {word} ", f" {word}s ")
    held = any(form in text for form in forms)
    lacked = any(f" {no} {word} " in text for no in (*WITHOUT, "0 percent", "0 0 percent"))
    return held and not lacked and f" {word} free " not in text
