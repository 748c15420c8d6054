"""From sources to marks: every row read, the bad ones noted, the good ones kept."""

from __future__ import annotations

import re
import shlex
import sys
from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

from ..errors import InputError, Problem
from ..text import MAX_LENGTH, parse
from .columns import MarkColumns, MarkWriter
from .fields import Columns, chosen_columns, mark_from, one_line, option_of
from .formats import UNNAMED, read_document, read_side_table, sniff
from .identity import Event
from .other_kinds import no_list
from .problems import ProblemLog
from .side_tables import SideTables
from .sources import Container, DamagedError, Document, Stream, containers_of, note_ignored
from .tabular import read_lines
from .tally import MOST_OFFICES, Source, Tally
from .text_lines import lines, require_encoding

__all__ = ["Progress", "Source", "read_marks", "read_names"]

Progress = Callable[[int, int | None], None]
"""Called with the amount done and the total (None: not known)."""

EVERY = 4096
"""Records between two calls of the progress function."""
LOOKED_INTO = 50
"""The most documents of an archive or folder that are inspected first, to find those that must be read before the
others. Larger sets are files of one mark each."""


def read_marks(
    sources: Sequence[Path | str],
    *,
    column: Sequence[str] | str | None = None,
    encoding: str | None = None,
    digests: dict[Path, str] | None = None,
    progress: Progress | None = None,
    onto: MarkWriter | None = None,
) -> tuple[MarkColumns, tuple[Source, ...], tuple[Problem, ...]]:
    """All marks of `sources` (files and folders), what each file gave, and what was wrong with it.

    `column` is what `fields.chosen_columns` takes; `onto` holds earlier marks, to which the new ones are added. Raises
    `InputError`, with everything found wrong, if a source does not exist or no mark could be read at all."""
    require_encoding(encoding)
    log = ProblemLog()
    columns = chosen_columns(column)
    containers = containers_of(sources, log, digests)
    with SideTables() as sides:
        reading = _Reading(log, columns, encoding, sides, progress, onto or MarkWriter())
        reading.aside(containers)
        for container in containers:
            log.reading(str(container.path))
            for document in container.documents(log):
                reading.read(container, document)
                log.reading(str(container.path))
    marks, found, problems = reading.finish(containers)
    options = shlex.join(
        [
            *(word for key, name in columns.items() for word in ("--column", f"{option_of(key)}={name}")),
            *(("--encoding", encoding) if encoding else ()),
        ]
    )
    return marks, tuple(replace(source, read_with=options) for source in found), problems


