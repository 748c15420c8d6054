"""Sending one request: politely, to the public network only, within bounds of time and size.

An adapter below requests-cache: whatever reaches it is not in the cache and would be sent. It holds each host to one
request at a time with a pause between, counts requests, refuses connections that lead to a private place (after the
name is resolved, on the very socket that is used), cuts an exchange short at a deadline, reads no more of a body than
it may, and lets neither cookies nor needless headers through in either direction.
"""

from __future__ import annotations

import contextlib
import io
import socket
import threading
import time
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field
from typing import Any
from urllib.parse import urlsplit

import requests
from requests.adapters import HTTPAdapter
from requests.structures import CaseInsensitiveDict
from requests.utils import select_proxy
from urllib3 import HTTPConnectionPool, HTTPResponse, HTTPSConnectionPool
from urllib3.connection import HTTPConnection, HTTPSConnection
from urllib3.exceptions import HTTPError

from .questions import is_public
from .settings import Settings

__all__ = ["TOO_LARGE", "PoliteAdapter", "RateLimiter", "RefusedError", "StoppedError"]

TOO_LARGE = "X-Namescreen-Too-Large"
"""Set on an answer whose body was longer than is read."""

_SENT = ("user-agent", "accept")
_KEPT = ("content-type", "location", "retry-after")


class RefusedError(Exception):
    """A request that is not sent; its text follows "because"."""


class StoppedError(Exception):
    """The run was stopped while a request waited for its turn."""


@dataclass(slots=True)
class _Host:
    lock: threading.Lock = field(default_factory=threading.Lock)
    free_at: float = 0.0


class RateLimiter:
    """One request at a time a host, with a least pause between the end of one and the start of the next."""

    def __init__(self, pause: float, stopped: threading.Event) -> None:
        self._pause, self._stopped = pause, stopped
        self._hosts: dict[str, _Host] = {}
        self._lock = threading.Lock()

    def _host(self, name: str) -> _Host:
        with self._lock:
            return self._hosts.setdefault(name, _Host())

    @contextmanager
    def turn(self, name: str) -> Iterator[None]:
        """Wait for this host's turn; raises `StoppedError` if the run is stopped before."""
        host = self._host(name)
        with host.lock:
            self.wait(host.free_at - time.monotonic())
            try:
                yield
            finally:
                host.free_at = max(host.free_at, time.monotonic() + self._pause)

    def hold(self, name: str, seconds: float) -> None:
        """Send nothing to this host for this many seconds."""
        host = self._host(name)
        host.free_at = max(host.free_at, time.monotonic() + seconds)

    def wait(self, seconds: float) -> None:
        """Wait, unless the run is stopped; then raise `StoppedError`."""
        if self._stopped.wait(max(0.0, seconds)):
            raise StoppedError


class _Deadline:
    """The deadline of one exchange, and the check of where its connection leads."""

    def __init__(self, seconds: float, check_peer: bool) -> None:
        self._check_peer = check_peer
        self._ends = time.monotonic() + seconds
        self._socket: socket.socket | None = None
        self._timer = threading.Timer(seconds, self._cut)
        self._timer.daemon = True
        self.passed = False

    def start(self) -> None:
        self._timer.start()

    def take(self, connection: socket.socket) -> None:
        """Watch a fresh connection; raises `RefusedError` if its other end is private."""
        peer = connection.getpeername()[0]
        if self._check_peer and not is_public(peer):
            connection.close()
            raise RefusedError(
                f"its server lies in a private network ({peer}; --allow-private allows that for servers that are named)"
            )
        self._socket = connection.dup()  # TLS takes the other one over; what is shut down is the same connection

    def _cut(self) -> None:
        self.passed = True
        if self._socket is not None:
            with contextlib.suppress(OSError):  # it may have ended by itself
                self._socket.shutdown(socket.SHUT_RDWR)

    def end(self) -> None:
        self._timer.cancel()
        if self._socket is not None:
            self._socket.close()


_current = threading.local()


class _WatchedHTTP(HTTPConnection):
    def _new_conn(self) -> socket.socket:
        connection = super()._new_conn()
        _current.watch.take(connection)
        return connection


class _WatchedHTTPS(HTTPSConnection):
    def _new_conn(self) -> socket.socket:
        connection = super()._new_conn()
        _current.watch.take(connection)
        return connection


class _PoolHTTP(HTTPConnectionPool):
    ConnectionCls = _WatchedHTTP


class _PoolHTTPS(HTTPSConnectionPool):
    ConnectionCls = _WatchedHTTPS


