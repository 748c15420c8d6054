"""Inflected forms and compounds of other languages: what a form has in common with its base form, and where words join.

The endings are the regular ones of nouns and adjectives, folded, from memory of each language's grammar. They only
lead to words in the table, so a missing ending costs a word and a superfluous one rarely matters."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from functools import cache, lru_cache
from operator import itemgetter

__all__ = [
    "BITS", "COMPOUNDING", "LINKING", "NOUN_FIRST", "WITH_DIMINUTIVES", "base_stem", "bits_of", "endings_of",
    "is_feminine_of", "is_genitive_of", "languages_by_stem", "made_small", "possible_bases", "possible_stems",
    "shared_with", "skeleton",
]  # fmt: skip

_GENITIVES = {"de": ("s", "es"), "sv": ("s",), "da": ("s",), "nb": ("s",)}
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
    "it": "i e a o he hi",
    "fr": "s x es e",
    "ro": "uri e i le ul a ele ile lor ea ii u ului",
    "pl": "y i a e ie ow ki ami ach u em om",
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
_CONSONANT, _VOWEL = "[bcdfghjklmnpqrstvwxz]", "[aeiouy]"
CHANGES: dict[str, tuple[tuple[str, str], ...]] = {
    "fi": (
        ("set$", "nen"), ("kset$", "s"), ("det$", "s"), ("eet$", "e"), ("aat$", "as"), ("iit$", "is"), ("imet$", "in"),
        # the weak grade of a closed syllable
        *((f"{weak}({_VOWEL}{{1,2}}[tn])$", rf"{strong}\1") for weak, strong in (
            ("ng", "nk"), ("mm", "mp"), ("nn", "nt"), ("ll", "lt"), ("rr", "rt"), ("d", "t"), ("v", "p"))),
        (f"({_VOWEL}[lrh]?)({_VOWEL}[tn])$", r"\1k\2"),
    ),
    "sv": ((f"({_CONSONANT})([lnr])(ar|a|arna)$", r"\1e\2"), ("cker$", "k")),
    "da": ((f"({_CONSONANT})([lnr])(er|e|erne)$", r"\1e\2"),),
    "nb": ((f"({_CONSONANT})([lnr])(er|e|ene)$", r"\1e\2"),),
    "hu": tuple((f"({_CONSONANT})([bdglmrsz])[aeo]k$", rf"\1{vowel}\2") for vowel in "oe"),
    "es": (("ces$", "z"),),
    "pt": (
        ("ais$", "al"), ("eis$", "el"), ("eis$", "il"), ("ois$", "ol"), ("uis$", "ul"), ("[oa]es$", "ao"), ("ns$", "m"),
    ),
    "ro": (
        ("toare$", "tor"), ("ori$", "oare"), (f"oa({_CONSONANT}+)e$", r"o\1"), (f"e({_CONSONANT}+)[ei]$", r"a\1a"),
        (f"e({_CONSONANT}+)i$", r"ea\1a"), (f"a({_CONSONANT}+)i$", r"oa\1a"), (f"o({_CONSONANT}+)i$", r"oa\1a"),
        ("aie$", "au"), ("zi$", "d"), ("ele$", "ea"),
    ),
    "fr": (("eaux$", "eau"), ("aux$", "al"), ("euses?$", "eur"), ("ives?$", "if")),
    "pl": ((f"({_CONSONANT})([lnrkc])(i|e|y|a|ow)$", r"\1e\2"), ("iona$", "ie")),
    "cs": ((f"({_CONSONANT})([lnrkc])(i|e|y|a|u)$", r"\1e\2"),),
    "sk": ((f"({_CONSONANT})([lnrkc])(i|e|y|a|ov)$", r"\1e\2"), (f"({_CONSONANT})k(y|a|ov)$", r"\1ok")),
}  # fmt: skip
"""How the end of an inflected form leads back to the base form where more than the ending changes."""
_LAST_LETTERS = {
    "fi": "tn", "sv": "ra", "da": "re", "nb": "re", "hu": "k", "es": "s", "pt": "s", "ro": "ei", "fr": "xse",
    "pl": "ieyaw", "cs": "ieyau", "sk": "ieyav",
}  # fmt: skip
"""The letters that the forms of `CHANGES` end in, so that others need no search."""
_CHANGING = {
    letter: frozenset(language for language, letters in _LAST_LETTERS.items() if letter in letters)
    for letter in frozenset("".join(_LAST_LETTERS.values()))
}
_LONGEST_CHANGE = 8
_ALL_ENDINGS = {code: frozenset(("", *text.split())) for code, text in _ENDINGS.items()}
BITS = {code: 1 << at for at, code in enumerate(_ENDINGS)}
"""The languages, each as one bit of a number: where millions of sets of them are made, a set is such a number."""


def bits_of(languages: Iterable[str]) -> int:
    """A set of languages as a number."""
    return sum(map(BITS.__getitem__, frozenset(languages)))


LANGUAGES_OF_ENDING = {
    ending: bits_of(code for code, endings in _ALL_ENDINGS.items() if ending in endings)
    for ending in frozenset[str]().union(*_ALL_ENDINGS.values())
}
_LONGEST_ENDING = max(map(len, LANGUAGES_OF_ENDING))
_EVERY_LANGUAGE = bits_of(_ENDINGS)
_CHANGED_IN_DUTCH = {"v": "f", "z": "s"}
_DOUBLED, _THE_LETTER = re.compile(r"(.)\1"), itemgetter(1)
_DOUBLING = frozenset({"nl", "da", "nb", "sv", "fi"})
"""Languages whose letters are doubled or not with the ending."""
VOWELS = "aeiouyαεηιουωаеиоуыэюяі"
SHORTEST = 3
"""The fewest letters that must remain when an ending is taken off."""
MOST_LOST = 2
"""The most letters of a base form that an ending may replace (trinken, Trink-; veitsi, veitset)."""

_WITH_FEMININE = frozenset({"es", "pt"})
COMPOUNDING = frozenset({"de", "nl", "sv", "da", "nb", "fi", "et", "hu"})
"""Languages that write a compound as one word. Most linking elements between its parts are endings as well."""
NOUN_FIRST = frozenset("fr es it pt ro pl cs sk hr sl ru uk bg el".split())
"""Languages in which another noun that says of what kind a thing is, or for what, follows its noun; adjectives stand
after it (Romance) or mostly before it (Slavic, Greek)."""


_LINKING = {
    "de": "e s es n en er ens",
    "nl": "s e en er n",
    "sv": "s e a o u",
    "da": "s e er",
    "nb": "s e er",
    "fi": "n en in den",
    "et": "e a i u",
    "hu": "i as es os",
}
"""What may stand between the parts of a compound: linking elements and, in Finnish and Estonian, the genitive."""
LINKING = {code: tuple(text.split()) for code, text in _LINKING.items()}
_ALL_LINKING = {code: frozenset(("", *links)) for code, links in LINKING.items()}

DIMINUTIVES = {
    "es": ("(?:ec|c)?(?:it|ill)([oa])s?", ("", "e", r"\2")),
    "it": ("(?:ic|c)?(?:in|ett|ell)([oaie])", ("e", r"\2")),
    "pt": ("z?inh([oa])s?", ("", "e", r"\2")),
    "fr": ("(?:ette|et|eau|on)s?", ("", "e")),
    "de": ("(?:chen|lein)", ("", "e", "en")),
}  # fmt: skip
"""How diminutives end, and what the word that they are made from ends in instead (the second group: the same vowel);
the changes of its last consonant are those of `_RESTORED`. From memory of each language's grammar, folded."""
WITH_DIMINUTIVES = frozenset(DIMINUTIVES)
"""Languages whose diminutives are known by their endings."""
_RESTORED = (("qu", "c"), ("gu", "g"), ("ch", "c"), ("gh", "g"), ("c", "z"), ("", ""))
"""What the last consonant before a diminutive's ending was (boca, boquita; fuoco, fuochetto; luz, lucecita)."""


