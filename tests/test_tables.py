from __future__ import annotations

import hashlib
import os
import re
import subprocess
import sys
from contextlib import suppress
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from namescreen.errors import DataError
from namescreen.tables import Table, open_table, table_bytes, wordlists_folder

text = st.text(st.characters(exclude_categories=["Cs"], exclude_characters="\t\n\r"), max_size=12)
entries = st.dictionaries(text.filter(bool), text, max_size=40)


def table_of(folder: Path, rows: dict[str, str]) -> Table:
    path = folder / "words.tsv"
    path.write_bytes(table_bytes("words.tsv", rows.items()))
    return Table(path)


@given(entries, text)
def test_a_table_answers_as_a_dictionary_would(
    tmp_path_factory: pytest.TempPathFactory, rows: dict[str, str], other: str
) -> None:
    table = table_of(tmp_path_factory.mktemp("table"), rows)
    assert len(table) == len(rows)
    assert dict(table.items()) == rows
    assert [key.encode() for key, _ in table.items()] == sorted(key.encode() for key in rows)
    assert {key: table.get(key) for key in rows} == rows
    for key in (other, other[:1], other + "x"):
        assert table.get(key) == rows.get(key)
        assert (key in table) == (key in rows)
        assert dict(table.starting(key)) == {k: v for k, v in rows.items() if k.startswith(key)}
    table.verify()
    before = {key: table.get(key) for key in (*rows, other, other[:1])}
    table.preload()
    assert {key: table.get(key) for key in before} == before


@given(entries)
def test_equal_entries_give_equal_bytes_in_any_order(rows: dict[str, str]) -> None:
    backwards = dict(reversed(list(rows.items())))
    assert table_bytes("t", rows.items()) == table_bytes("t", backwards.items())


def test_the_header_states_rows_and_digest() -> None:
    head, _, body = table_bytes("t.tsv", [("b", "2"), ("a", "1")]).partition(b"\n")
    assert body == b"a\t1\nb\t2\n"
    assert head.decode() == f"#namescreen-table 1 t.tsv rows=2 sha256={hashlib.sha256(body).hexdigest()} bytes=8"


@pytest.mark.parametrize(
    "rows",
    [
        [("a", "1"), ("a", "2")],
        [("a\tb", "1")],
        [("a\nb", "1")],
        [("a", "1\n2")],
        [("a", "1\r")],
    ],
)
def test_what_would_break_the_format_is_refused(rows: list[tuple[str, str]]) -> None:
    with pytest.raises(ValueError, match=r"stands twice|tab or line break"):
        table_bytes("t", rows)


@pytest.mark.parametrize("contents", [None, b"", b"word\t1\n", b"#namescreen-table 9 t rows=0 sha256=0\n"])
def test_a_file_that_is_no_table_is_named_with_the_remedy(tmp_path: Path, contents: bytes | None) -> None:
    path = tmp_path / "t.tsv"
    if contents is not None:
        path.write_bytes(contents)
    with pytest.raises(DataError, match=r"t\.tsv: .*Install namescreen again"):
        Table(path)


def test_a_changed_byte_is_noticed(tmp_path: Path) -> None:
    path = tmp_path / "t.tsv"
    whole = table_bytes("t.tsv", [("herb", "1"), ("pot", "2")])
    path.write_bytes(whole.replace(b"pot", b"pet"))
    with pytest.raises(DataError, match="damaged"):
        Table(path).verify()


ROWS = [(f"herb {number}", str(number)) for number in range(50)]


def test_a_table_cut_anywhere_within_a_line_is_named_and_never_searched_for_ever(tmp_path: Path) -> None:
    path = tmp_path / "t.tsv"
    whole = table_bytes("t.tsv", ROWS)
    for length in range(len(whole)):
        path.write_bytes(whole[:length])
        with pytest.raises(DataError, match="Install namescreen again"):
            Table(path)
    path.write_bytes(whole + b"zz\tmore\n")
    with pytest.raises(DataError, match="added"):
        Table(path)


def test_a_value_too_long_for_the_compiled_search_is_read_whole(tmp_path: Path) -> None:
    long = "x" * (1 << 24)
    assert table_of(tmp_path, {"a": "1", "b": long, "c": "3"}).get("b") == long


def test_an_older_table_that_does_not_state_its_length_is_read(tmp_path: Path) -> None:
    path = tmp_path / "t.tsv"
    whole = re.sub(rb" bytes=\d+\n", b"\n", table_bytes("t.tsv", ROWS), count=1)
    path.write_bytes(whole)
    assert dict(Table(path).items()) == dict(ROWS)
    path.write_bytes(whole[: whole.rindex(b"herb")])
    with pytest.raises(DataError, match="damaged"):
        Table(path).preload()


