"""`namescreen screen`: names through every check, against lists of existing marks."""

from __future__ import annotations

from typing import Annotated

import typer

from .guard import LIMIT_EXCEEDED, NOT_CHECKED
from .inputs import chosen_names, existing_marks, settings_of
from .options import (
    BriefOption,
    ClassesOption,
    FormatOption,
    GoodsOption,
    LanguagesOption,
    NameOption,
    RegisterOption,
    StrictOption,
    brief_with,
    language_list,
    make_app,
    nice_classes,
)
from .output import Format
from .screenings import show_screenings
from .talk import kept, progress, say

app = make_app("Screen names against existing marks.")


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
    top: Annotated[int, typer.Option("--top", min=1, help="How many marks to show for each name.")] = 5,
    live: Annotated[bool, typer.Option("--live", help="Leave out marks that their list calls dead.")] = False,
    column: Annotated[
        str | None, typer.Option("--column", help="The column of the marks, if it is not recognised.")
    ] = None,
    encoding: Annotated[
        str | None, typer.Option("--encoding", help="The encoding of lists of marks that are not UTF-8.")
    ] = None,
    form: FormatOption = Format.table,
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
    all from 0 to 1, where 1 is identical.
    """
    from namescreen.screening import screen as screen_names

    settled = brief_with(
        brief,
        goods=goods,
        classes=nice_classes(classes),
        languages=language_list(languages),
        marks=tuple(register) if register else None,
    )
    wanted = chosen_names(names, name, settled)
    existing = existing_marks(settled, live=live, column=column, encoding=encoding)
    with progress("Screening names") as advance:
        found = screen_names(wanted, existing, top=top, progress=advance, **settings_of(settled))
        done = show_screenings(kept(found, len(wanted), "names"), form)
    exceeded = [one.name for one in done if fail_above is not None and one.closest > fail_above]
    if exceeded:
        say(f"A mark is closer than {fail_above} overall: {', '.join(exceeded)}")
        raise typer.Exit(LIMIT_EXCEEDED)
    if strict and any(one.not_checked for one in done):
        say(*dict.fromkeys(str(reason) for one in done for reason in one.not_checked))
        raise typer.Exit(NOT_CHECKED)
