"""The check against a real server on loopback: every question and every fault ends in a finding."""

from __future__ import annotations

import datetime
import gzip
import json
import time
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from namescreen.addresses.answers import NOT_IN_REGISTRY
from namescreen.addresses.settings import Settings
from tests.addresses.conftest import LoopbackServer, Reply, asked, domain_body


def test_registered_not_found_and_no_server_for_the_ending(server: LoopbackServer, settings: Settings) -> None:
    server.registry("example")
    server.routes["/rdap/domain/taken.example"] = Reply(body=domain_body("taken.example"))
    found, asker = asked(settings, ["taken.example", "free.example", "free.nowhere"])
    assert found["taken.example"].finding == "registered since 2019-03-04 until 2027-03-04 with Example Registrar"
    assert (found["taken.example"].taken, found["free.example"].taken, found["free.nowhere"].taken) == (
        True, False, None,
    )  # fmt: skip
    assert found["free.example"].finding == NOT_IN_REGISTRY
    assert "no RDAP server is listed for .nowhere" in found["free.nowhere"].finding
    assert found["taken.example"].date == datetime.datetime.now(datetime.UTC).date().isoformat()
    assert server.paths == ["/dns.json", "/rdap/domain/taken.example", "/rdap/domain/free.example"]
    assert asker.sent == 3
    assert not any("available" in one.finding for one in found.values())


def slow(pieces: int, wait: float) -> Iterator[bytes]:
    for _ in range(pieces):
        time.sleep(wait)
        yield b" "


def huge() -> Iterator[bytes]:
    for _ in range(50):
        yield b" " * 1_000_000


FAULTS: dict[str, tuple[Reply, str]] = {
    "trouble": (Reply(500), "in trouble (500)"),
    "refused": (Reply(403), "refuses to answer (403)"),
    "odd": (Reply(418), "decides nothing (418)"),
    "busy": (Reply(429), "fewer requests (429)"),
    "loop": (Reply(302, headers={"Location": "/rdap/domain/loop.example"}), "sent us on more than 5 times"),
    "nowhere": (Reply(302), "without saying where to"),
    "file": (Reply(302, headers={"Location": "file:///etc/hostname"}), "only http and https are asked, not file"),
    "user": (Reply(302, headers={"Location": "http://a:b@127.0.0.1/"}), "user name or password"),
    "bad": (Reply(302, headers={"Location": "http://[::1"}), "not valid HTTP"),
    "html": (Reply(body=b"<p>no</p>", kind="text/html"), "content type is text/html"),
    "untyped": (Reply(body=b"{}", kind=""), "content type is not stated"),
    "json": (Reply(body=b'{"objectClassName": '), "not a JSON object"),
    "deep": (Reply(body=b"[" * 100_000), "not a JSON object"),
    "utf8": (Reply(body=b'{"objectClassName": "domain", "ldhName": "\xff"}'), "not a JSON object"),
    "list": (Reply(body=b"[]"), "not a JSON object"),
    "entity": (Reply(body=b'{"objectClassName": "entity"}'), "not about a domain"),
    "error": (Reply(body=b'{"errorCode": 404, "title": "no"}'), "not about a domain"),
    "other": (Reply(body=domain_body("another.example")), "it is about ANOTHER.EXAMPLE"),
    "cut": (Reply(body=domain_body("cut.example")[:50], length=500), "broke off"),
    "huge": (Reply(pieces=huge), "too large"),
    "bomb": (Reply(body=gzip.compress(bytes(50_000_000), 1), headers={"Content-Encoding": "gzip"}), "too large"),
    "ungzipped": (Reply(body=b"{}", headers={"Content-Encoding": "gzip"}), "connection failed"),
    "garbage": (Reply(raw=b"\x00\xff nonsense\r\n\r\n"), "connection failed"),
    "headers": (Reply(raw=b"HTTP/1.1 200 OK\r\n" + b"X-Pot: 1\r\n" * 200 + b"\r\n"), "connection failed"),
    "header": (Reply(raw=b"HTTP/1.1 200 OK\r\nX-Pot: " + b"1" * 100_000 + b"\r\n\r\n"), "connection failed"),
    "drip": (Reply(pieces=lambda: slow(40, 0.1)), "in time"),
    "silent": (Reply(wait=1.2), "in time"),
}


