"""How a check behaves towards a server: how often, how fast and with what headers it asks."""

from __future__ import annotations

import datetime
import threading
from dataclasses import replace
from email.utils import format_datetime
from itertools import pairwise
from pathlib import Path

import pytest

from namescreen.addresses.settings import Settings
from namescreen.addresses.store import USER_AGENT
from tests.addresses.conftest import LoopbackServer, Reply, asked, domain_body


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


def test_asks_as_often_as_there_are_distinct_questions(server: LoopbackServer, settings: Settings) -> None:
    server.registry("example")
    asked(settings, ["a.example", "b.example"])
    found, asker = asked(settings, ["a.example", "c.example", "c.example", "a.example", "d.example"])
    assert asker.sent == 2
    assert len(found) == 3
    assert sorted(server.paths) == ["/dns.json", *(f"/rdap/domain/{name}.example" for name in "abcd")]
    _, asker = asked(replace(settings, refresh=True), ["a.example"])
    assert asker.sent == 2  # the list and the domain, asked anew


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
