"""Existing marks: what one is, and reading them from lists and from the files that trade mark offices publish."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ..doors import lazy_door
from .mark import Mark

if TYPE_CHECKING:
    from .reader import read_marks as read_marks
    from .reader import read_names as read_names
    from .tally import Source as Source

__all__ = ["Mark", "Source", "read_marks", "read_names"]

__getattr__ = lazy_door(__name__, {"Source": "tally", "read_marks": "reader", "read_names": "reader"})
