"""Words of other languages that say what goods lack, keep off or withstand: fleckenfrei, antitiques, Wühlmausstopp.

Such a word is what it is made of: a word for what is unwelcome, and an ending or beginning that says that there is none
of it, or that it does no harm. From memory of each language."""

from __future__ import annotations

from functools import lru_cache

from ..lexicon import translations
from ..lexicon.foreign_derivation import modifier_senses
from .nuisances import KEPT_OFF
from .word_lists import glossary

__all__ = ["said_to_lack"]

_ENDINGS = {
    "de": "frei=free los=free stopp=stopping stop=stopping stopper=stopping schutz=proof abwehr=proof sicher=safe "
          "fest=resistant dicht=tight weg=free killer=stopping fänger=stopping faenger=stopping ade=free "
          "ex=free löser=free loeser=free entferner=free schreck=proof "
          "blocker=stopping",
    "nl": "vrij=free loos=free stop=stopping stopper=stopping werend=proof bescherming=proof bestendig=resistant "
          "dicht=tight vast=resistant weg=free vanger=stopping verwijderaar=free blokker=stopping killer=stopping",
    "sv": "fri=free lös=free los=free skydd=proof stopp=stopping säker=safe tät=tight bort=free borttagare=free "
          "dödare=stopping fångare=stopping",
    "da": "fri=free løs=free beskyttelse=proof stop=stopping sikker=safe tæt=tight",
    "nb": "fri=free løs=free beskyttelse=proof stopp=stopping sikker=safe tett=tight",
}  # fmt: skip
_BEGINNINGS = dict.fromkeys(("de", "fr", "es", "it", "nl", "pt", "pl", "sv", "ro"), "anti=proof")
SHORTEST, LEAST_SURE = 3, 0.45
"""The fewest letters of what is unwelcome, and how sure its meaning must be."""


@lru_cache(maxsize=1 << 13)
def said_to_lack(word: str, language: str) -> str:
    """What a folded word of a language says that goods lack, keep off or withstand, in English (stain free); "" if it
    says no such thing."""
    for ending, how in glossary(_ENDINGS.get(language, "")).items():
        if word.endswith(ending) and (what := _unwelcome(word.removesuffix(ending), language)):
            return f"{what} {how}"
    for beginning, how in glossary(_BEGINNINGS.get(language, "")).items():
        if word.startswith(beginning) and (what := _unwelcome(word.removeprefix(beginning), language)):
            return f"{what} {how}"
    return ""


def _unwelcome(part: str, language: str) -> str:
    """What a part means that is one of what goods keep off; "" if it means nothing of the kind."""
    if len(part) < SHORTEST:
        return ""
    senses = (*translations(part, language), *modifier_senses(part, language))
    meant = (one.english for one in senses if one.score >= LEAST_SURE)
    return next((one for one in meant if one in KEPT_OFF), "")
