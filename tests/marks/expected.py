"""The marks that the invented records of each layout hold: {layout: ({file: contents}, marks)}."""

# ruff: noqa: E501 - a mark stands on as few lines as can be

from __future__ import annotations

from namescreen.marks import Mark

from .invented import (
    AUSTRALIA,
    BRAZIL,
    CANADA,
    CASE_FILES,
    CZECHIA,
    EU_OWNERS,
    EXCHANGE,
    FRANCE,
    GOODS,
    JAPAN,
    KOREA,
    MADRID,
    NORWAY,
    SWEDEN,
    SWITZERLAND,
    UK,
    USPTO_BULK,
    USPTO_ST66,
    USPTO_ST96,
    eu,
    words,
)  # fmt: skip

LAYOUTS: dict[str, tuple[dict[str, str | bytes], list[Mark]]] = {
    "USPTO bulk XML": (
        {"apc200401.xml": USPTO_BULK},
        [
            Mark(
                "LOAMWRIGHT", "71000011", "US", (21,), "PLANTERS AND FLOWER POTS; TRAYS", "live", "800",
                "Kiln & Co; Clay LLC", "1919-06-11", "1920-02-10", registration_number="0100011", goods_language="en",
                mark_type="word", territories=("US",),
            ),
            Mark(
                "MOSSLING AND THE LONG WAY HOME", "90000012", "US", (31,), "", "dead", "602", "", "2020-04-01",
                mark_type="word", territories=("US",),
            ),
        ],
    ),
    "USPTO record, ST.66": (
        {"sn76000021.xml": USPTO_ST66},
        [
            Mark(
                "TERRAVEIL", "76000021", "US", (21,), "Vases", "live", "702", "New Owner Inc", "2000-05-09", "2004-03-23",
                registration_number="2800021", goods_language="en", mark_type="word", territories=("US",),
            )
        ],
    ),
    "USPTO record, ST.96": (
        {"sn76000031.xml": USPTO_ST96},
        [
            Mark(
                "FERNALLOW", "76000031", "US", (21,), "Pots", "dead", "710", "Fern Works", "2000-05-09",
                registration_number="2800031", goods_language="en", mark_type="combined", territories=("US",),
            )
        ],
    ),
    "USPTO case files": (
        dict(CASE_FILES),
        [
            Mark(
                "HERBWICK", "71000041", "US", (21,), "Pots, vases", "live", "800", "Kiln Ltd", "1919-06-11", "1920-02-10",
                registration_number="0100041", goods_language="en", mark_type="word", territories=("US",),
            )
        ],
    ),
    "European Union": (
        {
            "018000001.xml": eu("018000001", words("ROSENPOT", feature="Figurative") + "<ExpiryDate>2030-04-08</ExpiryDate>"),
            "018000002.xml": eu("018000002", words("MOOSPOT", status="Application opposed"),
                                goods=GOODS.replace('"en"', '"it"')),
            "018000003.xml": eu("018000003", "<MarkFeature>Figurative</MarkFeature>"),
            "applicants.xml": EU_OWNERS,
        },
        [
            Mark(
                "ROSENPOT", "018000001", "EM", (21,), "Vases", "live", "Registered", "Töpferei GmbH", "2020-04-08",
                goods_language="en", priority="2019-11-01", expires="2030-04-08", mark_type="combined",
                territories=("EU",),
            ),
            Mark(
                "MOOSPOT", "018000002", "EM", (21,), "Vasen", "opposed", "Application opposed", "Töpferei GmbH",
                "2020-04-08", goods_language="de", priority="2019-11-01", mark_type="word", territories=("EU",),
            ),
        ],
    ),
    "UK text release": (
        {"OpenDataDomestic.txt": UK.encode("utf-16")},
        [
            Mark(
                "SPRIG | WICK", "UK00003000051", "GB", (21, 31), "", "opposed", "Opposed", "Invented Planters Ltd",
                "2017-04-13", mark_type="word", territories=("GB",),
            ),
            Mark(
                '"THE" POT', "UK00002000052", "GB", (21,), "", "dead", "Dead", "Pots Ltd", "1995-04-03", "1996-01-05",
                expires="2005-04-03", mark_type="word", territories=("GB",),
            ),
        ],
    ),
    "Canada": (
        {"2000061.xml": CANADA},
        [
            Mark(
                "LOAMWRIGHT", "2000061-00", "CA", (21,), "Planters", "pending", "Application accepted", "Loamwright Inc.",
                "2020-01-15", goods_language="en", mark_type="word", territories=("CA",),
            )
        ],
    ),
    "Switzerland": (
        {"page.xml": SWITZERLAND},
        [
            Mark("MOOSLING", "800071", "CH", registered="2019-03-14", registration_number="800071", territories=("CH",)),
        ],
    ),
    "Norway": (
        {"page.jsonl": NORWAY},
        [
            Mark(
                "FJELLING", "202000081", "NO", (21,), "", "live", "Registered", registration_number="310081",
                mark_type="word", territories=("NO",),
            )
        ],
    ),
    "France": (
        {"answer.xml": FRANCE},
        [
            Mark("POTELINE", "4700091", "FR", (21,), "", "dead", "Marque expirée", "Poterie SARL", territories=("FR",)),
        ],
    ),
    "Brazil": (
        dict(BRAZIL),
        [
            Mark(
                "VASO VIVO", "900000101", "BR", (21,), "Vasos", "live", "Concessão de registro", "OLARIA LTDA",
                "2012-04-03", "2013-05-10", goods_language="pt", priority="2012-02-05", expires="2033-05-10",
                mark_type="combined", territories=("BR",),
            )
        ],
    ),
    "Korea": (
        {"marks.xml": KOREA},
        [
            Mark(
                "POTLUME", "4020190000111", "KR", (21, 31), "", "live", "등록", "Pot Works", "2019-01-01", "2019-12-23",
                registration_number="4015000110000", territories=("KR",),
            )
        ],
    ),
    "Japan": (
        dict(JAPAN),
        [
            Mark("ローム", "2020000121", "JP", (21,), filed="2020-01-06", registration_number="6300121", territories=("JP",)),
        ],
    ),
    "Australia": (
        dict(AUSTRALIA),
        [
            Mark(
                "LOAMWRIGHT", "1000131", "AU", (21, 31), "", "live", "Registered : Registered/protected", "Loam Pty Ltd",
                territories=("AU",),
            ),
            Mark(
                "MOSSLING", "1000132", "AU", (9,), "", "dead", "Removed - Not Renewed : Renewal fee not paid",
                territories=("AU",),
            ),
        ],
    ),
    "Czechia": (
        {"a.xml": CZECHIA},
        [
            Mark(
                "HLINA", "500151", "CZ", status="dead", status_as_given="Registration expired", owner="Hlina s.r.o.",
                mark_type="combined", territories=("CZ",),
            )
        ],
    ),
    "Sweden": (
        {"a.xml": SWEDEN},
        [
            Mark("LERKRUKA NORR", "2019/161", "SE", (21,), status="live", status_as_given="Registered", territories=("SE",)),
            Mark("MOSSKRUKA", "2019/162", "SE", status="dead", status_as_given="Ended", territories=("SE",)),
        ],
    ),
    "Exchange format": (
        {"a.xml": EXCHANGE},
        [
            Mark(
                "OALA", "M 2012 00171", "RO", (21,), "Oale", "live", "Registered", "OALA SRL", registration_number="110171",
                goods_language="ro", mark_type="combined", territories=("RO",),
            )
        ],
    ),
    "International": (
        {"20200408.xml": MADRID},
        [
            Mark(
                "ALPENVASE", "1500141", "WO", (21,), "Vases", "live", "Registered", "", "2020-04-08", goods_language="en",
                priority="2019-11-01", mark_type="word", territories=("BE", "LU", "NL", "EU", "CH"),
            )
        ],
    ),
}  # fmt: skip
