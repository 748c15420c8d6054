"""Existing marks: what one is, and reading them from lists and from the files that trade mark offices publish."""

from __future__ import annotations

from .mark import Mark
from .reader import Source, read_marks, read_names

__all__ = ["Mark", "Source", "read_marks", "read_names"]
