"""Every field of invented records in every layout that can be read, and of real records where they are at hand."""

from __future__ import annotations

import gzip
import zipfile
from dataclasses import replace
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from namescreen.errors import InputError
from namescreen.marks import Mark, Source, read_marks
from namescreen.register import open_prepared, prepare, read_register

from .expected import LAYOUTS
from .invented import EU_OWNERS, USPTO_BULK, eu, words


def read(*paths: Path, column: list[str] | None = None) -> tuple[list[Mark], tuple[Source, ...], str]:
    """The marks, where they stood left out; the sources; and the remarks as one text."""
    marks, sources, problems = read_marks(paths, column=column)
    return [replace(mark, source="", line=0) for mark in marks], sources, "\n".join(map(str, problems))


def written(folder: Path, files: dict[str, str | bytes]) -> Path:
    folder.mkdir(exist_ok=True)
    for name, contents in files.items():
        (folder / name).write_bytes(contents.encode() if isinstance(contents, str) else contents)
    return folder


NAMED = {
    "USPTO bulk XML": "USPTO bulk XML",
    "USPTO record, ST.66": "USPTO: WIPO ST.66",
    "USPTO record, ST.96": "USPTO: WIPO ST.96",
    "USPTO case files": "USPTO case files data set",
    "European Union": "EUIPO: WIPO ST.66",
    "UK text release": "UK text release",
    "Canada": "CIPO of Canada: WIPO ST.96",
    "Switzerland": "IGE-IPI of Switzerland: WIPO ST.96",
    "Norway": "Patentstyret of Norway: WIPO ST.96 as JSON",
    "France": "France's search answers",
    "Brazil": "Brazil's gazette",
    "Korea": "Korea's open data",
    "Japan": "Japan's standardised data",
    "Australia": "Australia's IPGOD",
    "Czechia": "UPV of Czechia: WIPO ST.96",
    "Sweden": "PRV of Sweden: WIPO ST.66",
    "Exchange format": "OSIM of Romania: WIPO ST.66",
    "International": "WIPO: WIPO ST.66",
}
"""What `register info` and the report call each."""


@pytest.mark.parametrize("layout", LAYOUTS)
def test_every_field_of_every_layout(tmp_path: Path, layout: str) -> None:
    files, expected = LAYOUTS[layout]
    marks, sources, remarks = read(written(tmp_path / "given", files))
    assert marks == expected
    assert "without the one" not in remarks
    assert sum(source.kept for source in sources) == len(marks)
    assert any(NAMED[layout] in source.format for source in sources)
    for source in sources:
        assert source.rows == source.kept + source.left_out + source.figurative + source.replaced


@pytest.mark.parametrize("layout", LAYOUTS)
@pytest.mark.parametrize("form", ["zip", "gzip"])
def test_packed_layouts_give_the_same(tmp_path: Path, layout: str, form: str) -> None:
    files, expected = LAYOUTS[layout]
    plain = {name: text.encode() if isinstance(text, str) else text for name, text in files.items()}
    if form == "zip":
        with zipfile.ZipFile(tmp_path / "given.zip", "w", zipfile.ZIP_DEFLATED) as archive:
            for name, contents in plain.items():
                archive.writestr(name, contents)
            archive.writestr("css/style.css", "BODY")
            archive.writestr("README.txt", "NOT A MARK")
        marks, _, remarks = read(tmp_path / "given.zip")
        assert "README.txt" in remarks
    else:
        marks, _, _ = read(written(tmp_path / "given", {f"{n}.gz": gzip.compress(c) for n, c in plain.items()}))
    assert marks == expected


def test_one_source_and_one_remark_for_a_set_of_files(tmp_path: Path) -> None:
    files: dict[str, str | bytes] = {
        f"{n:09}.xml": eu(f"{n:09}", words(f"POT {n}") if n % 4 else "<MarkFeature>Figurative</MarkFeature>")
        for n in range(1, 201)
    }
    for n in (7, 8, 9, 10, 11):
        files[f"{n:09}.xml"] = str(files[f"{n:09}.xml"])[:-300]  # cut before the end of the record
    files["style.css"] = "BODY"
    folder = written(tmp_path / "given", files)
    marks, [source], remarks = read(folder)
    assert (source.name, source.files, source.kept, source.figurative) == (str(folder), 200, 146, 49)
    assert len(marks) == 146
    lines = remarks.splitlines()
    assert len(lines) <= 7, remarks
    assert any("49 of" in line for line in lines)
    assert sum("ends in the middle" in line for line in lines) == 3
    assert any("2 more rows like these" in line for line in lines)
    assert any("style.css" in line for line in lines)


