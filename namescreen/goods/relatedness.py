"""How related two lists of goods are: by their Nice classes, and by what their words mean."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache

from ..lexicon import association, lexicon
from ..outcome import NotChecked
from .classification import likely_classes
from .nice import COORDINATED, is_service
from .terms import GoodsWord, goods_words

__all__ = ["Relatedness", "relatedness"]

# What shared classes are worth on their own. A class is an administrative drawer: goods are not similar
# because they share one, nor different because they do not (Directive (EU) 2015/2436, Article 39(7)). Ours,
# not fitted.
SAME_CLASS = 0.5
COORDINATED_CLASS = 0.3
RETAIL_OF_GOODS = 0.25
GUESSED = 0.8  # classes guessed from words, not stated


@dataclass(frozen=True, slots=True)
class Relatedness:
    """`score` in [0, 1], 1 = the same goods, 0 = nothing found in common; `reasons` say what was found."""

    score: float
    reasons: tuple[str, ...] = ()


def relatedness(
    goods_a: str, goods_b: str, classes_a: Iterable[int] = (), classes_b: Iterable[int] = ()
) -> Relatedness | NotChecked:
    """How related two lists of goods or services are, from their words and Nice classes; symmetric.

    Classes that are not stated are guessed from the words, and count for less. `NotChecked` if one side
    states nothing, or nothing that is understood."""
    return _relatedness(goods_a, goods_b, tuple(sorted(set(classes_a))), tuple(sorted(set(classes_b))))


@lru_cache(maxsize=1 << 15)
def _relatedness(
    goods_a: str, goods_b: str, classes_a: tuple[int, ...], classes_b: tuple[int, ...]
) -> Relatedness | NotChecked:
    for goods, classes in ((goods_a, classes_a), (goods_b, classes_b)):
        if not classes and not goods_words(goods):
            return NotChecked("goods_relatedness", "no goods or classes are stated for one of the two")
    by_class, class_reasons = _by_class(goods_a, goods_b, classes_a, classes_b)
    by_word, word_reasons = _by_words(goods_words(goods_a), goods_words(goods_b))
    if not class_reasons and not (goods_words(goods_a) and goods_words(goods_b)):
        guessed = not (classes_a or likely_classes(goods_a)) or not (classes_b or likely_classes(goods_b))
        if guessed:
            return NotChecked("goods_relatedness", "the class of the goods in words is not known")
    score = 1 - (1 - by_class) * (1 - by_word)
    return Relatedness(round(min(score, 1.0), 4), (*class_reasons, *word_reasons))


def _by_class(
    goods_a: str, goods_b: str, stated_a: tuple[int, ...], stated_b: tuple[int, ...]
) -> tuple[float, tuple[str, ...]]:
    all_a = stated_a or likely_classes(goods_a)
    all_b = stated_b or likely_classes(goods_b)
    trust = (1.0 if stated_a else GUESSED) * (1.0 if stated_b else GUESSED)
    how = "" if stated_a and stated_b else " (guessed from the goods)"
    shared = sorted(set(all_a) & set(all_b))
    if shared:
        numbers = ", ".join(map(str, shared))
        return SAME_CLASS * trust, (f"{'class' if len(shared) == 1 else 'classes'} {numbers} on both sides{how}",)
    pairs = sorted((min(a, b), max(a, b)) for a in all_a for b in all_b if frozenset((a, b)) in COORDINATED)
    if pairs:
        low, high = pairs[0]
        return COORDINATED_CLASS * trust, (f"classes {low} and {high} are often searched together{how}",)
    if any((a == 35 and not is_service(b)) or (b == 35 and not is_service(a)) for a in all_a for b in all_b):
        return RETAIL_OF_GOODS * trust, (f"retail services and goods that may be sold there{how}",)
    return 0.0, ()


def _by_words(words_a: tuple[GoodsWord, ...], words_b: tuple[GoodsWord, ...]) -> tuple[float, tuple[str, ...]]:
    """The closest pair of goods words, in [0, 1], and what they are.

    A modifier counts 0.6 of a head, below 0.2 nothing is told, and only equal lists exceed 0.9: ours, not fitted.
    """
    if not words_a or not words_b:
        return 0.0, ()
    if {w.word for w in words_a} == {w.word for w in words_b}:
        return 1.0, ("the same goods words",)
    best: list[tuple[float, str, str]] = []
    for one in words_a:
        for other in words_b:
            weight = (1.0 if one.head else 0.6) * (1.0 if other.head else 0.6)
            best.append((round(weight * _word_closeness(*sorted((one.word, other.word))), 4), one.word, other.word))
    score, one_word, other_word = max(best, key=lambda found: (found[0], sorted(found[1:])))
    if score < 0.2:
        return 0.0, ()
    low, high = sorted((one_word, other_word))
    reason = f"both name {low}" if low == high else f"{low} and {high} are related"
    return 0.9 * score, (reason,)


@lru_cache(maxsize=1 << 16)
def _word_closeness(word_a: str, word_b: str) -> float:
    """Closeness in meaning, distant relations counting half; or association, 0.6 at most. Ours, not fitted."""
    if word_a == word_b:
        return 1.0
    meaning = lexicon().closeness(word_a, word_b) or 0.0
    return max(meaning if meaning >= 0.4 else meaning / 2, 0.6 * (association(word_a, word_b) or 0.0))
