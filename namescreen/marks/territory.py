"""Where a mark holds: the countries in which its register gives rights (see `namescreen.territories`).

Codes of offices are those of WIPO Standard ST.3.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache

from ..expressions import expression
from ..territories import members_of, territory
from .mark import Mark

__all__ = [
    "INTERNATIONAL", "OFFICES", "UK_LEFT", "bites_in", "bites_where", "could_be_filed_again_in_uk", "held_in",
    "lives_on_in_uk", "office_code", "territories_of",
]  # fmt: skip

_WIDER = {"EM": ("EU",), "EU": ("EU",), **{code: members_of(code) for code in ("BX", "OA")}}
OFFICES = {
    "AU": "IP Australia", "BR": "INPI of Brazil", "BX": "Benelux office", "CA": "CIPO of Canada",
    "CH": "IGE-IPI of Switzerland", "CZ": "UPV of Czechia", "EM": "EUIPO", "FR": "INPI of France", "GB": "UK IPO",
    "JP": "JPO", "KR": "Korea's office", "NO": "Patentstyret of Norway", "NZ": "IPONZ", "RO": "OSIM of Romania",
    "SE": "PRV of Sweden", "US": "USPTO", "WO": "WIPO",
}  # fmt: skip
"""Names of the offices whose files are known."""
_BY_DESIGNATION = frozenset({"WO", "IB", "AP", "EA", "GC"})
"""Offices whose marks hold only in the designated countries."""
INTERNATIONAL = ("WO", "IB")
"""Codes of the International Bureau, whose registrations are extended to countries, at first or later."""
_NAMES = {
    "uspto": "US", "united states": "US", "united states of america": "US", "usa": "US",
    "euipo": "EM", "ohim": "EM", "european union": "EM", "eutm": "EM", "ctm": "EM",
    "wipo": "WO", "madrid": "WO", "international": "WO",
    "uk": "GB", "ukipo": "GB", "uk ipo": "GB", "united kingdom": "GB", "great britain": "GB",
    "boip": "BX", "benelux": "BX", "dpma": "DE", "germany": "DE", "cipo": "CA", "canada": "CA", "jpo": "JP",
    "japan": "JP", "kipo": "KR", "ip australia": "AU", "australia": "AU", "iponz": "NZ", "new zealand": "NZ",
    "france": "FR", "spain": "ES", "oepm": "ES", "italy": "IT", "uibm": "IT", "switzerland": "CH", "ige": "CH",
    "ipi": "CH", "brazil": "BR", "oapi": "OA", "aripo": "AP",
    "austria": "AT", "belgium": "BE", "bulgaria": "BG", "china": "CN", "croatia": "HR", "cyprus": "CY", "czechia": "CZ",
    "czech republic": "CZ", "denmark": "DK", "estonia": "EE", "finland": "FI", "greece": "GR", "hungary": "HU",
    "iceland": "IS", "india": "IN", "ireland": "IE", "korea": "KR", "republic of korea": "KR", "south korea": "KR",
    "latvia": "LV", "liechtenstein": "LI", "lithuania": "LT", "luxembourg": "LU", "malta": "MT", "mexico": "MX",
    "netherlands": "NL", "norway": "NO", "poland": "PL", "portugal": "PT", "romania": "RO", "singapore": "SG",
    "slovakia": "SK", "slovenia": "SI", "sweden": "SE", "turkey": "TR", "türkiye": "TR", "ukraine": "UA",
}  # fmt: skip

UK_LEFT = "2021-01-01"
"""The day from which new marks of the European Union say nothing of the United Kingdom."""

_USER_ASSIGNED = expression("AA|Q[M-Z]|X[A-Z]|ZZ")
"""Codes that ISO 3166-1 leaves to its users: they name no country, so such a mark may hold anywhere."""


@lru_cache(maxsize=4096)
def office_code(office: str) -> str:
    """The ST.3 code of an office given as a code or by its usual name; "" if it is not known."""
    plain = " ".join(office.casefold().replace(".", "").split())
    if plain in _NAMES:
        return _NAMES[plain]
    code = plain.upper()
    return code if re.fullmatch("[A-Z]{2}", code) and not _USER_ASSIGNED.fullmatch(code) else ""


@lru_cache(maxsize=65536)
def territories_of(office: str, designated: tuple[str, ...] = ()) -> tuple[str, ...]:
    """The territories of a mark of an office, "EU" for the whole European Union; () if they are not known.

    `designated` are the offices that an international or regional mark was extended to, or where a mark holds whose
    office is not known.
    """
    code = office_code(office)
    if not code or code in _BY_DESIGNATION:
        return tuple(dict.fromkeys(one for other in designated for one in _WIDER.get(other, (other,))))
    return _WIDER.get(code, (code,) if code else ())


def lives_on_in_uk(mark: Mark) -> bool:
    """Whether a UK mark came from a mark of the European Union: one registered before 2021 did (Agreement on the
    withdrawal of the United Kingdom, article 54(1)(a); UK Trade Marks Act 1994, schedule 2A; from memory)."""
    return "EU" in mark.territories and "" < mark.registered < UK_LEFT


def could_be_filed_again_in_uk(mark: Mark) -> bool:
    """Whether a mark was applied for in the European Union before 2021 and not registered then: until 2021-09-30 its
    owner could apply in the United Kingdom with the same date (the same agreement, article 59; from memory)."""
    return "EU" in mark.territories and "" < mark.filed < UK_LEFT and not "" < mark.registered < UK_LEFT


def bites_in(mark: Mark, markets: Iterable[str]) -> bool | None:
    """Whether a mark holds in any of `markets`, codes of countries or unions; None if where it holds is not stated.

    A mark of the European Union holds in each of its members, one that `lives_on_in_uk` in the United Kingdom too, and
    a mark of a member in the market that its union is: there it is an earlier national right.
    """
    if not mark.territories:
        return None
    territories = (*mark.territories, "GB") if lives_on_in_uk(mark) else mark.territories
    return not _expanded(territories).isdisjoint(_expanded(tuple(map(territory, markets))))


def held_in(mark: Mark, markets: Iterable[str]) -> tuple[str, ...]:
    """Those of `markets` in which a mark holds; all of them where that is not known."""
    return tuple(market for market in markets if bites_in(mark, (market,)) is not False)


def bites_where(mark: Mark, markets: Iterable[str]) -> tuple[str, ...]:
    """In which of `markets` a mark holds, the part of a market where it holds in that alone: DE of the market EU for a
    German mark; all the markets if where it holds is not stated."""
    asked = tuple(map(territory, markets))
    if not mark.territories:
        return asked
    held = (*mark.territories, "GB") if lives_on_in_uk(mark) else mark.territories
    common = (
        one if one in _expanded((other,)) else other
        for one in asked
        for other in held
        if one in _expanded((other,)) or other in _expanded((one,))
    )
    return tuple(dict.fromkeys(common))


@lru_cache(maxsize=4096)
def _expanded(territories: tuple[str, ...]) -> frozenset[str]:
    return frozenset(territories).union(*(members_of(code) for code in territories))
