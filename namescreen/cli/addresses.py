"""`namescreen addresses`: how names fit as domains and handles, and, when asked, whether they are taken."""

from __future__ import annotations

import sys
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Annotated

import typer

from namescreen.errors import InputError, Interrupted, Problem
from namescreen.plain_text import cell, number, plural, some, visible

from .guard import NOT_CHECKED
from .inputs import names_or_shortlist
from .options import BriefOption, FormatOption, GoodsOption, StrictOption, brief_with, make_app
from .output import Column, Format, Row, folded, print_disclaimer, say_point, show
from .talk import counted, progress, say

if TYPE_CHECKING:
    from namescreen.addresses import Estimate
    from namescreen.addresses.findings import Finding
    from namescreen.addresses.settings import Settings
    from namescreen.brief import Brief

app = make_app("Fit a name to domains and handles.")

NO_RIGHT = "An address that nobody has taken may still be reserved or expensive, and gives no right to the name."

ADDRESSES = (
    Column("kind", "kind", shrink=False),
    Column("address", "address"),
    Column("how", "how it is made"),
)
FOUND = (
    Column("address", "address"),
    Column("where", "asked of"),
    Column("finding", "found", style=lambda row: "yellow" if row["taken"] else ""),
)
CSV = tuple(
    Column(key, key)
    for key in (
        "name", "kind", "address", "shown", "how", "limit", "lost", "where", "finding", "taken", "since", "until",
        "registrar", "date",
    )
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class _Fit:
    """One name with its estimate and what was found out about its addresses."""

    name: str
    estimate: Estimate
    found: tuple[Finding, ...] = ()


@app.command(
    epilog="Examples:\n\nnamescreen addresses Loamlet 'Clay Sill' --ending com --ending nl\n\n"
    "namescreen addresses Loamlet --brief brief.toml --check --format csv"
)
def addresses(
    names: Annotated[list[str] | None, typer.Argument(help="One name or several; the brief's shortlist if left out.")]
    = None,
    brief: BriefOption = None,
    ending: Annotated[
        list[str] | None, typer.Option("--ending", help="A domain ending, such as com; repeat the option for several.")
    ] = None,
    handle_length: Annotated[
        list[int] | None,
        typer.Option("--handle-length", min=1, max=100, help="The longest handle a place allows; repeat as needed."),
    ] = None,
    goods: GoodsOption = None,
    check: Annotated[
        bool,
        typer.Option("--check", help="Ask registries (RDAP), and the brief's servers and pages, what is taken."),
    ] = False,
    spare: Annotated[
        bool, typer.Option("--spare", help="With --check: ask also about domains that add a word to the name.")
    ] = False,
    refresh: Annotated[bool, typer.Option("--refresh", help="Ask again, even where an answer is stored.")] = False,
    offline: Annotated[bool, typer.Option("--offline", help="Ask nobody; with --check, use stored answers.")] = False,
    most_requests: Annotated[
        int, typer.Option("--most-requests", min=1, max=10_000, help="The most requests this run may send.")
    ] = 200,
    pause: Annotated[
        float, typer.Option("--pause", min=0.1, help="Seconds between two requests to the same server.")
    ] = 1.0,
    allow_private: Annotated[
        bool, typer.Option("--allow-private", help="Ask servers in a private network too, if they are named.")
    ] = False,
    bootstrap: Annotated[
        str | None,
        typer.Option(
            "--bootstrap", envvar="NAMESCREEN_RDAP_BOOTSTRAP", show_envvar=True,
            help="Where the list of RDAP servers is (RFC 9224); IANA's own if left out.",
        ),
    ] = None,
    form: FormatOption = Format.table,
    strict: StrictOption = False,
) -> None:  # fmt: skip
    """See how a name fits as a domain and a handle: length, typing, hearing, unlucky breaks, what a handle loses.

    Nothing is looked up without --check. Fit is from 0 to 1, 1 fits best; it does not say what is free. With
    --check, stderr first lists who will be asked, and how often. Every server that is asked learns the names.
    """
    from namescreen.addresses import estimate
    from namescreen.territories import domain_endings

    settled = brief_with(
        brief,
        endings=_endings(ending),
        handle_lengths=tuple(handle_length) if handle_length else None,
        goods=goods,
    )
    if not check and (refresh or spare):
        remedy = "Without --check nobody is asked: leave them out, or add --check"
        raise InputError(Problem("--spare and --refresh are for a check", remedy))
    wanted = names_or_shortlist(names, settled)
    endings = settled.endings or domain_endings(settled.markets)
    fits = [
        _Fit(
            name,
            estimate(name, endings=endings, handle_lengths=settled.handle_lengths, goods=settled.goods),
        )
        for name in counted(wanted, len(wanted), "Reading names")
    ]
    stopped = False
    if check:
        from namescreen.addresses.settings import Settings

        bounds = Settings(
            refresh=refresh, offline=offline, most_requests=most_requests, pause=pause, allow_private=allow_private
        )
        fits, stopped = _checked(fits, settled, _with_bootstrap(bounds, bootstrap), spare)
    _show(fits, form, check)
    print_disclaimer(form)
    if stopped:
        raise Interrupted("Stopped. The answers that had come are stored; run it again to ask the rest.")
    if strict and any(finding.taken is None for fit in fits for finding in fit.found):
        raise typer.Exit(NOT_CHECKED)


def _endings(given: Sequence[str] | None) -> tuple[str, ...] | None:
    """--ending without leading dots; None if not given."""
    if not given:
        return None
    from namescreen.addresses import ascii_name

    endings = tuple(dict.fromkeys(ending.strip().lower().removeprefix(".") for ending in given))
    wrong = [ending for ending in endings if ascii_name(ending) is None]
    if wrong:
        remedy = "Write it like com or co.uk"
        raise InputError([Problem(f"{ending!r} is not a domain ending", remedy, "--ending") for ending in wrong])
    return endings


def _with_bootstrap(settings: Settings, url: str | None) -> Settings:
    import dataclasses

    from namescreen.addresses.questions import address_problem

    if url is None:
        return settings
    problem = address_problem(url, allow_private=settings.allow_private)
    if problem:
        raise InputError(Problem(f"{url!r} cannot be asked: {problem}", "Correct it", "--bootstrap"))
    return dataclasses.replace(settings, bootstrap=url)


def _checked(fits: Sequence[_Fit], brief: Brief, settings: Settings, spare: bool) -> tuple[list[_Fit], bool]:
    """`fits` with what was found out, after saying who is asked; and whether that was stopped."""
    from namescreen.addresses.checking import plan, run
    from namescreen.addresses.questions import domains_to_ask, handles_to_ask, places, servers_question
    from namescreen.addresses.session import Asker

    servers, patterns = brief.handle_servers, brief.handle_patterns
    places(servers, patterns, allow_private=settings.allow_private)
    estimates = [fit.estimate for fit in fits]
    domains, handles = domains_to_ask(estimates, spare=spare), handles_to_ask(estimates)
    asker = Asker(settings)
    try:
        say(*asker.remarks)
        if domains and not settings.offline and not asker.is_stored(servers_question(settings.bootstrap)):
            say(f"Asking {settings.bootstrap} which RDAP servers there are.")
        planned = plan(domains, handles if servers or patterns else (), servers, patterns, asker)
        said = len(asker.remarks)
        if planned.questions:
            _announce(planned.hosts(asker), settings)
        if not (servers or patterns):
            say("No server or page for handles is named in the brief: handles are not checked.")
        with progress("Asking") as advance:
            found, stopped = run(planned, asker, advance)
        say(*asker.remarks[said:])
    finally:
        asker.close()
    by_text: dict[tuple[str, str], list[Finding]] = {}
    for finding in found:
        by_text.setdefault((finding.kind, finding.text), []).append(finding)
    return [_Fit(fit.name, fit.estimate, tuple(_of(fit.estimate, by_text))) for fit in fits], stopped


def _announce(hosts: dict[str, int], settings: Settings) -> None:
    """Say who will be asked how often, and how long that takes at least."""
    if settings.offline:
        say("Nobody is asked: only stored answers count (--offline).")
    elif not hosts:
        say("Nobody is asked: all answers are stored (--refresh asks again).")
    else:
        told = some(f"{host} ({plural(count, 'question')})" for host, count in hosts.items())
        seconds = plural(max(1, round(max(hosts.values()) * settings.pause)), "second")
        say(f"Asking {told}, each one question at a time with pauses: about {seconds} at least. "
            "Every server that is asked learns the names.")  # fmt: skip
        if sum(hosts.values()) > settings.most_requests:
            say(f"At most {settings.most_requests:,} requests are sent (--most-requests); the rest is not checked.")


def _of(estimate: Estimate, found: dict[tuple[str, str], list[Finding]]) -> Iterator[Finding]:
    """The findings on the domains and handles of one name, in their order."""
    texts = [("domain", one.text) for one in estimate.domains] + [("handle", one.text) for one in estimate.handles]
    for key in dict.fromkeys(texts):
        yield from found.get(key, ())


def _show(fits: Sequence[_Fit], form: Format, checked: bool) -> None:
    if form is Format.jsonl:
        show((_whole(fit, checked) for fit in fits), (), form)
    elif form is Format.csv:
        show((row for fit in fits for row in _csv_rows(fit)), CSV, form)
    else:
        for fit in fits:
            _show_one(fit, form)
        if checked:
            say_point(NO_RIGHT, form, apart=True)


def _show_one(fit: _Fit, form: Format) -> None:
    estimate = fit.estimate
    parts = f"domain {number(estimate.domain_score)}, handle {number(estimate.handle_score)}"
    title = f"{fit.name}: fit {number(estimate.score)} ({parts})"
    sys.stdout.write(f"\n## {cell(title)}\n\n" if form is Format.markdown else f"\n{folded(visible(title))}\n")
    rows = [*_domain_rows(estimate), *_handle_rows(estimate)]
    if rows:
        show(rows, ADDRESSES, form)
    for reason in estimate.reasons:
        say_point(reason, form, apart=True)
    if estimate.effort:
        say_point(f"{plural(estimate.effort, 'key')} to type.", form, apart=True)
    for label, texts in (
        ("Likely misspellings", estimate.slips),
        ("Looks much the same", estimate.lookalikes),
        ("Other handles", estimate.spare_handles),
    ):
        if texts:
            say_point(f"{label}: {some(texts)}.", form, apart=True)
    if fit.found:
        sys.stdout.write("\n")
        show([_found_row(one, estimate) for one in fit.found], FOUND, form)
        days = sorted({one.date for one in fit.found if one.date})
        if days:
            say_point(f"Answers of {some(days)}.", form, apart=True)


def _found_row(finding: Finding, estimate: Estimate) -> Row:
    shown = next((one.shown for one in estimate.domains if one.text == finding.text), finding.text)
    address = finding.text if shown == finding.text else f"{shown} ({finding.text})"
    return {**finding.to_json(), "address": address, "where": finding.where or "nobody"}


def _domain_rows(estimate: Estimate) -> Iterator[Row]:
    """A row a label, with the endings it goes with."""
    by_label: dict[tuple[str, str], list[str]] = {}
    for one in estimate.domains:
        label, _, ending = one.shown.partition(".")
        by_label.setdefault((label, one.how), []).append(f".{ending}")
    for (label, how), endings in by_label.items():
        first, *others = endings
        more = f"; also {' '.join(others)}" if others else ""
        yield {"kind": "domain", "address": label + first, "how": how + more}


def _handle_rows(estimate: Estimate) -> Iterator[Row]:
    limits: dict[tuple[str, str], list[str]] = {}
    for one in estimate.handles:
        limits.setdefault((one.text, one.lost), []).append(str(one.limit))
    for (text, lost), within in limits.items():
        fits = "fits everywhere: " if text == estimate.everywhere else ""
        loses = f"; loses {lost}" if lost else ""
        yield {"kind": "handle", "address": text, "how": f"{fits}within {some(within, 'or')} characters{loses}"}


def _whole(fit: _Fit, checked: bool) -> dict[str, object]:
    """Everything about one name, for a program."""
    findings = {"checked": [one.to_json() for one in fit.found]} if checked else {}
    return {"name": fit.name, **fit.estimate.to_json(), **findings}


def _csv_rows(fit: _Fit) -> Iterator[Row]:
    """A row an address and place that was asked about it."""
    found: dict[tuple[str, str], list[Finding]] = {}
    for finding in fit.found:
        found.setdefault((finding.kind, finding.text), []).append(finding)
    rows: list[tuple[str, str, dict[str, object]]] = [
        ("domain", one.text, {"shown": one.shown, "how": one.how}) for one in fit.estimate.domains
    ]
    rows += [("handle", one.text, {"limit": one.limit, "lost": one.lost}) for one in fit.estimate.handles]
    for kind, text, more in rows:
        plain: dict[str, object] = {"name": fit.name, "kind": kind, "address": text, **more}
        known = [finding.to_json() for finding in found.get((kind, text), ())]
        for one in known or [{}]:
            taken = {True: "yes", False: "no"}.get(one.get("taken"), "")  # type: ignore[call-overload]
            yield {**plain, **one, "taken": taken}
