from __future__ import annotations

import gzip
import io
import json
import sys
import zipfile
from contextlib import suppress
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from namescreen.errors import DataError, InputError
from namescreen.marks import read_names
from namescreen.marks.problems import SHOWN_EACH, ProblemLog
from namescreen.marks.text_lines import lines
from namescreen.register import Register, read_register

CSV = (
    "Trade mark,Reg. No.,Nice classes,Status,Application date,Goods,Owner,Office\n"
    'HERBWICK,1001,"21, 31",Registered,2019-05-06,"planters, pots",Clay & Co,XX\n'
    "TERRAVEIL,1002,21,Expired,07.08.2001,vases,,YY\n"
    "MOSSLING,1003,,,,,,\n"
)


def texts(register: Register) -> list[str]:
    return [mark.text for mark in register.marks]


def write(folder: Path, name: str, contents: str | bytes) -> Path:
    path = folder / name
    path.write_bytes(contents.encode() if isinstance(contents, str) else contents)
    return path


def zipped(*names: str) -> bytes:
    """An archive with files of these names."""
    held = io.BytesIO()
    with zipfile.ZipFile(held, "w") as archive:
        for name in names:
            archive.writestr(name, "<x/>")
    return held.getvalue()


@pytest.mark.parametrize(
    ("contents", "sign"),
    [("Drizzle, raincoats\nDrip Dock, trays\nMoss\n", "comma"), ("Moss;pots\nFern;vases\n", "semicolon")],
)
def test_a_plain_list_whose_lines_look_like_columns_is_read_whole_with_a_remark(
    tmp_path: Path, contents: str, sign: str
) -> None:
    register = read_register(write(tmp_path, "marks.txt", contents))
    assert texts(register) == contents.splitlines()
    (told,) = register.problems
    assert f"most lines hold a {sign}" in told.what
    assert "say so in a first line: mark" in told.remedy
    assert told.line == 1


def test_a_plain_list_with_a_few_commas_needs_no_remark(tmp_path: Path) -> None:
    assert not read_register(write(tmp_path, "marks.txt", "Herb, Ltd\nMoss\nFern\n# a, b\n")).problems


def test_columns_not_used_are_told_until_the_user_has_named_the_goods(tmp_path: Path) -> None:
    path = write(tmp_path, "marks.csv", "Brand;What they sell;Price\nMOSS;pots;9\n")
    (told,) = read_register(path).problems
    assert "--column goods=NAME" in told.remedy
    (told,) = read_register(path, column=["mark=Brand", "number=Price"]).problems
    assert "--column goods='What they sell'" in told.remedy
    assert not read_register(path, column=["mark=Brand", "goods=What they sell"]).problems


def test_every_field_of_a_table(tmp_path: Path) -> None:
    register = read_register(write(tmp_path, "marks.csv", CSV))
    first, second, third = register.marks
    assert (first.text, first.number, first.office, first.classes) == ("HERBWICK", "1001", "XX", (21, 31))
    assert (first.goods, first.owner, first.filed) == ("planters, pots", "Clay & Co", "2019-05-06")
    assert (first.status, first.status_as_given, first.line) == ("live", "Registered", 2)
    assert (second.status, second.filed) == ("dead", "2001-08-07")
    assert (third.status, third.classes, third.goods) == ("unknown", (), "")
    assert register.problems == ()
    [source] = register.sources
    assert (source.rows, source.kept, source.left_out, source.figurative) == (3, 3, 0, 0)
    assert len(source.sha256) == 64


@pytest.mark.parametrize("delimiter", [",", "\t", ";", "|"])
@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-32"])
def test_any_delimiter_line_end_and_unicode_encoding(tmp_path: Path, delimiter: str, end: str, encoding: str) -> None:
    rows = [["mark", "class"], ["CAFÉ MOSS", "21"], ["HERBWICK", "31"]]
    text = end.join(delimiter.join(row) for row in rows) + end
    register = read_register(write(tmp_path, "marks.csv", text.encode(encoding)))
    assert [(m.text, m.classes) for m in register.marks] == [("CAFÉ MOSS", (21,)), ("HERBWICK", (31,))]
    assert register.problems == ()


