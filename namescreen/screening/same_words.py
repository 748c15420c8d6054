"""Names that are the same words of a language in other forms, or turned round: bel sogno, sogni belli. Letters and
sounds tell them apart more than their buyers do (EUIPO Guidelines, part C, section 2, chapter 4, on conceptual
comparison)."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from itertools import permutations

from ..lexicon.language_codes import language_name
from ..text import parse

__all__ = ["COUNTS", "same_words", "told_of_forms"]

COUNTS = 0.85
"""What the closeness of such names counts, in [0, 1]: above marks that share a word, below the same words as they
stand. Ours, not fitted."""
MOST_WORDS, COMMON_LETTERS = 3, 3
"""Words of the longest names that are compared, and the letters with which the forms of a word begin alike, or all but
the last of a shorter word. Ours."""
_SURE = 0.5


def same_words(name: str, mark: str, languages: Iterable[str]) -> str:
    """The language besides English, of those given, of which `name` and `mark` are the same words, two or more, in
    other forms or in another order; "" if they are not."""
    ours, theirs = parse(name).words, parse(mark).words
    if not 1 < len(ours) <= MOST_WORDS or len(ours) != len(theirs) or ours == theirs:
        return ""
    for language in languages:
        if language != "en" and any(
            all(_is_one_word(one, other, language) for one, other in zip(ours, order, strict=True))
            for order in permutations(theirs)
        ):
            return language
    return ""


@lru_cache(maxsize=1 << 13)
def _is_one_word(one: str, other: str, language: str) -> bool:
    """Whether two words of a language begin alike and mean the same, as forms of one do."""
    from ..lexicon import translations

    shared = min(COMMON_LETTERS, len(one), len(other))
    if one == other:
        return True
    if one[:shared] != other[:shared]:
        return False
    meant = ({each.english for each in translations(word, language) if each.score >= _SURE} for word in (one, other))
    return not next(meant).isdisjoint(next(meant))


def told_of_forms(name: str, mark: str, language: str) -> str:
    """That both are the same words, as a sentence."""
    return f'Both are the same words of {language_name(language)}, in another form or order: "{name}" and "{mark}".'
