"""Registers of existing marks: prepared, stored and searched.

`read_register` reads any list of marks; `prepare` makes a large one ready once, `open_prepared` opens it at
once; `Register.search` finds the closest marks.
"""

from __future__ import annotations

from .hit import Hit, Wanted
from .loading import About, info, open_prepared, prepare, read_register
from .register import Register

__all__ = ["About", "Hit", "Register", "Wanted", "info", "open_prepared", "prepare", "read_register"]
