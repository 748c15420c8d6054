"""Hand-built reports: a studio's self-watering herb planter (invented), and one full of hostile text."""

from __future__ import annotations

from dataclasses import replace

import pytest

from namescreen.marks.mark import Mark
from namescreen.outcome import NotChecked
from namescreen.report.model import (
    Address,
    Addresses,
    CloseMark,
    CostItem,
    Costs,
    Distinctiveness,
    Goods,
    LanguageSearched,
    ListSearched,
    NameEntry,
    Reading,
    Report,
    Weights,
)

NASTY = (
    "a | b",
    "`code` ``more``",
    "<script>alert(1)</script>",
    "<img src=x onerror=alert(1)>",
    "[here](javascript:alert(1))",
    "![x](http://evil.example/x.png)",
    "<https://evil.example>",
    "https://evil.example/a?b=c&d",
    "www.evil.example",
    "someone@evil.example",
    "ab\u202edcba\u202c",
    "\u2066isolate\u2069",
    "line\nbreak\r\nand\ttab",
    "a\u2028b\u0085c",
    "**bold** __under__ ~~gone~~ *it*",
    "&lt;b&gt; &amp; &#124; &copy;",
    "\\| \\\\ \\",
    "# heading",
    "1. one",
    "- item",
    "+ plus",
    "> quote",
    "=cmd()",
    "---",
    "| --- |",
    "$x$ $$y$$",
    "\x00\x1b[31mred",
    "\u0301 alone",
    "زیبا\u200cسازی",
    "שלום 123 ABC",
    "日本酒|鉢",
    "a\\",
    "[^1]: foot",
    "x\u200by",
    "]]>",
    "<!-- c -->",
    "</td></tr></table>",
    "{{x}}",
    "'\"",
    "mailto:a@b.example",
    "\ufeffbom",
    "👩\u200d🌾",
    "<b",
    "&",
    "a_b_c _d_",
    "\udcff no encoding",
    "",
)


def mark(text: str, owner: str = "", status: str = "live", number: str = "", classes: tuple[int, ...] = (21,)) -> Mark:
    return Mark(
        text,
        number=number,
        office="NL" if number else "",
        classes=classes,
        goods="flower pots",
        status=status,
        owner=owner,
        source="marks.csv",
        line=7,
    )


def close(
    found: Mark,
    values: tuple[float, float, float, float],
    goods: float | None = 1.0,
    *,
    knockout: bool = False,
    reasons: tuple[str, ...] = (),
    others: tuple[Mark, ...] = (),
    marks: int = 1,
) -> CloseMark:
    related = (
        NotChecked("goods", "the list states no class for it")
        if goods is None
        else Goods(goods, ("both in class 21",) if goods > 0.5 else ("no class and no word in common",))
    )
    share = 1.0 if isinstance(related, NotChecked) else related.score
    concern = 1.0 if knockout else values[3] * (0.5 + 0.5 * share) / (2 if found.status == "dead" else 1)
    return CloseMark(found, *values, concern, related, knockout, reasons, others, marks)