def test_the_latest_record_of_a_mark_counts_and_delete_takes_it_away(tmp_path: Path) -> None:
    first = written(
        tmp_path / "first",
        {f"{n}.xml": eu(f"01800000{n}", words(f"POT {'ABCD'[n]}")) for n in range(4)},
    )
    second = written(
        tmp_path / "second",
        {
            "1.xml": eu("018000001", words("POT BB", status="Registration expired"), operation="Update"),
            "2.xml": eu("018000002", "", operation="Delete"),
            "3.xml": eu("0000000", "", operation="Delete"),
        },
    )
    marks, sources, _ = read(first, second)
    assert [(mark.text, mark.status) for mark in marks] == [("POT A", "live"), ("POT D", "live"), ("POT BB", "dead")]
    assert [(source.kept, source.replaced) for source in sources] == [(2, 2), (1, 2)]


def test_zeros_are_no_number_and_take_nothing_away(tmp_path: Path) -> None:
    marks, _, _ = read(
        written(
            tmp_path / "given",
            {
                "a.csv": "mark,number,office\nPOT A,0000000,US\nPOT B,0000000,US\nPOT C,,US\n",
                "b.csv": "mark,number\nPOT D,0\n",
            },
        )
    )
    assert [mark.text for mark in marks] == ["POT A", "POT B", "POT C", "POT D"]


def test_application_and_registration_are_one_mark(tmp_path: Path) -> None:
    marks, _, _ = read(
        written(
            tmp_path / "given",
            {
                "a.csv": "mark,application number,registration number,office\nPOT,77,1234,XX\nVASE,1234,,XX\n",
                "b.csv": "mark,registration number,office,status\nPOT,1234,XX,Expired\nJAR,99,XX,Live\n",
            },
        )
    )
    assert sorted((mark.text, mark.number, mark.status) for mark in marks) == [
        ("JAR", "99", "live"),
        ("POT", "1234", "dead"),
        ("VASE", "1234", "unknown"),
    ]


def test_a_row_for_each_class_is_one_mark(tmp_path: Path) -> None:
    table = "mark,number,class,goods\nPOT,7,21,vases\nPOT,7,31,seeds\nJAR,8,21,jars\nPOT,7,9,\nJAR TOO,8,9,\n"
    marks, [source], _ = read(written(tmp_path / "given", {"a.csv": table}))
    assert [(mark.text, mark.classes, mark.goods) for mark in marks] == [
        ("POT", (9, 21, 31), "vases; seeds"),
        ("JAR TOO", (9,), ""),
    ]
    assert (source.rows, source.kept, source.replaced) == (5, 2, 3)


def test_the_user_says_which_column_is_which(tmp_path: Path) -> None:
    header = "Bildzeichen;Marke;Aktenzeichen;Inhaber;Kl1;Kl2;Kl3;Anmeldung;Waren"
    rows = "x;TOPFLING;30 2020 1;Topf GmbH;0;1;1;03/04/2020;Vasen\nx;MOOSLING;30 2020 2;Moos GmbH;1;0;0;13/04/2020;\n"
    folder = written(tmp_path / "given", {"a.csv": f"{header}\n{rows}"})
    with pytest.raises(InputError, match="no column of marks"):
        read(folder)
    column = ["mark=Marke", "number=Aktenzeichen", "owner=Inhaber", "classes=Kl1..Kl45", "filed=Anmeldung"]
    marks, _, remarks = read(folder, column=column)
    assert marks == [
        Mark("TOPFLING", "30 2020 1", classes=(2, 3), owner="Topf GmbH", filed="2020-04-03"),
        Mark("MOOSLING", "30 2020 2", classes=(1,), owner="Moos GmbH", filed="2020-04-13"),
    ]
    assert "columns not used: Bildzeichen, Waren" in remarks
    with pytest.raises(InputError, match="no column 'Nummer'"):
        read(folder, column=["mark=Marke", "number=Nummer"])


