"""How findings order marks and names. The screen, the demo, the report and its picture all use this one policy.

A mark is judged by its closeness to the name, by how related the goods are, by whether it is in force, and by whether
it holds in the maker's markets. The result is its concern, a number from 0 to 1 that sorts marks and gives their level.

A name is judged by its worst finding. Names are grouped by it, and no good finding lifts a name out of its group.
Inside a group the number of markets decides in which the worst finding stands, from "look closer" on: a name stopped in
one of four is free in three. Then the next worst findings; of names alike in these, those that an office may refuse for
what they are stand last, as neither other goods nor an agreement mends that; then the weighted mean of all checks.

A finding is an invitation to look, not a legal conclusion. "Nothing found" and "not checked" are different things and
never share a word or a shape.
"""

from __future__ import annotations

from collections.abc import Iterable
from enum import IntEnum
from typing import NamedTuple

__all__ = [
    *("BARRED", "CLOSE_AS_A_WHOLE", "CREDITED", "DECEPTIVE", "EVEN", "EVERYWHERE", "GOODS_LINES", "IDENTICAL_GOODS"),
    *("LEAST_CLOSE", "LIKELY_REFUSED", "MIDDLE_OF_LOOK"),
    *("NEAR_IN_APPEARANCE", "NEAR_IN_SOUND", "OTHER_GOODS", "PLAINLY_DESCRIPTIVE", "PLAINLY_OTHER", "SAME_GOODS"),
    *("SOLD_TOGETHER", "STEPS"),
    *("Conflict", "Finding", "Level", "flaw_of_its_own", "gate", "grave_findings", "is_close", "level_of"),
    *("most_concern", "reach_of", "worst"),
]


class Level(IntEnum):
    """How much attention a finding asks for; a higher level asks for more. `NOT_CHECKED` stands outside the order."""

    NOT_CHECKED = -1
    NOTHING = 0
    MINOR = 1
    LOOK = 2
    SERIOUS = 3

    @property
    def words(self) -> str:
        """The level as the reader sees it."""
        return ("nothing found", "minor", "look closer", "serious", "not checked")[self.value]


NEAR_IN_APPEARANCE = 0.92
NEAR_IN_SOUND = 0.95
"""From here on two names are near-identical to the eye or the ear. Set by looking at one-letter changes in names of six
letters and more, not fitted."""

SAME_GOODS = 0.55
"""Relatedness from which goods count as the same or closely related: above the grade "average" (0.5), so more than a
shared class alone (`goods.relatedness.BY_CLASS_ALONE`). Ours, not fitted."""

OTHER_GOODS = 0.3
"""Relatedness below which goods are called other goods (common practice, no source)."""

GOODS_LINES = (SAME_GOODS, OTHER_GOODS)
"""The lines of relatedness by which goods are called the same, similar or other: none is shown as reached that is
not."""

PLAINLY_OTHER = 0.1
"""Relatedness below which goods have nothing in common that words or classes tell, so that a mark for them is minor
unless it is the same name. Ours, not fitted."""

SOLD_TOGETHER = "goods perhaps sold together"
"""What is said of goods that may be sold or used with ours and are no sort of them: complementary goods may be similar
(Canon, C-39/97)."""

LIKELY_REFUSED = "likely refused"
"""What a name is called that names the goods in a market, plainly describes them in half of the markets or more, or
holds a sign that the law keeps for others or forbids: the gravest finding, beside a knockout, about what a name is. The
office decides."""

DECEPTIVE = "deceptive"
"""What a name is called that says of the goods what they are stated not to be: refused as such, and no use cures it."""

PLAINLY_DESCRIPTIVE = 0.3
"""Distinctiveness below which a descriptive name is as serious as a generic one (chosen, not fitted)."""

LEAST_CLOSE = 0.28
"""Overall closeness below which a mark is not listed as close to a name: one in a hundred of pairs of names drawn at
random reaches it. Ours, not fitted."""
LEAST_CLOSE_IN_MEANING, SAYS_MUCH_THE_SAME = 0.2, 0.5
"""The same for a mark that says much the same as the name, as far as it has this closeness in meaning. Ours, not
fitted."""

MARKS_CHECK, OWN_CHECK, ADDRESS_CHECK = "marks", "distinctiveness", "addresses"
"""The checks for existing marks, for what a name is for its goods, and for how it fits as an address, as findings name
them."""

