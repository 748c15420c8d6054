"""The first page of a report, which stands alone: what was found, what falls, what is open, each name in a line, what
to do next and what to ask."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence

from ..lexicon.language_codes import language_name
from ..outcome import DISCLAIMER, NotChecked
from ..plain_text import cell, clauses, plural, shorten, some, visible
from ..policy import ADDRESS_CHECK, BARRED, DECEPTIVE, LIKELY_REFUSED, OWN_CHECK, Finding, Level
from .comparison import Changes
from .coverage import unsearched_markets
from .findings import MISSED, UNASKED, finding_of, findings, grades, matters, worst, worst_title, worst_words
from .layout import Either, Part, Table
from .model import CHECKS, CloseMark, NameEntry, Report
from .open_markets import also_closed, held_where, open_markets
from .own_findings import depends_on_buyers
from .questions import general_questions
from .record import next_steps, title_of
from .sensitivity import Standing, places, standings

__all__ = ["first_page"]

_BRIEFLY = {"marks": "Marks", "distinctiveness": "Distinctive", "readings": "Languages", "addresses": "Address"}
"""The checks in a table that has no room for more."""
_MOST_TOLD = 12  # names told in one sentence; more are counted


def first_page(report: Report, changes: Changes | None = None) -> Iterable[Part]:
    """The page that the maker takes along; the evidence for the adviser follows it."""
    yield from _head(report)
    yield "## In short"
    lines = (*_in_short(report), *(_changed(changes) if changes else ()))
    yield "\n".join(f"- {line}" for line in lines)
    yield (
        "This is what an automatic comparison found in the lists named in the record below, and no legal advice. "
        "Rights can exist without registration and reach beyond their goods; the law differs by country. This page is "
        "for the maker; what follows is the evidence for the adviser."
    )
    yield from _glance(report)
    yield from next_steps(report)
    yield "## Questions on the whole list"
    yield "\n".join(f"{at}. {cell(question)}" for at, question in enumerate(general_questions(report), 1))


def _head(report: Report) -> Iterable[str]:
    """What the report is on, in a few lines: what was found follows at once."""
    yield f"# {cell(title_of(report))}"
    cut = visible(report.product) not in title_of(report)
    classes = f"{'class' if len(report.classes) == 1 else 'classes'} {', '.join(map(str, report.classes))}"
    spoken = f"; languages of the buyers: {', '.join(report.languages)}" if report.languages else ""
    facts = [
        *([("Product", report.product)] if cut else []),
        ("Goods", f"{report.goods or 'not stated'} ({classes if report.classes else 'Nice classes not stated'})"),
        ("Markets", f"{', '.join(report.markets) or 'not stated'}{spoken}"),
        ("Date", f"{report.date}, from {report.date_from}; made with namescreen {report.version}"),
    ]
    yield "\n".join(f"- {key}: {cell(value)}" for key, value in facts)
    yield f"**{DISCLAIMER}**"


def _in_short(report: Report) -> Iterable[str]:
    """What was found, what falls and what is open, a sentence or two each; then which name has least against it."""
    order = standings(report)
    entries = {entry.name: entry for entry in report.names}
    yield f"**Found.** {_found(report, order, entries)}"
    yield f"**Falls.** {_falls(report, [row for row in order if row.group >= BARRED], entries)}"
    yield f"**Open.** {' '.join(_open(report, order, entries))}"
    if len(order) > 1:
        yield _first(report, order, entries)


def _found(report: Report, order: Sequence[Standing], entries: Mapping[str, NameEntry]) -> str:
    """How many names were compared with what, and how many are of each kind."""
    rows = sum(item.rows_read for item in report.lists)
    compared = (
        f"compared with {plural(rows, 'row')} in {plural(len(report.lists), 'list')} of marks"
        if report.lists
        else "compared with no list of marks"
    )
    count = Counter(row.group for row in order)
    told = [
        f"{count[group]} {one if count[group] == 1 else several}"
        for group, one, several in (
            (BARRED, "falls", "fall"),
            (Level.SERIOUS, "has something serious against it", "have something serious against them"),
            (Level.LOOK, "asks for a closer look", "ask for a closer look"),
        )
        if count[group]
    ]
    rest = [entries[row.name] for row in order if row.group < Level.LOOK]
    free = [entry.name for entry in rest if not isinstance(entry.marks, NotChecked)]
    unseen = [entry.name for entry in rest if isinstance(entry.marks, NotChecked)]
    where = "that list" if len(report.lists) == 1 else "these lists"
    if free:
        told.append(f"{len(free)} {'has' if len(free) == 1 else 'have'} nothing graver than minor in {where} "
                    f"({_few(free)})")  # fmt: skip
    if unseen:
        told.append(f"of {len(unseen)} nothing is known, as existing marks were not checked ({_few(unseen)})")
    if not rest and len(order) > 1:
        told.append("none is free of such findings")
    were = "was" if len(order) == 1 else "were"
    missing = unsearched_markets(report)
    little = (
        f" No row is said to be of the trade mark office of {some(missing, 'or')}, so that *nothing found* says little "
        "there until these are searched."
        if missing and report.lists
        else ""
    )
    return f"{plural(len(order), 'name')} {were} {compared}" + (f": {some(told)}." if order else ".") + little


def _falls(report: Report, rows: Sequence[Standing], entries: Mapping[str, NameEntry]) -> str:
    """The names with a knockout, or that an office is likely to refuse, each with why."""
    if not rows:
        return "No name falls by what was found."
    markets = len(report.markets) or 1
    apart = [row for row in rows if row.reach < markets and open_markets(entries[row.name], report)]
    whole = [row for row in rows if row not in apart]
    told = []
    partly = "Falls in some markets, and nothing serious stands in those that are left"
    for those, words in ((whole, "Strike, or ask about first"), (apart, partly)):
        each = ((row.name, entries[row.name]) for row in those)
        why = ((name, _why_it_falls(one) + _serious_in(one, report) + _left_in(one, report)) for name, one in each)
        names = [f"{cell(shorten(name, 40))} ({cell(told_of)})" for name, told_of in why]
        more = [plural(len(names) - _MOST_TOLD, "more name")] if len(names) > _MOST_TOLD else []
        told += [f"{words}: {'; '.join([*names[:_MOST_TOLD], *more])}."] if names else []
    return " ".join(told)


def _why_it_falls(entry: NameEntry) -> str:
    """The marks that bar a name, and what an office may refuse it for."""
    knockouts = [found for found in matters(entry) if found.knockout]
    marks = [f"{shorten(found.mark.text, 40)} {_knocked_out_in(found)}".rstrip() for found in knockouts]
    unknown = any(isinstance(found.goods, NotChecked) for found in knockouts)
    goods = "the goods could not be compared" if unknown else ""
    told = [", ".join(filter(None, (f"knockout: {some(marks)}", goods)))] if marks else []
    own = finding_of(entry, OWN_CHECK)
    if own.bars:
        told.append(own.words)
    return "; ".join(told)


def _serious_in(entry: NameEntry, report: Report) -> str:
    """What is serious in markets where a name that falls elsewhere does not, after why it falls."""
    told = [f"{shorten(mark, 40)} in {some(markets)}" for mark, markets in also_closed(entry, report).items()]
    return f"; serious: {some(told)}" if told else ""


def _left_in(entry: NameEntry, report: Report) -> str:
    """In which markets a name that falls may be kept, after why it falls."""
    left, part = open_markets(entry, report), entry.distinctiveness
    if not left or len(left) == len(report.markets):
        return ""
    unless = not isinstance(part, NotChecked) and depends_on_buyers(part, left)
    return f"; left: {some(left)}{', as far as buyers there do not understand it' if unless else ''}"


def _knocked_out_in(found: CloseMark) -> str:
    """In which markets a mark is a knockout; "" if in all of them."""
    where = [market for market, (knockout, _) in grades(found, held_where(found)).items() if knockout]
    return f"in {some(where)}" if where else ""


def _open(report: Report, order: Sequence[Standing], entries: Mapping[str, NameEntry]) -> Iterable[str]:
    """What an adviser, the maker or an office has to look at yet: the names that are neither struck nor free, what was
    not checked, and which registers were not searched."""
    kept = [row for row in order if row.group < BARRED]
    for level, words in ((Level.SERIOUS, "Serious until an adviser has looked"), (Level.LOOK, "To look closer at")):
        those = [entries[row.name] for row in kept if row.group == level]
        names = [f"{cell(shorten(entry.name, 40))} ({cell(_why(entry))})" for entry in those]
        more = [plural(len(names) - _MOST_TOLD, "more name")] if len(names) > _MOST_TOLD else []
        if names:
            yield f"{words}: {'; '.join([*names[:_MOST_TOLD], *more])}."
    asked = [entries[row.name] for row in kept if entries[row.name].unread]
    unjudged = [entry.name for entry in asked if isinstance(entry.distinctiveness, NotChecked)]
    if unjudged:
        yield f"What it is for the goods could not be judged, so it may be refused for that: {_few(unjudged)}."
    if unsure := [entry.name for entry in asked if entry.name not in unjudged]:
        yield f"Ask a speaker of each market's language whether it says anything of the goods: {_few(unsure)}."
    yield from _skipped(report)
    yield "Not searched: what is in no list, use that nobody registered, company names."
    if any(map(_is_unasked, report.names)):
        yield "Whether a domain or handle is free was not looked up."


def _why(entry: NameEntry) -> str:
    """What the worst finding of a name is about: the mark, or the evidence."""
    found = worst(entry)
    if found.level < Level.LOOK:  # it is open for what was not checked
        lacking = (CHECKS[one.check].lower() for one in findings(entry) if one.level is Level.NOT_CHECKED)
        return f"not checked: {some(lacking)}"
    return shorten(matters(entry)[0].mark.text, 40) if found.check == "marks" else found.evidence


def _is_unasked(entry: NameEntry) -> bool:
    """Whether nobody was asked if the addresses of a name are free."""
    found = finding_of(entry, ADDRESS_CHECK)
    return found.title == UNASKED or found.evidence.endswith(UNASKED)


def _skipped(report: Report) -> Iterable[str]:
    """Which checks were not made, and for which names, told together where the names are the same."""
    lacking: dict[tuple[str, ...], list[str]] = {}
    for at, check in enumerate(CHECKS):
        names = tuple(entry.name for entry in report.names if findings(entry)[at].level is Level.NOT_CHECKED)
        if names:
            lacking.setdefault(names, []).append(CHECKS[check].lower())
    for names, checks in lacking.items():
        whom = "every name" if len(names) == len(report.names) else _few(names)
        yield f"Not checked for {whom}: {some(checks)}."
    spoken = {one.check for entry in report.names for one in entry.not_checked if one.check.startswith("readings in ")}
    if spoken:
        yield f"Not read: {some(one.removeprefix('readings in ') for one in sorted(spoken))}."


def _first(report: Report, order: Sequence[Standing], entries: Mapping[str, NameEntry]) -> str:
    """Which name stands first, or that none does: a serious finding is never passed over."""
    first = order[0]
    if first.group >= Level.SERIOUS:
        return "No name can be put first: something serious stands against each."
    if all(isinstance(entry.marks, NotChecked) for entry in entries.values()):
        return "No name can be put first: existing marks were not checked."
    if all(row.group >= Level.SERIOUS or row.flaw >= Level.LOOK for row in order):
        return "No name can be put first: each may be refused for what it is, or something serious stands against it."
    rest = [row for row in order if row.found == first.found]
    entry = entries[first.name]
    told = f"{_few([first.name])} stands first. Its worst finding: {worst_words(entry)}.{_but(entry)}"
    if len(rest) > 1 and places(report)[first.name] != (1, 1):
        told += f" {_few([row.name for row in rest[1:]])} came as far; other weights would put another of them first."
    return told


def _but(entry: NameEntry) -> str:
    """What keeps a name that stands first from being told as clean, as a further sentence; "" where nothing does."""
    found = entry.distinctiveness
    if isinstance(found, NotChecked):
        return " But what it is for the goods was not checked."
    far = [] if isinstance(entry.readings, NotChecked) else [one for one in entry.readings if one.abroad]
    if far:
        meant = clauses(far[0].meaning or far[0].kind, 40)
        read = f"{language_name(far[0].language)} {shorten(far[0].word, 30)}, {meant}"
        return f" But in a language of no market of yours it reads as {cell(read)}."
    return ""


def _changed(changes: Changes) -> Iterable[str]:
    """How much has changed, by kind."""
    kinds = Counter(change.kind for change in changes.found)
    told = some(f"{kind} ({count})" for kind, count in kinds.items())
    yield f"Since the report of {cell(changes.since)}: {told or 'no change'}."


def _few(names: Sequence[str]) -> str:
    """Some names in words; many are counted."""
    if len(names) > _MOST_TOLD:
        return plural(len(names), "name")
    return some(cell(shorten(name, 40)) for name in names)


def _glance(report: Report) -> Iterable[Part]:
    entries_of = {entry.name: entry for entry in report.names}
    yield "## Shortlist at a glance"
    yield (
        "Least against it first. *Nothing found*: the check was made, and nothing reached the line from which it is "
        f"worth a look; of pairs of marks that tribunals held too alike about {MISSED} stays below it. *Not checked*: "
        f"it was not made. *{LIKELY_REFUSED.capitalize()}*: an office may well refuse it for what it is, and decides; "
        f"*{DECEPTIVE}*: so too, as it says of the goods what is not so, which no use cures. "
        "Numbers from 0 to 1: closeness to the mark (1 = identical), distinctiveness, and fit as an address by length "
        "and spelling (1 = best)."
    )
    entries = [(entries_of[row.name], findings(entries_of[row.name])) for row in standings(report)]
    same = _same_for_all([found for _, found in entries])
    kept = [at for at, check in enumerate(CHECKS) if check not in same]
    rows, brief = [], []
    for entry, found in entries:
        unjudged = isinstance(entry.distinctiveness, NotChecked) and entry.unread
        head = (shorten(entry.name, 60), worst_title(entry) + ("; not all checked" if unjudged else ""))
        rows.append((*head, *(found[at].words for at in kept)))
        brief.append((shorten(entry.name, 40), head[1], *(found[at].title for at in kept)))
    whole = Table(("Name", "Worst finding", *(CHECKS[check] for check in CHECKS if check not in same)), tuple(rows))
    short = Table(("Name", "Worst finding", *(_BRIEFLY[check] for check in CHECKS if check not in same)), tuple(brief))
    yield Either(whole, (short.as_table(),))  # in plain text what is behind it stands above, and with each name
    if same:
        yield f"For every name: {some(f'{CHECKS[check].lower()} {title}' for check, title in same.items())}."


def _same_for_all(found: Sequence[Sequence[Finding]]) -> dict[str, str]:
    """Of checks that found the same of all names, and nothing against any, what that is: no table says it again and
    again."""
    if len(found) < 2:
        return {}
    titles = {check: {(one[at].title, one[at].level) for one in found} for at, check in enumerate(CHECKS)}
    return {
        check: title
        for check, told in titles.items()
        for title, level in told
        if len(told) == 1 and level is Level.NOTHING and check not in ("marks", OWN_CHECK)
    }
