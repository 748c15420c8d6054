"""The names one by one: what was found about each, and what to ask."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from ..connotations.languages import language_name
from ..marks.mark import Mark
from ..outcome import DISCLAIMER, NotChecked
from ..plain_text import cell, in_one_sentence, number, plural, score_words, shorten, some, table
from ..policy import Level
from .coverage import never_checked, not_checked_words
from .findings import mark_level, matters, words_read, worst_words
from .model import Address, Addresses, CloseMark, Distinctiveness, NameEntry, Report
from .questions import questions
from .sensitivity import standings

__all__ = ["MARK_HEADS", "mark_cells", "marks_shown", "name_pages", "register_cells"]

_LACKS = "not stated"
_MAY_LACK = ("Number", "Owner", "Classes", "Status")
"""Columns left out where no mark shown states them, as in a list typed by hand."""

MARK_HEADS = ("Mark", *_MAY_LACK, "Appearance", "Sound", "Meaning", "Overall", "Goods", "Why")
"""Headings of the table of closest marks."""
_FURTHER_HEADS = ("Further mark", *_MAY_LACK)

# Rows of a name's tables; the JSON form has everything (common practice, no source).
_FEWEST_MARKS, _MOST_MARKS, _MOST_READINGS = 3, 10, 10
_MOST_OTHERS = 10  # further marks of the same words
_DOMAINS, _HANDLES = 4, 2
_ORDINARY = 3  # readings of severity 0 that are shown
_CLOSE = 0.5  # overall closeness from which a mark is shown whatever its goods
_ALIKE = 0.4  # closeness in one aspect from which its reason is told


def name_pages(report: Report) -> Iterable[str]:
    """The section of the names, in the order of the comparison."""
    yield "## The names, one by one"
    entries = {entry.name: entry for entry in report.names}
    common = never_checked(report)
    for row in standings(report):
        yield from _name(entries[row.name], report, common)


def _name(entry: NameEntry, report: Report, common: Sequence[NotChecked]) -> Iterable[str]:
    parts = (entry.marks, entry.distinctiveness, entry.readings, entry.addresses)
    yield f"### {cell(shorten(entry.name, 120))}"
    made = [
        part
        for part in (
            f"Construction: {cell(shorten(entry.construction, 200))}." if entry.construction else "",
            f"Meaning, a nearby word in brackets: {cell(shorten(entry.meaning, 200))}." if entry.meaning else "",
            f"Worst finding: **{worst_words(entry)}**.",
        )
        if part
    ]
    yield " ".join(made)
    yield "**Questions for the adviser**"
    asked = questions(entry, report)
    yield (
        "\n".join(f"{at}. {cell(question)}" for at, question in enumerate(asked, 1))
        if asked
        else "None beyond those on the whole list: no finding calls for one."
    )
    yield from _marks(entry)
    yield from _distinctiveness(entry)
    yield from _readings(entry)
    yield from _addresses(entry)
    own = [item for item in entry.not_checked if item not in (*common, *parts)]
    if own:
        yield "**Not checked**"
        yield "\n".join(f"- {not_checked_words(item)}" for item in own)
    yield DISCLAIMER


def _marks(entry: NameEntry) -> Iterable[str]:
    yield "**Closest marks**"
    if isinstance(entry.marks, NotChecked):
        yield f"Not checked, because {cell(entry.marks.because)}."
        return
    ordered = matters(entry)
    if not ordered:
        yield "Nothing found: no mark in the lists came near."
        return
    shown = marks_shown(entry)
    rows = [mark_cells(found) for found in shown]
    lacking = _lacking(MARK_HEADS, rows)
    yield _table_without(lacking, MARK_HEADS, rows)
    more = len(ordered) - len(shown)
    rest = f" {plural(more, 'mark')} less close left to the JSON and CSV forms." if more > 0 else ""
    order = "Closeness and goods from 0 to 1, 1 = identical; those asking for most attention first."
    unstated = some(head.lower() for head in lacking).capitalize()
    yield f"{order}{f' {unstated}: {_LACKS} in the list.' if unstated else ''}{rest}"
    yield from _further_marks(shown)


def _lacking(heads: Sequence[str], rows: Sequence[Sequence[str]]) -> list[str]:
    """The headings under which no row states anything."""
    return [head for at, head in enumerate(heads) if head in _MAY_LACK and all(row[at] == _LACKS for row in rows)]


def _table_without(lacking: Sequence[str], heads: Sequence[str], rows: Sequence[Sequence[str]]) -> str:
    told = [at for at, head in enumerate(heads) if head not in lacking]
    return table([heads[at] for at in told], [[row[at] for at in told] for row in rows])


def _further_marks(shown: Sequence[CloseMark]) -> Iterable[str]:
    """The marks that have the same words as those shown, and how many of them are left out."""
    rows = [register_cells(mark) for found in shown for mark in found.others[:_MOST_OTHERS]]
    if not rows:
        return
    yield "**Further marks of the same words**"
    yield _table_without(_lacking(_FURTHER_HEADS, rows), _FURTHER_HEADS, rows)
    unlisted = [(found, found.marks - 1 - len(found.others[:_MOST_OTHERS])) for found in shown]
    left = [f"{plural(count, 'more mark')} like {shorten(found.mark.text, 60)}" for found, count in unlisted if count]
    told = "Each as close as the mark above that has its words; those asking for most attention first."
    yield told + (f" Not listed here: {cell(some(left))}." if left else "")


def register_cells(mark: Mark) -> tuple[str, ...]:
    """What the register says of a mark, as raw text: its words, then what stands under `_MAY_LACK`."""
    number_as_cited = mark.number if mark.number.startswith(mark.office) else f"{mark.office} {mark.number}"
    return (
        shorten(mark.text, 60),
        shorten(number_as_cited, 40) if mark.number else _LACKS,
        shorten(mark.owner, 48) or _LACKS,
        " ".join(map(str, mark.classes)) or _LACKS,
        mark.status or _LACKS,
    )


def marks_shown(entry: NameEntry) -> tuple[CloseMark, ...]:
    """The marks worth an adviser's minute: those above "nothing found" and those close by name alone; where there
    is none, the first few, so that "nothing found" can be judged."""
    ordered = matters(entry)
    worth = [found for found in ordered if mark_level(found) > Level.NOTHING or found.overall >= _CLOSE]
    return tuple(worth[:_MOST_MARKS] or ordered[:_FEWEST_MARKS])


def mark_cells(found: CloseMark) -> tuple[str, ...]:
    """The cells of a mark's row under `MARK_HEADS`, as raw text."""
    level = mark_level(found)
    reasons = [reason for reason in found.reasons if _telling(reason, found)]
    if not isinstance(found.goods, NotChecked) and found.goods.reasons:
        reasons.append(f"goods: {found.goods.reasons[0]}")
    told = in_one_sentence(reasons) or ("little alike" if found.overall < _ALIKE else "no reason given")
    return (
        *register_cells(found.mark),
        number(found.appearance),
        number(found.sound),
        score_words(found.meaning),
        number(found.overall),
        "not checked" if isinstance(found.goods, NotChecked) else number(found.goods.score),
        shorten(f"{'knockout' if found.knockout else level.words}: {told}", 260),
    )