def made_small(word: str, language: str) -> list[str]:
    """The words that `word` may be a diminutive of (rana, ranita; Maus, Mäuschen); empty if it ends in none of the
    language's endings for them."""
    if language not in DIMINUTIVES:
        return []
    pattern, endings = _diminutives()[language]
    match = pattern.fullmatch(word)
    if not match:
        return []
    stem = match[1]
    stems = [stem[: len(stem) - len(now)] + before for now, before in _RESTORED if stem.endswith(now)]
    return list(dict.fromkeys(one + match.expand(ending) for one in stems for ending in endings))


@cache
def _diminutives() -> dict[str, tuple[re.Pattern[str], tuple[str, ...]]]:
    return {code: (re.compile(f"(.{{2,}}){ending}"), endings) for code, (ending, endings) in DIMINUTIVES.items()}


def base_stem(word: str, language: str) -> str:
    """The stem of a word that is known to be a base form: it has no ending to lose."""
    return possible_stems(word, language)[-1]


def possible_stems(word: str, language: str) -> tuple[str, ...]:
    """The stems of `word` by every ending it may have, the longest ending first; the last takes no ending off.

    A stem is a form without its ending, doubled letters and final vowels: forms of one word share one for regular
    inflection; other words may share it by chance."""
    found = (stem for one in restored(word, language) for stem in _stems_by_ending(one, language))
    return tuple(dict.fromkeys(found))


