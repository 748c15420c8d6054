"""Doors of packages whose parts cost to import and are seldom all wanted."""

from __future__ import annotations

import sys
from collections.abc import Callable, Mapping
from importlib import import_module

__all__ = ["lazy_door"]


def lazy_door(package: str, homes: Mapping[str, str]) -> Callable[[str], object]:
    """The `__getattr__` of a package (PEP 562) that imports each of these names from its module when it is first asked
    for. No name may be that of a module of the package, which would take its place."""

    def get(name: str) -> object:
        if name not in homes:
            raise AttributeError(f"module {package!r} has no attribute {name!r}")
        value: object = getattr(import_module(f".{homes[name]}", package), name)
        setattr(sys.modules[package], name, value)
        return value

    return get
