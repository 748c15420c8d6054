"""From sources to marks: every row read, the bad ones noted, the good ones kept."""

from __future__ import annotations

import re
import sys
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import IO

from ..errors import InputError, Problem
from ..text import MAX_LENGTH, parse
from .columns import MarkColumns, MarkWriter
from .fields import mark_from
from .problems import ProblemLog
from .sources import BROKEN_ARCHIVE, Document, documents, files_of, lines
from .tabular import Row, read_lines
from .wipo_xml import looks_like_xml, read_wipo

__all__ = ["Progress", "Source", "clean", "read_marks", "read_names"]

Progress = Callable[[int, int | None], None]
"""Told now and then how much is done, and of how much (None: not known)."""

EVERY = 4096
"""Marks between two calls of a progress function."""


@dataclass(frozen=True, slots=True)
class Source:
    """One file that marks were read from, as a report cites it.

    `date` is the file's own date (YYYY-MM-DD), `sha256` that of the file as it lies on disk. Of `rows` rows,
    `kept` became marks, `left_out` could not be read, and `figurative` have no words and cannot be compared.
    """

    name: str
    date: str
    sha256: str
    rows: int = 0
    kept: int = 0
    left_out: int = 0
    figurative: int = 0


def clean(text: str) -> str:
    """`text` on one line, without control and format characters."""
    if not text.isprintable():
        text = "".join(c if c.isprintable() else " " if c.isspace() else "" for c in text)
    return " ".join(text.split())


def read_marks(
    sources: Sequence[Path | str],
    *,
    column: str | None = None,
    encoding: str | None = None,
    digests: dict[Path, str] | None = None,
    progress: Progress | None = None,
) -> tuple[MarkColumns, tuple[Source, ...], tuple[Problem, ...]]:
    """All marks of `sources` (files and folders), what each file gave, and what was wrong with it.

    Raises `InputError`, with everything found wrong, if a source does not exist or no mark could be read at
    all.
    """
    log = ProblemLog()
    writer = MarkWriter()
    read: list[Source] = []
    fatal: list[Problem] = []
    for path in files_of(sources):
        log.source = str(path)
        for document in documents(path, log, (digests or {}).get(path, "")):
            log.source = document.name
            try:
                read.append(_read_document(document, writer, log, column, encoding, progress))
            except InputError as error:
                fatal.extend(error.problems)
    log.source = ""
    if not len(writer):
        reasons = (*fatal, *log.problems())
        figurative = sum(source.figurative for source in read)
        if figurative:
            reasons += (
                Problem(
                    f"none of the {figurative:,} marks read has words",
                    "Marks of pictures alone cannot be compared by their words",
                ),
            )
        raise InputError(
            reasons
            or [
                Problem("holds no marks", "Put one mark a line", document.name)
                for path in files_of(sources)
                for document in documents(path, log)
            ]
        )
    return writer.columns(), tuple(read), (*fatal, *log.problems())


def _read_document(
    document: Document,
    writer: MarkWriter,
    log: ProblemLog,
    column: str | None,
    encoding: str | None,
    progress: Progress | None,
) -> Source:
    kept = figurative = last = 0
    left_out = log.left_out

    def note(what: str, remedy: str, field: str) -> None:
        log.note(what, remedy, line=last, field=field)

    try:
        with document.open() as stream:
            for line, values in _rows(stream, document.suffix, log, column, encoding):
                last = line
                text = clean(values.get("text", ""))
                if not any(map(str.isalnum, text)) and not parse(text).words:
                    figurative += 1
                    continue
                if len(text) > MAX_LENGTH:
                    log.note(
                        f"the mark has {len(text):,} characters",
                        f"Its first {MAX_LENGTH} are compared",
                        line=line,
                        kind="marks longer than can be compared",
                    )
                    text = text[:MAX_LENGTH]
                mark = mark_from({**values, "text": text}, document.name, line, note)
                writer.add(mark)
                kept += 1
                if progress and len(writer) % EVERY == 0:
                    progress(len(writer), None)
    except BROKEN_ARCHIVE as error:
        log.note(
            f"the archive is cut, locked or damaged ({error})",
            "The marks before that were kept: download it again",
            line=last or None,
        )
    except OSError as error:
        log.note(f"cannot be read ({error.strerror or error})", "Check the file", line=last or None)
    left_out = log.left_out - left_out
    rows = kept + figurative + left_out
    if figurative:
        log.note(
            f"{figurative:,} of {rows:,} marks have no words",
            "Marks of pictures alone cannot be compared by their words, and were not screened",
        )
    return Source(document.name, document.date, document.sha256, rows, kept, left_out, figurative)


