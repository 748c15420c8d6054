"""What the law of each market says about earlier marks, in plain words: one page, from memory, never a ruling.

Offices differ in one thing that decides what a close mark means: some refuse a name because of it, others leave it to
the mark's owner to object within a set time. The sections were cited from memory by the project; the current texts of
the offices, and a qualified adviser, decide.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from ..plain_text import some
from ..territories import EU_MEMBERS, law_of, territory

__all__ = [
    *("EU_OR_STATE", "UNDESCRIBED", "Practice", "everywhere", "objection", "on_added_words", "on_citing_offices"),
    *("on_translation", "on_weak_marks", "practices", "unused_years"),
]

_FIVE = (
    "from five years after registration, its owner has to prove use when asked to: in an opposition, or when the "
    "mark is attacked"
)
_FIVE_LATER = "of a national mark, " + _FIVE.replace(
    "registration,", "the end of the time to oppose (of an EU mark from registration),"
)
_FIVE_LATER_ALONE = _FIVE.replace("registration,", "the end of the time to oppose,")
_THREE = "after three years without use anyone may ask to end a registration, and its owner then has to show use"


class Practice(NamedTuple):
    """How one office, or a group of offices, deals with earlier marks.

    `markets` are its territories (see `namescreen.territories`). `refuses` says whether the office itself refuses a
    name because of an earlier mark; else the owner of the mark has to oppose it. `window` is the time for that.
    `notifies` says that it tells the owner of a name that comes near, who then seldom misses it.
    `unused_years` is the time after which a mark that is not used can be attacked, and `owner_shows` says whether its
    owner then has to show use, else whoever attacks it that there was none.
    """

    markets: tuple[str, ...]
    office: str
    refuses: bool
    earlier_marks: str
    window: str
    unused_years: int
    unused: str
    source: str
    owner_shows: bool = True
    notifies: bool = False


_PRACTICES = (
    Practice(
        ("EU", *sorted(EU_MEMBERS)), "European Union (EU marks)", False,
        "an EU mark is not refused over them; owners oppose. It holds in every state of the Union, and an earlier mark "
        "of any one state can stop it. Whether that national mark is valid is not asked in an opposition: it has to be "
        "attacked in its own state",
        "three months from publication", 5, _FIVE,
        "EU Regulation 2017/1001, articles 8, 18, 46, 47; Court of Justice, C-196/11 P, F1-Live",
    ),
    Practice(
        ("DE",), "Germany", False, "does not refuse; owners oppose",
        "three months from publication of the registration", 5, _FIVE_LATER,
        "MarkenG, sections 9, 26, 42, 43; company names: 5",
    ),
    Practice(
        ("FR",), "France", False, "does not refuse; owners oppose", "two months from publication", 5, _FIVE,
        "CPI, articles L711-3, L712-4, L714-5",
    ),
    Practice(
        ("BX", "BE", "NL", "LU"), "Benelux", False, "does not refuse; owners oppose", "two months from publication", 5,
        _FIVE, "Benelux Convention, articles 2.2ter, 2.14, 2.16bis",
    ),
    Practice(
        ("ES",), "Spain", False, "tells owners of earlier marks, and does not refuse; owners oppose",
        "two months from publication", 5, _FIVE, "Ley 17/2001, articles 6, 18, 19, 39", notifies=True,
    ),
    Practice(
        ("IT",), "Italy", False, "does not refuse; owners oppose", "three months from publication", 5, _FIVE,
        "CPI, articles 12, 24, 176",
    ),
    Practice(
        ("PL",), "Poland", False, "does not refuse; owners oppose", "three months from publication", 5, _FIVE,
        "Industrial Property Law of 2000, articles 132(1), 152(17), 169",
    ),
    Practice(
        ("CZ", "SK"), "Czechia, Slovakia", False,
        "refuse only over an identical earlier mark for identical goods; else owners oppose",
        "three months from publication", 5, _FIVE,
        "Czech act 441/2003, sections 7, 25; Slovak act 506/2009, sections 7, 30",
    ),
    Practice(
        ("DK",), "Denmark", False, "searches, tells you of earlier marks, and does not refuse; owners oppose",
        "two months from publication", 5, _FIVE, "Varemærkeloven, sections 15, 19, 25", notifies=True,
    ),
    Practice(
        ("AT",), "Austria", False, "points out similar marks, and does not refuse; owners oppose",
        "three months from publication of the registration", 5, _FIVE_LATER, "MSchG, sections 21, 29a, 33a",
    ),
    Practice(
        ("IE",), "Ireland", True,
        "examines, and refuses a national mark over an earlier Irish, EU or international mark that is identical or "
        "confusingly similar; its owner may consent",
        "three months from publication", 5, _FIVE, "Trade Marks Act 1996, sections 10, 42, 43, 51",
    ),
    Practice(
        ("CY",), "Cyprus", True, "examines, and refuses a national mark over a similar earlier one",
        "two months from publication", 5, _FIVE, "Trade Marks Law, chapter 268",
    ),
    Practice(
        ("FI", "PT", "SE"), "Finland, Portugal, Sweden", True,
        "examine, and refuse a national mark over a similar earlier one",
        "two to three months, by country", 5, _FIVE,
        "Finland: Trademarks Act 544/2019; Sweden: Varumärkeslag (2010:1877), chapter 2; Portugal: Código da "
        "Propriedade Industrial (2018), article 232",
    ),
    Practice(
        ("MT",), "Malta", False, "searches, tells you and then the owners of earlier Maltese marks, and does not "
        "refuse; owners oppose", "60 working days from publication", 5, _FIVE,
        "Trademarks Act (chapter 597) and its rules on search and opposition", notifies=True,
    ),
    Practice(
        ("GB",), "United Kingdom", False,
        "searches, tells you and then the owners of earlier UK marks, and does not refuse; owners oppose, also by "
        "passing off, for a name that is only in use. From each EU mark registered before 2021 came a UK mark of its "
        "own, whose number begins with UK009, and from each international registration protected in the EU by then one "
        "with UK008. An EU mark registered later does not hold there",
        "two months from publication, three on request", 5, _FIVE, "Trade Marks Act 1994, sections 5, 5(4)(a), "
        "6A, 46, schedule 2A; Rules 2008, rules 14, 17; cases of the Court of Justice up to 2020 as assimilated law",
        notifies=True,
    ),
    Practice(
        ("US",), "United States", True, "examines, and refuses over a mark that is confusingly similar",
        "30 days from publication, extended on request up to 180", 3,
        "an examiner does not ask about use. Whoever attacks a mark shows that it is not used; three years without use "
        "are taken for abandonment until its owner shows otherwise. Between the fifth and sixth year its owner has to "
        "declare use, or it lapses. From the third to the tenth year anyone may ask the office to strike "
        "goods for which it was never used", "15 USC 1052(d), 1058, 1063, 1064, 1066a, 1127; 37 CFR 2.102",
        owner_shows=False,
    ),
    Practice(
        ("CH",), "Switzerland", False, "does not refuse; owners oppose",
        "three months from publication of the registration", 5, _FIVE_LATER_ALONE, "MSchG, articles 3, 11, 12, 31",
    ),
    Practice(
        ("CA",), "Canada", True, "examines, and refuses over a confusing mark", "two months from advertisement", 3,
        "from three years after registration the owner can be asked to show use",
        "Trademarks Act, sections 12, 37, 38, 45",
    ),
    Practice(
        ("AU",), "Australia", True, "examines, and refuses over a deceptively similar mark",
        "two months from advertisement of acceptance", 3, _THREE, "Trade Marks Act 1995, sections 44, 52, 92",
    ),
    Practice(
        ("NZ",), "New Zealand", True, "examines, and refuses over a similar mark",
        "three months from advertisement of acceptance", 3, _THREE, "Trade Marks Act 2002, sections 25, 47, 66",
    ),
    Practice(
        ("JP",), "Japan", True, "examines, and refuses over a similar mark",
        "two months from publication of the registration", 3, _THREE, "Trademark Act, articles 4, 43-2, 50",
    ),
    Practice(
        ("CN",), "China", True, "examines, and refuses over a similar mark; the first to file goes first",
        "three months from preliminary publication", 3, _THREE, "Trademark Law, articles 30, 31, 33, 49",
    ),
)  # fmt: skip

UNDESCRIBED = "not described here: ask the office"
"""What is said of a market without an entry."""

EU_OR_STATE = (
    "EU mark or national mark",
    "An EU mark is judged in every language of the Union, also in those not looked at here; a mark of one state by "
    "what buyers there understand, so that a word which is weak in one may be a mark in another (EU Regulation "
    "2017/1001, article 7(2); Court of Justice, C-421/04, Matratzen Concord).",
)
"""What is told where a name stands otherwise in a state of the Union than for an EU mark."""

_EVERYWHERE = (
    (
        "Priority",
        "An application filed in another country up to six months before yours can come first, and may stand in no "
        "list yet{}. An application that claims priority ranks from that day.",
        {"": "Paris Convention, article 4"},
    ),
    (
        "International registrations",
        "They reach a country by designation, and may stand only in the register that WIPO keeps{}.",
        {"": "Madrid Protocol, articles 3ter and 4",
         "EU": "time without use counts from the second republication, EUTMR, article 203",
         "GB": "in the UK it counts from protection there",
         "US": "in the US from the registration of the extension, with declarations under 15 USC 1141k"},
    ),
    (
        "Known marks",
        "Some marks are protected beyond their own goods: those with a reputation, famous and well-known ones{}.",
        {"": "Paris Convention, article 6bis", "EU": "EU Regulation 2017/1001, article 8(5)",
         "GB": "UK Trade Marks Act, section 5(3)", "US": "15 USC 1125(c)", "CH": "Swiss MSchG, article 15",
         "CA": "Canada's Trademarks Act, section 22", "AU": "Australia's Trade Marks Act, sections 60 and 120(3)",
         "JP": "Japan's Trademark Act, article 4(1)(x), (xv) and (xix)", "CN": "China's Trademark Law, article 13"},
    ),
    (
        "Bad faith",
        "A name filed although one knows that another is about to use it can be struck from the register{}.",
        {"EU": "EU Regulation 2017/1001, article 59(1)(b)", "GB": "UK Trade Marks Act, section 3(6)",
         "CA": "Canada's Trademarks Act, section 18(1)(e)", "AU": "Australia's Trade Marks Act, section 62A",
         "JP": "Japan's Trademark Act, article 4(1)(xix)", "CN": "China's Trademark Law, articles 4 and 32"},
    ),
    (
        "Company names and unregistered use",
        "These can be earlier rights: company and shop names, domains, titles, goods sold under a name{}.",
        {"EU": "EU Regulation 2017/1001, article 8(4)", "GB": "passing off in the UK", "US": "use alone in the US",
         "DE": "MarkenG, section 5", "FR": "CPI, article L711-3", "ES": "Ley 17/2001, article 9",
         "IT": "Italian CPI, article 12", "CH": "Swiss Code of Obligations, articles 951 and 956",
         "CA": "use alone in Canada, Trademarks Act, section 16",
         "AU": "Australia's Trade Marks Act, sections 58 and 60, and passing off",
         "JP": "Japan's Unfair Competition Prevention Act, article 2"},
    ),
    (
        "Late renewal",
        "A mark whose term has run out can still be renewed for at least six months{}. A list that calls it registered "
        "later than that is behind, or it was renewed.",
        {"": "Paris Convention, article 5bis", "US": "15 USC 1059(a)", "EU": "EU Regulation 2017/1001, article 53(3)",
         "GB": "UK Trade Marks Act, section 43(3)", "CH": "Swiss MSchG, article 10(3)",
         "CA": "Canada's Trademarks Act, section 46", "AU": "Australia's Trade Marks Act, section 79",
         "JP": "Japan's Trademark Act, article 20(3)"},
    ),
)  # fmt: skip
"""What holds in most countries: a heading, a sentence, and its sources by law; that under "" holds everywhere."""


def everywhere(markets: Iterable[str]) -> tuple[tuple[str, str], ...]:
    """What holds in most countries, a heading and a sentence each, with the sources of `markets`; of all that are known
    where none is stated."""
    stated = tuple(markets)
    laws = {"", *map(territory, stated), *map(law_of, stated)}
    return tuple(
        (head, text.format(f" ({'; '.join(told)})" if told else ""))
        for head, text, sources in _EVERYWHERE
        for told in [[source for law, source in sources.items() if not stated or law in laws]]
    )


def practices(markets: Iterable[str]) -> tuple[Practice, ...]:
    """The practices that concern `markets`, in the order of the page; all of them if no market is stated."""
    wanted = set(map(territory, markets))
    return tuple(one for one in _PRACTICES if not wanted or wanted & set(one.markets))


def _examining(market: str) -> bool | None:
    """Whether an office of a market refuses by itself; None for a market that is not described."""
    own = [one for one in _PRACTICES if territory(market) in one.markets]
    return any(one.refuses for one in own) if own else None


def objection(name: str, markets: Iterable[str]) -> str:
    """The question whether a mark stands in the way of `name`, in the words of the markets' law."""
    markets = tuple(markets)
    refusing = [market for market in markets if _examining(market)]
    opposing = [market for market in markets if _examining(market) is False]
    if refusing and not opposing:
        return f"would an examiner refuse {name} because of it"
    if opposing and not refusing:
        return f"would its owner have good grounds to oppose {name}"
    if refusing:
        refused = f"would an examiner refuse {name} because of it ({some(refusing)})"
        return f"{refused}, or its owner have good grounds to oppose it ({some(opposing)})"
    return f"would it bar {name} in {some(markets)}" if markets else f"would it bar {name} where we sell"


