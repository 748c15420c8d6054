"""Files that are damaged, hostile or merely odd: good rows are kept, bad ones counted, and nothing takes for ever."""

from __future__ import annotations

import io
import json
import struct
import time
import tracemalloc
import zipfile
from collections.abc import Callable
from pathlib import Path

import pytest

from namescreen.errors import InputError
from namescreen.marks import read_marks, read_names
from namescreen.marks import sources as sources_module
from namescreen.marks.xml_records import LONGEST_TOKEN

from .expected import LAYOUTS
from .invented import CASE_FILES, UK, USPTO_BULK, eu, words


def read(path: Path, encoding: str | None = None) -> tuple[list[str], str]:
    marks, sources, problems = read_marks([path], encoding=encoding)
    for source in sources:
        assert source.rows == source.kept + source.left_out + source.figurative + source.replaced
    return [mark.text for mark in marks], "\n".join(map(str, problems))


def put(path: Path, contents: str | bytes) -> Path:
    path.write_bytes(contents.encode() if isinstance(contents, str) else contents)
    return path


@pytest.mark.parametrize("given", ["utf-16", "utf-32"])
def test_a_list_without_the_mark_that_its_encoding_needs_is_named(tmp_path: Path, given: str) -> None:
    path = tmp_path / "marks.txt"
    path.write_bytes(b"TIMELO\nFEMSILL\n")
    with pytest.raises(InputError, match=rf"marks\.txt: .*{given}"):
        read_marks([path], encoding=given)


@pytest.mark.parametrize("given", ["utf-16", "utf-16-le", "utf-16-be", "utf-32", "utf-32-le", "utf-8-sig"])
@pytest.mark.parametrize("named", [True, False])
def test_an_encoding_that_is_named_may_have_its_mark_too(tmp_path: Path, given: str, named: bool) -> None:
    marked = {"utf-16-le": "\ufeff", "utf-16-be": "\ufeff", "utf-32-le": "\ufeff"}.get(given, "")
    path = put(tmp_path / "m.csv", (marked + "mark,class\nCAFÉ MOOS,21\n").encode(given))
    assert read(path, given if named else None) == (["CAFÉ MOOS"], "")
    bare = given.removesuffix("-le").removesuffix("-be").removesuffix("-sig")
    assert read(path, bare) == (["CAFÉ MOOS"], "")


def test_a_row_nested_too_deep_is_left_out(tmp_path: Path) -> None:
    deep = "[" * 100_000 + "]" * 100_000
    less = json.dumps({"mark": "MOSS", "goods": json.loads("[" * 200 + "]" * 200)})
    path = put(
        tmp_path / "m.jsonl", f'{{"mark": "POT"}}\n{{"mark": "VASE", "goods": {deep}}}\n{less}\n{{"mark": "JAR"}}\n'
    )
    marks, remarks = read(path)
    assert marks == ["POT", "JAR"]
    assert remarks.count("too deep inside one another") == 2
    names, problems = read_names(put(tmp_path / "n.jsonl", path.read_bytes().replace(b'"mark"', b'"name"')))
    assert names == ("POT", "JAR")
    assert len(problems) == 2


def test_quotation_marks_inside_cost_no_more_than_others(tmp_path: Path) -> None:
    def taken(row: str) -> float:
        path = put(tmp_path / "m.csv", "mark,class\n" + row * 40_000 + "LAST,21\n")
        started = time.process_time()  # not the clock: other work on the machine is none of it
        assert read(path)[0][-1] == "LAST"
        return time.process_time() - started

    # Rows of one number side by side: what grows with its square took over ten times as long as ordinary rows.
    ordinary = taken('"HERB",9\n')
    for row in ('"HERB"5,9\n', '"HERB,9\n', '5" POT,9\n'):
        assert taken(row) < 6 * ordinary or taken(row) < 6 * taken('"HERB",9\n')


def _flagged(raw: bytes, at: bytes, offset: int, value: int) -> bytes:
    """`raw` with 16 bits at an offset behind the first `at` changed."""
    place = raw.rindex(at) + offset
    return raw[:place] + struct.pack("<H", value) + raw[place + 2 :]


