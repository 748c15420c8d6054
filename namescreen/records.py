"""Data classes whose methods are written when the first object is made.

The standard library writes six methods for every frozen data class and compiles each by itself: half a millisecond a
class on Python 3.11, a sixth of what a short command takes, and most of the classes are never used by it. Here a class
gets its fields from the standard library, and its methods with its first object; of these only `__init__` is compiled.
It fills the slots directly, in half the time. Fields, `replace`, `asdict`, comparison, hashes, pickles and errors are
those of the standard library (tests/test_records.py).
"""

from __future__ import annotations

import dataclasses
from collections.abc import Callable
from operator import attrgetter
from types import MemberDescriptorType
from typing import Any

__all__ = ["dataclass"]

TYPE_CHECKING = False


def _dataclass(
    cls: type | None = None, /, *, frozen: bool = False, slots: bool = False, kw_only: bool = False
) -> type | Callable[[type], type]:
    """As `dataclasses.dataclass`; classes that are not frozen are left to it."""
    if not frozen:
        return dataclasses.dataclass(cls, slots=slots, kw_only=kw_only)

    def made(plain: type) -> type:
        of_fields = dataclasses.dataclass(init=False, repr=False, eq=False, slots=slots, kw_only=kw_only)
        whole: type = of_fields(plain)
        own = {name for name, method in plain.__dict__.items() if method is not None}
        written = [name for name in _WRITTEN if name not in own]
        methods = _SHARED | (_PICKLED if slots else {}) | {name: _writing(whole, name, written) for name in written}
        for name, method in methods.items():
            if name not in own:
                setattr(whole, name, method)
        return whole

    return made if cls is None else made(cls)


if TYPE_CHECKING:
    from dataclasses import dataclass as dataclass
else:
    dataclass = _dataclass


def _writing(cls: Any, name: str, written: list[str]) -> Callable[..., Any]:
    """Stands in for a method of a class: when first called, it writes all of those that are to be `written`."""

    def first(self: Any, /, *given: Any, **named: Any) -> Any:
        for each in written:
            method = _WRITTEN[each](cls)
            method.__name__, method.__qualname__ = each, f"{cls.__qualname__}.{each}"
            setattr(cls, each, method)
        return getattr(cls, name)(self, *given, **named)

    return first


def _init(cls: Any) -> Callable[..., None]:
    known: dict[str, Any] = {"_missing": dataclasses.MISSING}
    positional: list[str] = []
    by_name: list[str] = []
    lines: list[str] = []
    for at, field in enumerate(dataclasses.fields(cls)):
        parameter = value = field.name
        if field.default is not dataclasses.MISSING:
            known[f"_default{at}"] = field.default
            parameter += f"=_default{at}"
        elif field.default_factory is not dataclasses.MISSING:
            known[f"_make{at}"] = field.default_factory
            parameter += "=_missing"
            value = f"_make{at}() if {value} is _missing else {value}"
        (by_name if field.kw_only else positional).append(parameter)
        member = getattr(cls, field.name, None)
        if isinstance(member, MemberDescriptorType):
            known[f"_set{at}"] = member.__set__
            lines.append(f" _set{at}(self, {value})")
        else:
            lines.append(f" self.__dict__[{field.name!r}] = {value}")
    parameters = ", ".join(["self", *positional, *(["*", *by_name] if by_name else [])])
    exec("\n".join((f"def __init__({parameters}):", *(lines or [" pass"]))), known)
    written: Callable[..., None] = known["__init__"]
    return written


def _equality(cls: Any) -> Callable[[Any, object], bool]:
    compared = _values([field.name for field in dataclasses.fields(cls) if field.compare])

    def equal(self: Any, other: object) -> bool:
        return compared(self) == compared(other) if other.__class__ is self.__class__ else NotImplemented

    return equal


def _hash(cls: Any) -> Callable[[Any], int]:
    fields = dataclasses.fields(cls)
    hashed = _values([field.name for field in fields if (field.compare if field.hash is None else field.hash)])
    return lambda self: hash(hashed(self))


def _values(names: list[str]) -> Callable[[Any], tuple[Any, ...]]:
    """Gives the values of some fields of an object."""
    if len(names) > 1:
        return attrgetter(*names)
    return lambda one: tuple([getattr(one, name) for name in names])


def _shown(self: Any) -> str:
    shown = ", ".join(f"{field.name}={getattr(self, field.name)!r}" for field in dataclasses.fields(self) if field.repr)
    return f"{self.__class__.__qualname__}({shown})"


def _not_set(self: object, name: str, value: object) -> None:
    raise dataclasses.FrozenInstanceError(f"cannot assign to field {name!r}")


def _not_deleted(self: object, name: str) -> None:
    raise dataclasses.FrozenInstanceError(f"cannot delete field {name!r}")


def _state(self: Any) -> list[Any]:
    return [getattr(self, field.name) for field in dataclasses.fields(self)]


def _set_state(self: Any, state: list[Any]) -> None:
    for field, value in zip(dataclasses.fields(self), state, strict=True):
        object.__setattr__(self, field.name, value)


_SHARED = {"__repr__": _shown, "__setattr__": _not_set, "__delattr__": _not_deleted}
_PICKLED = {"__getstate__": _state, "__setstate__": _set_state}
_WRITTEN: dict[str, Callable[[Any], Callable[..., Any]]] = {"__init__": _init, "__eq__": _equality, "__hash__": _hash}
