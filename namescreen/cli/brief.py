"""`namescreen brief new`: a commented brief to fill in."""

from __future__ import annotations

import shlex
from pathlib import Path
from typing import Annotated

import typer

from namescreen.brief import starter
from namescreen.errors import InputError, Problem

from .options import make_app
from .output import say_below
from .talk import say

app = make_app("Start a naming brief.")


@app.callback()
def _brief() -> None:
    pass


@app.command("help")
def explain() -> None:
    """List what can stand in a brief: tones, classes, countries and languages."""
    from namescreen.generation.material import TONES
    from namescreen.goods import list_of_classes
    from namescreen.lexicon.language_codes import LANGUAGES
    from namescreen.report.law import practices
    from namescreen.territories import EU_MEMBERS, UNIONS

    told = {one.office: one.markets for one in practices(()) if len(one.markets) == 1}
    unions = ", ".join(f"{name} {code}" for code, (name, _) in UNIONS.items())
    countries = ", ".join(f"{office} {code}" for office, (code,) in sorted(told.items()))
    for text in (
        f"tone: {', '.join(sorted(TONES))}. It only decides which affixes come first; names of other kinds are "
        "the same for every tone.",
        f"classes: {list_of_classes().removeprefix('The classes: ')}",
        f"markets: the two-letter code of each country (ISO 3166-1), in capitals: {countries}. States of the European "
        f"Union: {', '.join(sorted(EU_MEMBERS))}. A union whose mark is one for all its members: "
        f"{unions}; it brings the languages of all of them.",
        f"languages: {', '.join(f'{name} {code}' for code, name in LANGUAGES.items())}. English need not be named.",
    ):
        say_below(text, indent="")
        typer.echo()


@app.command(epilog="Example: namescreen brief new planter.toml")
def new(
    path: Annotated[
        Path | None, typer.Argument(help="The file to write; without one the brief goes to stdout.")
    ] = None,
) -> None:
    """Write a commented brief to fill in.

    A file that exists is never overwritten.
    """
    text = starter()
    if path is None:
        typer.echo(text, nl=False)
        return
    try:
        file = path.open("x", encoding="utf-8", newline="\n")
        try:
            with file:
                file.write(text)
        except BaseException:  # a full disk, Ctrl-C: no part of a brief is left
            path.unlink()
            raise
    except FileExistsError:
        raise InputError(Problem("exists already", "Name another file, or move this one", str(path))) from None
    except OSError as error:
        raise InputError(Problem(f"cannot be written ({error.strerror})", "Name another place", str(path))) from None
    say(f"Wrote {path}. Fill it in, then: {shlex.join(('namescreen', 'brainstorm', str(path)))}")
