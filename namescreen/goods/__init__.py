"""Goods and services: Nice classes, how related two lists are, and how distinctive a name is for its
goods."""

from __future__ import annotations

from .classification import ClassGuess, classes, likely_classes
from .continuum import CATEGORIES
from .distinctiveness import GOODS_AS_WORDED, Distinctiveness, LanguageFinding, MarketFinding, distinctiveness
from .nice import CLASSES, EXPLAINED, list_of_classes
from .phrases import GoodsWord, Item, goods_words, items
from .protected import ProtectedSign, protected_signs
from .relatedness import GRADES, Relatedness, relatedness, relatedness_calls
from .weakness import weakness
from .wording import in_english, not_read, remark

__all__ = [
    "CATEGORIES",
    "CLASSES",
    "EXPLAINED",
    "GOODS_AS_WORDED",
    "GRADES",
    "ClassGuess",
    "Distinctiveness",
    "GoodsWord",
    "Item",
    "LanguageFinding",
    "MarketFinding",
    "ProtectedSign",
    "Relatedness",
    "classes",
    "distinctiveness",
    "goods_words",
    "in_english",
    "items",
    "likely_classes",
    "list_of_classes",
    "not_read",
    "protected_signs",
    "relatedness",
    "relatedness_calls",
    "remark",
    "weakness",
]
