"""What the closeness room asks of the lexicon: is it a word, how is it divided, what is it related to."""

from __future__ import annotations

from functools import lru_cache

from ..lexicon import kinds, lexicon, zipf

__all__ = ["divisions", "is_known", "meaning_of_words"]

COMMON = 3.0
"""Zipf value (once in a million words) from which readers see a word inside a longer one without help."""


@lru_cache(maxsize=1 << 16)
def is_known(word: str) -> bool:
    """Whether people know `word` as a word: it, or a form it is inflected from, stands in the lexicon."""
    return word.isascii() and (bool(lexicon().bases(word)) or "function word" in kinds(word))


@lru_cache(maxsize=1 << 16)
def divisions(word: str) -> tuple[tuple[str, ...], ...]:
    """The ways a reader may divide one closed word: whole, and at the best joint of two parts.

    A known word stays whole. Else the best joint of two known words (carfacts: car facts), or, failing that, of
    one known word at either end and a rest (zarkoperfume: zarko perfume).
    """
    if len(word) < 5 or not (word.isascii() and word.isalpha()) or is_known(word):
        return ((word,),)
    whole = ((word,),)
    two: list[tuple[float, tuple[str, str]]] = []
    one: list[tuple[float, tuple[str, str]]] = []
    for cut in range(2, len(word) - 1):
        left, right = word[:cut], word[cut:]
        first, second = _seen(left), _seen(right)
        if first and second:
            two.append((min(first, second) + min(len(left), len(right)) / 2, (left, right)))
        elif first and len(left) >= 4:
            one.append((first + len(left), (left, right)))
        elif second and len(right) >= 4:
            one.append((second + len(right), (left, right)))
    best = max(two or one, default=None)
    return (*whole, best[1]) if best else whole


def _seen(part: str) -> float:
    """How readily `part` is seen as a word inside another: its Zipf value, 0 if it is not seen."""
    if len(part) < 3 or not is_known(part):
        return 0.0
    common = zipf(part)
    return common if common >= (COMMON if len(part) > 3 else COMMON + 0.5) else 0.0


@lru_cache(maxsize=1 << 18)
def meaning_of_words(one: str, other: str) -> float | None:
    """Likeness in meaning of two words: in [0, 1], 1 = the same word; None if either is not in the lexicon."""
    return 1.0 if one == other else lexicon().closeness(one, other)
