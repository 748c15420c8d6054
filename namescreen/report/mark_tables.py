"""The marks near one name, in one table: how grave each is and why, how close, for which goods, and what the register
says of it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from itertools import zip_longest

from ..closeness.calibration import calibration
from ..closeness.explanation import PARTLY
from ..closeness.reason import About
from ..goods import remark
from ..lexicon.language_codes import language_name
from ..marks.mark import Mark
from ..outcome import NotChecked
from ..plain_text import cell, clauses, in_one_sentence, number, number_beside, plural, score_words, shorten, some
from ..policy import GOODS_LINES, Level, level_of
from ..screening.crowd import past_cases_tell
from .findings import conflict_of, grade_words, grades, has_weak_words, mark_level, matters, milder
from .layout import Part, Table
from .mark_choice import FEWEST, marks_shown, why_named, worth_a_word
from .model import CloseMark, NameEntry, Report
from .nearest import met_in_the_union
from .register_facts import LACKS, dates, held_in, remarks, status, where
from .upkeep import upkeep

__all__ = [
    "MARK_HEADS", "REGISTER_HEADS", "briefly", "by_market", "close_marks", "mark_cells",
    "register_cells", "told_in_short",
]  # fmt: skip

MARK_HEADS = ("Mark", "Finding, and why", "Closeness", "Goods", "In the register")
"""Headings of the table of closest marks."""
REGISTER_HEADS = ("In the register", "Number", "Owner", "Classes", "Goods", "Status", "Dates", "Where", "Upkeep")
"""What the register says of a mark, fact by fact."""

# Rows of a name's tables; the JSON form has everything (common practice, no source).
_MOST_OTHERS = 3  # further marks of the same words
_ALSO = 4  # minor marks without a row that are named
_BELOW = 4  # marks below all levels that are named
_NAMED = 2  # marks that are named with a market
_MOST_REASONS, _MOST_GOODS = 240, 90  # characters of the reasons, and of the goods, of a mark
_PICTURED = ("figurative", "combined", "shape")
"""Types of mark of which more than the words counts."""
_HEARD = 0.85  # closeness in sound from which the readings are told
_ALIKE = 0.4  # overall closeness below which a mark is little alike

_Grade = tuple[bool, Level]
"""Whether a mark is a knockout, and its level: the higher, the graver."""


def close_marks(entry: NameEntry, report: Report, asked: Sequence[CloseMark] = ()) -> Iterable[Part]:
    """The marks near a name, as Markdown. What the register raises of those `asked` about stands in their questions."""
    head = "**Closest marks.**"
    if isinstance(entry.marks, NotChecked):
        yield f"{head} Not checked, because {cell(entry.marks.because)}."
        return
    ordered = matters(entry)
    if not ordered:
        yield f"{head} Nothing found: no mark in the lists came near."
        return
    if mark_level(ordered[0]) is Level.NOTHING and not asked:
        nearest = sorted(ordered, key=lambda found: -found.overall)[:FEWEST]
        told = [briefly(found, why_named(found, entry, report.goods)) for found in nearest]
        yield f"{head} Nothing found. What came nearest: {cell(some(told))}."
        yield from _below(entry, report, nearest)
        return
    shown = marks_shown(entry, asked)
    yield "**Closest marks**"
    rows = [row for found in shown for row in _rows(found, report)]
    stated = any(row[-1] != LACKS for row in rows)  # else that is told once for all names
    yield Table(MARK_HEADS, tuple(rows)) if stated else Table(MARK_HEADS[:-1], tuple(row[:-1] for row in rows))
    further = [found for found in ordered if mark_level(found) >= Level.LOOK and found not in shown]
    if further:
        yield f"Also {mark_level(further[0]).words} and below: {cell(some(map(briefly, further)))}."
    mild = [found for found in ordered if mark_level(found) is Level.MINOR and found not in shown]
    if mild:
        more = [f"{len(mild) - _ALSO:,} more"] if len(mild) > _ALSO else []
        yield f"Minor as well: {cell(some([*map(briefly, mild[:_ALSO]), *more]))}."
    yield from _below(entry, report, shown)
    first, words = shown[0], (entry.category, entry.words)
    grave = mark_level(first) >= Level.LOOK and not first.translation  # past pairs were of one language
    if grave and past_cases_tell(conflict_of(first), *words, first.mark.text, report.goods):
        yield cell(calibration(first.overall).statement_for(shorten(first.mark.text, 60)))
    yield from _remarks(shown, report, asked)


def by_market(entry: NameEntry, report: Report) -> str:
    """How grave the gravest marks are in each market, and which they are: of a market where these have probably lapsed,
    those of the next grade too. "" for one market, or where no mark asks for a closer look."""
    ordered = matters(entry)
    graded: dict[str, dict[_Grade, dict[str, bool]]] = {}  # by market: the marks of each grade, and whether they live
    for found in ordered:
        own = held_in(found.mark, report) if found.bites else ()
        for market, grade in grades(found, own).items():
            if grade[1] >= Level.LOOK:
                lives = not found.lapsed or market not in own
                text = shorten(found.mark.text, 30) + ("" if lives else ", probably lapsed")
                marks = graded.setdefault(market, {}).setdefault(grade, {})
                marks[text] = lives or marks.get(text, False)
    if len(report.markets) < 2 or not graded:
        return ""
    alike: dict[tuple[_Grade, tuple[str, ...]], list[str]] = {}
    for market in report.markets:
        for grade, marks in sorted(graded.get(market, {}).items(), reverse=True):
            alike.setdefault((grade, tuple(marks)), []).append(market)
            if any(marks.values()):
                break
    told = [
        f"{grade_words(*grade)} in {some(markets)} ({_named(texts)})"
        for (grade, texts), markets in sorted(alike.items(), key=lambda one: one[0][0], reverse=True)
    ]
    free = [market for market in report.markets if market not in graded]
    told += [f"no mark to look closer at in {some(free)}"] if free else []
    unknown = [found.mark.text for found in ordered if found.bites is None and mark_level(found) >= Level.LOOK]
    if unknown:
        told.append(f"not stated where: {_named([shorten(text, 30) for text in unknown])}")
    return f"Marks by market: {cell('; '.join(told))}."


def _named(texts: Sequence[str]) -> str:
    more = [f"{len(texts) - _NAMED} more"] if len(texts) > _NAMED else []
    return some([*texts[:_NAMED], *more])


def _below(entry: NameEntry, report: Report, shown: Sequence[CloseMark]) -> Iterable[str]:
    """The marks below all levels that an adviser would miss, how many more there are, and what an EU filing would
    meet."""
    below = [found for found in worth_a_word(entry, report.goods) if found not in shown]
    named = [briefly(found, why_named(found, entry, report.goods)) for found in below[:_BELOW]]
    more = [f"{len(below) - _BELOW:,} more"] if len(below) > _BELOW else []
    if named:
        yield f"Further off, below minor: {cell(some([*named, *more]))}."
    if met := met_in_the_union(entry, report):
        yield cell(met)


def briefly(found: CloseMark, why: str = "") -> str:
    """A mark without a row, as briefly as it can be found by."""
    about = (found.mark.office, shorten(found.mark.number, 24), number(found.overall), milder(found), why)
    return f"{shorten(found.mark.text, 40)} ({', '.join(filter(None, about))})"


def _rows(found: CloseMark, report: Report) -> Iterable[tuple[str, ...]]:
    """The row of a mark, with what its owner has of the same words and no level of its own, and one for each other
    further mark that is listed."""
    *cells, standing = mark_cells(found, report.date, report.markets)
    listed = [*enumerate(found.others[:_MOST_OTHERS])]
    graded = {one.place for one in found.elsewhere}
    own = [other for place, other in listed if place not in graded and other.is_of_the_owner_of(found.mark)]
    also = f"; also of this owner: {some(map(told_in_short, own))}" if own else ""
    yield *cells, f"{standing}{also}"
    for place, other in listed:
        if other in own:
            continue
        facts = _facts(other, report.date, report.markets)
        told = f"a further mark of {'the same owner' if other.is_of_the_owner_of(found.mark) else 'these words'}"
        there = [one for one in found.elsewhere if one.place == place]
        graded_in = [f"{grade_words(one.knockout, level_of(one.concern))} in {some(one.markets)}" for one in there]
        told = f"{', '.join(graded_in)}: {told}" if graded_in else told
        yield _cited(facts), told, "", _goods_of(facts), _standing_of(facts)


def told_in_short(mark: Mark) -> str:
    """A further mark of the same words: its number, where it holds, its classes, and whether it has ended."""
    facts = (
        some(mark.territories) or "where it holds is not stated",
        f"class {' '.join(map(str, mark.classes))}" if mark.classes else "",
        "dead" if mark.is_dead else "",
    )
    return f"{shorten(mark.number, 24) or shorten(mark.text, 40)} ({', '.join(filter(None, facts))})"


def _facts(mark: Mark, today: str, markets: Sequence[str]) -> dict[str, str]:
    """What the register says of a mark, by heading."""
    return dict(zip(REGISTER_HEADS, register_cells(mark, today, markets), strict=True))


def _cited(facts: Mapping[str, str]) -> str:
    """A mark by its words, its number and its owner, as far as they are stated."""
    told = ", ".join(facts[head] for head in ("Number", "Owner") if facts[head] != LACKS)
    return f"{facts['In the register']} ({told})" if told else facts["In the register"]


def _goods_of(facts: Mapping[str, str]) -> str:
    classes = facts["Classes"]
    told = [f"{'class' if classes.isdecimal() else 'classes'} {classes}"] if classes != LACKS else []
    return ": ".join([*told, *([facts["Goods"]] if facts["Goods"] != LACKS else [])])


def _standing_of(facts: Mapping[str, str]) -> str:
    told = [facts[head] for head in ("Status", "Where", "Dates", "Upkeep") if facts[head] not in ("", LACKS)]
    return "; ".join(told) or LACKS


def _remarks(shown: Sequence[CloseMark], report: Report, asked: Sequence[CloseMark]) -> Iterable[str]:
    """How many further marks of the same words there are, and what the register raises of marks that are not asked
    about."""
    told = []
    unlisted = [(found, found.marks - 1 - len(found.others[:_MOST_OTHERS])) for found in shown]
    more = [f"{plural(count, 'more mark')} like {shorten(found.mark.text, 60)}" for found, count in unlisted if count]
    told += [f"Not listed here: {cell(some(more))}."] if more else []
    raised: dict[str, list[str]] = {}
    left = [found for found in shown if mark_level(found) >= Level.LOOK and found not in asked]
    raising = [mark for found in left for mark in (found.mark, *(found.others[one.place] for one in found.elsewhere))]
    for mark in raising:
        for raises in remarks(mark, report):
            alike = sum(other.text == mark.text for other in raising) > 1
            number = f" ({shorten(mark.number, 24)})" if alike and mark.number else ""
            raised.setdefault(raises, []).append(shorten(mark.text, 40) + number)
    told += [f"{raises} {cell(some(dict.fromkeys(names)))}." for raises, names in raised.items()]
    if told:
        yield " ".join(told)


def register_cells(mark: Mark, today: str = "", markets: Sequence[str] = ()) -> tuple[str, ...]:
    """What the register says of a mark on the day `today`, as raw text, under `REGISTER_HEADS`."""
    # The numbers of the United Kingdom begin with UK, not with the code of its office.
    itself = mark.number.startswith((mark.office, "UK0"))
    number_as_cited = mark.number if itself else f"{mark.office} {mark.number}"
    return (
        shorten(mark.text, 60),
        shorten(number_as_cited, 40) if mark.number else LACKS,
        shorten(mark.owner, 120) or LACKS,
        " ".join(map(str, mark.classes)) or LACKS,
        clauses(mark.goods, _MOST_GOODS) or LACKS,
        status(mark, today) + (f", {mark.mark_type}" if mark.mark_type in _PICTURED else ""),
        dates(mark),
        where(mark, markets),
        "; ".join(upkeep(mark, markets, today)) if today else "",
    )


def mark_cells(found: CloseMark, today: str = "", markets: Sequence[str] = ()) -> tuple[str, ...]:
    """The cells of a mark's row under `MARK_HEADS`, as raw text."""
    facts = _facts(found.mark, today, markets)
    aspects = (("look", found.appearance), ("sound", found.sound), ("meaning", found.meaning))
    parts = ", ".join(f"{what} {score_words(value, 'coined')}" for what, value in aspects)
    related = "not compared" if isinstance(found.goods, NotChecked) else number_beside(found.goods.score, GOODS_LINES)
    return (
        _cited(facts),
        _finding_and_why(found),
        f"{number(found.overall)} ({parts})",
        ", ".join(filter(None, (related, _goods_of(facts)))),
        _standing_of(facts),
    )


