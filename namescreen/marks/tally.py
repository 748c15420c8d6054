"""Counts for each source of marks, and how a report cites the source."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, field
from hashlib import sha256
from itertools import islice

from ..errors import InputError, Problem
from ..plain_text import plural, some
from .identity import Event
from .problems import ProblemLog
from .term import GRACE_MONTHS
from .territory import OFFICES

__all__ = ["MOST_OFFICES", "Source", "Tally"]

MOST_OFFICES = 3
"""Offices named for one source."""
MOST_NAMED = 5
"""Marks named in one remark."""
_WITH_WORDS = frozenset({"", "word", "combined", "other"})
"""Types of marks that have words or may have them."""


@dataclass(frozen=True, slots=True)
class Source:
    """One file, or one set of files, that marks were read from, as a report cites it.

    `date` is the file's own date (YYYY-MM-DD), `sha256` that of the file as it lies on disk; of several `files` the
    latest date, and the digest of theirs one after another. `format` names the office's format, where it is one. Of
    `rows` records `kept` became marks, `left_out` could not be read, `figurative` have no words and cannot be compared,
    and `replaced` are earlier records of marks that have later ones, and what only changes or removes others.
    `read_with` are the options that it was read with: another reading of the same file may find other marks.
    """

    name: str
    date: str
    sha256: str
    rows: int = 0
    kept: int = 0
    left_out: int = 0
    figurative: int = 0
    replaced: int = 0
    files: int = 1
    format: str = ""
    read_with: str = ""


@dataclass(slots=True)
class Tally:
    """The counts of one source while it is read."""

    name: str
    formats: dict[str, None] = field(default_factory=dict)
    offices: dict[str, None] = field(default_factory=dict)
    containers: dict[str, str] = field(default_factory=dict)
    rows: int = 0
    left_out: int = 0
    words: int = 0
    expired: Counter[str] = field(default_factory=Counter)
    wordless: Counter[str] = field(default_factory=Counter)

    def count(self, event: Event, words: str, mark_type: str) -> None:
        """Count a record by its words, or by its type where it has none."""
        if event == Event.WORDLESS:
            self.wordless[mark_type] += 1
        elif words:
            self.words += 1

    def source(self, kept: int) -> Source:
        """The source, of whose records `kept` became marks."""
        digests = list(self.containers)
        whole = digests[0] if len(digests) == 1 else sha256("".join(digests).encode()).hexdigest()
        figurative = self.wordless.total()
        return Source(
            self.name,
            max(self.containers.values()),
            whole,
            self.rows,
            kept,
            self.left_out,
            figurative,
            max(0, self.rows - kept - self.left_out - figurative),
            len(digests),
            self._format(),
        )

    def _format(self) -> str:
        """What the files are: a standard is named with the offices whose records they hold."""
        formats = ", ".join(self.formats)
        offices = [OFFICES.get(code, code) for code in self.offices][:MOST_OFFICES]
        return f"{', '.join(offices)}: {formats}" if offices and formats.startswith("WIPO ST.") else formats

    def remarks(self, log: ProblemLog) -> None:
        """What is to be said of the source as a whole; raises `InputError` if its words were not found."""
        log.reading(self.name)
        wordless = self.wordless.total()
        if wordless and not self.words and not _WITH_WORDS.isdisjoint(self.wordless):
            raise InputError(
                Problem(
                    f"none of its {wordless:,} records has words: the words were not found in this layout",
                    "Name the column of the words with --column, or look for the office's data in another form",
                    self.name,
                )
            )
        if wordless:
            types = ", ".join(f"{kind or 'of no stated type'} {count:,}" for kind, count in self.wordless.most_common())
            log.note(
                f"{wordless:,} of {self.rows:,} marks have no words ({types})",
                "Marks of pictures alone cannot be compared by their words, and were not screened",
            )
        if self.expired:
            named = list(islice(self.expired, MOST_NAMED))
            more = self.expired.total() - sum(self.expired[text] for text in named)
            listed = some([*named, *([f"{more:,} more"] if more else [])])
            log.note(
                f"the term of {plural(self.expired.total(), 'mark')} ran out before the file's own date: {listed}",
                f"They count as the list calls them. A mark can be renewed for {GRACE_MONTHS} months after its term: "
                "the report tells of those near a name whether these are over",
            )
