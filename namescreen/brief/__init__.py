"""The naming brief: what is to be named, for whom, and within which limits.

A brief is a TOML file; every part of it may be missing. Whatever is wrong with one is reported at once, each
problem with its line, key and remedy.
"""

from __future__ import annotations

from .loading import load_brief, parse_brief, starter
from .model import Brief, Concept, CostItem, Costs

__all__ = ["Brief", "Concept", "CostItem", "Costs", "load_brief", "parse_brief", "starter"]
