"""Real records of offices, where they are at hand beside the checkout: every one of them, field by field.

The records are public data of the offices. What is compared here is read from them a second time and in another way, by
regular expressions over the text: nothing of them is kept in this repository.
"""

from __future__ import annotations

import html
import re
from pathlib import Path

import pytest

from namescreen.marks import Mark, read_marks

pytestmark = pytest.mark.shared


@pytest.fixture
def registers(shared_folder: Path) -> Path:
    folder = shared_folder / "registers"
    if not folder.is_dir():
        pytest.skip("needs the offices' records in ../shared/registers beside the checkout")
    return folder


def one(text: str, *elements: str) -> str:
    """The text of the first of these elements that is not empty."""
    for element in elements:
        found = re.search(rf"<(?:\w+:)?{element}(?:\s[^>]*)?>([^<]+)</", text)
        if found:
            return " ".join(html.unescape(found[1]).split())
    return ""


def day(text: str) -> str:
    text = text.replace("-", "")[:8]
    return f"{text[:4]}-{text[4:6]}-{text[6:]}" if text.strip("0") else ""


def by_number(path: Path) -> dict[str, Mark]:
    marks, _, _ = read_marks([path])
    return {mark.number: mark for mark in marks}


def test_every_record_of_the_european_union(registers: Path) -> None:
    read = by_number(registers / "euipo")
    without_words = 0
    for path in sorted((registers / "euipo").glob("*.xml")):
        whole = path.read_text("utf-8")
        text = re.sub(r"<(OppositionDetails|PublicationDetails|MarkRecordDetails)>.*?</\1>", "", whole, flags=re.DOTALL)
        number = one(text, "ApplicationNumber")
        if not one(text, "MarkVerbalElementText"):
            without_words += 1
            assert number not in read
            continue
        mark = read[number]
        assert mark.text == one(text, "MarkVerbalElementText")
        assert mark.office == "EM"
        assert mark.territories == ("EU",)
        assert mark.classes == tuple(sorted({int(n) for n in re.findall(r"<ClassNumber>(\d+)<", text)}))
        assert (mark.filed, mark.registered, mark.expires) == tuple(
            one(text, name) for name in ("ApplicationDate", "RegistrationDate", "ExpiryDate")
        )
        given = one(text, "MarkCurrentStatusCode")
        assert mark.status_as_given == given
        assert mark.status == (
            "live" if given == "Registered" else "opposed" if given.endswith("opposed")
            else "dead" if re.search("refused|withdrawn", given) else "pending"
        )  # fmt: skip
        language = "en" if 'languageCode="en"' in text else one(text, "ApplicationLanguageCode")
        goods = re.findall(rf'<GoodsServicesDescription languageCode="{language}">([^<]*)<', text)
        assert mark.goods_language == language
        assert mark.goods == "; ".join(dict.fromkeys(" ".join(html.unescape(part).split()) for part in goods))
    assert len(read) + without_words == len(list((registers / "euipo").glob("*.xml")))


def test_every_record_of_a_daily_file_of_the_united_states(registers: Path) -> None:
    import zipfile

    with zipfile.ZipFile(registers / "uspto-bulk/seed.zip") as archive:
        text = archive.read("seed.xml").decode()
    records = re.findall(r"<case-file>.*?</case-file>", text, re.DOTALL)
    read = by_number(registers / "uspto-bulk/seed.zip")
    assert len(read) == len(records) > 0
    for record in records:
        mark = read[one(record, "serial-number")]
        header = record[record.index("<case-file-header>") : record.index("</case-file-header>")]
        assert mark.text == one(header, "mark-identification")
        assert mark.registration_number == one(record, "registration-number").replace("0000000", "")
        assert mark.status_as_given == one(header, "status-code")
        assert mark.status == ("pending" if one(header, "status-code").startswith("6") else "live")
        assert (mark.filed, mark.registered) == (
            day(one(header, "filing-date")), day(one(header, "registration-date")),
        )  # fmt: skip
        codes = re.findall(r"<international-code>(\d+)<", record)
        assert mark.classes == tuple(sorted({int(code) for code in codes}))
        parties = re.findall(r"<party-type>(\d+)</party-type>.*?<party-name>([^<]+)<", record, re.DOTALL)
        newest = max(int(kind) for kind, _ in parties)
        assert mark.owner == "; ".join(
            dict.fromkeys(html.unescape(name) for kind, name in parties if int(kind) == newest)
        )
        assert mark.goods
        assert not re.search(r"[][*]|\(\(|\)\)", mark.goods)


