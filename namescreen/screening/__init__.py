"""One name through every check: the only place where the checks meet.

The door is `screen`, or `screen_rows` for what is only written; it reads no file and asks no network but the register
that it is given. `Screening` and `CloseMark` are its records, and `schema` the JSON Schema of what they write.
"""

from __future__ import annotations

from .checks import MOST_JUDGED, NOT_JUDGED
from .json import fits, schema
from .names import screen, screen_rows
from .results import CloseMark, Screening, is_knockout

__all__ = ["MOST_JUDGED", "NOT_JUDGED", "CloseMark", "Screening", "fits", "is_knockout", "schema", "screen",
           "screen_rows"]  # fmt: skip
