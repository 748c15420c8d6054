"""A real HTTP server on loopback that plays the list of RDAP servers, RDAP, WebFinger and pages, with their faults."""

from __future__ import annotations

import json
import shutil
import ssl
import subprocess
import threading
import time
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any

import pytest

from namescreen.addresses.checking import plan, run
from namescreen.addresses.findings import Finding
from namescreen.addresses.session import Asker
from namescreen.addresses.settings import Settings

RDAP = "application/rdap+json"


@dataclass(slots=True)
class Reply:
    """What the server says: a status, a body, headers; a body may come in pieces; `raw` replaces all."""

    status: int = 200
    body: bytes = b""
    kind: str = RDAP
    headers: dict[str, str] = field(default_factory=dict)
    pieces: Callable[[], Iterator[bytes]] | None = None
    wait: float = 0.0
    raw: bytes = b""
    length: int | None = None


@dataclass(slots=True)
class Seen:
    """One request as it was seen: its path with the query, its headers in lower case, when it came and was about to be
    answered."""

    path: str
    headers: dict[str, str]
    came: float
    done: float = 0.0


class LoopbackServer:
    """Answers by `routes` (a path, or a path's beginning that ends in *), and notes every request."""

    def __init__(self, context: ssl.SSLContext | None = None) -> None:
        self.routes: dict[str, Reply | list[Reply] | Callable[[str], Reply]] = {}
        self.seen: list[Seen] = []
        self.most_at_once = 0
        self._now = 0
        self._lock = threading.Lock()
        outer = self

        class Handler(BaseHTTPRequestHandler):
            def do_GET(self) -> None:
                outer._answer(self)

            def log_message(self, format: str, *args: object) -> None:
                pass

        class Quiet(ThreadingHTTPServer):
            daemon_threads = True

            def handle_error(self, request: Any, client_address: Any) -> None:
                pass  # a client that goes away early is what some tests are about

        self._server = Quiet(("127.0.0.1", 0), Handler)
        if context is not None:
            self._server.socket = context.wrap_socket(self._server.socket, server_side=True)
        self.port = self._server.server_address[1]
        self.scheme = "http" if context is None else "https"
        self._thread = threading.Thread(target=self._server.serve_forever, args=(0.02,), daemon=True)
        self._thread.start()

    def url(self, path: str = "/", host: str = "127.0.0.1") -> str:
        return f"{self.scheme}://{host}:{self.port}{path}"

    @property
    def paths(self) -> list[str]:
        return [one.path for one in self.seen]

    def registry(self, *endings: str, path: str = "/rdap/") -> str:
        """Play a list that sends `endings` here; its address."""
        listed = {
            "version": "1.0",
            "publication": "2026-11-25T10:00:00Z",
            "services": [[list(endings), [self.url(path)]]],
        }
        self.routes["/dns.json"] = Reply(body=json.dumps(listed).encode(), kind="application/json")
        return self.url("/dns.json")

    def close(self) -> None:
        self._server.shutdown()
        self._server.server_close()
        self._thread.join()

    def _answer(self, handler: BaseHTTPRequestHandler) -> None:
        seen = Seen(handler.path, {k.lower(): v for k, v in handler.headers.items()}, time.monotonic())
        with self._lock:
            self.seen.append(seen)
            self._now += 1
            self.most_at_once = max(self.most_at_once, self._now)
        reply = self._route(handler.path)
        time.sleep(reply.wait)
        # Noted before the answer goes out: whoever is answered may ask again before this thread has its next turn.
        seen.done = time.monotonic()
        with self._lock:
            self._now -= 1
        self._reply(handler, reply)

    def _route(self, path: str) -> Reply:
        found = self.routes.get(path)
        if found is None:
            start = next((key for key in self.routes if key.endswith("*") and path.startswith(key[:-1])), None)
            found = self.routes[start] if start else Reply(404, b"{}", RDAP)
        if isinstance(found, list):
            return found.pop(0) if len(found) > 1 else found[0]
        return found if isinstance(found, Reply) else found(path)

    def _reply(self, handler: BaseHTTPRequestHandler, reply: Reply) -> None:
        if reply.raw:
            handler.wfile.write(reply.raw)
            return
        handler.send_response(reply.status)
        if reply.kind:
            handler.send_header("Content-Type", reply.kind)
        for name, value in reply.headers.items():
            handler.send_header(name, value)
        if reply.pieces is None:
            handler.send_header("Content-Length", str(len(reply.body) if reply.length is None else reply.length))
        handler.end_headers()
        if reply.pieces is None:
            handler.wfile.write(reply.body)
        else:
            for piece in reply.pieces():
                handler.wfile.write(piece)
                handler.wfile.flush()


@pytest.fixture
def server() -> Iterator[LoopbackServer]:
    playing = LoopbackServer()
    yield playing
    playing.close()


@pytest.fixture(scope="session")
def certificate(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A fresh certificate for 127.0.0.1 that nobody vouches for, with its key beside it."""
    if shutil.which("openssl") is None:
        pytest.skip("needs the openssl program to make a certificate")
    folder = tmp_path_factory.mktemp("certificate")
    subprocess.run(
        ["openssl", "req", "-x509", "-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:prime256v1", "-nodes", "-days", "2",
         "-subj", "/CN=127.0.0.1", "-addext", "subjectAltName=IP:127.0.0.1", "-keyout", folder / "key.pem", "-out",
         folder / "certificate.pem"],
        check=True, capture_output=True,
    )  # fmt: skip
    return folder / "certificate.pem"


@pytest.fixture
def secure_server(certificate: Path) -> Iterator[LoopbackServer]:
    context = ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER)
    context.load_cert_chain(certificate, certificate.with_name("key.pem"))
    playing = LoopbackServer(context)
    yield playing
    playing.close()


@pytest.fixture
def settings(server: LoopbackServer, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Settings:
    """Bounds small enough for a test, on loopback."""
    for name in ("http_proxy", "https_proxy", "all_proxy", "HTTP_PROXY", "HTTPS_PROXY", "ALL_PROXY"):
        monkeypatch.delenv(name, raising=False)
    return Settings(
        cache=tmp_path / "cache" / "addresses.sqlite",
        bootstrap=server.url("/dns.json"),
        allow_private=True,
        pause=0.0,
        patience=5.0,
        longest=10.0,
        back_off=0.01,
        longest_wait=1.5,
    )


def domain_body(name: str, **more: Any) -> bytes:
    """An RDAP answer about `name`, in the shape of RFC 9083 section 5.3."""
    registrar = {
        "objectClassName": "entity",
        "handle": "123",
        "roles": ["registrar"],
        "vcardArray": ["vcard", [["version", {}, "text", "4.0"], ["fn", {}, "text", "Example Registrar"]]],
    }
    events = [
        {"eventAction": "registration", "eventDate": "2019-03-04T10:20:30Z"},
        {"eventAction": "expiration", "eventDate": "2027-03-04T10:20:30Z"},
    ]
    body = {"objectClassName": "domain", "ldhName": name.upper(), "events": events, "entities": [registrar], **more}
    return json.dumps(body).encode()


def asked(
    settings: Settings,
    domains: Sequence[str] = (),
    handles: Sequence[str] = (),
    servers: Sequence[str] = (),
    patterns: Sequence[str] = (),
) -> tuple[dict[str, Finding], Asker]:
    """The findings by what was asked about, and the asker."""
    asker = Asker(settings)
    try:
        found, stopped = run(plan(domains, handles, servers, patterns, asker), asker)
    finally:
        asker.close()
    assert not stopped
    return {f"{one.text} {one.where}" if one.kind == "handle" else one.text: one for one in found}, asker
