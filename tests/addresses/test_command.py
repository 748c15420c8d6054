"""`namescreen addresses` as it is run."""

from __future__ import annotations

import csv
import io
import json
import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from tests.addresses.conftest import LoopbackServer, Reply, domain_body
from tests.conftest import Run, clean_environment

CHECK = ("--check", "--allow-private", "--pause", "0.1")


def test_a_table_with_reasons_and_disclaimer(run: Run) -> None:
    done = run("addresses", "Clay Yard", "Loamlet", "--ending", ".com", "--ending", "co.uk", "--goods", "herb planter")
    assert done.returncode == 0
    assert done.stderr == ""
    for text in ("Clay Yard: fit", "clayyard.com", "also .co.uk", "fits everywhere", '"y" stands twice',
                 "loamletplanter", "Likely misspellings", "not legal clearance"):  # fmt: skip
        assert text in done.stdout
    assert all(len(line) <= 90 for line in done.stdout.splitlines())


def test_json_lines_and_csv_hold_everything(run: Run) -> None:
    names = ("addresses", "Clay Sill", "Müller", "--ending", "nl", "--handle-length", "8", "--handle-length", "5")
    done = run(*names, "--format", "jsonl")
    first, second = map(json.loads, done.stdout.splitlines())
    assert first["name"] == "Clay Sill"
    assert 0 <= first["score"] <= 1
    assert first["handle_everywhere"] == "clay"
    assert "checked" not in first
    assert "xn--mller-kva.nl" in [one["domain"] for one in second["domains"]]
    assert "not legal clearance" in done.stderr
    rows = list(csv.DictReader(io.StringIO(run(*names, "--format", "csv").stdout)))
    assert {row["kind"] for row in rows} == {"domain", "handle"}
    assert next(row["lost"] for row in rows if row["kind"] == "handle") == '"sill"'
    assert {row["taken"] for row in rows} == {""}


def test_a_brief_says_what_options_leave_out(run: Run, tmp_path: Path) -> None:
    (tmp_path / "brief.toml").write_text(
        'goods = "herb planter"\nshortlist = ["Loamlet"]\n[addresses]\nendings = ["de"]\nhandle_lengths = [5]\n'
    )
    done = run("addresses", "--brief", "brief.toml")
    assert "loamlet.de" in done.stdout
    assert "loses" in done.stdout
    assert "loamlet.nl" in run("addresses", "--brief", "brief.toml", "--ending", "nl").stdout


def registry(server: LoopbackServer) -> tuple[str, str]:
    """Options that ask `server`, which knows one domain."""
    server.routes["/rdap/domain/claysill.example"] = Reply(body=domain_body("claysill.example"))
    return ("--bootstrap", server.registry("example"))


def test_a_check_says_whom_it_asks_before_and_what_it_found_after(run: Run, server: LoopbackServer) -> None:
    where = registry(server)
    names = ("addresses", "Clay Sill", "Loamlet", "--ending", "example", "--ending", "nowhere", *where)
    done = run(*names, *CHECK)
    assert done.returncode == 0
    assert f"Asking {server.url('/dns.json')} which RDAP servers there are." in done.stderr
    assert f"Asking 127.0.0.1:{server.port} (3 questions)" in done.stderr
    assert "Every server that is asked learns the names." in done.stderr
    for text in ("registered since", "2019-03-04", "it may be free", "no RDAP server is", "gives no right"):
        assert text in done.stdout
    assert "available" not in done.stdout.lower()
    assert sorted(server.paths) == [
        "/dns.json",
        "/rdap/domain/clay-sill.example",
        "/rdap/domain/claysill.example",
        "/rdap/domain/loamlet.example",
    ]
    again = run(*names, *CHECK)
    assert "Nobody is asked" in again.stderr
    assert again.stdout == done.stdout
    assert len(server.seen) == 4
    offline = run(*names, *CHECK, "--offline")
    assert offline.stdout == done.stdout
    assert len(server.seen) == 4


def test_a_check_as_data(run: Run, server: LoopbackServer) -> None:
    names = ("addresses", "Clay Sill", "--ending", "example", *registry(server), *CHECK)
    (row,) = map(json.loads, run(*names, "--format", "jsonl").stdout.splitlines())
    assert len(server.seen) == 3
    taken = row["checked"][0]
    assert (taken["address"], taken["taken"], taken["since"]) == ("claysill.example", True, "2019-03-04")
    table = io.StringIO(run(*names, "--format", "csv", "--refresh").stdout)
    rows = {row["address"]: row for row in csv.DictReader(table)}
    assert len(server.seen) == 6
    assert (rows["claysill.example"]["taken"], rows["clay-sill.example"]["taken"]) == ("yes", "no")
    assert rows["getclaysill.example"]["finding"] == ""  # asked only with --spare


