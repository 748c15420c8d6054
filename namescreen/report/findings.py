"""What each check found for a name, on the policy's scale of four levels, the worst first."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from .. import policy
from ..lexicon.language_codes import language_name
from ..outcome import ASK_A_SPEAKER, NotChecked
from ..plain_text import clauses, number, plural, shorten, some
from ..policy import PLAINLY_DESCRIPTIVE, Conflict, Finding, Level, level_of
from ..territories import law_of
from ..text import parse
from .model import CHECKS, Addresses, CloseMark, Distinctiveness, NameEntry, Reading

__all__ = [
    "ALIKE", "MISSED", "NEAR_DESCRIPTIVE", "UNASKED", "WEAK", "aside", "conflict_of", "describes", "finding_of",
    "findings", "for_the_union_alone", "goes_with_ours", "is_of_other_goods", "is_over", "mark_level", "matters",
    "other_goods_words", "reasons_told", "tells_weak_words", "unread", "words_read", "worst", "worst_title",
    "worst_words",
]  # fmt: skip

MISSED = "one in five"
"""Of pairs of marks that tribunals held similar overall, the share that stays below the first step: 0.16 of 153
pairs on 2026-11-28 (tests/bench/bench_levels.py)."""

ALIKE = 0.6
"""Appearance or sound from which a mark is not only close in what it says."""

WEAK = "Weak in this field"
"""How the reason begins that tells which words of two names are weak."""
_AMERICAN = re.compile(r" \(TMEP [^()]*(\([^()]*\)[^()]*)*\)")
_QUOTED = re.compile(r'"([^"]+)"')

_PLAINLY = 0.2  # by how much meaning outdoes form then; both ours, not fitted

UNASKED = "not looked up"
"""What is said of addresses that nobody was asked about."""

_LAW_UNKNOWN = "known here"
"""How the law of a market on a sign ends that no table has."""
_MOST_NAMED = 2  # further marks that are named with the gravest; the rest are counted
_POOR_FIT, _FAIR_FIT = 0.3, 0.6  # fit below which an address is looked at closer, or minor (common practice, no source)

NEAR_DESCRIPTIVE = 0.55
"""Distinctiveness below which a suggestive name is called near the line (chosen, not fitted)."""


def mark_level(found: CloseMark) -> Level:
    """The level of one mark, by its concern."""
    return level_of(found.concern)


def conflict_of(found: CloseMark) -> Conflict:
    """A mark as the policy looks at it."""
    goods = None if isinstance(found.goods, NotChecked) else found.goods.score
    ended, renewable = found.mark.is_dead, bool(found.renewable_until)
    return Conflict(found.appearance, found.sound, found.overall, goods, ended, found.bites, renewable=renewable)


def matters(entry: NameEntry) -> tuple[CloseMark, ...]:
    """The marks found for a name, those that ask for most attention first: by level, and in one level live ones before
    those that have ended or probably lapsed, those for the same or close goods before those for other goods, those
    that look or sound alike before those alike in meaning alone, then by concern; ties keep the order of closeness."""
    marks = () if isinstance(entry.marks, NotChecked) else entry.marks
    return tuple(sorted(marks, key=_gravest_first))


def _gravest_first(found: CloseMark) -> tuple[float, ...]:
    over = found.lapsed or is_over(found)
    return -mark_level(found), over, is_of_other_goods(found), _in_meaning_alone(found), -found.concern


def tells_weak_words(reason: str, found: CloseMark) -> bool:
    """Whether a reason tells that words of a mark are weak: words that stand in it as such, for a part of a coined word
    that happens to be a word (kinder in larkinder) makes no weak mark."""
    return reason.startswith(WEAK) and not set(parse(found.mark.text).words).isdisjoint(_QUOTED.findall(reason))


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
        Finding(check, Level.NOT_CHECKED, part.because, None)
        if isinstance(part, NotChecked)
        else _finding(check, part, entry)
        for check, part in zip(CHECKS, parts, strict=True)
    )


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


def unread(found: Distinctiveness | NotChecked) -> str:
    """What is said of a word of the name that looks like one of a buyers' language and is in no list, so that it may
    say anything of the goods; "" if there is none."""
    told = (found.because,) if isinstance(found, NotChecked) else found.reasons
    return next((reason for reason in told if ASK_A_SPEAKER in reason), "")


def _finding(
    check: str,
    part: tuple[CloseMark, ...] | tuple[Reading, ...] | Distinctiveness | Addresses,
    entry: NameEntry,
) -> Finding:
    if isinstance(part, Distinctiveness):
        return _distinctiveness_finding(part)
    if isinstance(part, Addresses):
        return _address_finding(part)
    if check == "marks":
        return _mark_finding(entry)
    return _reading_finding(entry)


def _distinctiveness_finding(part: Distinctiveness) -> Finding:
    """A name of the goods is barred, one that plainly describes them in every market, and one with a sign kept from
    others: offices refuse these as a rule. Suggestive, arbitrary and fanciful names are inherently distinctive (TMEP
    1209.01): nothing to look into. What stands only in the way of an EU mark, not of a national one, is minor."""
    if for_the_union_alone(part):
        told = f"{part.shown} as an EU mark only"
        return Finding("distinctiveness", Level.MINOR, f"{told} ({number(part.score)})", part.score)
    level = Level.NOTHING
    if part.category == "descriptive":
        level = Level.SERIOUS if part.score < PLAINLY_DESCRIPTIVE else Level.LOOK
    plainly = part.category == "descriptive" and part.score < PLAINLY_DESCRIPTIVE
    bars = part.category == "generic" or (plainly and not part.differs and bool(part.markets))
    if level is Level.NOTHING and (asked := unread(part)):
        word = asked.split('"')[1] if '"' in asked else "a word"
        told = f'{part.shown} ({number(part.score)}) only if "{word}" says nothing of the goods'
        return Finding("distinctiveness", Level.LOOK, told, part.score)
    evidence = f"{part.shown} ({number(part.score)}){_where(part)}"
    if part.protected and (part.protected[0].serious or not bars):
        first = part.protected[0]
        level = max(level, Level.SERIOUS if first.serious else Level.LOOK)
        told = f'"{first.sign}": {clauses(first.reason, 90)}'
        if first.serious:  # however distinctive it is, others may not register it
            where = _kept_where(part)
            return Finding("distinctiveness", level, f"{where}{told}", 0.0, bars=True, label=part.shown)
        return Finding("distinctiveness", level, told, part.score)
    label = policy.LIKELY_REFUSED if bars else _unbarred(part) if level is Level.NOTHING else ""
    return Finding("distinctiveness", Level.SERIOUS if bars else level, evidence, part.score, bars, label)


def reasons_told(part: Distinctiveness) -> tuple[str, ...]:
    """The reasons for what a name is, without the American manual where no market is under its law."""
    if not part.markets or any(law_of(one.market) == "US" for one in part.markets):
        return part.reasons
    return tuple(_AMERICAN.sub("", reason) for reason in part.reasons)


def describes(entry: NameEntry) -> bool:
    """Whether a name describes the goods, and is not told apart as a place or a surname."""
    found = entry.distinctiveness
    return not isinstance(found, NotChecked) and found.category == "descriptive" and found.called in ("", "descriptive")


def for_the_union_alone(part: Distinctiveness) -> bool:
    """Whether a name meets a bar as an EU mark, which is judged in every language of the Union, and none in any of the
    markets, where a state of the Union is one of them."""
    own = [one for one in part.markets if one.market != "EU"]
    states = any(law_of(one.market) == "EU" for one in own)
    if not states or len(own) == len(part.markets):
        return False
    if any(one.serious for one in part.protected):
        return part.barred_in == ("EU",)
    barred = part.category in ("generic", "descriptive")
    return barred and not part.protected and all(one.called in _FREE for one in own)


_FREE = ("suggestive", "arbitrary", "fanciful")
"""What a name is called that is inherently distinctive."""


def _kept_where(part: Distinctiveness) -> str:
    """Where the law bars a name, if not in every market, to stand before what it bars; where the law is not known here
    that is not checked."""
    unknown = [law.partition(":")[0] for law in part.laws if law.endswith(_LAW_UNKNOWN)]
    ask = f", not checked in {some(unknown)}" if unknown else ""
    return f"in {some(part.barred_in)}{ask}: " if part.barred_in else ""


def _where(part: Distinctiveness) -> str:
    """In which markets a name is what it is called, where the others see it differently."""
    own = [one.market for one in part.markets if one.called == part.shown]
    return f" in {some(own)} only" if part.differs and own else ""


def _unbarred(part: Distinctiveness) -> str:
    """What is said of a name that is inherently distinctive."""
    near = part.category == "suggestive" and part.score < NEAR_DESCRIPTIVE
    return "borderline" if near else "distinctive"


def _mark_finding(entry: NameEntry) -> Finding:
    ordered = matters(entry)
    if not ordered:
        return Finding("marks", Level.NOTHING, "no mark came near", 1.0)
    level = mark_level(ordered[0])
    first = ordered[0] if level > Level.NOTHING else max(ordered, key=lambda found: found.overall)
    how_close = "" if first.translation else number(first.overall)
    where = _in_markets(first, level) if level > Level.NOTHING else ""
    text = f"{shorten(first.mark.text, 30)} ({(how_close + aside(first) + where).removeprefix(', ')})"
    if level is Level.NOTHING:
        text = f"closest {text}"
    text += "".join(f"; {one}" for one in _further(ordered[1:], level, first.knockout))
    label = "knockout" if first.knockout else ""
    return Finding("marks", level, text, 1.0 - first.concern, first.knockout, label)


def _in_markets(found: CloseMark, level: Level) -> str:
    """Where marks of these words bite, those of a lower level apart."""
    if not found.held:
        return ""
    alike = [market for one in found.elsewhere if level_of(one.concern) is level for market in one.markets]
    milder = [one for one in found.elsewhere if level_of(one.concern) is not level]
    told = "".join(f", {level_of(one.concern).words} in {some(one.markets)}" for one in milder)
    return f", in {some([*found.held, *alike])}{told}"


def _further(found: Sequence[CloseMark], level: Level, knockout: bool) -> list[str]:
    """The further marks to look closer at, or graver, the first few by name; the level of each where it is another
    than that of the one before."""
    grave = [one for one in found if mark_level(one) >= Level.LOOK]
    told, before = [], "knockout" if knockout else level.words
    for one in grave[:_MOST_NAMED]:
        words = "knockout" if one.knockout else mark_level(one).words
        how_close = "" if one.translation else number(one.overall)
        about = f"{how_close}{aside(one)}{_in_markets(one, mark_level(one))}".removeprefix(", ")
        told.append(f"{'' if words == before else f'{words}: '}{shorten(one.mark.text, 30)} ({about})")
        before = words
    more = len(grave) - _MOST_NAMED
    return [*told, *([f"{more} more to look at"] if more > 0 else [])]


def aside(found: CloseMark) -> str:
    """Why a close mark may yet concern nobody."""
    if found.renewable_until:
        return ", may be renewed"
    if found.mark.is_dead:
        return ", dead"
    if found.lapsed:
        return ", probably lapsed"
    if found.bites is False:
        return ", other markets"
    if found.translation:
        return f", the name in {language_name(found.translation)}"
    return f", {what}" if (what := other_goods_words(found)) else ""


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
        return Finding("readings", Level.NOTHING, f"in {languages}", 1.0)
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
    """By the fit alone where nobody was asked, which is said; else by what is taken, too."""
    asked = [item for item in part.items if item.taken is not None]
    taken = sum(item.taken is True for item in asked)
    fit = f"fit {number(part.score)}"
    if not asked:
        level = Level.LOOK if part.score < _POOR_FIT else Level.MINOR if part.score < _FAIR_FIT else Level.NOTHING
        if level is Level.NOTHING:
            return Finding("addresses", level, fit, part.score, label=UNASKED)
        return Finding("addresses", level, f"{fit}; {UNASKED}", part.score)
    level = Level.LOOK if taken == len(asked) else Level.MINOR if taken or part.score < _FAIR_FIT else Level.NOTHING
    free = 1.0 - taken / len(asked)
    label = "none found" if level is Level.NOTHING else ""
    return Finding(
        "addresses", level, f"{fit}; {taken} of {len(asked)} taken", part.score * (0.5 + 0.5 * free), label=label
    )
