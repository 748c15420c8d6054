"""The contents of a report: plain data, from which every form of the report is made.

The records repeat what the checks found in the report's own words, so that a report can be written to JSON,
read back a month later by another version of the program, and compared. A check that was not made is
`NotChecked`.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from ..marks.mark import Mark
from ..outcome import NotChecked, Unread
from ..policy import DECEPTIVE, LIKELY_REFUSED
from ..screening.foreign_words import ForeignWord

__all__ = [
    "CHECKS",
    "Address",
    "Addresses",
    "CloseMark",
    "CostItem",
    "Costs",
    "Distinctiveness",
    "Elsewhere",
    "Goods",
    "InMarket",
    "ItemView",
    "ListSearched",
    "MarketView",
    "NameEntry",
    "OfficeRows",
    "Reading",
    "Report",
    "SharedWord",
    "Weights",
]

CHECKS = {
    "marks": "Existing marks",
    "distinctiveness": "Distinctiveness",
    "readings": "Other languages",
    "addresses": "Domain and handle",
}
"""The checks of a report and their headings, in the order in which they are shown."""


@dataclass(frozen=True, slots=True)
class Goods:
    """How related a mark's goods are to the maker's: `score` in [0, 1], 1 = the same goods; `together` says that they
    may be sold or used with them."""

    score: float
    reasons: tuple[str, ...] = ()
    together: bool = False


@dataclass(frozen=True, slots=True)
class Elsewhere:
    """A further mark of the same words, by its `place` among the `others` (0 the first), that asks for a closer look in
    `markets` where those before it do not hold; its `concern` there as that of `CloseMark`, and whether it is a
    `knockout` there. A mark stands as often as it is of another concern in some of these markets."""

    place: int
    markets: tuple[str, ...]
    concern: float
    knockout: bool = False


@dataclass(frozen=True, slots=True)
class InMarket:
    """How much a mark concerns the name in one `market` where it holds: its `concern` there, as that of `CloseMark`,
    and whether it is a `knockout` there."""

    market: str
    concern: float
    knockout: bool


@dataclass(frozen=True, slots=True)
class CloseMark:
    """An existing mark near a name.

    Appearance, sound, meaning and overall are closeness in [0, 1], 1 = identical; meaning is not checked where
    too few words of the names are known. `concern`, in [0, 1], is how much the mark asks for attention, 1 =
    most, as the screening reckons it, where it asks for most attention. Of several marks of one owner with the same
    words it is the one of most concern; `others` are some of the rest, in that order, and `marks` counts them all, this
    one included. `bites` says whether the mark holds in one of the markets; None where that is not known. `translation`
    is the language (BCP 47) in which the mark says the name; empty where it is no translation that is known.
    `renewable_until` is the day (ISO 8601) until which a mark whose term ran out can be renewed; empty for others.
    `held` are the markets where it holds, if not all of them do. `lapsed` says that the list calls the mark live
    although its term ran out and the months for renewing it late are over on the day of the report. `elsewhere` tells
    of the others that bite in further markets, and `levels` of each market where it or one of these holds, in the order
    of the brief, if there is one of these or markets differ: by how buyers hear it, whether they understand it, and
    whether what both share is free to all there. `element` says in a sentence what both have in common where one takes
    it over, or it is left without surplus words, `foreign` which words of the name the mark
    says in another language; `descriptive` that they share only words which describe the goods. `about`
    tells of each of the `reasons` what it is about (`closeness.reason.About`; () if that is not known), and `weak` are
    the words of both that are weak in this field.
    """

    mark: Mark
    appearance: float
    sound: float
    meaning: float | NotChecked
    overall: float
    concern: float
    goods: Goods | NotChecked
    knockout: bool = False
    reasons: tuple[str, ...] = ()
    others: tuple[Mark, ...] = ()
    marks: int = 1
    bites: bool | None = None
    translation: str = ""
    renewable_until: str = ""
    lapsed: bool = False
    held: tuple[str, ...] = ()
    elsewhere: tuple[Elsewhere, ...] = ()
    levels: tuple[InMarket, ...] = ()
    element: str = ""
    foreign: tuple[ForeignWord, ...] = ()
    descriptive: bool = False
    about: tuple[str, ...] = ()
    weak: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class ProtectedSign:
    """A sign in a name that the law protects, or that misleads: what it is, whether it is likely to stand in the way,
    and whom to ask; `bars` are the markets whose law keeps it, or () where all of them do that know it. `misleads` says
    that it tells of the goods what is not so, or may not be, and `told` is the reason without the law; "" if that is
    all there is."""

    sign: str
    serious: bool
    reason: str
    ask: str
    bars: tuple[str, ...] = ()
    misleads: bool = False
    told: str = ""

    @property
    def why(self) -> str:
        """What it is, in a clause."""
        return self.told or self.reason


@dataclass(frozen=True, slots=True)
class MarketView:
    """How a name stands under the law of one market (US, EU, GB or another code): what it is there, `score` in [0, 1]
    as in `Distinctiveness`, and the law, from memory, empty where nothing stands in the way. `ground` is what matters
    there (see `goods.MarketFinding`), `language` that of a word which bars it, where it is not English."""

    market: str
    called: str
    score: float
    law: str = ""
    ground: str = ""
    language: str = ""


@dataclass(frozen=True, slots=True)
class ItemView:
    """What a name is `called` for one item of the goods."""

    goods: str
    called: str


@dataclass(frozen=True, slots=True)
class Distinctiveness:
    """Where a name stands on the scale from generic to fanciful; `score` in [0, 1], 1 = most distinctive. `protected`
    are signs in it that may not be registered, whatever the score. `called` is "surname" or "geographic" where being
    one is the bar, which the law treats apart; else empty. `laws` are the law by market on it, from
    memory, `markets` how the name stands in each, `places` its words that say where goods come from and `strange_in`
    the markets whose buyers hardly know any of these, `unknown_in`
    the markets whose law on a sign in it is not known here, and `by_item` what it is for each item of the goods, where
    that differs."""

    category: str
    score: float
    reasons: tuple[str, ...] = ()
    hint: str = ""
    protected: tuple[ProtectedSign, ...] = ()
    called: str = ""
    laws: tuple[str, ...] = ()
    markets: tuple[MarketView, ...] = ()
    places: tuple[str, ...] = ()
    unknown_in: tuple[str, ...] = ()
    by_item: tuple[ItemView, ...] = ()
    strange_in: tuple[str, ...] = ()

    @property
    def deception(self) -> ProtectedSign | None:
        """What the name says of the goods that is not so, the gravest, or that may not be so; None for nothing."""
        return next((one for one in self.protected if one.misleads), None)

    @property
    def differs(self) -> bool:
        """Whether the markets see the name differently."""
        return len({one.called for one in self.markets}) > 1

    @property
    def shown(self) -> str:
        """What readers are told that the name is: first that it deceives, or holds a sign that the law keeps."""
        if self.protected and self.protected[0].serious and self.protected[0].misleads:
            return DECEPTIVE
        kept = any(one.serious for one in self.protected) and self.category != "generic"
        return LIKELY_REFUSED if kept else self.called or self.category

    @property
    def is_barred_as_such(self) -> bool:
        """Whether what readers are told is no place on the scale, but a bar beside it."""
        return self.shown in (LIKELY_REFUSED, DECEPTIVE)

    @property
    def barred_in(self) -> tuple[str, ...]:
        """The markets whose law bars the name; () where all of them do, or none."""
        serious = [one.bars for one in self.protected if one.serious]
        return tuple(dict.fromkeys(market for bars in serious for market in bars)) if all(serious) else ()


@dataclass(frozen=True, slots=True)
class Reading:
    """What a name, or a part of it, is or resembles in a language (BCP 47); `severity` 0 (an ordinary word) to 3.
    `abroad` says that it is a bad word of a language that is none of the buyers', and so nothing against the name."""

    language: str
    word: str
    meaning: str
    kind: str
    severity: int
    match: str
    abroad: bool = False


