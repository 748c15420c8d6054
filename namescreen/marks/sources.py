"""From paths to readable documents: folders, gzip and zip opened, encodings and line ends settled.

Everything streams: a file of any size costs a few megabytes.
"""

from __future__ import annotations

import codecs
import gzip
import hashlib
import zipfile
import zlib
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import IO

from ..errors import InputError, Problem
from .problems import ProblemLog

__all__ = ["Document", "documents", "files_of", "lines", "sha256_of"]

CHUNK = 1 << 20
LONGEST_LINE = 1 << 20
"""Bytes; a longer line is no mark (the longest goods texts are some hundred thousand), and is left out."""

_KINDS_NOT_READ = {
    ".pdf",
    ".png",
    ".jpg",
    ".jpeg",
    ".gif",
    ".xls",
    ".xlsx",
    ".ods",
    ".doc",
    ".docx",
    ".html",
    ".htm",
    ".md",
    ".dtd",
    ".xsd",
    ".sqlite",
    ".db",
    ".parquet",
    ".exe",
    ".toml",
    ".py",
}
_BOMS = (
    (codecs.BOM_UTF8, "utf-8"),
    (codecs.BOM_UTF32_LE, "utf-32-le"),
    (codecs.BOM_UTF32_BE, "utf-32-be"),
    (codecs.BOM_UTF16_LE, "utf-16-le"),
    (codecs.BOM_UTF16_BE, "utf-16-be"),
)
BROKEN_ARCHIVE = (
    EOFError,
    gzip.BadGzipFile,
    zipfile.BadZipFile,
    zlib.error,
    RuntimeError,
    NotImplementedError,
)
"""What the standard library raises for archives that are cut, damaged, locked or of a kind it does not
read."""


@dataclass(frozen=True, slots=True)
class Document:
    """One readable thing: a file on disk, or one file inside an archive.

    `name` is what the user is told; `date` and `sha256` are those of the file on disk.
    """

    name: str
    path: Path
    date: str
    sha256: str
    member: str = ""

    @contextmanager
    def open(self) -> Iterator[IO[bytes]]:
        """The bytes of the document, decompressed."""
        with self.path.open("rb") as raw:
            magic = raw.read(4)
            raw.seek(0)
            if self.member:
                with zipfile.ZipFile(raw) as archive, archive.open(self.member) as stream:
                    if stream.read(2) == b"\x1f\x8b":
                        stream.seek(0)
                        with gzip.open(stream) as inner:
                            yield inner  # type: ignore[misc]
                    else:
                        stream.seek(0)
                        yield stream
            elif magic[:2] == b"\x1f\x8b":
                with gzip.open(raw) as stream:
                    yield stream  # type: ignore[misc]
            else:
                yield raw

    @property
    def suffix(self) -> str:
        """The last telling ending of the name, lower case: ".csv" for "marks.csv.gz"."""
        parts = Path((self.member or self.path.name).lower())
        return Path(parts.stem).suffix if parts.suffix in (".gz", ".gzip") else parts.suffix


def files_of(sources: Sequence[Path | str]) -> list[Path]:
    """Every file that `sources` mean, folders walked in the order of their names.

    Raises `InputError` naming all sources that do not exist or cannot be read.
    """
    problems: list[Problem] = []
    files: dict[Path, None] = {}
    for source in map(Path, sources):
        try:
            if source.is_dir():
                inside = [
                    p
                    for p in sorted(source.rglob("*"))
                    if p.is_file() and not _hidden(p, source) and p.suffix.lower() not in _KINDS_NOT_READ
                ]
                if not inside:
                    problems.append(
                        Problem(
                            "this folder holds no file of marks",
                            "Give a folder or file with text, CSV, TSV, JSON Lines or XML, plain or as gzip or zip",
                            str(source),
                        )
                    )
                files.update(dict.fromkeys(inside))
            elif source.exists() and not source.is_file():
                problems.append(Problem("is no ordinary file", "Save what it gives to a file first", str(source)))
            elif source.exists():
                with source.open("rb"):
                    files[source] = None
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
    return list(files)


def _hidden(path: Path, root: Path) -> bool:
    return any(part.startswith((".", "__MACOSX")) for part in path.relative_to(root).parts)


def sha256_of(path: Path) -> str:
    """The sha256 of a file's bytes, in hexadecimal."""
    with path.open("rb") as file:
        return hashlib.file_digest(file, "sha256").hexdigest()


