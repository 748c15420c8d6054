"""Existing marks: readers, the prepared store, and search.

`read_register` reads any list of marks; `prepare` makes a large one ready once, `open_prepared` opens it at
once; `Register.search` finds the closest marks.
"""

from __future__ import annotations

from .doors import About, info, open_prepared, prepare, read_register
from .hit import Hit
from .journal import Journal
from .mark import Mark
from .reading import Source, read_names
from .register import Register

__all__ = [
    "About", "Hit", "Journal", "Mark", "Register", "Source", "info", "open_prepared", "prepare", "read_names",
    "read_register",
]  # fmt: skip
