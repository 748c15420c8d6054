"""Reading the open XML of trade mark offices.

Sources: WIPO Standard ST.66 (Recommendation for the processing of trademark information using XML, TM-XML),
Annex I, the data dictionary; WIPO Standard ST.96 (Recommendation for the processing of intellectual property
information using XML), Annex III, the Trademark and Common components. Element names, their nesting and the
namespaces are written from memory of the standards: the schemas themselves were not at hand, so the files
below are well-formed but were not validated. The marks are invented.
"""

from __future__ import annotations

import resource
from pathlib import Path

import pytest

from namescreen.errors import InputError
from namescreen.register import Register, read_register

ST66 = """<?xml version="1.0" encoding="UTF-8"?>
<Transaction xmlns="http://www.wipo.int/standards/XMLSchema/trademarks">
  <TransactionHeader><SenderDetails><RequestProducerDetails/></SenderDetails></TransactionHeader>
  <TradeMarkTransactionBody><TransactionContentDetails><TransactionData><TradeMarkDetails>
    <TradeMark operationCode="Insert">
      <RegistrationOfficeCode>XX</RegistrationOfficeCode>
      <ApplicationNumber>018000001</ApplicationNumber>
      <ApplicationDate>2019-05-06</ApplicationDate>
      <RegistrationNumber>018000001R</RegistrationNumber>
      <RegistrationDate>2019-11-12</RegistrationDate>
      <MarkCurrentStatusCode milestone="true">Registered</MarkCurrentStatusCode>
      <MarkCurrentStatusDate>2019-11-12</MarkCurrentStatusDate>
      <MarkFeature>Word</MarkFeature>
      <WordMarkSpecification>
        <MarkVerbalElementText languageCode="en">HERBWICK &amp; SONS</MarkVerbalElementText>
        <MarkVerbalElementText languageCode="fr">HERBWICK ET FILS</MarkVerbalElementText>
      </WordMarkSpecification>
      <PriorityDetails><Priority>
        <PriorityNumber>77</PriorityNumber><ApplicationNumber>999</ApplicationNumber>
      </Priority></PriorityDetails>
      <GoodsServicesDetails><GoodsServices><ClassDescriptionDetails>
        <ClassDescription><ClassNumber>21</ClassNumber>
          <GoodsServicesDescription languageCode="en">Planters; flower
             pots.</GoodsServicesDescription></ClassDescription>
        <ClassDescription><ClassNumber>31</ClassNumber>
          <GoodsServicesDescription languageCode="en">Herb seeds.</GoodsServicesDescription></ClassDescription>
      </ClassDescriptionDetails></GoodsServices></GoodsServicesDetails>
      <RepresentativeDetails><Representative><RepresentativeAddressBook><FormattedNameAddress><Name>
        <FormattedName><OrganizationName>Advisers LLP</OrganizationName></FormattedName>
      </Name></FormattedNameAddress></RepresentativeAddressBook></Representative></RepresentativeDetails>
      <ApplicantDetails>
        <Applicant><ApplicantAddressBook><FormattedNameAddress>
          <Name><FormattedName><FirstName>Ada</FirstName><LastName>Clay</LastName></FormattedName></Name>
          <Address><FormattedAddress><AddressCity>Nowhere</AddressCity></FormattedAddress></Address>
        </FormattedNameAddress></ApplicantAddressBook></Applicant>
        <Applicant><ApplicantAddressBook><FormattedNameAddress><Name><FreeFormatName><FreeFormatNameDetails>
          <FreeFormatNameLine>Kiln Works Ltd</FreeFormatNameLine>
        </FreeFormatNameDetails></FreeFormatName></Name></FormattedNameAddress></ApplicantAddressBook></Applicant>
      </ApplicantDetails>
    </TradeMark>
    <TradeMark operationCode="Insert">
      <ApplicationNumber>018000002</ApplicationNumber>
      <MarkFeature>Figurative</MarkFeature>
      <MarkCurrentStatusCode>Application refused</MarkCurrentStatusCode>
      <MarkImageDetails><MarkImage><MarkImageFilename>2.png</MarkImageFilename></MarkImage></MarkImageDetails>
    </TradeMark>
    <TradeMark>
      <ApplicationNumber>018000003</ApplicationNumber>
      <MarkCurrentStatusCode>Application refused</MarkCurrentStatusCode>
      <WordMarkSpecification><MarkVerbalElementText>TERRAVEIL</MarkVerbalElementText></WordMarkSpecification>
    </TradeMark>
  </TradeMarkDetails></TransactionData></TransactionContentDetails></TradeMarkTransactionBody>
</Transaction>
"""