def _finding_and_why(found: CloseMark) -> str:
    """How grave a mark is, and the reasons that say more than the numbers beside them."""
    level = mark_level(found)
    all_told = [*zip_longest(found.reasons, found.about[: len(found.reasons)], fillvalue="")]
    told = [(reason, about) for reason, about in all_told if _is_telling(about, found)]
    if len(told) > 1:  # letters that stand in both by chance tell nothing beside another reason
        told = [one for one in told if one[1] != About.INSIDE] or told
    reasons = [reason for reason, about in told if about != About.SAME]
    if conflict_of(found).identical:
        reasons.insert(0, "the same name")
    if not reasons and not found.translation:
        reasons = [reason for reason, about in all_told if _says_what_is_alike(about, found)][:1]
    if found.translation:
        reasons.insert(0, f"the name in {language_name(found.translation)}")
    if not isinstance(found.goods, NotChecked) and found.goods.reasons:
        read = "goods, read in English" if remark(found.mark.goods) else "goods"
        reasons.append(f"{read}: {found.goods.reasons[0]}")
    if found.bites is False:
        reasons.append("holds outside the markets")
    if found.renewable_until:
        reasons.append(f"can be renewed until {found.renewable_until}")
    worded = "other markets" if level is Level.NOTHING and found.bites is False else level.words
    why = in_one_sentence(reasons) or ("little alike" if found.overall < _ALIKE else "no reason given")
    return clauses(f"{grade_words(True, level) if found.knockout else worded}: {why}", _MOST_REASONS)


def _says_what_is_alike(about: str, found: CloseMark) -> bool:
    value = {About.APPEARANCE: found.appearance, About.SOUND: found.sound}
    return any(about == aspect and closeness >= PARTLY for aspect, closeness in value.items())


def _is_telling(about: str, found: CloseMark) -> bool:
    """Whether a reason says more than the number beside it, as the readings of what sounds alike do."""
    if about == About.WEAK:
        return has_weak_words(found)
    if about == About.SHARED:
        return not found.element
    if about == About.SOUND:
        return found.sound >= _HEARD
    return about not in (About.APPEARANCE, About.MEANING)