TRANSLATED = 0.9
"""What the closeness of a mark to the translation of a name counts beside closeness to the name itself: not every
buyer translates. Ours, not fitted."""

CROWDED = 0.95
"""What the closeness of a mark counts where it shares with the name only a word that many owners use. Ours, not fitted:
it decides between marks that are else alike."""

FREE_TO_ALL = 0.75
"""What the closeness of a mark counts to a name that is generic for the goods: what they share nobody can own (TMEP
1209.01(c)), so only all but the same mark is grave. Ours, not fitted."""

SAID_ABROAD = 0.58
"""What the closeness of a mark to the translation of a name counts where few of its buyers know both languages. Ours,
not fitted: so that a translation word for word asks for a closer look, and less than a synonym that they understand."""

OVER_WHOLE = 1.1
"""What the closeness of a mark counts where one of the two is taken over whole, with a house mark or words that say
little added (TMEP 1207.01(b)(iii)). Ours, not fitted: it decides between marks that are else alike."""

IDENTICAL_GOODS = 0.9
"""Relatedness from which goods count as identical: both name them, or what one names holds the other's
(`goods.relatedness`). Ours, not fitted."""

EVERYWHERE = 1_000
"""The `reach` of a finding that stands in every market."""

BARRED = 4
"""The group of names that fall: a knockout, or a name that is likely refused for what it is."""

# Chosen, not fitted: so that a mark much like the name for the same goods is serious and the same mark for distant
# goods, or a dead one, is minor; and so low that few marks a tribunal would hold too near are passed over. How decided
# cases fall: tests/bench/bench_levels.py.
STEPS = ((0.62, Level.SERIOUS), (0.51, Level.LOOK), (0.38, Level.MINOR))
"""Concern at or above which a mark has a level."""

MIDDLE_OF_LOOK = 0.56
"""A concern in the middle of "look closer". It is the least of an identical live mark of the markets for goods that are
not other ones, and, short of a knockout, the most of a mark for other goods, of one that has probably lapsed, and of
one that shares only words which describe the goods. Ours, not fitted."""

EVEN = STEPS[1][0]
"""The overall closeness at which marks for the same or close goods were held too alike as often as not
(`closeness.calibration`: 0.50 of 1 at 0.505), and the least concern of a mark as close: what past cases say of it must
not stand beside a milder word."""

CLOSE_AS_A_WHOLE = 0.6
"""Overall closeness from which a registered mark for identical goods is credited (`CREDITED`) though what both share is
weak: above `EVEN`, which is about marks that are not. Ours, not fitted."""

CREDITED = STEPS[1][0]
"""The least concern of a registered mark of the markets that the name takes over whole for identical goods, or that is
close to it as a whole, however weak it is: while it stands it is credited with some distinctiveness (Court of Justice,
C-196/11 P, F1-Live), and weak marks have some protection in the United States too (King Candy v. Eunice King's Kitchen,
496 F.2d 1400; from memory)."""


HARDLY_TOLD_APART = 0.7
"""Closeness in appearance and in sound from which a mark of words that describe the goods is close as a whole all the
same (Fineshave and Finest Shave, say): weak marks have some protection (see `CREDITED`). Ours, not fitted."""


MOST_MINOR = 0.5
"""The most concern of a mark that shares with the name only words which describe the goods: minor, for such words keep
nobody out (TMEP 1207.01(b)(viii)); and of one for goods that plainly have nothing in common. Ours, not fitted."""


def level_of(concern: float) -> Level:
    """The level of a mark's concern, in [0, 1]."""
    return next((level for least, level in STEPS if concern >= least), Level.NOTHING)


def is_close(overall: float, meaning: float) -> bool:
    """Whether a mark is listed as close to a name, from its closeness overall and in meaning, in [0, 1]."""
    return overall >= (LEAST_CLOSE_IN_MEANING if meaning >= SAYS_MUCH_THE_SAME else LEAST_CLOSE)


def most_concern(overall: float) -> float:
    """The most concern of a mark so close overall, in [0, 1], that is neither near-identical nor says the name in
    another language: see `Conflict.concern`."""
    return min(1.0, OVER_WHOLE * overall)