def on_citing_offices(markets: Iterable[str]) -> str:
    """That offices refuse by themselves over the same mark, as a sentence; "" where none of `markets` has such one."""
    citing = [market for market in markets if _examining(market)]
    return f" In {some(citing)} the office itself may cite it." if citing else ""


def on_added_words(markets: Iterable[str], *, by_mark: bool) -> str:
    """What says that words added to what two marks have in common seldom keep them apart, by market: of a later name
    that takes an earlier mark over, or (`by_mark`) of an earlier mark that holds the name, whose whole impression
    decides."""
    laws = {law_of(market) for market in markets}
    whole = "; the whole impression decides" if by_mark else ""
    told = {
        "TMEP 1207.01(b)(iii)": {"US"},
        f"Court of Justice, C-120/04, Thomson Life{whole}": {"EU", "GB"},
    }
    return "; ".join(source for source, where in told.items() if laws & where) or "TMEP 1207.01(b)(iii)"


def on_weak_marks(markets: Iterable[str]) -> str:
    """What says that a weak mark counts for something while it is registered, by market; "" for none described."""
    laws = {law_of(market) for market in markets}
    told = {
        "King Candy v. Eunice King's Kitchen, 496 F.2d 1400": {"US"},
        "Court of Justice, C-196/11 P, F1-Live": {"EU", "GB"},
    }
    return "; ".join(source for source, where in told.items() if laws & where)