def test_handles_of_a_brief(run: Run, server: LoopbackServer, tmp_path: Path) -> None:
    server.routes["/dns.json"] = Reply(404)
    server.routes["/@loamlet"] = Reply(kind="text/html")
    (tmp_path / "brief.toml").write_text(f'[addresses]\nhandle_patterns = ["{server.url("/@{handle}")}"]\n')
    done = run("addresses", "Loamlet", "Claysill", "-b", "brief.toml", *CHECK, "--bootstrap", server.url("/dns.json"))
    assert done.returncode == 0
    assert done.stdout.count("page found") == 2
    assert done.stdout.count("no page found") == 1
    refused = run("addresses", "Loamlet", "--brief", "brief.toml", "--check")
    assert refused.returncode == 2
    assert "private network" in refused.stderr
    assert refused.stdout == ""


def test_strict_and_limits(run: Run, server: LoopbackServer) -> None:
    names = ("addresses", "Clay Sill", "Loamlet", "--ending", "example", *registry(server), *CHECK)
    few = run(*names, "--most-requests", "2", "--strict")
    assert few.returncode == 3
    assert "the limit of 2" in few.stdout
    assert "At most 2 requests" in few.stderr
    assert len(server.seen) == 2
    assert run(*names, "--strict", "--spare").returncode == 0
    assert "/rdap/domain/getclaysill.example" in server.paths


def test_a_damaged_store_is_said_once(run: Run, server: LoopbackServer, tmp_path: Path) -> None:
    names = ("addresses", "Loamlet", "--ending", "example", *registry(server), *CHECK)
    run(*names)
    (store,) = tmp_path.rglob("addresses.sqlite")
    store.write_bytes(b"no store " * 500)
    done = run(*names)
    assert done.returncode == 0
    assert done.stderr.count("are damaged") == 1
    assert "Traceback" not in done.stderr


@pytest.mark.parametrize(
    ("options", "told"),
    [
        (("Loamlet", "--ending", "no good"), "'no good' is not a domain ending"),
        (("Loamlet", "--refresh"), "Without --check nobody is asked"),
        (("Loamlet", "--check", "--bootstrap", "file:///etc/passwd"), "only http and https are asked, not file"),
        (("Loamlet", "--check", "--bootstrap", "https://user:pw@pots.example/"), "user name or password"),
        (("!!!",), "no letters or digits"),
        (("--goods", "pots"), "Write them after the command"),
        ((), ""),
    ],
)
def test_bad_input_is_told(run: Run, options: tuple[str, ...], told: str) -> None:
    done = run("addresses", *options)
    assert done.returncode == 2
    assert told in done.stderr
    assert "Traceback" not in done.stderr


@pytest.mark.parametrize("form", ["markdown", "jsonl"])
def test_equal_input_gives_equal_bytes(run: Run, form: str) -> None:
    one, two = (
        run("addresses", "Clay Sill", "кот", "--format", form, env={"PYTHONHASHSEED": seed}) for seed in ("1", "2")
    )
    assert one.stdout == two.stdout
    assert one.returncode == 0


@pytest.mark.skipif(sys.platform == "win32", reason="there is no SIGINT to send to another process")
def test_ctrl_c_shows_and_keeps_what_was_learnt(server: LoopbackServer, tmp_path: Path) -> None:
    where = registry(server)
    server.routes["/rdap/domain/clay-sill.example"] = lambda path: (time.sleep(2), Reply(404))[1]  # type: ignore[func-returns-value]
    command = [sys.executable, "-m", "namescreen", "addresses", "Clay Sill", "--ending", "example", *where, *CHECK]
    surroundings = clean_environment(tmp_path)
    with subprocess.Popen(
        command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, cwd=tmp_path, env=surroundings
    ) as process:
        while "/rdap/domain/clay-sill.example" not in server.paths:
            assert process.poll() is None
            time.sleep(0.02)
        os.kill(process.pid, signal.SIGINT)
        out, told = process.communicate(timeout=30)
    assert process.returncode == 130
    assert "registered since" in out
    assert "stopped" in out
    assert "run it again" in told
    assert "Traceback" not in told


def test_help_asks_for_nothing_heavy(tmp_path: Path) -> None:
    script = (
        "import sys; from namescreen.addresses import estimate; estimate('Loamlet'); "
        "print(sorted({'requests', 'requests_cache', 'urllib3', 'rich', 'sqlite3'} & set(sys.modules)))"
    )
    done = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, env=clean_environment(tmp_path), check=True
    )
    assert done.stdout.strip() == "[]"


def test_without_a_check_offline_changes_nothing(run: Run) -> None:
    plain, offline = run("addresses", "Loamlet"), run("addresses", "Loamlet", "--offline")
    assert offline.returncode == 0, offline.stderr
    assert offline.stdout == plain.stdout


def test_endings_are_those_of_the_markets_unless_they_are_stated(run: Run, tmp_path: Path) -> None:
    (tmp_path / "b.toml").write_text('markets = ["GB", "DE"]\n')
    assert "also .co.uk .de" in run("addresses", "Loamlet", "--brief", "b.toml").stdout
    assert "loamlet.com, loamlet.co.uk" in run("screen", "--name", "Loamlet", "--brief", "b.toml").stdout
    (tmp_path / "c.toml").write_text('markets = ["GB", "DE"]\n[addresses]\nendings = ["shop"]\n')
    assert ".co.uk" not in run("addresses", "Loamlet", "--brief", "c.toml").stdout