class Conflict(NamedTuple):
    """What the policy looks at in one mark. Closeness is in [0, 1], 1 = identical.

    `goods` is how related the goods are, in [0, 1]; None if they were not compared, which counts as the same goods: a
    list typed by hand is a list of competitors. `ended` says that the list calls the mark dead, and `renewable` that it
    is dead because its term ran out, and can still be renewed; `lapsed` that it calls the mark live though its term and
    the time for renewing it are over. `bites` says whether
    the mark holds in one of the markets; None if that is not known, which counts as yes. `translated` is the closeness
    of the mark to a translation of the name, 0 if there is none. `crowded` says that many owners use what it shares
    with the name, `over_whole` that one is taken over whole, and what the other adds is a house mark or says little,
    and `free` that the name is generic for the goods, so that others may use what it shares. `credited` says that the
    name takes over the whole of a registered mark that does not name its own goods, or is close to one as a whole,
    `descriptive` that it shares with the name only words that are weak there, `beside` that the mark has something
    stronger beside these, `rest` is the closeness of what is left without words that seldom keep marks apart, in [0, 1]
    (`screening.surplus`), 0 if none is, and `abroad` that few buyers where the mark holds know both its language and
    that of the name.
    """

    appearance: float
    sound: float
    overall: float
    goods: float | None
    ended: bool = False
    bites: bool | None = None
    translated: float = 0.0
    renewable: bool = False
    crowded: bool = False
    over_whole: bool = False
    free: bool = False
    credited: bool = False
    abroad: bool = False
    descriptive: bool = False
    rest: float = 0.0
    lapsed: bool = False
    beside: bool = False

    @property
    def identical(self) -> bool:
        """Whether name and mark have the same letters in the same order: nothing else reaches appearance 1."""
        return self.appearance >= 1.0

    @property
    def near_identical(self) -> bool:
        """Whether the whole name and the whole mark look or sound the same, or almost the same."""
        return self.appearance >= NEAR_IN_APPEARANCE or self.sound >= NEAR_IN_SOUND

    @property
    def knockout(self) -> bool:
        """Whether a live mark of the markets is identical or near-identical, for the same or closely related goods.

        Not a legal finding: it says which marks to look at first.
        """
        return self.near_identical and self.comparable

    @property
    def comparable(self) -> bool:
        """Whether the mark is like those of decided cases: in force in the markets, for the same or close goods. Only
        of such a mark is told how often marks as close were held too alike."""
        related = self.goods is None or self.goods >= SAME_GOODS
        return related and not self.ended and not self.lapsed and self.bites is not False

    @property
    def concern(self) -> float:
        """How much the mark asks for attention, in [0, 1], 1 = most: a sort key, not a likelihood.

        Overall closeness, halved where the goods are unrelated and in proportion between: the more alike the goods, the
        less alike the marks need be (interdependence: EUIPO Guidelines, part C, section 2, chapter 1). A knockout is 1.
        An identical mark has at least the level "look closer", whatever its goods: it may be known well enough to reach
        beyond them. For other goods it has just that, and no mark for them more than the middle of this level: without
        a reputation it reaches only similar ones. For goods that plainly have nothing in common every other mark is
        minor. For goods that are not other ones a mark that says the whole name in another language is at least minor,
        and one that looks or sounds all but the same at least "look closer". A mark that has probably lapsed is never
        more than that. A mark that has ended and cannot be renewed counts half, and is minor at least if it is the same
        name for goods that are not other ones; one that holds outside the markets counts half too. A mark for the same
        or close goods, held too alike by half of past cases, has at least the level "look closer". A registered mark
        taken over whole for identical goods has at least the level "look closer" (`CREDITED`), and one that shares only
        words which describe the goods at most the level "minor", or "look closer" if it is all but the same, or looks
        and sounds much the same (`HARDLY_TOLD_APART`).
        """
        if self.knockout:
            return 1.0
        share = 1.0 if self.goods is None else self.goods
        said = (SAID_ABROAD if self.abroad else TRANSLATED) * self.translated
        by_goods = 0.5 + 0.5 * share
        value = max(self.overall, said) * by_goods
        if self.free and not self.near_identical:
            value *= FREE_TO_ALL
        elif self.crowded and not self.near_identical:
            value *= CROWDED
        elif self.over_whole:
            value = min(1.0, OVER_WHOLE * value)
        weak = self.free or self.crowded
        if not weak:
            value = max(value, self.rest * by_goods)
        if self.overall >= EVEN and not weak and self.goods is not None and self.comparable:
            value = max(value, EVEN)
        if self.translated and share >= OTHER_GOODS:
            value = max(value, STEPS[2][0])
        if self.identical:
            value = max(value, MIDDLE_OF_LOOK if share >= OTHER_GOODS else STEPS[1][0])
        elif self.near_identical and share >= OTHER_GOODS:
            value = max(value, STEPS[1][0])
        if self.descriptive and not self.near_identical:
            value = min(value, MOST_MINOR)
            live = not self.ended and not self.lapsed and self.bites is not False
            near = not self.beside and min(self.appearance, self.sound) >= HARDLY_TOLD_APART
            if live and near and share >= OTHER_GOODS:
                value = CREDITED
        if self.credited and self.goods is not None and self.goods >= IDENTICAL_GOODS:
            value = max(value, CREDITED)
        if share < OTHER_GOODS or self.lapsed or self.descriptive:
            value = min(value, MIDDLE_OF_LOOK)
        if share < PLAINLY_OTHER and not self.identical:
            value = min(value, MOST_MINOR)
        if self.ended and not self.renewable:
            value /= 2
            if self.identical and share >= OTHER_GOODS:
                value = max(value, STEPS[2][0])
        return value / 2 if self.bites is False else value


