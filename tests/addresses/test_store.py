"""The stored answers: damage is noticed once and mended, and where nothing can be stored the check goes on."""

from __future__ import annotations

import os
import sqlite3
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from requests_cache.backends.sqlite import SQLiteCache

from namescreen.addresses.checking import plan, run
from namescreen.addresses.session import Asker
from namescreen.addresses.settings import Settings, cache_file
from tests.addresses.conftest import LoopbackServer


def check(settings: Settings, *domains: str) -> tuple[list[bool | None], Asker]:
    asker = Asker(settings)
    found, _ = run(plan(domains, [], [], [], asker), asker)
    asker.close()
    return [one.taken for one in found], asker


def store(settings: Settings) -> Path:
    assert settings.cache is not None
    return settings.cache


def test_the_store_lies_in_the_users_cache_folder(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    for variable in ("HOME", "XDG_CACHE_HOME", "LOCALAPPDATA", "USERPROFILE"):
        monkeypatch.setenv(variable, str(tmp_path))
    assert tmp_path in cache_file().parents
    assert cache_file().name == "addresses.sqlite"
    assert "namescreen" in cache_file().parts


def test_a_log_that_another_run_makes_at_once_is_waited_for(
    settings: Settings, monkeypatch: pytest.MonkeyPatch
) -> None:
    """SQLite does not wait for a change of journal_mode, whatever its time for waiting is."""
    from namescreen.addresses import store as module

    made = []

    def refused_once(path: Path, **options: Any) -> SQLiteCache:
        made.append(path)
        if len(made) == 1:
            raise sqlite3.OperationalError("database is locked")
        return SQLiteCache(path, **options)

    monkeypatch.setattr(module, "SQLiteCache", refused_once)
    session, remarks = module.open_store(settings)
    session.close()  # type: ignore[no-untyped-call]
    assert remarks == ()
    assert made == [settings.cache] * 2


def overwritten(path: Path) -> None:
    path.write_bytes(b"this is no store at all " * 100)


def cut(path: Path) -> None:
    with sqlite3.connect(path) as database:  # bring what stands in the log into the file
        database.execute("PRAGMA journal_mode=DELETE")
    database.close()
    path.write_bytes(path.read_bytes()[:5000])


def another_table(path: Path) -> None:
    path.unlink()
    with sqlite3.connect(path) as database:
        database.execute("CREATE TABLE responses (pots TEXT)")
    database.close()


@pytest.mark.parametrize("damage", [overwritten, cut, another_table])
def test_a_damaged_store_is_begun_anew_with_one_remark(
    server: LoopbackServer, settings: Settings, damage: Callable[[Path], None]
) -> None:
    server.registry("example")
    check(settings, "a.example", "b.example")
    damage(store(settings))
    found, asker = check(settings, "a.example", "b.example")
    assert found == [False, False]
    assert len(asker.remarks) == 1
    assert "damaged" in asker.remarks[0]
    assert str(store(settings)) in asker.remarks[0]
    assert asker.sent == 3
    found, asker = check(settings, "a.example", "b.example")
    assert (found, asker.remarks, asker.sent) == ([False, False], (), 0)


def test_entries_that_cannot_be_read_are_asked_anew(
    server: LoopbackServer, settings: Settings, capfd: pytest.CaptureFixture[str]
) -> None:
    server.registry("example")
    check(settings, "a.example")
    for value in ("garbage", "{}", '{"status_code": "many"}', "[]", b"\xff\xfe"):
        with sqlite3.connect(store(settings)) as database:
            database.execute("UPDATE responses SET value = ?", (value,))
        database.close()
        found, asker = check(settings, "a.example")
        assert (found, asker.sent) == ([False], 2), value
        assert asker.remarks == ("Some stored answers are damaged; they are asked again.",)
    assert capfd.readouterr() == ("", "")


def test_a_store_that_cannot_be_written_is_done_without(server: LoopbackServer, settings: Settings) -> None:
    server.registry("example")
    blocked = store(settings).parent.parent / "file"
    blocked.write_text("not a folder")
    found, asker = check(replace(settings, cache=blocked / "addresses.sqlite"), "a.example")
    assert found == [False]
    assert len(asker.remarks) == 1
    assert "kept for this run only" in asker.remarks[0]


@pytest.mark.skipif(not hasattr(os, "geteuid") or os.geteuid() == 0, reason="the superuser may write everywhere")
def test_a_store_that_may_only_be_read_is_done_without(server: LoopbackServer, settings: Settings) -> None:
    server.registry("example")
    check(settings, "a.example")
    store(settings).chmod(0o400)
    store(settings).parent.chmod(0o500)
    found, asker = check(settings, "a.example")
    assert found == [False]
    assert "kept for this run only" in asker.remarks[0]


def test_a_store_that_breaks_midway_is_left_behind_with_one_remark(server: LoopbackServer, settings: Settings) -> None:
    server.registry("example")
    asker = Asker(settings)
    planned = plan([f"n{number}.example" for number in range(5)], [], [], [], asker)
    with sqlite3.connect(store(settings)) as database:
        database.execute("DROP TABLE responses")
    database.close()
    found, _ = run(planned, asker)
    asker.close()
    assert [one.taken for one in found] == [False] * 5
    assert len(asker.remarks) == 1
    assert "no longer be stored" in asker.remarks[0]