def _archive(method: int = zipfile.ZIP_DEFLATED, **members: str) -> bytes:
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", method) as archive:
        for name, contents in members.items():
            archive.writestr(f"{name}.csv", contents * 200)
    return out.getvalue()


DAMAGES: dict[str, Callable[[bytes], bytes]] = {
    "cut": lambda raw: raw[: len(raw) // 2],
    "no end": lambda raw: raw[:-22],
    "directory": lambda raw: raw.replace(b"PK\x01\x02", b"PK\x01\x09"),
    "version": lambda raw: _flagged(raw, b"PK\x01\x02", 6, 999),
    "method": lambda raw: _flagged(raw, b"PK\x01\x02", 10, 77),
    "locked": lambda raw: _flagged(raw, b"PK\x01\x02", 8, 1),
    "names": lambda raw: _flagged(raw.replace(b"b.csv", b"\xff.csv"), b"PK\x01\x02", 8, 0x800),
    "offset": lambda raw: _flagged(raw, b"PK\x05\x06", 16, 60_000),
    "data": lambda raw: raw[:60] + bytes(reversed(raw[60:100])) + raw[100:],
}


@pytest.mark.parametrize("damage", DAMAGES)
@pytest.mark.parametrize("method", [zipfile.ZIP_DEFLATED, zipfile.ZIP_LZMA, zipfile.ZIP_BZIP2])
def test_a_damaged_archive_costs_no_other_file(tmp_path: Path, damage: str, method: int) -> None:
    raw = _archive(method, a="mark\nPOT\n", b="mark\nVASE\n")
    put(tmp_path / "a.zip", DAMAGES[damage](raw))
    put(tmp_path / "b.txt", "JAR\n")
    marks, remarks = read(tmp_path)
    assert marks[-1] == "JAR"
    assert "damaged" in remarks
    if len(marks) == 1:
        with pytest.raises(InputError, match="damaged"):
            read(tmp_path / "a.zip")


def test_two_members_of_one_name_are_both_read(tmp_path: Path) -> None:
    with zipfile.ZipFile(tmp_path / "a.zip", "w") as archive:
        archive.writestr("m.csv", "mark\nPOT\n")
        with pytest.warns(UserWarning, match="Duplicate name"):
            archive.writestr("m.csv", "mark\nVASE\n")
    marks, remarks = read(tmp_path / "a.zip")
    assert marks == ["POT", "VASE"]
    assert "names more than once (m.csv)" in remarks


def test_an_endless_attribute_is_given_up_soon(tmp_path: Path) -> None:
    path = put(tmp_path / "m.xml", b'<Transaction a="' + b"x" * (4 * LONGEST_TOKEN) + b'"></Transaction>')
    started = time.perf_counter()
    with pytest.raises(InputError, match="tag, comment or attribute of more than 8 MB"):
        read(path)
    assert time.perf_counter() - started < 10


def test_halves_of_characters_are_left_out(tmp_path: Path) -> None:
    path = put(tmp_path / "m.jsonl", '{"mark": "PO\\ud800T", "goods": "va\\udfffses", "owner": "A\\u0007B\\u202e"}\n')
    [mark], _, _ = read_marks([path])
    assert (mark.text, mark.goods, mark.owner) == ("POT", "vases", "AB")


@pytest.mark.parametrize("layout", LAYOUTS)
@pytest.mark.parametrize("share", [0.3, 0.6, 0.9, 0.98])
def test_a_layout_cut_anywhere_says_so_or_gives_what_stood_before(tmp_path: Path, layout: str, share: float) -> None:
    files, expected = LAYOUTS[layout]
    for name, contents in files.items():
        raw = contents.encode() if isinstance(contents, str) else contents
        put(tmp_path / name, raw[: int(len(raw) * share)])
    try:
        marks, _ = read(tmp_path)
    except InputError as error:
        assert str(error)  # noqa: PT017 - which marks are left depends on the share
    else:
        assert len(marks) <= len(expected) + 1


@pytest.mark.parametrize("encoding", ["utf-8", "utf-16-le", "windows-1252"])
def test_a_table_in_another_encoding_than_the_office_s(tmp_path: Path, encoding: str) -> None:
    marks, _ = read(put(tmp_path / "OpenDataDomestic.txt", UK.replace("POT", "POÉT").encode(encoding)))
    assert marks == ["SPRIG | WICK", '"THE" POÉT']


def test_a_table_with_another_delimiter_than_the_office_s(tmp_path: Path) -> None:
    table = UK.replace("SPRIG | WICK", "SPRIGWICK").replace("|", "\t")
    assert read(put(tmp_path / "OpenDataDomestic.txt", table))[0] == ["SPRIGWICK", '"THE" POT']


def test_tables_of_other_years_are_told(tmp_path: Path) -> None:
    for name, contents in CASE_FILES.items():
        put(tmp_path / name, contents if name == "case_file.csv" else contents.replace("71000041", "71999999"))
    marks, remarks = read(tmp_path)
    assert marks == ["HERBWICK"]
    assert "are all the files of one edition?" in remarks


@pytest.mark.usefixtures("garbage_collected")
def test_a_record_without_end_takes_no_memory(tmp_path: Path) -> None:
    part = "<case-file-owner><party-name>SOMEBODY</party-name></case-file-owner>" * 1000
    start = USPTO_BULK.index("<case-file-owners>") + len("<case-file-owners>")
    path = tmp_path / "m.xml"
    with path.open("w") as file:
        file.write(USPTO_BULK[:start])
        for _ in range(150):
            file.write(part)
    tracemalloc.start()
    with pytest.raises(InputError, match="ends in the middle"):
        read(path)
    _, most = tracemalloc.get_traced_memory()
    tracemalloc.stop()
    assert most < 25_000_000


@pytest.mark.usefixtures("garbage_collected")
def test_many_small_files_in_an_archive_in_little_memory(tmp_path: Path) -> None:
    with zipfile.ZipFile(tmp_path / "many.zip", "w", zipfile.ZIP_DEFLATED) as archive:
        for number in range(1, 1001):
            archive.writestr(f"{number:09}.xml", eu(f"{number:09}", words(f"POT {number}")))
    told: list[int] = []
    tracemalloc.start()
    marks, [source], problems = read_marks([tmp_path / "many.zip"], progress=lambda done, total: told.append(done))
    _, most = tracemalloc.get_traced_memory()
    tracemalloc.stop()
    assert (len(marks), source.kept, problems) == (1000, 1000, ())
    assert most < 8_000_000


def test_many_files_of_another_kind_are_told_together(tmp_path: Path) -> None:
    for number in range(1, 60):
        put(tmp_path / f"{number:03}.xml", "<patents/>" if number % 2 else eu(f"{number}", words("POT")))
    marks, remarks = read(tmp_path)
    assert len(marks) == 29
    assert remarks.count("begins with <patents>") == 3
    assert "27 more rows like these" in remarks


def test_where_an_archive_breaks_is_told_by_its_last_line(tmp_path: Path) -> None:
    import gzip

    whole = gzip.compress("".join(f"POT {number}\n" for number in range(20_000)).encode())
    _, remarks = read(put(tmp_path / "m.txt.gz", whole[: len(whole) // 2]))
    line = int(remarks.partition("line ")[2].partition(":")[0])
    assert 5_000 < line < 20_000


def test_a_whole_disk_or_a_folder_without_end_is_no_register(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with pytest.raises(InputError, match=r"^/: is a whole disk. Name the folder"):
        read_marks(["/"])
    lists = tmp_path / "lists"
    lists.mkdir()
    (tmp_path / "round").symlink_to("/")
    with pytest.raises(InputError, match="is a whole disk"):
        read_marks([tmp_path / "round"])
    monkeypatch.setenv("HOME", str(lists))
    with pytest.raises(InputError, match="holds the home folder"):
        read_marks([tmp_path])
    monkeypatch.setattr(sources_module, "MOST_FILES", 3)
    for number in range(4):
        assert number == 0 or read(lists)[0] == [f"MARK {at}" for at in range(number)]
        put(lists / f"{number}.txt", f"MARK {number}\n")
        put(lists / f".hidden{number}.txt", "HIDDEN\n")
    with pytest.raises(InputError, match=r"more than 3 files.*zip"):
        read_marks([lists])
