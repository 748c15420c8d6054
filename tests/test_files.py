"""Files are written whole, as private as they were, and read within bounds."""

from __future__ import annotations

import os
import threading
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

from namescreen.errors import InputError
from namescreen.files import ABANDONED, read_bounded, user_cache, write_whole


def test_writing_whole_replaces_the_file_and_leaves_nothing_beside(tmp_path: Path) -> None:
    path = tmp_path / "report.md"
    path.write_text("old")
    write_whole(path, b"new")
    assert path.read_bytes() == b"new"
    assert [file.name for file in tmp_path.iterdir()] == ["report.md"]


def test_a_failed_write_keeps_the_old_file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "report.md"
    path.write_text("old")

    def refuse(self: Path, target: Path) -> Path:
        raise KeyboardInterrupt

    monkeypatch.setattr(Path, "replace", refuse)
    with pytest.raises(KeyboardInterrupt):
        write_whole(path, b"new")
    assert path.read_text() == "old"
    assert [file.name for file in tmp_path.iterdir()] == ["report.md"]


def test_a_reader_never_sees_a_part(tmp_path: Path) -> None:
    path = tmp_path / "file"
    wholes = [letter * 200_000 for letter in (b"a", b"b")]
    write_whole(path, wholes[0])
    seen: set[bytes] = set()
    done = threading.Event()

    def read() -> None:
        while not done.is_set():
            seen.add(path.read_bytes())

    reader = threading.Thread(target=read)
    reader.start()
    for turn in range(40):
        write_whole(path, wholes[turn % 2])
    done.set()
    reader.join()
    assert seen <= set(wholes)


def test_a_device_or_pipe_is_not_replaced_by_a_file(tmp_path: Path) -> None:
    path = tmp_path / "pipe"
    os.mkfifo(path)
    with pytest.raises(OSError, match="no ordinary file"):
        write_whole(path, b"x")
    assert path.is_fifo()
    assert list(tmp_path.iterdir()) == [path]


@pytest.fixture(params=[0o022, 0o077, 0o027])
def umask(request: pytest.FixtureRequest) -> Iterator[int]:
    before = os.umask(request.param)
    yield request.param
    os.umask(before)


def mode(path: Path) -> int:
    return path.stat().st_mode & 0o777


def test_a_new_file_has_the_permissions_that_the_umask_leaves(tmp_path: Path, umask: int) -> None:
    write_whole(tmp_path / "new", b"x")
    assert mode(tmp_path / "new") == 0o666 & ~umask


@pytest.mark.parametrize("kept", [0o600, 0o640, 0o664])
def test_a_file_that_is_replaced_keeps_its_permissions(tmp_path: Path, umask: int, kept: int) -> None:
    path = tmp_path / "old"
    path.write_text("old")
    path.chmod(kept)
    write_whole(path, b"new")
    assert (path.read_text(), mode(path)) == ("new", kept)


@pytest.mark.skipif(hasattr(os, "geteuid") and os.geteuid() == 0, reason="root may write anywhere")
def test_a_write_protected_file_stays(tmp_path: Path) -> None:
    path = tmp_path / "old"
    path.write_text("old")
    path.chmod(0o400)
    with pytest.raises(PermissionError, match="write-protected"):
        write_whole(path, b"new")
    assert path.read_text() == "old"


def test_a_link_stays_and_the_file_it_leads_to_is_replaced(tmp_path: Path) -> None:
    (tmp_path / "folder").mkdir()
    (tmp_path / "link").symlink_to("folder/file")
    for contents in (b"first", b"second"):  # the link dangles at first
        write_whole(tmp_path / "link", contents)
        assert (tmp_path / "link").is_symlink()
        assert (tmp_path / "folder" / "file").read_bytes() == contents


def test_what_a_killed_run_left_is_swept_and_what_one_writes_now_is_not(tmp_path: Path) -> None:
    left, now, other = tmp_path / ".it.0a1b.part", tmp_path / ".it.2c3d.part", tmp_path / ".its.0a1b.part"
    for path in (left, now, other):
        path.write_text("half")
    for path in (left, other):
        os.utime(path, (0, time.time() - ABANDONED - 1))
    write_whole(tmp_path / "it", b"x")
    assert {path.name for path in tmp_path.iterdir()} == {"it", now.name, other.name}


def test_a_name_as_long_as_names_may_be_can_be_written(tmp_path: Path) -> None:
    path = tmp_path / ("x" * 255)
    write_whole(path, b"x")
    assert path.read_bytes() == b"x"


@pytest.mark.parametrize(
    ("name", "told"),
    [("missing", "no such file"), (".", "is a folder"), ("long", "more than 10 bytes"), ("a\0b", "no path")],
)
def test_what_cannot_be_read_is_named_with_the_next_step(tmp_path: Path, name: str, told: str) -> None:
    (tmp_path / "long").write_bytes(b"x" * 11)
    with pytest.raises(InputError, match=rf"{told}.*Try another"):
        read_bounded(tmp_path / name, 10, "Try another")
    assert read_bounded(tmp_path / "long", 11, "") == b"x" * 11


@pytest.mark.skipif(not Path("/dev/zero").exists(), reason="no device without end here")
def test_a_device_without_end_is_read_within_bounds() -> None:
    with pytest.raises(InputError, match="more than 10 bytes"):
        read_bounded(Path("/dev/zero"), 10, "")


def test_without_a_home_folder_nothing_is_kept_and_nothing_fails(monkeypatch: pytest.MonkeyPatch) -> None:
    for variable in ("HOME", "XDG_CACHE_HOME"):
        monkeypatch.delenv(variable, raising=False)
    pwd = pytest.importorskip("pwd")

    def nobody(number: int) -> None:
        raise KeyError(number)

    monkeypatch.setattr(pwd, "getpwuid", nobody)
    with pytest.raises(NotADirectoryError):
        user_cache().mkdir(parents=True)