@pytest.mark.parametrize(
    ("name", "contents", "says"),
    [
        ("a.xml", eu("1", "<Words>POT</Words>"), "the words were not found in this layout"),
        ("a.csv", "mark,owner\nUK00003000051,A\nUK00003000052,B\nUK00003000053,C\n", "holds numbers alone"),
        ("a.jsonl", '{"mark": 1}\n{"mark": 2}\n{"mark": 3}\n', "holds numbers alone"),
        ("a.xml", "<ttab-proceedings><proceeding-entry/></ttab-proceedings>", "holds proceedings"),
        ("a.xml", '<!DOCTYPE a [<!ENTITY b "c">]><a/>', "declares an entity"),
        ("a.xml", '<!DOCTYPE a SYSTEM "http://office.example/a.dtd"><a/>', "outside the file"),
        ("a.xml", "<patents><patent/></patents>", "begins with <patents>"),
        ("a.csv", "tm_number,status_code_desc\n1,Registered\n", "without the one that holds the marks"),
    ],
)
def test_what_cannot_be_read_says_why(tmp_path: Path, name: str, contents: str, says: str) -> None:
    with pytest.raises(InputError, match=says):
        read(written(tmp_path / "given", {name: contents}))


def test_status_only_records_change_what_is_known(tmp_path: Path) -> None:
    later = USPTO_BULK[: USPTO_BULK.index("<case-file>")] + (
        "<case-file><serial-number>71000011</serial-number><case-file-header><status-code>900</status-code>"
        "</case-file-header></case-file></action-keys></file-segments></application-information>"
        "</trademark-applications-daily>"
    )
    folder = written(tmp_path / "given", {"apc1.xml": USPTO_BULK, "apc2.xml": later})
    marks, _, _ = read(folder)
    assert [(mark.text, mark.status) for mark in marks] == [
        ("MOSSLING AND THE LONG WAY HOME", "dead"),
        ("LOAMWRIGHT", "dead"),
    ]


def test_marks_past_their_day_are_told(tmp_path: Path) -> None:
    _, _, remarks = read(
        written(
            tmp_path / "given", {"a.csv": "mark,status,expires\nPOT,Registered,2001-01-31\nJAR,Registered,2999-01-01\n"}
        )
    )
    assert "the term of 1 mark ran out before the file's own date: " in remarks


def st66(*marks: str, after: str = "") -> str:
    details = f"<TradeMarkDetails>{''.join(marks)}</TradeMarkDetails>"
    return f"<Transaction><TransactionData>{details}{after}</TransactionData></Transaction>"


def trade_mark(number: int, name: str, more: str = "") -> str:
    return (
        f"<TradeMark><RegistrationOfficeCode>XX</RegistrationOfficeCode><ApplicationNumber>{number}</ApplicationNumber>"
        f"<MarkVerbalElementText>{name}</MarkVerbalElementText>{more}</TradeMark>"
    )


def owner(name: str, element: str = "Applicant") -> str:
    return f"<{element}><FreeFormatNameLine>{name}</FreeFormatNameLine></{element}>"


def test_owners_after_a_mark_are_its_own_only_where_it_stands_alone(tmp_path: Path) -> None:
    one = written(tmp_path / "one", {"a.xml": st66(trade_mark(1, "POT"), after=owner("A") + owner("B") + owner("A"))})
    two = written(tmp_path / "two", {"a.xml": st66(trade_mark(1, "POT"), trade_mark(2, "JAR"), after=owner("A"))})
    assert [mark.owner for mark in read(one)[0]] == ["A; B"]
    assert [mark.owner for mark in read(two)[0]] == ["", ""]


def test_a_holder_comes_before_who_applied(tmp_path: Path) -> None:
    more = owner("First Ltd") + owner("Now Ltd", "Holder")
    [mark] = read(written(tmp_path / "a", {"a.xml": st66(trade_mark(1, "POT", more))}))[0]
    assert mark.owner == "Now Ltd"


