"""Where a check may be led: redirects, private places and proxies, against a real server on loopback."""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import replace

import pytest

from namescreen.addresses.checking import plan, run
from namescreen.addresses.session import Asker
from namescreen.addresses.settings import Settings
from tests.addresses.conftest import LoopbackServer, Reply, asked, domain_body


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
