"""How screenings are shown: a block a name and a ranking to read, rows for CSV, objects for JSON Lines."""

from __future__ import annotations

import sys
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from typing import TYPE_CHECKING, NamedTuple

from namescreen.outcome import NotChecked
from namescreen.plain_text import cell, in_one_sentence, number, shorten, some
from namescreen.policy import OWN_CHECK, Level
from namescreen.text import parse

from .mark_rows import below, mark_row, of_the_whole
from .output import Column, Format, Row, print_disclaimer, say_below, say_point, show, width
from .talk import at_once

if TYPE_CHECKING:
    from namescreen.brief import Brief
    from namescreen.policy import Finding
    from namescreen.report.model import CloseMark as Found
    from namescreen.report.model import NameEntry
    from namescreen.screening import CloseMark, Screening

__all__ = ["Outcome", "show_ranking", "show_rows", "show_screenings", "write_rows"]


def _alarm(row: Row) -> str:
    return "bold red" if row.get("knockout") or row.get("severity") == 3 else ""


MARKS = (
    Column("mark", "mark", style=_alarm),
    Column("overall", "overall", right=True, style=_alarm),
    Column("appearance", "look", right=True),
    Column("sound", "sound", right=True),
    Column("meaning", "meaning", right=True),
    Column("goods", "goods", right=True),
    Column("classes", "class", shrink=False),
    Column("remark", "", style=_alarm),
)
RANKING = (
    Column("name", "name", shrink=False),
    Column("worst", "worst finding", shrink=False, style=_alarm),
    Column("found", "what was found"),
)
CSV = tuple(
    Column(key, key)
    for key in (
        "name", "mark", "overall", "appearance", "sound", "meaning", "goods_relatedness", "knockout",
        "number", "office", "classes", "goods", "status", "owner", "source", "line", "marks", "reasons",
        "distinctiveness", "distinctiveness_score", "worst_reading", "not_checked", "deceptive",
    )
)  # fmt: skip

_BESIDE = 8
"""Columns of a line that a domain leaves: what a point is indented by, a comma, and the margin."""
_NEAREST = 3
"""Marks without a level that are named; JSON Lines and CSV have all."""

WITHOUT_GOODS = (
    "goods ?: your list does not say what the mark is for, so it counts as for the same goods; a CSV with columns name "
    "and goods tells"
)
"""What is said once where a list has marks without goods."""

LEGEND = (
    "overall, look, sound, meaning: closeness from 0 (nothing alike) to 1 (the same); coined: no meaning to compare",
    "goods: how related what both are for is, from 0 (not at all) to 1 (the same)",
    "levels, gravest first: knockout, serious, look closer, minor; marks without one are further off; a name that an "
    "office may well refuse for what it is stands beside a knockout, as likely refused. The order of marks is "
    "that of concern: overall, up to halved the less related the goods are, and halved for a mark that is dead or of "
    "other markets",
)
"""What stands in the table of marks, said once below all of them."""

_CHECK_WORDS = {
    "marks": "existing marks",
    "distinctiveness": "distinctiveness",
    "readings": "other languages",
    "addresses": "domain and handle",
}


class Outcome(NamedTuple):
    """What a run's exit code depends on: a name, its closest mark's overall closeness, what was not checked."""

    name: str
    closest: float
    not_checked: tuple[str, ...]

    @classmethod
    def of(cls, row: Row) -> Outcome:
        """The outcome in a screening as JSON types."""
        marks: list[dict[str, float]] = row["close_marks"]  # type: ignore[assignment]
        missing: list[dict[str, str]] = row["not_checked"]  # type: ignore[assignment]
        return cls(
            str(row["name"]),
            max((mark["overall"] for mark in marks), default=0.0),
            tuple(_plainly(NotChecked(one["check"], one["because"])) for one in missing),
        )

    @classmethod
    def found(cls, one: Screening) -> Outcome:
        """The outcome in a screening."""
        from namescreen.screening.json import number as rounded

        return cls(one.name, rounded(one.closest), tuple(map(_plainly, one.not_checked)))


def show_rows(found: Iterable[Row], form: Format) -> list[Outcome]:
    """Write screenings as JSON types, as they come."""
    outcomes: list[Outcome] = []

    def rows() -> Iterator[Row]:
        for row in found:
            outcomes.append(Outcome.of(row))
            yield row

    write_rows(rows(), form)
    print_disclaimer(form)
    return outcomes


def show_screenings(found: Iterable[Screening], form: Format, brief: Brief) -> list[Outcome]:
    """Show screenings to a reader as they come, then all of them in the order of the brief's weights."""
    done: list[Screening] = []
    said: set[str] = set()
    for one in found:
        with at_once():
            _show_one(one, brief.goods, form, said)
        done.append(one)
    with at_once():
        if any(one.close_marks and not isinstance(one.close_marks, NotChecked) for one in done):
            _head("How to read the marks", form)
            for line in LEGEND:
                say_point(line, form)
        _show_not_checked(done, form)
        if len(done) > 1:
            show_ranking(done, form, brief)
    print_disclaimer(form)
    return list(map(Outcome.found, done))


