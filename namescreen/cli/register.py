"""`namescreen register prepare` and `namescreen register info`: large lists of marks, made ready once."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from namescreen.errors import InputError, Problem

from .options import ColumnOption, EncodingOption, make_app
from .outputs import unfit_output
from .talk import progress, say

app = make_app("Prepare a list of marks for fast searching, and see what is in one.")

Prepared = Annotated[Path, typer.Argument(help="A register made by `register prepare`.")]


@app.command(
    short_help="Make a list of marks ready once.",
    epilog="Examples:\n\nnamescreen register prepare marks.csv --output marks.nsr\n\n"
    "Add newer marks:\n\nnamescreen register prepare marks.nsr newer.xml.gz --output marks.nsr",
)
def prepare(
    sources: Annotated[
        list[Path],
        typer.Argument(
            help="Files or folders: text, CSV, TSV, JSON Lines, WIPO ST.66 or ST.96 XML, plain or "
            "as gzip or zip; "
            "and prepared registers to add to."
        ),
    ],
    output: Annotated[Path, typer.Option("--output", "-o", help="The file to write.")],
    column: ColumnOption = None,
    encoding: EncodingOption = None,
) -> None:
    """Make a list of marks ready once, so that it opens and is searched at once."""
    from namescreen.register import prepare as prepare_register
    from namescreen.register.store import MAGIC

    unfit = unfit_output(output, "prepared register", (MAGIC,), ())
    if unfit is not None:
        raise InputError(unfit)
    with progress("Preparing marks") as advance:
        about = prepare_register(sources, output, column=column, encoding=encoding, progress=advance)
    _tell(about.problems)
    typer.echo(
        f"{about.path}: {about.marks:,} marks from {_count(len(about.sources), 'file')}, "
        f"{about.bytes / 1e6:,.1f} MB."
    )


@app.command(short_help="Tell what a prepared register holds.", epilog="Example: namescreen register info marks.nsr")
def info(
    path: Prepared,
    problems: Annotated[
        bool, typer.Option("--problems", help="List what was wrong with the sources.")
    ] = False,
) -> None:
    """Tell what a prepared register holds, after checking every byte of it."""
    from namescreen.register import info as about_register

    about = about_register(path)
    typer.echo(f"{about.path}: prepared register, version {about.version}, whole")
    typer.echo(f"marks        {about.marks:,}  ({about.bytes / max(about.marks, 1):,.0f} bytes each)")
    unstated = about.marks - about.live - about.dead
    typer.echo(f"status       {about.live:,} live, {about.dead:,} dead, {unstated:,} not stated")
    if about.offices:
        typer.echo(
            "offices      " + ", ".join(f"{office.upper()} {n:,}" for office, n in about.offices.items())
        )
    if about.classes:
        typer.echo("classes      " + ", ".join(f"{number}: {n:,}" for number, n in about.classes.items()))
    for source in about.sources:
        typer.echo(f"\n{source.name}")
        typer.echo(f"  of {source.date}, sha256 {source.sha256}")
        typer.echo(
            f"  {source.rows:,} rows: {source.kept:,} kept, {source.left_out:,} left out, "
            f"{source.figurative:,} without words, which cannot be screened"
        )
    if about.problems:
        typer.echo(
            f"\n{_count(len(about.problems), 'remark')} on the sources"
            + (":" if problems else " (--problems)")
        )
        if problems:
            for problem in about.problems:
                typer.echo(str(problem))


def _tell(problems: tuple[Problem, ...]) -> None:
    say(*map(str, problems))


def _count(number: int, thing: str) -> str:
    return f"{number:,} {thing}{'' if number == 1 else 's'}"
