"""The end of a report: the record of the search, the costs worksheet, the next steps and the terms."""

from __future__ import annotations

import shlex
from collections.abc import Iterable
from decimal import Decimal

from ..lexicon.language_codes import language_name
from ..outcome import NotChecked
from ..plain_text import cell, clauses, shorten, some, visible
from ..policy import LIKELY_REFUSED
from ..territories import EU_MEMBERS, UNIONS, law_of, territory
from .costs import money, worksheet
from .coverage import market_cover, never_checked, not_checked_words, partly_searched, unsearched_markets
from .glossary import GLOSSARY
from .law import EU_OR_STATE, UNDESCRIBED, Practice, everywhere, practices
from .layout import Part, Table
from .model import LanguageSearched, NameEntry, Report

__all__ = ["costs_worksheet", "law_page", "next_steps", "record", "terms", "title_of"]

_TITLE = 90  # characters of the product in the title; a longer one is told in full below it


def title_of(report: Report) -> str:
    """The title of a report: the product, as far as it goes into a line."""
    return f"Name screening: {clauses(report.product, _TITLE) or 'product not stated'}"


def record(report: Report) -> Iterable[Part]:
    """What was searched, what was not, and how to repeat it."""
    yield "## Record of the search"
    yield from _lists_searched(report)
    yield from _languages_searched(report)
    skipped = never_checked(report)
    if skipped:
        yield "Not checked, for every name:"
        yield "\n".join(f"- {not_checked_words(item)}" for item in skipped)
    yield "Not searched:"
    yield "\n".join(f"- {cell(line)}" for line in _not_searched(report))
    yield (
        f"Program: namescreen {cell(report.version)}. Date: {report.date}, from {cell(report.date_from)}. "
        + (f"Seed: {report.seed}." if report.seed is not None else "Seed: none used.")
    )
    if report.concepts:
        yield f"Concept words of the brief: {cell(', '.join(report.concepts))}."
    if report.settings:
        yield Table(("Setting", "Value"), tuple((key, value or "none") for key, value in report.settings))
    yield "The command that repeats this report:"
    yield _code(shlex.join(report.command))


def _lists_searched(report: Report) -> Iterable[Part]:
    """The lists of marks, and the registers of the markets among them."""
    if report.lists:
        rows = []
        for item in report.lists:
            left = f"{item.rows_left_out:,}" + (
                f" (and {item.without_words:,} without words)" if item.without_words else ""
            )
            rows.append(
                (
                    item.name,
                    item.dated or "not stated",
                    f"{item.rows_read:,}",
                    left,
                    _classes(item.classes),
                    ", ".join(item.offices) or "not stated",
                    item.latest or "not stated",
                    item.sha256 or "not known",
                )
            )
        heads = ("List", "File dated", "Rows read", "Left out", "Classes", "Offices", "Latest mark", "sha256")
        yield Table(heads, tuple(rows))
        told = [f"- {cell(item.name)}: {cell(remark)}" for item in report.lists for remark in item.remarks]
        if told:
            yield "\n".join(told)
    else:
        yield "No list of marks was searched."
    if report.lists and report.markets:
        yield (
            "What the lists hold of the registers that count in your markets, by what each row says of its office. No "
            "register itself was asked, and whether a list holds the whole of one is not known:"
        )
        yield Table(
            ("Market", "Rows in your lists", "No row of"),
            tuple(
                (one.market, "; ".join(one.searched) or "none", "; ".join(one.missing) or "none: every kind has a row")
                for one in market_cover(report)
            ),
        )


def _languages_searched(report: Report) -> Iterable[Part]:
    """The languages looked at, those that were read in one way together."""
    alike: dict[tuple[str, tuple[str, ...]], list[LanguageSearched]] = {}
    for one in report.languages_searched:
        alike.setdefault((one.how, one.meanings), []).append(one)
    if not alike:
        return
    yield "Languages looked at, and with what:"
    yield Table(
        ("How names are read", "Languages", "Words of each", "Unlucky words of each", "Further meanings from"),
        tuple(
            (
                how[:1].upper() + how[1:],
                some(language_name(one.language) for one in those),
                _from_to(one.words for one in those),
                _from_to(one.unlucky for one in those),
                some(meanings) or "nowhere",
            )
            for (how, meanings), those in alike.items()
        ),
    )


def _from_to(counts: Iterable[int]) -> str:
    least, *_, most = sorted((*counts,) * 2)
    return f"{least:,}" if least == most else f"{least:,} to {most:,}"


def _classes(classes: tuple[int, ...]) -> str:
    """Classes as runs: 1-3, 21."""
    runs: list[list[int]] = []
    for one in classes:
        if runs and runs[-1][1] == one - 1:
            runs[-1][1] = one
        else:
            runs.append([one, one])
    return ", ".join(f"{a}" if a == b else f"{a}-{b}" for a, b in runs) or "not stated"


def _not_searched(report: Report) -> Iterable[str]:
    missing, partly = unsearched_markets(report), partly_searched(report)
    none = [market for market in missing if market not in partly]
    if none:
        yield f"the registers of {some(none)}: no row of a list is of their office"
    if partly:
        yield f"the national registers of {some(partly)}: the lists have only marks of a joint office"
    covered = {one for item in report.lists for one in item.classes}
    absent = [one for one in report.classes if one not in covered]
    if report.lists and absent:
        yield f"class {some(map(str, absent))} of the brief: no mark in the lists states it"
    yield "marks in use that nobody registered, company and trade names, shop and product names, titles"
    yield "figurative marks (pictures, shapes, colours) and the pictures in marks that also have words"
    yield "filings not yet published, and whatever was published after the date of each list"
    yield "marks that are in no list: of the registers themselves nothing was asked"


