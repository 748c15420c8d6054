"""The names one by one: what was found about each, and what to ask."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from ..lexicon.language_codes import language_name
from ..outcome import NotChecked
from ..plain_text import cell, clauses, number, plural, shorten, some
from ..policy import BARRED
from ..territories import UNIONS
from .coverage import never_checked, not_checked_words
from .fallen import fallen
from .findings import words_read, worst_words
from .layout import Either, Part, Table
from .mark_tables import by_market, close_marks
from .model import Address, Addresses, Distinctiveness, NameEntry, Reading, Report
from .own_findings import as_told, for_the_union_alone
from .own_questions import by_item
from .owners import crowds
from .questions import asked_about, questions
from .register_facts import never_stated
from .sensitivity import standings
from .upkeep import explained

__all__ = ["name_pages"]

# Rows of a name's tables; the JSON form has everything (common practice, no source).
_MOST_READINGS = 8
_DOMAINS, _HANDLES = 4, 2
_FEW_LANGUAGES = 6  # named with each name
_MOST_OF_LAW = 800  # characters
_MAY_OBJECT = "What offices may object to, from memory"
_ORDINARY = 3  # readings of severity 0 that are shown


def name_pages(report: Report, *, full: bool = False) -> Iterable[Part]:
    """The section of the names, in the order of the comparison. Names that fall take a few lines, unless they are all
    there is, or `full` pages are asked for."""
    yield "## The names, one by one"
    alike = len({entry.coverage for entry in report.names}) == 1
    read = f" Languages looked at: {cell(_looked_at(report.names[0]))}." if alike and report.names[0].coverage else ""
    yield (
        "Closeness and goods run from 0 to 1, 1 = identical; *coined*: no meaning to compare. The marks that ask for "
        "most attention stand first; those of less concern are left to the JSON and CSV forms. Law is cited from "
        f"memory. Nobody was asked about a domain or handle unless it says so.{read} "
        f"{explained(report.markets)}".rstrip()
    )
    if never := never_stated(report):
        yield (
            f"Your lists state nothing of {cell(some(never, 'or'))} for any mark near a name: look up in the registers "
            "whether each is in force, whose it is and where it holds."
        )
    entries = {entry.name: entry for entry in report.names}
    common = never_checked(report)
    order = standings(report)
    kept = [row for row in order if row.group < BARRED]
    for row in order:
        if row.group < BARRED or full or len(order) == 1:
            yield from _name(entries[row.name], report, common, alike=alike)
        else:
            yield from fallen(entries[row.name], report)
    if len(kept) < len(order) > 1 and not full:
        yield "Names that fall are told in short; `--full` writes their pages too, and the JSON form has all of it."


def _name(entry: NameEntry, report: Report, common: Sequence[NotChecked], *, alike: bool) -> Iterable[Part]:
    parts = (entry.marks, entry.distinctiveness, entry.readings, entry.addresses)
    yield f"### {cell(shorten(entry.name, 120))}"
    told = (
        f"Worst finding: **{worst_words(entry)}**.",
        by_market(entry, report),
        f"Made as: {cell(clauses(entry.construction, 200))}." if _tells_more(entry) else "",
        f"Meaning: {cell(clauses(entry.meaning, 200))}." if entry.meaning else "",
    )
    yield " ".join(filter(None, told))
    asked = questions(entry, report)
    if asked:
        yield "**Questions for the adviser**"
        yield "\n".join(f"{at}. {cell(question)}" for at, question in enumerate(asked, 1))
    else:
        yield "**Questions for the adviser.** None beyond those on the whole list."
    yield from close_marks(entry, report, asked_about(entry, report))
    yield from _distinctiveness(entry)
    if len(entry.words) == 1:
        yield from map(_sentence, crowds(entry).values())
    readings, addresses = [*_readings(entry, alike=alike)], [*_addresses(entry)]
    yield from [f"{readings[0]} {addresses[0]}"] if len(readings) == len(addresses) == 1 else [*readings, *addresses]
    own = [item for item in entry.not_checked if item not in (*common, *parts)]
    if own:
        yield "**Not checked**"
        yield "\n".join(f"- {not_checked_words(item)}" for item in own)


def _tells_more(entry: NameEntry) -> bool:
    """Whether the construction says more than the name itself, and than is said of its words beside the goods."""
    return entry.explained and bool(entry.construction)


def _distinctiveness(entry: NameEntry) -> Iterable[Part]:
    found = entry.distinctiveness
    head = "**Distinctiveness for the goods.**"
    if isinstance(found, NotChecked):
        yield f"{head} Not checked, because {cell(found.because)}."
        return
    scored = "" if found.is_barred_as_such else f", {number(found.score)} of 1"
    alone = " as an EU mark only" if for_the_union_alone(found) else ""
    shown = as_told(found.shown, entry)
    yield f"{head} {shown[:1].upper()}{shown[1:]}{alone}{scored}. {_sentences(found)}".rstrip()
    if not found.differs or found.is_barred_as_such:
        return
    if not any(one.law for one in found.markets):
        called: dict[str, list[str]] = {}
        for one in found.markets:
            called.setdefault(as_told(one.called, entry), []).append(_office(one.market))
        yield f"By market: {some(f'{what} in {some(where)}' for what, where in called.items())}; no bar found in any."
        return
    rows = tuple(
        (_office(one.market), as_told(one.called, entry), number(one.score), one.law or "no bar found")
        for one in found.markets
    )
    told = "\n".join(f"- {cell(f'{where}: {what} ({score}); {law}')}" for where, what, score, law in rows)
    heads = ("Under the law of", "The name is", "Score", f"{_MAY_OBJECT}; it decides")
    yield Either(Table(heads, rows), (f"By law, and {_MAY_OBJECT[0].lower()}{_MAY_OBJECT[1:]}; each decides:", told))


def _office(market: str) -> str:
    """A market as its buyers know it: the code of the Benelux is no country's."""
    return f"{UNIONS[market][0]} ({market})" if market == "BX" else market


