"""No two modules import each other, directly or through others, at the top or inside a function."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from graphlib import CycleError, TopologicalSorter
from pathlib import Path

import pytest

import namescreen

ROOT = Path(namescreen.__file__).parent
MODULES = {
    ".".join(path.relative_to(ROOT.parent).with_suffix("").parts).removesuffix(".__init__"): path
    for path in ROOT.rglob("*.py")
}


def statements(node: ast.AST) -> Iterator[ast.AST]:
    """All statements but those for the type checker alone."""
    for child in ast.iter_child_nodes(node):
        if isinstance(child, ast.If) and ast.unparse(child.test) == "TYPE_CHECKING":
            continue
        yield child
        yield from statements(child)


def imported_by(module: str, path: Path, source: str) -> set[str]:
    """The modules of namescreen that a module imports anywhere."""
    package = module.split(".") if path.name == "__init__.py" else module.split(".")[:-1]
    found: set[str] = set()
    for node in statements(ast.parse(source)):
        if isinstance(node, ast.Import):
            found.update(alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            start = package[: len(package) - node.level + 1] if node.level else []
            base = ".".join([*start, *([node.module] if node.module else [])])
            found.update(full if (full := f"{base}.{alias.name}") in MODULES else base for alias in node.names)
    return {name for name in found if name in MODULES and name != module}


@pytest.mark.parametrize(
    ("source", "imports"),
    [
        ("def f():\n    from ..marks.columns import DEAD", {"namescreen.marks.columns"}),
        ("from . import store", {"namescreen.register.store"}),
        ("from .. import __version__", {"namescreen"}),
        ("if TYPE_CHECKING:\n    from .index import Index", set()),
        ("import os, namescreen.tables", {"namescreen.tables"}),
    ],
)
def test_imports_are_recognised_wherever_they_stand(source: str, imports: set[str]) -> None:
    assert imported_by("namescreen.register.search", ROOT / "register" / "search.py", source) == imports


def test_no_modules_import_each_other_in_a_circle() -> None:
    graph = {module: imported_by(module, path, path.read_text("utf-8")) for module, path in MODULES.items()}
    try:
        TopologicalSorter(graph).prepare()
    except CycleError as error:
        pytest.fail(" imports ".join(reversed(error.args[1])))
