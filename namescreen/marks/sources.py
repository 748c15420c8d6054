"""From paths to readable documents: folders walked, gzip and zip opened.

Everything streams: a file of any size costs a few megabytes, an archive only its directory.
"""

from __future__ import annotations

import gzip
import lzma
import os
import re
import struct
import zipfile
import zlib
from collections.abc import Callable, Iterator, Sequence
from contextlib import AbstractContextManager, contextmanager, suppress
from dataclasses import dataclass, field
from datetime import UTC, datetime
from functools import partial
from itertools import pairwise
from pathlib import Path, PurePosixPath
from typing import IO, NamedTuple

from ..errors import InputError, Problem
from ..expressions import expression
from ..files import sha256_of
from .other_kinds import KINDS_NOT_READ, no_list
from .problems import ProblemLog

__all__ = ["Container", "DamagedError", "Document", "Stream", "containers_of", "files_of"]

HEAD = 8192
MOST_FILES = 300_000
"""The most files of a folder that are looked at: three times the largest folder of single marks that was tried."""
_NAME_ONE = "Name the folder or the file in which the lists are"
_TALK = expression(r"(?:read[-_ ]?me|licen[cs]e|copying|notice|terms|change[-_ ]?log|disclaimer)\b", re.IGNORECASE)
_BROKEN = (
    EOFError, gzip.BadGzipFile, zipfile.BadZipFile, zlib.error, lzma.LZMAError, struct.error, NotImplementedError,
    RuntimeError, ValueError, OverflowError, OSError,
)  # fmt: skip
"""What the standard library raises for archives that are cut, damaged, locked or of a kind it does not read."""


class DamagedError(Exception):
    """A file or archive cannot be read further; the text says why."""


class Stream:
    """The bytes of a document, the first of which can be inspected; raises `DamagedError` if they cannot be read."""

    def __init__(self, raw: IO[bytes]) -> None:
        # Keep the data from before the damage to an archive: `read` would lose it.
        self._read: Callable[[int], bytes] = getattr(raw, "read1", raw.read)
        self._waiting = self.head = self._more(HEAD)

    def read(self, size: int) -> bytes:
        """At most `size` bytes; b"" at the end."""
        if self._waiting:
            out, self._waiting = self._waiting[:size], self._waiting[size:]
            return out
        return self._more(size)

    def _more(self, size: int) -> bytes:
        try:
            return self._read(size)
        except _BROKEN as error:
            raise DamagedError(_why(error)) from error


def _why(error: BaseException) -> str:
    return str(getattr(error, "strerror", None) or error or type(error).__name__)


@dataclass(frozen=True, slots=True)
class Document:
    """One readable thing: a file on disk, or one file inside an archive. `name` is what the user is told; `alone`
    whether no other lies beside it in its archive or the folder that was given."""

    name: str
    suffix: str
    alone: bool
    begin: Callable[[], AbstractContextManager[IO[bytes]]] = field(repr=False)

    @contextmanager
    def open(self) -> Iterator[Stream]:
        """The bytes of the document, decompressed; raises `DamagedError` where that fails."""
        try:
            raw = self.begin()
            stream = raw.__enter__()
        except _BROKEN as error:
            raise DamagedError(_why(error)) from error
        try:
            yield Stream(stream)
        finally:
            raw.__exit__(None, None, None)


class Container(NamedTuple):
    """A file on disk that holds a document or, as an archive, several.

    `group` is the folder that was given, if the file was found in one among others, else the file itself; `date` and
    `sha256` are the file's own.
    """

    path: Path
    group: Path
    date: str
    sha256: str

    def documents(self, log: ProblemLog) -> Iterator[Document]:
        """The documents, one after another, each to be opened before the next is asked for.

        What is damaged, and what is no list of marks, is noted in `log`.
        """
        try:
            with self.path.open("rb") as raw:
                archive_begins = raw.read(4) in (b"PK\x03\x04", b"PK\x05\x06")
            if not archive_begins:
                yield Document(str(self.path), suffix_of(self.path.name), self.group == self.path, self._plain)
                return
            with zipfile.ZipFile(self.path) as archive:
                yield from self._members(archive, log)
        except _BROKEN as error:
            log.note(f"is a zip archive that is cut or damaged ({_why(error)})", "Download it again")

    def _members(self, archive: zipfile.ZipFile, log: ProblemLog) -> Iterator[Document]:
        there = sorted((one for one in archive.infolist() if not one.is_dir()), key=lambda one: one.filename)
        names = [one.filename for one in there]
        ignored = set(_ignored(names, archive=True))
        chosen = [one for one in there if one.filename not in ignored and not _hidden(one.filename)]
        note_ignored(sorted(ignored), log)
        twice = {one for one, other in pairwise(names) if one == other}
        if twice:
            log.note(
                f"holds {len(twice):,} names more than once ({', '.join(sorted(twice))[:200]})",
                "All the files of that name were read, in the order of the archive",
            )
        if not chosen:
            log.note("is a zip archive without a file of marks", "Look inside it, and give the file itself")
        alone = len(chosen) == 1 and self.group == self.path
        for one in chosen:
            name = f"{self.path}: {one.filename}"
            yield Document(name, suffix_of(one.filename), alone, partial(_member, archive, one))

    @contextmanager
    def _plain(self) -> Iterator[IO[bytes]]:
        with self.path.open("rb") as raw, _unzipped(raw) as stream:
            yield stream


