"""Where marks hold: codes of offices by WIPO Standard ST.3, members by the treaties that `territory` names."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from namescreen.marks import Mark
from namescreen.marks.territory import bites_in, lives_on_in_uk, office_code, territories_of
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
