"""The prepared file: whole or not there, checked, versioned, and cheap to open."""

from __future__ import annotations

import os
import random
import signal
import subprocess
import sys
import tracemalloc
from collections.abc import Callable
from contextlib import suppress
from itertools import pairwise
from pathlib import Path

import numpy as np
import pytest

from namescreen.closeness.sound import phoneme_codes_of
from namescreen.errors import DataError, InputError
from namescreen.files import sha256_of
from namescreen.native import is_compiled
from namescreen.register import Register, info, open_prepared, prepare, read_register, store

Run = Callable[..., "subprocess.CompletedProcess[str]"]

MARKS = "mark,number,class,office\n" + "".join(f"HERBWICK {n},{n},21,XX\n" for n in range(200))


def texts(register: Register) -> list[str]:
    return [mark.text for mark in register.marks]


@pytest.fixture
def prepared(tmp_path: Path) -> Path:
    (tmp_path / "marks.csv").write_text(MARKS)
    prepare(tmp_path / "marks.csv", tmp_path / "marks.nsr")
    return tmp_path / "marks.nsr"


def forget_checked() -> None:
    """Every register is looked through again when it is opened next."""
    for note in (store.user_cache() / "checked").iterdir():
        note.unlink()


def test_what_is_inside(prepared: Path) -> None:
    about = info(prepared)
    assert (about.marks, about.version) == (200, store.VERSION)
    assert about.classes == {21: 200}
    assert about.offices == {"xx": 200}
    [source] = about.sources
    assert source.name.endswith("marks.csv")
    assert source.sha256 == sha256_of(prepared.with_name("marks.csv"))
    assert texts(open_prepared(prepared)) == texts(read_register(prepared.with_name("marks.csv")))


def test_equal_sources_give_equal_bytes(prepared: Path) -> None:
    again = prepared.with_name("again.nsr")
    prepare(prepared.with_name("marks.csv"), again)
    assert again.read_bytes() == prepared.read_bytes()


@pytest.mark.parametrize("at", [0.3, 0.5, 0.7, 0.95])
def test_a_damaged_byte_is_noticed(prepared: Path, at: float) -> None:
    contents = bytearray(prepared.read_bytes())
    place = int(len(contents) * at)
    while contents[place] == 0:  # padding between the parts says nothing
        place += 1
    contents[place] ^= 0x10
    prepared.write_bytes(contents)
    with pytest.raises(DataError, match="is damaged") as caught:
        open_prepared(prepared)
    assert "register prepare" in str(caught.value)
    assert str(prepared) in str(caught.value)


def test_a_file_cut_before_its_first_words_is_no_list_of_one_mark(tmp_path: Path) -> None:
    path = tmp_path / "marks.nsr"
    for length in (0, 1, len(store.MAGIC) - 1):
        path.write_bytes(store.MAGIC[:length])
        with pytest.raises(DataError, match=r"marks\.nsr"):
            read_register(path)
    path.with_suffix(".txt").write_bytes(store.MAGIC[:1])
    assert [mark.text for mark in read_register(path.with_suffix(".txt")).marks] == ["n"]


@pytest.mark.parametrize("share", [0.0, 0.001, 0.01, 0.5, 0.99])
def test_a_cut_file_is_noticed(prepared: Path, share: float) -> None:
    contents = prepared.read_bytes()
    prepared.write_bytes(contents[: int(len(contents) * share)])
    with pytest.raises(DataError):
        open_prepared(prepared)


def test_a_file_of_another_version_says_how_to_make_it_anew(prepared: Path) -> None:
    contents = bytearray(prepared.read_bytes())
    contents[len(store.MAGIC)] = 99
    prepared.write_bytes(contents)
    with pytest.raises(DataError, match=r"version 99.*register prepare"):
        read_register(prepared)


def test_missing_and_other_files(tmp_path: Path) -> None:
    with pytest.raises(DataError, match="does not exist"):
        info(tmp_path / "no.nsr")
    (tmp_path / "list.txt").write_text("MOSS\n")
    with pytest.raises(DataError, match="is not a prepared register"):
        info(tmp_path / "list.txt")


