"""Where a command may write: never over what it reads, and never over a file that it did not write itself."""

from __future__ import annotations

import os
from collections.abc import Iterable
from pathlib import Path

from namescreen.errors import Problem

__all__ = ["unfit_output"]


def unfit_output(path: Path, kind: str, beginnings: tuple[bytes, ...], inputs: Iterable[Path]) -> Problem | None:
    """Why `path` may not be written, asked before any work is done; None if it may.

    A file that stands there may only be replaced if it begins as files of this `kind` do (or is empty), and is
    not among the `inputs`.
    """
    if os.path.realpath(path) in {os.path.realpath(one) for one in inputs}:
        return Problem(f"is also read for this {kind}", "Write to another file", str(path))
    if path.is_dir():
        return Problem("is a folder", "Name a file in it", str(path))
    if not path.parent.is_dir():
        return Problem("lies in a folder that does not exist", "Make the folder first", str(path))
    if path.exists() and not path.is_file():
        return Problem("is no ordinary file", "Leave --output out for standard output", str(path))
    if path.is_file() and not _begins(path, beginnings):
        return Problem(f"is there already, and is no {kind}", "Write to another file", str(path))
    return None


def _begins(path: Path, beginnings: tuple[bytes, ...]) -> bool:
    try:
        with path.open("rb") as file:
            start = file.read(64)
    except OSError:
        return False
    return not start or start.startswith(beginnings)
