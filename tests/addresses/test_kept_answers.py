"""Which answers of a check are kept, and for how long."""

from __future__ import annotations

import os
import signal
import threading
import time
from dataclasses import replace

import pytest

from namescreen.addresses.checking import plan, run
from namescreen.addresses.findings import Finding
from namescreen.addresses.session import Asker
from namescreen.addresses.settings import Settings
from tests.addresses.conftest import LoopbackServer, Reply, asked, domain_body


@pytest.mark.parametrize("status", [403, 429, 500, 503])
def test_trouble_is_not_stored_as_an_answer(server: LoopbackServer, settings: Settings, status: int) -> None:
    server.registry("example")
    server.routes["/rdap/domain/a.example"] = [Reply(status), Reply(404)]
    bounds = replace(settings, retries=0)
    assert [asked(bounds, ["a.example"])[0]["a.example"].taken for _ in range(2)] == [None, False]


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


def test_what_is_not_there_is_stored_for_a_shorter_time(server: LoopbackServer, settings: Settings) -> None:
    server.registry("example")
    server.routes["/rdap/domain/taken.example"] = Reply(body=domain_body("taken.example"))
    bounds = replace(settings, keep_missing=1.0)
    asked(bounds, ["taken.example", "free.example"])
    time.sleep(1.1)
    asked(bounds, ["taken.example", "free.example"])
    assert server.paths[3:] == ["/rdap/domain/free.example"]


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