def write_rows(rows: Iterable[Row], form: Format) -> None:
    """Screenings as JSON types, to stdout as they come: a line of JSON each, or a CSV row for each close mark."""
    if form is Format.csv:
        show((flat for row in rows for flat in _csv_rows(row)), CSV, form)
    else:
        show(rows, (), form)


def show_ranking(found: Iterable[Screening], form: Format, brief: Brief) -> None:
    """All names in one table, in the order of the report: those with the mildest findings first."""
    from namescreen.report.assembly import entry_of, weights_of
    from namescreen.report.sensitivity import standings_of

    entries = {one.name: entry_of(one, with_reasons=False) for one in found}
    _head("At a glance, least against it first", form)
    order = standings_of(entries.values(), weights_of(brief))
    show([_ranking_row(entries[row.name]) for row in order], RANKING, form)


def _ranking_row(entry: NameEntry) -> Row:
    """A name, its worst finding, and what was found, the worst first."""
    from namescreen.report.findings import findings, worst, worst_title

    each = sorted(findings(entry), key=lambda one: (-one.level, not one.bars))
    telling = [one for one in each if one.level > Level.NOTHING] or each[:1]
    unmade = [_CHECK_WORDS[one.check] for one in each if one.level is Level.NOT_CHECKED]
    title = worst_title(entry)
    told = [_told(one, title) for one in telling if one.level is not Level.NOT_CHECKED]
    return {
        "name": entry.name,
        "worst": title,
        "found": "; ".join([*told, *([f"not checked: {some(unmade)}"] if unmade else [])]),
        "knockout": worst(entry).bars,
    }


def _told(found: Finding, title: str) -> str:
    """A finding in the table of all names, where no heading says which check it is of; its label unless that is the
    `title` of the worst finding, which stands beside it."""
    if found.check == "addresses":
        return f"as an address: {found.evidence.partition(';')[0]}"
    return found.words if found.label not in ("", title) else found.evidence


def _show_one(one: Screening, goods: str, form: Format, said: set[str]) -> None:
    """Write all about a name; what holds for several names is told once, and kept in `said`."""
    from namescreen.report.assembly import entry_of
    from namescreen.report.findings import finding_of, worst_words
    from namescreen.report.own_findings import DISTINCTIVE

    entry = entry_of(one, with_reasons=False)
    _head(one.name, form)
    say_point(f"worst finding: {worst_words(entry)}", form)
    if isinstance(one.close_marks, NotChecked):
        say_point(_plainly(one.close_marks), form)
    elif not one.close_marks:
        say_point("no mark in the lists came near it", form)
    else:
        if goods and WITHOUT_GOODS not in said and any(_unknown_goods(mark) for mark in one.close_marks):
            said.add(WITHOUT_GOODS)
            say_point(WITHOUT_GOODS, form)
        _show_marks(entry, one.close_marks, goods, form)
    if isinstance(one.distinctiveness, NotChecked):
        say_point(_plainly(one.distinctiveness), form)
    else:
        judged = entry.distinctiveness
        own = finding_of(entry, OWN_CHECK)  # as the table of all names says it
        head = own.evidence if own.label == DISTINCTIVE else own.words
        why = () if isinstance(judged, NotChecked) else judged.reasons
        reasons = "; ".join(one for one in why if one not in head)
        say_point(f"distinctiveness: {head}" + (f"; {reasons}" if reasons else ""), form)
        laws = "; ".join(one.distinctiveness.laws)
        if laws and laws not in said:
            said.add(laws)
            say_point(f"what offices may object to, from memory: {laws}; each office decides", form)
    if not isinstance(one.readings, NotChecked):
        bad = [reading for reading in one.readings if reading.severity > 0]
        for reading in bad[:3]:
            say_point(f"reads as {reading}", form)
        far = [reading for reading in one.readings if reading.abroad]
        if not bad:
            languages = "your languages" if far else ", ".join(coverage.language for coverage in one.coverage)
            say_point(f"no unlucky reading found in {languages}", form)
        if far:
            words = "; ".join(f"{bad.language} {bad.word} ({bad.meaning or bad.kind})" for bad in far[:3])
            say_point(f"in languages of no market of yours, nothing against it: {words}", form)
    if not isinstance(one.addresses, NotChecked):
        first = ", ".join(_in_a_line(domain.shown) for domain in one.addresses.domains[:4])
        handle = one.addresses.everywhere
        told = [first, f"handle {handle}" if handle else "", *one.addresses.reasons]
        fit = number(one.addresses.score)
        say_point(f"addresses (nobody was asked): fit {fit}; {'; '.join(filter(None, told))}", form)


def _in_a_line(domain: str) -> str:
    """A domain, cut before its ending where it is longer than a line: no terminal can set it whole."""
    room = width() - _BESIDE
    name, dot, ending = domain.partition(".")
    return domain if len(domain) <= room else f"{name[: room - len(dot + ending) - 1]}…{dot}{ending}"


