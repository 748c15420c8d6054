"""What a word of goods is to a reader of English: an English word, a foreign one, or one that tells neither."""

from __future__ import annotations

from functools import lru_cache

from ..lexicon import kinds, lexicon, translations, zipf
from ..tables import open_table
from ..text import fold, split_closed_compound
from .small_words import ANY_SMALL
from .trade_table import LABEL_LANGUAGES, RESPELT, is_said_in_english, label_senses
from .words import base_form, is_trade_word

__all__ = ["RARE", "SURE", "standing", "wares_abroad"]

SURE = 0.75
"""How reliable a translation must be to take a word for a foreign one: as for a word of a name in a language that is
not asked for."""
IN_USE = 3.8
"""Zipf value from which a word that is in no dictionary still counts as English (slang), if it is no name."""
RARE = 3.0
"""Zipf value below which an English word that is in no list of goods may be a foreign one."""
_PLAINLY_ENGLISH = frozenset(("and", "by", "for", "from", "of", "the", "with"))
_ENGLISH_TOO = frozenset("a as be do i in is no o s so".split())
_NAMES = frozenset(("given name", "surname", "place"))
_ACCENTED_IN_ENGLISH = frozenset(
    "appliqué café crème crêpe décor découpage entrée glacé pâté purée rosé sauté soufflé".split()
)
"""Words of goods that English often writes with their accents; from memory."""


@lru_cache(maxsize=1 << 14)
def standing(written: str, folded: str) -> str:
    """What a word is to a reader of English: english, rare, foreign, a small foreign word, or one without evidence."""
    plain = written.isascii()  # the, but not thé
    if plain and (folded in _PLAINLY_ENGLISH or is_said_in_english(folded)):
        return "english"
    if folded in ANY_SMALL and not (plain and (folded in _ENGLISH_TOO or (folded != "pour" and _names_goods(folded)))):
        return "small"
    if (plain and "function word" in kinds(folded)) or len(folded) == 1 or any(map(str.isdigit, folded)):
        return "nothing"
    known = lexicon().known(folded)
    rare = zipf(folded) < RARE if plain else written.lower() not in _ACCENTED_IN_ENGLISH
    if rare and wares_abroad(written):  # bière is no bier
        return "foreign"
    translated = any(one.score >= SURE and not one.guessed for one in translations(folded))
    abroad = translated and not known and not zipf(folded)  # savon: lists of goods have it, English has not
    if (is_trade_word(folded) and not abroad) or (known and zipf(folded) >= RARE):
        return "english"
    if known or zipf(folded) >= IN_USE:
        return "rare" if known or kinds(folded) & _NAMES else "english"
    if translated:
        return "foreign"
    parts = folded.split("-") if "-" in folded else split_closed_compound(folded, zipf)
    return "english" if len(parts) > 1 and all(map(_may_be_english, parts)) else "foreign"


@lru_cache(maxsize=1 << 13)
def wares_abroad(written: str) -> tuple[str, ...]:
    """The languages in which a word, as it is written, is the name of a ware, and not the English one (kimono)."""
    found = ((code, label_senses(written, code)[:1]) for code in LABEL_LANGUAGES)
    senses = ((code, one) for code, senses in found for one in senses if one.names_ware and one.sure > RESPELT)
    own = base_form(fold(written))
    return tuple(code for code, one in senses if base_form(one.english) != own)


def _names_goods(folded: str) -> bool:
    """Whether lists of goods have the word for a thing (die), and not only in the words around one (pour over)."""
    return f"h:{base_form(folded)}" in open_table("class_weights.tsv")


def _may_be_english(word: str) -> bool:
    return lexicon().known(word) or is_trade_word(word) or "function word" in kinds(word)
