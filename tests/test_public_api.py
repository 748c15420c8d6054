from __future__ import annotations

import subprocess
import sys

import pytest

import namescreen
from namescreen import errors

# What a user may rely on. A name that goes, or moves, breaks other people's programs: change this with care.
PUBLIC = [
    "Blend", "Brief", "Candidate", "ClassGuess", "Closeness", "DataError", "Distinctiveness", "InputError",
    "Interrupted", "Mark", "NamescreenError", "NotChecked", "Reading", "Register", "Screening", "__version__", "blends",
    "brainstorm", "classes", "compare", "distinctiveness", "load_brief", "read_register", "readings", "screen",
]  # fmt: skip


def test_the_public_names_are_these() -> None:
    assert sorted(namescreen.__all__) == PUBLIC
    assert dir(namescreen) == PUBLIC


@pytest.mark.parametrize("name", PUBLIC)
def test_every_public_name_is_there_and_says_what_it_is(name: str) -> None:
    value = getattr(namescreen, name)
    assert name == "__version__" or value.__doc__


def test_what_is_not_public_is_refused_by_name() -> None:
    with pytest.raises(AttributeError, match="no attribute 'shout'"):
        namescreen.shout  # noqa: B018


def test_every_error_is_one_of_ours() -> None:
    for name in errors.__all__:
        error = getattr(errors, name)
        if isinstance(error, type) and issubclass(error, Exception):
            assert issubclass(error, namescreen.NamescreenError)


HEAVY = ("numpy", "nltk", "requests", "requests_cache", "rich", "typer", "rapidfuzz", "jellyfish")


def loaded_by(statement: str) -> set[str]:
    code = f"import sys; {statement}; print(*(name for name in {HEAVY!r} if name in sys.modules))"
    return set(subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout.split())


@pytest.mark.parametrize(
    ("statement", "allowed"),
    [
        ("import namescreen", set()),
        ("import namescreen.brief", set()),
        ("import namescreen.text", set()),
        ("import namescreen.screening", set()),
        ("import namescreen.cli", {"typer"}),
    ],
)
def test_imports_that_cost_wait_until_they_are_used(statement: str, allowed: set[str]) -> None:
    assert loaded_by(statement) <= allowed


def test_the_core_does_not_know_the_shell() -> None:
    rooms = ["brief", "screening", "text", "closeness", "marks", "register", "goods", "generation",
             "lexicon", "pronunciation", "connotations", "addresses", "report"]  # fmt: skip
    statement = "; ".join(f"import namescreen.{room}" for room in rooms)
    assert not loaded_by(statement) & {"typer", "rich"}