def _show_marks(entry: NameEntry, found: Sequence[CloseMark], goods: str, form: Format) -> None:
    """The marks with a level, or the nearest of those without, and the reasons of the gravest; the rest in a line."""
    from namescreen.report.findings import matters
    from namescreen.report.mark_choice import marks_shown
    from namescreen.screening.crowd import past_cases_tell

    of = {id(mark.mark): mark for mark in found}
    ordered = [of[id(mark.mark)] for mark in matters(entry)]  # the report's order and choice
    shown = [of[id(mark.mark)] for mark in marks_shown(entry)]
    telling = ordered[0].level > Level.NOTHING
    facts = {id(mark.mark): mark for mark in matters(entry)}
    texts = Counter(parse(mark.mark.text).letters for mark in shown)
    whose = [shorten(mark.mark.owner, 40) if texts[parse(mark.mark.text).letters] > 1 else "" for mark in shown]
    rows = [mark_row(mark, facts[id(mark.mark)], owner) for mark, owner in zip(shown, whose, strict=True)]
    if form is Format.markdown:
        sys.stdout.write("\n")  # else the table would be part of the list above it
    show(rows, [column for column in MARKS if column.key != "classes" or any(row["classes"] for row in rows)], form)
    if form is Format.markdown:
        sys.stdout.write("\n")
        for mark in shown:
            if told := below(mark):
                say_point(f"{mark.mark.text}: {told}", form)
    heads = {level: f"also {level.words}" for level in sorted(Level, reverse=True) if level > Level.NOTHING}
    heads[Level.NOTHING] = "further off, below minor" if telling else "further off"
    for level, head in heads.items():
        further = [mark for mark in ordered if mark.level is level and mark not in shown]
        if further:
            named = [_briefly(mark, facts[id(mark.mark)], entry, goods) for mark in further[:_NEAREST]]
            more = [f"{len(further) - _NEAREST:,} more"] if len(further) > _NEAREST else []
            say_point(f"{head}: {some([*named, *more])}", form)
    if not telling:
        return
    gravest = ordered[0]
    for reason in gravest.closeness.reasons:
        if reason not in of_the_whole(gravest):  # else it stands under its mark
            say_point(f"{gravest.mark.text}: {reason}", form)
    if gravest.level < Level.LOOK or gravest.translation:  # past pairs were of one language
        return
    if past_cases_tell(gravest.conflict, entry.category, entry.words, gravest.mark.text, goods):
        say_point(gravest.closeness.calibration.statement_for(gravest.mark.text), form)


def _unknown_goods(close: CloseMark) -> bool:
    return isinstance(close.goods_relatedness, NotChecked)


def _briefly(close: CloseMark, found: Found, entry: NameEntry, goods: str) -> str:
    """A mark in a line whose head says its level, with what makes it milder and why it is named all the same."""
    from namescreen.report.findings import milder
    from namescreen.report.mark_choice import why_named

    told = ", ".join(dict.fromkeys(filter(None, (milder(found), why_named(found, entry, goods)))))
    return f"{close.mark.text} ({number(close.closeness.overall)}{told and f', {told}'})"


def _show_not_checked(found: Sequence[Screening], form: Format) -> None:
    """The checks that were not made, each once, with its names unless it concerns all."""
    names: dict[NotChecked, list[str]] = {}
    for one in found:
        for missing in one.not_checked:
            if missing != one.close_marks:
                names.setdefault(missing, []).append(one.name)
    if names:
        _head("Not checked", form)
    for missing, whose in names.items():
        whom = "" if len(whose) == len(found) else f" ({shorten(', '.join(whose), 60)})"
        say_point(f"{_label(missing)}{whom}: {missing.because}", form)


def _plainly(missing: NotChecked) -> str:
    return f"{_label(missing)}: not checked, because {missing.because}"


def _label(missing: NotChecked) -> str:
    """A check in plain words."""
    return missing.check.replace("_", " ")


def _head(text: str, form: Format) -> None:
    sys.stdout.write(f"\n## {cell(text)}\n\n" if form is Format.markdown else "\n")
    if form is not Format.markdown:
        say_below(text, indent="")


def _csv_rows(row: Row) -> Iterator[Row]:
    """A row for each close mark; a name without any has one row, so that none is lost."""
    judged: dict[str, object] = row["distinctiveness"]  # type: ignore[assignment]
    readings: list[dict[str, object]] = row["readings"]  # type: ignore[assignment]
    marks: list[dict[str, object]] = row["close_marks"]  # type: ignore[assignment]
    about = {
        "name": row["name"],
        "distinctiveness": judged.get("category"),
        "distinctiveness_score": judged.get("score"),
        "worst_reading": next((f"{one['language']}: {one['word']}" for one in readings if one["severity"]), None),
        "not_checked": list(Outcome.of(row).not_checked),
        "deceptive": judged.get("deceptive"),
    }
    for mark in marks or [{}]:
        # A score that could not be had leaves its cell empty; the reason stands in JSON Lines.
        cells = {key: None if isinstance(value, dict) else value for key, value in mark.items()}
        reasons: list[str] = mark.get("reasons", [])  # type: ignore[assignment]
        yield {**cells, "reasons": in_one_sentence(reasons), **about}
