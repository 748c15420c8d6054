from __future__ import annotations

import pytest

from namescreen.cli.options import nice_classes
from namescreen.errors import InputError


@pytest.mark.parametrize(
    ("text", "classes"), [("21", (21,)), ("31,21", (21, 31)), (" 21 ; 31 21", (21, 31)), ("09,45", (9, 45))]
)
def test_nice_classes_are_read(text: str, classes: tuple[int, ...]) -> None:
    assert nice_classes(text) == classes


@pytest.mark.parametrize("text", ["", "0", "46", "-5", "21.5", "21abc", "²", "٣", "21,,x", "9" * 5000])
def test_what_is_no_nice_class_is_refused_not_guessed_at(text: str) -> None:
    with pytest.raises(InputError, match="no list of Nice classes"):
        nice_classes(text)