def test_bytes_that_change_after_the_first_check_are_noticed(prepared: Path) -> None:
    """Even if the file keeps its size and its time of change: that is set back here, as a tool that mends files may."""

    def found() -> list[tuple[str, float]]:
        [(_, hits)] = open_prepared(prepared).search(["Herbwik"], 3)
        return [(hit.mark.text, hit.overall) for hit in hits]

    before = found()
    whole, state = prepared.read_bytes(), prepared.stat()
    rng = random.Random(4)
    for _ in range(60):
        place = rng.randrange(len(whole))
        with prepared.open("r+b") as file:
            file.seek(place)
            file.write(bytes([whole[place] ^ 1 << rng.randrange(8)]))
        os.utime(prepared, ns=(state.st_atime_ns, state.st_mtime_ns))
        assert prepared.stat().st_mtime_ns == state.st_mtime_ns
        with suppress(DataError):
            assert found() == before  # what was flipped lies between the parts
        with prepared.open("r+b") as file:
            file.write(whole)
    assert found() == before


def test_forged_registers_with_right_checksums_end_in_an_error_or_an_answer(prepared: Path) -> None:
    """Numbers of any size, parts of any length and kind: nothing ends this process, and nothing is a traceback."""
    arrays, about = store.open_store(prepared, lambda arrays, about: None)
    forged = prepared.with_name("forged.nsr")
    rng = random.Random(8)
    refused = 0
    for name in (*arrays, *rng.choices(list(arrays), k=120)):
        array = arrays[name].copy()
        way = rng.randrange(5)
        if way == 0:
            array = array[: rng.randrange(len(array) + 1)]
        elif way == 1:
            array = np.concatenate([array, array])
        elif way == 2:
            array = array.view(np.uint8)
        elif len(array):
            places = [rng.randrange(len(array)) for _ in range(rng.choice((1, 1, 2, 9)))]
            bits = array.view(f"u{array.itemsize}")
            bits[places] = [rng.choice((0, 1, 255, rng.getrandbits(63))) % 256**array.itemsize for _ in places]
        store.write_store(forged, {**arrays, name: array}, about)
        forget_checked()  # as if another program wrote it
        try:
            register = open_prepared(forged)
            for _, hits in register.search(["Herbwik", "Wick 7"], 5):
                assert [mark.text for hit in hits for mark in hit.marks]
        except DataError as error:
            refused += "is damaged" in str(error)
    assert refused > 60


@pytest.mark.parametrize("name", ["name_length", "word_code_start", "word_strength", "name_rows"])
def test_parts_that_do_not_fit_are_damage_even_where_the_file_was_held_to_be_good(prepared: Path, name: str) -> None:
    arrays, about = store.open_store(prepared, lambda arrays, about: None)
    forged = prepared.with_name("forged.nsr")
    store.write_store(forged, {**arrays, name: arrays[name][:1].copy()}, about)  # remembered as checked
    with pytest.raises(DataError, match="is damaged"):
        list(open_prepared(forged).search(["Herbwik", "Küche"], 5))


@pytest.mark.parametrize(
    ("field", "value"),
    [("sources", 7), ("sources", [{}]), ("sources", [{"name": 1}]), ("source_names", None), ("offices", 3),
     ("problems", [[]]), ("source_names", [])],
)  # fmt: skip
def test_what_a_forged_register_says_of_itself(prepared: Path, field: str, value: object) -> None:
    arrays, about = store.open_store(prepared, lambda arrays, about: None)
    store.write_store(prepared, {part: array.copy() for part, array in arrays.items()}, {**about, field: value})
    forget_checked()
    with pytest.raises(DataError, match="is damaged"):
        open_prepared(prepared)


