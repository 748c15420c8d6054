"""Options shared by the commands, each with one name and one meaning, and a brief completed by them."""

from __future__ import annotations

import dataclasses
import datetime
import re
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer

from namescreen.errors import InputError, Problem

from .output import Format

if TYPE_CHECKING:
    from namescreen.brief import Brief

__all__ = [
    "TOP",
    "AlsoBriefOption",
    "BriefOption",
    "ClassesOption",
    "ColumnOption",
    "DateOption",
    "EncodingOption",
    "FormatOption",
    "GoodsOption",
    "LanguagesOption",
    "LiveOption",
    "NameOption",
    "RegisterOption",
    "SeedOption",
    "StrictOption",
    "brief_with",
    "day",
    "language_list",
    "make_app",
    "nice_classes",
    "one_brief",
]

TOP = 10
"""Close marks kept for each name, unless told otherwise: for the screen and the report alike, so that both show the
same."""

BriefOption = Annotated[
    Path | None, typer.Option("--brief", "-b", help="A naming brief; an option given here takes the place of its own.")
]
AlsoBriefOption = Annotated[Path | None, typer.Option("--brief", "-b", hidden=True)]
"""The brief of a command that takes it as its argument, for who writes it as with the others."""
NameOption = Annotated[list[str] | None, typer.Option("--name", "-n", help="A name; repeat the option for several.")]
RegisterOption = Annotated[
    list[Path] | None,
    typer.Option(
        "--register",
        "-r",
        help="A list of existing marks: text, CSV, TSV, JSON Lines, what an office publishes or a prepared "
        "register. Repeat the option for several.",
    ),
]
LiveOption = Annotated[bool, typer.Option("--live", help="Leave out marks that their list calls dead.")]
ColumnOption = Annotated[
    list[str] | None,
    typer.Option(
        "--column",
        help="The column of the marks, if it is not recognised; or FIELD=COLUMN for any field: "
        "mark, number, registration, office, territories, classes, goods, status, owner, type, filed, priority, "
        "registered, expires. Repeat it for several.",
    ),
]
EncodingOption = Annotated[
    str | None, typer.Option("--encoding", help="The encoding of lists of marks that are not UTF-8.")
]
GoodsOption = Annotated[str | None, typer.Option("--goods", help="The goods, in plain words.")]
ClassesOption = Annotated[str | None, typer.Option("--classes", help="Nice classes of the goods, such as 21,31.")]
LanguagesOption = Annotated[
    str | None, typer.Option("--languages", help="Codes of the buyers' languages, such as de,fr,pt-BR.")
]
FormatOption = Annotated[
    Format, typer.Option("--format", help="How the result is written; `namescreen columns` explains csv.")
]
StrictOption = Annotated[bool, typer.Option("--strict", help="End with exit code 3 if some check could not be made.")]
SeedOption = Annotated[int | None, typer.Option("--seed", min=0, help="The same seed gives the same result.")]
DateOption = Annotated[
    str | None, typer.Option("--date", help="The date to write, such as 2026-05-31; today if left out.")
]


def make_app(help: str) -> typer.Typer:
    """A Typer for one command module; the whole program's settings hold for it."""
    return typer.Typer(help=help, no_args_is_help=True, add_completion=False, rich_markup_mode=None)


def brief_with(path: Path | None, **given: Any) -> Brief:
    """The brief at `path`, or an empty one, with every option that was `given` (not None) in its place."""
    from namescreen import brief as briefs  # what reads a file is imported where there is one

    brief = briefs.load_brief(path) if path else briefs.Brief()
    return dataclasses.replace(brief, **{key: value for key, value in given.items() if value is not None})


def one_brief(argument: Path | None, option: Path | None) -> Path | None:
    """The brief of a command, given as its argument or as --brief."""
    if argument is not None and option is not None:
        raise InputError(Problem("two briefs are given", "Leave one of them out", "--brief"))
    return argument or option


def nice_classes(text: str | None) -> tuple[int, ...] | None:
    """--classes as numbers, ascending; None if not given."""
    if text is None:
        return None
    numbers = [number for number in re.split(r"[,;\s]+", text) if number]
    if not numbers or not all(re.fullmatch("[0-9]{1,3}", number) and 1 <= int(number) <= 45 for number in numbers):
        from namescreen.goods import list_of_classes

        raise InputError(
            Problem(
                f"{text!r} is no list of Nice classes",
                f"Write numbers from 1 to 45: 21,31. {list_of_classes()}",
                "--classes",
            )
        )
    return tuple(sorted({int(number) for number in numbers}))


def language_list(text: str | None) -> tuple[str, ...] | None:
    """--languages as BCP 47 tags in the order given; None if not given."""
    if text is None:
        return None
    tags = [tag for tag in re.split(r"[,;\s]+", text) if tag]
    wrong = [tag for tag in tags if not re.fullmatch(r"[A-Za-z]{2,3}(-[A-Za-z0-9]{2,8})*", tag)]
    if wrong or not tags:
        from namescreen.lexicon.language_codes import code_named

        named = [f"the code of {word.capitalize()} is {code}" for word in wrong if (code := code_named(word))]
        codes = f"{'; '.join(named)}. `namescreen brief help` lists them" if named else ""
        raise InputError(
            Problem(
                f"{', '.join(wrong) or repr(text)} is no code of a language",
                codes[:1].upper() + codes[1:]
                or "Write codes of two letters: de,fr; pt-BR for the Portuguese of Brazil; `namescreen brief help` "
                "lists them",
                "--languages",
            )
        )
    return tuple(dict.fromkeys(tags))


def day(text: str | None) -> datetime.date | None:
    """--date as a date; None if not given."""
    if text is None:
        return None
    try:
        return datetime.date.fromisoformat(text)
    except ValueError:
        raise InputError(Problem(f"{text!r} is no date", "Write it as year-month-day: 2026-05-31", "--date")) from None