def _code(text: str) -> str:
    """A code block that shows `text` whatever it holds: indented, one line."""
    return "    " + visible(text)


def costs_worksheet(report: Report) -> Iterable[Part]:
    """The maker's own figures, summed against the budget; nothing where none are entered."""
    sheet = worksheet(report)
    costs = report.costs
    if not sheet.lines and not costs.budget:
        return
    yield "## Costs worksheet"
    if not sheet.lines:
        budget = f" The budget is {cell(money(Decimal(costs.budget), costs.currency))}." if costs.budget else ""
        yield (
            "No figures are entered. Official fees a class and an adviser's hours belong in the brief under "
            "`[[costs.items]]`, each with the day and place it was found; no fee is shipped with the program." + budget
        )
        return
    rows = [
        (
            shorten(line.item.what, 60),
            money(Decimal(line.item.figure), line.currency),
            f"{Decimal(line.item.times):f}",
            money(line.amount, line.currency),
            line.item.dated or "not stated",
            shorten(line.item.source, 80) or "not stated",
            line.remark,
        )
        for line in sheet.lines
    ]
    yield Table(("Item", "Each", "Times", "Amount", "Found on", "Source", "Remark"), tuple(rows), numeric=(1, 2, 3))
    told = [f"Total: **{cell(some(money(amount, currency) for currency, amount in sheet.totals))}**."]
    if sheet.left is not None:
        word = "left of" if sheet.left >= 0 else "over"
        told.append(
            f"{cell(money(abs(sheet.left), costs.currency))} {word} a budget of "
            f"{cell(money(Decimal(costs.budget), costs.currency))}."
        )
    elif costs.budget:
        told.append("The budget is in another currency than some figures, and nothing is converted.")
    else:
        told.append("The brief states no budget.")
    told.append("The maker's own figures; the office's and the adviser's word stands.")
    yield " ".join(told)


def next_steps(report: Report) -> Iterable[str]:
    """What to do next, in general."""
    yield "## Next steps"
    where = f" ({cell(some(report.markets))})" if report.markets else ""
    steps = (
        f"Strike the names called *knockout* or *{LIKELY_REFUSED}*, or ask about them first; one that falls in some "
        "markets only may be kept for those that are left.",
        "Look up each mark under *look closer* and *serious* at the office that keeps it: is it in force, for "
        f"which goods, and is it in use? Look for near marks in the registers of your markets{where}: the offices' own "
        "searches cost nothing, and some find marks by sound; search for translations too.",
        "Search the web, shops and the company register for the names that remain: use counts without registration, "
        "and in some countries it comes before a later filing.",
        "Have a native speaker of each market say the remaining names aloud, and hear what they hear.",
        "Take this report to a qualified adviser, with the questions below, before paying for print, domain or stock.",
        "Ask the office, or the adviser, about classes, fees and time limits before filing; they differ by country.",
        "Keep this report's JSON form, and run it again before launch with `--since` to see what has changed.",
    )
    yield from (f"☐ {step}" for step in steps)


def law_page(report: Report) -> Iterable[Part]:
    """What the law of the brief's markets says about earlier marks."""
    yield "## The law on earlier marks, by market"
    yield (
        "In plain words and from memory, to know what to ask. Practice changes: the offices' current texts and your "
        "adviser decide."
    )
    rows = [
        (
            _whose(one, report),
            one.earlier_marks,
            one.window,
            one.unused,
            one.source,
        )
        for one in practices(report.markets)
    ]
    of_states = (one.markets for one in practices(report.markets) if "EU" not in one.markets)
    described = {"EU", *(market for markets in of_states for market in markets)}
    undescribed = [market for market in report.markets if territory(market) not in described]
    of_a_state = dict.fromkeys(EU_MEMBERS, " (national marks)")
    rows += [(f"{one}{of_a_state.get(territory(one), '')}", UNDESCRIBED, "", "", "") for one in undescribed]
    heads = ("Office", "Earlier marks", "Time to oppose", "Marks not used", "Source, from memory")
    yield Table(heads, tuple(rows))
    told = [*everywhere(report.markets)]
    if any(map(_states_differ, report.names)):
        told.insert(0, EU_OR_STATE)
    yield "\n".join(f"- **{head}.** {text}" for head, text in told)


def _states_differ(entry: NameEntry) -> bool:
    """Whether a name stands otherwise in a state of the Union than in another, or for an EU mark."""
    views = () if isinstance(entry.distinctiveness, NotChecked) else entry.distinctiveness.markets
    return len({one.called for one in views if law_of(one.market) == "EU"}) > 1


def _whose(one: Practice, report: Report) -> str:
    """The office, with those of the brief's markets that it stands for, where it stands for several countries."""
    own = sorted({*one.markets} & {*report.markets} - UNIONS.keys())
    several = len([market for market in one.markets if market not in UNIONS]) > 1
    return f"{one.office}: {', '.join(own)}" if several and own else one.office


def terms() -> Iterable[str]:
    """The glossary."""
    yield "## Terms used"
    yield "Manuals, guidelines and treaties are cited from memory, by section; their current texts decide."
    yield "\n".join(f"- **{term.term}**: {term.meaning} *{term.source}*" for term in GLOSSARY)