def test_a_whole_file_is_read_through_once_only(prepared: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    open_prepared(prepared)

    def never(*_: object) -> None:
        raise AssertionError("read through again")

    monkeypatch.setattr(store, "_compare", never)
    open_prepared(prepared)
    os.utime(prepared, (1, 1))
    with pytest.raises(AssertionError):
        open_prepared(prepared)


def test_a_newer_file_updates_what_it_names_and_adds_the_rest(prepared: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    newer = prepared.with_name("newer.csv")
    newer.write_text("mark,number,office\nMOSSLING,7,XX\nMOSSLING,7,YY\nTERRAVEIL,900,XX\nNO NUMBER,,\n")
    read: list[str] = []

    def noted(word: str) -> tuple[str, ...]:
        read.append(word)
        return phoneme_codes_of(word)

    monkeypatch.setattr("namescreen.closeness.sound.phoneme_codes_of", noted)
    about = prepare([prepared, newer], prepared)
    assert {"mossling", "terraveil", "number"} <= set(read)
    assert not {"herbwick", "8", "199"} & set(read)  # taken over as they were
    assert about.marks == 203
    assert [Path(source.name).name for source in about.sources] == ["marks.csv", "newer.csv"]
    found = texts(open_prepared(prepared))
    assert "HERBWICK 7" not in found
    assert found[-4:] == ["MOSSLING", "MOSSLING", "TERRAVEIL", "NO NUMBER"]
    fresh = prepared.with_name("fresh.csv")
    rows = [line for line in MARKS.splitlines() if not line.startswith("HERBWICK 7,")]
    fresh.write_text(
        "mark,number,class,office\n"
        + "\n".join(rows[1:])
        + "\nMOSSLING,7,,XX\nMOSSLING,7,,YY\nTERRAVEIL,900,,XX\nNO NUMBER,,,\n"
    )
    for name in ("Mossling", "Herbwick 7", "Terra Veil"):
        [(_, updated)] = open_prepared(prepared).search([name], 10)
        [(_, anew)] = read_register(fresh).search([name], 10)
        assert [(hit.mark.text, hit.overall) for hit in updated] == [(hit.mark.text, hit.overall) for hit in anew]


def test_an_update_is_indexed_as_a_list_read_anew_where_names_share_words(tmp_path: Path) -> None:
    first = [f"HERBWICK {word}" for word in ("MOSS", "ZARVONEX", "POT")] + ["ZARVONEX", "QUENCHLING"]
    second = ["ZARVONEX MOSS", "HERBWICK QUENCHLING", "PLOVAMEER", "PLOVAMEER HERBWICK", "MOSS"]
    for name, marks in (("first", first), ("second", second), ("both", first + second)):
        (tmp_path / f"{name}.csv").write_text("mark\n" + "\n".join(marks))
    prepare(tmp_path / "first.csv", tmp_path / "updated.nsr")
    prepare([tmp_path / "updated.nsr", tmp_path / "second.csv"], tmp_path / "updated.nsr")
    prepare(tmp_path / "both.csv", tmp_path / "anew.nsr")
    updated, anew = (open_prepared(tmp_path / f"{name}.nsr").index().arrays for name in ("updated", "anew"))
    assert updated.keys() == anew.keys()
    for name in anew.keys() - {"rows", "row_blocks", "source"}:  # where each mark stood in its list
        assert updated[name].tobytes() == anew[name].tobytes(), name


def test_what_is_remembered_of_a_file_may_be_no_text(prepared: Path, own_cache: Path) -> None:
    open_prepared(prepared)
    for remembered in (own_cache / "checked").iterdir():
        remembered.write_bytes(b"\xfa\xff")
    assert len(open_prepared(prepared)) > 0


def test_a_folder_that_cannot_be_written(prepared: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    before = prepared.read_bytes()

    def refuse(*_: object, **__: object) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr("namescreen.register.store.replacing", refuse)
    with pytest.raises(InputError, match=r"Permission denied.*untouched"):
        prepare(prepared.with_name("marks.csv"), prepared)
    assert prepared.read_bytes() == before


@pytest.mark.skipif(hasattr(os, "geteuid") and os.geteuid() == 0, reason="root may write anywhere")
def test_a_folder_without_permission(prepared: Path) -> None:
    prepared.parent.chmod(0o555)
    try:
        with pytest.raises(InputError, match="cannot be written"):
            prepare(prepared.with_name("marks.csv"), prepared)
    finally:
        prepared.parent.chmod(0o755)


def test_where_no_file_can_be(tmp_path: Path) -> None:
    (tmp_path / "m.txt").write_text("MOSS\n")
    for output in (tmp_path, tmp_path / "no" / "m.nsr"):
        with pytest.raises(InputError, match="Name a file to write"):
            prepare(tmp_path / "m.txt", output)


SCRIPT = """
import sys
from pathlib import Path
from namescreen.register import prepare, store
store.user_cache = lambda: Path(sys.argv[3])
{before}
prepare(Path(sys.argv[1]), Path(sys.argv[2]))
"""


def run(prepared: Path, before: str) -> subprocess.CompletedProcess[str]:
    script = SCRIPT.format(before=before)
    command = [sys.executable, "-c", script, prepared.with_name("newer.csv"), prepared, prepared.parent / "cache"]
    return subprocess.run(list(map(str, command)), capture_output=True, text=True, timeout=120, check=False)


@pytest.mark.parametrize(
    "where",
    [
        "namescreen.marks.reader.one_line",
        "namescreen.register.build.pack_inverse",
        "namescreen.register.store.write_store",
        "os.fsync",
        "pathlib.Path.chmod",
        "pathlib.Path.replace",
        "namescreen.register.store.remember_checked",
    ],
)
def test_killed_at_any_point_the_old_file_or_the_new_one_is_whole(prepared: Path, where: str) -> None:
    before = prepared.read_bytes()
    prepared.with_name("newer.csv").write_text("mark\nMOSSLING\nTERRAVEIL\n")
    room, _, function = where.rpartition(".")
    kill = (
        f"import os, signal, importlib, pkgutil\nroom = pkgutil.resolve_name({room!r})\n"
        "import namescreen.register.build, namescreen.register.loading as doors\n"
        f"def kill(*_, **__): os.kill(os.getpid(), signal.SIGKILL)\nsetattr(room, {function!r}, kill)\n"
        f"if hasattr(doors, {function!r}): setattr(doors, {function!r}, kill)\n"
    )
    done = run(prepared, kill)
    assert done.returncode == -signal.SIGKILL, done.stderr
    if where.endswith("remember_checked"):
        assert texts(open_prepared(prepared)) == ["MOSSLING", "TERRAVEIL"]
    else:
        assert prepared.read_bytes() == before
        assert len(open_prepared(prepared)) == 200


def test_a_full_disk_leaves_the_old_file_and_no_part_of_the_new(prepared: Path) -> None:
    before = prepared.read_bytes()
    prepared.with_name("newer.csv").write_text("mark\nMOSSLING\n")
    limit = "import resource, signal\nsignal.signal(signal.SIGXFSZ, signal.SIG_IGN)\n" + (
        "resource.setrlimit(resource.RLIMIT_FSIZE, (2000, 2000))\n"
    )
    done = run(prepared, limit)
    assert done.returncode == 1
    assert "cannot be written" in done.stderr
    assert "untouched" in done.stderr
    assert prepared.read_bytes() == before
    assert not list(prepared.parent.glob(".*.part"))


def test_two_prepares_at_once_leave_one_whole_file(prepared: Path) -> None:
    for name, mark in (("one", "MOSSLING"), ("two", "TERRAVEIL")):
        prepared.with_name(f"{name}.txt").write_text(f"{mark}\n")
    script = SCRIPT.format(before="")
    rest = [str(prepared), str(prepared.parent / "cache")]
    started = [
        subprocess.Popen([sys.executable, "-c", script, str(prepared.with_name(f"{name}.txt")), *rest])
        for name in ("one", "two")
    ]
    assert [process.wait(120) for process in started] == [0, 0]
    assert texts(open_prepared(prepared)) in (["MOSSLING"], ["TERRAVEIL"])
    assert not list(prepared.parent.glob(".*.part"))


@pytest.mark.usefixtures("garbage_collected")
def test_a_great_many_equal_marks_cost_one(tmp_path: Path) -> None:
    (tmp_path / "same.txt").write_bytes(b"HERBWICK\n" * 300_000)
    about = prepare(tmp_path / "same.txt", tmp_path / "same.nsr")
    assert about.marks == 300_000 > about.bytes / 100
    register = open_prepared(tmp_path / "same.nsr")
    register.index()
    tracemalloc.start()
    [(_, [hit])] = register.search(["Herbwik"], top=50)
    assert len(hit.marks) == 300_000
    assert [mark.line for mark in hit.marks.prioritized((), 50)] == list(range(1, 51))
    _, peak = tracemalloc.get_traced_memory()
    tracemalloc.stop()
    assert peak < 100 * about.marks  # a decoded mark takes several times as much


@pytest.mark.skipif(not is_compiled(), reason="the kernel was not compiled, or NAMESCREEN_NATIVE is off")
def test_the_kernel_changes_no_byte(run: Run, tmp_path: Path) -> None:
    letters = random.Random(11)
    words = ["".join(letters.choices(["pl", "o", "thri", "ma", "zel", "ek", "u", "nn"], k=4)) for _ in range(300)]
    marks = ["Kettle & Vane", "THYMEPOT", "4ever Moss", "Żółty", "XTRA", *words, *map(" ".join, pairwise(words))]
    (tmp_path / "marks.csv").write_text("mark\n" + "\n".join(marks), encoding="utf-8")
    for name, setting in (("with.nsr", "on"), ("without.nsr", "off")):
        env = {"NAMESCREEN_NATIVE": setting, "XDG_CACHE_HOME": str(tmp_path / setting)}  # neither reads the other's
        done = run("register", "prepare", "marks.csv", "--output", name, env=env)
        assert done.returncode == 0, done.stderr
    assert (tmp_path / "with.nsr").read_bytes() == (tmp_path / "without.nsr").read_bytes()
