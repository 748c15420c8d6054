"""A list of invented marks, and what a screening looks like to a program."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from namescreen.outcome import NotChecked
from namescreen.register import Register, read_register
from namescreen.screening import CloseMark, Screening, schema

GOODS = "self-watering planters of stoneware for kitchen herbs"


LIST = """\
mark,number,classes,goods,status,owner
SPRIGWICK,1,21,self-watering planters,registered,A
SPRIGWYCK,2,21,planters,expired,B
SPRIGWICK,3,36,insurance,registered,C
SPRIGWICK,4,,,,
TIMELO,5,21,plant pots,registered,D
"""


@pytest.fixture
def register(tmp_path: Path) -> Register:
    path = tmp_path / "marks.csv"
    path.write_text(LIST)
    return read_register([path])


def validate(screening: Screening) -> dict[str, Any]:
    """What the screening looks like to a program, after a trip through JSON."""
    row: dict[str, Any] = json.loads(json.dumps(screening.to_json(), allow_nan=False))
    jsonschema.validate(row, schema(), cls=jsonschema.Draft202012Validator)
    return row


def marks_of(one: Screening) -> tuple[CloseMark, ...]:
    assert not isinstance(one.close_marks, NotChecked)
    return one.close_marks
