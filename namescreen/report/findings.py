"""What each check found for a name, on the policy's scale of four levels, the worst first."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from .. import policy
from ..lexicon.language_codes import language_name
from ..outcome import NotChecked
from ..plain_text import clauses, number, plural, shorten, some
from ..policy import EVERYWHERE, Conflict, Finding, Level, level_of
from ..text import parse
from .model import CHECKS, Addresses, CloseMark, Distinctiveness, NameEntry, Reading
from .own_findings import own_finding

__all__ = [
    "ALIKE", "MISSED", "UNASKED", "conflict_of", "finding_of", "findings", "goes_with_ours", "grade_words",
    "grades", "has_weak_words", "in_markets", "is_of_other_goods", "is_over", "mark_level", "matters", "milder",
    "other_goods_words", "words_read", "worst", "worst_title", "worst_words",
]  # fmt: skip

MISSED = "one in five"
"""Of pairs of marks that tribunals held similar overall, the share that stays below the first step: 0.16 of 153
pairs on 2026-11-28 (tests/bench/bench_levels.py)."""

ALIKE = 0.6
"""Appearance or sound from which a mark is not only close in what it says."""

_PLAINLY = 0.2  # by how much meaning outdoes form then; both ours, not fitted

NOT_JUDGED = "not judged"
"""What is said of a name of which it is not known what it is for the goods."""

UNASKED = "not looked up"
"""What is said of addresses that nobody was asked about."""

_MOST_NAMED = 2  # further marks that are named with the gravest; the rest are counted
_POOR_FIT, _FAIR_FIT = 0.3, 0.6  # fit below which an address is looked at closer, or minor (common practice, no source)


def mark_level(found: CloseMark) -> Level:
    """The level of one mark, by its concern."""
    return level_of(found.concern)


def grade_words(knockout: bool, level: Level) -> str:
    """How grave a mark is, as the reader sees it."""
    return "knockout" if knockout else level.words


def grades(found: CloseMark, markets: Sequence[str]) -> dict[str, tuple[bool, Level]]:
    """In each of `markets` where the marks of an owner hold, whether one is a knockout there, and its level; the higher
    the graver, in the order of the brief. A mark of another market says nothing of it, nor does how it is heard
    there."""
    told = {market: (found.knockout, mark_level(found)) for market in markets}
    told |= {one.market: (one.knockout, level_of(one.concern)) for one in found.levels if one.market in told}
    further = {market: (one.knockout, level_of(one.concern)) for one in found.elsewhere for market in one.markets}
    graded = further | told
    ordered = (one.market for one in found.levels if one.market in graded)
    return {market: graded[market] for market in dict.fromkeys((*ordered, *graded))}


def conflict_of(found: CloseMark) -> Conflict:
    """A mark as the policy looks at it."""
    goods = None if isinstance(found.goods, NotChecked) else found.goods.score
    ended, renewable = found.mark.is_dead, bool(found.renewable_until)
    return Conflict(found.appearance, found.sound, found.overall, goods, ended, found.bites, renewable=renewable)


def matters(entry: NameEntry) -> tuple[CloseMark, ...]:
    """The marks found for a name, those that ask for most attention first: by level, and in one level live ones before
    those that have ended or probably lapsed, knockouts first, those for the same or close goods before those for other
    goods, those that look or sound alike or say the whole name in another language before those alike in meaning alone,
    then by concern; ties keep the order of closeness."""
    marks = () if isinstance(entry.marks, NotChecked) else entry.marks
    return tuple(sorted(marks, key=_gravest_first))


def _gravest_first(found: CloseMark) -> tuple[float, ...]:
    over = found.lapsed or is_over(found)
    idea_alone = _in_meaning_alone(found) and not found.translation
    return -mark_level(found), over, not found.knockout, is_of_other_goods(found), idea_alone, -found.concern


def has_weak_words(found: CloseMark) -> bool:
    """Whether words of a mark are weak that stand in it as such: a part of a coined word that happens to be a word
    (kinder in larkinder) makes no weak mark."""
    return not set(parse(found.mark.text).words).isdisjoint(found.weak)


def is_over(found: CloseMark) -> bool:
    """Whether a mark has ended and cannot be renewed."""
    return found.mark.is_dead and not found.renewable_until


def _in_meaning_alone(found: CloseMark) -> bool:
    """Whether a mark is plainly closer in meaning than in form, and not close in form."""
    form = max(found.appearance, found.sound)
    return form < ALIKE and not isinstance(found.meaning, NotChecked) and found.meaning > form + _PLAINLY


def words_read(entry: NameEntry) -> tuple[Reading, ...]:
    """The readings of a name, one a word: of several meanings the worst decides, and stands first; worst first."""
    grouped: dict[tuple[str, str], list[Reading]] = {}
    readings = () if isinstance(entry.readings, NotChecked) else entry.readings
    for reading in sorted(readings, key=lambda one: (-one.severity, not one.abroad)):
        grouped.setdefault((reading.language, reading.word.casefold()), []).append(reading)
    return tuple(
        replace(
            same[0],
            meaning="; ".join(dict.fromkeys(one.meaning for one in same if one.meaning)),
            kind=", ".join(dict.fromkeys(one.kind for one in same)),
        )
        for same in grouped.values()
    )


def findings(entry: NameEntry) -> tuple[Finding, ...]:
    """One finding a check, in the order of `CHECKS`."""
    parts = (entry.marks, entry.distinctiveness, entry.readings, entry.addresses)
    return tuple(
        _unmade(check, part, entry) if isinstance(part, NotChecked) else _finding(check, part, entry)
        for check, part in zip(CHECKS, parts, strict=True)
    )


def _unmade(check: str, part: NotChecked, entry: NameEntry) -> Finding:
    """A check that was not made. A name that hangs on a word which may say anything of the goods asks for a closer
    look: that nobody knows it here is nothing in its favour."""
    if check == policy.OWN_CHECK and entry.unread:
        told = f'"{entry.unread[0].word}" may name or describe the goods: ask who speaks its language'
        return Finding(check, Level.LOOK, told, None, label=NOT_JUDGED)
    return Finding(check, Level.NOT_CHECKED, part.because, None)


def finding_of(entry: NameEntry, check: str) -> Finding:
    """What one of the checks (a key of `CHECKS`) found of a name."""
    return next(found for found in findings(entry) if found.check == check)


def worst(entry: NameEntry) -> Finding:
    """The finding that asks for most attention; the first of equals. Not checked only when nothing was."""
    return policy.worst(findings(entry))


def worst_words(entry: NameEntry) -> str:
    """The worst finding in words, with its check when it has one to name."""
    found = worst(entry)
    named = found.level not in (Level.NOTHING, Level.NOT_CHECKED) and not (found.bars and found.check != "marks")
    return worst_title(entry) + (f" ({CHECKS[found.check].lower()})" if named else "")


def worst_title(entry: NameEntry) -> str:
    """How grave the worst finding is, in a word or two: of marks the same as the mark's own row says."""
    found = worst(entry)
    return found.title if found.bars and found.label else found.level.words