def _telling(reason: str, found: CloseMark) -> bool:
    """Whether a reason says more than the number beside it: not for an aspect in which little is alike."""
    aspect = reason.partition(":")[0].lower()
    if aspect not in ("appearance", "sound", "meaning"):
        return True
    value = getattr(found, aspect)
    return not isinstance(value, NotChecked) and value >= _ALIKE


def _distinctiveness(entry: NameEntry) -> Iterable[str]:
    found = entry.distinctiveness
    yield "**Distinctiveness for the goods**"
    if isinstance(found, NotChecked):
        yield f"Not checked, because {cell(found.because)}."
        return
    yield f"{found.category.capitalize()}, {number(found.score)} of 1. {_sentences(found)}".rstrip()


def _sentences(found: Distinctiveness) -> str:
    told = [*found.reasons[:5], *([f"Hint: {found.hint}"] if found.hint else ())]
    return " ".join(_sentence(text) for text in told)


def _sentence(text: str) -> str:
    text = shorten(text, 260)
    return cell(text[:1].upper() + text[1:] + ("" if text.endswith((".", "!", "?", "…")) else "."))


def _readings(entry: NameEntry) -> Iterable[str]:
    yield "**In other languages**"
    if isinstance(entry.readings, NotChecked):
        yield f"Not checked, because {cell(entry.readings.because)}."
        return
    covered = ", ".join(language_name(tag) for tag in entry.coverage)
    looked = f"Languages looked at: {cell(covered)}." if covered else ""
    words = words_read(entry)
    bad = [one for one in words if one.severity]
    shown = [*bad[:_MOST_READINGS], *words[len(bad) : len(bad) + _ORDINARY]]
    if not shown:
        yield f"Nothing found. {looked}".rstrip()
        return
    yield table(
        ("Language", "Word", "Meaning", "Kind", "Severity (0 to 3)", "How it matches"),
        [
            (
                language_name(one.language),
                shorten(one.word, 40),
                shorten(one.meaning, 80) or "not known",
                one.kind,
                str(one.severity),
                shorten(one.match, 60),
            )
            for one in shown
        ],
    )
    more = len(words) - len(shown)
    rest = f"{plural(more, 'milder word')} left to the JSON form. " if more > 0 else ""
    if rest or looked:
        yield f"{rest}{looked}".rstrip()


def _addresses(entry: NameEntry) -> Iterable[str]:
    yield "**Domain and handle**"
    found = entry.addresses
    if isinstance(found, NotChecked):
        yield f"Not checked, because {cell(found.because)}."
        return
    reasons = " ".join(_sentence(reason) for reason in found.reasons[:4])
    yield f"Fit {number(found.score)} of 1. {reasons}".rstrip()
    shown = [one for kind, most in (("domain", _DOMAINS), ("handle", _HANDLES)) for one in _of(found, kind)[:most]]
    if shown:
        rows = [(one.kind, shorten(one.text, 80), one.how, shorten(one.finding, 80) or "not asked") for one in shown]
        yield table(("Kind", "Address", "How", "Taken?"), rows)


def _of(found: Addresses, kind: str) -> list[Address]:
    """The addresses of one kind, those that somebody was asked about first."""
    return sorted((one for one in found.items if one.kind == kind), key=lambda one: not one.finding)
