"""What each check found, on one scale of four steps, so that a reader sees the worst first.

A finding is an invitation to look, not a legal conclusion. "Nothing found" and "not checked" are different
things and never share a word or a shape.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import IntEnum

from ..outcome import NotChecked
from ..plain_text import number, plural, shorten
from .model import CHECKS, Addresses, CloseMark, Distinctiveness, NameEntry, Reading

__all__ = [
    *("PASSED_OVER", "STEPS", "Finding", "Level", "findings", "level_of"),
    *("mark_level", "matters", "words_read", "worst", "worst_words"),
]


class Level(IntEnum):
    """How much attention a finding asks for; a higher level asks for more. `NOT_CHECKED` stands outside the
    order."""

    NOT_CHECKED = -1
    NOTHING = 0
    MINOR = 1
    LOOK = 2
    SERIOUS = 3

    @property
    def words(self) -> str:
        """The level as the reader sees it."""
        return ("nothing found", "minor", "look closer", "serious", "not checked")[self.value]


@dataclass(frozen=True, slots=True)
class Finding:
    """One check of one name: its level, and the evidence in a few words. `value` in [0, 1] is what the
    comparison weighs, 1 = nothing speaks against the name; None when not checked."""

    check: str
    level: Level
    evidence: str
    value: float | None

    @property
    def words(self) -> str:
        """Level and evidence in one line; the reason of a check not made stands elsewhere."""
        if self.level is Level.NOT_CHECKED:
            return self.level.words
        if self.level is Level.NOTHING and self.check in ("distinctiveness", "addresses"):
            return self.evidence
        return f"{self.level.words}: {self.evidence}"


# Concern at or above which a mark asks for attention. Chosen, not fitted: so that a mark much like the name for
# the same goods is serious and the same mark for distant goods, or a dead one, is minor; and so low that few
# marks a tribunal would hold too near are passed over. How decided cases fall: tests/bench/bench_levels.py.
STEPS = ((0.75, Level.SERIOUS), (0.55, Level.LOOK), (0.35, Level.MINOR))

PASSED_OVER = "one in five"
"""Of pairs of marks that tribunals held similar overall, the share that stays below the first step: 0.18 of 76
pairs on 2026-11-25 (tests/bench/bench_levels.py)."""

_OTHER_GOODS = 0.3  # relatedness below which goods are called other goods (common practice, no source)
_POOR_FIT, _FAIR_FIT = 0.3, 0.6  # fit below which an address is looked at closer, or minor (common practice, no source)

# Suggestive, arbitrary and fanciful names are inherently distinctive (TMEP 1209.01): nothing to look into.
_CATEGORIES = {"generic": Level.SERIOUS, "descriptive": Level.LOOK}


def level_of(concern: float) -> Level:
    """The level of a mark's concern, in [0, 1]."""
    return next((level for least, level in STEPS if concern >= least), Level.NOTHING)


def mark_level(found: CloseMark) -> Level:
    """The level of one mark, by its concern."""
    return level_of(found.concern)


def matters(entry: NameEntry) -> tuple[CloseMark, ...]:
    """The marks found for a name, those that ask for most attention first; ties keep the order of
    closeness."""
    marks = () if isinstance(entry.marks, NotChecked) else entry.marks
    return tuple(sorted(marks, key=lambda found: (-mark_level(found), -found.concern)))


def words_read(entry: NameEntry) -> tuple[Reading, ...]:
    """The readings of a name, one a word: of several meanings the worst decides, and stands first; worst first."""
    grouped: dict[tuple[str, str], list[Reading]] = {}
    readings = () if isinstance(entry.readings, NotChecked) else entry.readings
    for reading in sorted(readings, key=lambda one: -one.severity):
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


def worst(entry: NameEntry) -> Finding:
    """The finding that asks for most attention; the first of equals. Not checked only when nothing was."""
    return max(findings(entry), key=lambda finding: finding.level)


def worst_words(entry: NameEntry) -> str:
    """The worst finding in words, with its check when it has one to name."""
    found = worst(entry)
    named = found.level not in (Level.NOTHING, Level.NOT_CHECKED)
    return found.level.words + (f" ({CHECKS[found.check].lower()})" if named else "")


def _finding(
    check: str,
    part: tuple[CloseMark, ...] | tuple[Reading, ...] | Distinctiveness | Addresses,
    entry: NameEntry,
) -> Finding:
    if isinstance(part, Distinctiveness):
        level = _CATEGORIES.get(part.category, Level.NOTHING)
        return Finding(check, level, f"{part.category} ({number(part.score)})", part.score)
    if isinstance(part, Addresses):
        return _address_finding(part)
    if check == "marks":
        return _mark_finding(entry)
    return _reading_finding(entry)


def _mark_finding(entry: NameEntry) -> Finding:
    ordered = matters(entry)
    if not ordered:
        return Finding("marks", Level.NOTHING, "no mark came near", 1.0)
    first = ordered[0]
    level = mark_level(first)
    text = f"{shorten(first.mark.text, 24)} ({number(first.overall)}{_aside(first)})"
    if first.knockout:
        text = f"knockout: {text}"
    elif level is Level.NOTHING:
        text = f"closest {text}"
    more = sum(mark_level(found) >= Level.LOOK for found in ordered[1:])
    if more:
        text += f" and {more} more"
    return Finding("marks", level, text, 1.0 - max(found.concern for found in ordered))


def _aside(found: CloseMark) -> str:
    """Why a close mark may yet concern nobody."""
    if found.mark.status == "dead":
        return ", dead"
    far = not isinstance(found.goods, NotChecked) and found.goods.score < _OTHER_GOODS
    return ", other goods" if far else ""


def _reading_finding(entry: NameEntry) -> Finding:
    found = words_read(entry)
    if not found:
        languages = plural(len(entry.coverage), "language") if entry.coverage else "no language stated"
        return Finding("readings", Level.NOTHING, f"in {languages}", 1.0)
    first = found[0]
    level = Level(max(0, min(3, first.severity)))
    if level is Level.NOTHING:
        return Finding("readings", level, plural(len(found), "ordinary word"), 1.0)
    text = f"{first.language}: {shorten(first.word, 20)}, {shorten(first.meaning or first.kind, 24)}"
    return Finding("readings", level, text, 1.0 - level / 3)


def _address_finding(part: Addresses) -> Finding:
    asked = [item for item in part.items if item.taken is not None]
    taken = sum(item.taken is True for item in asked)
    if not asked:
        level = Level.LOOK if part.score < _POOR_FIT else Level.MINOR if part.score < _FAIR_FIT else Level.NOTHING
        return Finding("addresses", level, f"fits {number(part.score)}; not asked", part.score)
    level = Level.LOOK if taken == len(asked) else Level.MINOR if taken or part.score < _FAIR_FIT else Level.NOTHING
    free = 1.0 - taken / len(asked)
    text = f"fits {number(part.score)}; {taken} of {len(asked)} taken"
    return Finding("addresses", level, text, part.score * (0.5 + 0.5 * free))
