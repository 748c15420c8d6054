from __future__ import annotations

import tomllib
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from namescreen.brief import starter
from namescreen.brief.toml_lines import Place, key_lines

# Every kind of key and value of TOML 1.0.0 (toml.io/en/v1.0.0), each with the line it stands on.
SPECIFICATION = '''\
# a remark with key = "value"
title = "TOML # not a remark"
"quoted key" = 'literal \\'
site."pots.example".on = true
text = """
[not.a.table]
still = "text" """
literal = \'\'\'
a = 1\'\'\'
numbers = [ 1, 2,
  # between
  3,
]
mixed = [{ x = 1, "y z" = [7, 8] }, "b"]

[owner] # remark
born = 1979-05-27T07:32:00Z
[ a . b ]
c = -inf
[[fruits]]
name = "apple"
[fruits.physical]
colour = "red"
[[fruits.varieties]]
name = "red"
[[fruits.varieties]]
name = "\\u00e9t\\u00e9"
[[fruits]]
name = "banana"
'''
PLACES: dict[Place, int] = {
    ("title",): 2,
    ("quoted key",): 3,
    ("site", "pots.example", "on"): 4,
    ("text",): 5,
    ("literal",): 8,
    ("numbers",): 10,
    ("numbers", 1): 10,
    ("numbers", 2): 12,
    ("mixed", 0): 14,
    ("mixed", 0, "y z", 1): 14,
    ("mixed", 1): 14,
    ("owner",): 16,
    ("owner", "born"): 17,
    ("a", "b"): 18,
    ("a", "b", "c"): 19,
    ("fruits",): 20,
    ("fruits", 0): 20,
    ("fruits", 0, "name"): 21,
    ("fruits", 0, "physical", "colour"): 23,
    ("fruits", 0, "varieties", 0, "name"): 25,
    ("fruits", 0, "varieties", 1, "name"): 27,
    ("fruits", 1): 28,
    ("fruits", 1, "name"): 29,
}


@pytest.mark.parametrize("ends", ["\n", "\r\n"])
@pytest.mark.parametrize(("place", "line"), PLACES.items())
def test_each_kind_of_key_is_found_on_its_line(place: Place, line: int, ends: str) -> None:
    assert key_lines(SPECIFICATION.replace("\n", ends))[place] == line


def every_place(value: Any, place: Place = ()) -> list[Place]:
    items = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    below = [found for key, item in items for found in every_place(item, (*place, key))]
    return ([place] if place else []) + below


@pytest.mark.parametrize(("text", "implied"), [(SPECIFICATION, ("a",)), (starter(), ("weights",))])
def test_every_key_the_standard_parser_sees_has_a_line(text: str, implied: Place) -> None:
    missing = [place for place in every_place(tomllib.loads(text)) if place not in key_lines(text)]
    assert missing == [implied]  # a table that is only named inside a longer header ([a.b]) has no line of its own


quoted = st.text(st.characters(exclude_categories=["C"]), max_size=12).map(
    lambda text: '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'
)
several_lines = st.text("ab\n=[]{}#', ", max_size=20).map(lambda text: f'"""\n{text}"""')
scalar = st.one_of(st.integers(-99, 99).map(str), st.sampled_from(["true", "2026-05-31", "1.5"]), quoted, several_lines)
lists = st.lists(scalar, max_size=4).map(lambda items: "[\n " + ",\n # ]\n ".join(items) + "\n]")


@given(st.lists(st.one_of(scalar, lists), max_size=8))
def test_values_of_any_shape_leave_the_next_key_on_its_line(values: list[str]) -> None:
    text, expected = "", {}
    for number, value in enumerate(values):
        expected[f"key{number}"] = text.count("\n") + 1
        text += f"key{number} = {value} # {{[\n"
    assert tomllib.loads(text).keys() == expected.keys()
    lines = key_lines(text)
    assert {key: lines[key,] for key in expected} == expected