def test_the_case_files_are_those_of_the_daily_file(registers: Path) -> None:
    """The tables were made of the same records: both readings give the same marks."""
    bulk, tables = by_number(registers / "uspto-bulk/seed.zip"), by_number(registers / "uspto-case-files")
    assert bulk.keys() == tables.keys()
    for number, mark in bulk.items():
        other = tables[number]
        for field in set(Mark.__dataclass_fields__) - {"source", "line"}:
            assert getattr(mark, field) == getattr(other, field), (number, field)


def test_one_record_of_the_united_states_in_each_of_its_forms(registers: Path) -> None:
    folder = registers / "uspto-record"
    forms = [by_number(path) for path in sorted(folder.iterdir())]
    assert len(forms) >= 3
    [first, *others] = [next(iter(form.values())) for form in forms]
    for mark in others:
        for field in ("text", "number", "registration_number", "office", "classes", "goods", "status", "owner", "filed",
                      "registered", "mark_type", "territories"):  # fmt: skip
            assert getattr(mark, field) == getattr(first, field), field
    text = (folder / "sn76044902.xml").read_text("utf-8")
    assert first.text == one(text, "MarkVerbalElementText")
    assert first.classes == tuple(sorted({int(n) for n in re.findall(r"<ClassNumber>(\d+)<", text)}))
    names = re.findall(
        r"<FreeFormatNameLine[^>]*>([^<]+)</FreeFormatNameLine>", text[text.index("<ApplicantDetails>") :]
    )
    assert first.owner == names[0]  # the office tells its owners from the latest to the first


def test_the_exchange_format_and_the_text_release(registers: Path) -> None:
    text = (registers / "ukipo/UK00003289573-exchange-st66.xml").read_text("utf-8")
    mark = by_number(registers / "ukipo/UK00003289573-exchange-st66.xml")[one(text, "ApplicationNumber")]
    assert (mark.text, mark.office, mark.status_as_given) == tuple(
        one(text, name) for name in ("MarkVerbalElementText", "RegistrationOfficeCode", "MarkCurrentStatusCode")
    )
    assert (mark.filed, mark.registered, mark.expires) == tuple(
        one(text, name) for name in ("ApplicationDate", "RegistrationDate", "ExpiryDate")
    )
    release = by_number(registers / "ukipo/OpenDataDomestic-layout.txt")
    for field in ("text", "number", "office", "classes", "status", "filed", "registered", "mark_type", "territories"):
        assert getattr(release[mark.number], field) == getattr(mark, field), field
    assert {mark.status for mark in release.values()} == {"live", "dead", "opposed"}


def test_canada_korea_and_brazil(registers: Path) -> None:
    text = (registers / "canada/1057613-00-rebuilt.xml").read_text("utf-8")
    [mark] = by_number(registers / "canada").values()  # the other record is a picture
    assert mark.text == one(text, "MarkSignificantVerbalElementText")
    assert mark.owner == re.findall(r"<com:LegalEntityName>([^<]+)<", text)[-1]
    text = (registers / "korea/TradeMarkInfo.xml").read_text("utf-8")
    [mark] = by_number(registers / "korea/TradeMarkInfo.xml").values()
    assert (mark.text, mark.number, mark.registration_number, mark.owner) == tuple(
        one(text, name) for name in ("Title", "ApplicationNumber", "RegistrationNumber", "RegistrationRightholderName")
    )
    assert (mark.filed, mark.registered, mark.status) == (
        day(one(text, "ApplicationDate")), day(one(text, "RegistrationDate")), "live",
    )  # fmt: skip
    text = (registers / "brazil/RM2240-excerpt.xml").read_text("utf-8")
    read = by_number(registers / "brazil/RM2240-excerpt.xml")
    records = re.findall(r"<processo .*?</processo>", text, re.DOTALL)
    assert len(read) == len(records)
    for record in records:
        mark = read[re.search(r'numero="(\d+)"', record)[1]]  # type: ignore[index]
        assert mark.text == one(record, "nome")
        assert mark.classes == (int(re.search(r'<classe-nice codigo="(\d+)"', record)[1]),)  # type: ignore[index]
        assert mark.filed == "-".join(reversed(re.search(r'data-deposito="([\d/]+)"', record)[1].split("/")))  # type: ignore[index]
        assert (mark.status, mark.office, mark.goods_language) == ("pending", "BR", "pt")
