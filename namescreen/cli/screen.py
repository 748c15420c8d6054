"""`namescreen screen`: names through every check, against lists of existing marks."""

from __future__ import annotations

import contextlib
import io
import math
import shlex
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer

from namescreen.errors import InputError, Problem
from namescreen.outcome import DISCLAIMER
from namescreen.plain_text import plural

from .guard import LIMIT_EXCEEDED, NOT_CHECKED
from .inputs import chosen_names, existing_marks, looked_through, settings_of
from .options import (
    TOP,
    BriefOption,
    ClassesOption,
    ColumnOption,
    EncodingOption,
    FormatOption,
    GoodsOption,
    LanguagesOption,
    LiveOption,
    NameOption,
    RegisterOption,
    StrictOption,
    brief_with,
    language_list,
    make_app,
    nice_classes,
)
from .output import Format
from .outputs import unfit_output, write_output
from .screenings import Outcome, show_rows, show_screenings, write_rows
from .talk import kept, progress, say

if TYPE_CHECKING:
    from namescreen.brief import Brief
    from namescreen.register import Register

app = make_app("Screen names against existing marks.")

_BEGINNINGS = {Format.jsonl: b'{"name": ', Format.csv: b"name,mark,overall,"}
"""The beginning of a screening in a file, by which a file that may be replaced is recognised."""


@app.command(
    epilog="Examples:\n\n"
    "namescreen screen names.txt --register marks.csv --goods 'herb planters' --classes 21\n\n"
    "namescreen screen --brief brief.toml --format jsonl"
)
def screen(
    names: Annotated[
        str | None,
        typer.Argument(help="A file of names: one a line, or CSV with a `name` column; - for standard input."),
    ] = None,
    name: NameOption = None,
    register: RegisterOption = None,
    brief: BriefOption = None,
    goods: GoodsOption = None,
    classes: ClassesOption = None,
    languages: LanguagesOption = None,
    top: Annotated[
        int,
        typer.Option(
            "--top", min=1, help="How many close marks to show for each name; marks of the same words count as one."
        ),
    ] = TOP,
    live: LiveOption = False,
    column: ColumnOption = None,
    encoding: EncodingOption = None,
    form: FormatOption = Format.table,
    output: Annotated[
        Path | None,
        typer.Option(
            "--output", "-o", help="A file to write (jsonl or csv). The same command resumes a run that was stopped."
        ),
    ] = None,
    fail_above: Annotated[
        float | None,
        typer.Option(
            "--fail-above", min=0, max=1, help="End with exit code 1 if a mark's overall closeness is higher."
        ),
    ] = None,
    strict: StrictOption = False,
) -> None:
    """Screen names: existing marks near them, distinctiveness, other languages, domains and handles.

    Names come from a file, from --name, or from the brief's shortlist. For each name the closest marks are
    shown with their closeness overall and in appearance, sound and meaning, and how related their goods are:
    all from 0 to 1, where 1 is identical. Of several marks with the same words the one of most concern is shown.
    """
    from namescreen.screening import screen as screen_names
    from namescreen.screening import screen_rows

    if output is not None and form not in _BEGINNINGS:
        raise InputError(Problem("a file takes --format jsonl or csv", "Add one of them", "--output"))
    if fail_above is not None and math.isnan(fail_above):
        raise InputError(Problem("'nan' is no limit", "Write a number from 0 to 1", "--fail-above"))
    settled = brief_with(
        brief,
        goods=goods,
        classes=nice_classes(classes),
        languages=language_list(languages),
        marks=tuple(register) if register else None,
    )
    if output is not None:
        inputs = [brief, settled.shortlist_file, *settled.marks, Path(names) if names else None]
        unfit = unfit_output(output, "screening", (_BEGINNINGS[form],), filter(None, inputs))
        if unfit is not None:
            raise InputError(unfit)
    wanted = chosen_names(names, name, settled)
    existing = existing_marks(settled, live=live, column=column, encoding=encoding)
    options = {"top": top, **settings_of(settled)}
    if output is not None:
        outcomes = _to_file(output, form, wanted, existing, options)
    else:
        with progress("Screening names") as advance:
            told = "names; those are shown, whole."
            if form in _BEGINNINGS:
                rows = screen_rows(wanted, existing, progress=advance, **options)
                outcomes = show_rows(kept(rows, len(wanted), told), form)
            else:  # a table tells the reasons of few marks
                found = screen_names(wanted, existing, progress=advance, with_reasons=False, **options)
                outcomes = show_screenings(kept(found, len(wanted), told), form, settled)
    if existing is not None:
        say(looked_through(existing))
    if form is Format.table and output is None:
        say(_next_step(settled))
    exceeded = [one.name for one in outcomes if fail_above is not None and one.closest > fail_above]
    if exceeded:
        say(f"A mark is closer than {fail_above} overall: {', '.join(exceeded)}")
        raise typer.Exit(LIMIT_EXCEEDED)
    if strict and any(one.not_checked for one in outcomes):
        say(*dict.fromkeys(reason for one in outcomes for reason in one.not_checked))
        raise typer.Exit(NOT_CHECKED)


def _next_step(brief: Brief) -> str:
    """What comes after a screening: the document for an adviser, who judges what a program cannot."""
    if brief.source is None:
        steps = "namescreen brief new brief.toml, and from it namescreen report brief.toml -o report.md"
        return f"Next: {steps}, for your adviser."
    return f"Next: {shlex.join(['namescreen', 'report', str(brief.source), '-o', 'report.md'])}, for your adviser."


def _to_file(
    output: Path, form: Format, names: Sequence[str], existing: Register | None, options: Mapping[str, Any]
) -> list[Outcome]:
    """Screen into a file, with a journal beside it, so that a stopped run can be resumed."""
    from namescreen import __version__
    from namescreen.cli.journal import Journal
    from namescreen.screening import fits, schema, screen_rows

    run = {
        "version": __version__,
        "schema": schema(),  # results of another form are never reused
        "names": names,
        "marks": existing.digest() if existing else "",  # as read: the options that decide how a list is read count
        # Not the day: a run that is resumed after midnight goes on.
        "options": {key: value for key, value in options.items() if key != "today"},
    }
    with Journal(output, run, fits) as journal:
        if journal.other:
            say(f"{journal.path} is of another run, or of another version of the program: this run starts from the "
                f"beginning, and the other journal is kept as {journal.other}.")  # fmt: skip
        if journal.damaged:
            say(f"{journal.path}: {plural(journal.damaged, 'line')} damaged; the names in them are screened again.")
        left = [name for name in names if name not in journal.results]
        if len(left) < len(names):
            say(f"Resuming an earlier run: {len(names) - len(left):,} of {len(names):,} names are done.")
        with progress("Screening names") as advance:
            found = screen_rows(left, existing, progress=advance, **options)
            told = f"names; the same command resumes the run from {journal.path}."
            for one in kept(found, len(left), told):
                journal.add(str(one["name"]), one)
        rows = [journal.results[name] for name in names]
        text = io.StringIO()
        with contextlib.redirect_stdout(text):
            write_rows(rows, form)
        try:
            write_output(output, text.getvalue().encode("utf-8", "backslashreplace"))
        except OSError as error:
            reason = Problem(f"cannot be written ({error.strerror})", "Make room, then start again", str(output))
            raise InputError(reason) from None
        journal.finish()
    say(f"Wrote {output}: {plural(len(rows), 'name')}.", DISCLAIMER)
    return [Outcome.of(row) for row in rows]
