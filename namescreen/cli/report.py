"""`namescreen report`: the shortlist through every check, written down for an adviser."""

from __future__ import annotations

import datetime
from collections.abc import Mapping, Sequence
from enum import StrEnum
from itertools import pairwise
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from namescreen import __version__
from namescreen.errors import InputError, Problem
from namescreen.files import read_bounded
from namescreen.outcome import DISCLAIMER

from .guard import NOT_CHECKED
from .inputs import chosen_names, day_of, existing_marks, settings_of
from .options import (
    TOP,
    AlsoBriefOption,
    ClassesOption,
    ColumnOption,
    DateOption,
    EncodingOption,
    GoodsOption,
    LanguagesOption,
    LiveOption,
    NameOption,
    RegisterOption,
    StrictOption,
    brief_with,
    day,
    language_list,
    make_app,
    nice_classes,
    one_brief,
)
from .outputs import unfit_output, write_output
from .talk import progress, say

if TYPE_CHECKING:
    from namescreen.brief import Brief
    from namescreen.register import Register
    from namescreen.report import Changes, Report
    from namescreen.screening import Screening

__all__ = ["Form", "app", "check_outputs", "get_ready", "report", "write_report"]

app = make_app("Write the report for an adviser.")


MOST_BYTES = 1 << 28
"""The most that an earlier report may have: that of many thousand names."""


class Form(StrEnum):
    """How a report is written."""

    markdown = "markdown"
    html = "html"
    json = "json"
    csv = "csv"


_OTHER_PROGRAMS = frozenset({".pdf", ".doc", ".docx", ".odt", ".rtf", ".xls", ".xlsx", ".ods"})
"""Endings of formats that a report cannot be written in: no program would open a file of another format under them."""
_ENDINGS = {".html": Form.html, ".htm": Form.html, ".json": Form.json, ".csv": Form.csv}
# How each form begins, the picture included: what stands in a file tells whether it may be replaced.
_BEGINNINGS = (
    b"# Name screening:",
    b"<!DOCTYPE html>\n",
    b'{\n "format": "namescreen-report',
    b"name,place,worst",
    b"<svg xmlns",
)


@app.command(
    epilog="Examples:\n\n"
    "namescreen report brief.toml -o report.md\n\n"
    "namescreen report brief.toml -o report.html -o report.json --since old.json"
)
def report(
    brief: Annotated[
        Path | None,
        typer.Argument(help="A naming brief; an option given here takes the place of its own.", show_default=False),
    ] = None,
    output: Annotated[
        list[Path] | None,
        typer.Option(
            "--output",
            "-o",
            help="Where to write; the ending says the form (.md, .html, .json, .csv). Repeat the option "
            "for several. Standard output if left out, or for -.",
        ),
    ] = None,
    form: Annotated[
        Form | None,
        typer.Option("--format", help="The form, where the ending does not say it.", show_default=False),
    ] = None,
    date: DateOption = None,
    since: Annotated[
        Path | None, typer.Option("--since", help="An earlier report in JSON: tell what has changed.")
    ] = None,
    name: NameOption = None,
    register: RegisterOption = None,
    goods: GoodsOption = None,
    classes: ClassesOption = None,
    languages: LanguagesOption = None,
    top: Annotated[
        int,
        typer.Option(
            "--top", min=1, help="How many close marks to keep for each name; marks of the same words count as one."
        ),
    ] = TOP,
    live: LiveOption = False,
    column: ColumnOption = None,
    encoding: EncodingOption = None,
    mild: Annotated[
        bool, typer.Option("--mild", help="Mask severe words of other languages.", show_default=False)
    ] = False,
    full: Annotated[
        bool,
        typer.Option("--full", help="Write whole pages for names that fall too, not a few lines.", show_default=False),
    ] = False,
    strict: StrictOption = False,
    also_brief: AlsoBriefOption = None,
) -> None:
    """Write the report on a shortlist: what was found about each name, where, and what to ask an adviser.

    Its picture is written beside a Markdown report, and stands inside an HTML one. A file that is no report
    is never replaced.
    """
    import namescreen.report as reports
    from namescreen.screening import screen

    brief = one_brief(brief, also_brief)
    settled = brief_with(
        brief,
        goods=goods,
        classes=nice_classes(classes),
        languages=language_list(languages),
        marks=tuple(register) if register else None,
    )
    asked_day = day(date)
    forms = _forms(output or (), form)
    if since is not None and Form.csv in forms.values():
        raise InputError(Problem("the CSV form does not tell changes", "Choose another form", "--since"))
    inputs = [path for path in (brief, since, settled.shortlist_file, *settled.marks) if path is not None]
    check_outputs([path for path in forms if path is not None], forms, inputs)
    earlier = None if since is None else reports.from_json(_read(since), str(since))
    wanted = chosen_names(None, name, settled)
    existing = existing_marks(settled, live=live, column=column, encoding=encoding)
    get_ready(forms)
    with progress("Screening names") as advance:
        found = list(screen(wanted, existing, top=top, progress=advance, **settings_of(settled, asked_day)))
    given = {
        "--output": output,
        "--format": form,
        "--since": since,
        "--name": name,
        "--register": register,
        "--goods": goods,
        "--classes": classes,
        "--languages": languages,
        "--top": None if top == TOP else top,
        "--live": live or None,
        "--column": column,
        "--encoding": encoding,
        "--mild": mild or None,
        "--full": full or None,
        "--strict": strict or None,
    }
    write_report(settled, found, existing, forms, given, asked_day=asked_day, earlier=earlier)
    if None not in forms or forms[None] is Form.csv:  # the other forms say it themselves
        say(DISCLAIMER)
    if strict and any(one.not_checked for one in found):
        say(*dict.fromkeys(str(reason) for one in found for reason in one.not_checked))
        raise typer.Exit(NOT_CHECKED)