@dataclass(frozen=True, slots=True)
class Address:
    """One domain or handle; `how` it was made, or what it is for. `finding` and `taken` are what an answer said,
    empty and None when nobody was asked."""

    kind: str
    text: str
    how: str = ""
    finding: str = ""
    taken: bool | None = None


@dataclass(frozen=True, slots=True)
class Addresses:
    """How a name fits as a domain and a handle: `score` in [0, 1], 1 = fits best. `slips` are likely misspellings."""

    score: float
    items: tuple[Address, ...] = ()
    reasons: tuple[str, ...] = ()
    slips: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class SharedWord:
    """A word of a name that several `owners` use for related goods, in `marks` marks; `at_least` where there are more
    marks with it than were looked at. `market` is the one where they are held; "" where none is stated."""

    word: str
    owners: int
    marks: int
    at_least: bool = False
    market: str = ""


@dataclass(frozen=True, slots=True)
class NameEntry:
    """One name of the shortlist and everything found about it; `marks` closest first. `unread` are its words of which
    nobody knows here what they say, and `explained` tells that whoever made it says how."""

    name: str
    words: tuple[str, ...]
    marks: tuple[CloseMark, ...] | NotChecked
    distinctiveness: Distinctiveness | NotChecked
    readings: tuple[Reading, ...] | NotChecked
    addresses: Addresses | NotChecked
    construction: str = ""
    meaning: str = ""
    coverage: tuple[str, ...] = ()
    not_checked: tuple[NotChecked, ...] = ()
    shared_words: tuple[SharedWord, ...] = ()
    unread: tuple[Unread, ...] = ()
    explained: bool = False

    @property
    def category(self) -> str:
        """How distinctive the name is; "" where that was not checked."""
        return "" if isinstance(self.distinctiveness, NotChecked) else self.distinctiveness.category


