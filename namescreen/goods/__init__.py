"""Goods and services: Nice classes, how related two lists are, and how distinctive a name is for its
goods."""

from __future__ import annotations

from .distinctiveness import CATEGORIES, Distinctiveness, distinctiveness
from .nice import CLASSES, ClassGuess, classes_for
from .relatedness import Relatedness, relatedness
from .terms import GoodsWord, goods_words
from .weakness import weakness

__all__ = [
    "CATEGORIES",
    "CLASSES",
    "ClassGuess",
    "Distinctiveness",
    "GoodsWord",
    "Relatedness",
    "classes_for",
    "distinctiveness",
    "goods_words",
    "relatedness",
    "weakness",
]
