"""Function words of goods lists in other languages, with the English word of the same function."""

from __future__ import annotations

from collections.abc import Mapping

from ..text import fold
from .word_lists import glossary

__all__ = ["ANY_SMALL", "small_words"]

_SMALL_WORDS = {
    "de": "und=and oder=or von=of vom=of aus=of für=for zum=for zur=for mit=with ohne=without in=in der= die= das= "
    "den=",
    "fr": "et=and ou=or de=of des=of du=of d=of pour=for à=for au=for aux=for avec=with sans=without en=of le= la= "
    "les= l=",
    "es": "y=and e=and o=or de=of del=of para=for con=with sin=without en=in el= la= los= las=",
    "it": "e=and ed=and o=or di=of del=of della=of dei=of delle=of d=of per=for da=for con=with senza=without in=of "
    "il= la= lo= i= gli= le= l=",
    "nl": "en=and of=or van=of uit=of voor=for met=with zonder=without de= het=",
    "pt": "e=and ou=or de=of do=of da=of dos=of das=of para=for com=with sem=without em=of o= a= os= as=",
    "sv": "och=and eller=or av=of för=for till=for med=with utan=without",
    "da": "og=and eller=or af=of til=for med=with uden=without",
    "nb": "og=and eller=or av=of til=for med=with uten=without",
    "fi": "ja=and sekä=and tai=or varten=",
    "pl": "i=and oraz=and lub=or z=of ze=of dla=for do=for na=for bez=without",
    "cs": "a=and nebo=or z=of ze=of pro=for na=for s=with se=with bez=without",
    "sk": "a=and alebo=or z=of zo=of pre=for na=for s=with so=with bez=without",
    "hu": "és=and vagy=or a= az= való=",
    "ro": "și=and sau=or de=of din=of pentru=for cu=with fără=without",
    "hr": "i=and ili=or od=of iz=of za=for s=with bez=without",
    "sl": "in=and ali=or od=of iz=of za=for z=with s=with brez=without",
    "et": "ja=and või=or",
    "lt": "ir=and arba=or iš=of su=with be=without",
    "lv": "un=and vai=or no=of ar=with bez=without",
    "el": "και=and ή=or από=of για=for με=with χωρίς=without το= τα= του= της= των=",
    "tr": "ve=and veya=or için= ile=with",
    "bg": "и=and или=or от=of за=for със=with с=with без=without на=of",
    "ru": "и=and или=or из=of для=for с=with без=without на=for",
    "uk": "і=and та=and або=or з=of із=of для=for без=without на=for",
}
"""Function words of each language, with the English one of the same function in a list of goods, or nothing; from
memory of each language's grammar."""
_SMALL = {
    code: {fold(word): english for word, english in glossary(text).items()}
    for code, text in _SMALL_WORDS.items()
}
ANY_SMALL = frozenset(word for words in _SMALL.values() for word in words)
"""All of these, folded."""


def small_words(language: str) -> Mapping[str, str]:
    """The folded function words of goods lists in a language, with the English one of the same function, or ""."""
    return _SMALL.get(language, {})