def documents(path: Path, log: ProblemLog, sha256: str = "") -> list[Document]:
    """The documents in one file: itself, or the members of a zip archive; a broken archive is noted in
    `log`."""
    date = datetime.fromtimestamp(path.stat().st_mtime, UTC).date().isoformat()
    sha256 = sha256 or sha256_of(path)
    if not zipfile.is_zipfile(path):
        with path.open("rb") as raw:
            cut = raw.read(4) == b"PK\x03\x04"
        if cut:
            log.note("is a zip archive that is cut or damaged", "Download it again")
            return []
        return [Document(str(path), path, date, sha256)]
    with zipfile.ZipFile(path) as archive:
        members = [
            m
            for m in sorted(archive.namelist())
            if not m.endswith("/")
            and not any(part.startswith((".", "__MACOSX")) for part in Path(m).parts)
            and Path(m).suffix.lower() not in _KINDS_NOT_READ
        ]
    if not members:
        log.note("is a zip archive without a file of marks", "Look inside it, and give the file itself")
    return [Document(f"{path}: {member}", path, date, sha256, member) for member in members]


def encoding_of(head: bytes) -> str | None:
    """The encoding that the first bytes show: by byte order mark, or by the zeros of UTF-16; None for
    binary."""
    for bom, name in _BOMS:
        if head.startswith(bom):
            return name
    if b"\0" not in head:
        control = sum(byte < 32 and byte not in b"\t\n\r\f\x1a\x1b" for byte in head)
        return None if control > len(head) // 10 else "utf-8"
    if len(head) >= 4:
        even, odd = head[0::2].count(0), head[1::2].count(0)
        if odd > len(head) // 5 and even < len(head) // 50:
            return "utf-16-le"
        if even > len(head) // 5 and odd < len(head) // 50:
            return "utf-16-be"
    return None


def lines(stream: IO[bytes], log: ProblemLog, encoding: str | None = None) -> Iterator[tuple[int, str]]:
    """The numbered lines of a text, whatever its encoding and line ends; raises `InputError` for binary
    content.

    A line that is not UTF-8 is read as Windows-1252, and noted; one longer than `LONGEST_LINE` is left out,
    and noted.
    """
    head = stream.read(8192)
    if encoding is not None:
        try:
            b"a".decode(encoding, "replace")
        except (LookupError, ValueError):  # unknown, or no encoding of text
            raise InputError(Problem(f"{encoding!r} is not an encoding", "Try utf-8, utf-16 or windows-1252")) from None
    shown = encoding or encoding_of(head)
    if shown is None:
        raise InputError(
            Problem(
                "is not text",
                "Marks are read from text, CSV, TSV, JSON Lines and XML, plain or as "
                "gzip or zip; save a spreadsheet as CSV first",
                log.source,
            )
        )
    for bom, _ in _BOMS:
        if head.startswith(bom):
            head = head[len(bom) :]
            break
    chunks = _chunks(head, stream)
    if codecs.lookup(shown).name != "utf-8":
        chunks = (text.encode("utf-8", "replace") for text in codecs.iterdecode(chunks, shown, "replace"))
    for number, raw in _split(chunks):
        if raw is None:
            log.leave_out("the line is longer than 1 MB", "check that line ends are where they should be", number)
            continue
        try:
            yield number, raw.decode()
        except UnicodeDecodeError:
            try:
                text = raw.decode("windows-1252")
            except UnicodeDecodeError:
                log.leave_out(
                    "the line is neither UTF-8 nor Windows-1252",
                    "save the file as UTF-8, or name its encoding",
                    number,
                )
                continue
            log.note(
                "the line is not UTF-8 and was read as Windows-1252",
                "Check its accents; if they are wrong, save the file as UTF-8, or name its encoding",
                line=number,
            )
            yield number, text


def _chunks(head: bytes, stream: IO[bytes]) -> Iterator[bytes]:
    yield head
    while chunk := stream.read(CHUNK):
        yield chunk


def _split(chunks: Iterable[bytes]) -> Iterator[tuple[int, bytes | None]]:
    """Numbered lines of a byte stream ended by LF, CR LF or CR; None stands for one that is too long."""
    number, rest, too_long = 1, b"", False
    for chunk in chunks:
        if len(rest) > LONGEST_LINE:
            rest, too_long = b"", True
        block = rest + chunk
        # A CR at the end may be the first half of CR LF: keep it for the next chunk.
        held = block.endswith(b"\r")
        parts = (block[:-1] if held else block).splitlines(keepends=True)
        open_ended = bool(parts) and not parts[-1].endswith((b"\n", b"\r"))
        rest = (parts.pop() if open_ended else b"") + (b"\r" if held else b"")
        for part in parts:
            line = part.rstrip(b"\r\n")
            yield number, None if too_long or len(line) > LONGEST_LINE else line
            number, too_long = number + 1, False
    if rest or too_long:
        line = rest.rstrip(b"\r\n")
        yield number, None if too_long or len(line) > LONGEST_LINE else line