ST96 = """<?xml version="1.0" encoding="UTF-8"?>
<tmk:TrademarkTransaction xmlns:tmk="http://www.wipo.int/standards/XMLSchema/ST96/Trademark"
    xmlns:com="http://www.wipo.int/standards/XMLSchema/ST96/Common" com:st96Version="V7_0">
  <tmk:TrademarkTransactionBody><tmk:TransactionContentBag><tmk:TransactionData><tmk:TrademarkBag>
    <tmk:Trademark com:operationCategory="Insert">
      <com:RegistrationOfficeCode>YY</com:RegistrationOfficeCode>
      <com:ApplicationNumber><com:IPOfficeCode>YY</com:IPOfficeCode>
        <com:ApplicationNumberText>2040</com:ApplicationNumberText></com:ApplicationNumber>
      <tmk:ApplicationDate>2020-02-29</tmk:ApplicationDate>
      <com:RegistrationNumber>2040R</com:RegistrationNumber>
      <com:RegistrationDate>2021-03-04Z</com:RegistrationDate>
      <tmk:MarkCurrentStatusCode>Registration cancelled</tmk:MarkCurrentStatusCode>
      <tmk:MarkRepresentation>
        <tmk:MarkFeatureCategory>Combined</tmk:MarkFeatureCategory>
        <tmk:MarkReproduction><tmk:WordMarkSpecification>
          <tmk:MarkVerbalElementText>MOSSLING</tmk:MarkVerbalElementText>
          <tmk:MarkSignificantVerbalElementText>MOSS</tmk:MarkSignificantVerbalElementText>
        </tmk:WordMarkSpecification></tmk:MarkReproduction>
      </tmk:MarkRepresentation>
      <tmk:PriorityBag><tmk:Priority><com:ApplicationNumber>
        <com:ApplicationNumberText>7</com:ApplicationNumberText></com:ApplicationNumber>
        <tmk:ApplicationDate>1999-01-01</tmk:ApplicationDate></tmk:Priority></tmk:PriorityBag>
      <tmk:GoodsServicesBag><tmk:GoodsServices>
        <tmk:GoodsServicesClassificationBag><tmk:GoodsServicesClassification>
          <tmk:ClassificationKindCode>Nice</tmk:ClassificationKindCode><tmk:ClassNumber>21</tmk:ClassNumber>
        </tmk:GoodsServicesClassification></tmk:GoodsServicesClassificationBag>
        <tmk:ClassDescriptionBag><tmk:ClassDescription><tmk:ClassNumber>21</tmk:ClassNumber>
          <tmk:GoodsServicesDescriptionText com:languageCode="en">Vases</tmk:GoodsServicesDescriptionText>
        </tmk:ClassDescription></tmk:ClassDescriptionBag>
      </tmk:GoodsServices></tmk:GoodsServicesBag>
      <tmk:ApplicantBag><tmk:Applicant><com:Contact><com:Name><com:OrganizationName>
        <com:OrganizationStandardName>Fern Street Pottery</com:OrganizationStandardName>
      </com:OrganizationName></com:Name></com:Contact></tmk:Applicant></tmk:ApplicantBag>
    </tmk:Trademark>
  </tmk:TrademarkBag></tmk:TransactionData></tmk:TransactionContentBag></tmk:TrademarkTransactionBody>
</tmk:TrademarkTransaction>
"""


def read(folder: Path, text: str | bytes, name: str = "marks.xml") -> Register:
    path = folder / name
    path.write_bytes(text.encode() if isinstance(text, str) else text)
    return read_register(path)


def test_st66(tmp_path: Path) -> None:
    register = read(tmp_path, ST66)
    first, second = register.marks
    assert (first.text, first.number, first.office) == ("HERBWICK & SONS", "018000001", "XX")
    assert (first.registration_number, first.mark_type, first.goods_language) == ("018000001R", "word", "en")
    assert (first.classes, first.goods) == ((21, 31), "Planters; flower pots.; Herb seeds.")
    assert (first.status, first.status_as_given) == ("live", "Registered")
    assert (first.owner, first.filed, first.registered) == (
        "Ada Clay; Kiln Works Ltd",
        "2019-05-06",
        "2019-11-12",
    )
    assert first.line == 5
    assert (second.text, second.number, second.status) == ("TERRAVEIL", "018000003", "dead")
    assert (register.figurative, register.left_out) == (1, 0)