def _rows(stream: IO[bytes], suffix: str, log: ProblemLog, column: str | None, encoding: str | None) -> Iterator[Row]:
    head = _Peeked(stream)
    if suffix == ".xml" or looks_like_xml(head.head):
        yield from read_wipo(head, log)  # type: ignore[arg-type]
    else:
        yield from read_lines(lines(head, log, encoding), suffix, log, column)  # type: ignore[arg-type]


class _Peeked:
    """A stream whose first bytes have been looked at and are given again."""

    def __init__(self, stream: IO[bytes]) -> None:
        self._stream = stream
        self._waiting = self.head = stream.read(4096)

    def read(self, size: int) -> bytes:
        if self._waiting:
            out, self._waiting = self._waiting[:size], self._waiting[size:]
            return out
        # What an archive gave before it turned out to be damaged is kept: `read` would lose it.
        return getattr(self._stream, "read1", self._stream.read)(size)


def read_names(source: Path | str, *, encoding: str | None = None) -> tuple[tuple[str, ...], tuple[Problem, ...]]:
    """The names in a shortlist, in order, and what was wrong with it.

    `source` is a file, or "-" for standard input: one name a line, or a CSV with a `name` column. Names that
    stand twice, and lines without letters or digits, are noted and left out. Raises `InputError` if no name
    is left or the file cannot be read.
    """
    log = ProblemLog("standard input" if str(source) == "-" else str(source))
    if str(source) == "-":
        names = _names(sys.stdin.buffer, "", log, encoding)
    else:
        path = Path(source)
        if path.is_dir():
            raise InputError(Problem("is a folder", "Give a file with one name a line", str(path)))
        try:
            with path.open("rb") as stream:
                names = _names(stream, path.suffix.lower(), log, encoding)
        except OSError as error:
            raise InputError(
                Problem(f"cannot be opened ({error.strerror or error})", "Check the path", str(path))
            ) from error
    if not names:
        raise InputError((*log.problems(), Problem("holds no names", "Put one name a line", log.source)))
    return tuple(names), log.problems()


_NAME_COLUMN = re.compile(rb'(?:\xef\xbb\xbf)?\s*(?:[^\r\n]*[,;\t|])?[ ]*"?name"?[ ]*[,;\t|\r\n]', re.IGNORECASE)


def _names(stream: IO[bytes], suffix: str, log: ProblemLog, encoding: str | None) -> dict[str, None]:
    names: dict[str, None] = {}
    head = _Peeked(stream)
    column = None
    if _NAME_COLUMN.match(head.head):  # standard input, and a file of any ending, may hold a table
        suffix, column = suffix if suffix in (".tsv", ".tab") else ".csv", "name"
    for line, values in _rows(head, suffix, log, column, encoding):  # type: ignore[arg-type]
        text = clean(values.get("text", ""))
        if not text or text.startswith("# "):  # a remark, as a saved shortlist holds them
            continue
        if not parse(text).words:
            log.leave_out(f"{text[:40]!r} has no letters or digits", "it cannot be compared", line)
        elif len(text) > MAX_LENGTH:
            log.leave_out(f"the name has {len(text):,} characters", f"names have at most {MAX_LENGTH}", line)
        elif text in names:
            log.note(f"{text[:40]!r} stands twice", "It is screened once", line=line)
        else:
            names[text] = None
    return names
