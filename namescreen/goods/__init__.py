"""Goods and services: Nice classes, how related two lists are, and how distinctive a name is for its
goods."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ..doors import lazy_door
from .classification import ClassGuess, classes, likely_classes
from .nice import CLASSES, EXPLAINED, list_of_classes
from .phrases import GoodsWord, Item, goods_words, items
from .relatedness import GRADES, Relatedness, relatedness
from .weakness import weakness
from .wording import in_english, not_read, remark

if TYPE_CHECKING:
    from .continuum import CATEGORIES as CATEGORIES
    from .distinctiveness import GOODS_AS_WORDED as GOODS_AS_WORDED
    from .distinctiveness import Distinctiveness as Distinctiveness
    from .distinctiveness import LanguageFinding as LanguageFinding
    from .distinctiveness import MarketFinding as MarketFinding
    from .distinctiveness import distinctiveness as distinctiveness
    from .protected import ProtectedSign as ProtectedSign
    from .protected import protected_signs as protected_signs

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
    "remark",
    "weakness",
]

_JUDGED = ("GOODS_AS_WORDED", "Distinctiveness", "LanguageFinding", "MarketFinding", "distinctiveness")

__getattr__ = lazy_door(
    __name__,
    {
        **dict.fromkeys(_JUDGED, "distinctiveness"),
        **dict.fromkeys(("ProtectedSign", "protected_signs"), "protected"),
        "CATEGORIES": "continuum",
    },
)