def test_st96(tmp_path: Path) -> None:
    [mark] = read(tmp_path, ST96).marks
    assert (mark.text, mark.number, mark.office) == ("MOSSLING", "2040", "YY")
    assert (mark.classes, mark.goods, mark.owner) == ((21,), "Vases", "Fern Street Pottery")
    assert (mark.status, mark.filed, mark.priority, mark.registered) == (
        "dead", "2020-02-29", "1999-01-01", "2021-03-04"
    )  # fmt: skip


@pytest.mark.parametrize("encoding", ["utf-16", "iso-8859-1", "windows-1252"])
def test_the_declared_encoding_is_heeded(tmp_path: Path, encoding: str) -> None:
    text = ST66.replace("UTF-8", encoding).replace("HERBWICK", "CAFÉWICK")
    assert read(tmp_path, text.encode(encoding)).marks[0].text == "CAFÉWICK & SONS"


def test_a_wrongly_declared_encoding_keeps_what_stood_before_and_names_the_line(tmp_path: Path) -> None:
    text = ST66.replace("TERRAVEIL", "TERRAVÉIL").encode("windows-1252")
    register = read(tmp_path, text)
    assert [mark.text for mark in register.marks] == ["HERBWICK & SONS"]
    problem = next(p for p in register.problems if "encoding" in p.what)
    assert problem.line == text[: text.index(b"TERRAV")].count(b"\n") + 1
    with pytest.raises(InputError, match="encoding"):
        read(tmp_path, ST66.replace("UTF-8", "UTF-99"))


@pytest.mark.parametrize("share", [0.2, 0.5, 0.75, 0.9, 0.999])
def test_a_file_cut_in_the_middle_keeps_the_marks_before_the_cut(tmp_path: Path, share: float) -> None:
    text = ST66[: int(len(ST66) * share)]
    whole = text.count("</TradeMark>")
    if not whole:
        with pytest.raises(InputError, match="ends in the middle"):
            read(tmp_path, text)
    else:
        register = read(tmp_path, text)
        assert len(register.marks) == (2 if whole == 3 else 1)
        assert any("ends in the middle" in problem.what for problem in register.problems)


BOMB = (
    '<?xml version="1.0"?><!DOCTYPE Transaction [<!ENTITY a "ha">'
    + "".join(f'<!ENTITY {chr(98 + n)} "{f"&{chr(97 + n)};" * 10}">' for n in range(9))
    + "]><Transaction><TradeMark><WordMarkSpecification><MarkVerbalElementText>&j;</MarkVerbalElementText>"
    "</WordMarkSpecification></TradeMark></Transaction>"
)


def test_entity_expansion_is_refused_before_it_costs_anything(tmp_path: Path) -> None:
    before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    with pytest.raises(InputError, match="declares an entity"):
        read(tmp_path, BOMB)
    assert resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - before < 20_000  # kilobytes


def test_external_entities_are_refused(tmp_path: Path) -> None:
    secret = tmp_path / "secret.txt"
    secret.write_text("SECRET")
    text = (
        f'<!DOCTYPE Transaction [<!ENTITY x SYSTEM "file://{secret}">]><Transaction><TradeMark>'
        "<WordMarkSpecification><MarkVerbalElementText>&x;</MarkVerbalElementText></WordMarkSpecification>"
        "</TradeMark></Transaction>"
    )
    with pytest.raises(InputError, match="declares an entity"):
        read(tmp_path, text)


def test_elements_without_end_are_refused(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="more than 100 deep"):
        read(tmp_path, "<Transaction>" + "<TradeMark>" * 100_000)


@pytest.mark.usefixtures("garbage_collected")
def test_memory_does_not_grow_with_the_file(tmp_path: Path) -> None:
    start, end = ST66.index("    <TradeMark op"), ST66.index("  </TradeMarkDetails>")
    path = tmp_path / "large.xml"
    with path.open("w") as file:
        file.write(ST66[:start])
        for n in range(9_000):
            file.write(ST66[start:end].replace("01800000", f"{n:07}"))
        file.write(ST66[end:])
    assert path.stat().st_size > 24_000_000
    before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    register = read_register(path)
    assert len(register.marks) == 18_000
    assert register.figurative == 9_000
    assert resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - before < 30_000  # kilobytes