def test_owners_in_an_archive_of_their_own(tmp_path: Path) -> None:
    for name, files in {
        "a_marks.zip": {f"{n:09}.xml": eu(f"{n:09}", words(f"POT {n}")) for n in range(1, 100)},
        "b_owners.zip": {
            f"{n}.xml": EU_OWNERS.replace(">4711<", f">{n}<" if n != 80 else ">4711<") for n in range(1, 100)
        },
    }.items():
        with zipfile.ZipFile(tmp_path / name, "w") as archive:
            for member, contents in files.items():
                archive.writestr(member, contents)
    marks, sources, remarks = read(tmp_path)
    assert {mark.owner for mark in marks} == {"Töpferei GmbH"}
    assert (len(marks), remarks) == (99, "")
    assert [source.name for source in sources] == [str(tmp_path)]


def test_parts_change_marks_of_a_prepared_register(tmp_path: Path) -> None:
    issues, expected = LAYOUTS["Brazil"]
    folder = written(tmp_path / "given", issues)
    prepared = tmp_path / "marks.nsr"
    prepare(folder / "RM0001.xml", prepared)
    before = list(open_prepared(prepared).marks)
    assert [(mark.text, mark.status) for mark in before] == [("VASO VIVO", "pending")]
    prepare([prepared, folder / "RM0002.xml"], prepared)
    [after] = open_prepared(prepared).marks
    assert replace(after, source="", line=0) == expected[0]
    assert after.source == before[0].source


@settings(max_examples=40)
@given(
    st.lists(
        st.tuples(
            st.sampled_from(["Insert", "Update", "Delete", "wordless"]), st.integers(0, 4), st.sampled_from("AB")
        ),
        min_size=1,
        max_size=12,
    ),
    st.integers(0, 12),
)
def test_reading_at_once_or_in_two_steps_leaves_the_same_marks(records: list[tuple[str, int, str]], cut: int) -> None:
    """What a last record of each mark says counts, whether all are read together or some were prepared before."""

    def xml(part: list[tuple[str, int, str]]) -> str:
        made = []
        for operation, number, name in part:
            text = trade_mark(number, "" if operation in ("Delete", "wordless") else f"POT {name}")
            feature = "<MarkFeature>Figurative</MarkFeature></TradeMark>"
            text = text.replace("<TradeMark>", f'<TradeMark operationCode="{operation}">')
            made.append(text.replace("</TradeMark>", feature))
        return st66(*made)

    left: dict[int, str] = {}
    expected = []
    for operation, number, name in records:
        if number:
            left.pop(number, None)
            if operation in ("Insert", "Update"):
                left[number] = f"POT {name}"
        elif operation in ("Insert", "Update"):
            expected.append(f"POT {name}")  # a number of zeros is none: each stands for itself
    expected += left.values()
    with TemporaryDirectory() as name:
        folder = Path(name)
        (folder / "all.xml").write_text(xml(records))
        (folder / "first.xml").write_text(xml(records[:cut]))
        (folder / "then.xml").write_text(xml(records[cut:]))
        for sources in ([folder / "all.xml"], [folder / "first.xml", folder / "then.xml"]):
            try:
                marks = read(*sources)[0]
            except InputError:
                marks = []
            assert sorted(mark.text for mark in marks) == sorted(expected)
        try:
            prepare(folder / "first.xml", folder / "marks.nsr")
        except InputError:
            return  # it held none
        register = read_register([folder / "marks.nsr", folder / "then.xml"]) if expected else None
        if register is not None:
            assert sorted(mark.text for mark in register.marks) == sorted(expected)


def test_numbers_without_an_office_count_within_their_list(tmp_path: Path) -> None:
    folder = written(
        tmp_path / "given", {"a.csv": "mark,number\nPOT,1\nJAR,2\n", "b.csv": "mark,number\nVASE,1\nURN,2\nURNS,2\n"}
    )
    assert [mark.text for mark in read(folder)[0]] == ["POT", "JAR", "VASE", "URNS"]