@lru_cache(maxsize=1 << 16)
def languages_by_stem(word: str) -> dict[str, int]:
    """The `possible_stems` of `word`, each with the languages in which it is one (`BITS`); do not change the result.

    Most languages take the same endings off in the same way, so this is found for all of them at once.
    """
    if len(word) < SHORTEST:
        return {word: _EVERY_LANGUAGE}
    found = {_bare(word): _EVERY_LANGUAGE}
    for size in range(min(_LONGEST_ENDING, len(word) - SHORTEST), 0, -1):
        languages = LANGUAGES_OF_ENDING.get(word[-size:])
        if languages:
            stem = _bare(word[:-size])
            found[stem] = found.get(stem, 0) | languages
    apart = [*_changed(word)]
    if any(stem[-1] in _CHANGED_IN_DUTCH for stem in found):
        apart.append("nl")
    if apart:
        regular = _EVERY_LANGUAGE - bits_of(apart)
        found = {stem: languages & regular for stem, languages in found.items()}
        for language in apart:
            for stem in possible_stems(word, language):
                found[stem] = found.get(stem, 0) | BITS[language]
    return found


@cache
def _changes(language: str) -> tuple[tuple[re.Pattern[str], str], ...]:
    return tuple((re.compile(pattern), new) for pattern, new in CHANGES[language])


@cache
def _any_change(last: str) -> re.Pattern[str]:
    """What is found in a word with this last letter where more than its ending may have changed in some language."""
    return re.compile("|".join(pattern for code in _CHANGING[last] for pattern, _ in CHANGES[code]))


@lru_cache(maxsize=1 << 16)
def _changed(word: str) -> dict[str, list[str]]:
    """The languages in which more than the ending of `word` may have changed, each with what it may have come from."""
    end, found = word[-_LONGEST_CHANGE:], dict[str, list[str]]()
    if word[-1:] not in _CHANGING or not _any_change(word[-1]).search(end):
        return found
    for language in _CHANGING[word[-1]]:
        for pattern, new in _changes(language):
            one = word[:-_LONGEST_CHANGE] + pattern.sub(new, end) if pattern.search(end) else ""
            if len(one) >= SHORTEST:
                found.setdefault(language, []).append(one)
    return found


def restored(word: str, language: str) -> tuple[str, ...]:
    """What `word` may have come from where more changes than the ending (lapices, lapiz); last, itself."""
    return (*_changed(word).get(language, ()), word)


def _stems_by_ending(word: str, language: str) -> tuple[str, ...]:
    endings = _ALL_ENDINGS.get(language, ())
    longest = min(_LONGEST_ENDING, len(word) - SHORTEST)
    bare = [_bare(word[:-size]) for size in range(longest, 0, -1) if word[-size:] in endings]
    if len(word) >= SHORTEST:
        bare.append(_bare(word))
    if language == "nl":  # druif, druiven; huis, huizen
        bare = [rest[:-1] + _CHANGED_IN_DUTCH.get(rest[-1:], rest[-1:]) for rest in bare]
    return tuple(dict.fromkeys(bare)) or (word,)


def _undoubled(word: str) -> str:
    return _DOUBLED.sub(_THE_LETTER, word) if _DOUBLED.search(word) else word  # most have none, and a search costs less


def _bare(rest: str) -> str:
    rest = _undoubled(rest)
    return rest[: max(len(rest.rstrip(VOWELS)), SHORTEST)]


