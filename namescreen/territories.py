"""Territories in which marks hold: countries, and unions whose mark is one for all their members.

Codes of countries are those of ISO 3166-1 alpha-2, codes of unions those of WIPO Standard ST.3, save "EU" for the
European Union, whose office is EM there. The members of the European Union are those since 2020-02-01 (Article 52 of
its treaty, less the United Kingdom); of the Benelux office, those of the Benelux Convention on Intellectual Property;
of OAPI, those of the Bangui Agreement; of ARIPO, those of the Banjul Protocol (these two from memory). Languages are
those that most buyers read, from memory, after each state's official languages and common practice.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache

__all__ = ["COUNTRIES", "EU_MEMBERS", "UNIONS", "domain_endings", "languages_of", "law_of", "members_of", "spoken_in",
           "territory", "understood_in"]  # fmt: skip

COUNTRIES = frozenset((
    "AD AE AF AG AI AL AM AO AQ AR AS AT AU AW AX AZ BA BB BD BE BF BG BH BI BJ BL BM BN BO BQ BR BS BT BV BW BY BZ "
    "CA CC CD CF CG CH CI CK CL CM CN CO CR CU CV CW CX CY CZ DE DJ DK DM DO DZ EC EE EG EH ER ES ET FI FJ FK FM FO "
    "FR GA GB GD GE GF GG GH GI GL GM GN GP GQ GR GS GT GU GW GY HK HM HN HR HT HU ID IE IL IM IN IO IQ IR IS IT JE "
    "JM JO JP KE KG KH KI KM KN KP KR KW KY KZ LA LB LC LI LK LR LS LT LU LV LY MA MC MD ME MF MG MH MK ML MM MN MO "
    "MP MQ MR MS MT MU MV MW MX MY MZ NA NC NE NF NG NI NL NO NP NR NU NZ OM PA PE PF PG PH PK PL PM PN PR PS PT PW "
    "PY QA RE RO RS RU RW SA SB SC SD SE SG SH SI SJ SK SL SM SN SO SR SS ST SV SX SY SZ TC TD TF TG TH TJ TK TL TM "
    "TN TO TR TT TV TW TZ UA UG UM US UY UZ VA VC VE VG VI VN VU WF WS YE YT ZA ZM ZW XK"
).split())
"""The codes of ISO 3166-1 alpha-2, from memory, and XK, by which Kosovo goes."""

EU_MEMBERS = frozenset("AT BE BG CY CZ DE DK EE ES FI FR GR HR HU IE IT LT LU LV MT NL PL PT RO SE SI SK".split())
"""The member states of the European Union, in which an EU trade mark holds."""

UNIONS = {
    "EU": ("European Union", tuple(sorted(EU_MEMBERS))),
    "BX": ("Benelux", ("BE", "LU", "NL")),
    "OA": ("OAPI", tuple("BF BJ CF CG CI CM GA GN GQ GW KM ML MR NE SN TD TG".split())),
    "AP": ("ARIPO", tuple("BW CV GM LR LS MW MZ NA ST SZ TZ UG ZW".split())),
}
"""What a union is called, and its members. A mark of ARIPO holds only in the members it designates."""

_LANGUAGES = {
    "US": "en es", "GB": "en", "IE": "en", "AU": "en", "NZ": "en", "CA": "en fr", "ZA": "en", "IN": "en hi",
    "SG": "en zh",
    "DE": "de", "AT": "de", "CH": "de fr it", "LI": "de", "LU": "fr de", "FR": "fr", "BE": "nl fr de", "NL": "nl",
    "IT": "it", "ES": "es", "PT": "pt", "BR": "pt", "MX": "es", "AR": "es", "CL": "es", "CO": "es", "PE": "es",
    "SE": "sv", "DK": "da", "NO": "nb", "FI": "fi sv", "IS": "is", "PL": "pl", "CZ": "cs", "SK": "sk", "HU": "hu",
    "RO": "ro", "BG": "bg", "GR": "el", "CY": "el", "HR": "hr", "SI": "sl", "EE": "et", "LV": "lv", "LT": "lt",
    "MT": "mt en",
    "TR": "tr", "UA": "uk", "RU": "ru", "IL": "he", "JP": "ja", "KR": "ko", "CN": "zh", "ID": "id",
    "AE": "ar en", "SA": "ar",
    "OA": "fr en es pt", "AP": "en pt",
}  # fmt: skip


_SPOKEN_TOO = {
    "GB": "cy gd", "IE": "ga", "ES": "ca gl eu", "NL": "fy", "LU": "lb", "CH": "rm", "NZ": "mi", "ZA": "zu xh af",
}  # fmt: skip
"""Further languages that are official in a country or a large part of it; from memory."""

_ENGLISH_KNOWN = frozenset(("DK", "FI", "IS", "NL", "NO", "SE"))
"""Countries where most buyers understand English, which is none of their own languages (General Court, T-435/07, New
Look, for the Scandinavian countries, the Netherlands and Finland; from memory)."""

_MINORITIES = frozenset(("US", "IN", "SG", "AE"))
"""Markets whose further languages are those of a large minority."""


def territory(code: str) -> str:
    """The code that a territory goes by here, of its code in ISO 3166-1 or ST.3: EM is EU, UK is GB."""
    plain = code.upper()
    return {"EM": "EU", "UK": "GB"}.get(plain, plain)


def members_of(code: str) -> tuple[str, ...]:
    """The members of a union, in the order of their codes; () for a country."""
    return UNIONS[code][1] if code in UNIONS else ()


def law_of(code: str) -> str:
    """Under whose law on what can be a mark a territory falls: "EU" for the Union, its members and the Benelux, whose
    laws are harmonised (Directive (EU) 2015/2436); else its own code."""
    own = territory(code)
    return "EU" if own in EU_MEMBERS or own == "BX" else own


_SHOPS_UNDER = {
    "GB": "co.uk", "AU": "com.au", "NZ": "co.nz", "ZA": "co.za", "BR": "com.br", "TR": "com.tr", "IL": "co.il",
    "OA": "", "AP": "", "US": "", "XK": "",
}  # fmt: skip
"""The domain endings of shops where they are not the country's own code, "" where there is none or few use it; common
practice, no source."""


def domain_endings(markets: Iterable[str]) -> tuple[str, ...]:
    """The domain endings of a shop that sells in `markets`: com, and each country's own (RFC 1591, section 2: those of
    countries are their codes in ISO 3166-1), of a union its own or those of its members."""
    owns = (territory(code) for code in markets)
    places = (place for own in owns for place in (members_of(own) if own == "BX" else (own,)))
    return tuple(dict.fromkeys(filter(None, ("com", *(_SHOPS_UNDER.get(one, one.lower()) for one in places)))))


@lru_cache(maxsize=256)
def _read_in(code: str) -> tuple[str, ...]:
    own = territory(code)
    if own in _LANGUAGES or own not in UNIONS:
        return tuple(_LANGUAGES.get(own, "en").split())
    return tuple(language for member in members_of(own) for language in _LANGUAGES[member].split())


def understood_in(market: str, language: str) -> bool:
    """Whether most buyers of a country, or of a member of a union, understand a language (BCP 47): one of their own, or
    English where it is widely known."""
    places = members_of(territory(market)) or (territory(market),)
    return any(
        language in _read_in(place)[: 1 if place in _MINORITIES else None]
        or (language == "en" and place in _ENGLISH_KNOWN)
        for place in places
    )


def languages_of(markets: Iterable[str], *, main: bool = False) -> tuple[str, ...]:
    """The languages that most buyers of `markets` read (BCP 47), English first; of a union those of all its members;
    English alone where none is listed. With `main` without those of a large minority (Spanish in the US): who states
    languages has thought of it."""
    return _languages_of(tuple(markets), main)


def spoken_in(markets: Iterable[str]) -> tuple[str, ...]:
    """All languages of `markets` (BCP 47): those of `languages_of`, then the further ones of each."""
    codes = [place for code in markets for place in (members_of(territory(code)) or (territory(code),))]
    further = (language for code in codes for language in _SPOKEN_TOO.get(code, "").split())
    return tuple(dict.fromkeys((*languages_of(markets), *further)))


@lru_cache(maxsize=1 << 10)
def _languages_of(markets: tuple[str, ...], main: bool) -> tuple[str, ...]:
    read = ((code, _read_in(code)) for code in markets)
    kept = (told[:1] if main and code.upper() in _MINORITIES else told for code, told in read)
    return tuple(dict.fromkeys(("en", *(language for told in kept for language in told))))