@contextmanager
def _member(archive: zipfile.ZipFile, one: zipfile.ZipInfo) -> Iterator[IO[bytes]]:
    with archive.open(one) as raw, _unzipped(raw) as stream:
        yield stream


@contextmanager
def _unzipped(raw: IO[bytes]) -> Iterator[IO[bytes]]:
    magic = raw.read(2)
    raw.seek(0)
    if magic == b"\x1f\x8b":
        with gzip.open(raw) as stream:
            yield stream  # type: ignore[misc]
    else:
        yield raw


def suffix_of(name: str) -> str:
    """The ending of a name that tells its format, lower case: ".csv" for "marks.csv.gz"."""
    path = PurePosixPath(name.lower())
    return PurePosixPath(path.stem).suffix if path.suffix in (".gz", ".gzip") else path.suffix


def _hidden(name: str) -> bool:
    return any(part.startswith((".", "__MACOSX")) for part in PurePosixPath(name).parts)


def _ignored(names: Sequence[str], *, archive: bool) -> list[str]:
    """Which of these files, hidden ones apart, are no lists of marks: by their endings, by names such as README, and,
    in
    an archive, text beside tables or XML, which explains them."""
    shown = [name for name in names if not _hidden(name)]
    suffixes = {name: suffix_of(name) for name in shown}
    lists = archive and not {".xml", ".csv", ".tsv"}.isdisjoint(suffixes.values())
    return [
        name
        for name in shown
        if suffixes[name] in KINDS_NOT_READ
        or (lists and suffixes[name] in (".txt", ""))
        or (suffixes[name] in (".txt", "") and _TALK.match(PurePosixPath(name).name))
    ]


def note_ignored(names: Sequence[str], log: ProblemLog) -> None:
    """Name, in one remark, the files that were not read because they are no lists of marks."""
    if names:
        more = f" and {len(names) - 3:,} more" if len(names) > 3 else ""
        log.note(f"not read, being no lists of marks: {', '.join(names[:3])}{more}")


def files_of(sources: Sequence[Path | str], log: ProblemLog | None = None) -> dict[Path, Path]:
    """Every file that `sources` mean, folders walked in the order of their names, each with the source it was found in.

    What is no list of marks is named in `log`. Raises `InputError` naming all sources that do not exist, cannot be
    read, or are no lists.
    """
    problems: list[Problem] = []
    files: dict[Path, Path] = {}
    for source in map(Path, sources):
        try:
            if source.is_dir():
                inside = _inside(source, ProblemLog() if log is None else log)
                if not inside:
                    problems.append(
                        Problem(
                            "this folder holds no file of marks",
                            "Give a folder or file with text, CSV, TSV, JSON Lines or XML, plain or as gzip or zip",
                            str(source),
                        )
                    )
                files.update(dict.fromkeys(inside, source if len(inside) > 1 else inside[0] if inside else source))
            elif source.exists() and not source.is_file():
                problems.append(Problem("is no ordinary file", "Save what it gives to a file first", str(source)))
            elif source.exists():
                unfit = no_list(source)
                problems += [unfit] if unfit else []
                files[source] = source
            else:
                problems.append(Problem("there is no such file or folder", "Check the path", str(source)))
        except OSError as error:
            problems.append(
                Problem(f"cannot be opened ({error.strerror or error})", "Check its permissions", str(source))
            )
    if problems:
        raise InputError(problems)
    if not files:
        raise InputError(Problem("no register was given", "Name at least one file or folder of marks"))
    return files


def _inside(folder: Path, log: ProblemLog) -> list[Path]:
    found = sorted(_walked(folder))
    names = [path.relative_to(folder).as_posix() for path in found if path.is_file()]
    zips = [name for name in names if name.lower().endswith(".zip")]
    ignored = set(_ignored([name for name in names if name not in zips], archive=False))
    log.source = str(folder)
    note_ignored(sorted(ignored), log)
    return [folder / name for name in names if name not in ignored and not _hidden(name)]


def _walked(folder: Path) -> list[Path]:
    """The files in a folder and those below it, hidden ones apart. Raises `InputError` for a whole disk, a folder that
    holds all homes, or one with more than `MOST_FILES` files: none of them is a folder of lists."""
    whole = folder.resolve()
    with suppress(RuntimeError, OSError):  # no home
        if whole in Path.home().resolve().parents and whole != Path(whole.anchor):
            raise InputError(Problem("holds the home folder, not only lists of marks", _NAME_ONE, str(folder)))
    if whole == Path(whole.anchor):
        raise InputError(Problem("is a whole disk", _NAME_ONE, str(folder)))
    found: list[Path] = []
    for where, folders, files in os.walk(folder):
        folders[:] = [one for one in folders if not _hidden(one)]
        found += [Path(where, one) for one in files if not _hidden(one)]
        if len(found) > MOST_FILES:
            remedy = f"{_NAME_ONE}; pack very many files as one zip"
            raise InputError(Problem(f"holds more than {MOST_FILES:,} files", remedy, str(folder)))
    return found


def containers_of(
    sources: Sequence[Path | str], log: ProblemLog, digests: dict[Path, str] | None = None
) -> list[Container]:
    """The files that `sources` mean, in order, each with its date and digest."""
    return [
        Container(
            path,
            group,
            datetime.fromtimestamp(path.stat().st_mtime, UTC).date().isoformat(),
            (digests or {}).get(path) or sha256_of(path),
        )
        for path, group in files_of(sources, log).items()
    ]