class _Reading:
    """One reading of all sources."""

    def __init__(
        self,
        log: ProblemLog,
        columns: Columns,
        encoding: str | None,
        sides: SideTables,
        progress: Progress | None,
        writer: MarkWriter,
    ) -> None:
        self.log, self.columns, self.encoding, self.sides, self.progress = log, columns, encoding, sides, progress
        self.writer = writer
        self.latest = (datetime.now(UTC) + timedelta(days=1)).date().isoformat()  # today, in the east
        self.tallies: dict[str, Tally] = {}
        self.fatal: list[Problem] = []
        self.read_aside: dict[str, str] = {}
        self.records = self.line = 0

    def aside(self, containers: Sequence[Container]) -> None:
        """Read the side tables first: their facts must be known when the marks are read."""
        looked: Counter[Path] = Counter()
        for container in containers:
            if looked[container.group] >= LOOKED_INTO and container.path.suffix.lower() == ".xml":
                continue
            for document in container.documents(ProblemLog()):
                looked[container.group] += 1
                if not self._put_aside(document) and looked[container.group] > LOOKED_INTO:
                    break

    def _put_aside(self, document: Document) -> bool:
        self.log.reading(document.name)
        try:
            with document.open() as stream:
                kind = sniff(stream, document.suffix, self.columns, self.encoding)
                if kind.side is None and not kind.owners:
                    return False
                self.read_aside[document.name] = kind.name
                if kind.owners:
                    self._keep_owners(stream, document)
                elif kind.side is not None and kind.side.facts is not None:
                    read_side_table(
                        stream, document.suffix, self.log, kind.side, self.sides, self.encoding, self._count
                    )
                else:
                    note_ignored([document.name], self.log)
        except DamagedError as error:
            if document.name not in self.read_aside:
                return False  # it is read again later, and noted then
            self._damaged(error, None)
        return True

    def _keep_owners(self, stream: Stream, document: Document) -> None:
        for _, values in read_document(stream, document.suffix, self.log, self.columns, self.sides, self.encoding):
            self._count()
            if values.get("operation") == "owner":
                self.sides.put(values["owner_key"], [("owner", "", values["owner"])])

    def _count(self) -> None:
        self.records += 1
        if self.progress and self.records % EVERY == 0:
            self.progress(self.records, None)

    def _damaged(self, error: DamagedError, line: int | None) -> None:
        self.log.note(
            f"the archive is cut, locked or damaged ({error})",
            "What stood before that was kept: download it again",
            line=line,
        )

    def read(self, container: Container, document: Document) -> None:
        """Read one document; what is wrong with it is noted."""
        if document.name in self.read_aside:
            return
        name = document.name if document.alone else str(container.group)
        self.log.reading(document.name, name if name != document.name else "")
        left_out = self.log.left_out
        tally = None
        self.line = 0
        try:
            with document.open() as stream:
                kind = sniff(stream, document.suffix, self.columns, self.encoding)
                if not kind.together:
                    name = document.name
                    self.log.reading(name)
                tally = self.tallies.setdefault(name, Tally(name))
                tally.containers[container.sha256] = container.date
                if kind.name not in UNNAMED:
                    tally.formats[kind.name] = None
                self._read(stream, document, tally, container.date, table=not kind.xml)
        except DamagedError as error:
            self._damaged(error, self.line or None)
        except InputError as error:
            if self.log.set:  # one of many, which are reported together
                for problem in error.problems:
                    self.log.note(problem.what, problem.remedy, line=problem.line, field=problem.field)
            else:
                self.fatal.extend(error.problems)
        if tally is not None:
            tally.left_out += self.log.left_out - left_out
            tally.rows += self.log.left_out - left_out

    def _read(self, stream: Stream, document: Document, tally: Tally, date: str, *, table: bool) -> None:
        def note(what: str, remedy: str, field: str) -> None:
            self.log.note(what, remedy, line=self.line, field=field)

        def tell(name: str) -> None:
            tally.formats[name] = None

        rows = read_document(stream, document.suffix, self.log, self.columns, self.sides, self.encoding, tell)
        for line, values in rows:
            self.line = line
            self._count()
            operation = values.get("operation", "")
            if operation == "owner":
                continue
            if operation == "none":
                self.log.leave_out("the record is of no mark", "the office says so of it", line)
                continue
            tally.rows += int(values.get("rows", "1"))
            if "format" in values:
                tally.formats[values["format"]] = None
            if not values.get("owner") and (key := values.get("owner_key")):
                found = self.sides.get(key).get("owner", ())
                values["owner"] = "; ".join(dict.fromkeys(name for _, name in found))
            place = line if tally.name == document.name else 0
            text = values["text"] = self._words(values.get("text", ""), line)
            if len(values) == 1:  # a line of a list, which is by far quicker added so
                event = _event(operation, text, table=table)
                tally.count(event, text, "")
                self.writer.add_words(text, tally.name, place, event)
                continue
            mark = mark_from(values, tally.name, place, note, self.latest)
            event = _event(operation, text, table=table)
            if mark.office and len(tally.offices) < MOST_OFFICES:
                tally.offices[mark.office] = None
            tally.count(event, text, mark.mark_type)
            if event <= Event.ROW and mark.status == "live" and mark.expired_by(date):
                tally.expired[mark.text] += 1
            self.writer.add(mark, event)

    def _words(self, given: str, line: int) -> str:
        text = one_line(given)
        if len(text) > MAX_LENGTH:
            self.log.note(
                f"the mark has {len(text):,} characters",
                f"Its first {MAX_LENGTH} are compared",
                line=line,
                kind="marks longer than can be compared",
            )
            text = text[:MAX_LENGTH]
        return text

    def finish(self, containers: Sequence[Container]) -> tuple[MarkColumns, tuple[Source, ...], tuple[Problem, ...]]:
        """The marks, sources and remarks; raises `InputError` if there is no mark."""
        for tally in self.tallies.values():
            try:
                tally.remarks(self.log)
            except InputError as error:
                self.fatal.extend(error.problems)
        self._miss_main_tables()
        marks = self.writer.columns()
        kept = self.writer.kept
        sources = tuple(tally.source(kept.get(tally.name, 0)) for tally in self.tallies.values() if tally.rows)
        problems = (*self.fatal, *self.log.problems())
        if not len(marks):
            wordless = sum(source.figurative for source in sources)
            if wordless and not self.fatal:
                problems += (
                    Problem(
                        f"none of the {wordless:,} marks read has words",
                        "Marks of pictures alone cannot be compared by their words",
                    ),
                )
            empty = [Problem("holds no marks", "Put one mark a line", str(one.path)) for one in containers]
            raise InputError(problems or empty)
        return marks, sources, problems

    def _miss_main_tables(self) -> None:
        """Note tables about marks whose main table is missing."""
        read = {name for tally in self.tallies.values() for name in tally.formats}
        for kind in dict.fromkeys(self.read_aside.values()):
            tables = [name for name, of_kind in self.read_aside.items() if of_kind == kind]
            if kind not in read and kind not in UNNAMED:
                self.log.reading(tables[0])
                self.log.note(
                    f"is one of {len(tables)} tables of {kind} without the one that holds the marks",
                    "Give the whole set, or say with --column mark=NAME which column holds the words",
                )


