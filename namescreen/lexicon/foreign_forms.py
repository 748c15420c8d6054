"""Inflected forms and compounds of other languages: what a form has in common with its base form, and where words join.

The endings are the regular ones of nouns and adjectives, folded, from memory of each language's grammar. They only lead
to words that stand in the table, so a missing ending costs a word and a superfluous one seldom anything."""

from __future__ import annotations

import re
from functools import lru_cache
from itertools import takewhile

__all__ = ["COMPOUNDING", "base_stem", "possible_stems", "shared_with", "skeleton", "stems"]

_ENDINGS = {
    "de": "en n e er s es em ern nen",
    "nl": "en n s eren e es je jes tje tjes",
    "sv": "or ar er n en et s na arna orna erna r a e t o u",
    "da": "e er r s en et ene erne ne t n",
    "nb": "e er r s en et ene ne a t n",
    "fi": "t et n a ta ja ia it ien en at ut ot in den ten",
    "et": "d id ed ad ud te de",
    "hu": "k ok ek ak i as es os",
    "es": "s es",
    "pt": "s es",
    "it": "i e a o he",
    "fr": "s x es e",
    "ro": "uri e i le ul a ele ile lor ea ii u ului",
    "pl": "y i a e ow ki ami ach u em om",
    "cs": "y e a i u ky ek k ove ch m",
    "sk": "y e a i u ky ok k ov ch m",
    "hr": "i e a u ovi evi ci",
    "sl": "i e a u ovi ev ov",
    "tr": "lar ler i u in un",
    "lt": "ai iai os es us as is ys a e",
    "lv": "i as es us s is a e",
    "el": "α εσ οι ια η οσ ο ι ασ ησ",
    "bg": "и а я е та то те ове",
    "ru": "ы и а я е ов ев",
    "la": "a ae e i is um us",
    "uk": "и і а я е ів",
}
_REPLACED = {
    "fi": (("set", "nen"), ("kset", "s"), ("det", "s"), ("eet", "e")),
    "pt": (("ais", "al"), ("eis", "el"), ("ois", "ol"), ("oes", "ao"), ("ns", "m")),
    "ro": (("toare", "tor"), ("oare", "or"), ("oane", "on")),
    "fr": (("eaux", "eau"), ("aux", "al")),
}
_LONGEST_FIRST = {code: tuple(sorted(text.split(), key=lambda e: (-len(e), e))) for code, text in _ENDINGS.items()}
_ALL_ENDINGS = {code: frozenset(("", *endings)) for code, endings in _LONGEST_FIRST.items()}
_DOUBLED = re.compile(r"(.)\1")
_DOUBLING = frozenset({"nl", "da", "nb", "sv", "fi"})
"""Languages whose letters are doubled or not with the ending."""
_VOWELS = "aeiouyαεηιουωаеиоуыэюяі"
SHORTEST = 3
"""No ending is taken off a word if fewer letters remain."""
MOST_LOST = 2
"""So many letters of a base form may give way to an ending (trinken, Trink-; veitsi, veitset)."""

COMPOUNDING = frozenset({"de", "nl", "sv", "da", "nb", "fi", "et", "hu"})
"""Languages that write a compound as one word. Most linking elements between its parts are endings as well."""


def base_stem(word: str, language: str) -> str:
    """The stem of a word that is known to be a base form: it has no ending to lose."""
    return possible_stems(word, language)[-1]


@lru_cache(maxsize=1 << 15)
def possible_stems(word: str, language: str) -> tuple[str, ...]:
    """The stems of `word` by every ending it may have, the longest ending first; the last takes no ending off.

    A stem is a form without its ending, doubled letters and final vowels: forms of one word share one for regular
    inflection; other words may share it by chance."""
    for old, new in _REPLACED.get(language, ()):
        if word.endswith(old) and len(word) - len(old) >= SHORTEST:
            word = word[: -len(old)] + new
            break
    endings = _LONGEST_FIRST.get(language, ())
    cut = [word[: -len(end)] for end in endings if word.endswith(end)] if word.endswith(endings) else []
    return tuple(dict.fromkeys(_bare(rest, language) for rest in (*cut, word) if len(rest) >= SHORTEST)) or (word,)


def _bare(rest: str, language: str) -> str:
    rest = _DOUBLED.sub(r"\1", rest)
    rest = rest[: max(len(rest.rstrip(_VOWELS)), SHORTEST)]
    if language == "nl":  # druif, druiven; huis, huizen
        rest = rest[:-1] + {"v": "f", "z": "s"}.get(rest[-1:], rest[-1:])
    return rest


def shared_with(word: str, base: str, language: str) -> int:
    """How many letters the folded `word` has in common with `base`, if it is `base` with another ending of the
    language, or none; else 0. To be asked of words with one stem."""
    for old, new in _REPLACED.get(language, ()):
        if word.endswith(old) and not base.endswith(old):
            word = word[: -len(old)] + new
            break
    if language in _DOUBLING:  # kat, katte; maan, manen
        word, base = _DOUBLED.sub(r"\1", word), _DOUBLED.sub(r"\1", base)
    same = sum(1 for _ in takewhile(lambda pair: pair[0] == pair[1], zip(word, base, strict=False)))
    ending, lost = word[same:], base[same:]
    if len(lost) == 1 and ending[:1] not in _VOWELS:  # druif, druiven: the last consonant changes
        ending = ending[1:]
    return same if len(lost) <= MOST_LOST and ending in _ALL_ENDINGS[language] else 0


def stems(word: str, languages: tuple[str, ...]) -> dict[str, list[str]]:
    """The possible stems of `word` in each language: the languages by stem."""
    found: dict[str, list[str]] = {}
    for language in languages:
        for one in possible_stems(word, language):
            found.setdefault(one, []).append(language)
    return found


_SPELLINGS = (
    (r"[tcz]ion(e|er|en|es|s)?$|zioni$|cao$|coes$|ties?$|cj[ae]$|ciok?$|tiot?$|sjon$|cij[aei]$", "sion"),
    (r"i(tat|dad|dade|teit|tet|teet|tate)(en|er|es|s)?$", "iti"),
    (r"sch|sh|sz|sj", "s"), (r"ph", "f"), (r"th", "t"), (r"qu|ck|ch", "k"), (r"c(?=[eiy])|z", "s"), (r"c|q", "k"),
    (r"x", "ks"), (r"[yj]", "i"), (r"w", "v"), (r"ae|oe", "e"), (r"ou|eu", "u"), (r"(.)\1", r"\1"),
    (r"[aeiou]*r?[aeiou]*$", lambda end: "r" if "r" in end[0] else ""), (r"f$", "v"),
)  # fmt: skip
_RESPELLED = tuple((re.compile(pattern), new) for pattern, new in _SPELLINGS)


@lru_cache(maxsize=1 << 14)
def skeleton(word: str) -> str:
    """What an international word keeps in all spellings: chronometer, Kronometer, cronómetro, all kronomet r.

    The spellings of Greek and Latin sounds are made one, and the ending's vowels left out."""
    for pattern, new in _RESPELLED:
        word = pattern.sub(new, word)
    return word