@dataclass(frozen=True, slots=True)
class OfficeRows:
    """How many rows of a list are said to be of an office."""

    office: str
    rows: int


@dataclass(frozen=True, slots=True)
class ListSearched:
    """A list of marks that was searched. `dated` is its own date where it states one; `latest` the latest
    filing or registration date among its marks; both ISO 8601, empty when not stated. `marks` remembers which marks
    it held (see `fingerprints`); empty for a long list. `rows_of` counts the rows of each of the `offices`; `layout`
    names the office's form that the list has, empty for a table of one's own. `uk_from_eu` is of how many of its EU
    marks a UK mark came in 2021, of a list that is not long."""

    name: str
    sha256: str
    rows_read: int
    rows_left_out: int
    without_words: int = 0
    dated: str = ""
    latest: str = ""
    classes: tuple[int, ...] = ()
    offices: tuple[str, ...] = ()
    remarks: tuple[str, ...] = ()
    marks: str = ""
    rows_of: tuple[OfficeRows, ...] = ()
    layout: str = ""
    uk_from_eu: int = 0


@dataclass(frozen=True, slots=True)
class LanguageSearched:
    """A language in which names were read: `how`, beside so many of its everyday `words`, and so many `unlucky` ones
    with a meaning; `meanings` are the sources of further meanings."""

    language: str
    how: str
    words: int
    unlucky: int
    meanings: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class CostItem:
    """One line of the costs worksheet as the maker entered it: `figure` (decimal text) each, `times` over.

    `dated` is the day the maker found the figure (ISO 8601) and `source` where; empty when not stated.
    """

    what: str
    figure: str
    times: str = "1"
    currency: str = ""
    dated: str = ""
    source: str = ""


@dataclass(frozen=True, slots=True)
class Costs:
    """The maker's own figures, amounts as decimal text; none is shipped. `budget` is empty when not
    stated."""

    items: tuple[CostItem, ...] = ()
    budget: str = ""
    currency: str = ""


@dataclass(frozen=True, slots=True)
class Weights:
    """How much each check counts in the comparison: any numbers of zero or more; only their ratios matter."""

    marks: float = 1.0
    distinctiveness: float = 1.0
    readings: float = 1.0
    addresses: float = 1.0


@dataclass(frozen=True, slots=True)
class Report:
    """A whole report. Equal reports give equal bytes in every form.

    `date` is ISO 8601; `date_from` says where it came from ("--date" or "the clock"); `command` is the
    command line that repeats the report, word by word; `languages_searched` says of each language looked at
    with what, once.
    """

    product: str
    goods: str
    classes: tuple[int, ...]
    markets: tuple[str, ...]
    languages: tuple[str, ...]
    names: tuple[NameEntry, ...]
    lists: tuple[ListSearched, ...]
    date: str
    date_from: str
    version: str
    command: tuple[str, ...]
    concepts: tuple[str, ...] = ()
    weights: Weights = field(default_factory=Weights)
    costs: Costs = field(default_factory=Costs)
    settings: tuple[tuple[str, str], ...] = ()
    languages_searched: tuple[LanguageSearched, ...] = ()
    seed: int | None = None
