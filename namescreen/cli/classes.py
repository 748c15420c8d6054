"""`namescreen classes`: the Nice classes that goods in plain words probably belong to."""

from __future__ import annotations

import sys
from typing import Annotated

import typer

from namescreen.errors import InputError, Problem
from namescreen.plain_text import shorten

from .options import FormatOption, make_app
from .output import BELOW, Column, Format, Row, print_disclaimer, say_below, show, width
from .talk import say

app = make_app("Find the Nice classes of goods.")

COLUMNS = (
    Column("number", "class", right=True),
    Column("score", "likely", right=True),
    Column("subject", "what it holds"),
    Column("reason", "because of"),
)
ALL = (Column("number", "class", right=True), Column("subject", "what it holds"))
CSV = (*COLUMNS, Column("explained", "explained"))
ROOM_FOR_SUBJECTS = 60
"""Columns of a terminal below which what a class holds stands below its row, not in it."""
MOST_QUOTED = 80
"""Characters of goods that a message quotes."""
ALL_CLASSES = "or see what each class holds: namescreen classes --all"
WHAT_TO_SAY = f"Say it in everyday words, best in English, {ALL_CLASSES}"
MORE_TO_SAY = f"Say more of it (what it does, for whom or what it is, what it is made of), {ALL_CLASSES}"
OFFICE = (
    "The trade mark office decides in which class goods belong; its own search of terms is the place to confirm. "
    "Goods of several kinds may need several classes."
)


@app.command(epilog="Examples:\n\nnamescreen classes 'planters of glazed clay; herb seeds'\n\nnamescreen classes --all")
def classes(
    goods: Annotated[
        str | None, typer.Argument(help="The goods in plain words; a semicolon between goods of different kinds.")
    ] = None,
    limit: Annotated[int, typer.Option("--limit", min=1, max=45, help="How many classes to show at most.")] = 3,
    every: Annotated[bool, typer.Option("--all", help="List all 45 classes, each explained.")] = False,
    form: FormatOption = Format.table,
) -> None:
    """Find the Nice classes that goods probably belong to, the likeliest first, and what each class holds.

    "likely" is from 0 to 1: how likely it is that some of the goods are in the class.
    """
    from namescreen.goods import CLASSES, EXPLAINED, class_chances, remark
    from namescreen.goods import classes as classes_of

    narrow = form is Format.table and not every and width() < ROOM_FOR_SUBJECTS
    if every:
        rows: list[Row] = [
            {"number": number, "subject": subject, "explained": EXPLAINED[number]} | _below(number, form, narrow)
            for number, subject in CLASSES.items()
        ]
    else:
        found = classes_of(goods or "", limit=limit)
        if not found:
            quoted = repr(shorten(goods or "", MOST_QUOTED))
            raise InputError(
                Problem("no goods are given", WHAT_TO_SAY)
                if not goods
                else Problem(f"no word of {quoted} is known", WHAT_TO_SAY)
                if not class_chances(goods)
                else Problem(f"the class of {quoted} is not known: its words are met in too many", MORE_TO_SAY)
            )
        rows = [
            {
                "number": one.number,
                "score": one.score,
                "subject": CLASSES[one.number],
                "reason": one.reason,
                "explained": EXPLAINED[one.number],
            }
            | _below(one.number, form, narrow)
            for one in found
        ]
    if goods and not every and (read := remark(goods)):
        say(f"Read in English. {read}")
    columns: tuple[Column, ...] = ALL if every else COLUMNS
    if narrow:
        columns = tuple(column for column in columns if column.key != "subject")
    show(rows, (*columns, CSV[-1]) if form in (Format.csv, Format.markdown) else columns, form)
    if form is Format.table:
        sys.stdout.write("\n")
        say_below(OFFICE, "")
    else:
        say(OFFICE)
    print_disclaimer(form)


def _below(number: int, form: Format, narrow: bool) -> dict[str, object]:
    """What a class holds, in plain words, below its row; where the terminal is narrow its heading too."""
    from namescreen.goods import CLASSES, EXPLAINED

    if form is not Format.table:
        return {}
    return {BELOW: f"{CLASSES[number].capitalize()}. {EXPLAINED[number]}" if narrow else EXPLAINED[number]}