def test_plain_lists_json_lines_gzip_zip_and_folders_together(tmp_path: Path) -> None:
    folder = tmp_path / "marks"
    (folder / "deep").mkdir(parents=True)
    write(folder, "a.txt", "ALPHA, INC.\n\n  BETA  \n")
    write(folder, "b.jsonl", '{"mark": "GAMMA", "classes": [21, 35], "owner": null}\n"DELTA"\n')
    write(folder, "c.csv.gz", gzip.compress(CSV.encode()))
    write(folder / "deep", "d.TSV", "mark\tclass\nEPSILON\t9\n")
    write(folder, ".hidden", "NOT READ")
    write(folder, "picture.png", b"\x89PNG\0\0")
    with zipfile.ZipFile(folder / "e.zip", "w") as archive:
        archive.writestr("one/marks.csv", "mark\nZETA\n")
        archive.writestr("two.txt", "NOT READ: it explains the table beside it")
        archive.writestr("three.jsonl", '"ETA"\n')
        archive.writestr("__MACOSX/two.txt", "NOT READ")
    register = read_register(folder)
    assert texts(register) == [
        "ALPHA, INC.", "BETA", "GAMMA", "DELTA", "HERBWICK", "TERRAVEIL", "MOSSLING", "EPSILON", "ZETA",
        "ETA",
    ]  # fmt: skip
    assert register.marks[2].classes == (21, 35)
    last = [source.name.rpartition("e.zip")[2] for source in register.sources][-2:]
    assert last == [": one/marks.csv", ": three.jsonl"]
    assert texts(read_register([folder / "a.txt", folder / "deep"])) == ["ALPHA, INC.", "BETA", "EPSILON"]


def test_bad_rows_are_noted_together_and_good_ones_kept(tmp_path: Path) -> None:
    path = write(
        tmp_path,
        "marks.csv",
        'mark,class,filed,goods\nONE,21,,\nTWO,99,03/04/2020,\nTHREE,1,,"a, b",extra\n,21,,picture\n'
        '"FOUR,21,,\nFIVE,,,\n',
    )
    register = read_register(path)
    assert texts(register) == ["ONE", "TWO", "FOUR", "FIVE"]
    [source] = register.sources
    assert (source.rows, source.kept, source.left_out, source.figurative) == (6, 4, 1, 1)
    assert {(p.line, p.field) for p in register.problems} == {
        (3, "classes"), (3, "filed"), (4, ""), (6, ""), (None, ""),
    }  # fmt: skip
    assert all(p.source == str(path) and p.remedy for p in register.problems)


def test_a_quoted_field_may_span_lines(tmp_path: Path) -> None:
    register = read_register(write(tmp_path, "m.csv", 'mark,goods\nONE,"pots,\nvases"\nTWO,x\n'))
    assert [(m.text, m.goods, m.line) for m in register.marks] == [("ONE", "pots, vases", 2), ("TWO", "x", 4)]


def test_a_tsv_without_quoting_keeps_its_quotation_marks_from_swallowing_rows(tmp_path: Path) -> None:
    text = "mark\tclass\n" + 'THE "BEST" POT\t21\n"SO CALLED" POT\t21\n"OPEN\t21\n' + "LAST\t3\n"
    register = read_register(write(tmp_path, "m.tsv", text))
    assert [m.classes for m in register.marks] == [(21,), (21,), (21,), (3,)]
    assert texts(register)[2:] == ["OPEN", "LAST"]


@pytest.mark.parametrize(
    ("name", "contents", "says"),
    [
        ("missing.txt", None, "no such file"),
        ("empty.txt", "", "holds no marks"),
        ("blank.csv", "\n\n", "holds no marks"),
        ("header.csv", "mark,class\n", "holds no marks"),
        ("binary.txt", bytes(range(256)) * 40, "is not text"),
        ("brief.toml", 'goods = "pots"\nconcepts = ["herb"]\n', "settings, such as a naming brief"),
        ("brief.txt", '# Mine.\ngoods = "pots"\nconcepts = ["herb"]\n', "settings, such as a naming brief"),
        ("notes.md", "# Names\nHerbwick\n", "is a page or a document"),
        ("stray.xlsx", b"PK\n", "Save it as CSV"),
        ("book.xlsx", zipped("[Content_Types].xml", "xl/workbook.xml"), "Save it as CSV"),
        ("book.zip", zipped("[Content_Types].xml", "xl/workbook.xml"), "Save it as CSV"),
        ("letter", zipped("[Content_Types].xml", "word/document.xml"), "as plain text"),
        ("sheet.csv", b"\xd0\xcf\x11\xe0\0\0\0\1" * 500, "is not text"),
        ("none.csv", "colour,size\nred,1\n", "no column of marks; its columns are colour, size"),
        ("pictures.csv", "mark,class\n,21\n***,3\n", "the words were not found"),
        ("bad.jsonl", "{\n}\n", "not a JSON"),
        ("cut.zip", b"PK\x03\x04" + b"x" * 50, "cut or damaged"),
        ("cut.gz", gzip.compress(b"MARK\n" * 5)[:-12], "cut, locked or damaged"),
        ("other.xml", "<catalogue><item/></catalogue>", "begins with <catalogue>"),
    ],
)
def test_what_cannot_be_used_says_so_in_one_paragraph(
    tmp_path: Path, name: str, contents: str | bytes | None, says: str
) -> None:
    path = tmp_path / name
    if contents is not None:
        write(tmp_path, name, contents)
    with pytest.raises(InputError) as caught:
        read_register(path)
    message = str(caught.value)
    assert says in message
    assert str(path) in message
    assert "Traceback" not in message
    assert all(problem.remedy for problem in caught.value.problems)


