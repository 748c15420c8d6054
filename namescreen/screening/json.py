"""Screening records as JSON types, and the published JSON Schema of them."""

from __future__ import annotations

import dataclasses
import datetime
import json
from collections.abc import Mapping
from decimal import Decimal
from enum import Enum
from functools import cache, reduce
from operator import getitem
from pathlib import Path
from typing import Any

from ..outcome import NotChecked

__all__ = ["fits", "number", "plain", "schema"]


def schema() -> dict[str, Any]:
    """The JSON Schema (draft 2020-12) of one screening as `Screening.to_json` gives it."""
    path = Path(__file__).with_name("screening.schema.json")
    published: dict[str, Any] = json.loads(path.read_text("utf-8"))
    return published


_TYPES: dict[str, tuple[type, ...]] = {
    "object": (dict,), "array": (list,), "string": (str,), "boolean": (bool,), "integer": (int,), "null": (type(None),),
    "number": (int, float),
}  # fmt: skip


def fits(value: Any) -> bool:
    """Whether JSON types are one screening as `schema` publishes it: what is read back may have been changed."""
    return _fits(value, _published())


@cache
def _published() -> dict[str, Any]:
    return schema()


def _fits(value: Any, rule: Mapping[str, Any]) -> bool:
    """As far as the schema goes: its keywords are those that are asked for here (a test compares them)."""
    if "$ref" in rule:
        path = rule["$ref"].removeprefix("#/").split("/")
        return _fits(value, reduce(getitem, path, _published()))
    if "anyOf" in rule and not any(_fits(value, one) for one in rule["anyOf"]):
        return False
    if "type" in rule:
        kinds = [rule["type"]] if isinstance(rule["type"], str) else rule["type"]
        truth = isinstance(value, bool)
        if not any(isinstance(value, _TYPES[kind]) and (kind == "boolean") == truth for kind in kinds):
            return False
    if "enum" in rule and value not in rule["enum"]:
        return False
    if isinstance(value, int | float) and not rule.get("minimum", value) <= value <= rule.get("maximum", value):
        return False
    if isinstance(value, str):
        return len(value) >= int(rule.get("minLength", 0))
    if isinstance(value, list):
        inside = all(_fits(one, rule.get("items", {})) for one in value)
        return inside and len(value) <= int(rule.get("maxItems", len(value)))
    if isinstance(value, dict):
        known = rule.get("properties", {})
        if set(rule.get("required", ())) - value.keys():
            return False
        if rule.get("additionalProperties") is False and value.keys() - known.keys():
            return False
        return all(_fits(value[key], one) for key, one in known.items() if key in value)
    return True


def number(value: float) -> float:
    """Four places: more would say more than is known, and differ between machines."""
    return round(float(value), 4)


_PLAIN = frozenset((str, int, bool, type(None)))


def plain(value: Any) -> Any:
    """`value` as JSON types; a check that was not made as an object that says why."""
    kind = type(value)
    if kind in _PLAIN:  # most: to ask of each what else it might be takes longer than all the rest
        return value
    if kind is dict:
        return {str(key): item if type(item) in _PLAIN else plain(item) for key, item in value.items()}
    if kind is float:
        return number(value)
    if kind is list or kind is tuple:
        return [item if type(item) in _PLAIN else plain(item) for item in value]
    if isinstance(value, NotChecked):
        return {"not_checked": value.because}
    if hasattr(value, "to_json"):
        return plain(value.to_json())
    if dataclasses.is_dataclass(value) and not isinstance(value, type):
        return {field.name: plain(getattr(value, field.name)) for field in dataclasses.fields(value)}
    if isinstance(value, Enum):
        return plain(value.value)
    if isinstance(value, Mapping):
        return {str(key): plain(item) for key, item in value.items()}
    if isinstance(value, list | tuple):
        return [plain(item) for item in value]
    if isinstance(value, set | frozenset):
        return sorted(plain(item) for item in value)
    if isinstance(value, float):
        return number(value)
    if isinstance(value, datetime.date | Decimal | Path):
        return str(value)
    return value
