"""Marks that translate a name into a language of the buyers, and marks in English that translate a foreign name.

Offices and courts compare a name with foreign words of the same meaning where buyers would translate (doctrine of
foreign equivalents: TMEP 1207.01(b)(vi); EUIPO Guidelines, part C, section 2, chapter 4, on conceptual comparison). A
mark of several foreign words is found by its meaning. A compound written as one word is not, so compounds of the name's
words are searched for as well, and what a foreign name is in English.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from itertools import islice, product

from ..text import parse, split_closed_compound

__all__ = ["other_forms", "translated_in"]

_MOST_WORDS = 3  # a longer name is a phrase, whose words do not add up to a compound
ENGLISH = "en"
_OF_A_WORD, _OF_A_NAME = 2, 3  # compounds searched for in one language
_SURE = 0.5  # score from which a translation is relied on


@lru_cache(maxsize=4096)
def _words(name: str) -> tuple[str, ...]:
    """The content words of a name, closed compounds of known words divided."""
    from ..lexicon import kinds, zipf

    words = (part for word in parse(name).words for part in split_closed_compound(word, zipf))
    return tuple(word for word in words if "function word" not in kinds(word))


def other_forms(name: str, languages: Sequence[str]) -> tuple[str, ...]:
    """`name` as it may stand in a register in other words: as one word in those of `languages` that write compounds so,
    and in English where every word of it is a word of one of them. Empty where a word is not known there."""
    from ..connotations.languages import COMPOUNDING, code
    from ..lexicon import equivalents_in

    words = _words(name)
    if not 1 <= len(words) <= _MOST_WORDS:
        return ()
    found: dict[str, None] = {}
    for language in dict.fromkeys(map(code, languages)):
        if language in COMPOUNDING and len(words) > 1:
            choices = [equivalents_in(word, language)[:_OF_A_WORD] for word in words]
            found.update(dict.fromkeys("".join(one) for one in islice(product(*choices), _OF_A_NAME)))
        english = [_english(word, language)[:_OF_A_WORD] for word in words]
        found.update(dict.fromkeys(" ".join(one) for one in islice(product(*english), _OF_A_NAME)))
    return tuple(text for text in found if parse(text).words != parse(name).words)


@lru_cache(maxsize=4096)
def _english(word: str, language: str) -> tuple[str, ...]:
    """What `word` of a language means in English, where that can be relied on, best first."""
    from ..lexicon import translations

    return tuple(one.english for one in translations(word, language) if one.score >= _SURE)


def translated_in(name: str, mark: str, languages: Sequence[str]) -> str:
    """The language (BCP 47) in which `mark` says every content word of `name`; "" if it does not.

    The words that both share are said; one at least must be said by a translation, of the mark's word, of the name's
    (then the mark's language is English), or of both. English is always among the languages of the buyers.
    """
    from ..connotations.languages import code

    wanted, theirs = _words(name), _words(mark) or parse(mark).words
    if not wanted or set(wanted) <= set(theirs):
        return ""
    asked = tuple(dict.fromkeys(map(code, languages)))
    english = frozenset(theirs)
    said = {language: _senses(theirs, language) for language in asked}
    meant = {(word, language): _senses((word,), language) for word in wanted for language in asked}
    for language in asked:
        others = [one for one in asked if one != language]
        if all(
            word in english | said[language] or any(meant[word, other] & said[language] for other in others)
            for word in wanted
        ):
            return language
    if all(word in english or any(meant[word, language] & english for language in asked) for word in wanted):
        return ENGLISH
    return ""


@lru_cache(maxsize=4096)
def _senses(words: tuple[str, ...], language: str) -> frozenset[str]:
    """The English words that say what `words` of a language say."""
    found = {english for word in words for english in _english(word, language)}
    return frozenset(found | {part for english in found for part in english.split()})
