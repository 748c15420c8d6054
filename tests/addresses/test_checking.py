"""The check against a real server on loopback: what is asked, how politely, and that every fault has an end."""

from __future__ import annotations

import datetime
import gzip
import json
import os
import signal
import threading
import time
from collections.abc import Iterator, Sequence
from dataclasses import replace
from email.utils import format_datetime
from itertools import pairwise
from pathlib import Path

import pytest

from namescreen.addresses.answers import NOT_IN_REGISTRY
from namescreen.addresses.checking import plan, run
from namescreen.addresses.findings import Finding
from namescreen.addresses.session import Asker
from namescreen.addresses.settings import Settings
from namescreen.addresses.store import USER_AGENT
from tests.addresses.conftest import LoopbackServer, Reply, domain_body


def asked(
    settings: Settings,
    domains: Sequence[str] = (),
    handles: Sequence[str] = (),
    servers: Sequence[str] = (),
    patterns: Sequence[str] = (),
) -> tuple[dict[str, Finding], Asker]:
    asker = Asker(settings)
    try:
        found, stopped = run(plan(domains, handles, servers, patterns, asker), asker)
    finally:
        asker.close()
    assert not stopped
    return {f"{one.text} {one.where}" if one.kind == "handle" else one.text: one for one in found}, asker


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


def test_says_who_asks_and_sends_nothing_else(server: LoopbackServer, settings: Settings, tmp_path: Path,
                                              monkeypatch: pytest.MonkeyPatch) -> None:  # fmt: skip
    netrc = tmp_path / "netrc"
    netrc.write_text("machine 127.0.0.1 login somebody password secret\n")
    netrc.chmod(0o600)
    monkeypatch.setenv("NETRC", str(netrc))
    server.registry("example")
    server.routes["/rdap/domain/taken.example"] = Reply(
        body=domain_body("taken.example"), headers={"Set-Cookie": "session=secret; Path=/"}
    )
    asked(settings, ["taken.example", "free.example"])
    for seen in server.seen:
        assert set(seen.headers) == {"host", "user-agent", "accept", "accept-encoding", "connection"}
        assert seen.headers["user-agent"] == USER_AGENT
    assert server.seen[1].headers["accept"] == "application/rdap+json, application/json"
    assert settings.cache is not None
    stored = list(settings.cache.parent.iterdir())
    assert stored
    for file in stored:
        assert b"secret" not in file.read_bytes()
        assert file.stat().st_mode & 0o077 == 0


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


@pytest.mark.parametrize("status", [403, 429, 500, 503])
def test_trouble_is_not_stored_as_an_answer(server: LoopbackServer, settings: Settings, status: int) -> None:
    server.registry("example")
    server.routes["/rdap/domain/a.example"] = [Reply(status), Reply(404)]
    bounds = replace(settings, retries=0)
    assert [asked(bounds, ["a.example"])[0]["a.example"].taken for _ in range(2)] == [None, False]


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


@pytest.mark.parametrize("in_words", [False, True])
def test_waits_as_long_as_it_is_asked_to(server: LoopbackServer, settings: Settings, in_words: bool) -> None:
    moment = datetime.datetime.now(datetime.UTC).replace(microsecond=0) + datetime.timedelta(seconds=2)
    asks = format_datetime(moment, usegmt=True) if in_words else "1"
    server.registry("example")
    server.routes["/rdap/domain/a.example"] = [Reply(429, headers={"Retry-After": asks}), Reply(404)]
    found, _ = asked(replace(settings, longest_wait=3.0), ["a.example"])
    assert found["a.example"].taken is False
    first, second = server.seen[1:]
    if in_words:
        assert datetime.datetime.now(datetime.UTC) >= moment
    else:
        assert second.came - first.done >= 1.0


@pytest.mark.parametrize("asks", ["3600", "Fri, 31 Dec 2100 23:59:59 GMT"])
def test_a_long_wait_ends_the_asking_of_that_host(server: LoopbackServer, settings: Settings, asks: str) -> None:
    server.registry("example")
    server.routes["/rdap/*"] = Reply(429, headers={"Retry-After": asks})
    found, _ = asked(settings, [f"{name}.example" for name in "abcde"])
    assert len(server.seen) == 2
    assert {one.taken for one in found.values()} == {None}
    assert all("asks to wait" in one.finding for one in found.values())


