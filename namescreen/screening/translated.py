"""Marks that say a name in another language of the buyers.

Offices and courts compare a name with foreign words of the same meaning where buyers would translate (doctrine of
foreign equivalents: TMEP 1207.01(b)(vi); EUIPO Guidelines, part C, section 2, chapter 4, on conceptual comparison). A
mark of several foreign words is found by its meaning. A compound written as one word is not, so compounds of the name's
words are searched for as well.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from itertools import islice, product

from ..text import parse, split_closed_compound

__all__ = ["compounds", "translated_in"]

_MOST_WORDS = 3  # a longer name is a phrase, whose words do not add up to a compound
_OF_A_WORD, _OF_A_NAME = 2, 3  # compounds searched for in one language
_SURE = 0.5  # score from which a translation is relied on


@lru_cache(maxsize=4096)
def _words(name: str) -> tuple[str, ...]:
    """The telling words of a name, closed compounds of known words divided."""
    from ..lexicon import kinds, zipf

    words = (part for word in parse(name).words for part in split_closed_compound(word, zipf))
    return tuple(word for word in words if "function word" not in kinds(word))


def compounds(name: str, languages: Sequence[str]) -> tuple[str, ...]:
    """`name` as one word in those of `languages` that write compounds so; empty where a word is not known there."""
    from ..connotations.languages import COMPOUNDING, code
    from ..lexicon import equivalents_in

    words = _words(name)
    if not 1 < len(words) <= _MOST_WORDS:
        return ()
    found: dict[str, None] = {}
    for language in dict.fromkeys(map(code, languages)):
        if language in COMPOUNDING:
            choices = [equivalents_in(word, language)[:_OF_A_WORD] for word in words]
            found.update(dict.fromkeys("".join(one) for one in islice(product(*choices), _OF_A_NAME)))
    return tuple(found)


def translated_in(name: str, mark: str, languages: Sequence[str]) -> str:
    """The language (BCP 47) in which `mark` says every telling word of `name` in other words; "" if there is none."""
    from ..connotations.languages import code
    from ..lexicon import translations

    wanted, theirs = _words(name), parse(mark).words
    if not wanted or set(wanted) & set(theirs):
        return ""
    for language in dict.fromkeys(map(code, languages)):
        said = {one.english for word in theirs for one in translations(word, language) if one.score >= _SURE}
        said |= {part for english in said for part in english.split()}
        if all(word in said for word in wanted):
            return language
    return ""