def _sentences(found: Distinctiveness) -> str:
    told = [_sentence(one) for one in found.reasons[:5]]
    if found.by_item:
        told.append(_sentence(f"By goods: {by_item(found)}"))
    if found.laws and (found.is_barred_as_such or not found.differs):
        told.append(_sentence(f"{_MAY_OBJECT}: {'; '.join(found.laws)}. Each office decides", _MOST_OF_LAW))
    return " ".join(told)


def _sentence(text: str, most: int = 260) -> str:
    text = clauses(text, most)
    return cell(text[:1].upper() + text[1:] + ("" if text.endswith((".", "!", "?", "…")) else "."))


def _looked_at(entry: NameEntry) -> str:
    """The languages in which a name was read; of many how many."""
    if len(entry.coverage) > _FEW_LANGUAGES:
        return f"{len(entry.coverage)}, which the record names"
    return some(language_name(tag) for tag in entry.coverage)


def _readings(entry: NameEntry, *, alike: bool) -> Iterable[Part]:
    """What a name says in other languages; which were looked at stands at the head of all names where it is `alike`."""
    head = "**In other languages.**"
    if isinstance(entry.readings, NotChecked):
        yield f"{head} Not checked, because {cell(entry.readings.because)}."
        return
    covered = _looked_at(entry)
    looked = f"Languages looked at: {cell(covered)}." if covered and not alike else ""
    read = words_read(entry)
    words, far = ([one for one in read if one.abroad is abroad] for abroad in (False, True))
    elsewhere = f" {_in_no_market(far)}" if far else ""
    bad = [one for one in words if one.severity]
    plain = [one for one in words if not one.severity and one.meaning]
    if plain:
        elsewhere = f" Ordinary there: {_in_words(plain)}.{elsewhere}"
    if not bad:
        yield f"{head} Nothing found against it.{elsewhere} {looked}".rstrip()
        return
    shown = bad[:_MOST_READINGS]
    more = len(bad) - len(shown)
    rest = f" {plural(more, 'milder word')} left to the JSON form." if more > 0 else ""
    yield f"{head} {plural(len(bad), 'word')} found that may be taken badly.{rest}{elsewhere} {looked}".rstrip()
    yield Table(
        ("Language", "Word", "Meaning", "Kind", "Severity (0 to 3)", "How it matches"),
        tuple(
            (
                language_name(one.language),
                shorten(one.word, 40),
                clauses(one.meaning, 80) or "not known",
                one.kind,
                str(one.severity),
                shorten(one.match, 60),
            )
            for one in shown
        ),
    )


def _in_no_market(far: Sequence[Reading]) -> str:
    """Bad words of languages that are none of the buyers', in a sentence."""
    return f"In languages of no market of yours, and nothing against the name here: {_in_words(far)}."


def _in_words(readings: Sequence[Reading]) -> str:
    """The first few words of other languages with their meanings."""
    told = (
        f"{language_name(one.language)} {shorten(one.word, 40)} ({clauses(one.meaning or one.kind, 40)})"
        for one in readings[:_ORDINARY]
    )
    return cell(some(told))


def _addresses(entry: NameEntry) -> Iterable[Part]:
    head = "**Domain and handle.**"
    found = entry.addresses
    if isinstance(found, NotChecked):
        yield f"{head} Not checked, because {cell(found.because)}."
        return
    reasons = " ".join(_sentence(reason) for reason in found.reasons)
    shown = [one for kind, most in (("domain", _DOMAINS), ("handle", _HANDLES)) for one in _of(found, kind)[:most]]
    asked = any(one.finding for one in shown)
    yield f"{head} Fit {number(found.score)} of 1, by length and spelling. {reasons}".rstrip()
    if asked:
        rows = ((one.kind, shorten(one.text, 80), one.how, shorten(one.finding, 80) or "not asked") for one in shown)
        yield Table(("Kind", "Address", "How", "Taken?"), tuple(rows))


def _of(found: Addresses, kind: str) -> list[Address]:
    """The addresses of one kind, those that somebody was asked about first."""
    return sorted((one for one in found.items if one.kind == kind), key=lambda one: not one.finding)