def shared_with(word: str, base: str, language: str, linked: bool = False) -> int:
    """How many letters the folded `word` has in common with `base`, if it is `base` with another ending of the
    language, or none; else 0. To be asked of words with one stem. If `linked`, it stands before another part of a
    compound, and ends as words do there."""
    endings = (_ALL_LINKING if linked else _ALL_ENDINGS)[language]
    ours, theirs = restored(word, language), restored(base, language)  # goods lists are mostly in the plural
    return max([_shared(one, listed, language, endings) for one in ours for listed in theirs])


@cache
def endings_of(language: str) -> tuple[str, ...]:
    """The endings of inflection of a language, the shortest first."""
    return tuple(sorted(_ALL_ENDINGS.get(language, frozenset()) - {""}, key=lambda ending: (len(ending), ending)))


@lru_cache(maxsize=1 << 13)
def possible_bases(word: str, language: str) -> tuple[str, ...]:
    """What the folded `word` may be an inflected form of: for a table that holds full words."""
    endings = ("", *endings_of(language))
    cut = [(one, one.removesuffix(ending)) for one in restored(word, language) for ending in endings]
    stems = dict.fromkeys(stem for one, stem in cut if len(stem) >= SHORTEST and (stem != one or one != word))
    bases = dict.fromkeys((*stems, *(stem + last for stem in stems for last in "eoa")))
    return tuple(base for base in bases if base != word and shared_with(word, base, language))


def is_feminine_of(word: str, base: str, language: str) -> bool:
    """Whether `word` may be the feminine of `base`, as Spanish and Portuguese make it (tranquilo, tranquila). Many
    other words differ so too (puerto, puerta): to be asked of a word that is not itself in the table."""
    return language in _WITH_FEMININE and base[-1:] == "o" and word in (f"{base[:-1]}a", f"{base[:-1]}as")


def is_genitive_of(word: str, base: str, language: str) -> bool:
    """Whether `word` would be the genitive of `base`, which hardly stands alone in a name."""
    return word in (base + end for end in _GENITIVES.get(language, ()))


def _shared(word: str, base: str, language: str, endings: frozenset[str]) -> int:
    if language in _DOUBLING:  # kat, katte; maan, manen
        word, base = _undoubled(word), _undoubled(base)
    shortest = min(len(word), len(base))
    same = next((at for at in range(shortest) if word[at] != base[at]), shortest)
    ending, lost = word[same:], base[same:]
    if len(lost) == 1 and ending[:1] not in VOWELS:  # druif, druiven: the last consonant changes
        ending = ending[1:]
    return same if len(lost) <= MOST_LOST and ending in endings else 0


_SPELLINGS = (
    (r"[tcz]ion(e|er|en|es|s)?$|zioni$|cao$|coes$|ties?$|cj[ae]$|ciok?$|tiot?$|sjon$|cij[aei]$", "sion"),
    (r"i(tat|dad|dade|teit|tet|teet|tate)(en|er|es|s)?$", "iti"),
    (r"sch|sh|sz|sj", "s"), (r"ph", "f"), (r"th", "t"), (r"qu|ck|ch", "k"), (r"c(?=[eiy])|z", "s"),
)  # fmt: skip
_LETTERS = str.maketrans({"c": "k", "q": "k", "x": "ks", "y": "i", "j": "i", "w": "v"})
_TWO_VOWELS = ((r"ae|oe", "e"), (r"ou|eu", "u"))
"""Spellings of one sound, and the one that stands for them; where several rows apply, in this order."""


@cache
def _respelled(spellings: tuple[tuple[str, str], ...]) -> tuple[tuple[Callable[[str, str], str], str], ...]:
    return tuple((re.compile(pattern).sub, new) for pattern, new in spellings)


@lru_cache(maxsize=1 << 14)
def skeleton(word: str) -> str:
    """What an international word keeps in all spellings: chronometer, Kronometer, cronómetro, all kronomet r.

    The spellings of Greek and Latin sounds are made one, and the ending's vowels left out."""
    for respelled, new in _respelled(_SPELLINGS):
        word = respelled(new, word)
    word = word.translate(_LETTERS)
    for respelled, new in _respelled(_TWO_VOWELS):
        word = respelled(new, word)
    word = _undoubled(word).rstrip("aeiou")
    if word.endswith("r"):
        return word[:-1].rstrip("aeiou") + "r"
    return word[:-1] + "v" if word.endswith("f") else word