def get_ready(forms: Mapping[Path | None, Form]) -> None:
    """Import what writes a report in these forms while others still screen names."""
    import namescreen.report as reports
    from namescreen.team import while_waiting

    named = ("assemble", *(("to_markdown", "to_svg") if Form.markdown in forms.values() else ()))
    while_waiting(lambda: [getattr(reports, name) for name in named])


def write_report(
    settled: Brief,
    found: Sequence[Screening],
    existing: Register | None,
    forms: Mapping[Path | None, Form],
    given: Mapping[str, object],
    *,
    asked_day: datetime.date | None = None,
    earlier: Report | None = None,
) -> None:
    """Write the report on names already screened, in each of `forms` (None: standard output).

    `given` are the options that repeat it, by name; None stands for one that was not given.
    """
    import namescreen.report as reports  # what is asked of it is imported then
    from namescreen.addresses import COMMON_LENGTHS
    from namescreen.territories import domain_endings

    today, date_from = day_of(settled, asked_day)
    settings = (
        ("close marks kept for each name", str(given.get("--top") or TOP)),
        ("marks that their list calls dead", "left out" if given.get("--live") else "kept"),
        ("domain endings", ", ".join(settled.endings or domain_endings(settled.markets))),
        ("handle lengths", ", ".join(map(str, settled.handle_lengths or COMMON_LENGTHS))),
    )
    drawn = reports.assemble(
        settled,
        found,
        existing,
        date=today,
        date_from=date_from,
        version=__version__,
        command=_command(settled.source, {**given, "--date": today}),
        settings=settings,
        made=_how_made(settled.shortlist_file),
        mild=bool(given.get("--mild")),
    )
    changed = None if earlier is None else reports.changes(earlier, drawn)
    _write(drawn, forms, changed, full=bool(given.get("--full")))


def _forms(outputs: Sequence[Path], form: Form | None) -> dict[Path | None, Form]:
    """The form of each file to write; None stands for standard output."""
    if not outputs:
        return {None: form or Form.markdown}
    foreign = [path for path in outputs if form is None and path.suffix.casefold() in _OTHER_PROGRAMS]
    if foreign:
        raise InputError(
            Problem("is no form that a report has", "Write .html and print it from a browser", str(path))
            for path in foreign
        )
    if form is not None and len(outputs) > 1:
        raise InputError(Problem("one form is given for several files", "Let their endings say it", "--format"))
    return {
        None if str(path) == "-" else path: form or _ENDINGS.get(path.suffix.casefold(), Form.markdown)
        for path in outputs
    }


