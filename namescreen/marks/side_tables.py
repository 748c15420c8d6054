"""Facts about marks from separate files, kept on disk until the marks are read.

Some offices give one table a subject: classes here, owners there. The tables are read first, into an index in a
temporary file that is deleted afterwards. Memory use does not depend on their size or order.
"""

from __future__ import annotations

import sqlite3
import tempfile
from collections.abc import Iterable
from contextlib import suppress
from pathlib import Path

from ..errors import InputError, Problem

__all__ = ["Facts", "SideTables"]

Facts = dict[str, list[tuple[str, str]]]
"""The facts about one key: for each field (rank, text), in reading order."""
BATCH = 10_000


class SideTables:
    """Facts by key; `with SideTables() as tables` deletes the file at the end."""

    def __init__(self) -> None:
        self._connection: sqlite3.Connection | None = None
        self._folder: tempfile.TemporaryDirectory[str] | None = None
        self._waiting: list[tuple[str, str, str, str]] = []
        self._indexed = False
        self.filled: set[str] = set()

    def __enter__(self) -> SideTables:
        return self

    def __exit__(self, *_: object) -> None:
        if self._connection is not None:
            self._connection.close()
        if self._folder is not None:
            with suppress(OSError):
                self._folder.cleanup()

    def put(self, key: str, facts: Iterable[tuple[str, str, str]]) -> None:
        """Keep facts (field, rank, text) about a key."""
        for field, rank, text in facts:
            self.filled.add(field)
            self._waiting.append((key, field, rank, text))
        if len(self._waiting) >= BATCH:
            self._write()

    def get(self, key: str) -> Facts:
        """All facts about a key."""
        facts: Facts = {}
        if not self.filled:
            return facts
        if not self._indexed:
            self._write()
            self._base().execute("CREATE INDEX by_key ON facts (key)")
            self._indexed = True
        rows = self._base().execute("SELECT field, rank, text FROM facts WHERE key = ? ORDER BY rowid", (key,))
        for field, rank, text in rows:
            facts.setdefault(field, []).append((rank, text))
        return facts

    def _base(self) -> sqlite3.Connection:
        if self._connection is None:
            self._folder = tempfile.TemporaryDirectory(prefix="namescreen-")
            self._connection = sqlite3.connect(Path(self._folder.name) / "facts", isolation_level=None)
            self._connection.execute("PRAGMA journal_mode = OFF")
            self._connection.execute("PRAGMA synchronous = OFF")
            self._connection.execute("CREATE TABLE facts (key TEXT, field TEXT, rank TEXT, text TEXT)")
        return self._connection

    def _write(self) -> None:
        try:
            base = self._base()
            base.execute("BEGIN")
            base.executemany("INSERT INTO facts VALUES (?, ?, ?, ?)", self._waiting)
            base.execute("COMMIT")
        except (sqlite3.Error, OSError) as error:
            raise InputError(
                Problem(f"the tables cannot be joined ({error})", "Make room in the folder of temporary files (TMPDIR)")
            ) from error
        self._waiting.clear()
