"""Existing marks: readers, the prepared store, and search."""

from __future__ import annotations

from .mark import Mark

__all__ = ["Mark"]