@pytest.mark.parametrize("fault", FAULTS)
def test_every_fault_ends_in_a_stated_result_in_time(server: LoopbackServer, settings: Settings, fault: str) -> None:
    server.registry("example")
    server.routes[f"/rdap/domain/{fault}.example"], told = FAULTS[fault]
    bounds = replace(settings, retries=1)
    if told == "in time":
        bounds = replace(bounds, patience=0.6, longest=0.8)
    started = time.monotonic()
    found, asker = asked(bounds, [f"{fault}.example", "free.example"])
    passed = time.monotonic() - started
    assert found[f"{fault}.example"].taken is None
    assert found[f"{fault}.example"].finding.startswith("not checked, because ")
    assert told in found[f"{fault}.example"].finding
    assert found["free.example"].taken is False  # one fault spoils nothing else
    assert passed < 2 * (bounds.longest + bounds.patience) + 2.0
    assert asker.sent == len(server.seen)


def test_nobody_there(settings: Settings) -> None:
    found, _ = asked(replace(settings, bootstrap="http://127.0.0.1:9/dns.json"), ["a.example"])
    assert found["a.example"].finding == (
        "not checked, because the server refused the connection (http://127.0.0.1:9/dns.json)"
    )


@pytest.mark.parametrize(
    ("reply", "told"),
    [
        (Reply(404), "the server answered 404"),
        (Reply(body=b"no", kind="application/json"), "not valid JSON"),
        (Reply(body=b"{}", kind="application/json"), 'has no "services"'),
        (Reply(body=b'{"version": "2.0", "services": []}', kind="application/json"), "version '2.0'"),
        (Reply(body=b"<p>", kind="text/html"), "content type is text/html"),
    ],
)
def test_a_list_of_servers_that_cannot_be_read(
    server: LoopbackServer, settings: Settings, reply: Reply, told: str
) -> None:
    server.routes["/dns.json"] = reply
    found, _ = asked(settings, ["a.example"])
    assert told in found["a.example"].finding
    assert server.url("/dns.json") in found["a.example"].finding


def test_pages_are_judged_by_status_alone(server: LoopbackServer, settings: Settings) -> None:
    server.routes |= {
        "/u/there": Reply(pieces=huge, kind="text/html"),
        "/u/gone": Reply(410),
        "/u/guarded": Reply(401),
        "/u/moved": Reply(302, headers={"Location": "/u/there"}),
    }
    where = server.url("/u/{handle}")
    found, _ = asked(settings, [], ["there", "none", "gone", "guarded", "moved"], [], [where])
    said = {text.partition(" ")[0]: one.finding for text, one in found.items()}
    assert said == {
        "there": "page found",
        "none": "no page found",
        "gone": "no page found",
        "guarded": "not checked, because the server refuses to answer (401)",
        "moved": "page found",
    }


def test_webfinger_over_a_verified_connection(
    secure_server: LoopbackServer, certificate: Path, settings: Settings, monkeypatch: pytest.MonkeyPatch
) -> None:
    known = {"subject": "acct:loamlet@127.0.0.1", "links": []}
    path = "/.well-known/webfinger?resource=acct%3Aloamlet%40127.0.0.1"
    secure_server.routes[path] = Reply(body=json.dumps(known).encode(), kind="application/jrd+json")
    place = f"127.0.0.1:{secure_server.port}"
    refused, _ = asked(settings, [], ["loamlet"], [place])
    assert "certificate could not be verified" in refused[f"loamlet {place}"].finding
    assert secure_server.seen == []
    monkeypatch.setenv("REQUESTS_CA_BUNDLE", str(certificate))
    found, _ = asked(settings, [], ["loamlet", "claysill"], [place])
    assert found[f"loamlet {place}"].finding == "page found: the server knows this account"
    assert found[f"claysill {place}"].finding == "no page found: the server knows no such account"
    assert secure_server.paths[0] == path