class Finding(NamedTuple):
    """What one check found for one name: its level, and the evidence in a few words.

    `value` in [0, 1] is what the comparison weighs, 1 = nothing speaks against the name; None when not checked. `bars`
    says that a name cannot get past the finding without an adviser: a knockout, or a name of the goods themselves.
    `label` takes the place of the level's words where these would say too much: nobody was asked about a domain, so
    nothing can have been found. `reach` is in how many markets it stands, `EVERYWHERE` if in all of them; 0 where
    nothing was found. `where` stands before the evidence: the markets in which a sign is barred.
    """

    check: str
    level: Level
    evidence: str
    value: float | None
    bars: bool = False
    label: str = ""
    reach: int = 0
    where: str = ""

    @property
    def title(self) -> str:
        """The level as the reader sees it."""
        return self.label or self.level.words

    @property
    def words(self) -> str:
        """Level and evidence in one line; the reason of a check not made stands elsewhere."""
        title = f"{self.title} {self.where}" if self.where else self.title
        return self.title if self.level is Level.NOT_CHECKED else f"{title}: {self.evidence}"


def reach_of(findings: Iterable[Finding]) -> int:
    """In how many markets a finding as grave as the worst stands, if it asks for a closer look."""
    found = tuple(findings)
    first = worst(found)
    as_grave = (one.reach for one in found if (one.level, one.bars) == (first.level, first.bars))
    return max(as_grave) if first.level >= Level.LOOK else 0


def worst(findings: Iterable[Finding]) -> Finding:
    """The finding that asks for most attention; the first of equals. Where nothing was found but marks were not
    looked at, that check not made: a name is never said to be free of findings without it."""
    found = tuple(findings)
    first = max(found, key=lambda one: (one.level, one.bars))
    unlooked = (one for one in found if one.check == MARKS_CHECK and one.level is Level.NOT_CHECKED)
    return first if first.level > Level.NOTHING else next(unlooked, first)


def gate(findings: Iterable[Finding], made: Iterable[str]) -> int:
    """The group a name belongs to, from 0 (nothing found) to 4 (`BARRED`); names of a lower group stand first.

    The group is that of the worst finding. A check that was `made` for other names and not for this one counts as "look
    closer": what was not looked at is not harmless.
    """
    known = set(made)
    return max(
        (
            BARRED if one.bars else Level.LOOK if one.level is Level.NOT_CHECKED else one.level
            for one in findings
            if one.level is not Level.NOT_CHECKED or one.check in known
        ),
        default=0,
    )


def grave_findings(findings: Iterable[Finding], made: Iterable[str]) -> tuple[int, ...]:
    """How grave each finding is that asks for a closer look or more, as `gate` reckons it, the gravest first: the order
    of the names of a group, those with less of it first. How a name fits as an address is left to the mean."""
    known, found = set(made), tuple(one for one in findings if one.check != ADDRESS_CHECK)
    each = (gate((one,), known) for one in found)
    return tuple(sorted((one for one in each if one >= Level.LOOK), reverse=True))


def flaw_of_its_own(findings: Iterable[Finding]) -> int:
    """How likely an office is to refuse the name for what it is (descriptive, generic, kept for others), from 0 (not at
    all, or not checked) to 4 (barred): the order inside a group, the higher later."""
    own = (one for one in findings if one.check == OWN_CHECK)
    return max((BARRED if one.bars else max(0, one.level) for one in own), default=0)