def test_trouble_that_passes_is_asked_again_and_no_more_than_twice(server: LoopbackServer, settings: Settings) -> None:
    server.registry("example")
    server.routes["/rdap/domain/a.example"] = [Reply(503), Reply(500), Reply(404)]
    server.routes["/rdap/domain/b.example"] = Reply(502)
    found, _ = asked(settings, ["a.example", "b.example"])
    assert (found["a.example"].taken, found["b.example"].taken) == (False, None)
    assert [server.paths.count(f"/rdap/domain/{name}.example") for name in "ab"] == [3, 3]


def test_a_host_that_never_answers_is_left_alone(server: LoopbackServer, settings: Settings) -> None:
    server.registry("example")
    server.routes["/rdap/*"] = Reply(500)
    found, _ = asked(replace(settings, retries=0), [f"n{number}.example" for number in range(20)])
    assert len(server.seen) == 1 + settings.gives_up
    assert "gave no usable answer to 3 questions in a row" in found["n19.example"].finding


@pytest.fixture
def other() -> Iterator[LoopbackServer]:
    playing = LoopbackServer()
    yield playing
    playing.close()


def test_follows_redirects_between_servers_and_stores_the_way(
    server: LoopbackServer, other: LoopbackServer, settings: Settings
) -> None:
    server.registry("example")
    server.routes["/rdap/*"] = lambda path: Reply(301, headers={"Location": other.url(path)})
    other.routes["/rdap/domain/a.example"] = Reply(body=domain_body("a.example"))
    found, _ = asked(settings, ["a.example"])
    assert found["a.example"].taken is True
    asked(settings, ["a.example"])
    assert (len(server.seen), len(other.seen)) == (2, 1)


def test_a_server_may_send_us_on_only_to_private_hosts_that_are_named(
    server: LoopbackServer, other: LoopbackServer, settings: Settings, monkeypatch: pytest.MonkeyPatch
) -> None:
    import socket

    real = socket.getaddrinfo

    def leads_home(host: str, *rest: object, **more: object) -> object:
        return real("127.0.0.1" if host == "pots.example" else host, *rest, **more)  # type: ignore[arg-type]

    monkeypatch.setattr(socket, "getaddrinfo", leads_home)
    hosts = {"a": "localhost", "b": "pots.example", "c": "0x7f.1", "d": "127.1"}
    server.routes["/*"] = lambda path: Reply(302, headers={"Location": other.url(path, host=hosts[path[1]])})
    other.routes["/*"] = Reply(200)
    found, _ = asked(settings, [], list(hosts), [], [server.url("/{handle}")])
    assert [one.taken for one in found.values()] == [None] * 4
    assert all("private network" in one.finding for one in found.values())
    assert other.seen == []
    named = [server.url("/{handle}"), other.url("/{handle}", host="localhost")]
    found, _ = asked(settings, [], ["a"], [], named)
    assert [one.taken for one in found.values()] == [True, True]


UNPARSABLE = ["http://[::1", "http://[zz]/", "http://*.example/", "http://a..example/", "https://-\u0301.example/",
              "http://" + "a" * 300 + "/", "http://a.example:99999/", "http://\u2100.example/"]  # fmt: skip


@pytest.mark.parametrize("place", UNPARSABLE)
def test_a_redirect_to_no_address_is_an_answer_each_time(
    server: LoopbackServer, settings: Settings, place: str
) -> None:
    server.registry("example")
    ascii_only = "".join(one if one.isascii() else f"%{ord(one):x}" for one in place)
    server.routes["/rdap/domain/a.example"] = Reply(302, headers={"Location": ascii_only})
    for _ in range(2):  # fresh, then stored
        found, _ = asked(replace(settings, retries=0), ["a.example", "b.example"])
        assert (found["a.example"].taken, found["b.example"].taken) == (None, False)
        assert "unforeseen" not in found["a.example"].finding


