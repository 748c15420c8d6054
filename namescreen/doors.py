"""Doors of packages whose parts cost to import and are seldom all wanted."""

from __future__ import annotations

import sys
from collections.abc import Callable, Mapping
from importlib import import_module
from types import ModuleType

__all__ = ["lazy_door"]


def lazy_door(package: str, homes: Mapping[str, str]) -> Callable[[str], object]:
    """The `__getattr__` of a package (PEP 562) that imports each of these names from its module when it is first asked
    for. Where a module has the name of what it holds, the name stays that of what it holds however the module is
    imported, as where a result that another process sent is unpickled."""

    class Door(ModuleType):
        def __setattr__(self, name: str, value: object) -> None:
            inside = name in homes and isinstance(value, ModuleType)
            super().__setattr__(name, getattr(value, name, value) if inside else value)

    sys.modules[package].__class__ = Door

    def get(name: str) -> object:
        if name not in homes:
            raise AttributeError(f"module {package!r} has no attribute {name!r}")
        found = getattr(import_module(f".{homes[name]}", package), name)
        setattr(sys.modules[package], name, found)
        return found

    return get