def _event(operation: str, text: str, *, table: bool) -> Event:
    if operation == "delete":
        return Event.DELETE
    if operation == "part":
        return Event.PART
    if not any(map(str.isalnum, text)) and not parse(text).words:
        return Event.WORDLESS
    return Event.ROW if table else Event.WHOLE


def read_names(source: Path | str, *, encoding: str | None = None) -> tuple[tuple[str, ...], tuple[Problem, ...]]:
    """The names in a shortlist, in order, and what was wrong with it.

    `source` is a file, or "-" for standard input: one name a line, or a CSV with a `name` column. Names that
    stand twice, and lines without letters or digits, are noted and left out. Raises `InputError` if no name
    is left or the file cannot be read.
    """
    log = ProblemLog("standard input" if str(source) == "-" else str(source))
    path = Path(source)
    try:
        if str(source) == "-":
            names = _names(Stream(sys.stdin.buffer), "", log, encoding)
        elif path.is_dir():
            raise InputError(Problem("is a folder", "Give a file with one name a line", str(path)))
        else:
            unfit = no_list(path)
            if unfit is not None:
                raise InputError(unfit)
            with path.open("rb") as stream:
                names = _names(Stream(stream), path.suffix.lower(), log, encoding)
    except (DamagedError, OSError) as error:
        why = getattr(error, "strerror", None) or error
        raise InputError(Problem(f"cannot be opened ({why})", "Check the path", log.source)) from error
    if not names:
        raise InputError((*log.problems(), Problem("holds no names", "Put one name a line", log.source)))
    return tuple(names), log.problems()


_NAME_COLUMN = re.compile(rb'(?:\xef\xbb\xbf)?\s*(?:[^\r\n]*[,;\t|])?[ ]*"?name"?[ ]*[,;\t|\r\n]', re.IGNORECASE)


def _names(stream: Stream, suffix: str, log: ProblemLog, encoding: str | None) -> list[str]:
    names: dict[str, str] = {}
    columns: Columns = {}
    if _NAME_COLUMN.match(stream.head):  # standard input, and a file of any ending, may hold a table
        suffix, columns = suffix if suffix in (".tsv", ".tab") else ".csv", {"text": "name"}
    for line, values in read_lines(lines(stream, log, encoding), suffix, log, columns, names=True):
        text = one_line(values.get("text", ""))
        if not text or text.startswith("# "):  # a remark, as a saved shortlist holds them
            continue
        if not parse(text).words:
            log.leave_out(f"{text[:40]!r} has no letters or digits", "it cannot be compared", line)
        elif len(text) > MAX_LENGTH:
            log.leave_out(f"the name has {len(text):,} characters", f"names have at most {MAX_LENGTH}", line)
        elif text.casefold() in names:
            log.note(f"{text[:40]!r} stands twice", "It is screened once, whatever its capitals", line=line)
        else:
            names[text.casefold()] = text
    return [*names.values()]