@pytest.mark.parametrize("place", UNPARSABLE)
def test_a_list_of_servers_that_names_no_address_is_no_hindrance(
    server: LoopbackServer, settings: Settings, place: str
) -> None:
    services = [[["example"], [place]], [["other"], [server.url("/rdap/")]]]
    listed = {"version": "1.0", "publication": "2026-11-25T10:00:00Z", "services": services}
    server.routes["/dns.json"] = Reply(body=json.dumps(listed).encode(), kind="application/json")
    asker = Asker(settings)
    try:
        planned = plan(["a.example", "a.other"], [], [], [], asker)
        assert planned.hosts(asker)[f"127.0.0.1:{server.port}"] == 1
        found, _ = run(planned, asker)
    finally:
        asker.close()
    assert {one.text: one.taken for one in found} == {"a.example": None, "a.other": False}


def test_a_warm_store_answers_a_thousand_without_a_request(server: LoopbackServer, settings: Settings) -> None:
    server.registry("example")
    server.routes["/rdap/domain/n1*"] = lambda path: Reply(body=domain_body(path.rpartition("/")[2]))
    domains = [f"n{number}.example" for number in range(1000)]
    bounds = replace(settings, most_requests=2000)
    cold, asker = asked(bounds, domains)
    assert len(server.seen) == asker.sent == 1001  # as many as there are distinct questions, and the list
    assert sum(one.taken is True for one in cold.values()) == 111
    warm, asker = asked(bounds, domains)
    assert len(server.seen) == 1001
    assert asker.sent == 0
    assert warm == cold
    offline, _ = asked(replace(bounds, offline=True), [*domains, "new.example"])
    assert len(server.seen) == 1001
    assert {key: offline[key] for key in cold} == cold
    assert "--offline asks nobody" in offline["new.example"].finding


def test_asks_as_often_as_there_are_distinct_questions(server: LoopbackServer, settings: Settings) -> None:
    server.registry("example")
    asked(settings, ["a.example", "b.example"])
    found, asker = asked(settings, ["a.example", "c.example", "c.example", "a.example", "d.example"])
    assert asker.sent == 2
    assert len(found) == 3
    assert sorted(server.paths) == ["/dns.json", *(f"/rdap/domain/{name}.example" for name in "abcd")]
    _, asker = asked(replace(settings, refresh=True), ["a.example"])
    assert asker.sent == 2  # the list and the domain, asked anew


def test_what_is_not_there_is_stored_for_a_shorter_time(server: LoopbackServer, settings: Settings) -> None:
    server.registry("example")
    server.routes["/rdap/domain/taken.example"] = Reply(body=domain_body("taken.example"))
    bounds = replace(settings, keep_missing=1.0)
    asked(bounds, ["taken.example", "free.example"])
    time.sleep(1.1)
    asked(bounds, ["taken.example", "free.example"])
    assert server.paths[3:] == ["/rdap/domain/free.example"]


def test_the_limit_of_requests_holds_and_is_said(server: LoopbackServer, settings: Settings) -> None:
    server.registry("example")
    found, asker = asked(replace(settings, most_requests=4), [f"n{number}.example" for number in range(10)])
    assert asker.sent == len(server.seen) == 4
    assert [one.taken for one in found.values()] == [False] * 3 + [None] * 7
    assert "the limit of 4 requests a run was reached" in found["n9.example"].finding


def test_one_request_at_a_time_and_a_pause_between(server: LoopbackServer, settings: Settings) -> None:
    # Two endings of one host and a page there: three groups of questions, and still one host.
    server.registry("example", "test-b")
    domains = [f"n{number}.{ending}" for number in range(4) for ending in ("example", "test-b")]
    bounds = replace(settings, pause=0.05)
    asked(bounds, domains, ["loamlet"], [], [server.url("/people/{handle}")])
    assert len(server.seen) == 1 + 8 + 1
    assert server.most_at_once == 1
    in_order = sorted(server.seen, key=lambda seen: seen.came)
    gaps = [later.came - earlier.done for earlier, later in pairwise(in_order)]
    assert min(gaps) >= 0.05


def test_different_hosts_are_asked_at_once(server: LoopbackServer, settings: Settings) -> None:
    meet = threading.Barrier(2, timeout=3.0)

    def both(path: str) -> Reply:
        meet.wait()  # passed only if the other host is asked meanwhile
        return Reply(404)

    server.routes["/*"] = both
    patterns = [server.url("/{handle}"), server.url("/{handle}", host="localhost")]
    found, _ = asked(settings, [], ["loamlet"], [], patterns)
    assert [one.taken for one in found.values()] == [False, False]


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


