"""`namescreen register prepare` and `namescreen register info`: large lists of marks, made ready once."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from namescreen.errors import InputError, Problem
from namescreen.plain_text import plural, visible, wrapped

from .options import ColumnOption, EncodingOption, make_app
from .output import folded, say_below, width
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
            help="Files or folders: text, CSV, TSV, JSON Lines, or what trade mark offices publish, plain or "
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
    from namescreen.register.store import MAGIC, VERSION

    beginnings = tuple(MAGIC + version.to_bytes(4, "little") for version in range(1, VERSION + 1))
    unfit = unfit_output(output, "prepared register", beginnings, ())
    if unfit is not None:
        raise InputError(unfit)
    with progress("Preparing marks") as advance:
        about = prepare_register(sources, output, column=column, encoding=encoding, progress=advance)
    _tell(about.problems)
    held = f"{plural(about.marks, 'mark')} from {plural(len(about.sources), 'file')}"
    typer.echo(folded(f"{visible(str(about.path))}: {held}, {_size(about.bytes)}."))


@app.command(short_help="Tell what a prepared register holds.", epilog="Example: namescreen register info marks.nsr")
def info(
    path: Prepared,
    problems: Annotated[bool, typer.Option("--problems", help="List what was wrong with the sources.")] = False,
) -> None:
    """Tell what a prepared register holds, after checking every byte of it."""
    from namescreen.register import info as about_register

    about = about_register(path)
    typer.echo(folded(f"{visible(str(about.path))}: prepared register, version {about.version}, whole"))
    _fact("marks", f"{about.marks:,} ({about.bytes / max(about.marks, 1):,.0f} bytes each)")
    _fact("status", ", ".join(f"{n:,} {status}" for status, n in about.statuses.items() if n))
    if about.offices:
        _fact("offices", ", ".join(f"{office.upper()} {n:,}" for office, n in about.offices.items()))
    if about.classes:
        _fact("classes", ", ".join(f"{number}: {n:,}" for number, n in about.classes.items()))
    for source in about.sources:
        typer.echo(f"\n{folded(visible(source.name))}")
        if source.format:
            say_below(source.format)
        several = f", the latest of {source.files:,} files" if source.files > 1 else ""
        say_below(f"file of {source.date}{several}")
        say_below(f"sha256 {source.sha256}")
        if source.read_with:
            say_below(f"read with {source.read_with}")
        say_below(
            f"{source.rows:,} rows: {source.kept:,} kept, {source.left_out:,} left out, "
            f"{source.figurative:,} without words, which cannot be screened"
            + (f", {source.replaced:,} replaced by later ones" if source.replaced else "")
        )
    if about.problems:
        typer.echo(f"\n{plural(len(about.problems), 'remark')} on the sources" + (":" if problems else " (--problems)"))
        if problems:
            for problem in about.problems:
                typer.echo(folded(visible(str(problem))))


def _tell(problems: tuple[Problem, ...]) -> None:
    say(*map(str, problems))


def _fact(label: str, text: str) -> None:
    """What is told under a label, within the terminal's width."""
    lines = wrapped(visible(text), width(), initial_indent=f"{label:13}", subsequent_indent=" " * 13)
    typer.echo("\n".join(lines))


def _size(count: int) -> str:
    """A number of bytes, in the larger unit that does not make it nothing."""
    return f"{count / 1e6:,.1f} MB" if count >= 1e6 else f"{count / 1e3:,.0f} kB"
