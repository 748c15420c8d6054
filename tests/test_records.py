"""Our frozen data classes against those of the standard library, as written in the same words."""

from __future__ import annotations

import copy
import dataclasses
import inspect
import pickle
from collections.abc import Callable
from functools import cached_property, partial
from typing import Any

import pytest

from namescreen import records

Make = Callable[..., Any]


def classes(make: Make) -> dict[str, Any]:
    """One class of each kind that the program has."""

    @make(frozen=True, slots=True)
    class Plain:
        """Two fields."""

        word: str
        count: int = 3

    @make(frozen=True, slots=True)
    class Made:
        words: list[str] = dataclasses.field(default_factory=list)
        seen: int = dataclasses.field(default=0, compare=False, repr=False)
        kept: dict[str, int] = dataclasses.field(default_factory=dict, hash=False)

    @make(frozen=True, slots=True, kw_only=True)
    class Named:
        word: str
        count: int = 3

    @make(frozen=True)
    class Cached:
        word: str

        @cached_property
        def length(self) -> int:
            return len(self.word)

    @make(frozen=True, slots=True)
    class Longer(Plain):
        more: tuple[str, ...] = ()

    @make(frozen=True, slots=True)
    class OwnMethods:
        word: str

        def __eq__(self, other: object) -> bool:
            return isinstance(other, OwnMethods)

        def __repr__(self) -> str:
            return "own"

    @make(frozen=True, slots=True)
    class Empty:
        pass

    return {cls.__name__: cls for cls in (Plain, Made, Named, Cached, Longer, OwnMethods, Empty)}


OURS, THEIRS = classes(records.dataclass), classes(dataclasses.dataclass)


def outcome(work: Callable[[], Any]) -> Any:
    """What comes of it: the result, or the error and its message, without the name of the function around these."""
    try:
        return work()
    except (TypeError, AttributeError) as error:
        return type(error), str(error)


GIVEN: list[tuple[str, list[Any], dict[str, Any]]] = [
    ("Plain", ["herb"], {}),
    ("Plain", ["herb", 4], {}),
    ("Plain", [], {"count": 4, "word": "herb"}),
    ("Plain", [], {}),
    ("Plain", ["herb", 4, 5], {}),
    ("Plain", ["herb"], {"colour": 5}),
    ("Made", [], {}),
    ("Made", [["herb"]], {"seen": 3}),
    ("Named", ["herb"], {}),
    ("Named", [], {"word": "herb"}),
    ("Cached", ["herb"], {}),
    ("Longer", ["herb", 4, ("well",)], {}),
    ("OwnMethods", ["herb"], {}),
    ("Empty", [], {}),
]


def fields_of(one: Callable[[], Any]) -> tuple[Any, ...]:
    """The fields of what is made; none where it cannot be made."""
    found = outcome(lambda: dataclasses.fields(one()))
    return () if found[:1] == (TypeError,) else tuple(found)


@pytest.mark.parametrize(("name", "given", "named"), GIVEN)
def test_objects_are_those_of_the_standard_library(name: str, given: list[Any], named: dict[str, Any]) -> None:
    def told(cls: Any) -> list[Any]:
        def one() -> Any:
            return cls(*given, **named)

        return [
            outcome(lambda: repr(one())),
            outcome(lambda: one() == one()),
            outcome(lambda: one() == "herb"),
            outcome(lambda: dataclasses.asdict(one())),
            outcome(lambda: hash(one())),
            *(outcome(partial(setattr, one(), field.name, "well")) for field in fields_of(one)),
            *(outcome(partial(delattr, one(), field.name)) for field in fields_of(one)),
            outcome(lambda: repr(dataclasses.replace(one(), word="well"))),
            outcome(lambda: copy.deepcopy(one()) == one()),
            outcome(lambda: one().length),
            outcome(lambda: hasattr(one(), "__dict__")),
        ]

    assert told(OURS[name]) == told(THEIRS[name])


@pytest.mark.parametrize("name", list(OURS))
def test_classes_have_the_fields_of_the_standard_library(name: str) -> None:
    def described(cls: Any) -> list[Any]:
        return [(one.name, one.type, one.init, one.repr, one.compare, one.hash) for one in dataclasses.fields(cls)]

    assert described(OURS[name]) == described(THEIRS[name])
    assert OURS[name].__match_args__ == THEIRS[name].__match_args__


def test_what_is_left_out_of_comparison_is_left_out_of_it() -> None:
    made = OURS["Made"]
    assert made(seen=1) == made(seen=2)
    assert made(kept={"herb": 1}) != made(kept={"herb": 2})


def test_mutable_defaults_are_made_for_each_object() -> None:
    made = OURS["Made"]
    assert made().words is not made().words


@records.dataclass(frozen=True, slots=True)
class Sent:
    """A class that pickle finds."""

    word: str
    count: int = 3


def test_objects_are_pickled_before_any_is_made_here_and_after() -> None:
    state = pickle.dumps(Sent("herb", 4))
    unused: Any = Sent
    unused.__init__ = records._writing(Sent, "__init__", ["__init__"])  # as in a process that made none yet
    found = pickle.loads(state)
    assert (found, hash(found)) == (Sent("herb", 4), hash(Sent("herb", 4)))


def test_methods_are_written_with_the_first_object() -> None:
    cls = classes(records.dataclass)["Plain"]
    assert list(inspect.signature(cls.__init__).parameters) == ["self", "given", "named"]
    cls("herb")
    assert list(inspect.signature(cls.__init__).parameters) == ["self", "word", "count"]


def test_a_class_that_is_not_frozen_is_left_to_the_standard_library() -> None:
    @records.dataclass(slots=True)
    class Counted:
        count: int = 0

    one = Counted()
    one.count += 1
    assert one == Counted(1)