def test_a_private_place_is_not_asked_however_it_is_named(server: LoopbackServer, settings: Settings) -> None:
    strict = replace(settings, allow_private=False)
    for host in ("127.0.0.1", "localhost", "2130706433", "0x7f.1"):
        found, _ = asked(strict, [], ["loamlet"], [], [server.url("/{handle}", host=host)])
        (one,) = found.values()
        assert "private network" in one.finding, host
    assert server.seen == []


def test_a_private_place_behind_a_public_name_is_not_asked(
    server: LoopbackServer, settings: Settings, monkeypatch: pytest.MonkeyPatch
) -> None:
    import socket

    real = socket.getaddrinfo

    def leads_home(host: str, *rest: object, **more: object) -> object:
        return real("127.0.0.1" if host == "pots.example" else host, *rest, **more)  # type: ignore[arg-type]

    monkeypatch.setattr(socket, "getaddrinfo", leads_home)
    pattern = server.url("/{handle}", host="pots.example")
    (one,) = asked(replace(settings, allow_private=False), [], ["loamlet"], [], [pattern])[0].values()
    assert "private network (127.0.0.1" in one.finding
    assert server.seen == []


def test_ctrl_c_keeps_what_was_learnt(server: LoopbackServer, settings: Settings) -> None:
    server.registry("example")
    arrived = threading.Event()

    def second(path: str) -> Reply:
        if path.endswith("b.example"):
            arrived.set()
            time.sleep(0.5)
        return Reply(404)

    server.routes["/rdap/*"] = second
    asker = Asker(settings)
    planned = plan(["a.example", "b.example", "c.example"], [], [], [], asker)

    def press() -> None:
        arrived.wait(5)
        os.kill(os.getpid(), signal.SIGINT)

    thread = threading.Thread(target=press, daemon=True)
    thread.start()
    found, stopped = run(planned, asker)
    asker.close()
    thread.join()
    assert stopped
    assert [one.taken for one in found] == [False, None, None]
    assert "stopped" in found[2].finding
    again, asker = asked(replace(settings, offline=True), ["a.example"])
    assert again["a.example"].taken is False


def test_goes_through_the_users_own_proxy(
    server: LoopbackServer, settings: Settings, monkeypatch: pytest.MonkeyPatch
) -> None:
    # The proxy may well lie in a private network; what it is asked for may not.
    monkeypatch.setenv("http_proxy", server.url())
    server.routes["http://pots.example/loamlet"] = Reply(kind="text/html")
    patterns = ["http://pots.example/{handle}", "http://10.0.0.1/{handle}"]
    found, _ = asked(replace(settings, allow_private=False), [], ["loamlet"], [], patterns)
    assert {one.where: one.taken for one in found.values()} == {
        "http://pots.example/loamlet": True,
        "http://10.0.0.1/loamlet": None,
    }
    assert server.paths == ["http://pots.example/loamlet"]


def test_two_runs_share_a_store(server: LoopbackServer, settings: Settings) -> None:
    server.registry("example")
    domains = [f"n{number}.example" for number in range(40)]
    found: list[dict[str, Finding]] = []
    runs = [
        threading.Thread(target=lambda part=part: found.append(asked(settings, part)[0]), daemon=True)
        for part in (domains[:30], domains[10:])
    ]
    for one in runs:
        one.start()
    for one in runs:
        one.join(timeout=60)
    assert len(found) == 2
    assert all(finding.taken is False for part in found for finding in part.values())
    _, asker = asked(settings, domains)
    assert (asker.sent, asker.remarks) == (0, ())


def test_redirects_wait_for_the_turn_of_the_host_that_they_lead_to(
    server: LoopbackServer, other: LoopbackServer, settings: Settings
) -> None:
    # Questions to one host directly, and to another host that sends them all on to the first.
    other.routes["/*"] = lambda path: Reply(302, headers={"Location": server.url("/sent" + path)})
    server.routes["/*"] = Reply(404, wait=0.02)
    patterns = [server.url("/{handle}"), other.url("/{handle}", host="localhost")]
    found, _ = asked(settings, [], [f"n{number}" for number in range(8)], [], patterns)
    assert {one.taken for one in found.values()} == {False}
    assert len(server.seen) == 16
    assert server.most_at_once == 1
