"""Where a command may write: never over its inputs or the user's work."""

from __future__ import annotations

import hashlib
import os
import shutil
from collections.abc import Iterable
from contextlib import suppress
from itertools import count
from pathlib import Path

from namescreen.errors import Problem
from namescreen.files import sha256_of, user_cache, write_whole

from .talk import say

__all__ = ["set_aside", "unfit_output", "write_output"]


def unfit_output(path: Path, kind: str, beginnings: tuple[bytes, ...], inputs: Iterable[Path]) -> Problem | None:
    """Why `path` may not be written, None if it may; checked before any work is done.

    A file that stands there may only be replaced if it begins as files of this `kind` do (or is empty), and is
    not among the `inputs`.
    """
    if "\0" in str(path):
        return Problem("is no path: it holds a NUL", "Write to another file", str(path))
    try:
        path.stat()
    except (FileNotFoundError, NotADirectoryError):
        pass
    except OSError as error:  # a name longer than names may be, a link that leads to itself
        return Problem(f"cannot be written ({error.strerror})", "Write to another file", str(path))
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


def write_output(path: Path, contents: bytes) -> None:
    """Write `contents` to `path`, whole or not at all; raises OSError.

    A file that stands there and has been changed since it was written, or was not written here, is kept beside it
    under another name, and that is said.
    """
    aside = None if _is_unchanged(path) or sha256_of(path) == hashlib.sha256(contents).hexdigest() else set_aside(path)
    try:
        write_whole(path, contents)
    except BaseException:
        if aside is not None:
            aside.unlink()
        raise
    if aside is not None:
        say(f"{path} was changed since it was written, or was not written here: it is kept as {aside}.")
    with suppress(OSError):
        record = _record(path)
        record.parent.mkdir(parents=True, exist_ok=True)
        record.write_text(sha256_of(path))


def set_aside(path: Path) -> Path:
    """Give the file at `path` a second, free name, which keeps it when `path` is replaced."""
    target = Path(os.path.realpath(path))
    endings = ("old" if number == 1 else f"old-{number}" for number in count(1))
    spare = next(one for ending in endings if not os.path.lexists(one := target.with_name(f"{target.name}.{ending}")))
    try:
        os.link(target, spare)
    except OSError:  # a disk without hard links
        shutil.copy2(target, spare)
    return spare


def _is_unchanged(path: Path) -> bool:
    """Whether `path` has no file, an empty one, or exactly what was last written there."""
    if not path.exists() or not path.stat().st_size:
        return True
    try:
        return _record(path).read_text() == sha256_of(path)
    except (OSError, UnicodeDecodeError):
        return False


def _record(path: Path) -> Path:
    """Where the digest of what was last written at `path` is kept; the name of the file does not tell what it is."""
    return user_cache() / "written" / hashlib.sha256(os.fsencode(os.path.realpath(path))).hexdigest()[:32]