def test_the_compiled_search_and_the_other_find_the_same(tmp_path: Path) -> None:
    table = table_of(tmp_path, {"b": "1", "ba": "2", "bé": "3", "c": ""})
    for key in ("", "a", "b", "b ", "ba", "baa", "bz", "bé", "bê", "c", "d", "ÿ"):
        assert table._seek(key.encode()) == table._search(key.encode()), key
        assert table._find(key.encode()) == table._found(key.encode()), key
        assert table._value(key.encode()) == table._value_of(key.encode()), key
    path = tmp_path / "odd.tsv"  # lines without a tab, or empty ones
    for body in (b"\n", b"a\n\nb\t\n", b"\t\n\t\t\n", b"b\nb\n\n\n"):
        path.write_bytes(b"#namescreen-table 1 odd.tsv rows=1 sha256=" + b"0" * 64 + b"\n" + body)
        for sought in (b"", b"a", b"b", b"c", b"\xff"):
            assert 0 <= Table(path)._seek(sought) <= path.stat().st_size
            assert Table(path)._find(sought) == Table(path)._found(sought)


@given(st.integers(0, 10_000), st.binary(min_size=1, max_size=3))
def test_a_table_damaged_anywhere_answers_or_is_named(
    tmp_path_factory: pytest.TempPathFactory, place: int, junk: bytes
) -> None:
    path = tmp_path_factory.mktemp("table") / "t.tsv"
    whole = table_bytes("t.tsv", ROWS)
    place %= len(whole)
    path.write_bytes(whole[:place] + junk + whole[place + len(junk) :])
    with suppress(DataError):
        table = Table(path)
        for key, _ in ROWS:
            table.get(key)
    with suppress(DataError):
        list(Table(path).items())


def test_a_key_that_is_not_text_is_not_in_a_table(tmp_path: Path) -> None:
    assert table_of(tmp_path, {"herb": "1"}).get("her\udcff") is None


SHIPPED = sorted(
    path.relative_to(wordlists_folder()).as_posix()
    for path in wordlists_folder().rglob("*.tsv")
    if path.read_bytes().startswith(b"#namescreen-table ")  # the others are lists kept by hand
)


@pytest.mark.parametrize("name", SHIPPED)
def test_every_shipped_table_is_whole_and_sorted(name: str) -> None:
    table = open_table(name)
    table.verify()
    keys = [key.encode() for key, _ in table.items()]
    assert keys == sorted(set(keys))
    assert len(keys) == len(table)


def test_every_drawn_table_stands_in_sources_with_its_checksum() -> None:
    folder = wordlists_folder()
    text = (folder / "SOURCES.md").read_text("utf-8")
    parts = re.split(r"^## (.+)$", text, flags=re.MULTILINE)
    sections = dict(zip(parts[1::2], parts[2::2], strict=True))
    assert len(SHIPPED) > 50
    for name in SHIPPED:
        section = sections[name]
        for fact in ("source", "version", "licence", "drawn", "sha256", "build"):
            assert f"- {fact}: " in section, f"{name} lacks {fact}"
        assert hashlib.sha256((folder / name).read_bytes()).hexdigest() in section, f"{name} has changed since"
    for family in ("unlucky/*.tsv", "sounds/*.tsv"):  # written by hand, one checksum for all in order of name
        contents = b"".join(path.read_bytes() for path in sorted(folder.glob(family)))
        assert hashlib.sha256(contents).hexdigest() in sections[family], f"{family} has changed since"


@pytest.mark.parametrize("native", ["on", "off"])
def test_which_of_many_keys_a_table_holds(tmp_path: Path, native: str) -> None:
    keys = ["a", "b", "b ", "ba", "", "bé", "bê", "c", "z"]
    code = f"""
import sys
from pathlib import Path
from namescreen.tables import Table
table = Table(Path(sys.argv[1]))
print(table.present({keys!r}), table.present([]))
table.preload()
print(table.present({keys!r}), table.present([]))
"""
    table_of(tmp_path, {"b": "1", "ba": "2", "bé": "3", "c": ""})
    told = subprocess.run(
        [sys.executable, "-c", code, tmp_path / "words.tsv"], capture_output=True, encoding="utf-8", check=True,
        env={**os.environ, "NAMESCREEN_NATIVE": native, "PYTHONIOENCODING": "utf-8"},
    ).stdout.splitlines()  # fmt: skip
    assert told == [f"{['b', 'ba', 'bé', 'c']} []"] * 2


def test_keys_of_the_lines_that_hold_a_text(tmp_path: Path) -> None:
    table = table_of(tmp_path, {"a": "x!y!", "b": "", "c": "é!", "d": "x"})
    assert list(table.keys_of_lines_with("!")) == ["a", "c"]
    assert list(table.keys_of_lines_with("z")) == []
