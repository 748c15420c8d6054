"""The context of goods: the words that buyers connect with them, each with how closely.

Built once for a goods text, so that a thousand names can be held against it.
"""

from __future__ import annotations

from functools import lru_cache
from itertools import pairwise
from typing import NamedTuple

from ..lexicon import associated, association, lexicon, zipf
from .broader import ancestors, leading_senses
from .classification import likely_classes
from .nice import CLASSES
from .phrases import GoodsWord, goods_words
from .trade_table import is_term

__all__ = ["FOOD_CLASSES", "Context", "Near", "context"]

NAMES_GOODS = 1.0
SYNONYM = 0.95
CLOSE = 0.85  # derived, broader, narrower, sister
RELATED = 0.7  # parts, materials
ASSOCIATED = 0.75  # the most for association alone
SUBJECT = 0.65  # broader words for the goods, and the subject of their class
MODIFIER = 0.95  # a word of the goods text that is not the goods themselves
# The weights above say how plainly such a word describes the goods, in [0, 1]: an ordering, set by reasons as in
# `description`, not fitted.
FOOD_CLASSES = frozenset((29, 30, 31, 32, 33, 43))
EVERYDAY, BELONGS = 3.0, 0.05
"""Zipf value from which texts tell what a word belongs with, and the least association of two that do: a sense of
which they know nothing (wax, to rise) is a rare one. Ours; common practice, no source."""
AT_LARGE = frozenset("container implement device instrument covering structure equipment furnishing product".split())
"""Broader words for goods of which a kind need have nothing in common with them: a kettle and a bag are containers."""
WIDE = 3000
"""A sense with more senses than this below it (artifact, person) is too general to describe goods."""


class Near(NamedTuple):
    """How near a word is to the goods, in [0, 1], and how."""

    weight: float
    why: str
    names_goods: bool = False
    loose: bool = False
    """Whether a dictionary only relates it."""
    brought: bool = False
    """Whether it only brings the goods to mind."""


class Context(NamedTuple):
    """The goods words, every word near them, and the senses that goods of this kind come under."""

    words: tuple[GoodsWord, ...]
    near: dict[str, Near]
    senses: dict[str, Near]
    classes: tuple[int, ...]
    parts: frozenset[str] = frozenset()
    """Words that say something only together with others: sea salt is no sea."""

    @property
    def food(self) -> bool:
        """Whether the goods are food and drink, or their service."""
        return bool(self.classes) and self.classes[0] in FOOD_CLASSES


@lru_cache(maxsize=256)
def context(goods: str) -> Context:
    """The context of goods in plain words."""
    words = goods_words(goods)
    classes = likely_classes(goods)
    heads = {one.word for one in words if one.head}
    joined = {one.word for one in words} | {f"{one.word} {two.word}" for one, two in pairwise(words)}
    joined = {one for one in joined if " " in one and (lexicon().known(one) or is_term(one))}
    parts = frozenset(part for one in joined for part in one.split()) - heads
    near: dict[str, Near] = {}
    senses: dict[str, Near] = {}

    def add(word: str, weight: float, why: str, names_goods: bool = False, *, loose: bool = False,
            brought: bool = False) -> None:  # fmt: skip
        if word not in near or weight > near[word].weight:
            near[word] = Near(weight, why, names_goods, loose, brought)

    for one in words:
        add(one.word, NAMES_GOODS if one.head else MODIFIER, f'"{one.word}" is a word for the goods', one.head)
        for other, closeness in lexicon().neighbours(one.word).items():
            if closeness >= 0.85:
                add(other, SYNONYM, f'another word for "{one.word}"', one.head)
            elif _in_rare_sense(other, one.word):
                continue
            elif closeness >= 0.6:
                add(other, CLOSE, f'close in meaning to "{one.word}"')
            elif closeness >= 0.4:
                add(other, RELATED, f'related to "{one.word}"', loose=True)
        for other, strength in associated(one.word).items() if one.word not in parts else ():
            add(other, ASSOCIATED * strength, f'brings "{one.word}" to mind', brought=True)
        for sense_id, strength in leading_senses(one.word, 2):
            if lexicon().entry(sense_id).below < WIDE and sense_id not in senses:
                weight = (CLOSE if one.head else RELATED) * strength
                senses[sense_id] = Near(weight, f'a kind of "{one.word}"', one.head)
    for subject, weight, names_goods in _subjects(words, classes):
        add(subject, weight, f'goods of this kind are "{subject}"', names_goods)
        for sense_id, strength in leading_senses(subject, 1):
            if lexicon().entry(sense_id).below < WIDE and subject not in AT_LARGE and _comes_under(sense_id, heads):
                senses.setdefault(sense_id, Near(SUBJECT * strength, f'a kind of "{subject}"'))
    return Context(words, near, senses, classes, parts)


def _comes_under(sense_id: str, heads: set[str]) -> bool:
    """Whether any of the goods is of a kind, or known to no dictionary: a bag for bicycles is in the class of vehicles,
    and is none."""
    held = [[sense for sense, _ in leading_senses(head, 4)] for head in heads]
    return not all(held) or any(sense_id in ancestors(sense) for senses in held for sense in senses)


def _in_rare_sense(other: str, word: str) -> bool:
    """Whether two everyday words that a dictionary relates never go together: one of them has a rare sense there."""
    everyday = min(zipf(other), zipf(word)) >= EVERYDAY
    return everyday and (association(*sorted((other, word))) or 0.0) < BELONGS


def _subjects(words: tuple[GoodsWord, ...], classes: tuple[int, ...]) -> list[tuple[str, float, bool]]:
    """Broader words for the goods (jeans: trousers, garment, clothing), and the words of their class's subject.

    Each comes with its weight, and whether it may still name the goods themselves: one step up, as gun for firearms.
    """
    found: dict[str, tuple[float, bool]] = {}
    for one in words:
        layer = [sense_id for sense_id, _ in leading_senses(one.word, 1)] if one.head else []
        for step in range(3):
            layer = [
                up
                for sense_id in layer
                for up in lexicon().related_ids(sense_id, "@", "@i")
                if lexicon().entry(up).below < WIDE / 4
            ]
            for name in (name.lower() for up in layer for name in lexicon().entry(up).words):
                found.setdefault(name, (CLOSE, True) if step == 0 else (SUBJECT, False))
    for number in classes[:1]:
        for subject in goods_words(CLASSES[number]):
            if leading_senses(subject.word, 1):
                found.setdefault(subject.word, (SUBJECT, False))
    return [(word, weight, names_goods) for word, (weight, names_goods) in found.items()]
