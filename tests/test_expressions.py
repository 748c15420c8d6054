"""Expressions compiled late: the same as compiled at once."""

from __future__ import annotations

import re

import pytest

from namescreen.expressions import expression


@pytest.mark.parametrize(("pattern", "flags"), [("(a+)b", 0), ("(A+)B", re.IGNORECASE), ("", 0)])
def test_it_finds_what_a_compiled_one_finds(pattern: str, flags: int) -> None:
    late, text = expression(pattern, flags), "xaab ab AAB b"
    for _ in range(2):
        assert late.findall(text) == re.compile(pattern, flags).findall(text)
        assert late.sub("-", text) == re.sub(pattern, "-", text, flags=flags)
    assert late.flags == re.compile(pattern, flags).flags


def test_one_that_is_none_is_refused_when_it_is_used() -> None:
    with pytest.raises(re.error):
        expression("(").search("")
