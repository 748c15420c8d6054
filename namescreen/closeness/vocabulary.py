"""What the closeness room asks of the lexicon: is it a word, how is it divided, what is it related to."""

from __future__ import annotations

from functools import lru_cache

from ..lexicon import equivalents, foreign_words, kinds, lexicon, zipf
from ..text import best_joint

__all__ = [
    "base_forms",
    "has_meaning",
    "has_senses",
    "is_known",
    "meaning_similarity_of_words",
    "segmentations",
    "words_similar_in_meaning",
]

COMMON = 3.0
"""Zipf value (once in a million words) from which readers see a word inside a longer one without help."""


@lru_cache(maxsize=1 << 16)
def is_known(word: str) -> bool:
    """Whether people know `word` as a word: it, or a form it is inflected from, stands in the lexicon."""
    return bool(base_forms(word)) or "function word" in kinds(word)


def has_meaning(word: str) -> bool:
    """Whether something is known of what `word` means, in English or another language."""
    return is_known(word) or bool(equivalents(word))


def has_senses(word: str) -> bool:
    """Whether the meaning of `word` can be compared: it or an equivalent has senses in the lexicon, which
    function words have not."""
    return bool(base_forms(word)) or bool(equivalents(word))


def base_forms(word: str) -> tuple[str, ...]:
    """The words of the lexicon that `word` is a form of."""
    return lexicon().bases(word) if word.isascii() else ()


@lru_cache(maxsize=1 << 16)
def segmentations(word: str) -> tuple[tuple[str, ...], ...]:
    """The ways a reader may divide one closed word: whole, and at the best joint of two parts.

    A known word stays whole. Else the best joint of two known words (herbwell: herb well), or, failing that, of
    one known word at either end and a rest (zarvoplanter: zarvo planter).
    """
    if len(word) < 5 or not (word.isascii() and word.isalpha()) or is_known(word):
        return ((word,),)
    parts = best_joint(word, _joint_score)
    return ((word,), parts) if parts else ((word,),)


def _joint_score(left: str, right: str) -> tuple[int, float] | None:
    """How readily a joint is seen: how many of its parts are, then how well."""
    first, second = _seen(left), _seen(right)
    if first and second:
        return 2, min(first, second) + min(len(left), len(right)) / 2
    if first and len(left) >= 4:
        return 1, first + len(left)
    if second and len(right) >= 4:
        return 1, second + len(right)
    return None


def _seen(part: str) -> float:
    """How readily `part` is seen as a word inside another: its Zipf value, 0 if it is not seen."""
    if len(part) < 3:
        return 0.0
    common = zipf(part)  # asked first: it costs far less
    return common if common >= (COMMON if len(part) > 3 else COMMON + 0.5) and is_known(part) else 0.0


TRANSLATED = 0.9
"""What closeness in meaning counts when one word had to be translated: as much as between synonyms."""


@lru_cache(maxsize=1 << 18)
def meaning_similarity_of_words(one: str, other: str, least: float = 0.0) -> float | None:
    """Likeness in meaning of two words: in [0, 1], 1 = the same word; None if either is not in the lexicon.

    A word of another language means what its English equivalent means (TMEP 1207.01(b)(vi)). What is below `least`
    may come out as 0.
    """
    if one == other:
        return 1.0
    ours, theirs = equivalents(one), equivalents(other)
    pairs = [(one, yours.english) for yours in theirs] + [(mine.english, other) for mine in ours]
    pairs += [(mine.english, yours.english) for mine in ours for yours in theirs]
    known = [lexicon().closeness(one, other, least), *(_translated(*pair, least) for pair in pairs)]
    return max((value for value in known if value is not None), default=None)


def _translated(one: str, other: str, least: float) -> float | None:
    value = 1.0 if one == other else lexicon().closeness(one, other, least)
    return None if value is None else TRANSLATED * value


@lru_cache(maxsize=1 << 13)
def words_similar_in_meaning(word: str, least: float) -> dict[str, float]:
    """Every word whose `meaning_similarity_of_words` with `word` is at least `least`, with that value.

    Complete for `least` no lower than the floor of the lexicon's neighbourhoods (0.4) over `TRANSLATED`.
    """
    found: set[str] = set()
    for start in (word, *(equivalent.english for equivalent in equivalents(word))):
        near = {start, *(other for other, value in lexicon().neighbours(start).items() if value >= least)}
        found |= near
        found |= {foreign for english in near for foreign in foreign_words(english)}
    values = {other: meaning_similarity_of_words(word, other, least) for other in sorted(found - {word})}
    return {other: value for other, value in values.items() if value is not None and value >= least}
