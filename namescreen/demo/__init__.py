"""The invented example that `namescreen demo` works on: a brief, and a list of marks that nobody owns."""

from __future__ import annotations

from importlib.resources import files
from importlib.resources.abc import Traversable

__all__ = ["demo_files"]

_NAMES = ("brief.toml", "marks.csv")


def demo_files() -> tuple[Traversable, ...]:
    """The demo's brief and its list of marks, as shipped."""
    return tuple(files(__package__) / name for name in _NAMES)