class PoliteAdapter(HTTPAdapter):
    """Sends what is not in the cache; `sent` counts it. See the module."""

    def __init__(self, settings: Settings, limiter: RateLimiter, may_be_private: Callable[[str], bool]) -> None:
        self._settings, self._limiter, self._may_be_private = settings, limiter, may_be_private
        self._counting = threading.Lock()
        self.sent = 0
        super().__init__(max_retries=0)

    def init_poolmanager(self, *args: Any, **kwargs: Any) -> None:
        """Make pools whose connections are watched."""
        super().init_poolmanager(*args, **kwargs)
        self.poolmanager.pool_classes_by_scheme = {"http": _PoolHTTP, "https": _PoolHTTPS}

    def proxy_manager_for(self, proxy: str, **kwargs: Any) -> Any:
        """As for pools, through a proxy of the user's own."""
        manager = super().proxy_manager_for(proxy, **kwargs)
        manager.pool_classes_by_scheme = {"http": _PoolHTTP, "https": _PoolHTTPS}
        return manager

    def send(
        self,
        request: requests.PreparedRequest,
        stream: bool = False,
        timeout: Any = None,
        verify: bool | str = True,
        cert: Any = None,
        proxies: Mapping[str, str] | None = None,
    ) -> requests.Response:
        """Send `request` when its host's turn comes; raises `RefusedError`, `StoppedError`, or what requests raises."""
        url = request.url or ""
        if self._settings.offline:
            raise RefusedError("nothing is stored about it, and --offline asks nobody")
        self._count()
        slim = request.copy()
        slim.headers = CaseInsensitiveDict({name: value for name, value in request.headers.items()
                                            if name.lower() in _SENT})  # fmt: skip
        slim.headers["Accept-Encoding"] = "identity"
        slim.headers["Connection"] = "close"
        with self._limiter.turn(urlsplit(url).hostname or ""):
            # Behind the user's proxy the other end is the proxy, which decides where it connects.
            proxied = bool(select_proxy(url, dict(proxies or {})))
            watch = _Deadline(self._settings.longest, not self._may_be_private(url) and not proxied)
            _current.watch = watch
            watch.start()
            try:
                patience = (self._settings.patience, self._settings.patience)
                answer = super().send(slim, True, patience, verify, cert, proxies)
                try:
                    whole = self._read(request, answer)
                finally:
                    answer.close()
                if watch.passed:  # a body without a stated length ends where the connection was cut
                    raise requests.Timeout
                return whole
            except (requests.RequestException, HTTPError, OSError) as error:
                if watch.passed:
                    raise requests.Timeout(f"no whole answer within {self._settings.longest:g} s") from error
                if isinstance(error, requests.RequestException):
                    raise
                raise requests.ConnectionError(error) from error
            finally:
                watch.end()

    def _count(self) -> None:
        with self._counting:
            if self.sent >= self._settings.most_requests:
                raise RefusedError(
                    f"the limit of {self._settings.most_requests} requests a run was reached (--most-requests)"
                )
            self.sent += 1

    def _read(self, request: requests.PreparedRequest, answer: requests.Response) -> requests.Response:
        """`answer` with its body read as far as it may be, and with the headers that are of use."""
        headers = {name: value for name, value in answer.headers.items() if name.lower() in _KEPT}
        body = b""
        if "json" in answer.headers.get("Content-Type", "") and answer.status_code == 200:
            body = self._body(answer.raw)
            if len(body) > self._settings.most_bytes:
                body, headers[TOO_LARGE] = b"", "1"
        missing = answer.status_code in (404, 410)
        keep = self._settings.keep_missing if missing else self._settings.keep_found
        headers["Cache-Control"] = f"max-age={keep:.0f}"  # ours, and the one rule that requests-cache goes by
        plain = requests.Response()
        plain.status_code = answer.status_code
        plain.url, plain.request = request.url or "", request
        plain.headers = CaseInsensitiveDict(headers)
        plain.raw = HTTPResponse(body=io.BytesIO(body), headers=headers, status=answer.status_code,
                                 preload_content=False)  # fmt: skip
        plain._content, plain._content_consumed = body, True  # type: ignore[attr-defined]
        return plain

    def _body(self, raw: Any) -> bytes:
        """The body, read in chunks until it ends or passes the limit."""
        pieces, size = [], 0
        while size <= self._settings.most_bytes:
            piece = raw.read1(1 << 16, decode_content=True)
            if not piece:
                break
            pieces.append(piece)
            size += len(piece)
        return b"".join(pieces)
