"""Numbered lines of a text, whatever its encoding and line ends; streaming, a line at a time."""

from __future__ import annotations

import codecs
from collections.abc import Iterable, Iterator
from typing import Protocol

from ..errors import InputError, Problem
from .problems import ProblemLog

__all__ = ["Bytes", "encoding_of", "lines", "require_encoding"]


class Bytes(Protocol):
    """A stream that is read in chunks."""

    def read(self, size: int, /) -> bytes:
        """At most `size` bytes; b"" at the end."""
        ...


CHUNK = 1 << 20
LONGEST_LINE = 1 << 20
"""The most bytes of a line; longer lines are left out (the longest goods texts have some hundred thousand)."""

_BOMS = (
    (codecs.BOM_UTF8, "utf-8"),
    (codecs.BOM_UTF32_LE, "utf-32-le"),
    (codecs.BOM_UTF32_BE, "utf-32-be"),
    (codecs.BOM_UTF16_LE, "utf-16-le"),
    (codecs.BOM_UTF16_BE, "utf-16-be"),
)


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


def require_encoding(encoding: str | None) -> None:
    """Raise `InputError` if this is the name of no encoding of text."""
    if encoding is None:
        return
    try:
        b"a".decode(encoding, "replace")
    except (LookupError, ValueError):
        raise InputError(Problem(f"{encoding!r} is not an encoding", "Try utf-8, utf-16 or windows-1252")) from None


def lines(stream: Bytes, log: ProblemLog, encoding: str | None = None) -> Iterator[tuple[int, str]]:
    """The numbered lines of a text, whatever its encoding and line ends; raises `InputError` for binary
    content.

    A line that is not UTF-8 is read as Windows-1252, and noted; one longer than `LONGEST_LINE` is left out,
    and noted.
    """
    head = stream.read(8192)
    require_encoding(encoding)
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
    for bom, marked in _BOMS:
        if head.startswith(bom) and marked.startswith(_bare(shown)):
            head, shown = head[len(bom) :], marked
            break
    chunks = _chunks(head, stream)
    if codecs.lookup(shown).name != "utf-8":
        chunks = _as_utf8(chunks, shown, log)
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


def _bare(encoding: str) -> str:
    """The name of an encoding without its byte order: utf-16 of utf-16-le."""
    return codecs.lookup(encoding).name.removesuffix("-sig").removesuffix("-le").removesuffix("-be")


def _chunks(head: bytes, stream: Bytes) -> Iterator[bytes]:
    yield head
    while chunk := stream.read(CHUNK):
        yield chunk


def _as_utf8(chunks: Iterable[bytes], encoding: str, log: ProblemLog) -> Iterator[bytes]:
    try:
        for text in codecs.iterdecode(chunks, encoding, "replace"):
            yield text.encode("utf-8", "replace")
    except UnicodeError as error:  # no byte order mark where one must be
        raise InputError(Problem(f"is not text in {encoding} ({error})", "Name its encoding", log.source)) from None


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
