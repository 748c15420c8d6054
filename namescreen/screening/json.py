"""Screening records as JSON types, and the published JSON Schema of them."""

from __future__ import annotations

import dataclasses
import datetime
import json
from collections.abc import Mapping
from decimal import Decimal
from enum import Enum
from pathlib import Path
from typing import Any

from ..outcome import NotChecked

__all__ = ["number", "plain", "schema"]


def schema() -> dict[str, Any]:
    """The JSON Schema (draft 2020-12) of one screening as `Screening.to_json` gives it."""
    path = Path(__file__).with_name("screening.schema.json")
    published: dict[str, Any] = json.loads(path.read_text("utf-8"))
    return published


def number(value: float) -> float:
    """Four places: more would say more than is known, and differ between machines."""
    return round(float(value), 4)


def plain(value: Any) -> Any:
    """`value` as JSON types; a check that was not made as an object that says why."""
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