def on_translation(markets: Iterable[str], languages: str, *, into_english: bool = True) -> str:
    """What a translation counts for in each of `markets`, as sentences; `languages` are those that buyers would have
    to know, and whether one of them is English (`into_english`) decides in the United States."""
    stated = tuple(markets)
    american = [market for market in stated if law_of(market) == "US"]
    others = [market for market in stated if market not in american]
    told = []
    if american and not into_english:
        told.append(
            "In US an examiner translates foreign words into English, seldom one foreign language into another (TMEP "
            "1207.01(b)(vi))."
        )
    elif american:
        told.append(
            "In US an examiner translates common modern languages where ordinary buyers who know them would (doctrine "
            "of foreign equivalents: TMEP 1207.01(b)(vi); Palm Bay, 396 F.3d 1369)."
        )
    if others:
        told.append(f"In {some(others)} it counts as far as buyers there know {languages}.")
    return " ".join(told)


def unused_years(markets: Iterable[str]) -> dict[tuple[int, bool], list[str]]:
    """After how many years a mark that is not used can be attacked, and whether its owner then shows use (see
    `Practice`), with the markets; those not described are left out."""
    found: dict[tuple[int, bool], list[str]] = {}
    for market in markets:
        for kind in {(one.unused_years, one.owner_shows) for one in _PRACTICES if territory(market) in one.markets}:
            found.setdefault(kind, []).append(market)
    return found
