"""The naming brief: what is to be named, for whom, and within which limits.

A brief is a TOML file; every part of it may be missing. Whatever is wrong with one is reported at once, each
problem with its line, key and remedy.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from ..doors import lazy_door
from .model import Brief, Concept, CostItem, Costs

if TYPE_CHECKING:
    from .loading import load_brief as load_brief
    from .loading import parse_brief as parse_brief
    from .loading import starter as starter

__all__ = ["Brief", "Concept", "CostItem", "Costs", "load_brief", "parse_brief", "starter"]

__getattr__ = lazy_door(__name__, dict.fromkeys(("load_brief", "parse_brief", "starter"), "loading"))