def _figure_of(path: Path) -> Path:
    return path.parent / f"{path.stem}-figure.svg"


def check_outputs(outputs: Sequence[Path], forms: Mapping[Path | None, Form], inputs: Sequence[Path]) -> None:
    """Refuse, before any work, to write over an input or over a file that is no report."""
    written = [one for path in outputs for one in (path, *([_figure_of(path)] if forms[path] is Form.markdown else []))]
    problems = [unfit_output(one, "report", _BEGINNINGS, inputs) for one in written]
    if any(problems):
        raise InputError(filter(None, problems))


def _read(path: Path) -> str:
    remedy = "Give an earlier report in JSON"
    try:
        return read_bounded(path, MOST_BYTES, remedy).decode()
    except UnicodeDecodeError:
        raise InputError(Problem("is not UTF-8 text", remedy, str(path))) from None


def _how_made(shortlist: Path | None) -> dict[str, str]:
    """How names were made, as `namescreen brainstorm` leaves it in a shortlist: in a table's column `how`, or in
    the remark above a name. Other remarks are the maker's own, and not for an adviser."""
    import csv

    if shortlist is None:
        return {}
    with shortlist.open(encoding="utf-8-sig", errors="replace", newline="") as file:
        if shortlist.suffix.casefold() == ".csv":
            rows = csv.DictReader(file)
            try:
                if not {"name", "how"} <= set(rows.fieldnames or ()):
                    return {}
                return {row["name"].strip(): row["how"].strip() for row in rows if row["name"] and row["how"]}
            except csv.Error:  # a cell longer than the csv module takes
                return {}
        lines = [line.strip() for line in file]
    from namescreen.generation.constructions import CONSTRUCTIONS, FORMER

    told = tuple(f"{construction}: " for construction in (*CONSTRUCTIONS, *FORMER))
    remarks = ((above.removeprefix("#").strip(), name) for above, name in pairwise(lines) if above.startswith("#"))
    return {name: how for how, name in remarks if how.startswith(told) and name and not name.startswith("#")}


def _command(brief: Path | None, options: Mapping[str, object]) -> tuple[str, ...]:
    """The command line that gives the same report again."""
    words = ["namescreen", "report", *([str(brief)] if brief is not None else [])]
    for option, value in options.items():
        if value is True:
            words.append(option)
        elif value is not None:
            for one in value if isinstance(value, list) else [value]:
                words += [option, str(one)]
    return tuple(words)


def _write(drawn: Report, forms: Mapping[Path | None, Form], changed: Changes | None, *, full: bool) -> None:
    from namescreen.report import to_svg

    written: list[str] = []
    for path, form in forms.items():
        picture = _figure_of(path) if path is not None and form is Form.markdown else None
        text = _text(drawn, form, picture, changed, full=full)
        if path is None:
            import sys

            sys.stdout.write(text)
            continue
        try:
            if picture is not None:
                write_output(picture, to_svg(drawn).encode())
            write_output(path, text.encode())
        except OSError as error:
            remedy = "Write to another folder, or make room"
            raise InputError(Problem(f"cannot be written ({error.strerror})", remedy, str(path))) from None
        written += [str(path), *([str(picture)] if picture is not None else [])]
    if written:
        say(f"Wrote {', '.join(written)}.")


def _text(drawn: Report, form: Form, picture: Path | None, changed: Changes | None, *, full: bool) -> str:
    import namescreen.report as reports

    if form is Form.html:
        return reports.to_html(drawn, changes=changed, full=full)
    if form is Form.json:
        return reports.to_json(drawn, changes=changed)
    if form is Form.csv:
        return reports.to_csv(drawn)
    figure = picture.name if picture is not None else ""
    return reports.to_markdown(drawn, figure=figure, changes=changed, full=full)
