"""The legal ground on which an office would refuse, by market. From memory of the acts, to be checked by an adviser; a
ground that is not listed for a market is reported as unknown here, not as absent."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from typing import NamedTuple

from ..plain_text import some
from ..territories import languages_of, law_of, members_of, territory

__all__ = [
    "ANY_LANGUAGE",
    "SURNAME_BARS",
    "TRANSLATING",
    "Ground",
    "grounds_for",
    "grounds_in",
    "is_foreign",
    "languages_of",
    "languages_under",
    "law_on",
    "laws_of",
    "of_the_trade",
    "protecting_first",
    "states_named",
    "under_law",
    "views_of",
]


_LAWS = {
    "US": {
        "sign": "Lanham Act s. 1, 2 and 45: it does not function as a mark; TMEP 1202",
        "generic": "Lanham Act s. 1, 2, 2(e)(1) and 45; TMEP 1209.01(c)",
        "descriptive": "Lanham Act s. 2(e)(1); TMEP 1209.01(b)",
        "laudatory": "Lanham Act s. 2(e)(1); TMEP 1209.03(k)",
        "foreign word": "Lanham Act s. 2(e)(1); TMEP 1209.03(g)",
        "foreign name": "Lanham Act s. 1, 2, 45 and 2(e)(1); TMEP 1209.01(c), 1209.03(g)",
        "misspelling": "Lanham Act s. 2(e)(1); TMEP 1209.03(j)",
        "acronym": "Lanham Act s. 2(e)(1); TMEP 1209.03(h)",
        "surname": "Lanham Act s. 2(e)(4): primarily merely a surname; TMEP 1211",
        "place": "Lanham Act s. 2(e)(2) and (3); TMEP 1210",
        "vulgar": "no bar to registration since Matal v. Tam (U.S. 2017) and Iancu v. Brunetti (U.S. 2019); a word "
                  "that all say may still tell no maker (TMEP 1202.04)",
        "origin": "Lanham Act s. 2(a) and 2(e)(3); TMEP 1210.08 for wines and spirits",
        "evocation": "Lanham Act s. 2(e)(3) if the goods do not come from there; s. 2(a) for wines and spirits",
        "craft": "Lanham Act s. 2(a), 2(e)(2) and (3); often a certification mark, s. 4; TMEP 1210 and 1306",
        "material": "Lanham Act s. 2(a) and 2(e)(1): deceptive or misdescriptive; TMEP 1203.02",
        "emblem": "Lanham Act s. 2(a) and 2(b); TMEP 1203 and 1204",
        "red cross": "18 U.S.C. 706; Lanham Act s. 2(a); TMEP 1205.01",
        "royal arms": "Lanham Act s. 2(a): false suggestion of a connection; TMEP 1203.03",
        "royal": "Lanham Act s. 2(a): false suggestion of a connection; TMEP 1203.03",
        "controlled": "the law of each state on names of businesses",
        "olympic": "36 U.S.C. 220506; TMEP 1205.01",
        "stem": "the FDA's review of proprietary names",
        "cure": "Lanham Act s. 2(a): deceptive; TMEP 1203.02; FDA and FTC rules on claims",
    },
    "EU": {
        "sign": "EUTMR Article 7(1)(b)",
        "generic": "EUTMR Article 7(1)(b), (c) and (d)",
        "descriptive": "EUTMR Article 7(1)(c) and (b)",
        "laudatory": "EUTMR Article 7(1)(b)",
        "foreign word": "EUTMR Article 7(1)(c) with 7(2): in any language of the Union",
        "foreign name": "EUTMR Article 7(1)(b), (c) and (d) with 7(2): in any language of the Union",
        "misspelling": "EUTMR Article 7(1)(c); Postkantoor, C-363/99",
        "acronym": "EUTMR Article 7(1)(c)",
        "surname": "usually registrable: Nichols, C-404/02",
        "place": "EUTMR Article 7(1)(c); Windsurfing Chiemsee, C-108/97",
        "vulgar": "EUTMR Article 7(1)(f): accepted principles of morality",
        "origin": "EUTMR Article 7(1)(j); Regulation (EU) 2024/1143, Article 26; in its states MarkenG s. 8(2) no. 9, "
                  "CPI L711-2 no. 9",
        "evocation": "EUTMR Article 7(1)(j) with Regulation (EU) 2024/1143, Article 26(1)(b); C-44/17, C-614/17; in "
                     "its states MarkenG s. 8(2) no. 9, CPI L711-2 no. 9",
        "craft": "EUTMR Article 7(1)(j) with Regulation (EU) 2023/2411 on craft and industrial products, under which "
                 "names can be registered since December 2025: is this one? Else Article 7(1)(c) and (g)",
        "material": "EUTMR Article 7(1)(g): deceptive",
        "emblem": "EUTMR Article 7(1)(h) and (i); Paris Convention, Article 6ter",
        "red cross": "EUTMR Article 7(1)(i); the Geneva Conventions, in the law of each state",
        "royal arms": "EUTMR Article 7(1)(g) and (h); Paris Convention, Article 6ter",
        "royal": "EUTMR Article 7(1)(g) and (i)",
        "controlled": "national law on names of businesses",
        "olympic": "no law of the Union on these words; EUTMR Article 7(1)(f), (g) or (i) only where the name calls "
                   "the movement to mind",
        "stem": "the EMA's review of names; WHA resolution 46.19",
        "cure": "EUTMR Article 7(1)(g): deceptive; Regulation (EC) 1924/2006 on health claims",
    },
    "GB": {
        "sign": "TMA 1994 s. 3(1)(b)",
        "generic": "TMA 1994 s. 3(1)(b), (c) and (d)",
        "descriptive": "TMA 1994 s. 3(1)(c) and (b)",
        "laudatory": "TMA 1994 s. 3(1)(b)",
        "foreign word": "TMA 1994 s. 3(1)(c), where buyers understand it",
        "misspelling": "TMA 1994 s. 3(1)(c)",
        "acronym": "TMA 1994 s. 3(1)(c)",
        "surname": "usually registrable: Nichols, C-404/02, still followed",
        "place": "TMA 1994 s. 3(1)(c)",
        "vulgar": "TMA 1994 s. 3(3)(a): accepted principles of morality",
        "origin": "TMA 1994 s. 3(4) and the United Kingdom's register of geographical indications",
        "evocation": "TMA 1994 s. 3(4) with the retained Regulation 1151/2012, Article 13(1)(b)",
        "craft": "no register of origins for crafts; certification and collective marks (TMA 1994 s. 49 and 50), s. "
                 "3(3)(b): deceptive; for Harris Tweed the Harris Tweed Act 1993",
        "material": "TMA 1994 s. 3(3)(b): deceptive",
        "emblem": "TMA 1994 s. 3(5), 4(2) and 57; Paris Convention, Article 6ter",
        "red cross": "Geneva Conventions Act 1957 s. 6; TMA 1994 s. 3(5)",
        "royal arms": "TMA 1994 s. 4(1) and 99: the royal arms, and anything that suggests royal authorisation",
        "royal": "TMA 1994 s. 4(1) and 99",
        "controlled": "Companies Act 2006 s. 54 and 55: sensitive words",
        "olympic": "Olympic Symbol etc. (Protection) Act 1995; TMA 1994 s. 4(5)",
        "stem": "the MHRA's review of names of medicines",
        "cure": "TMA 1994 s. 3(3)(b): deceptive; the retained Regulation 1924/2006",
    },
    "CH": {
        "sign": "MSchG, article 2(a)",
        **dict.fromkeys(("generic", "descriptive", "laudatory", "misspelling", "acronym"), "MSchG, article 2(a)"),
        "foreign word": "MSchG, article 2(a): in an official language or English",
        "surname": "usually registrable",
        "place": "MSchG, article 2(a), and (c): misleading; articles 47 to 50",
        "vulgar": "MSchG, article 2(d): public policy and morality",
        "origin": "MSchG, article 2(c) and (d), 47 to 50; the ordinance on names of origin of farm products",
        "craft": "MSchG, article 2(c), 47 to 50; the register of indications for products that are not of farms",
        "material": "MSchG, article 2(c): misleading",
        "emblem": "MSchG, article 2(d); the acts on coats of arms and on names of international organisations",
        "red cross": "MSchG, article 2(d); the act on the emblem and name of the Red Cross",
        "cure": "MSchG, article 2(c): deceptive; the acts on therapeutic products and on food",
    },
    "CA": {
        "sign": "Trademarks Act s. 32(1)(b)",
        **dict.fromkeys(("descriptive", "misspelling"), "Trademarks Act s. 12(1)(b)"),
        **dict.fromkeys(("laudatory", "acronym"), "Trademarks Act s. 12(1)(b) and 32(1)(b)"),
        "generic": "Trademarks Act s. 12(1)(b) and (c), 32(1)(b)",
        "foreign word": "Trademarks Act s. 12(1)(b) in English and French, (c) the goods' name in any language",
        "surname": "Trademarks Act s. 12(1)(a): primarily merely a name or surname",
        "place": "Trademarks Act s. 12(1)(b): place of origin",
        "vulgar": "Trademarks Act s. 9(1)(j): scandalous, obscene or immoral",
        "origin": "Trademarks Act s. 11.14 to 11.18 and 12(1)(g) to (h.1)",
        "craft": "no register of origins for crafts; certification marks (Trademarks Act s. 23 to 25), s. 12(1)(b)",
        "material": "Trademarks Act s. 12(1)(b): deceptively misdescriptive",
        "emblem": "Trademarks Act s. 9(1)(e), (i) and (i.3)",
        "red cross": "Trademarks Act s. 9(1)(f)",
        "royal arms": "Trademarks Act s. 9(1)(a) to (d)",
        "royal": "Trademarks Act s. 9(1)(d)",
        "olympic": "Olympic and Paralympic Marks Act s. 3",
        "stem": "Health Canada's review of names of medicines",
        "cure": "Trademarks Act s. 12(1)(b): deceptively misdescriptive; Food and Drugs Act s. 3, 5 and 9",
    },
    "AU": {
        "sign": "Trade Marks Act 1995 s. 41",
        **dict.fromkeys(("generic", "descriptive", "laudatory", "misspelling", "acronym", "place"),
                        "Trade Marks Act 1995 s. 41"),
        "foreign word": "Trade Marks Act 1995 s. 41, where buyers there understand it: Cantarella, [2014] HCA 48",
        "surname": "Trade Marks Act 1995 s. 41: common ones need evidence of use",
        "vulgar": "Trade Marks Act 1995 s. 42(a): scandalous",
        "origin": "Trade Marks Act 1995 s. 43 and 61; for wines the Wine Australia Act 2013",
        "craft": "no register of origins for crafts; Trade Marks Act 1995 s. 43 and 61, certification marks, part 16",
        "material": "Trade Marks Act 1995 s. 43: deceptive",
        "emblem": "Trade Marks Act 1995 s. 39 and 42(b)",
        "red cross": "Trade Marks Act 1995 s. 39 and 42(b); Geneva Conventions Act 1957 s. 15",
        "royal arms": "Trade Marks Act 1995 s. 39 and 43",
        "royal": "Trade Marks Act 1995 s. 43",
        "olympic": "Olympic Insignia Protection Act 1987",
        "cure": "Trade Marks Act 1995 s. 43: deceptive; Therapeutic Goods Act 1989",
    },
    "JP": {
        "sign": "Trademark Act, article 3(1)(v): very simple and common",
        **dict.fromkeys(("descriptive", "misspelling", "place"), "Trademark Act, article 3(1)(iii)"),
        "generic": "Trademark Act, article 3(1)(i) and (ii)",
        "laudatory": "Trademark Act, article 3(1)(iii) and (vi)",
        "foreign word": "Trademark Act, article 3(1)(iii), where buyers there understand it",
        "acronym": "Trademark Act, article 3(1)(iii) and (v)",
        "surname": "Trademark Act, article 3(1)(iv): a common surname",
        "vulgar": "Trademark Act, article 4(1)(vii): public policy",
        "origin": "Trademark Act, article 4(1)(xvi), for wines and spirits (xvii); the act on geographical indications",
        "craft": "Trademark Act, article 4(1)(xvi); regional collective marks, article 7-2",
        "material": "Trademark Act, article 4(1)(xvi): misleading",
        "emblem": "Trademark Act, article 4(1)(i) to (iii) and (v)",
        "red cross": "Trademark Act, article 4(1)(iv)",
        "olympic": "Trademark Act, article 4(1)(vi)",
        "cure": "Trademark Act, article 4(1)(xvi): misleading; the act on medicines and devices",
    },
}  # fmt: skip
_USUAL = ("US", "EU", "GB")
"""Whose laws are told where no market is stated."""
_UNKNOWN = "not known here: ask the local office"
TRANSLATING = frozenset(("US", "EU"))
"""Where a word of another language stands for what it means, whoever reads it there (TMEP 1209.03(g); EUTMR Article
7(2))."""
ANY_LANGUAGE = frozenset(("CA",))
"""Where the name of the goods is refused in whatever language (Trademarks Act s. 12(1)(c))."""
_ENGLISH_TOO = frozenset(("US", "EU", "CA", "IE", "MT", "IN", "SG", "ZA", "HK", "PH"))
"""Where English is one of several languages of the state; from memory."""
SURNAME_BARS = frozenset(("US", "CA"))
"""Where a name that is primarily merely a surname is refused."""
_POINTS = {
    "generic": "bcd", "descriptive": "cb", "laudatory": "b", "foreign word": "c", "foreign name": "bcd",
    "misspelling": "c", "acronym": "c",
    "place": "c", "vulgar": "f", "sign": "b", "material": "g",
}  # fmt: skip
"""The points of Article 4(1) of Directive (EU) 2015/2436 on which a name is refused; those that weigh most first."""
_STATES = {
    "DE": ("MarkenG s. 8(2)", {"b": "no. 1", "c": "no. 2", "d": "no. 3", "f": "no. 5", "g": "no. 4"}),
    "ES": ("Ley 17/2001, article 5(1)", {}),
    "FR": ("CPI, article L711-2", {"b": "no. 2", "c": "no. 3", "d": "no. 4", "f": "no. 7", "g": "no. 8"}),
    "IT": ("Codice della proprietà industriale, article", {"b": "13(1)", "c": "13(1)(b)", "d": "13(1)(a)",
                                                          "f": "14(1)(a)", "g": "14(1)(b)"}),
    "BX": ("Benelux Convention (BCIP), article 2.2bis(1)", {}),
    "IE": ("TMA 1996 s.", {"b": "8(1)(b)", "c": "8(1)(c)", "d": "8(1)(d)", "f": "8(3)(a)", "g": "8(3)(b)"}),
    "PL": ("Industrial Property Law, article 129(1) section 1", {"b": "no. 2", "c": "no. 3", "d": "no. 4", "f": "no. 7",
                                                                "g": "no. 12"}),
    "AT": ("MSchG s. 4(1)", {"b": "no. 3", "c": "no. 4", "d": "no. 5", "f": "no. 7", "g": "no. 8"}),
}  # fmt: skip
"""The acts of states of the Union that are known here, and where in them each point stands, if not by its letter."""
_DIRECTIVE = "its law after Directive (EU) 2015/2436, Article 4(1)"
_CASES = {
    "foreign word": ", where its buyers understand it: Matratzen Concord, C-421/04",
    "foreign name": ", where its buyers understand it: Matratzen Concord, C-421/04",
    "misspelling": "; Postkantoor, C-363/99",
    "place": "; Windsurfing Chiemsee, C-108/97",
}
_ALIKE = {"illness": "cure", "therapy": "cure", "cure and illness": "cure", "health": "cure", "misleading": "material"}
_OTHERWISE = {"evocation": "origin", "foreign name": "foreign word"}
"""The kind whose ground is told where a law has none of its own here."""


_STATE_OF = {
    **dict.fromkeys(("UK", "United Kingdom"), "GB"), **dict.fromkeys(("US", "United States"), "US"),
    "Switzerland": "CH", "Japan": "JP", "Australia": "AU", "EU": "EU", "Austria": "AT", "Belgium": "BE",
    "Bulgaria": "BG", "Croatia": "HR", "Cyprus": "CY", "Czechia": "CZ", "Denmark": "DK", "Estonia": "EE",
    "Finland": "FI", "France": "FR", "Germany": "DE", "Greece": "GR", "Hungary": "HU", "Ireland": "IE", "Italy": "IT",
    "Latvia": "LV", "Lithuania": "LT", "Luxembourg": "LU", "Malta": "MT", "Netherlands": "NL", "Poland": "PL",
    "Portugal": "PT", "Romania": "RO", "Slovakia": "SK", "Slovenia": "SI", "Spain": "ES", "Sweden": "SE",
}  # fmt: skip
"""The territories of the lists of signs whose law is told here."""
_CRAFTS_AT_HOME = {
    "DE": "MarkenG s. 126 to 139 on indications of origin, under which Solingen has an ordinance of its own; s. 8(2) "
          "no. 4 and 9",
    "FR": "CPI, articles L721-2 to L721-10 on indications of crafts and industry; L711-2",
    "IT": "Codice della proprietà industriale, articles 29 and 30 on indications of origin; 14(1)",
    "CZ": "act 452/2001 on designations of origin, which takes in crafts",
    "HU": "act XI of 1997 on marks and indications of origin, which takes in crafts",
}  # fmt: skip
"""The laws of states of the Union on names of crafts that come from there."""


class Ground(NamedTuple):
    """The law of one market (US, EU, GB or another ISO code) for one kind of finding; from memory."""

    market: str
    law: str

    @property
    def known(self) -> bool:
        """Whether the law of the market is known here."""
        return self.law != _UNKNOWN

    def to_json(self) -> dict[str, str]:
        """A plain dictionary."""
        return {"market": self.market, "law": self.law}


def laws_of(markets: Iterable[str] | None) -> tuple[str, ...]:
    """The laws that hold in `markets` (see `territories`): US, EU for its members, GB, or the code itself where the law
    is not known here; without markets the three that are."""
    if markets is None:
        return _USUAL
    return tuple(dict.fromkeys(map(law_of, markets)))


def views_of(markets: Iterable[str] | None) -> tuple[str, ...]:
    """Under which laws a name is told how it stands: those of `laws_of`, and of each state of the Union that the
    markets name its own, for a national mark there; BX for the three of the Benelux, which has one mark. The EU's is
    last then, for an EU mark."""
    if markets is None:
        return _USUAL
    codes = tuple(map(territory, markets))
    own = ("BX" if code in members_of("BX") else code for code in codes)
    return tuple(dict.fromkeys((*own, *(("EU",) if "EU" in laws_of(codes) else ()))))


def is_foreign(language: str, law: str) -> bool:
    """Whether a word of `language` is judged under `law` as one of another language: of states by what buyers there
    read; in the US and the EU whatever is translated. English is read everywhere, and is one where it is no language of
    the state."""
    if language.startswith("en-"):
        return False
    if language == "en":
        return law not in _ENGLISH_TOO and len(languages_of((law,))) > 1
    return law in TRANSLATING or language not in languages_of((law,))


def law_on(kind: str, law: str) -> str:
    """The ground under one law of `views_of`, from memory."""
    if law in _LAWS or law_of(law) != "EU":
        return grounds_for(kind, (law,))[0].law
    if kind == "surname":
        return _LAWS["EU"][kind]
    act, where = _STATES.get(law, (_DIRECTIVE, {}))
    points = some([where.get(point, f"({point})") for point in _POINTS[kind]])
    return f"{act}{'' if points.startswith('(') else ' '}{points}{_CASES.get(kind, '')}"


def grounds_in(kind: str, markets: tuple[str, ...] | None) -> tuple[Ground, ...]:
    """As `grounds_for`, of a kind that the laws of states of the Union tell apart, the law of each state by itself."""
    return tuple(Ground(law, law_on(kind, law)) for law in views_of(markets))


@lru_cache(maxsize=1 << 10)
def grounds_for(kind: str, markets: tuple[str, ...] | None) -> tuple[Ground, ...]:
    """The grounds for one kind of finding in `markets`, from memory."""
    kind = _ALIKE.get(kind, kind)
    return tuple(
        Ground(law, held.get(kind) or held.get(_OTHERWISE.get(kind, ""), _UNKNOWN))
        for law in laws_of(markets)
        for held in (_LAWS.get(law, {}),)
    )


def states_named(where: str) -> tuple[str, ...]:
    """The territories of a list of signs as codes, of their names, parted by commas; those not known here left out."""
    return tuple(_STATE_OF[one] for one in where.split(", ") if one in _STATE_OF)


def protecting_first(kind: str, markets: tuple[str, ...] | None, where: str) -> tuple[Ground, ...]:
    """As `grounds_for`, the law of the states that protect the sign first (`where`: their names, parted by commas); of
    a craft also the state's own, if it is one of the `markets`."""
    states = states_named(where)
    asked = set(map(territory, markets or ()))
    own = [Ground(one, _CRAFTS_AT_HOME[one]) for one in states if kind == "craft" and one in asked & {*_CRAFTS_AT_HOME}]
    laws = set(map(law_of, states))
    return (*own, *sorted(grounds_for(kind, markets), key=lambda one: one.market not in laws))


def languages_under(law: str, held: Iterable[str], markets: Iterable[str] | None) -> frozenset[str]:
    """Of the languages `held` those in which a name counts under one law, from memory: all in the EU (EUTMR Article
    7(2)) and the US (doctrine of foreign equivalents, TMEP 1209.03(g)); elsewhere what most buyers read, and a language
    that was asked for and is of none of the `markets`."""
    if law in TRANSLATING:
        return frozenset(held)
    elsewhere = frozenset(languages_of(markets or ())) if markets is not None else frozenset(held)
    own = languages_of((law,))
    return frozenset(one for one in held if one in own or one not in elsewhere)


def under_law(why: str, section: str, *, american: bool) -> str:
    """A reason, with the `section` of the American examining manual on it, if any, where American law counts."""
    return f"{why} (TMEP {section})" if american and section else why


def of_the_trade(*, american: bool) -> str:
    """What is said of a word for the goods beside an own word."""
    told = "anyone in the trade may use it, so "
    return f"{told}an office may ask to disclaim it (TMEP 1213)" if american else f"{told}it is not protected by itself"