def test_all_missing_sources_are_named_together(tmp_path: Path) -> None:
    with pytest.raises(InputError) as caught:
        read_register([tmp_path / "a.txt", tmp_path / "b.txt"])
    assert len(caught.value.problems) == 2
    with pytest.raises(InputError, match="no register was given"):
        read_register([])


def test_a_folder_of_nothing_and_an_unknown_encoding(tmp_path: Path) -> None:
    (tmp_path / "empty").mkdir()
    with pytest.raises(InputError, match="holds no file of marks"):
        read_register(tmp_path / "empty")
    with pytest.raises(InputError, match="is not an encoding"):
        read_register(write(tmp_path, "m.txt", "A\n"), encoding="utf-99")


def test_one_bad_file_in_a_folder_does_not_cost_the_others(tmp_path: Path) -> None:
    write(tmp_path, "a.txt", "ALPHA\n")
    write(tmp_path, "b.csv", "colour\nred\n")
    register = read_register(tmp_path)
    assert texts(register) == ["ALPHA"]
    assert "no column of marks" in str(register.problems[0])


def test_lines_that_are_not_utf8_are_read_as_windows_1252_and_noted(tmp_path: Path) -> None:
    path = write(tmp_path, "m.txt", "CAFÉ\nPLAIN\n".encode("cp1252"))
    register = read_register(path)
    assert texts(register) == ["CAFÉ", "PLAIN"]
    [problem] = register.problems
    assert problem.line == 1
    assert "Windows-1252" in str(problem)
    greek = write(tmp_path, "g.txt", "ΓΛΑΣΤΡΑ\n".encode("iso-8859-7"))
    assert texts(read_register(greek, encoding="iso-8859-7")) == ["ΓΛΑΣΤΡΑ"]


def test_a_ten_megabyte_line_is_left_out_and_noted(tmp_path: Path) -> None:
    path = write(tmp_path, "m.txt", b"ONE\n" + b"x" * 10_000_000 + b"\nTWO\n")
    register = read_register(path)
    assert texts(register) == ["ONE", "TWO"]
    assert register.sources[0].left_out == 1
    assert "longer than 1 MB" in str(register.problems[0])


def test_marks_of_five_thousand_characters_are_cut_and_noted(tmp_path: Path) -> None:
    register = read_register(write(tmp_path, "m.txt", "ONE " + "x" * 5000 + "\nTWO\n"))
    assert [len(mark.text) for mark in register.marks] == [300, 3]
    assert "5,004 characters" in str(register.problems[0])


def test_control_characters_bidirectional_overrides_and_emoji(tmp_path: Path) -> None:
    register = read_register(write(tmp_path, "m.txt", "HERB\x07WICK\n\u202eKCIWBREH\u202c\nPOT 🪴\n🪴🪴\n"))
    assert texts(register) == ["HERBWICK", "KCIWBREH", "POT 🪴"]
    assert register.figurative == 1


def test_filters_leave_out_only_what_states_otherwise(tmp_path: Path) -> None:
    path = write(tmp_path, "m.csv", CSV)

    def kept(**filters: object) -> list[str]:
        return texts(read_register(path, **filters))  # type: ignore[arg-type]

    assert kept(classes=[31]) == ["HERBWICK", "MOSSLING"]
    assert kept(live_only=True) == ["HERBWICK", "MOSSLING"]
    assert kept(office="yy") == ["TERRAVEIL", "MOSSLING"]
    assert kept(office=["XX", "YY"]) == ["HERBWICK", "TERRAVEIL", "MOSSLING"]
    assert kept(since="2010-01-01") == ["HERBWICK", "MOSSLING"]
    assert kept(until="2010-01-01") == ["TERRAVEIL", "MOSSLING"]
    assert kept(classes=[9], live_only=True) == ["MOSSLING"]
    assert len(read_register(path, classes=[31])) == 2


def test_a_million_problems_cost_no_more_than_a_few() -> None:
    log = ProblemLog("marks.csv")
    for line in range(1, 100_001):
        log.leave_out("is bad", "mend it", line)
    problems = log.problems()
    assert len(problems) == SHOWN_EACH + 1
    assert "99,980 more" in str(problems[-1])
    assert log.left_out == 100_000