def build() -> Report:
    no_readings = NotChecked("readings", "no language was given")
    fit = Addresses(
        0.82,
        (Address("domain", "thymekeeper.example"), Address("handle", "thymekeeper")),
        ("eleven letters, within every limit of the brief", "spelled as it is heard"),
    )
    covered = ("de", "fr", "nl")
    names = (
        NameEntry(
            "Herbwell",
            ("herb", "well"),
            (
                close(
                    mark("HERB WELL", "Delta Pots B.V.", number="1004211"),
                    (0.99, 1.0, 1.0, 0.99),
                    knockout=True,
                    reasons=("the same letters but for a space", "sounds the same"),
                    others=tuple(
                        mark("Herb Well", f"Well {at} Ltd", number=f"20{at:02}", classes=(30 + at,)) for at in range(12)
                    ),
                    marks=40,
                ),
                close(
                    mark("Herbelle", "Maison Verte", number="0993120"),
                    (0.81, 0.84, 0.52, 0.79),
                    0.9,
                    reasons=("begins alike: herb", "one vowel apart in sound"),
                ),
            ),
            Distinctiveness(
                "descriptive",
                0.31,
                ("herb names what the planter is for", "well says that it holds water"),
                "join herb to a word that has nothing to do with plants or water",
            ),
            (),
            fit,
            "compound of herb and well",
            "a well for herbs",
            covered,
        ),
        NameEntry(
            "Thymekeeper",
            ("thyme", "keeper"),
            (
                close(
                    mark("TIMEKEEPER", "Northern Clock Works Ltd", number="0877203", classes=(14,)),
                    (0.86, 1.0, 0.44, 0.88),
                    0.1,
                    reasons=("sounds the same", "thyme and time differ in meaning"),
                ),
                close(
                    mark("Tyme", "Tyme Garden GmbH", number="1120099", classes=(21, 31)),
                    (0.48, 0.55, 0.4, 0.52),
                    0.95,
                    reasons=("thyme sounds like tyme",),
                ),
            ),
            Distinctiveness("suggestive", 0.64, ("a play on timekeeper; thyme hints at herbs",), "none needed"),
            (
                Reading(
                    "nl",
                    "kieper",
                    "tipper, one who tips over",
                    "ordinary word",
                    1,
                    "the end of the name, as heard",
                ),
            ),
            fit,
            "compound of thyme and keeper, heard as timekeeper",
            "one who keeps thyme; timekeeper",
            covered,
        ),
        NameEntry(
            "Rootlark",
            ("root", "lark"),
            (close(mark("Rootmark"), (0.78, 0.7, 0.3, 0.66), None),),
            Distinctiveness("arbitrary", 0.83, ("root and lark together name nothing in the trade",)),
            (),
            replace(
                fit,
                score=0.9,
                items=(
                    Address("domain", "rootlark.example", "joined", "not found in the registry", False),
                    Address("domain", "rootlark.test", "joined", "registered since 2019", True),
                ),
            ),
            "compound of root and lark",
            "",
            covered,
        ),
        NameEntry(
            "Mistel",
            ("mistel",),
            (
                close(
                    mark("MISTLE", status="dead", number="0440021"),
                    (0.88, 0.97, 0.3, 0.9),
                    0.8,
                    reasons=("two letters change places", "sounds the same"),
                ),
            ),
            Distinctiveness("fanciful", 0.91, ("not a word of English",)),
            (
                Reading("de", "Mist", "dung; rubbish", "dirt", 3, "the first four letters"),
                Reading("de", "Mistel", "mistletoe", "ordinary word", 0, "the whole name"),
            ),
            fit,
            "clipped from mistletoe",
            "",
            covered,
        ),
        NameEntry(
            "Sprig & Sip",
            ("sprig", "and", "sip"),
            NotChecked("marks", "no list of marks was given"),
            NotChecked("distinctiveness", "the brief states no goods"),
            no_readings,
            NotChecked("addresses", "the brief names no ending"),
            not_checked=(NotChecked("marks", "no list of marks was given"), no_readings),
        ),
        NameEntry(
            "Verdanza",
            ("verdanza",),
            (),
            Distinctiveness("fanciful", 0.97, ("an invented word",)),
            (),
            replace(fit, score=0.7),
            "invented from the sounds of verdant",
            "",
            covered,
        ),
    )
    return Report(
        product="Self-watering herb planter",
        goods="self-watering planters and pots of stoneware for kitchen herbs",
        classes=(21,),
        markets=("NL", "DE", "GB"),
        languages=("en", "nl", "de"),
        names=names,
        lists=(
            ListSearched(
                "marks.csv",
                "ab" * 32,
                312,
                3,
                2,
                "2026-11-01",
                "2026-10-28",
                (7, 8, 9, 21, 31),
                ("NL",),
                ("line 40: no mark in this row",),
            ),
        ),
        date="2026-11-25",
        date_from="--date",
        version="0.1.0",
        command=("namescreen", "report", "brief.toml", "--date", "2026-11-25"),
        weights=Weights(3, 2, 2, 1),
        costs=Costs(
            (
                CostItem("Official fee, first class", "244", "1", "", "2026-11-02", "the office's fee page"),
                CostItem("Official fee, each further class", "27", "1", "", "2025-06-01", "the office's fee page"),
                CostItem("Adviser, an hour", "130.50", "2"),
            ),
            "600",
            "EUR",
        ),
        settings=(("closest marks kept", "50"), ("marks", "live and dead")),
        languages_searched=(LanguageSearched("de", "read aloud by its spelling rules", 30_000, 974, ("word tables",)),),
        seed=1,
    )


def hostile_report() -> Report:
    """Every text of the report is nasty in turn."""

    def at(place: int) -> str:
        return NASTY[place % len(NASTY)]

    names = tuple(
        NameEntry(
            f"{text} {place}",
            (text,),
            tuple(
                close(
                    Mark(
                        at(place + k),
                        number=at(place + k + 1),
                        office=at(k),
                        classes=(1, 45),
                        goods=at(k + 3),
                        owner=at(place + k + 2),
                        status_as_given=at(k),
                    ),
                    (0.9, 0.5, 0.2, 0.95 - k / 10),
                    1.0,
                    reasons=(at(place + k + 4), at(k + 5)),
                    others=(Mark(at(place + k + 1), number=at(k), office=at(place), owner=at(place + k + 3)),),
                    marks=2 + k,
                )
                for k in range(3)
            ),
            Distinctiveness("descriptive", 0.2, (at(place + 5),), at(place + 6)),
            (Reading(at(place + 9), at(place + 7), at(place + 8), at(place + 1), 2, at(place + 2)),),
            Addresses(0.5, (Address("domain", at(place + 3), at(place + 2), at(place + 4), True),), (at(place + 5),)),
            at(place + 6),
            at(place + 7),
            (at(place + 8),),
            (NotChecked(at(place), at(place + 1)),),
        )
        for place, text in enumerate(NASTY)
    )
    return replace(
        build(),
        product=at(2),
        goods=at(0),
        names=names,
        markets=("NL", at(0)),
        concepts=(at(1),),
        lists=tuple(ListSearched(text, "cd" * 32, 10, 0, offices=(text,), remarks=(text,)) for text in NASTY),
        settings=tuple((text, text) for text in NASTY),
        languages_searched=tuple(LanguageSearched(text, text, 1, 0, (text,)) for text in NASTY),
        command=("namescreen", "report", *NASTY),
        costs=Costs(tuple(CostItem(text, "1", "2", "EUR", "2026-01-01", text) for text in NASTY), "5", "EUR"),
    )


@pytest.fixture(scope="session")
def report() -> Report:
    return build()


@pytest.fixture(scope="session")
def hostile() -> Report:
    return hostile_report()