def _finding(
    check: str,
    part: tuple[CloseMark, ...] | tuple[Reading, ...] | Distinctiveness | Addresses,
    entry: NameEntry,
) -> Finding:
    if isinstance(part, Distinctiveness):
        return own_finding(entry, part)
    if isinstance(part, Addresses):
        return _address_finding(part)
    if check == "marks":
        return _mark_finding(entry)
    return _reading_finding(entry)


def _mark_finding(entry: NameEntry) -> Finding:
    ordered = matters(entry)
    if not ordered:
        return Finding("marks", Level.NOTHING, "no mark came near", 1.0)
    level = mark_level(ordered[0])
    first = ordered[0] if level > Level.NOTHING else max(ordered, key=lambda found: found.overall)
    how_close = "" if first.translation else number(first.overall)
    where = in_markets(first) if level > Level.NOTHING else ""
    text = f"{shorten(first.mark.text, 30)} ({_listed(how_close, milder(first), where)})"
    if level is Level.NOTHING:
        text = f"closest {text}"
    text += "".join(f"; {one}" for one in _further(ordered[1:], level, first.knockout))
    label = "knockout" if first.knockout else ""
    reach = _reach(ordered, (first.knockout, level)) if level > Level.NOTHING else 0
    return Finding("marks", level, text, 1.0 - first.concern, first.knockout, label, reach)


def _reach(found: Sequence[CloseMark], grade: tuple[bool, Level]) -> int:
    """In how many markets a mark is of the gravest grade."""
    markets: set[str] = set()
    for one in found:
        held = one.held or [each.market for each in one.levels]
        if not held and (one.knockout, mark_level(one)) == grade:
            return EVERYWHERE  # in all of them, or nobody knows where
        markets.update(market for market, there in grades(one, held).items() if there == grade)
    return len(markets)


def _listed(*facts: str) -> str:
    return ", ".join(filter(None, facts))


