"""Where marks hold: codes of offices by WIPO Standard ST.3, members by the treaties that `territory` names."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from namescreen.marks import Mark, read_marks
from namescreen.marks.territory import bites_in, bites_where, lives_on_in_uk, office_code, territories_of
from namescreen.territories import EU_MEMBERS

codes = st.sampled_from(sorted(EU_MEMBERS | {"EU", "GB", "US", "CH", "NO"}))


@pytest.mark.parametrize(
    ("office", "designated", "territories"),
    [
        ("EM", (), ("EU",)),
        ("BX", (), ("BE", "LU", "NL")),
        ("WO", ("CH", "BX", "EM"), ("CH", "BE", "LU", "NL", "EU")),
        ("WO", (), ()),
        ("GB", (), ("GB",)),
        ("UK", (), ("GB",)),
        ("us", (), ("US",)),
        ("USPTO", (), ("US",)),
        ("Germany", (), ("DE",)),
        ("", (), ()),
        ("", ("DE", "FR"), ("DE", "FR")),
        ("The moon", (), ()),
    ],
)
def test_territories(office: str, designated: tuple[str, ...], territories: tuple[str, ...]) -> None:
    assert territories_of(office, designated) == territories


@pytest.mark.parametrize(
    ("territories", "markets", "bites"),
    [
        (("EU",), ["NL"], True),
        (("EU",), ["GB"], False),
        (("DE",), ["EU"], True),
        (("BE", "LU", "NL"), ["DE", "NL"], True),
        (("US",), ["DE", "NL"], False),
        (("US",), ["us"], True),
        (("FR",), ["EM"], True),
        (("NL",), ["BX"], True),
        (("BE", "LU", "NL"), ["EU"], True),
        (("DE",), ["BX"], False),
        (("SN",), ["OA"], True),
        ((), ["DE"], None),
    ],
)
def test_where_a_mark_bites(territories: tuple[str, ...], markets: list[str], bites: bool | None) -> None:
    assert bites_in(Mark("POT", territories=territories), markets) is bites


@pytest.mark.parametrize(
    ("territories", "markets", "where"),
    [
        (("DE", "FR", "US"), ["EU"], ("DE", "FR")),
        (("EU",), ["DE", "US"], ("DE",)),
        (("EU",), ["EU", "GB"], ("EU",)),
        (("JP",), ["EU", "GB"], ()),
        ((), ["EU", "GB"], ("EU", "GB")),
    ],
)
def test_in_which_part_of_a_market_a_mark_holds(
    territories: tuple[str, ...], markets: list[str], where: tuple[str, ...]
) -> None:
    assert bites_where(Mark("POT", territories=territories), markets) == where


@pytest.mark.parametrize(
    ("registered", "bites"),
    [("2020-12-31", True), ("2021-01-01", False), ("", False)],
)
def test_an_eu_mark_registered_before_2021_lives_on_in_the_uk(registered: str, bites: bool) -> None:
    """Agreement on the withdrawal of the United Kingdom (OJ L 29, 31.1.2020), article 54(1)(a), from memory."""
    mark = Mark("POT", registered=registered, territories=("EU",))
    assert lives_on_in_uk(mark) is bites
    assert bites_in(mark, ["GB"]) is bites


def test_members() -> None:
    assert len(EU_MEMBERS) == 27
    assert "GB" not in EU_MEMBERS
    assert office_code("uspto") == "US"


@given(st.sets(codes, min_size=1), st.sets(codes, min_size=1), codes)
def test_more_markets_never_hide_a_mark(own: set[str], markets: set[str], more: str) -> None:
    mark = Mark("POT", territories=tuple(own))
    if bites_in(mark, markets):
        assert bites_in(mark, markets | {more})
    assert bites_in(mark, own)


@pytest.mark.parametrize(
    ("column", "cells", "held"),
    [
        ("territory", ("NO", "DE; FR", ""), (("NO",), ("DE", "FR"), ())),
        ("Designated countries", ("Norway, EM", "Germany; France", "US, the moon"), (("NO", "EU"), ("DE", "FR"), ())),
        ("designations", ("EU; NO", "BX", "not stated"), (("EU", "NO"), ("BE", "LU", "NL"), ())),
        ("country", ("NO", "DE, FR", ""), (("NO",), ("DE", "FR"), ())),  # an owner has one country
        ("country", ("NO", "DE", "FR"), ((), (), ())),  # these may be the owners'
    ],
)
def test_the_countries_an_international_registration_designates(
    tmp_path: Path, column: str, cells: tuple[str, ...], held: tuple[tuple[str, ...], ...]
) -> None:
    path = tmp_path / "marks.csv"
    rows = "".join(f'POT{"abc"[at]},WO,"{cell}"\n' for at, cell in enumerate(cells))
    path.write_text(f"mark,office,{column}\n{rows}", "utf-8")
    found = {mark.text: mark.territories for mark in read_marks([path])[0]}
    assert tuple(found.values()) == held


def test_a_territory_is_the_office_where_no_column_is(tmp_path: Path) -> None:
    path = tmp_path / "marks.csv"
    path.write_text("mark,territory\nPOT,DE\n", "utf-8")
    (mark,) = read_marks([path])[0]
    assert (mark.office, mark.territories) == ("DE", ("DE",))


def test_where_a_mark_holds_counts_though_no_column_is_the_office(tmp_path: Path) -> None:
    path = tmp_path / "marks.csv"
    path.write_text("mark,territories\nPOT,DE; FR\n", "utf-8")
    (mark,) = read_marks([path])[0]
    assert (mark.office, mark.territories) == ("", ("DE", "FR"))


def test_columns_not_used_are_told_with_a_field_that_lacks_one(tmp_path: Path) -> None:
    path = tmp_path / "marks.csv"
    path.write_text("mark,office,goods,shade,country\nPOT,DE,pots,red,IT\n", "utf-8")
    (told,) = read_marks([path])[-1]
    assert told.what == "columns not used: shade, country"
    assert "goods" not in told.remedy
    assert "territories" in told.remedy