class OneByteAtATime(io.RawIOBase):
    def __init__(self, contents: bytes, size: int) -> None:
        self._inner, self._size = io.BytesIO(contents), size

    def read(self, size: int = -1) -> bytes:
        return self._inner.read(min(size, self._size) if size > 0 else self._size)


@given(st.lists(st.text("ab \r\n", max_size=8)), st.integers(1, 5))
def test_lines_are_those_of_the_text_however_the_chunks_fall(parts: list[str], size: int) -> None:
    text = "\n".join(parts)
    expected = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    if expected[-1] == "":
        expected.pop()
    stream = OneByteAtATime(text.encode(), size)
    assert [line for _, line in lines(stream, ProblemLog())] == expected


@given(st.lists(st.dictionaries(st.sampled_from(["mark", "class", "owner"]), st.text(max_size=20)), max_size=20))
def test_json_lines_never_fail_with_anything_but_a_clear_error(rows: list[dict[str, str]]) -> None:
    from tempfile import TemporaryDirectory

    with TemporaryDirectory() as folder:
        path = write(Path(folder), "m.jsonl", "\n".join(map(json.dumps, rows)))
        with suppress(InputError):
            register = read_register(path)
            assert sum(s.kept + s.left_out + s.figurative for s in register.sources) == len(rows)


@given(st.binary(max_size=400), st.sampled_from([".txt", ".csv", ".jsonl", ".xml", ".zip", ".gz"]))
def test_any_bytes_give_marks_or_a_clear_error(contents: bytes, suffix: str) -> None:
    from tempfile import TemporaryDirectory

    with TemporaryDirectory() as folder:
        path = write(Path(folder), "m" + suffix, contents)
        with suppress(InputError, DataError):
            read_register(path)


def test_names_are_read_the_same_way(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    text = "Herbwick\n\n!!!\nMossling\nHerbwick\n" + "x" * 301
    names, problems = read_names(write(tmp_path, "n.txt", text))
    assert names == ("Herbwick", "Mossling")
    assert [problem.line for problem in problems] == [3, 5, 6]
    assert read_names(write(tmp_path, "n.csv", "id,name\n1,Herbwick\n"))[0] == ("Herbwick",)
    assert read_names(write(tmp_path, "m.csv", "\ufeffname\nMossling, Ltd\n"))[0] == ("Mossling, Ltd",)
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(b"Herbwick\n")))
    assert read_names("-")[0] == ("Herbwick",)
    for path in (tmp_path / "missing", tmp_path, write(tmp_path, "e.txt", "")):
        with pytest.raises(InputError, match=path.name):
            read_names(path)


@pytest.mark.parametrize("encoding", ["klingon", "rot13", "zlib", "idna", "undefined", ""])
def test_what_is_no_encoding_of_text_is_refused(tmp_path: Path, encoding: str) -> None:
    path = tmp_path / "marks.txt"
    path.write_text("TIMELO\n")
    with pytest.raises(InputError, match="is not an encoding"):
        read_register([path], encoding=encoding)


def test_marks_before_the_damage_in_an_archive_are_kept(tmp_path: Path) -> None:
    whole = gzip.compress("".join(f"TIMELO {number}\n" for number in range(20_000)).encode())
    half = whole[: len(whole) // 2]
    for damaged, least in ((whole[:-8] + bytes(8), 20_000), (whole + b"junk", 20_000), (half, 5_000)):
        path = tmp_path / "marks.txt.gz"
        path.write_bytes(damaged)
        register = read_register([path])
        assert len(register) >= least
        assert any("damaged" in str(problem) for problem in register.problems)


@pytest.mark.parametrize(
    ("text", "names", "told"),
    [
        ("- Pirouet\n- Old - Lathe\n\n- Wren\n", ["Pirouet", "Old - Lathe", "Wren"], True),
        ("# mine\n  \u2022 Pirouet\n  \u2022 Wren\n", ["Pirouet", "Wren"], True),
        ("- Pirouet\nWren\n", ["- Pirouet", "Wren"], False),  # then it may be a part of the name
        ("-Pirouet\n-Wren\n", ["-Pirouet", "-Wren"], False),
    ],
)
def test_the_signs_of_a_list_typed_by_hand_are_no_part_of_its_names(
    text: str, names: list[str], told: bool, tmp_path: Path
) -> None:
    register = read_register(write(tmp_path, "marks.txt", text))
    assert texts(register) == names
    assert any("sign of the list" in str(one) for one in register.problems) == told
