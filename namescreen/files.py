"""File access: whole writes that keep permissions, bounded reads, and the user's cache folder."""

from __future__ import annotations

import errno
import glob
import hashlib
import os
import stat
import time
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import BinaryIO

from .errors import InputError, Problem

__all__ = ["names_a_file", "read_bounded", "refuse_devices", "replacing", "sha256_of", "user_cache", "write_whole"]

ABANDONED = 3600.0
"""Seconds after which an unfinished file that nobody writes to any more belongs to a run that was killed."""


_ENDINGS = (".txt", ".csv", ".tsv", ".toml", ".json", ".jsonl", ".xml", ".zip", ".gz", ".session", ".md", ".html",
            ".xls", ".xlsx", ".ods", ".doc", ".docx", ".odt", ".pdf")  # fmt: skip
"""What the names of files end in, and no mark does."""


def names_a_file(text: str, folder: Path | None = None) -> bool:
    """Whether a text is the name of a file rather than of goods: it ends as files do, or, with a dot in it, it is one
    in `folder` (the current one)."""
    try:
        return text.lower().endswith(_ENDINGS) or ("." in text and ((folder or Path()) / text).is_file())
    except (OSError, ValueError):  # too long, or with a NUL
        return False


def read_bounded(path: Path, most: int, remedy: str) -> bytes:
    """The contents of the file at `path`, at most `most` bytes.

    Raises `InputError`, with `remedy` as the next step, if it cannot be read or has more.
    """
    try:
        with path.open("rb") as file:
            contents = file.read(most + 1)
    except FileNotFoundError:
        raise InputError(Problem("no such file", remedy, str(path))) from None
    except IsADirectoryError:
        raise InputError(Problem("is a folder", remedy, str(path))) from None
    except OSError as error:
        raise InputError(Problem(f"cannot be read ({error.strerror or error})", remedy, str(path))) from None
    except ValueError:  # a NUL in the path
        raise InputError(Problem("is no path of a file", remedy, str(path))) from None
    if len(contents) > most:
        raise InputError(Problem(f"has more than {most:,} bytes", remedy, str(path)))
    return contents


def refuse_devices(path: Path) -> None:
    """Raises OSError if something stands at `path` that is neither a file nor a folder."""
    if path.exists() and not (path.is_file() or path.is_dir()):
        raise OSError(errno.EINVAL, "it is no ordinary file", str(path))


@contextmanager
def replacing(path: Path) -> Iterator[BinaryIO]:
    """A file to write that takes the place of `path` once it is whole: a reader sees the old file or the new one.

    A new file gets the permissions that the umask leaves; one that is replaced keeps its own. A symbolic link stays,
    and the file it leads to is replaced. Raises OSError if the file cannot be written, if it is write-protected, or if
    `path` is a device or pipe; the old file then stays.
    """
    refuse_devices(path)
    target = Path(os.path.realpath(path))
    permissions = stat.S_IMODE(target.stat().st_mode) if target.exists() else None
    if permissions is not None and not os.access(target, os.W_OK):
        raise PermissionError(errno.EACCES, "it is write-protected", str(path))
    _sweep(target)
    beside = target.with_name(f".{target.name[:40]}.{os.urandom(4).hex()}.part")
    flags = os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0)
    handle = os.open(beside, flags, 0o666 if permissions is None else 0o600)
    try:
        with os.fdopen(handle, "wb") as file:
            yield file
            file.flush()
            os.fsync(file.fileno())
        if permissions is not None:
            beside.chmod(permissions)
        beside.replace(target)
    except BaseException:
        with suppress(OSError):
            beside.unlink(missing_ok=True)
        raise


def write_whole(path: Path, contents: bytes) -> None:
    """Write `contents` to `path`, whole or not at all: see `replacing`."""
    with replacing(path) as file:
        file.write(contents)


def _sweep(target: Path) -> None:
    """Delete the unfinished files of killed runs beside `target`."""
    for part in target.parent.glob(f".{glob.escape(target.name[:40])}.*.part"):
        with suppress(OSError):
            if time.time() - part.stat().st_mtime > ABANDONED:
                part.unlink()


def user_cache() -> Path:
    """The user's cache folder of this program. For a user without a home folder, as in some containers, a place below
    the null device: nothing can be kept there, and every caller copes with a cache that cannot be written."""
    from platformdirs import user_cache_path

    try:
        folder = user_cache_path("namescreen", appauthor=False)
    except (KeyError, RuntimeError):
        folder = Path("~")
    return folder if folder.is_absolute() else Path(os.devnull) / "namescreen"


def sha256_of(path: Path) -> str:
    """The sha256 of a file's bytes, in hexadecimal."""
    with path.open("rb") as file:
        return hashlib.file_digest(file, "sha256").hexdigest()
