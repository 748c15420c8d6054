"""Goods and services: Nice classes, how related two lists are, and how distinctive a name is for its
goods."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ..doors import lazy_door
from .nice import CLASSES, EXPLAINED, list_of_classes
from .weakness import weakness

if TYPE_CHECKING:
    from .by_item import distinctiveness_by_item as distinctiveness_by_item
    from .classification import ClassGuess as ClassGuess
    from .classification import class_chances as class_chances
    from .classification import classes as classes
    from .classification import likely_classes as likely_classes
    from .continuum import CATEGORIES as CATEGORIES
    from .distinctiveness import GOODS_AS_WORDED as GOODS_AS_WORDED
    from .distinctiveness import Distinctiveness as Distinctiveness
    from .distinctiveness import LanguageFinding as LanguageFinding
    from .distinctiveness import MarketFinding as MarketFinding
    from .distinctiveness import distinctiveness as distinctiveness
    from .elements import Element as Element
    from .elements import Weak as Weak
    from .elements import element as element
    from .elements import weakest as weakest
    from .phrases import GoodsWord as GoodsWord
    from .phrases import Item as Item
    from .phrases import goods_words as goods_words
    from .phrases import items as items
    from .protected import ProtectedSign as ProtectedSign
    from .protected import protected_signs as protected_signs
    from .relatedness import GRADES as GRADES
    from .relatedness import Relatedness as Relatedness
    from .relatedness import relatedness as relatedness
    from .wording import in_english as in_english
    from .wording import not_read as not_read
    from .wording import remark as remark

__all__ = [
    "CATEGORIES",
    "CLASSES",
    "EXPLAINED",
    "GOODS_AS_WORDED",
    "GRADES",
    "ClassGuess",
    "Distinctiveness",
    "Element",
    "GoodsWord",
    "Item",
    "LanguageFinding",
    "MarketFinding",
    "ProtectedSign",
    "Relatedness",
    "Weak",
    "class_chances",
    "classes",
    "distinctiveness",
    "distinctiveness_by_item",
    "element",
    "goods_words",
    "in_english",
    "items",
    "likely_classes",
    "list_of_classes",
    "not_read",
    "protected_signs",
    "relatedness",
    "remark",
    "weakest",
    "weakness",
]

_HOMES = {
    "by_item": ("distinctiveness_by_item",),
    "classification": ("ClassGuess", "class_chances", "classes", "likely_classes"),
    "continuum": ("CATEGORIES",),
    "distinctiveness": (
        "GOODS_AS_WORDED", "Distinctiveness", "LanguageFinding", "MarketFinding", "distinctiveness",
    ),
    "elements": ("Element", "Weak", "element", "weakest"),
    "phrases": ("GoodsWord", "Item", "goods_words", "items"),
    "protected": ("ProtectedSign", "protected_signs"),
    "relatedness": ("GRADES", "Relatedness", "relatedness"),
    "wording": ("in_english", "not_read", "remark"),
}  # fmt: skip

__getattr__ = lazy_door(__name__, {name: home for home, names in _HOMES.items() for name in names})
