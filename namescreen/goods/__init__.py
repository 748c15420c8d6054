"""Goods and services: Nice classes, how related two lists are, and how distinctive a name is for its
goods."""

from __future__ import annotations

from .classification import ClassGuess, classes, likely_classes
from .distinctiveness import CATEGORIES, Distinctiveness, distinctiveness
from .nice import CLASSES, EXPLAINED, list_of_classes
from .relatedness import Relatedness, relatedness
from .terms import GoodsWord, goods_words
from .weakness import weakness

__all__ = [
    "CATEGORIES",
    "CLASSES",
    "EXPLAINED",
    "ClassGuess",
    "Distinctiveness",
    "GoodsWord",
    "Relatedness",
    "classes",
    "distinctiveness",
    "goods_words",
    "likely_classes",
    "list_of_classes",
    "relatedness",
    "weakness",
]
