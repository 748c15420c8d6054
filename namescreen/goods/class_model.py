"""The model behind the Nice classes of a goods term: a multinomial logistic regression over its features.

Fitted by wordlists/build/goods_classes.py, which also fits how sure it may be: the less of a term it knows, the nearer
the chances come to one another. The weights are in wordlists/class_weights.tsv."""

from __future__ import annotations

import math
from array import array
from collections.abc import Callable
from functools import cache
from typing import NamedTuple

from ..lexicon import lexicon
from ..lexicon.embedding import product, vector
from ..tables import open_table
from .class_features import DENIED, features, listed_as
from .nice import CLASSES

__all__ = ["SAID", "Chances", "Model", "chances", "evidence", "shipped"]

Chances = dict[int, tuple[float, str]]
"""Class -> its chance, and the feature that speaks for it most."""
Row = tuple[tuple[int, float], ...]
"""The weights of a feature: the place of a class and its weight, where it has one."""

STEP = 0.125
"""What one step of a character means in the table."""
ZERO = 80
"""The character code that stands for weight 0."""
FIRST_CLASS = 48
"""The character code of class 1 in a row."""
VECTOR_STEP = 0.05
SAID, KNOWN, VECTORS = "whb", "whbnmgk", "ed"
"""Features that are words of the goods, those by which they count as understood (not a beginning alone), and those that
stand for the vector of a word."""
DENSE = 0.35
"""How much the vectors of words count beside the features, whose length is 1 together; by cross-validation."""
LISTED = 0.98
"""The chance of the class of a term that stands in the alphabetical list of the Nice Classification. Of the terms of EU
trade marks that stand there, 521 of 526 of one word and 1,456 of 1,456 longer ones are in the class of the list; those
are worded as offices word them, so a little less."""


IN_LIST = "named so in the Nice list"


class Model(NamedTuple):
    """The weights of a fit: of features, of the vectors of words (class by class), what makes the model sure, and
    the classes of whole terms."""

    row: Callable[[str], Row | None]
    of_vector: Callable[[str], tuple[float, ...]]
    sure: tuple[float, ...]
    listed: Callable[[str], tuple[int, ...]]


def read_row(text: str) -> Row:
    """The weights of a row of the table: pairs of two characters, for a class and its weight."""
    return tuple((ord(text[at]) - FIRST_CLASS, STEP * (ord(text[at + 1]) - ZERO)) for at in range(0, len(text), 2))


@cache
def shipped() -> Model:
    """The model of the shipped table."""
    return read_model(open_table("class_weights.tsv").get)


def read_model(get: Callable[[str], str | None]) -> Model:
    """The model of a table, of which each row is read once."""
    columns: dict[str, list[array[float]]] = {}

    @cache
    def row(feature: str) -> Row | None:
        text = get(feature)
        return None if text is None else read_row(text)

    def of_vector(feature: str) -> tuple[float, ...]:
        kind = feature[0]
        if kind not in columns:
            texts = (get(f"{kind}:{number:02}") or "" for number in CLASSES)
            columns[kind] = [array("d", [VECTOR_STEP * (ord(symbol) - ZERO) for symbol in text]) for text in texts]
        return _times(feature[2:], columns[kind])

    def listed(text: str) -> tuple[int, ...]:
        return tuple(ord(symbol) - FIRST_CLASS + 1 for symbol in get(f"t:{text}") or "")

    return Model(row, cache(of_vector), tuple(map(float, (get("sure") or "").split())), listed)


def _times(word: str, columns: list[array[float]]) -> tuple[float, ...]:
    """The products of the vector of a word with a column for each class; empty if it has none."""
    found = vector(word, lexicon().bases)
    return () if found is None else tuple(product(found, column) for column in columns)


def evidence(known: dict[str, float], seen: dict[str, float]) -> tuple[float, ...]:
    """What makes the model sure of a term: 1, whether its head is known, whether a pair of its words is, the share of
    its features that are, whether its head is a word that nobody knows, and whether another is, [0, 1] each."""
    share = sum(value * value for value in known.values()) / sum(value * value for value in seen.values())
    of_kind = (any(feature.startswith(kind) for feature in known) for kind in ("h:", "b:"))
    words = (feature[2:] for feature in seen if feature.startswith("w:") and feature not in known)
    strange = {word for word in words if _strange(word)}
    heads = {word for word in strange if f"h:{word}" in seen}
    return 1.0, *map(float, of_kind), share, float(bool(heads)), float(bool(strange - heads))


@cache
def _strange(word: str) -> bool:
    return not lexicon().known(word) and vector(word, lexicon().bases) is None


def chances(text: str, model: Model) -> Chances:
    """The chance of each class for one goods term; empty if nothing of it is known. A whole term of the alphabetical
    list is in the class that it has there."""
    seen = features(text)
    vectors = {feature: seen.pop(feature) for feature in [*seen] if feature[0] in VECTORS}
    rows = {feature: row for feature in seen if (row := model.row(feature)) is not None}
    listed = model.listed(listed_as(text))
    if not listed and not any(feature[0] in KNOWN and feature[2:3] != DENIED for feature in rows):
        return {}
    known = {feature: seen[feature] for feature in rows}
    length = math.sqrt(sum(value * value for value in known.values()))
    sums = [0.0] * len(CLASSES)
    told = [(0.0, "")] * len(CLASSES)
    for feature, row in rows.items():
        unit = seen[feature] / length
        for at, weight in row:
            sums[at] += unit * weight
            plain = unit * (weight if feature[0] in SAID else weight / 2)  # a word of the goods explains more
            if plain > told[at][0] and feature[0] in KNOWN:
                told[at] = (plain, feature)
    for feature, value in vectors.items():
        for at, one in enumerate(model.of_vector(feature)):
            sums[at] += DENSE * value * one
    scale = math.exp(sum(weight * one for weight, one in zip(model.sure, evidence(known, seen), strict=True)))
    most = max(sums)
    odds = [math.exp(scale * (total - most)) for total in sums]
    whole = sum(odds)
    found = {number: (odds[number - 1] / whole, told[number - 1][1]) for number in CLASSES}
    return _as_listed(found, listed) if listed else found


def _as_listed(found: Chances, listed: tuple[int, ...]) -> Chances:
    """Chances that give the classes of the list their due, and what is left to the others."""
    of_list = sum(found[number][0] for number in listed) or 1.0
    rest = sum(chance for number, (chance, _) in found.items() if number not in listed) or 1.0
    return {
        number: (LISTED * chance / of_list, IN_LIST) if number in listed else ((1 - LISTED) * chance / rest, feature)
        for number, (chance, feature) in found.items()
    }
