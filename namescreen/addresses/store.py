"""Where answers are stored: one SQLite file of requests-cache in the user's cache folder.

The file may be damaged, locked for long, or in a place that cannot be written: it is looked at before it is used. A
damaged one is taken away and begun anew; where none can be written, answers are kept in memory for this run.
"""

from __future__ import annotations

import contextlib
import hashlib
import logging
import sqlite3
import time
from pathlib import Path

import requests
from requests_cache import CachedSession
from requests_cache.backends.base import BaseCache
from requests_cache.backends.sqlite import SQLiteCache
from requests_cache.models.response import CachedResponse
from requests_cache.serializers.pipeline import Stage
from requests_cache.serializers.preconf import json_serializer

from .. import __version__
from .settings import Settings, cache_file

__all__ = ["USER_AGENT", "damaged_entries", "keep_in_memory", "open_store"]

USER_AGENT = f"namescreen/{__version__}"

_STORED = (200, 204, 301, 302, 303, 307, 308, 404, 410)
"""Statuses that decide something, and redirects on the way to one; trouble is not stored."""
_LOCKED = 2.0
"""Seconds to wait while another run writes the file."""
_PARTS = ("", "-wal", "-shm", "-journal")


def open_store(settings: Settings) -> tuple[CachedSession, tuple[str, ...]]:
    """A session that stores answers, and remarks on what was wrong with the store.

    It never sends or stores cookies or credentials: no cookie is accepted, and a .netrc file is not read.
    """
    path = settings.cache or cache_file()
    remarks: tuple[str, ...] = ()
    problem = _problem(path)
    if isinstance(problem, sqlite3.DatabaseError) and not isinstance(problem, sqlite3.OperationalError):
        remarks = (f"{path}: the stored answers are damaged ({problem}); the store starts empty.",)
        for part in _PARTS:
            with contextlib.suppress(OSError):
                path.with_name(path.name + part).unlink()
        problem = _problem(path)
    backend: BaseCache | None = None
    if problem is None:
        try:
            backend = _opened(path)
        except sqlite3.OperationalError as error:
            problem = error
    if backend is None:
        remarks = (f"{path}: answers cannot be stored ({problem}); they are kept for this run only.",)
        backend = BaseCache()
    session = CachedSession(
        backend=backend,
        expire_after=settings.keep_missing,
        cache_control=True,  # the transport states how long each answer is kept
        key_fn=_key,
        allowable_codes=_STORED,
        allowable_methods=("GET",),
    )
    session.headers.clear()
    session.headers["User-Agent"] = USER_AGENT
    session.auth = _no_credentials
    log = logging.getLogger("requests_cache")
    log.addHandler(_noticed)  # added only once
    log.propagate = False
    return session, remarks


def _opened(path: Path) -> BaseCache:
    """The file of answers. A log beside it (wal) spares a wait for the disk after every answer; a power cut may cost
    the last ones, never the file. Where two runs make the log at once SQLite refuses one of them without waiting."""
    until = time.monotonic() + _LOCKED
    while True:
        try:
            return SQLiteCache(path, serializer=Stage(_Entries()), busy_timeout=int(_LOCKED * 1000), wal=True)
        except sqlite3.OperationalError:
            if time.monotonic() > until:
                raise
            time.sleep(0.05)


class _Entries:
    """How an answer is written: as JSON, not pickle, so that a file that others may write runs no code.

    An entry that is no whole answer is refused, which makes requests-cache ask anew.
    """

    def dumps(self, answer: CachedResponse) -> object:
        return json_serializer.dumps(answer)

    def loads(self, value: str) -> CachedResponse:
        try:
            answer = json_serializer.loads(value)
        except Exception as error:  # whatever a damaged entry raises in three libraries
            raise ValueError(str(error)) from error
        if not isinstance(answer, CachedResponse) or answer.status_code not in _STORED or not answer.url:
            raise ValueError("no whole answer")
        return answer


def damaged_entries() -> int:
    """How many stored answers could not be read so far; each is asked anew."""
    return _noticed.count


class _Noticed(logging.Handler):
    """Counts what requests-cache says of entries that it cannot read, in place of its lines on stderr."""

    count = 0

    def emit(self, record: logging.LogRecord) -> None:
        self.count += 1


_noticed = _Noticed(logging.ERROR)


def keep_in_memory(session: CachedSession) -> bool:
    """Store answers for this run only from here on; whether they were stored in a file before."""
    settings, before = session.settings, session.cache
    if not isinstance(before, SQLiteCache):
        return False
    session.cache = BaseCache()
    session.settings = settings
    return True


def _key(request: requests.PreparedRequest, **_: object) -> str:
    return hashlib.sha256((request.url or "").encode()).hexdigest()


def _problem(path: Path) -> Exception | None:
    """What keeps the file at `path` from being read and written; a file that is not there yet is made."""
    try:
        path.parent.mkdir(parents=True, exist_ok=True, mode=0o700)  # names are confidential before a launch
        with contextlib.closing(sqlite3.connect(path, timeout=_LOCKED, isolation_level=None)) as database:
            result = database.execute("PRAGMA quick_check(1)").fetchone()
            if result != ("ok",):
                return sqlite3.DatabaseError(str(result[0]))
            columns = {row[1] for row in database.execute("PRAGMA table_info(responses)")}
            if columns and columns != {"key", "value", "expires"}:
                return sqlite3.DatabaseError("not a store of answers")
            database.execute("BEGIN IMMEDIATE")
            database.execute("ROLLBACK")
        path.chmod(0o600)
    except (OSError, sqlite3.Error) as error:
        return error
    return None


def _no_credentials(request: requests.PreparedRequest) -> requests.PreparedRequest:
    """Keeps requests from looking up a user name and password."""
    return request