def in_markets(found: CloseMark) -> str:
    """Where the marks of an owner bite, as grave as the gravest, and where less."""
    if not found.held and not found.levels:
        return ""
    by_grade: dict[tuple[bool, Level], list[str]] = {(found.knockout, mark_level(found)): []}
    for market, grade in grades(found, found.held or [one.market for one in found.levels]).items():
        by_grade.setdefault(grade, []).append(market)
    (_, gravest), *milder = by_grade.items()
    told = "".join(f", {grade_words(*grade)} in {some(markets)}" for grade, markets in sorted(milder, reverse=True))
    return f"in {some(gravest)}{told}"


def _further(found: Sequence[CloseMark], level: Level, knockout: bool) -> list[str]:
    """The further marks to look closer at, or graver, the first few by name; the level of each where it is another
    than that of the one before."""
    grave = [one for one in found if mark_level(one) >= Level.LOOK]
    told, before = [], grade_words(knockout, level)
    for one in grave[:_MOST_NAMED]:
        words = grade_words(one.knockout, mark_level(one))
        how_close = "" if one.translation else number(one.overall)
        about = _listed(how_close, milder(one), in_markets(one))
        told.append(f"{'' if words == before else f'{words}: '}{shorten(one.mark.text, 30)} ({about})")
        before = words
    more = len(grave) - _MOST_NAMED
    return [*told, *([f"{more} more to look at"] if more > 0 else [])]


def milder(found: CloseMark) -> str:
    """What makes a mark milder than its closeness, or near though it is not close, in a few words; "" if nothing
    does."""
    if found.renewable_until:
        return f"can be renewed until {found.renewable_until}"
    if found.mark.is_dead:
        return "dead"
    if found.lapsed:
        return "probably lapsed"
    if found.bites is False:
        return "other markets"
    if found.translation:
        return f"the name in {language_name(found.translation)}"
    return other_goods_words(found)


def other_goods_words(found: CloseMark) -> str:
    """What is said of a mark whose goods are no sort of ours, in a word or two; "" for others."""
    return "other goods" if is_of_other_goods(found) else policy.SOLD_TOGETHER if goes_with_ours(found) else ""


def is_of_other_goods(found: CloseMark) -> bool:
    """Whether a mark stands for goods that have little to do with ours."""
    if isinstance(found.goods, NotChecked):
        return False
    return found.goods.score < policy.OTHER_GOODS and not found.goods.together


def goes_with_ours(found: CloseMark) -> bool:
    """Whether a mark stands for goods that may be sold or used with ours, and are not the same or closely related."""
    if isinstance(found.goods, NotChecked):
        return False
    return found.goods.together and found.goods.score < policy.SAME_GOODS


def _reading_finding(entry: NameEntry) -> Finding:
    found = words_read(entry)
    if not found:
        languages = plural(len(entry.coverage), "language") if entry.coverage else "no language stated"
        return Finding("readings", Level.NOTHING, f"no bad word, in {languages}", 1.0)
    first = found[0]
    level = Level(max(0, min(3, first.severity)))
    if level is Level.NOTHING:
        far = next((one for one in found if one.abroad), None)
        if far:  # nothing against it where nobody reads it so
            word = f"{shorten(far.word, 20)}, {clauses(far.meaning or far.kind, 32)}"
            return Finding("readings", level, f"in your languages; {far.language}: {word}", 1.0)
        return Finding("readings", level, plural(len(found), "ordinary word"), 1.0)
    text = f"{first.language}: {shorten(first.word, 20)}, {clauses(first.meaning or first.kind, 32)}"
    return Finding("readings", level, text, 1.0 - level / 3)


def _address_finding(part: Addresses) -> Finding:
    """By the fit alone where nobody was asked, which is said, and counts nothing for the name; else by what is taken,
    too."""
    asked = [item for item in part.items if item.taken is not None]
    taken = sum(item.taken is True for item in asked)
    fit = f"fit {number(part.score)}"
    if not asked:
        level = Level.LOOK if part.score < _POOR_FIT else Level.MINOR if part.score < _FAIR_FIT else Level.NOTHING
        if level is Level.NOTHING:
            return Finding("addresses", level, fit, None, label=UNASKED)
        return Finding("addresses", level, f"{fit}; {UNASKED}", None)
    level = Level.LOOK if taken == len(asked) else Level.MINOR if taken or part.score < _FAIR_FIT else Level.NOTHING
    free = 1.0 - taken / len(asked)
    label = "none found" if level is Level.NOTHING else ""
    return Finding(
        "addresses", level, f"{fit}; {taken} of {len(asked)} taken", part.score * (0.5 + 0.5 * free), label=label
    )
